import { describe, expect, test } from 'vitest';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { readKit } from '../../src/describe/read.ts';
import { findErrors } from '../../src/solve/errors.ts';

/** Errors of a kit given by its parts and joints, as `code message`. */
function errors(parts: Readonly<Record<string, object>>, joints: readonly unknown[]): readonly string[] {
  const { draft, problems, source } = readKit(
    JSON.stringify({ kit: 'a', title: 'a', parts, joints }),
    'a.json',
  );
  return toDiagnostics([...problems, ...(draft ? findErrors(draft) : [])], source).map(
    ({ code, message }) => `${code} ${message}`,
  );
}
const codes = (...given: Parameters<typeof errors>): readonly string[] =>
  errors(...given).map((text) => text.split(' ')[0] ?? '');

const coil = { kind: 'single-coil' };
const jack = { kind: 'jack' };
const lever = { kind: 'lever-3' };

describe('the way back to ground', () => {
  test('through another coil: two pickups in series', () => {
    expect(
      codes({ a: coil, b: coil, out: jack }, [
        'a.hot > out.tip',
        'a.ground > b.hot',
        'b.ground > out.sleeve',
      ]),
    ).toEqual([]);
  });
  test('through a switch, in whatever position', () => {
    const joints = ['a.hot > out.tip', 'a.ground > s.A0', 's.A1 > out.sleeve', 's.A2 > s.A1', 's.A3 > s.A2'];
    expect(codes({ a: coil, s: lever, out: jack }, joints)).toEqual([]);
  });
  test('not through its own coil', () => {
    const parts = { a: coil, b: coil, out: jack, r: { kind: 'resistor', value: '1k' } };
    const joints = [
      'b.hot > out.tip',
      'b.ground > out.sleeve',
      'a.hot > out.tip',
      'a.ground > r.1',
      'r.2 > out.tip',
    ];
    expect(errors(parts, joints)).toEqual(['pickup-no-ground “a” has no path to ground']);
  });
  test('with its leads exchanged a pickup is heard all the same: alone, through a resistor, and in series', () => {
    const beside = ['b.hot > out.tip', 'b.ground > out.sleeve', 'a.hot > out.sleeve'];
    expect(codes({ a: coil, b: coil, out: jack }, [...beside, 'a.ground > out.tip'])).toEqual([]);
    const parts = { a: coil, b: coil, out: jack, r: { kind: 'resistor', value: '1k' } };
    expect(codes(parts, [...beside, 'a.ground > r.1', 'r.2 > out.tip'])).toEqual([]);
    expect(
      codes({ a: coil, b: coil, out: jack }, [
        'a.hot > out.tip',
        'a.ground > b.ground',
        'b.hot > out.sleeve',
      ]),
    ).toEqual([]);
  });
  test('through a resistor or a capacitor in the way of the signal or of the ground', () => {
    for (const between of [
      { kind: 'resistor', value: '220k' },
      { kind: 'capacitor', value: '10n' },
    ]) {
      const parts = { a: coil, x: between, out: jack };
      expect(codes(parts, ['a.hot > x.1', 'x.2 > out.tip', 'a.ground > out.sleeve'])).toEqual([]);
      expect(codes(parts, ['a.hot > out.tip', 'a.ground > x.1', 'x.2 > out.sleeve'])).toEqual([]);
    }
  });
  test('two coils that share a return which leads nowhere', () => {
    expect(
      codes({ a: coil, b: coil, out: jack, g: { kind: 'ground-point' } }, [
        'a.hot > out.tip',
        'b.hot > out.tip',
        'a.ground > b.ground',
        'g.1 > out.sleeve',
      ]),
    ).toEqual(['pickup-no-ground', 'pickup-no-ground']);
  });
});

describe('strings', () => {
  const network = { r: { kind: 'resistor', value: '220k' }, c: { kind: 'capacitor', value: '1n5' } };
  const parts = { a: coil, out: jack, g: { kind: 'ground-point' }, ...network };
  const sound = ['a.hot > out.tip', 'a.ground > out.sleeve'];
  const across = (end: string) => [`r.1 > ${end}`, 'r.2 > out.sleeve', `c.1 > ${end}`, 'c.2 > out.sleeve'];
  test('may go to ground through a resistor and a capacitor, against shocks', () => {
    expect(codes(parts, [...sound, ...across('g.1')])).toEqual([]);
  });
  test('may not stand on the signal with the same across it, nor end at components that go elsewhere', () => {
    expect(codes(parts, [...sound, 'g.1 > r.1', ...across('a.hot')])).toEqual(['ground-point-no-ground']);
    const elsewhere = ['g.1 > r.1', 'r.2 > out.tip', 'g.1 > c.1', 'c.2 > out.tip'];
    expect(codes(parts, [...sound, ...elsewhere])).toEqual(['ground-point-no-ground']);
  });
});

describe('states', () => {
  const joints = ['n.ground > out.sleeve', 'b.ground > out.sleeve', 's.A0 > out.tip'];
  const parts = { n: coil, b: coil, s: lever, out: jack };
  test('silent ones are named by the switch’s position', () => {
    expect(errors(parts, [...joints, 'n.hot > s.A1', 'b.hot > s.A2'])).toEqual([
      'no-output no output in position 3',
    ]);
  });
  test('when all are silent it is said once', () => {
    expect(errors(parts, [...joints, 'n.hot > s.B1', 'b.hot > s.B2'])).toEqual([
      'no-output no output in every position',
    ]);
  });
  test('of several switches those are named that make the difference', () => {
    const two = { ...parts, t: lever };
    const found = errors(two, [
      ...joints,
      'n.hot > s.A1',
      'b.hot > s.A2',
      'n.hot > s.A3',
      'out.tip > t.A0',
      'out.sleeve > t.A2',
    ]);
    expect(found).toEqual([
      'output-shorted the output is shorted: the tip is connected to ground with t in position 2',
    ]);
  });
  test('no exchange is proposed that would not fix it', () => {
    const volume = { kind: 'pot', value: '250k' };
    const { draft, source } = readKit(
      JSON.stringify({
        kit: 'a',
        title: 'a',
        parts: { n: coil, v: volume, out: jack },
        joints: ['n.hot > v.3', 'v.1 > out.tip', 'v.1 > out.sleeve', 'n.ground > out.sleeve'],
      }),
      'a.json',
    );
    const [found] = toDiagnostics(draft ? findErrors(draft) : [], source);
    expect(found?.code).toBe('output-shorted');
    expect(found?.remedy).not.toContain('Exchange');
  });
  test('a pickup left unjoined accounts for silence; it is not told twice', () => {
    expect(codes(parts, [...joints, 'b.hot > s.A2'])).toEqual(['pickup-no-hot']);
  });
});

describe('what cannot be read is not guessed at', () => {
  test('a misspelt end counts as the name it is nearest to', () => {
    expect(codes({ neck: coil, out: jack }, ['nekc.hot > out.tip', 'neck.grund > out.sleeve'])).toEqual([
      'unknown-part',
      'unknown-lug',
    ]);
  });
  test('a part of faulty description takes any lug, and hides nothing of the others', () => {
    expect(
      codes({ neck: { kind: 'single-coyl' }, cap: { kind: 'capacitor', value: '22n' }, out: jack }, [
        'neck.anything > out.tip',
        'cap.1 > out.tip',
        'cap.3 > bridge.hot',
      ]),
    ).toEqual(expect.arrayContaining(['bad-choice', 'unknown-lug', 'unknown-part']));
    expect(
      codes({ neck: { kind: 'single-coyl' }, out: jack }, ['neck.x > out.tip', 'neck.y > out.sleeve']),
    ).toEqual(['bad-choice']);
  });
  test('a mistake in an optional field lets the part be checked', () => {
    expect(
      codes({ neck: { kind: 'single-coil', resistance: '-5' }, out: jack }, [
        'neck.hto > out.tip',
        'neck.ground > out.sleeve',
      ]),
    ).toEqual(['bad-quantity', 'unknown-lug']);
  });
  test('a joint that cannot be read may be the one that seems to be missing', () => {
    expect(codes({ neck: coil, out: jack }, ['neck.hot to out.tip', 'neck.ground > out.sleeve'])).toEqual([
      'bad-joint',
    ]);
  });
});

test('parts may have the names of things every object has', () => {
  expect(
    codes({ constructor: coil, valueof: jack }, [
      'constructor.hot > valueof.tip',
      'constructor.ground > valueof.sleeve',
    ]),
  ).toEqual([]);
  expect(
    codes({ neck: coil, out: jack }, ['constructor.hot > out.tip', 'neck.constructor > out.sleeve']),
  ).toEqual(['unknown-part', 'unknown-lug']);
});
