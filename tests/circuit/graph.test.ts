/** The graph of a kit: its nets and what they carry, its settings in order, room taken at lugs, a pot turned round, and positions in words. */
import { describe, expect, it } from 'vitest';
import { buildGraph } from '../../src/circuit/build.ts';
import { endAt, jointsAtLugs, type State } from '../../src/circuit/circuit.ts';
import { DisjointSet } from '../../src/circuit/disjoint-set.ts';
import { exchanged } from '../../src/circuit/exchange.ts';
import { positionCell, positionText, whereText } from '../../src/circuit/position.ts';
import { andList } from '../../src/common/quoting.ts';
import { seeded } from '../../src/common/random.ts';
import { type Joint, partNamed } from '../../src/describe/kit.ts';
import { controlsOf } from '../../src/parts/index.ts';
import { makeKit } from '../analyse/kits.ts';

const parts = {
  a: { kind: 'single-coil' },
  b: { kind: 'single-coil' },
  v: { kind: 'pot', value: '250k' },
  s: { kind: 'lever-3' },
  out: { kind: 'jack' },
};

describe('nets', () => {
  const roles = (...joints: readonly string[]) => {
    const { nets, lugs } = buildGraph(makeKit({ parts, joints }));
    for (const [i, net] of nets.entries()) {
      expect(net.index).toBe(i);
      for (const lug of net.lugs) expect(lugs.get(lug)?.net).toBe(i);
    }
    // Every lug is on just one.
    expect(nets.flatMap((net) => net.lugs).sort()).toEqual([...lugs.keys()].sort());
    return Object.fromEntries(
      nets.flatMap(({ lugs: on, role, pickup }) => on.map((lug) => [lug, [role, pickup]])),
    );
  };
  it('are ground with the sleeve on them, the output with the tip, a pickup’s with just one hot lead', () => {
    const found = roles('a.hot > s.A1', 'a.ground > v.1', 'v.1 > out.sleeve', 'v.2 > out.tip');
    expect(found['s.A1']).toEqual(['pickup', 'a']);
    expect(found['v.1']).toEqual(['ground', undefined]);
    expect(found['v.2']).toEqual(['output', undefined]);
    expect(found['b.hot']).toEqual(['pickup', 'b']);
    expect(found['b.ground']).toEqual(['other', undefined]);
  });
  it('are ground before output, output before a pickup’s, and nobody’s with two hot leads', () => {
    expect(roles('a.hot > out.tip')['a.hot']).toEqual(['output', undefined]);
    expect(roles('a.hot > out.tip', 'out.tip > out.sleeve')['a.hot']).toEqual(['ground', undefined]);
    expect(roles('a.hot > b.hot')['a.hot']).toEqual(['other', undefined]);
  });
  it('of a joint to nowhere are none', () =>
    expect(() => roles('a.hot > s.Z9')).toThrow(/names s\.Z9, which does not exist/));
});

it('settings: the first switch turns slowest, and each has the contacts of all', () => {
  const { settings } = buildGraph(
    makeKit({ parts: { s: { kind: 'lever-3' }, t: { kind: 'lever-3' } }, joints: [] }),
  );
  expect(settings.map(({ positions: at }) => `${at.s}${at.t}`).join(' ')).toBe('11 12 13 21 22 23 31 32 33');
  const closed = settings[5]?.closedContacts.flat() ?? [];
  expect(closed).toEqual(expect.arrayContaining(['s.A0', 's.A2', 't.B0', 't.B3']));
  expect(closed).not.toContain('s.A3');
  expect(closed).not.toContain('t.B2');
  expect(buildGraph(makeKit({ parts: { j: { kind: 'jack' } }, joints: [] })).settings).toEqual([
    { positions: {}, positionNames: {}, closedContacts: [] },
  ]);
});

it('joints take room at both their lugs, but for the bend of a lug onto its own part', () => {
  const { joints } = makeKit({
    parts,
    joints: ['v.1 > v.case', 'v.1 > a.ground', 'v.case > b.ground', 'v.1 > v.case'],
  });
  const bent = joints.map((joint, i): Joint => (i === 0 ? { ...joint, kind: 'bend' } : joint));
  const at = jointsAtLugs(bent);
  expect(at.get('v.1')?.map(({ index }) => index)).toEqual([1, 3]);
  expect(at.get('v.case')?.map(({ index }) => index)).toEqual([2, 3]);
  const across = bent.map((joint, i): Joint => (i === 1 ? { ...joint, kind: 'bend' } : joint));
  expect(
    jointsAtLugs(across)
      .get('v.1')
      ?.map(({ index }) => index),
  ).toEqual([1, 3]);
  expect(endAt('a.b.c')).toEqual({ part: 'a.b', lug: 'c' });
});

describe('a pot with the ends of its track exchanged', () => {
  const kit = makeKit({
    parts,
    joints: ['v.1 > out.sleeve', 'a.hot > v.3', 'v.2 > out.tip', 'b.hot > s.A1', 'v.3 > v.1'],
  });
  const [control] = controlsOf(partNamed(kit, 'v'));
  if (!control) throw new Error('no control');
  const { kit: turned, ends, used, joints } = exchanged(kit, control);
  it('has every joint at lug 1 on lug 3, every one at lug 3 on lug 1, and all others as they were', () => {
    expect(turned.joints.map(({ from, to }) => `${from.part}.${from.lug} > ${to.part}.${to.lug}`)).toEqual([
      'v.3 > out.sleeve',
      'a.hot > v.1',
      'v.2 > out.tip',
      'b.hot > s.A1',
      'v.1 > v.3',
    ]);
    expect(exchanged(turned, control).kit.joints).toEqual(kit.joints);
  });
  it('names what must be moved, the clockwise end first', () => {
    expect([ends, used]).toEqual([
      ['1', '3'],
      ['1', '3'],
    ]);
    expect(joints.map(({ joint, end, lug }) => `${joint.index} ${end} ${lug}`)).toEqual([
      '1 to 3',
      '4 from 3',
      '0 from 1',
      '4 to 1',
    ]);
    const one = exchanged({ ...kit, joints: kit.joints.slice(0, 1) }, control);
    expect([one.used, one.joints.length]).toEqual([['1'], 1]);
  });
});

it('sets are joined as a slow way by lists joins them', () => {
  const random = seeded(4);
  for (let run = 0; run < 20; run++) {
    const sets = new DisjointSet();
    const names = Array.from({ length: 12 }, (_, i) => `n${i}`);
    let lists = names.map((name) => [name]);
    for (let i = 0; i < 9; i++) {
      const [a, b] = [names[Math.floor(random() * 12)] ?? '', names[Math.floor(random() * 12)] ?? ''];
      sets.join(a, b);
      const both = lists.filter((list) => list.includes(a) || list.includes(b));
      lists = [...lists.filter((list) => !both.includes(list)), both.flat()];
    }
    for (const a of names)
      for (const b of names)
        expect(sets.same(a, b)).toBe(lists.some((list) => list.includes(a) && list.includes(b)));
  }
});

describe('positions in words', () => {
  const state = (settings: Readonly<Record<string, number>>): State => ({
    positions: settings,
    positionNames: {},
    closedContacts: [],
    sounding: [],
    shorted: false,
  });
  const five = [1, 2, 3, 4, 5].map((selector) => state({ selector }));
  const pick = (...numbers: readonly number[]) => numbers.flatMap((n) => five[n - 1] ?? []);
  it.each([
    [[2], ' in position 2'],
    [[2, 4], ' in positions 2 and 4'],
    [[1, 2, 5], ' in positions 1, 2 and 5'],
    [[3, 3, 4], ' in positions 3 and 4'],
    [[1, 2, 3, 4, 5], ' in every position'],
    [[], ''],
  ])('%j:%s', (numbers, words) => expect(whereText({ states: five }, pick(...numbers))).toBe(words));
  it('of two switches say both, one setting after the other; without a switch nothing', () => {
    const two = [1, 2].flatMap((a) => [1, 2].map((b) => state({ a, b })));
    expect(whereText({ states: two }, two.slice(1, 3))).toBe(
      ' with a in position 1, b in position 2; a in position 2, b in position 1',
    );
    expect(whereText({ states: two }, two)).toBe(' in every position');
    expect(whereText({ states: [state({})] }, [state({})])).toBe('');
  });
  it('short and long', () => {
    expect([
      positionCell(state({ a: 1, b: 2 })),
      positionCell(state({})),
      positionText(state({ a: 1, b: 2 })),
      positionText(state({})),
    ]).toEqual(['a 1, b 2', 'always', 'a in position 1, b in position 2', '']);
    expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(andList)).toEqual(['', 'a', 'a and b', 'a, b and c']);
  });
});
