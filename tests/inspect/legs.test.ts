/** Legs have no names: joints are compared up to swapping the two legs of a part, and no further. */
import { expect, it } from 'vitest';
import { seeded } from '../../src/common/random.ts';
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

/** All namings of the legs, tried one after another; for drawings small enough. */
function sameByTrying(joints: readonly string[], described: readonly string[]): boolean {
  const parts = [
    ...new Set(
      joints
        .join(' > ')
        .split(' > ')
        .filter((end) => /one|other/.test(end))
        .map((end) => end.split('.')[0]),
    ),
  ];
  const key = (joint: string): string => joint.split(' > ').sort().join(' > ');
  const wanted = described.map(key).sort().join();
  return Array.from({ length: 2 ** parts.length }, (_, bits) => {
    const name = (end: string): string => {
      const [part = '', lug = ''] = end.split('.');
      const turned = ((bits >> parts.indexOf(part)) & 1) === 1;
      return lug === 'one'
        ? `${part}.${turned ? 2 : 1}`
        : lug === 'other'
          ? `${part}.${turned ? 1 : 2}`
          : end;
    };
    return joints
      .map((joint) => key(joint.split(' > ').map(name).join(' > ')))
      .sort()
      .join();
  }).includes(wanted);
}

it('any net of components is told to be the one described, or not, as trying every naming tells', () => {
  const random = seeded(577);
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T;
  let alike = 0;
  for (let i = 0; i < 400; i++) {
    const parts = ['p', 'q', 'r', 's'].slice(0, 1 + Math.floor(random() * 4));
    const ends = [...parts.flatMap((part) => [`${part}.1`, `${part}.2`]), 'a.1', 'b.1'];
    const described = Array.from(
      { length: 2 + Math.floor(random() * 5) },
      () => `${pick(ends)} > ${pick(ends)}`,
    );
    const turned = new Set(parts.filter(() => random() < 0.5));
    let drawnSo = described.map((joint) =>
      joint
        .split(' > ')
        .map((end) => {
          const [part = '', lug = ''] = end.split('.');
          if (!parts.includes(part)) return end;
          return `${part}.${(lug === '1') === turned.has(part) ? 'other' : 'one'}`;
        })
        .sort(() => random() - 0.5)
        .join(' > '),
    );
    // In half of them one end is soldered elsewhere.
    if (random() < 0.5) {
      const at = Math.floor(random() * drawnSo.length);
      const drawnEnds = [...parts.flatMap((part) => [`${part}.one`, `${part}.other`]), 'a.1', 'b.1'];
      drawnSo = drawnSo.map((joint, k) =>
        k === at ? `${joint.split(' > ')[0]} > ${pick(drawnEnds)}` : joint,
      );
    }
    // Legs that no wire ends on are drawn all the same.
    const expected = sameByTrying(drawnSo, described);
    alike += Number(expected);
    expect(same(drawnSo, described), `${drawnSo.join('; ')} as ${described.join('; ')}`).toBe(expected);
  }
  expect(alike).toBeGreaterThan(150);
  expect(alike).toBeLessThan(350);
});

it('where none fits, only what differs is named otherwise', () => {
  const { wires, legs } = drawn('r.other > a.1', 'r.one > b.1', 'c.one > a.1', 'c.other > x.1');
  const described = [pair('r.1', 'a.1'), pair('r.2', 'b.1'), pair('c.1', 'a.1'), pair('c.2', 'b.1')];
  const named = nameWires(wires, legs, new Map(), described).map((one) => pairKey(one.pair));
  expect(named.slice(0, 2)).toEqual(['a.1 > r.1', 'b.1 > r.2']);
  expect(named.filter((joint) => /leg/.test(joint))).toEqual([]);
});

it('a wire that ends on no lug, or on a case, is named so', () => {
  const { wires } = drawn('a.1 > b.1');
  const surface: DrawnLug = { part: 'pot', is: 'surface', area };
  const ends = (...[from, to]: DrawnWire['ends']) =>
    wires.map((wire): DrawnWire => ({ ...wire, ends: [from, to] }));
  const name = (one: readonly DrawnWire[]) =>
    nameWires(one, new Map(), new Map([[surface, 'case']]), []).map((wire) => pairKey(wire.pair));
  expect(name(ends(undefined, surface))).toEqual(['? > pot.case']);
  expect(name(ends(surface, undefined))).toEqual(['? > pot.case']);
});

it('many pairs that fit either way do not make the search endless, and what differs is told all the same', () => {
  const pairs = Array.from({ length: 20 }, (_, i) => [`p${i}`, `q${i}`] as const);
  const joints = (one: string, other: string): readonly string[] =>
    pairs.flatMap(([p, q]) => [`${p}.${one} > ${q}.${one}`, `${p}.${other} > ${q}.${other}`]);
  const { wires, legs } = drawn(...joints('one', 'other'), 'r.one > a.1');
  const described = [...joints('1', '2'), 'r.1 > b.1'].map((text) => {
    const [a = '', b = ''] = text.split(' > ');
    return pair(a, b);
  });
  const wanted = new Set(described.map(pairKey));
  const named = nameWires(wires, legs, new Map(), described).map((one) => pairKey(one.pair));
  expect(named.filter((joint) => !wanted.has(joint))).toEqual(['a.1 > r.1']);
});
