/**
 * The pictures of the circuits in `out/` are what the program draws today: all of them drawn again where their parts stand, with their
 * figures and marks, and every sixth placed anew as well, since placing all of them would take minutes.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { extendedAs } from '../../src/files/circuits.ts';
import { inspect } from '../../src/inspect/index.ts';
import { galleryPage, galleryStyle, sizeOfDrawing } from '../../src/publish/gallery.ts';
import { circuitKit, circuitNames } from '../circuits/circuits.ts';

const skip = it.skipIf(process.env.SOLDERLEAF_WITHOUT_OUT === '1');
const read = (name: string): string => readFileSync(`out/circuits/${name}`, 'utf8');

skip('every circuit is there as its description has it, and the page shows them all', async () => {
  const entries = await Promise.all(
    circuitNames.map(async (name) => {
      const [kit, file] = [await circuitKit(name), `${name}.svg`];
      const svg = read(file);
      expect(inspect(svg, kit), name).toEqual([]);
      const size = sizeOfDrawing(svg);
      if (!size) throw new Error(`${name} has no size`);
      return { kit, extended: extendedAs(name), picture: { file, ...size } };
    }),
  );
  expect(read('index.html')).toBe(galleryPage(entries, 'en'));
  expect(read('index.css')).toBe(galleryStyle);
  expect(readdirSync('out/circuits').sort()).toEqual(
    [...circuitNames.map((name) => `${name}.svg`), 'index.css', 'index.html'].sort(),
  );
});

skip('some are placed anew, and are the same to the byte', { timeout: 300_000 }, () => {
  const some = circuitNames.filter((_, i) => i % 6 === 0).map(extendedAs);
  expect(some.length).toBeGreaterThan(4);
  const { status, stdout } = spawnSync(
    process.execPath,
    ['dist/cli.js', 'draw', ...some, '--out', 'out/circuits', '--check'],
    { encoding: 'utf8' },
  );
  expect(stdout).not.toMatch(/^(?:differs|missing)/m);
  expect(status).toBe(0);
});
