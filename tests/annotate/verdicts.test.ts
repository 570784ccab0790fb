/** What a card says of a load: the per cent of its reference, and a word that follows the treble as solved. */
import { describe, expect, it } from 'vitest';
import {
  type PickupLoads,
  readJack,
  type StateLoads,
  solveLoads,
  trebleOf,
} from '../../src/analyse/index.ts';
import { cardsOf } from '../../src/annotate/cards.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { type Compact, makeCircuit, sampleCircuit } from '../analyse/kits.ts';
import { circuitKit } from '../circuits/circuits.ts';

/** One single coil in the harness that it was made for, and a capacitor of so many farads across it. */
const plain = (across?: number): Circuit =>
  makeCircuit({
    parts: {
      only: { kind: 'single-coil' },
      volume: { kind: 'pot', value: '250k' },
      tone: { kind: 'pot', value: '250k' },
      cap: { kind: 'capacitor', value: '22n' },
      output: { kind: 'jack' },
      ...(across === undefined ? {} : { across: { kind: 'capacitor', value: across } }),
    },
    joints: [
      'only.hot > volume.3',
      'volume.2 > output.tip',
      'volume.1 > output.sleeve',
      'only.ground > output.sleeve',
      'tone.2 > volume.3',
      'tone.1 > cap.1',
      'cap.2 > output.sleeve',
      ...(across === undefined ? [] : ['across.1 > volume.3', 'across.2 > output.sleeve']),
    ],
  });

/** The verdict on that circuit, were its signal load so many times its reference. */
function verdict(circuit: Circuit, ratio: number): string {
  const loads = solveLoads(circuit).map(
    (one): StateLoads => ({
      ...one,
      pickups: one.pickups.map(
        (own): PickupLoads => ({ ...own, signalLoad: ratio * own.reference.signalLoad }),
      ),
    }),
  );
  return cardsOf(circuit, loads, readJack(circuit))[0]?.rows[0]?.verdict ?? '';
}
const asMade = plain();
const duller = plain(250e-12);
const brighter = sampleCircuit('kestrel-hss');

describe('per cent of the reference', () => {
  it.each([
    [1, 'as designed'],
    [1.104, 'as designed'],
    [0.896, 'as designed'],
    [1.106, '+11 %, brighter'],
    [0.894, '−11 %, heavier load'],
    [2, '+100 %, brighter'],
    [0.5, '−50 %, heavier load'],
    [Infinity, 'no load'],
  ])('%d times: %s, where the treble is that of the reference', (ratio, said) => {
    // Just above the reference, so that rounding does not call it lower.
    const circuit = makeCircuit({ ...compactOf(asMade), parts: lighter(asMade) });
    expect(trebleOf(circuit)[0]?.get('only')).toMatchObject({ lost: false, lower: false });
    expect(verdict(circuit, ratio)).toBe(said);
  });
  it.each([
    [1, '±0 %, duller'],
    [1.004, '±0 %, duller'],
    [1.1, '+10 %, duller'],
    [0.9, '−10 %, duller'],
    [2, '+100 %, but duller'],
    [0.5, '−50 %, duller'],
  ])('%d times: %s, where a capacitor takes treble', (ratio, said) => {
    expect(trebleOf(duller)[0]?.get('only')).toMatchObject({ lost: false, lower: true });
    expect(verdict(duller, ratio)).toBe(said);
  });
  // By hand: 10 nF and the coil's 2.4 H resonate at 1 kHz; 12 dB an octave above, six times that high is 31 dB down.
  it('is left unsaid where the treble is lost', () =>
    expect([verdict(plain(10e-9), 1), verdict(plain(10e-9), Infinity)]).toEqual([
      'treble cut, −31 dB',
      'treble cut, −31 dB',
    ]));
});

/** The kit again, its volume a hundredth larger. */
const compactOf = ({ kit }: Circuit): Compact => ({
  parts: {},
  joints: kit.joints.map(({ from, to }) => `${from.part}.${from.lug} > ${to.part}.${to.lug}`),
});
const lighter = ({ kit }: Circuit): Compact['parts'] =>
  Object.fromEntries(
    kit.parts.map((part) => [
      part.name,
      {
        kind: part.kind,
        ...('value' in part ? { value: part.value.value * (part.name === 'volume' ? 1.01 : 1) } : {}),
      },
    ]),
  );

describe('two pickups in series', () => {
  // Handbook, circuit 20: two single coils, in series in position 4. Their inductances add up, so that their −3 dB point is lower.
  it.each([
    [1, /^±0 %, duller in series$/],
    [2, /^\+100 %, duller in series$/],
    [0.5, /^−50 %, duller$/],
  ])(
    'with %d times their load are duller since they are in series, unless the load is heavier too',
    async (ratio, said) => {
      const series = buildCircuit(await circuitKit('ss-lever-4-1v1t-series'));
      const loads = solveLoads(series).map((one) => ({
        ...one,
        pickups: one.pickups.map((own) => ({ ...own, signalLoad: ratio * own.reference.signalLoad })),
      }));
      const cards = cardsOf(series, loads, readJack(series));
      const [chain, ...more] = cards.filter(({ joined }) => joined?.includes('in series'));
      expect(more).toEqual([]);
      expect(chain?.rows.map(({ verdict: words }) => said.test(words))).toEqual([true, true]);
      const others = cards.filter((card) => card !== chain).flatMap(({ rows }) => rows);
      for (const { verdict: words } of others) expect(words).not.toContain('series');
    },
  );
});

it('as designed becomes duller where the treble is a decibel down', () => {
  let [low, high] = [1e-12, 250e-12];
  for (let i = 0; i < 30; i++) {
    const middle = Math.sqrt(low * high);
    if (verdict(plain(middle), 1) === 'as designed') low = middle;
    else high = middle;
  }
  expect(trebleOf(plain(low))[0]?.get('only')?.level).toBeCloseTo(-1, 4);
});

describe('a card', () => {
  const [first, second] = cardsOf(brighter, solveLoads(brighter), readJack(brighter));
  it('has the state’s badge, what sounds, its switch drawn in that position, and the reading', () => {
    expect([first?.badge, first?.title, second?.title]).toEqual(['1', 'Bridge', 'Middle + Bridge']);
    expect([first?.joined, second?.joined]).toEqual(['hum-cancelling', 'in parallel']);
    expect(first?.switches.map(({ part }) => part.name)).toEqual(['selector']);
    expect(first?.switches[0]?.closed).not.toEqual(second?.switches[0]?.closed);
    // Volume of 500 kΩ beside the winding of 8.4 kΩ.
    expect(first?.meter).toBe('8.26 kΩ');
  });
  it('says that a reading is assumed where the resistance of a pickup that sounds was not given', () => {
    const two = (given: string) =>
      makeCircuit({
        parts: {
          a: { kind: 'single-coil', ...(given.includes('a') ? { resistance: '6k' } : {}) },
          b: { kind: 'single-coil', ...(given.includes('b') ? { resistance: '6k' } : {}) },
          lever: { kind: 'lever-3' },
          out: { kind: 'jack' },
        },
        joints: [
          'a.hot > lever.A1',
          'b.hot > lever.A3',
          'lever.A0 > out.tip',
          'a.ground > out.sleeve',
          'b.ground > out.sleeve',
        ],
      });
    const assumed = (circuit: Circuit) =>
      cardsOf(circuit, solveLoads(circuit), readJack(circuit)).map(({ meter }) =>
        meter.endsWith(', assumed'),
      );
    const [a, middle, b] = assumed(two('b'));
    expect([a, middle, b]).toEqual([true, false, false]);
    expect(assumed(two('ab'))).toEqual([false, false, false]);
    expect(assumed(two('a'))).toEqual([false, false, true]);
  });
  it('of a kit without a jack has no reading, without a switch no badge, of two switches both positions', () => {
    const parts = { a: { kind: 'single-coil' }, one: { kind: 'lever-3' }, two: { kind: 'lever-3' } };
    const bare = makeCircuit({ parts: { a: parts.a }, joints: [] });
    expect(cardsOf(bare, solveLoads(bare), readJack(bare))).toMatchObject([
      { badge: '', meter: 'no reading', states: [0] },
    ]);
    const both = makeCircuit({ parts, joints: [] });
    // Cards alike in all they say are one.
    expect(cardsOf(both, [], [])).toMatchObject([{ badge: '1/2/3·1/2/3', states: [...Array(9).keys()] }]);
    const readings = [1, 2, 3].flatMap((i) => [1, 2, 3].map((k) => 1000 * (i + 10 * k)));
    expect(cardsOf(both, [], readings).map(({ badge, states }) => [badge, states])).toEqual(
      [1, 2, 3].flatMap((i) => [1, 2, 3].map((k) => [`${i}·${k}`, [3 * i + k - 4]])),
    );
  });
  it('is one for positions that differ only in digits that are not shown', () => {
    const circuit = makeCircuit({
      parts: { a: { kind: 'single-coil' }, s: { kind: 'lever-3' }, out: { kind: 'jack' } },
      joints: ['a.hot > out.tip', 'a.ground > out.sleeve'],
    });
    const cards = (by: number) =>
      cardsOf(
        circuit,
        solveLoads(circuit).map((state, i) => ({
          ...state,
          pickups: state.pickups.map((one) => ({
            ...one,
            signalLoad: 125e3 * (1 + i * by),
          })),
        })),
        readJack(circuit),
      ).map(({ badge }) => badge);
    expect(cards(1e-12)).toEqual(['1/2/3']);
    expect(cards(0.02)).toEqual(['1', '2', '3']);
  });
  it('is of all positions that are alike: by switch where each goes with each, else in as few combinations as there are', () => {
    const parts = { a: { kind: 'single-coil' }, one: { kind: 'lever-3' }, two: { kind: 'lever-3' } };
    const circuit = makeCircuit({ parts, joints: [] });
    const badges = (readings: readonly number[]) =>
      cardsOf(circuit, [], readings).map(({ badge, states }) => `${badge}: ${states.join()}`);
    // The second switch has no effect; then the first; then both somewhere.
    expect(badges([1, 1, 1, 2, 2, 2, 3, 3, 3])).toEqual([
      '1·1/2/3: 0,1,2',
      '2·1/2/3: 3,4,5',
      '3·1/2/3: 6,7,8',
    ]);
    expect(badges([1, 2, 3, 1, 2, 3, 4, 5, 3])).toEqual([
      '1/2·1: 0,3',
      '1/2·2: 1,4',
      '1/2/3·3: 2,5,8',
      '3·1: 6',
      '3·2: 7',
    ]);
    expect(badges([1, 1, 2, 1, 3, 4, 5, 6, 7])[0]).toBe('1·1/2, 2·1: 0,1,3');
  });
});
