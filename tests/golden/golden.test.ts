/** Each sample's picture against one that was looked at. `npm run accept` takes the new ones: look at them first. */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { svgToPng } from '../../src/publish/png.ts';

const FOLDER = 'tests/golden';
const accept = process.env.SOLDERLEAF_ACCEPT === '1';
const named = (folder: string, ending: string): readonly string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith(ending))
    .map((name) => name.slice(0, -ending.length))
    .sort();
const kits = named('out', '.svg');

it('every sample has its picture', () => expect(kits).toEqual(named('samples', '.yaml')));

describe.each(kits)('%s', (kit) => {
  it('looks as it did when it was looked at', async () => {
    const drawn = Buffer.from(await svgToPng(readFileSync(`out/${kit}.svg`, 'utf8'), 1200));
    const file = `${FOLDER}/${kit}.png`;
    const changed = `${FOLDER}/${kit}-changed.png`;
    const difference = `${FOLDER}/${kit}-difference.png`;
    for (const left of [changed, difference]) rmSync(left, { force: true });
    if (accept) writeFileSync(file, drawn);
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
    if (off > 0) {
      writeFileSync(changed, drawn);
      writeFileSync(difference, PNG.sync.write(marks));
    }
    expect(
      off,
      `the picture changed: see ${difference}, compare ${changed} with ${file}, then npm run accept`,
    ).toBe(0);
  });
});

it('would see one wire gone', async () => {
  const svg = readFileSync(`out/${kits[0]}.svg`, 'utf8');
  const fewer = svg.replace(/<g id="[^"]*-joint-1".*?<\/g>/s, '');
  const render = async (text: string) => PNG.sync.read(Buffer.from(await svgToPng(text, 1200)));
  const [a, b] = [await render(svg), await render(fewer)];
  expect(pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.1 })).toBeGreaterThan(0);
});
