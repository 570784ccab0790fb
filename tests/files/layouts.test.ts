/** Arrangement files: which there are, and what is said of one that cannot be read. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { isScript } from '../../src/files/kit-path.ts';
import {
  arrangementErrors,
  arrangementNames,
  findArrangement,
  findPage,
  pageErrors,
  pageNames,
} from '../../src/files/layouts.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-layouts-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

it('are the YAML files of layouts/, and nothing else that lies there', () => {
  expect(readdirSync('layouts')).toContain('pages');
  expect(arrangementNames()).toEqual([
    'bass-row',
    'cavity-2x2',
    'free-flow',
    'narrow-column',
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
    '5:5: item 3 of “seats” has no “seat”. Add the key “seat”; allowed: pickup, switch, pot, component, jack, ground-point.',
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

const SOUND = `arrangement: mine
about: Mine.
seats:
  - seat: pot
    at: [0, 0]
    step: [6, 0]
`;
const saidOf = (text: string): string => {
  const file = join(folder, `own-${text.length}-${Buffer.from(text).toString('hex').slice(-24)}.yaml`);
  writeFileSync(file, text);
  const found = findArrangement(file);
  return typeof found === 'string' ? found.replace(file, '') : 'sound';
};

describe('of a file of one’s own', () => {
  it('what is sound is read, and what it leaves out is the usual', () => {
    expect(saidOf(SOUND)).toBe('sound');
    const file = join(folder, 'sound.YAML'.toLowerCase());
    writeFileSync(file, SOUND);
    const [first, again] = [findArrangement(file), findArrangement(file)];
    // How a seat is turned is left to the search where the file does not say.
    expect(first).toEqual({
      arrangement: 'mine',
      about: 'Mine.',
      seats: [{ seat: 'pot', at: [0, 0], step: [6, 0] }],
    });
    expect(again).toBe(first);
  });
  it.each([
    [SOUND.replace('about: Mine.\n', ''), /^:1:1: the arrangement has no “about”/],
    [SOUND.replace('arrangement: mine\n', ''), /^:1:1: the arrangement has no “arrangement”/],
    [
      SOUND.replace('seat: pot', 'seat: sofa'),
      /^:4:11: “sofa” is not allowed here\. Allowed: pickup, switch, pot/,
    ],
    [SOUND.replace('    at: [0, 0]\n', ''), /^:4:5: item 1 of “seats” has no “at”/],
    [SOUND.replace('[6, 0]', '[401, 0]'), ':6:12: 401 is too large. Write at most 400.'],
    [SOUND.replace('[6, 0]', '[400, -400]'), 'sound'],
    [SOUND.replace('[6, 0]', '[0, -401]'), ':6:15: -401 is too small. Write at least -400.'],
    [SOUND.replace('[6, 0]', '[1.5, 0]'), /^:6:12: expected a whole number/],
    [`${SOUND}    trun: 1\n`, /^:7:5: unknown key “trun”\. Did you mean turn\?/],
    [
      `${SOUND}rows: 2\n`,
      /^:7:1: unknown key “rows”\. Allowed: arrangement, about, millimetres, widest, seats/,
    ],
    ['kit: a\nparts: {}\njoints: []\n', /^:1:1: it is a kit, not an arrangement/],
    [
      'shopping: list\n',
      /^:1:1: the arrangement has no “arrangement”[\s\S]*“about”[\s\S]*“seats”[\s\S]*unknown key “shopping”/,
    ],
    ['just text\n', /^:1:1: expected keys and values, found text/],
    ['', /^:1:1: the file is empty/],
  ])('%j: %s', (text, said) => {
    if (typeof said === 'string') expect(saidOf(text)).toBe(said);
    else expect(saidOf(text)).toMatch(said);
  });
  it('one that is not there, is a folder or is too large is told so', () => {
    expect(findArrangement(join(folder, 'none.yaml'))).toBe(`${join(folder, 'none.yaml')}: file not found`);
    mkdirSync(join(folder, 'sub.yml'));
    expect(findArrangement(join(folder, 'sub.yml'))).toBe(`${join(folder, 'sub.yml')}: it is a folder`);
    const large = join(folder, 'large.yaml');
    writeFileSync(large, `${SOUND}#${'x'.repeat(1e6)}\n`);
    expect(findArrangement(large)).toBe(`${large}: it is too large`);
  });
});

describe('what is wrong with a name', () => {
  it('of an arrangement: nothing, or that there is none, with the one that was meant', () => {
    for (const name of arrangementNames()) expect(arrangementErrors(name)).toEqual([]);
    const [found] = arrangementErrors('pickgaurd');
    expect(found).toMatchObject({
      code: 'unknown-arrangement',
      path: ['arrangement'],
      detail: { got: 'pickgaurd', nearest: 'pickguard', allowed: arrangementNames() },
    });
    expect(arrangementErrors('kitchen')[0]?.detail).not.toHaveProperty('nearest');
    expect(arrangementErrors(join(folder, 'none.yaml'))[0]).toMatchObject({
      code: 'bad-arrangement',
      path: ['arrangement'],
    });
  });
  it('of a page: the same; and each page there is has room within its margins', () => {
    for (const name of pageNames()) {
      expect(pageErrors(name)).toEqual([]);
      const page = findPage(name);
      if (!page) throw new Error(name);
      expect(Math.min(page.width, page.height)).toBeGreaterThan(2 * page.margin + 100);
      expect(page.margin).toBeGreaterThanOrEqual(5);
      // The short sides of ISO 216 pages are to the long ones as 1 to the root of 2.
      if (name.startsWith('a'))
        expect(Math.max(page.width, page.height) / Math.min(page.width, page.height)).toBeCloseTo(
          Math.SQRT2,
          1,
        );
    }
    expect(pageErrors('a44')[0]).toMatchObject({
      code: 'unknown-page',
      path: ['page'],
      detail: { got: 'a44', allowed: pageNames() },
    });
    expect(findPage('a44')).toBeUndefined();
    expect(findPage('a4')).toMatchObject({ width: 210, height: 297 });
    expect(findPage('a4-landscape')).toMatchObject({ width: 297, height: 210 });
    expect([...pageNames()]).toEqual([...pageNames()].sort());
  });
});
