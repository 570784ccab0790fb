/** Arrangement files: which there are, and what is said of one that cannot be read. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { arrangementNames, findArrangement, pageNames } from '../../src/files/layouts.ts';
import { isScript } from '../../src/files/script.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-layouts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('are the YAML files of layouts/, and nothing else that lies there', () => {
  expect(readdirSync('layouts')).toContain('pages');
  expect(arrangementNames()).toEqual([
    'bass-row',
    'cavity-2x2',
    'free-flow',
    'pickguard',
    'plate-row',
    'single-control',
  ]);
  expect([...pageNames()].sort()).toEqual([
    'a4',
    'a4-landscape',
    'a5',
    'a5-landscape',
    'letter',
    'letter-landscape',
  ]);
});

/** What is said of a file, without its name. */
function said(text: string): readonly string[] {
  const file = join(folder, 'mine.yaml');
  writeFileSync(file, text);
  const found = findArrangement(file);
  if (typeof found !== 'string') throw new Error('it was taken');
  return found.split('\n').map((line) => {
    expect(line.startsWith(`${file}:`)).toBe(true);
    return line.slice(file.length + 1);
  });
}

it('errors in its YAML are all told, each with its line and column', () => {
  expect(said('arrangement: mine\nabout: Mine.\nseats:\n  - { seat: pot, at: [0, 0 }\n')).toEqual([
    expect.stringMatching(/^4:28: \S.*\. \S/),
  ]);
  const two = said('arrangement: mine\nabout: "Mine" own\nseats:\n  - { seat: pot, at: [0, 0 }\n');
  expect(two.map((line) => line.split(':')[0])).toEqual(['2', '4']);
});

it('errors in its values are all told, each with what was allowed', () => {
  const text = [
    'arrangement: mine',
    'seats:',
    '  - { seat: pots, at: [0, 900], step: [-401, x], trun: 2 }',
    '  - { seat: pot, at: [0], turn: 7 }',
    '  - { at: [0, 0, 0], mirror: maybe }',
    '  - { seat: pot, at: [0.5, 400], step: [-400, 0] }',
  ];
  expect(said(text.join('\n'))).toEqual([
    '1:1: the arrangement has no “about”. Add the key “about”.',
    expect.stringMatching(/^3:13: “pots” is not allowed here\. Did you mean pot\?/),
    '3:27: 900 is too large. Write at most 400.',
    '3:40: -401 is too small. Write at least -400.',
    '3:46: expected a number, found text. Write a number.',
    expect.stringMatching(/^3:50: unknown key “trun”\. Did you mean turn\? Allowed: seat, at,/),
    '4:22: “at” is too short. Write at least 2 values.',
    '4:33: “7” is not allowed here. Allowed: 0, 1, 2, 3.',
    '5:5: item 3 of “seats” has no “seat”. Add the key “seat”.',
    '5:11: “at” is too long. Write at most 2 values.',
    '5:30: expected true or false, found text. Write true or false.',
    '6:23: expected a whole number, found a number. Write a whole number.',
  ]);
});

it('a kit named by mistake is told to be one', () => {
  expect(said(readFileSync('samples/wren-hs.yaml', 'utf8')).join()).toMatch(
    /it is a kit, not an arrangement/,
  );
});

it('a script is one whatever the case of its ending', () => {
  expect(['a.ts', 'A.TS', 'a.Ts'].every(isScript)).toBe(true);
  expect(['a.tsx', 'ts', 'a.yaml'].some(isScript)).toBe(false);
});
