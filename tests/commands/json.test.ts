/** JSON on a terminal: read back it is the same, and nothing in it is obeyed. */
import { afterEach, expect, it, vi } from 'vitest';
import { printJson } from '../../src/commands/console.ts';

afterEach(() => vi.restoreAllMocks());

it('escapes what a terminal would obey or not show, four hexadecimal digits each', () => {
  const written: string[] = [];
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => written.push(String(text)) > 0);
  const value = { label: 'a\u2028b\u009bc\u{1F3B8}d\u{E0001}' };
  printJson(JSON.stringify(value, null, 2));
  const text = written.join('');
  expect(JSON.parse(text)).toEqual(value);
  expect(text).toContain('\\u2028b\\u009bc');
  expect(text).not.toMatch(/[\u2028\u009b\u{E0001}]/u);
});
