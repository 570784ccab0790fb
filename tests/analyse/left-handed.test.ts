/**
 * No-load pots in a kit for left-handed players. That such a pot opens at the end that is full, so at the anticlockwise one, is common
 * practice, no source. What it must come to: the same figures as the right-handed kit, whose own are checked against ngspice
 * (`tests/oracle/pots.test.ts`), since only the direction of turning differs; and two figures reckoned by hand.
 */
import { describe, expect, it } from 'vitest';
import { rolesOf, solveLoads, solveResponse } from '../../src/analyse/index.ts';
import { readMeter } from '../../src/analyse/meter.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { kitFromValue } from '../../src/checked.ts';
import { must } from '../../src/common/must.ts';
import { elementsLike, faceOf, outlineOf } from '../../src/parts/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';

type Hand = 'left' | 'right';
const VOLUME = 250e3;
const TONE = 500e3;

function circuitOf(hand: Hand, tone: object) {
  const [full, zero] = hand === 'left' ? [1, 3] : [3, 1];
  const { kit, diagnostics } = kitFromValue(
    {
      kit: 's-no-load',
      title: 'S, volume and no-load tone',
      hand,
      parts: {
        pickup: { kind: 'single-coil' },
        volume: { kind: 'pot', value: VOLUME, taper: 'linear' },
        tone: { kind: 'pot', value: TONE, taper: 'linear', ...tone },
        cap: { kind: 'capacitor', value: '22n' },
        output: { kind: 'jack' },
      },
      joints: [
        { wire: `pickup.hot > volume.${full}` },
        { wire: 'volume.2 > output.tip' },
        { wire: `volume.${zero} > output.sleeve` },
        { wire: `volume.${full} > tone.2` },
        { wire: `tone.${zero} > cap.1` },
        { wire: 'cap.2 > output.sleeve' },
        { wire: `pickup.ground > volume.${zero}` },
      ],
    },
    'kit',
  );
  return buildCircuit(must(kit, `kit without errors: ${JSON.stringify(diagnostics)}`));
}

const codes = (circuit: ReturnType<typeof circuitOf>): readonly string[] =>
  notesOf(circuit, solveLoads(circuit)).map(({ code }) => code);
const signalLoad = (circuit: ReturnType<typeof circuitOf>): number =>
  must(solveLoads(circuit)[0]?.pickups[0], 'pickup').signalLoad;

describe('a no-load pot in a left-handed kit', () => {
  it.each([{}, { 'no-load': true }])('gives the figures of the right-handed one: %j', (tone) => {
    const [left, right] = [circuitOf('left', tone), circuitOf('right', tone)];
    expect([...(left.fullAt ?? [])].map(([, end]) => end)).toEqual(['anticlockwise', 'anticlockwise']);
    expect([...rolesOf(left)]).toEqual([...rolesOf(right)]);
    expect(solveLoads(left).map(({ pickups }) => pickups)).toEqual(
      solveLoads(right).map(({ pickups }) => pickups),
    );
    const read = (circuit: typeof left) => {
      const { jack } = must(readMeter(circuit)[0], 'position').volumeFull;
      return [jack.connected, jack.disconnected];
    };
    expect(read(left)).toEqual(read(right));
    for (const knob of [10, 9.9, 5, 0])
      for (const [volume, tone] of [
        [10, knob],
        [knob, 10],
      ] as const) {
        const gains = [left, right].map(
          (circuit) =>
            solveResponse(circuit, { points: 20, knobs: { volume, tone } }).states[0]?.together?.gain,
        );
        for (const [k, gain] of (gains[0] ?? []).entries())
          expect(gain).toBeCloseTo(gains[1]?.[k] ?? Number.NaN, 9);
      }
    expect(codes(left).filter((code) => /no-load|backwards/.test(code))).toEqual([]);
  });

  it('is out of circuit at full, so that the volume alone is the load', () => {
    expect(signalLoad(circuitOf('left', { 'no-load': true }))).toBeCloseTo(VOLUME, 3);
    // By hand: of R and C in series Re(Y) is R / (R² + X²), with X = 1 / (2π · 1 kHz · 22 nF).
    const reactance = 1 / (2 * Math.PI * 1000 * 22e-9);
    const inCircuit = 1 / (1 / VOLUME + TONE / (TONE ** 2 + reactance ** 2));
    expect(signalLoad(circuitOf('left', {}))).toBeCloseTo(inCircuit, 3);
  });

  it('that opens at the clockwise end, as it says, stays in circuit at full, with a warning', () => {
    const circuit = circuitOf('left', { 'no-load': 'clockwise' });
    expect(signalLoad(circuit)).toBeCloseTo(signalLoad(circuitOf('left', {})), 6);
    expect(codes(circuit)).toContain('no-load-other-end');
    expect(codes(circuitOf('right', { 'no-load': 'anticlockwise' }))).toContain('no-load-other-end');
  });

  it('is drawn with its gap at that end', () => {
    const tracks = (['left', 'right'] as const).map((hand) => {
      const tone = must(
        circuitOf(hand, { 'no-load': true }).kit.parts.find(({ name }) => name === 'tone'),
        'tone',
      );
      expect(elementsLike(tone, 'track')[0]?.noLoad).toBe(hand === 'left' ? 'anticlockwise' : 'clockwise');
      const shapes = faceOf(tone, { outline: outlineOf(tone), closed: [] });
      const track = must(
        shapes.find((shape) => shape.shape === 'path' && shape.role === 'track'),
        'track',
      );
      return track.shape === 'path' ? (track.runs[0] ?? []).map(({ to }) => to) : [];
    });
    const [left = [], right = []] = tracks;
    const middle =
      must(outlineOf(must(circuitOf('left', { 'no-load': true }).kit.parts[2], 'tone')), 'outline').width / 2;
    // Mirror images: the one's beginning is the other's end.
    expect(left.map(({ x, y }) => [2 * middle - x, y].map(Math.round))).toEqual(
      [...right].reverse().map(({ x, y }) => [x, y].map(Math.round)),
    );
    expect(left).not.toEqual(right);
  });
});
