/** Bare legs laid across each other touch: the drawing and a note say which to sleeve, and nothing else does. */
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/common/geometry.ts';
import { wording } from '../../src/common/wording.ts';
import { bareLegNotes, bareLegs } from '../../src/draw/bare-legs.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { described } from '../truth/draw.ts';

/** Two capacitors' legs, joints 3 and 4, and two jumpers, joints 5 and 11. */
const kit = (more: Readonly<Record<'first' | 'second', object>> = { first: {}, second: {} }) =>
  described({
    kit: 'crossed',
    title: 'Crossed legs',
    parts: {
      neck: { kind: 'single-coil' },
      selector: { kind: 'lever-3' },
      volume: { kind: 'pot', value: '250k', taper: 'log' },
      first: { kind: 'capacitor', value: '22n', label: 'First', ...more.first },
      second: { kind: 'capacitor', value: '10n', label: 'Second', ...more.second },
      output: { kind: 'jack' },
    },
    joints: [
      { wire: 'neck.hot > selector.A1' },
      { wire: 'neck.ground > volume.case' },
      { wire: 'selector.A0 > volume.3' },
      { leg: 'first.1 > volume.3' },
      { leg: 'volume.2 > second.2' },
      { jumper: 'selector.A1 > selector.A2' },
      { leg: 'first.2 > volume.case' },
      { leg: 'second.1 > volume.case' },
      { wire: 'volume.2 > output.tip' },
      { wire: 'output.sleeve > volume.case' },
      { bend: 'volume.1 > volume.case' },
      { jumper: 'selector.A0 > selector.B0' },
    ],
  });

/** The kit with those joints laid across one another, and every other where none crosses. */
async function laid(crossed: readonly (readonly [number, number])[], more?: Parameters<typeof kit>[0]) {
  const prepared = await prepare(kit(more), undefined, { effort: { steps: 0, seed: 1 } });
  const lines = prepared.placement.wires.map((_, i): readonly Point[] => [
    { x: 4000 + 100 * i, y: 0 },
    { x: 4000 + 100 * i, y: 50 },
  ]);
  crossed.forEach(([a, b], n) => {
    const [x, y] = [2000 + 300 * n, 2000];
    lines[a] = [...(lines[a] ?? []).slice(2), { x: x - 50, y }, { x: x + 50, y }];
    lines[b] = [...(lines[b] ?? []).slice(2), { x, y: y - 50 }, { x, y: y + 50 }];
  });
  const wires = prepared.placement.wires.map((wire, i) => ({ ...wire, points: lines[i] ?? [] }));
  return { ...prepared, placement: { ...prepared.placement, wires } };
}
const found = async (...given: Parameters<typeof laid>) => {
  const { circuit, placement } = await laid(...given);
  return bareLegs(circuit, placement);
};

describe('bare legs that cross', () => {
  it('are two legs, or a leg and a jumper, of different nets', async () => {
    expect(await found([[3, 4]])).toEqual([{ leg: 3, across: 4 }]);
    expect(await found([[4, 3]])).toEqual([{ leg: 3, across: 4 }]);
    expect(await found([[5, 3]])).toEqual([{ leg: 3, across: 5 }]);
    expect(await found([[3, 5]])).toEqual([{ leg: 3, across: 5 }]);
    // An insulated wire, and two grounded legs.
    expect(await found([[3, 0]])).toEqual([]);
    expect(await found([[6, 7]])).toEqual([]);
    expect(await found([])).toEqual([]);
  });
  it('are two jumpers too: the later is the one to insulate', async () => {
    expect(await found([[5, 11]])).toEqual([{ leg: 11, across: 5 }]);
    expect(await found([[11, 5]])).toEqual([{ leg: 11, across: 5 }]);
    const prepared = await laid([[5, 11]]);
    expect(render(prepared).svg).toContain(
      'Insulate the jumper from A0 to B0 of Selector: it crosses a bare jumper.',
    );
    const [note, ...more] = bareLegNotes(prepared.circuit, prepared.placement);
    expect(more).toEqual([]);
    expect(note).toMatchObject({
      code: 'bare-jumpers-cross',
      path: ['joints', 11],
      detail: { jumper: 'selector.A0 > selector.B0', across: 'selector.A1 > selector.A2' },
    });
  });
  it('are none where sleeving covers one of them', async () => {
    expect(await found([[3, 4]], { first: { sleeving: 1 }, second: {} })).toEqual([]);
    expect(await found([[3, 4]], { first: {}, second: { sleeving: 'both' } })).toEqual([]);
    // The other leg's helps nothing.
    expect(await found([[3, 4]], { first: { sleeving: 2 }, second: { sleeving: 1 } })).toHaveLength(1);
  });
  it('are told by as few legs as need sleeving', async () => {
    expect(
      await found([
        [3, 4],
        [3, 4],
      ]),
    ).toHaveLength(1);
  });
});

const SENTENCE = 'Sleeve the leg of First to Volume lug 3: it crosses a bare leg of Second.';

it('the drawing says so, in the step that adds them, and not where one position is shown', async () => {
  const prepared = await laid([[3, 4]]);
  expect(render(prepared).svg).toContain(SENTENCE);
  expect(render(prepared, { view: 'component-side' }).svg).toContain(SENTENCE);
  expect(render(prepared, { state: 0 }).svg).not.toContain('Sleeve the leg');
  const steps = [1, 2, 3, 4].filter((step) => render(prepared, { step }).svg.includes(SENTENCE));
  expect(steps).toHaveLength(1);
  expect(render(await laid([])).svg).not.toContain('Sleeve the leg');
  expect(render(await laid([[3, 6]])).svg).toContain('First to Volume lug 3: it crosses its other leg.');
  expect(render(await laid([[4, 7]])).svg).toContain('Second to Volume lug 2: it crosses its other leg.');
  expect(render(await laid([[3, 5]])).svg).toContain('to Volume lug 3: it crosses a bare jumper.');
});

it('a note says so at the joint, and what to add', async () => {
  const note = async (more?: Parameters<typeof kit>[0]) => {
    const { circuit, placement } = await laid([[3, 4]], more);
    const [one, ...rest] = bareLegNotes(circuit, placement);
    expect(rest).toEqual([]);
    if (!one) throw new Error('no note');
    if (one.code !== 'bare-legs-cross') throw new Error(one.code);
    const detail = one.detail as Parameters<(typeof wording)['bare-legs-cross']>[0];
    return { path: one.path, ...wording['bare-legs-cross'](detail) };
  };
  expect(await note()).toEqual({
    path: ['joints', 3],
    severity: 'note',
    message:
      'where the parts stand in this drawing, a bare leg of “first” crosses a bare leg of “second”; the drawing says to sleeve it',
    remedy: 'Add sleeving: 1 to “first”, so that its steps say so too.',
  });
  expect((await note({ first: { sleeving: 2 }, second: {} })).remedy).toContain('Add sleeving: both to');
});
