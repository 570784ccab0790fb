/** A picture against the one that was looked at. `npm run accept` takes the new ones: look at them first. */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { expect } from 'vitest';
import { svgToPng } from '../../src/publish/png.ts';

const FOLDER = 'tests/golden';
const accept = process.env.SOLDERLEAF_ACCEPT === '1';

/** Fails where the drawing does not look as its picture in this folder does, and puts the new one beside it. */
export async function expectPicture(name: string, svg: string, width: number): Promise<void> {
  expectPng(name, await svgToPng(svg, width));
}

/**
 * The same of a picture that is made already.
 *
 * @param share of its pixels that may differ, for a page whose words another browser's fonts set a little otherwise
 */
export function expectPng(name: string, png: Uint8Array, share = 0): void {
  const drawn = Buffer.from(png);
  const file = `${FOLDER}/${name}.png`;
  const changed = `${FOLDER}/${name}-changed.png`;
  const difference = `${FOLDER}/${name}-difference.png`;
  for (const left of [changed, difference]) rmSync(left, { force: true });
  if (accept) {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, drawn);
  }
  expect(existsSync(file), `${file} is missing: look at the drawing, then npm run accept`).toBe(true);
  const [now, then] = [PNG.sync.read(drawn), PNG.sync.read(readFileSync(file))];
  const sameSize = now.width === then.width && now.height === then.height;
  if (!sameSize) writeFileSync(changed, drawn);
  expect(
    [now.width, now.height],
    `the size changed: compare ${changed} with ${file}, then npm run accept`,
  ).toEqual([then.width, then.height]);
  const marks = new PNG({ width: now.width, height: now.height });
  const off = pixelmatch(now.data, then.data, marks.data, now.width, now.height, { threshold: 0.1 });
  const allowed = Math.floor(share * now.width * now.height);
  if (off > allowed) {
    writeFileSync(changed, drawn);
    writeFileSync(difference, PNG.sync.write(marks));
  }
  expect(
    off,
    `the picture changed: see ${difference}, compare ${changed} with ${file}, then npm run accept`,
  ).toBeLessThanOrEqual(allowed);
}

/** Fails where there is a picture of a page behind the last one, as a leaflet that has become shorter leaves it; accepting takes it away. */
export function expectNoPageBehind(name: string, last: number): void {
  const folder = dirname(`${FOLDER}/${name}`);
  const behind = readdirSync(folder).filter((file) => {
    const [start, number] = [`${basename(name)}-`, /-(\d+)\.png$/.exec(file)?.[1]];
    return file.startsWith(start) && number !== undefined && Number(number) > last;
  });
  if (accept) for (const file of behind) rmSync(`${folder}/${file}`);
  else expect(behind, 'pages that are no more: npm run accept takes them away').toEqual([]);
}
