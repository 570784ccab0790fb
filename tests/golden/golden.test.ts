/** Each sample's picture, drawn fresh from its description, against one that was looked at. */
import { readdirSync, readFileSync } from 'node:fs';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import { readKit } from '../../src/describe/read.ts';
import { findArrangement } from '../../src/files/layouts.ts';
import { draw } from '../../src/pipeline.ts';
import { svgToPng } from '../../src/publish/png.ts';
import { placedAnew, placedOnce } from '../tools/placements.ts';
import { expectPicture } from './picture.ts';

const kits = readdirSync('samples')
  .filter((name) => name.endsWith('.yaml'))
  .map((name): Kit => {
    const { kit } = readKit(readFileSync(`samples/${name}`, 'utf8'), name);
    if (!kit) throw new Error(`${name} is not a kit`);
    return kit;
  });

function drawn(kit: Kit, placed = placedOnce): Promise<string> {
  const arrangement = findArrangement(kit.arrangement);
  if (typeof arrangement === 'string') throw new Error(arrangement);
  return draw(kit, arrangement, placed);
}

describe.each(kits.map((kit) => [kit.id, kit] as const))('%s', (id, kit) => {
  it('looks as it did when it was looked at', async () =>
    expectPicture(id, await drawn(kit, placedAnew), 1200));
});

it('would see one wire gone', async () => {
  const [kit] = kits;
  if (!kit) throw new Error('no sample');
  const svg = await drawn(kit);
  const fewer = svg.replace(/<g id="[^"]*-joint-1".*?<\/g>/s, '');
  const render = async (text: string) => PNG.sync.read(Buffer.from(await svgToPng(text, 1200)));
  const [a, b] = [await render(svg), await render(fewer)];
  expect(pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.1 })).toBeGreaterThan(0);
});
