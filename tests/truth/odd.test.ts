/** Kits of a shape nobody had drawn: coils in series behind a rotary with stacked controls; a blend behind a switch that turns a pickup off. */
import { expect, it } from 'vitest';
import { findArrangement } from '../../src/files/layouts.ts';
import { inspect } from '../../src/inspect/index.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { rectToSheet } from '../../src/place/frame.ts';
import { findErrors } from '../../src/solve/errors.ts';
import { makeCircuit } from '../analyse/kits.ts';
import { described } from './draw.ts';
import { jointErrors, read } from './reader.ts';

const series = described({
  kit: 'odd-series',
  title: 'Three coils in series behind a rotary, stacked controls and a kill button',
  parts: {
    neck: { kind: 'four-lead-humbucker', label: 'Neck humbucker (four leads)' },
    middle: { kind: 'single-coil' },
    ways: { kind: 'rotary', label: 'Ways of the pickups', throws: 3, poles: 2 },
    controls: { kind: 'stacked-pot', label: 'Volume and tone', a: { value: '500k' }, b: { value: '500k' } },
    cap: { kind: 'capacitor', value: '22n', sleeving: 'both' },
    mute: { kind: 'kill-button' },
    output: { kind: 'jack' },
    strings: { kind: 'ground-point' },
  },
  joints: [
    'output.sleeve > controls.case',
    'strings.1 > controls.case',
    { bend: 'controls.a1 > controls.case' },
    { braid: 'neck.shield > controls.case' },
    { wire: 'neck.b-start > middle.hot', colour: 'BUWH' },
    'neck.a-finish > neck.b-finish',
    'middle.ground > controls.case',
    'neck.a-start > ways.A1',
    'neck.a-finish > ways.A2',
    'middle.hot > ways.A3',
    'ways.A0 > controls.a3',
    'controls.a2 > output.tip',
    'controls.a3 > controls.b1',
    { leg: 'cap.1 > controls.b2' },
    { leg: 'cap.2 > controls.case' },
    'mute.1 > output.tip',
    'mute.2 > output.sleeve',
  ],
});

it.each(['free-flow', 'plate-row', 'bass-row'])(
  'in %s no wire runs between a long case and its lugs, and the drawing reads back',
  async (name) => {
    const arrangement = findArrangement(name);
    if (typeof arrangement === 'string') throw new Error(arrangement);
    const prepared = await prepare(series, arrangement, { effort: { steps: 200, seed: 1 } });
    const { parts, wires } = prepared.placement;
    const controls = parts.find(({ part }) => part.name === 'controls');
    if (!controls) throw new Error('not placed');
    const { frame, outline } = controls;
    const tags = outline.lugs.filter(({ surface }) => !surface).map(({ tag }) => tag);
    const [left, right] = [
      Math.min(...tags.map(({ x }) => x)),
      Math.max(...tags.map(({ x, width }) => x + width)),
    ];
    const foot = outline.body.y + outline.body.height;
    const gap = rectToSheet(frame, {
      x: left,
      y: foot + 2,
      width: right - left,
      height: Math.min(...tags.map(({ y }) => y)) - foot - 4,
    });
    expect(gap.height * gap.width).toBeGreaterThan(0);
    // Across the gap a wire may lead to the case; along it none may.
    const along = wires
      .filter(({ joint }) => joint.kind !== 'bend')
      .flatMap(({ points }) =>
        points.slice(1).filter((b, i) => {
          const a = points[i] ?? b;
          const inside =
            Math.min(a.x, b.x) < gap.x + gap.width &&
            Math.max(a.x, b.x) > gap.x &&
            Math.min(a.y, b.y) < gap.y + gap.height &&
            Math.max(a.y, b.y) > gap.y;
          const level = gap.width > gap.height ? a.y === b.y : a.x === b.x;
          return inside && level;
        }),
      );
    expect(along).toEqual([]);
    const { svg } = render(prepared);
    expect(inspect(svg, series)).toEqual([]);
    expect(jointErrors(read(svg), series)).toEqual([]);
  },
);

/** Neck through a slide switch to a blend with the bridge; `lugs` of gang a: output, ground. */
const blended = ([out, ground]: readonly [string, string]) =>
  makeCircuit({
    parts: {
      neck: { kind: 'single-coil' },
      bridge: { kind: 'single-coil' },
      on: { kind: 'slide', poles: 1 },
      mix: { kind: 'blend', value: '500k' },
      output: { kind: 'jack' },
    },
    joints: [
      'neck.hot > on.A0',
      'on.A1 > mix.a2',
      'bridge.hot > mix.b2',
      `mix.${out} > output.tip`,
      'mix.b1 > output.tip',
      `mix.${ground} > mix.case`,
      'mix.b3 > mix.case',
      'mix.case > output.sleeve',
      'neck.ground > output.sleeve',
      'bridge.ground > output.sleeve',
    ],
  });

it('a blend turned away from the only pickup that is on is no error; one that is wired wrong is', () => {
  const right = blended(['a3', 'a1']);
  // It is silent there: neck off, blend at the neck's end.
  expect(right.states.filter(({ sounding }) => sounding.length === 0)).toHaveLength(1);
  expect(findErrors(right.kit)).toEqual([]);
  expect(findErrors(blended(['a1', 'a3']).kit).map(({ code }) => code)).not.toEqual([]);
});
