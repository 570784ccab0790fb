import { describe, expect, test } from 'vitest';
import { closestName, editDistance } from '../../src/common/nearest.ts';
import { problem } from '../../src/common/problem.ts';
import { decode } from '../../src/describe/decode.ts';
import { formatDiagnostic, formatDiagnostics, toDiagnostics } from '../../src/describe/diagnostics.ts';
import { findJsonError } from '../../src/describe/json.ts';
import { readKit } from '../../src/describe/read.ts';
import { parseText, valueSource } from '../../src/describe/source.ts';
import { kinds } from '../../src/parts/index.ts';

const at = (
  text: string,
  path: readonly (string | number)[],
  key: 'key' | 'value' = 'value',
  file = 'x.yaml',
) => {
  const { line, column } = parseText(text, file).source.placeOf(problem('no-jack', path, {}, key));
  return `${line}:${column}`;
};

describe('places', () => {
  const text = '# first\na:\n  b: [1, {c: 2}]\n  d:\n  "e f": >\n    long\n';

  test('keys, values, list items, and as far as a path leads', () => {
    expect(at(text, ['a'], 'key')).toBe('2:1');
    expect(at(text, ['a', 'b', 0])).toBe('3:7');
    expect(at(text, ['a', 'b', 1, 'c'])).toBe('3:14');
    expect(at(text, ['a', 'b', 1, 'c'], 'key')).toBe('3:11');
    expect(at(text, ['a', 'b', 1, 'zz'], 'key')).toBe('3:10');
    // A value left out is pointed at by its key.
    expect(at(text, ['a', 'd'])).toBe('4:3');
    expect(at(text, ['a', 'e f'], 'key')).toBe('5:3');
    expect(at(text, [])).toBe('2:1');
  });

  test('carriage returns count as line ends, alone or with a line feed', () => {
    expect(at(text.replaceAll('\n', '\r\n'), ['a', 'b', 1, 'c'])).toBe('3:14');
  });

  test('within a joint, whether it is written as text or as a map', () => {
    const joints = 'joints:\n  - neck.hot > volume.3\n  - wire: "neck.hot >  volume.3"\n';
    const ends = [['from'], ['from', 'lug'], ['to'], ['to', 'lug']];
    expect(ends.map((end) => at(joints, ['joints', 0, 'wire', ...end]))).toEqual([
      '2:5',
      '2:10',
      '2:16',
      '2:23',
    ]);
    expect(ends.map((end) => at(joints, ['joints', 1, 'wire', ...end]))).toEqual([
      '3:12',
      '3:17',
      '3:24',
      '3:31',
    ]);
  });

  test('a whole joint, and an end that is not written, by where the joint begins', () => {
    const joints = 'joints:\n  - wire: "neck.hot"\n';
    expect(at(joints, ['joints', 0, 'wire', 'to'])).toBe('2:11');
    expect(at(joints, ['joints', 0, 'wire', 'to', 'lug'])).toBe('2:11');
    expect(at(joints, ['joints', 0, 'wire', 'other'])).toBe('2:11');
  });

  test('an alias is pointed at where its anchor stands', () => {
    const { problems, source } = readKit(
      'kit: a\ntitle: a\nparts:\n  x: &p { kind: potty }\n  y: *p\njoints: []\n',
      'x.yaml',
    );
    expect(problems.map(source.placeOf).map(({ line, column }) => `${line}:${column}`)).toEqual([
      '4:17',
      '4:17',
    ]);
  });
});

describe('merge keys', () => {
  const kit = (tone: string) =>
    `kit: a\ntitle: a\nparts:\n  v: &pot { kind: pot, value: 500k, taper: linear }\n  t: ${tone}\njoints: []\n`;
  const toneOf = (tone: string) => parseText(kit(tone), 'x.yaml').value as { parts: { t: unknown } };
  test('take over what the part does not say itself, wherever they stand', () => {
    for (const tone of ['{ <<: *pot, value: 250k }', '{ value: 250k, <<: *pot }'])
      expect(toneOf(tone).parts.t).toEqual({ kind: 'pot', value: '250k', taper: 'linear' });
  });
  test('a mistake in what was taken over is told where it was written', () => {
    const { problems, source } = readKit(kit('{ <<: *pot }').replace('linear', 'straight'), 'x.yaml');
    expect(problems.map(source.placeOf).map(({ line }) => line)).toEqual([4, 4]);
  });
  test.each(['{ <<: 3 }', '{ <<: [*pot] }', '{ <<: }'])('%s is an error', (tone) => {
    const { problems } = readKit(kit(tone), 'x.yaml');
    expect(problems[0]?.code).toBe('bad-syntax');
  });
});

test('tags are refused, known to YAML or not', () => {
  for (const tagged of [
    '!!binary aGk=',
    '!!timestamp 2001-01-01',
    '!kit robin',
    '!!str robin',
    '!!set {a}',
  ]) {
    const { kit, problems, source } = readKit(`title: a\nkit: ${tagged}\n`, 'x.yaml');
    expect(kit).toBeUndefined();
    expect(problems[0]?.code).toBe('bad-syntax');
    expect(problems.slice(0, 1).map(source.placeOf)).toMatchObject([{ line: 2 }]);
  }
});

test('a line break in the name of a file does not break the line that names it', () => {
  const { problems, source } = readKit('kit: 3\n', 'a\nb.yaml');
  expect(formatDiagnostics(toDiagnostics(problems, source)).split('\n')[0]).toMatch(
    /^a\uFFFDb\.yaml:1:\d+ {2}error/,
  );
});

describe('decoding', () => {
  const bytes = (...values: number[]): Uint8Array => Uint8Array.from(values);
  test('UTF-8 with and without a byte order mark', () => {
    expect(decode(bytes(0xef, 0xbb, 0xbf, 0x6b)).text).toBe('k');
    expect(decode(bytes(0xc2, 0xb5)).text).toBe('µ');
    expect(decode(bytes()).text).toBe('');
  });
  test.each([[[0x6b, 0]], [[0xff, 0xfe, 0x6b]], [[0xc3, 0x28]], [[0xe2, 0x82]]])(
    '%j is not text',
    (values) => {
      expect(decode(bytes(...values)).problems.map(({ code }) => code)).toEqual(['not-text']);
    },
  );
});

describe('JSON', () => {
  // The grammar of RFC 8259; JSON.parse is the judge.
  const texts = [
    '{}',
    '[]',
    '""',
    '1',
    '-0.5e+3',
    'true',
    ' null ',
    '[1,2]',
    '{"a":[{"b":"\\u00e9\\n"}]}',
    '["\u007f"]',
    '',
    '{',
    '[1,]',
    '{"a":1,}',
    '{a:1}',
    "{'a':1}",
    '[1 2]',
    '{"a" 1}',
    '01',
    '1.',
    '.5',
    '+1',
    'nul',
    '"\n"',
    '"\\x"',
    '[1]]',
    '{]',
    '[}',
    '1 2',
    '"a',
    '{"a":}',
    '[,1]',
    '{"a":1 "b":2}',
    '// x\n1',
    'NaN',
    '{,}',
    ':',
    '[1:2]',
    '["a":1]',
  ];
  test.each(texts)('%j', (text) => {
    let valid = true;
    try {
      JSON.parse(text);
    } catch {
      valid = false;
    }
    expect(findJsonError(text) === undefined).toBe(valid);
  });
});

describe('printing', () => {
  test('excerpt, caret and remedy stand in line', () => {
    const text = 'kit: robin\ntitle: a\nparts:\n  neck: { kind: single-coyl }\njoints: []\n';
    const { problems, source } = readKit(text, 'samples/robin.yaml');
    expect(toDiagnostics(problems, source).map(formatDiagnostic)).toEqual([
      [
        'samples/robin.yaml:4:17  error  bad-choice',
        '    “single-coyl” is not allowed here',
        '',
        '    4 │ neck: { kind: single-coyl }',
        '      │               ^',
        '',
        `    Did you mean single-coil? Allowed: ${Object.keys(kinds).join(', ')}.`,
      ].join('\n'),
    ]);
  });

  test('reports are in the order of the file and capped', () => {
    const keys = Array.from({ length: 10_000 }, (_, i) => `k${i}: 1`).join('\n');
    const { problems, source } = readKit(`kit: a\n${keys}`, 'x.yaml');
    expect(problems.length).toBe(10_003);
    const reports = toDiagnostics(problems, source);
    const lines = reports.map(({ place }) => place.line);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
    const printed = formatDiagnostics(reports);
    expect(printed.split('\n\n').at(-1)).toBe('and 9953 more');
    expect(printed.length).toBeLessThan(20_000);
  });

  test('a very long line is cropped around the caret, control characters are not passed on', () => {
    const text = `kit: a\ntitle: ${'x'.repeat(500)}\u0007 \u001b[31m\nparts: {a: {kind: jack}, b: {kind: ${'y'.repeat(5000)}}}\njoints: []\n`;
    const { problems, source } = readKit(text, 'x.yaml');
    const printed = toDiagnostics(problems, source).map(formatDiagnostic);
    expect(problems.map(({ code }) => code)).toEqual(['bad-value', 'bad-choice']);
    expect(printed.join('')).not.toMatch(/(?!\n)\p{Cc}/u);
    for (const line of printed.join('\n').split('\n')) expect(line.length).toBeLessThan(400);
    // The caret stands under the first letter of what it points at.
    for (const [i, letter] of ['x', 'y'].entries()) {
      const [, , , excerpt = '', caret = ''] = printed[i]?.split('\n') ?? [];
      expect(excerpt.slice(0, caret.indexOf('^') + 1)).toMatch(new RegExp(`[^${letter}]${letter}$`));
    }
  });
});

describe('nearest names', () => {
  test('distance counts insertions, deletions, changes and swaps of neighbours', () => {
    // Textbook pairs, from memory: kitten/sitting 3, ca/abc 3 under optimal string alignment.
    expect([
      editDistance('kitten', 'sitting'),
      editDistance('ca', 'abc'),
      editDistance('nekc', 'neck'),
      editDistance('', 'abc'),
    ]).toEqual([3, 3, 1, 3]);
  });
  test('near enough or not at all', () => {
    expect(closestName('nekc', ['bridge', 'neck'])).toBe('neck');
    expect(closestName('volum', ['volume', 'volumes'])).toBe('volume');
    expect(closestName('a1', ['A0', 'A1'])).toBe('A1');
    expect(closestName('tone', ['volume', 'neck'])).toBeUndefined();
    expect(closestName('4', ['1', '2', '3'])).toBeUndefined();
    expect(closestName('x'.repeat(100), ['x'])).toBeUndefined();
  });
});

test.each([
  ['{"a" 1}', 5, 'a colon is missing after the key'],
  ['{"a": 1 "b": 2}', 8, 'a comma or a closing bracket is missing here'],
  ['{"a": 1} 2', 9, 'the kit ended before this; nothing may follow it'],
  ['{"a": 1,}', 8, 'JSON does not allow a comma before this closing bracket'],
  ['[1,]', 3, 'JSON does not allow a comma before this closing bracket'],
  ['{a: 1}', 1, 'expected a key in double quotes'],
  ['{"a": b}', 6, 'not a JSON value; text goes in double quotes'],
])('%s: what is wrong with JSON, and where', (text, offset, reason) =>
  expect(findJsonError(text)).toEqual({ offset, reason }),
);

test('fifty reports are printed in full, and of more it is said how many', () => {
  const { source } = parseText('a: 1\n', 'x.yaml');
  const printed = (count: number): string =>
    formatDiagnostics(
      toDiagnostics(
        Array.from({ length: count }, (_, i) => problem('bad-name', ['a', i], { got: `k${i}` })),
        source,
      ),
    );
  expect(printed(50)).not.toContain('more');
  expect(printed(53)).toMatch(/\n\nand 3 more$/);
});

test('names the key that is empty', () => {
  const text =
    "kit: a\ntitle: ''\nparts:\n  x: { kind: jack, label: '' }\n  y: { kind: jack, label: '\u00a0 ' }\njoints: []\n";
  const { problems, source } = readKit(text, 'x.yaml');
  expect(toDiagnostics(problems, source).map(({ place, message }) => `${place.line}: ${message}`)).toEqual([
    '2: “title” is empty',
    '4: “label” is empty',
    '5: “label” is empty',
  ]);
});

test('of a value without lines a problem is told by its path, a joint as a whole', () => {
  const told = (path: readonly (string | number)[]): string | undefined =>
    toDiagnostics([problem('no-jack', path, {})], valueSource('kit.ts'))[0]?.message.split(': ')[0];
  expect(told(['joints', 3, 'wire', 'to', 'lug'])).toBe('joints[3]');
  expect(told(['parts', 'to', 'value'])).toBe('parts.to.value');
});

test.each([
  ['resistance', '0.1', '1e9', '0.09', '1.1e9'],
  ['inductance', '1e-6', '1e3', '9e-7', '1.1e3'],
  ['capacitance', '1e-13', '1e-3', '9e-14', '1.1e-3'],
])('%s: from %s to %s, and neither %s nor %s', (field, ...values) => {
  const good = values.map((value) => {
    const text = `kit: a\ntitle: a\nparts:\n  x: { kind: single-coil, ${field}: ${value} }\njoints: []\n`;
    return readKit(text, 'x.yaml').problems.length === 0;
  });
  expect(good).toEqual([true, true, false, false]);
});
