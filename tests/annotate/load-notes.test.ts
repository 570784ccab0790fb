/**
 * Notes on loads: by pickup, with the positions listed, and never of what the padding choice calls fitting. Loads of the padded HSS
 * circuit: the handbook's worked table (500 kΩ volume, 250 kΩ and 500 kΩ tones, 470 kΩ pads).
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { choosePads, solveLoads } from '../../src/analyse/index.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import type { Problem, ProblemCode } from '../../src/common/problem.ts';
import { type Details, wording } from '../../src/common/wording.ts';
import { readKit } from '../../src/describe/read.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { type Compact, makeCircuit, sampleCircuit, sampleNames } from '../analyse/kits.ts';

const said = ({ code, detail }: Problem): string => {
  const word = wording[code] as (detail: Details[ProblemCode]) => { message: string };
  return `${code}: ${word(detail as Details[ProblemCode]).message}`;
};
/** The kits here leave values out, which is another note's affair. */
const notes = (circuit: Circuit): readonly string[] =>
  notesOf(circuit, solveLoads(circuit))
    .filter(({ code }) => code !== 'values-assumed')
    .map(said);

/** Two single coils on a three-way lever, one volume and one tone. */
const ss = (pots: string, more: Compact['parts'] = {}, joints: Compact['joints'] = [], gone = ''): Circuit =>
  makeCircuit({
    parts: {
      neck: { kind: 'single-coil' },
      bridge: { kind: 'single-coil' },
      selector: { kind: 'lever-3' },
      volume: { kind: 'pot', value: pots },
      tone: { kind: 'pot', value: pots },
      cap: { kind: 'capacitor', value: '22n' },
      output: { kind: 'jack' },
      ...more,
    },
    joints: [
      'bridge.hot > selector.A1',
      'selector.A1 > selector.A2',
      'neck.hot > selector.B3',
      'selector.B3 > selector.B2',
      'selector.A0 > selector.B0',
      'selector.A0 > volume.3',
      'volume.2 > output.tip',
      'volume.1 > volume.case',
      'tone.2 > volume.3',
      'tone.1 > cap.1',
      'cap.2 > volume.case',
      'tone.case > volume.case',
      'neck.ground > volume.case',
      'bridge.ground > volume.case',
      'output.sleeve > volume.case',
      ...joints,
    ].filter((joint) => joint !== gone),
  });

it('of tone controls that load together only the largest sets are named: one note where four pickups have one each', () => {
  const file = 'tests/bench/kits/ssss-own-controls.yaml';
  const { kit } = readKit(readFileSync(file, 'utf8'), file);
  if (!kit) throw new Error(file);
  const found = notes(buildCircuit(kit)).filter((one) => one.startsWith('two-tone'));
  expect(found).toHaveLength(1);
  expect(found[0]).toMatch(
    /“neck-tone”, “upper-tone”, “lower-tone” and “bridge-tone” all load the signal with neck-on in position 1/,
  );
});

it('the padded HSS circuit has one note: two tone controls load at once in position 4', () => {
  expect(notes(sampleCircuit('kestrel-hss'))).toEqual([
    'two-tone-controls: “tone-1” and “tone-2” both load the signal in position 4: the signal load is 81.7 kΩ',
  ]);
});

it('pots of the values a pickup was designed for are worth no note', () => {
  expect(notes(ss('250k'))).toEqual([]);
});

it('pots too large: one note for each pickup, of the position where it is heard alone', () => {
  expect([...notes(ss('500k'))].sort()).toEqual([
    'load-off-reference: signal load of “bridge”: 250 kΩ (+100 %) in position 1; reference 125 kΩ',
    'load-off-reference: signal load of “neck”: 250 kΩ (+100 %) in position 3; reference 125 kΩ',
  ]);
});

it('pots too small: larger ones are the remedy, and not another resistor', () => {
  const circuit = ss('100k');
  const [note] = notesOf(circuit, solveLoads(circuit)).filter(({ code }) => code === 'load-off-reference');
  const { remedy } = wording['load-off-reference'](note?.detail as Details['load-off-reference']);
  // Both loads of a single coil are those of its reference harness, two pots of 250 k, with these and no smaller ones.
  expect(remedy).toMatch(/use 250k for “volume” and “tone”, the smallest usual value/);
  expect(remedy).not.toMatch(/use a padding/);
});

it('positions of one load are listed together', () => {
  const twice = ss('500k', {}, [], 'selector.B3 > selector.B2');
  expect(notes(twice)).toContain(
    'load-off-reference: signal load of “bridge”: 250 kΩ (+100 %) in positions 1 and 2; reference 125 kΩ',
  );
});

describe('what the padding choice calls fitting is not complained of', () => {
  const circuits = (): readonly (readonly [string, Circuit])[] => [
    ...sampleNames().map((name) => [name, sampleCircuit(name)] as const),
    ...['100k', '250k', '500k', '1M'].map((pots) => [`SS, ${pots}`, ss(pots)] as const),
    [
      'SS, pads for DC',
      ss('500k', { pad: { kind: 'resistor', value: '470k' } }, ['pad.1 > neck.hot', 'pad.2 > volume.case']),
    ],
    [
      'SS, pads for signal',
      ss('500k', { pad: { kind: 'resistor', value: '240k' } }, ['pad.1 > neck.hot', 'pad.2 > volume.case']),
    ],
  ];
  it.each(['dc', 'signal'] as const)('matched for %s', (match) => {
    let fitting = 0;
    for (const [name, circuit] of circuits()) {
      const { advice } = choosePads(circuit, { match, series: 'E12' });
      const fits = advice.flatMap((one) =>
        one.kind === 'fits' || (one.kind === 'pad' && one.present) ? [one.pickup] : [],
      );
      fitting += fits.length;
      const noted = notesOf(circuit, solveLoads(circuit)).flatMap(({ code, path }) =>
        code === 'load-off-reference' ? [path[1]] : [],
      );
      expect(
        noted.filter((pickup) => fits.includes(String(pickup))),
        name,
      ).toEqual([]);
    }
    expect(fitting).toBeGreaterThan(4);
  });
});
