/** Where a text stops being JSON: what stands before could still become JSON, and with the next token it no longer can. */
import { describe, expect, it } from 'vitest';
import { seeded } from '../../src/common/random.ts';
import { findJsonError } from '../../src/describe/json.ts';

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

/** Whether something put after a text makes JSON of it: a value or a key where one is due, and then what closes it. */
function canBecomeJson(text: string): boolean {
  const open: string[] = [];
  for (const [token] of text.matchAll(/"[^"]*"|[{}[\]]/g))
    if (token === '{' || token === '[') open.unshift(token === '{' ? '}' : ']');
    else if (!token.startsWith('"')) open.shift();
  const closed = open.join('');
  return ['', '1', ':1', '"k":1', '""'].some((more) => isJson(`${text} ${more}${closed}`));
}

const TOKENS = ['{', '}', '[', ']', ',', ':', '"a"', '1', 'true', 'x'];
const random = seeded(8259);
const pick = (): string => TOKENS[Math.floor(random() * TOKENS.length)] ?? '';
/** JSON of some depth, in tokens. */
function value(depth: number): readonly string[] {
  const sort = depth === 0 ? 0 : Math.floor(random() * 3);
  const items = Array.from({ length: Math.floor(random() * 3) }, () => value(depth - 1));
  const joined = (wrap: (item: readonly string[]) => readonly string[]): readonly string[] =>
    items.flatMap((item, i) => [...(i > 0 ? [','] : []), ...wrap(item)]);
  if (sort === 1) return ['[', ...joined((item) => item), ']'];
  if (sort === 2) return ['{', ...joined((item) => ['"a"', ':', ...item]), '}'];
  return [['1', 'true', '"a"', 'null', '-0.5e+3'][Math.floor(random() * 5)] ?? '1'];
}

describe('of tokens by chance, and of JSON with one token changed, left out or put in', () => {
  const texts = Array.from({ length: 1500 }, (_, i) => {
    if (i % 3 === 0) return Array.from({ length: 1 + Math.floor(random() * 5) }, pick);
    const tokens = [...value(3)];
    const at = Math.floor(random() * tokens.length);
    if (i % 3 === 1) tokens.splice(at, Math.floor(random() * 2), ...(random() < 0.7 ? [pick()] : []));
    return tokens;
  });
  it('is found wrong what JSON.parse refuses, and nothing else', () => {
    const wrong = texts
      .map((tokens) => tokens.join(' '))
      .filter((text) => isJson(text) !== (findJsonError(text) === undefined));
    expect(wrong).toEqual([]);
    expect(texts.filter((tokens) => isJson(tokens.join(' '))).length).toBeGreaterThan(400);
  });
  it('the place is that of the first token that cannot stand there', () => {
    const wrong = texts
      .map((tokens) => tokens.join(' '))
      .filter((text) => {
        const error = findJsonError(text);
        if (!error) return false;
        const next = /^(?:"[^"]*"|\S+)/.exec(text.slice(error.offset))?.[0] ?? '';
        const before = text.slice(0, error.offset);
        return !canBecomeJson(before) || (next !== '' && canBecomeJson(before + next));
      });
    expect(wrong).toEqual([]);
  });
});

it.each([
  ['', 0, 'the file ends before every bracket and brace is closed'],
  ['[', 1, 'the file ends before'],
  ['[1', 2, 'the file ends before'],
  ['{"a": ', 6, 'the file ends before'],
  ['{"a"', 4, 'the file ends before'],
  ['[1 }', 3, 'a comma or a closing bracket is missing here'],
  ['{"a": 1 ]', 8, 'a comma or a closing bracket is missing here'],
  ['1 }', 2, 'the kit ended before this'],
  ['{1: 2}', 1, 'expected a key in double quotes'],
  ['{"a": 1, 2}', 9, 'expected a key in double quotes'],
  ['{"a": 1, ]', 9, 'JSON does not allow a comma before this closing bracket'],
  ['{"a": }', 6, 'JSON does not allow a comma before this closing bracket'],
  ['{:1}', 1, 'expected a key in double quotes'],
  ['[,]', 1, 'not a JSON value'],
  ['{"a": ,', 6, 'not a JSON value'],
  [']', 0, 'JSON does not allow a comma before this closing bracket'],
  ['[:', 1, 'not a JSON value'],
  ['{"a", 1}', 4, 'a colon is missing after the key'],
])('%s: wrong at %i, %s', (text, offset, reason) => {
  const error = findJsonError(text);
  expect(error?.offset).toBe(offset);
  expect(error?.reason).toContain(reason);
});
