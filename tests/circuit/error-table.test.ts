/** What is wrong with a kit as a circuit, error by error: its place, and what it carries to be worded. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { kitFromValue } from '../../src/describe/read.ts';
import { findErrors } from '../../src/solve/errors.ts';

type Parts = Readonly<Record<string, object>>;
const coil = { kind: 'single-coil' };
const jack = { kind: 'jack' };
const pot = { kind: 'pot', value: '250k' };
const lever = { kind: 'lever-3' };
const point = { kind: 'ground-point' };
const resistor = { kind: 'resistor', value: '220k' };

function problems(parts: Parts, joints: readonly unknown[]) {
  const { draft } = kitFromValue({ kit: 'a', title: 'a', parts, joints }, 'a.ts');
  if (!draft) throw new Error('no draft');
  return findErrors(draft).map(({ code, path, detail }) => [code, path.join('.'), detail] as const);
}
const only = (parts: Parts, joints: readonly unknown[]) => {
  const [first, ...more] = problems(parts, joints);
  expect(more).toEqual([]);
  return first;
};
/** A pickup straight to the jack, and what is tried besides. */
const plain: Parts = { a: coil, out: jack };
const sound = ['a.hot > out.tip', 'a.ground > out.sleeve'];

it('a sound kit has none', () => expect(problems(plain, sound)).toEqual([]));

describe('what a joint may join', () => {
  const parts = { ...plain, v: pot, w: pot, s: lever, r: resistor, c: { kind: 'capacitor', value: '22n' } };
  const joined = [
    'v.1 > a.hot',
    'w.1 > v.1',
    's.A0 > w.1',
    'r.1 > s.A0',
    'c.1 > s.A0',
    'r.2 > w.1',
    'c.2 > w.1',
  ];
  const wrong = (joint: object) =>
    problems(parts, [...sound, ...joined, joint]).filter(([, path]) => path.startsWith('joints.9.'));
  it.each([
    [{ leg: 'v.2 > w.2' }, ['not-a-leg', 'joints.9.leg', { from: 'v.2', to: 'w.2' }]],
    [{ jumper: 'v.2 > w.2' }, ['jumper-across-parts', 'joints.9.jumper', { from: 'v.2', to: 'w.2' }]],
    [{ bend: 'v.2 > w.case' }, ['bend-needs-case', 'joints.9.bend', { from: 'v.2', to: 'w.case' }]],
    [{ bend: 'v.2 > v.3' }, ['bend-needs-case', 'joints.9.bend', { from: 'v.2', to: 'v.3' }]],
    [{ bend: 'v.case > v.2' }, ['bend-needs-case', 'joints.9.bend', { from: 'v.case', to: 'v.2' }]],
    [{ wire: 'v.2 > v.2' }, ['lug-to-itself', 'joints.9.wire', { lug: 'v.2' }]],
    [{ jumper: 'v.2 > v.2' }, ['lug-to-itself', 'joints.9.jumper', { lug: 'v.2' }]],
    [{ braid: 'a.hot > out.tip' }, ['joined-twice', 'joints.9.braid', { a: 'a.hot', b: 'out.tip' }]],
    [{ wire: 'out.tip > a.hot' }, ['joined-twice', 'joints.9.wire', { a: 'out.tip', b: 'a.hot' }]],
  ] as const)('%j', (joint, found) => expect(wrong(joint)).toEqual([found]));

  it.each([
    { leg: 'r.1 > v.2' },
    { leg: 'v.2 > r.1' },
    { leg: 'c.2 > r.2' },
    { jumper: 's.A1 > s.A2' },
    { bend: 'v.2 > v.case' },
    { braid: 'v.2 > w.3' },
    { wire: 'v.2 > w.case' },
  ])('%j is right', (joint) => expect(wrong(joint)).toEqual([]));

  it('a leg ends at one place; of two legs that are joined either may be the one that runs on', () => {
    const on = (...legs: readonly string[]) =>
      problems(parts, [...sound, ...joined, ...legs.map((leg) => ({ leg }))]).filter(
        ([code]) => code === 'leg-twice',
      );
    const forked = { leg: 'r.1', here: 'w.2', there: 'v.2', joint: 'r.1 > v.2' };
    expect(on('r.1 > v.2', 'w.2 > r.1')).toEqual([['leg-twice', 'joints.10.leg', forked]]);
    expect(on('r.1 > v.2', 'r.2 > v.2', 'c.2 > v.3')).toEqual([]);
    // The capacitor's leg runs on to the lug, the resistor's ends on it.
    expect(on('r.1 > c.1', 'c.1 > v.2')).toEqual([]);
    expect(on('c.1 > v.2', 'r.1 > c.1')).toEqual([]);
    expect(on('c.1 > v.2', 'r.1 > c.1', 'r.1 > w.2')).toEqual([
      ['leg-twice', 'joints.11.leg', { leg: 'r.1', here: 'w.2', there: 'c.1', joint: 'r.1 > c.1' }],
    ]);
  });

  it('a lug holds three, a pot’s case eleven; the joint too many is named, and how many there are', () => {
    const points = Object.fromEntries(Array.from({ length: 13 }, (_, i) => [`g${i}`, point]));
    const on = (lug: string, count: number) =>
      problems({ ...plain, v: pot, ...points }, [
        ...sound,
        'v.1 > a.hot',
        'v.3 > out.sleeve',
        ...Array.from({ length: count }, (_, i) => `g${i}.1 > ${lug}`),
      ]).filter(([code]) => code === 'crowded-lug');
    expect([on('v.2', 3), on('v.case', 11)]).toEqual([[], []]);
    expect(on('v.2', 4)).toEqual([['crowded-lug', 'joints.7.wire', { lug: 'v.2', count: 4, most: 3 }]]);
    expect(on('v.2', 6)).toEqual([['crowded-lug', 'joints.7.wire', { lug: 'v.2', count: 6, most: 3 }]]);
    expect(on('v.case', 12)).toEqual([
      ['crowded-lug', 'joints.15.wire', { lug: 'v.case', count: 12, most: 11 }],
    ]);
  });
});

describe('names', () => {
  const parts = { ...plain, selector: lever };
  const named = (end: string) =>
    problems(parts, [...sound, 'selector.A0 > out.tip', 'selector.A1 > out.tip', `selector.A2 > ${end}`])
      .filter(([code]) => code.startsWith('unknown'))
      .map(([code, path, detail]) => [code, path, (detail as { nearest?: string }).nearest]);
  it.each([
    ['selectro.A3', [['unknown-part', 'joints.4.wire.to', 'selector']]],
    ['nothing.A3', [['unknown-part', 'joints.4.wire.to', undefined]]],
    ['out.tipp', [['unknown-lug', 'joints.4.wire.to.lug', 'tip']]],
    ['out.ring', [['unknown-lug', 'joints.4.wire.to.lug', undefined]]],
    // Of two characters one replaced is another lug; two exchanged are a slip of the hand.
    ['selector.A9', [['unknown-lug', 'joints.4.wire.to.lug', undefined]]],
    ['selector.3A', [['unknown-lug', 'joints.4.wire.to.lug', 'A3']]],
    ['selector.A33', [['unknown-lug', 'joints.4.wire.to.lug', 'A3']]],
    [
      'selectro.A33',
      [
        ['unknown-part', 'joints.4.wire.to', 'selector'],
        ['unknown-lug', 'joints.4.wire.to.lug', 'A3'],
      ],
    ],
  ] as const)('%s', (end, found) => expect(named(end)).toEqual(found));
  it('a misspelt name is one mistake: what it may have meant is not taken for a joint that is there already', () => {
    const codes = (joint: object) =>
      problems({ ...parts, r: resistor }, [
        ...sound,
        'selector.A0 > out.tip',
        { leg: 'r.1 > out.tip' },
        { leg: 'r.2 > out.sleeve' },
        joint,
      ]).map(([code]) => code);
    expect(codes({ wire: 'a.hot > outt.tip' })).toEqual(['unknown-part']);
    expect(codes({ leg: 'r.1 > selectr.A0' })).toEqual(['unknown-part']);
    expect(codes({ leg: 'r.1 > selector.A00' })).toEqual(['unknown-lug']);
  });
  it('what exists is told with them', () => {
    const [unknown] = problems(plain, [...sound, 'x.1 > out.ring']);
    expect(unknown?.[2]).toEqual({ part: 'x', allowed: ['a', 'out'] });
    const [, lug] = problems(plain, [...sound, 'x.1 > out.ring']);
    expect(lug?.[2]).toEqual({
      part: 'out',
      lug: 'ring',
      what: 'mono output jack',
      allowed: ['tip', 'sleeve'],
    });
  });
  it('a joint that names nothing keeps what stands unjoined from being told', () =>
    expect(problems({ ...plain, v: pot }, [...sound, 'nothing.1 > out.tip']).map(([code]) => code)).toEqual([
      'unknown-part',
    ]));
});

describe('what a kit needs', () => {
  it('one jack, and a pickup', () => {
    expect(only({ a: coil, b: coil }, ['a.hot > b.hot'])?.slice(0, 2)).toEqual(['no-jack', 'parts']);
    const missing = problems({ v: pot, out: jack }, ['v.2 > out.tip', 'v.1 > out.sleeve']);
    expect(missing).toEqual([['no-pickup', 'parts', {}]]);
    expect(problems({ v: pot, w: pot }, ['v.1 > w.1']).map(([code]) => code)).toEqual([
      'no-jack',
      'no-pickup',
    ]);
    const two = problems({ ...plain, two: jack, three: jack }, [
      ...sound,
      'two.tip > out.tip',
      'two.sleeve > out.sleeve',
      'three.tip > out.tip',
      'three.sleeve > out.sleeve',
    ]);
    expect(two).toEqual([['several-jacks', 'parts.two', { parts: ['out', 'two', 'three'] }]]);
  });

  it.each([
    [{ v: pot }, [], ['not-connected', 'parts.v', { part: 'v', what: 'pot' }]],
    [
      { r: resistor },
      ['r.2 > out.tip'],
      ['leg-not-connected', 'parts.r', { part: 'r', leg: '1', what: 'resistor' }],
    ],
    [{ b: coil }, ['b.ground > out.sleeve'], ['pickup-no-hot', 'parts.b', { part: 'b', lug: 'hot' }]],
    // Of lugs that may well be free nothing is said, nor of a return that something else leads to ground.
    [{ v: pot }, ['v.2 > out.tip'], undefined],
    [{ s: lever }, ['s.B2 > out.tip'], undefined],
  ] as const)('%j with %j', (more, joints, found) =>
    expect(only({ ...plain, ...more }, [...sound, ...joints])).toEqual(found),
  );
  it('both lugs of the jack', () => {
    expect(problems(plain, ['a.hot > a.ground', 'a.hot > out.tip'])).toEqual([
      ['jack-not-connected', 'parts.out', { part: 'out', lug: 'sleeve', signal: false }],
    ]);
    expect(problems(plain, ['a.hot > a.ground', 'a.hot > out.sleeve'])).toEqual([
      ['jack-not-connected', 'parts.out', { part: 'out', lug: 'tip', signal: true }],
    ]);
  });

  it('twelve pickups and 1024 settings of its switches at most', () => {
    const coils = (count: number) => {
      const names = Array.from({ length: count }, (_, i) => `p${i}`);
      const parts = Object.fromEntries(names.map((name) => [name, coil]));
      const joints = names.flatMap((name) => [`${name}.hot > a.hot`, `${name}.ground > a.ground`]);
      return problems({ ...plain, ...parts }, [...sound, ...joints]).filter(([code]) => code === 'too-many');
    };
    expect(coils(11)).toEqual([]);
    expect(coils(12)).toEqual([['too-many', 'parts', { what: 'pickups', count: '13', most: 12 }]]);
    const toggle = { kind: 'switch', lugs: { left: ['A1', 'A0'] }, positions: [[], [['A0', 'A1']]] };
    const toggles = (count: number) =>
      // Nothing else is asked of a kit whose jack is not joined.
      problems(
        { ...plain, ...Object.fromEntries(Array.from({ length: count }, (_, i) => [`t${i}`, toggle])) },
        ['a.hot > a.ground'],
      ).filter(([code]) => code === 'too-many');
    expect(toggles(10)).toEqual([]);
    const what = 'settings of its switches';
    expect(toggles(11)).toEqual([['too-many', 'parts', { what, count: '2048', most: 1024 }]]);
    expect(toggles(19)).toEqual([['too-many', 'parts', { what, count: '524288', most: 1024 }]]);
    expect(toggles(20)).toEqual([['too-many', 'parts', { what, count: 'more than a million', most: 1024 }]]);
  });
});

describe('ground', () => {
  it('a jack with the cases, or the strings, on its tip is the wrong way round', () => {
    const parts = { ...plain, v: pot, g: point };
    const swapped = (joints: readonly string[]) =>
      problems(parts, joints).filter(([code]) => code === 'jack-swapped');
    const turned = [
      'a.ground > v.case',
      'v.case > out.tip',
      'v.1 > v.case',
      'v.3 > a.hot',
      'v.2 > out.sleeve',
    ];
    // And nothing else is said: every other word about ground would tell to join it to the signal.
    expect(problems(parts, [...turned, 'g.1 > v.case'])).toEqual([
      [
        'jack-swapped',
        'parts.out',
        { part: 'out', on: ['v.case', 'g.1'], tip: 'out.tip', sleeve: 'out.sleeve' },
      ],
    ]);
    // With a ground on the sleeve too, or a pickup’s return, it is something else that is wrong.
    expect(swapped([...turned, 'g.1 > out.sleeve'])).toEqual([]);
    expect(
      swapped(['a.ground > out.sleeve', 'v.case > out.tip', 'v.3 > a.hot', 'v.2 > out.tip', 'g.1 > v.case']),
    ).toEqual([]);
    // Right as it should be.
    expect(
      swapped(['a.ground > v.case', 'v.case > out.sleeve', 'v.3 > a.hot', 'v.2 > out.tip', 'g.1 > v.case']),
    ).toEqual([]);
  });

  it('strings belong on the sleeve: they hum if they float, and where they are on the signal its lugs are named', () => {
    const strings = (more: Parts, ...joints: readonly string[]) =>
      problems({ ...plain, g: point, v: pot, ...more }, [
        ...sound,
        'v.3 > a.hot',
        'v.1 > out.sleeve',
        ...joints,
      ]).filter(([code]) => code === 'ground-point-no-ground');
    const told = (on: readonly string[]) => [
      ['ground-point-no-ground', 'parts.g', { part: 'g', sleeve: 'out.sleeve', on }],
    ];
    expect(strings({}, 'g.1 > out.sleeve')).toEqual([]);
    expect(strings({}, 'g.1 > v.1')).toEqual([]);
    expect(strings({}, 'g.1 > v.case')).toEqual(told([]));
    expect(strings({}, 'a.hot > g.1')).toEqual(told(['a.hot']));
    expect(strings({}, 'g.1 > v.2')).toEqual(told(['v.2']));
    expect(strings({}, 'g.1 > v.3')).toEqual(told(['v.3']));
    expect(strings({}, 'g.1 > out.tip')).toEqual(told(['out.tip']));
    expect(strings({ s: lever }, 's.A0 > g.1')).toEqual(told(['s.A0']));
    expect(strings({ s: lever }, 's.A3 > g.1', 'g.1 > s.A2')).toEqual(told(['s.A3', 's.A2']));
    // Through a resistor against shocks, when nothing else meets the strings.
    expect(strings({ r: resistor }, 'g.1 > r.1', 'r.2 > out.sleeve')).toEqual([]);
    expect(strings({ r: resistor }, 'g.1 > r.1', 'r.2 > v.1')).toEqual([]);
    expect(strings({ r: resistor }, 'g.1 > r.1', 'r.2 > out.sleeve', 'g.1 > v.case')).toEqual(told([]));
    expect(strings({ r: resistor }, 'g.1 > r.1', 'r.2 > v.2')).toEqual(told([]));
    // A second point beside the first on the same network is guarded by it too.
    expect(strings({ h: point, r: resistor }, 'g.1 > h.1', 'h.1 > r.1', 'r.2 > out.sleeve')).toEqual([]);
  });

  it('a pickup without a way back is named, with the lug that has none', () => {
    const parts = { ...plain, b: coil };
    expect(only(parts, [...sound, 'b.hot > out.tip'])).toEqual([
      'pickup-no-ground',
      'parts.b',
      { part: 'b', lug: 'ground' },
    ]);
    // Silent, as its hot lead leads nowhere, but with a way back through the other's coil.
    const silent = problems({ ...parts, s: lever }, [...sound, 'b.hot > s.A1', 'b.ground > a.hot']);
    expect(silent.filter(([code]) => code === 'pickup-no-ground')).toEqual([]);
    const apart = problems({ ...parts, s: lever }, [...sound, 'b.hot > s.A1', 'b.ground > s.B1']);
    expect(apart.filter(([code]) => code === 'pickup-no-ground')).toHaveLength(1);
    // Through a coil that is itself in series, or through any position of a switch.
    expect(
      problems({ ...parts, s: lever }, [...sound, 'b.hot > out.tip', 'b.ground > s.A0', 's.A2 > out.sleeve']),
    ).toEqual([]);
  });
});

describe('states', () => {
  const volume = { a: coil, v: pot, out: jack };
  it('without a switch the place of a silent or shorted output is the jack, with one the first switch', () => {
    // A pot whose ends are both on the pickup cannot be put right by exchanging them.
    const dead = ['a.hot > v.1', 'v.1 > v.3', 'a.ground > out.sleeve', 'out.tip > b.1', 'b.2 > out.sleeve'];
    const [silent] = problems({ ...volume, b: resistor }, dead);
    expect(silent).toEqual(['no-output', 'parts.out', { where: '', joints: [] }]);
    const [switched] = problems({ ...volume, b: resistor, s: lever, t: lever }, [
      ...dead,
      's.A1 > s.A2',
      't.A1 > t.A2',
    ]);
    expect(switched).toEqual(['no-output', 'parts.s', { where: ' in every position', joints: [] }]);
  });
  it('a volume with its ends exchanged is no error: it is at full at the other end', () => {
    const rest = ['a.ground > out.sleeve', 'v.2 > out.tip', 'a.hot > v.1'];
    expect(problems(volume, [...rest, 'out.sleeve > v.3'])).toEqual([]);
    expect(problems(volume, [...rest, 'v.3 > out.sleeve'])).toEqual([]);
  });
  it('a joint that shorts the output is the place, and those that meet it there are named', () => {
    const parts = { a: coil, out: jack, v: pot, g: point };
    const right = [
      'a.hot > v.3',
      'a.ground > out.sleeve',
      'v.2 > out.tip',
      'v.1 > v.case',
      'v.case > out.sleeve',
      'g.1 > v.case',
    ];
    expect(only(parts, [...right, 'v.2 > v.case'])).toEqual([
      'output-shorted',
      'joints.6',
      { where: '', joints: ['v.2 > v.case', 'v.2 > out.tip'] },
    ]);
  });
  it('of a short among more than two hundred joints the jack is the place: they are not tried one by one', () => {
    const points = Array.from({ length: 197 }, (_, i) => `g${i}`);
    const chain = points.map((name, i) => `${name}.1 > ${i === 0 ? 'v.case' : `g${i - 1}.1`}`);
    const parts = { a: coil, out: jack, v: pot, ...Object.fromEntries(points.map((name) => [name, point])) };
    const right = ['a.hot > v.3', 'a.ground > out.sleeve', 'v.2 > out.tip', 'v.case > out.sleeve'];
    expect(only(parts, [...right, ...chain, 'v.2 > v.case'])).toEqual([
      'output-shorted',
      'parts.out',
      { where: '', joints: [] },
    ]);
  });
});
