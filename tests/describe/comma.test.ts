/** A decimal comma within braces: which key is the second half of a number, and which value its first. */
import { expect, it } from 'vitest';
import { decimalCommas } from '../../src/describe/decimal-comma.ts';
import { readKit } from '../../src/describe/read.ts';

function found(map: Readonly<Record<string, unknown>>, key: string) {
  const { at, halves } = decimalCommas([['p', key]], { p: map }, ['parts']);
  const told = at.get(`p.${key}`);
  return { halves: [...halves], detail: told?.detail, path: told?.path, at: told?.at };
}

it('the key without a value after a whole number is its second half', () => {
  expect(found({ kind: 'pot', value: 5, '7k': null }, '7k')).toEqual({
    halves: ['p.value'],
    detail: { got: '5,7k', meant: '5.7k' },
    path: ['parts', 'p', '7k'],
    at: 'key',
  });
  expect(found({ value: 0, '047u': null, taper: 3 }, '047u').detail).toEqual({
    got: '0,047u',
    meant: '0.047u',
  });
  // Of two whole numbers it is the one before it.
  expect(found({ a: 1, b: 2, '5k': null, c: 3 }, '5k')).toMatchObject({
    halves: ['p.b'],
    detail: { got: '2,5k' },
  });
});
it('a key of digits alone, which comes first whatever was written, goes with the only whole number', () => {
  expect(found({ kind: 'pot', value: 2, 5: null }, '5')).toMatchObject({
    halves: ['p.value'],
    detail: { got: '2,5', meant: '2.5' },
  });
  expect(found({ a: 1, value: 2, 5: null }, '5')).toMatchObject({ halves: [], detail: { got: '5' } });
  expect(found({ a: 1, value: 2, 5: null }, '5').detail).not.toHaveProperty('meant');
});
it('where no whole number stands, there is nothing to put together', () =>
  expect(found({ kind: 'pot', value: 2.5, '7k': null }, '7k')).toMatchObject({
    halves: [],
    detail: { got: '7k' },
  }));
it.each([
  ['with a value of its own', { value: 5, '7k': 1 }, '7k'],
  ['that is no number', { value: 5, taper: null }, 'taper'],
  ['with a longer unit than there is', { value: 5, '7kilo': null }, '7kilo'],
])('a key %s is none', (_, map, key) => expect(found(map, key).detail).toBeUndefined());
it('what stands in no map is none', () => {
  for (const value of [null, 'text', [5, '7k'], 3])
    expect(decimalCommas([['p', '7k']], { p: value }, []).at.size).toBe(0);
  expect(decimalCommas([['p', 'q', '7k']], { p: 3 }, []).at.size).toBe(0);
});
it('deeper in the kit it is told at its place', () => {
  const { problems } = readKit(
    'kit: a\ntitle: b\noutput-load: { amplifier: 1,5M }\nparts: {}\njoints: []\n',
    'x.yaml',
  );
  expect(problems.map(({ code, path }) => [code, path.join('.')])).toEqual([
    ['decimal-comma', 'output-load.5M'],
  ]);
});
