/** YAML's aliases, merge keys, depth, keys and errors, each at its limit and with its place. */
import { describe, expect, it } from 'vitest';
import { problem } from '../../src/common/problem.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { readKit } from '../../src/describe/read.ts';
import { LONGEST_TEXT, parseText } from '../../src/describe/source.ts';

const parse = (text: string) => {
  const { value, problems, source } = parseText(text, 'x.yaml');
  return {
    value,
    problems: problems.map((one) => {
      const { line, column } = source.placeOf(one);
      return `${line}:${column} ${one.code}${'reason' in one.detail ? ` ${String(one.detail.reason)}` : ''}`;
    }),
  };
};
const sound = (text: string): unknown => {
  const { value, problems } = parse(text);
  expect(problems, text).toEqual([]);
  return value;
};

describe('values', () => {
  it('are those of YAML 1.2: texts, numbers, truths, nothing, lists and maps, one in the other', () => {
    expect(
      sound('a: 1\nb: [x, "2", 3.5, true, null, ]\nc: { d: ~, e: -0x1F }\nf:\n- g\n- h: 1\n  i: 2\n'),
    ).toEqual({
      a: 1,
      b: ['x', '2', 3.5, true, null],
      c: { d: null, e: expect.anything() },
      f: ['g', { h: 1, i: 2 }],
    });
    expect(sound('yes: no\n')).toEqual({ yes: 'no' });
    expect(sound('[]')).toEqual([]);
    expect(sound('text')).toBe('text');
    expect(parse('# nothing\n').value ?? null).toBeNull();
  });
  it('keys are texts whatever they look like, also those that a program has for itself', () => {
    const value = sound('1: a\ntrue: b\n__proto__: c\nconstructor: d\n') as object;
    expect(Object.entries(value)).toEqual([
      ['1', 'a'],
      ['true', 'b'],
      ['__proto__', 'c'],
      ['constructor', 'd'],
    ]);
    expect(Object.getPrototypeOf(value)).toBe(Object.prototype);
  });
  it.each([
    ['a: 1\n? [b]\n: 2\n', /^2:3 bad-syntax a key must be plain text/],
    ['a: 1\n: 2\n', /^2:1 bad-syntax a key must be plain text/],
    ['a: 1\nb: 2\na: 3\n', /^3:1 duplicate-key/],
    ['{a: 1, a: 2}\n', /^1:8 duplicate-key/],
    ['a: &x 1\nb: *y\n', /^2:4 bad-syntax there is no anchor “y” above/],
    ['a: *x\nb: &x 1\n', /^1:4 bad-syntax there is no anchor “x” above/],
    ['a: &x [*x]\n', /^1:8 too-many-aliases/],
    ['a: &x { b: [1, *x] }\n', /^1:16 too-many-aliases/],
    ['a: !!str 1\n', /^1:10 bad-syntax an unknown tag/],
    [
      'a: 1\n---\nb: 2\n',
      /^2:\d+ bad-syntax a second document starts here|^3:1 bad-syntax a second document/,
    ],
    ['a: "b\nc: d\n', /^1:4 bad-syntax a quote is opened here and never closed/],
    ["a: 'b\nc: d\n", /^1:4 bad-syntax a quote is opened here and never closed/],
    ['a: [1, 2\nb: 3\n', /^\d:\d bad-syntax/],
    ['a: {b: 1\nc: 3\n', /^\d:\d bad-syntax/],
    ['a:\n\t- b\n', /^2:1 bad-syntax a tab is used for indentation/],
    ['a: b: c\n', /^1:4 bad-syntax a second key on this line/],
    ['a: @b\n', /^1:4 bad-syntax text cannot start with this character/],
    ['a: "\\q"\n', /^1:5 bad-syntax a backslash in double quotes/],
    ['<<: 3\n', /^1:1 bad-syntax a merge key/],
    ['a: &x [1]\nb: { <<: *x }\n', /^2:6 bad-syntax a merge key/],
  ])('%j is told at its place', (text, words) => {
    const { problems } = parse(text);
    expect(problems[0]).toMatch(words);
    expect(problems).toHaveLength(1);
  });
  it.each([
    ['a: b\n\n# Text.\n#parts:\n#  x: 1\n  y: { z: 1 }\n', '6:1', 'parts:'],
    ['a: b\r\n\r\n# parts:\r\n  y: { z: 1 }\r\n', '4:1', 'parts:'],
    ['a: b\n\n#joints:\n  - { wire: x }\n', '4:1', 'joints:'],
    ['a:\n  b: { c: 1 }\n#joints:\n  - { wire: x }\n', '4:1', 'joints:'],
    ['a:\n  b: { d: 1 }\n\n   c: 1\n', '4:1', undefined],
    ['#a:\nb:\n    c: 1\n\n  d: 1\n', '5:1', undefined],
  ])(
    '%j: the line out of step is the one with text, and the comment that it may belong under is named',
    (text, at, comment) => {
      const { source, problems } = parseText(text, 'kit.yaml');
      const told = toDiagnostics(problems, source);
      expect(told.map(({ place }) => `${place.line}:${place.column}`)).toEqual([at]);
      expect(told[0]?.message).toMatch(/^the indentation of this line/);
      expect(told[0]?.place.excerpt.trim()).not.toBe('');
      expect(/“(.*)”, still a comment/.exec(told[0]?.remedy ?? '')?.[1]).toBe(comment);
    },
  );
  it('a key that comes again keeps its first value', () =>
    expect(parse('a: 1\na: 2\n').value).toEqual({ a: 1 }));
  it('of several errors each line tells its first, in the order of the file', () => {
    const { problems } = parse('a: @b\nc: d\ne: @f @g\nh: "\\q \\w"\n');
    expect(problems.map((one) => one.split(' ')[0])).toEqual(['1:4', '3:4', '4:5']);
  });
});

describe('aliases', () => {
  it('give the value of their anchor, the last of its name', () => {
    expect(sound('a: &x [1, {b: 2}]\nc: *x\nd: &x 3\ne: [*x, *x]\n')).toEqual({
      a: [1, { b: 2 }],
      c: [1, { b: 2 }],
      d: 3,
      e: [3, 3],
    });
    expect(sound('a: &x { b: &y 1, c: *y }\nd: { e: *x, f: *y }\n')).toEqual({
      a: { b: 1, c: 1 },
      d: { e: { b: 1, c: 1 }, f: 1 },
    });
  });
  it('may unfold to ten thousand values, and to no more', () => {
    // Each alias of a list of nine has ten values: the list and what is in it.
    const text = (count: number): string => `a: &x [${'1, '.repeat(9)}]\nb: [${'*x, '.repeat(count)}]\n`;
    expect(parse(text(1000)).problems).toEqual([]);
    const { problems, value } = parse(text(1001));
    expect(problems).toEqual([`2:${5 + 4 * 1000} too-many-aliases`]);
    expect(value).toBeUndefined();
    // What is written out does not count.
    expect(parse(`a: [${'1, '.repeat(20_000)}]\n`).problems).toEqual([]);
  });
  it('within aliases are counted where the outermost stands', () => {
    const layers = Array.from({ length: 5 }, (_, i) => `l${i + 1}: &l${i + 1} [${`*l${i}, `.repeat(10)}]`);
    const { problems } = parse(`l0: &l0 1\n${layers.join('\n')}\n`);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(/^[56]:\d+ too-many-aliases/);
  });
});

describe('merge keys', () => {
  it('take over what a map does not say itself; of several the first wins', () => {
    expect(
      sound('a: &a { x: 1, y: 2 }\nb: &b { y: 3, z: 4 }\nc: { y: 5, <<: *a }\nd: { <<: *b, x: 6 }\n'),
    ).toMatchObject({
      c: { x: 1, y: 5 },
      d: { x: 6, y: 3, z: 4 },
    });
    expect(sound('a: { <<: { x: 1 }, y: 2 }\n')).toEqual({ a: { y: 2, x: 1 } });
    expect(sound('<<: { x: 1 }\n')).toEqual({ x: 1 });
  });
});

describe('depth', () => {
  it('of any kit is read, and of sixty lists within one another not; the place is where it becomes too much', () => {
    const nested = (count: number): string => '['.repeat(count) + ']'.repeat(count);
    expect(parse(nested(25)).problems).toEqual([]);
    const { problems } = parse(nested(62));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(/^1:\d+ too-deep/);
    const [, column = '0'] = /:(\d+)/.exec(problems[0] ?? '') ?? [];
    expect(Number(column)).toBeGreaterThan(25);
    expect(Number(column)).toBeLessThanOrEqual(62);
  });
});

describe('places', () => {
  it('of a list’s items are their own, also of one that is left out', () => {
    const { source } = parseText('a:\n  - b\n  -\n  - c: d\n  - [e, f]\n', 'x.yaml');
    const at = (...path: (string | number)[]): string => {
      const { line, column } = source.placeOf(problem('no-jack', path, {}));
      return `${line}:${column}`;
    };
    expect([at('a', 0), at('a', 1), at('a', 2), at('a', 2, 'c'), at('a', 3), at('a', 3, 1)]).toEqual([
      '2:5',
      '3:4',
      '4:5',
      '4:8',
      '5:5',
      '5:9',
    ]);
  });
});

it('a text of a quarter of a million characters is read, one longer is not', () => {
  const text = (length: number): string => `a: 1\n#${'x'.repeat(length - 6)}`;
  expect(text(LONGEST_TEXT)).toHaveLength(250_000);
  expect(parse(text(LONGEST_TEXT)).problems).toEqual([]);
  expect(parse(text(LONGEST_TEXT + 1)).problems).toEqual(['1:1 too-long']);
});

it.each(['', ' \n', '# nothing\n', 'null\n', '~'])('%j has no kit in it', (text) => {
  const { problems, kit, draft } = readKit(text, 'x.yaml');
  expect(problems.map(({ code }) => code)).toEqual(['file-empty']);
  expect([kit, draft]).toEqual([undefined, undefined]);
});
