/** Arrangement files: which there are, and what is said of one that cannot be read. */
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
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

it('one with an error in its YAML is named with its line and what is wrong', () => {
  const file = join(folder, 'mine.yaml');
  writeFileSync(file, 'arrangement: mine\nabout: Mine.\nseats:\n  - { seat: pot, at: [0, 0 }\n');
  const said = findArrangement(file);
  expect(said).toMatch(/mine\.yaml:4: \S.*\S/);
  expect(said).not.toContain('undefined');
});

it('a script is one whatever the case of its ending', () => {
  expect(['a.ts', 'A.TS', 'a.Ts'].every(isScript)).toBe(true);
  expect(['a.tsx', 'ts', 'a.yaml'].some(isScript)).toBe(false);
});
