/** Each sample's picture against one that was looked at. `npm run accept` takes the new ones: look at them first. */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { svgToPng } from '../../src/publish/png.ts';

const FOLDER = 'tests/golden';
const accept = process.env.SOLDERLEAF_ACCEPT === '1';
const kits = readdirSync('out')
  .filter((name) => name.endsWith('.svg'))
  .map((name) => name.slice(0, -4));

describe.each(kits)('%s', (kit) => {
  it('looks as it did when it was looked at', async () => {
    const drawn = Buffer.from(await svgToPng(readFileSync(`out/${kit}.svg`, 'utf8'), 1200));
    const file = `${FOLDER}/${kit}.png`;
    const changed = `${FOLDER}/${kit}-changed.png`;
    rmSync(changed, { force: true });
    if (accept) writeFileSync(file, drawn);
    expect(existsSync(file), `${file} is missing: look at the drawing, then npm run accept`).toBe(true);
    const [now, then] = [PNG.sync.read(drawn), PNG.sync.read(readFileSync(file))];
    const sameSize = now.width === then.width && now.height === then.height;
    const off = sameSize
      ? pixelmatch(now.data, then.data, undefined, now.width, now.height, { threshold: 0.1 })
      : -1;
    if (off !== 0) writeFileSync(changed, drawn);
    expect(off, `the picture changed: compare ${changed} with ${file}, then npm run accept`).toBe(0);
  });
});
