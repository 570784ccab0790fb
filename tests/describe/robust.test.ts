import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatDiagnostics, toDiagnostics } from '../../src/describe/diagnostics.ts';
import { readKit } from '../../src/describe/read.ts';
import { LONGEST_TEXT } from '../../src/describe/source.ts';
import { findErrors } from '../../src/solve/errors.ts';

const folder = new URL('../../samples/', import.meta.url);
const samples = readdirSync(folder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => readFileSync(new URL(file, folder), 'utf8'));

function check(text: string, file: string): readonly string[] {
  const { kit, draft, problems, source } = readKit(text, file);
  const all = [...problems, ...(draft ? findErrors(draft) : [])];
  const reports = toDiagnostics(all, source);
  const lines = text.split(/\r\n|\r|\n/);
  expect(kit === undefined).toBe(problems.length > 0);
  for (const { place, message, remedy } of reports) {
    expect(place.excerpt).toBe(lines[place.line - 1]);
    expect(place.column).toBeGreaterThanOrEqual(1);
    expect(place.column).toBeLessThanOrEqual(place.excerpt.length + 1);
    expect(`${message} ${remedy}`).not.toMatch(/undefined|\[object|NaN|Invalid input/);
  }
  return [formatDiagnostics(reports)];
}

/** One typing mistake: a piece cut out, a piece put in, or a line written twice. */
const mistake = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  cut: fc.integer({ min: 0, max: 12 }),
  put: fc.oneof(
    fc.string({ maxLength: 6, unit: 'binary' }),
    fc.constantFrom(
      '\t',
      '\n',
      ': ',
      '- ',
      '{',
      '}',
      '[',
      ']',
      '"',
      "'",
      '&a ',
      '*a',
      '!x ',
      '#',
      '>',
      '| ',
      '__proto__: ',
      '? ',
      '%',
    ),
  ),
});

test('a sample with typing mistakes never throws, and every word about it has a place', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...samples),
      fc.array(mistake, { minLength: 1, maxLength: 5 }),
      fc.boolean(),
      (sample, mistakes, json) => {
        let text = sample;
        for (const { at, cut, put } of mistakes) {
          const start = Math.floor(at * text.length);
          text = text.slice(0, start) + put + text.slice(start + cut);
        }
        const file = json ? 'kit.json' : 'kit.yaml';
        expect(check(text, file)).toEqual(check(text, file));
      },
    ),
    { seed: 20_240, numRuns: 150 },
  );
});

describe('no file hangs or crashes the program', () => {
  const many = (text: string, times: number): string => text.repeat(times);
  const head = 'kit: a\ntitle: b\n';
  const parts = (count: number, part: string): string =>
    `${head}parts:\n${Array.from({ length: count }, (_, i) => `  p${i}: ${part}\n`).join('')}joints: []\n`;
  test.each([
    ['brackets', many('[', 200_000), 'too-deep'],
    ['dashes', many('- ', 100_000), 'too-deep'],
    ['nested maps', many('{a: ', 60_000), 'too-deep'],
    [
      'growing indentation',
      Array.from({ length: 300 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
      'too-deep',
    ],
    ['quotes', many('"', 50_000), 'bad-syntax'],
    ['commas', `[${many(',', 50_000)}`, 'bad-syntax'],
    ['aliases', `a: &a 1\nb: [${many('*a, ', 50_000)}]`, 'too-many-aliases'],
    [
      'a chain of aliases',
      `a0: &a0 [1]\n${Array.from({ length: 3000 }, (_, i) => `a${i + 1}: &a${i + 1} [*a${i}]`).join('\n')}`,
      'too-many-aliases',
    ],
    ['keys of one name', many('a: 1\n', 20_000), 'duplicate-key'],
    ['a megabyte', many('# nothing\n', 100_000), 'too-long'],
    ['faulty parts', parts(3000, '{ kind: humbuckr }'), 'bad-choice'],
    ['pickups', parts(3000, '{ kind: humbucker }'), 'too-many'],
    ['levers', parts(3000, '{ kind: lever-5 }'), 'too-many'],
    [
      'joints to nowhere',
      `${head}parts: { neck: { kind: humbucker } }\njoints:\n${many('  - nekc.hto > bridge.hot\n', 5000)}`,
      'unknown-part',
    ],
    ['deep JSON', many('[', 100_000) + many(']', 100_000), 'too-deep'],
  ])('%s', (name, text, code) => {
    const file = name.endsWith('JSON') ? 'x.json' : 'x.yaml';
    expect(text.length > LONGEST_TEXT).toBe(code === 'too-long');
    const { problems, draft, source } = readKit(text, file);
    const all = [...problems, ...(draft ? findErrors(draft) : [])];
    expect(all.map((found) => found.code)).toContain(code);
    expect(formatDiagnostics(toDiagnostics(all, source)).length).toBeLessThan(30_000);
  });
});
