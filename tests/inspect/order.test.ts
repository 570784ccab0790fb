/** What lies above what: a drawing whose groups are painted in another order is another picture. */
import { expect, it } from 'vitest';
import { inspect } from '../../src/inspect/index.ts';
import { drawnIn, sampleKits } from './variants.ts';

it.each(['wires', 'colours'])('the group of %s painted before the parts is found', async (name) => {
  const kit = sampleKits().find(({ id }) => id === 'wren-hs');
  if (!kit) throw new Error('the sample is gone');
  const svg = await drawnIn(kit, 'plate-row', { effort: { steps: 0, seed: 1 } });
  expect(inspect(svg, kit)).toEqual([]);
  const start = svg.indexOf(`<g id="wren-hs-${name}"`);
  const rest = svg.slice(start);
  // The group ends where as many groups have ended as have begun.
  let depth = 0;
  let end = 0;
  for (const { 0: tag, index } of rest.matchAll(/<g[ >]|<\/g>/g)) {
    depth += tag === '</g>' ? -1 : 1;
    if (depth === 0) {
      end = index + tag.length;
      break;
    }
  }
  const group = rest.slice(0, end);
  const without = svg.slice(0, start) + rest.slice(end);
  const first = without.indexOf('<g id="wren-hs-part-');
  const moved = without.slice(0, first) + group + without.slice(first);
  expect(moved).toHaveLength(svg.length);
  expect(inspect(moved, kit).map(({ rule }) => rule)).toContain('drawn-otherwise');
});
