/** Legs have no names: joints are compared up to swapping the two legs of a part, and no further. */
import { expect, it } from 'vitest';
import type { DrawnLug, DrawnWire } from '../../src/inspect/drawing.ts';
import { nameWires, pair, pairKey } from '../../src/inspect/rules/legs.ts';

const area = { x: 0, y: 0, width: 1, height: 1, radius: 0 };

/** A drawing of wires between lugs; a leg is written `r.one` or `r.other`, as the drawing does not tell which is which. */
function drawn(...joints: readonly string[]) {
  const lugs = new Map<string, DrawnLug>();
  const lug = (text: string): DrawnLug => {
    const [part = '', name = ''] = text.split('.');
    const leg = name === 'one' || name === 'other';
    const made: DrawnLug = lugs.get(text) ?? { part, area, ...(leg ? { is: 'leg' } : { is: 'tag', name }) };
    lugs.set(text, made);
    return made;
  };
  const wires = joints.map((text, i): DrawnWire => {
    const [a = '', b = ''] = text.split(' > ');
    return { id: `${i}`, points: [], stretches: [], openings: [], half: 1, ends: [lug(a), lug(b)] };
  });
  const ends = new Map<string, DrawnLug[]>();
  for (const one of lugs.values())
    if (one.is === 'leg') ends.set(one.part, [...(ends.get(one.part) ?? []), one]);
  const legs = new Map([...ends].map(([part, own]) => [part, { ends: own, names: ['1', '2'] }]));
  return { wires, legs };
}

function same(joints: readonly string[], described: readonly string[]): boolean {
  const { wires, legs } = drawn(...joints);
  const wanted = described.map((text) => {
    const [a = '', b = ''] = text.split(' > ');
    return pair(a, b);
  });
  const named = nameWires(wires, legs, new Map(), wanted).map((one) => pairKey(one.pair));
  return named.sort().join() === wanted.map(pairKey).sort().join();
}

it('one part, either way round', () => {
  const described = ['r.1 > a.1', 'r.2 > b.1'];
  expect(same(['r.one > a.1', 'r.other > b.1'], described)).toBe(true);
  expect(same(['r.other > a.1', 'r.one > b.1'], described)).toBe(true);
  expect(same(['r.one > a.1', 'r.one > b.1'], described)).toBe(false);
  expect(same(['r.one > a.1', 'r.other > c.1'], described)).toBe(false);
});

it('two in a row, where the first can only be told by the second', () => {
  const described = ['c.1 > r.1', 'r.2 > a.1', 'c.2 > b.1'];
  for (const [one, other] of [
    ['one', 'other'],
    ['other', 'one'],
  ])
    for (const [uno, due] of [
      ['one', 'other'],
      ['other', 'one'],
    ]) {
      expect(same([`c.${one} > r.${uno}`, `r.${due} > a.1`, `c.${other} > b.1`], described)).toBe(true);
      // In parallel they are not in a row.
      expect(same([`c.${one} > r.${uno}`, `r.${uno} > a.1`, `c.${other} > b.1`], described)).toBe(false);
    }
});

it('a ring of four; joined on from the wrong side, and broken', () => {
  const ring = ['p.2 > q.1', 'q.2 > r.1', 'r.2 > s.1', 's.2 > p.1', 'p.1 > a.1'];
  expect(
    same(['p.one > q.one', 'q.other > r.other', 'r.one > s.one', 's.other > p.other', 'p.other > a.1'], ring),
  ).toBe(true);
  expect(
    same(['p.one > q.one', 'q.other > r.other', 'r.one > s.one', 's.other > p.other', 'p.one > a.1'], ring),
  ).toBe(false);
  expect(
    same(['p.one > q.one', 'q.one > r.other', 'r.one > s.one', 's.other > p.other', 'p.one > a.1'], ring),
  ).toBe(false);
});

it('a wire joined twice is not the same as once', () =>
  expect(same(['a.1 > b.1', 'a.1 > b.1'], ['a.1 > b.1'])).toBe(false));
