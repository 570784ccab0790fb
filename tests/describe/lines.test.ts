/** Lines, columns and excerpts: of any offset in any text, and as they are printed. */
import { describe, expect, it } from 'vitest';
import { type Diagnostic, problem } from '../../src/common/problem.ts';
import { seeded } from '../../src/common/random.ts';
import { formatDiagnostic, formatDiagnostics } from '../../src/describe/diagnostics.ts';
import { lineFinder } from '../../src/describe/lines.ts';
import { parseText } from '../../src/describe/source.ts';

const random = seeded(1984);
const whole = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));

it('every offset of a text is in the line that counting leads to, whatever ends its lines', () => {
  for (let i = 0; i < 200; i++) {
    const text = Array.from(
      { length: whole(0, 30) },
      () => ['a', 'b', '\n', '\r', '\r\n', ' '][whole(0, 5)],
    ).join('');
    const find = lineFinder(text);
    let [line, column] = [1, 1];
    for (let offset = 0; offset <= text.length; offset++) {
      const found = find(offset);
      expect([found.line, found.column], `${JSON.stringify(text)} at ${offset}`).toEqual([line, column]);
      expect(found.excerpt).toBe(text.split(/\r\n|\r|\n/)[line - 1]);
      const ends = text[offset] === '\n' || (text[offset] === '\r' && text[offset + 1] !== '\n');
      [line, column] = ends ? [line + 1, 1] : [line, column + 1];
    }
  }
});

const told = (excerpt: string, column: number, line = 7): Diagnostic => ({
  code: 'no-jack',
  severity: 'error',
  place: { file: 'x.yaml', line, column, excerpt },
  message: 'what is wrong',
  remedy: 'what to do',
});

describe('an excerpt as it is printed', () => {
  it('has its caret under the character meant, and is never wider than a terminal', () => {
    for (let i = 0; i < 400; i++) {
      const indent = whole(0, 3) === 0 ? whole(0, 150) : whole(0, 8);
      const letters = Array.from({ length: whole(1, 300) }, () => String.fromCharCode(whole(97, 122))).join(
        '',
      );
      const line = ' '.repeat(indent) + letters;
      const column = whole(1, line.length);
      const [head, message, empty, shown = '', caret = '', after, remedy] = formatDiagnostic(
        told(line, column),
      ).split('\n');
      expect([head, message, empty, after, remedy]).toEqual([
        `x.yaml:7:${column}  error  no-jack`,
        '    what is wrong',
        '',
        '',
        '    what to do',
      ]);
      expect(caret.trimStart()).toBe(`│ ${' '.repeat(caret.indexOf('^') - caret.indexOf('│') - 2)}^`);
      expect(shown.startsWith('    7 │ ')).toBe(true);
      expect(shown[caret.indexOf('^')] ?? ' ').toBe(line[column - 1]);
      const words = shown.slice('    7 │ '.length);
      expect(words.length).toBeLessThanOrEqual(104);
      // Marks of omission stand where something was left out, and only there.
      const kept = words.replace(/^… /, '').replace(/ …$/, '');
      expect(line).toContain(kept);
      // Of what stands before, blanks alone are left out without one.
      const left = /^… /.test(words)
        ? line.slice(0, line.lastIndexOf(kept, column - 1))
        : line.slice(0, line.indexOf(kept));
      expect(words.startsWith('… ')).toBe(left.trim() !== '');
      if (kept.length > 20) expect(words.endsWith(' …')).toBe(!line.endsWith(kept));
    }
  });
  it('a line that fits is shown whole, without its indentation', () => {
    const words = 'x'.repeat(100);
    expect(formatDiagnostic(told(`    ${words}`, 5))).toContain(`7 │ ${words}\n`);
    expect(formatDiagnostic(told(`    ${words}y`, 5))).toContain(`7 │ ${words} …\n`);
    expect(formatDiagnostic(told(words, 81))).toContain(`7 │ ${words}\n`);
    expect(formatDiagnostic(told(words, 82))).toContain('7 │ … ');
    // What is indented counts from where it begins.
    expect(formatDiagnostic(told(`${' '.repeat(30)}${words}`, 111))).toContain(`7 │ ${words}\n`);
    expect(formatDiagnostic(told(`${' '.repeat(30)}${words}`, 112))).toContain('7 │ … ');
  });
  it('the caret stands below as many characters, not units of UTF-16; the gutter is as wide as the number', () => {
    const [, , , shown = '', caret = ''] = formatDiagnostic(told('🎸🎸 x', 6, 1234)).split('\n');
    expect(shown).toBe('    1234 │ 🎸🎸 x');
    expect(caret).toBe('         │    ^');
  });
  it('of an empty line there is none', () => {
    for (const line of ['', '   ', '\t'])
      expect(formatDiagnostic(told(line, 1))).toBe(
        'x.yaml:7:1  error  no-jack\n    what is wrong\n    what to do',
      );
  });
  it('a caret within the indentation keeps it', () => {
    const [, , , shown = '', caret = ''] = formatDiagnostic(told('      x', 3)).split('\n');
    expect(shown.slice(0, caret.indexOf('^'))).toBe('    7 │ ');
  });
});

it('fifty reports are printed whole; of one more it is said that there is one more', () => {
  const many = (count: number): string =>
    formatDiagnostics(Array.from({ length: count }, () => told('x', 1)));
  expect(many(1).match(/what to do/g)).toHaveLength(1);
  expect(many(50)).not.toMatch(/and \d+ more/);
  expect(many(51)).toMatch(/what to do\n\nand 1 more$/);
  expect(many(51).match(/what to do/g)).toHaveLength(50);
});

describe('within a joint', () => {
  it('each end and its lug are found, however they are spaced and quoted', () => {
    for (let i = 0; i < 200; i++) {
      const blank = (): string => ' '.repeat(whole(0, 3));
      const name = (): string => ['neck', 'volume', 'tone-2', 'a'][whole(0, 3)] ?? '';
      const [from, lug, to, other] = [name(), name(), name(), name()];
      const pieces = [
        from,
        blank(),
        '.',
        blank(),
        lug,
        blank(),
        '>',
        blank(),
        to,
        blank(),
        '.',
        blank(),
        other,
      ];
      const quote = ['', '"', "'"][whole(0, 2)] ?? '';
      const head = `joints:\n  - `;
      const text = `${head}${quote}${pieces.join('')}${quote}\n`;
      const { source } = parseText(text, 'x.yaml');
      const at = (...rest: string[]): number =>
        source.placeOf(problem('no-jack', ['joints', 0, ...rest], {})).column;
      const columnOf = (piece: number): number => 5 + quote.length + pieces.slice(0, piece).join('').length;
      expect(at('from'), text).toBe(columnOf(0));
      // A lug is pointed at right behind its dot.
      expect(at('from', 'lug'), text).toBe(columnOf(3));
      expect(at('to'), text).toBe(columnOf(8));
      expect(at('to', 'lug'), text).toBe(columnOf(11));
      expect(at(), text).toBe(5);
      expect(at('wire', 'to'), text).toBe(columnOf(8));
    }
  });
  it('one without a dot or an arrow is pointed at as far as it goes', () => {
    const at = (written: string, ...rest: string[]): number =>
      parseText(`joints:\n  - ${written}\n`, 'x.yaml').source.placeOf(
        problem('no-jack', ['joints', 0, ...rest], {}),
      ).column;
    expect(at('neck > volume', 'from', 'lug')).toBe(5);
    expect(at('neck > volume', 'to', 'lug')).toBe(12);
    expect(at('neck', 'to')).toBe(5);
    expect(at('neck.hot', 'from', 'lug')).toBe(10);
    expect(at('"neck.hot >"', 'to')).toBeGreaterThanOrEqual(5);
  });
});
