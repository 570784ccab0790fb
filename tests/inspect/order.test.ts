/** What lies above what: a drawing whose groups are painted in another order is another picture. */
import { expect, it } from 'vitest';
import { formatFinding, inspect } from '../../src/inspect/index.ts';
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
  expect(inspect(moved, kit).map(({ rule }) => rule)).toContain('differs-from-kit');
});

/** The finding's words, for a change of one drawing. */
async function wordsFor(kitId: string, change: (svg: string) => string): Promise<readonly string[]> {
  const kit = sampleKits().find(({ id }) => id === kitId);
  if (!kit) throw new Error('the sample is gone');
  const svg = await drawnIn(kit, 'plate-row', { effort: { steps: 0, seed: 1 } });
  const changed = change(svg);
  expect(changed).not.toBe(svg);
  return inspect(changed, kit).map(formatFinding);
}

it('what is drawn otherwise is told by what of it differs', async () => {
  const radius = await wordsFor('wren-hs', (svg) =>
    svg.replace(/(class="sl-plate" rx=")\d+/, (_, before: string) => `${before}13`),
  );
  expect(radius.join('\n')).toMatch(/the drawing has rect with rx 13, the kit gives rect with rx \d+/);
  const other = await wordsFor('wren-hs', (svg) =>
    svg.replace('>five-way<', '>x<').replace('>three-way<', '>four-way<'),
  );
  expect(other.join('\n')).toContain('the drawing has “four-way”, the kit gives “three-way”');
});

it('a wire under the pale box of a padding resistor is found without the kit', async () => {
  const kit = sampleKits().find(({ id }) => id === 'wren-hs');
  if (!kit) throw new Error('the sample is gone');
  const svg = await drawnIn(kit, 'plate-row', { effort: { steps: 0, seed: 1 } });
  const moved = svg.replace(/<rect([^>]*class="sl-highlight"[^>]*)>/, (_, look: string) => {
    const wide = look.replace(/ (x|y)="[^"]*"/g, ' $1="0"').replace(/ (width|height)="[^"]*"/g, ' $1="700"');
    return `<rect${wide}>`;
  });
  expect(moved).not.toBe(svg);
  expect(
    inspect(moved)
      .map(formatFinding)
      .filter((words) => words.includes('the highlight of')).length,
  ).toBeGreaterThan(0);
});

it('an element that is there twice is found, also where it is the last of its group', async () => {
  const twice = await wordsFor('wren-hs', (svg) =>
    svg.replace(/(<text[^>]*>[^<]*<\/text>)(<\/g>)/, '$1$1$2'),
  );
  expect(twice.join('\n')).toMatch(/differs-from-kit/);
});

it('colour codes are looked at in a whole drawing whatever the kit is called, and not in that of a step', async () => {
  const sample = sampleKits().find(({ id }) => id === 'wren-hs');
  if (!sample) throw new Error('the sample is gone');
  const kit = { ...sample, id: 'wren-step-2' };
  const effort = { steps: 0, seed: 1 };
  const whole = await drawnIn(kit, 'plate-row', { effort });
  expect(inspect(whole, kit)).toEqual([]);
  const group = /<g id="wren-+step-2-colours".*?>PK<\/text>/s.exec(whole)?.[0] ?? '';
  expect(group).not.toBe('');
  const changed = whole.replace(group, group.replace('>PK<', '>GY<'));
  expect(inspect(changed, kit).map(({ rule }) => rule)).toContain('differs-from-kit');
  expect(
    inspect(await drawnIn(kit, 'plate-row', { effort, step: 3 }), kit).map(({ rule }) => rule),
  ).not.toContain('differs-from-kit');
});
