/** What is drawn equals what is described: read back from the written SVG, for every sample in every arrangement. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import { readKit } from '../../src/describe/read.ts';
import { draw } from '../../src/pipeline.ts';
import { arrangementNames, findArrangement } from '../../src/publish/layouts.ts';
import { lintWires } from './lint.ts';
import { readSvg } from './read-svg.ts';

const files = readdirSync('samples').filter((name) => name.endsWith('.yaml'));
const kitOf = (file: string): Kit => {
  const { kit } = readKit(readFileSync(`samples/${file}`, 'utf8'), file);
  if (!kit) throw new Error(`${file} does not read`);
  return kit;
};
const described = (kit: Kit): readonly string[] =>
  kit.joints
    .map(({ from, to }) => [`${from.part}.${from.lug}`, `${to.part}.${to.lug}`].sort().join(' > '))
    .sort();
const drawn = async (kit: Kit, arrangement: string): Promise<string> => {
  const found = findArrangement(arrangement);
  if (typeof found === 'string') throw new Error(found);
  return draw(kit, found);
};

describe.each(files)('%s', (file) => {
  const kit = kitOf(file);
  it('as written to out/: every joint, lug to lug', () => {
    const svg = readFileSync(`out/${kit.id}.svg`, 'utf8');
    expect([...readSvg(svg, kit.id).joints].sort()).toEqual(described(kit));
  });
  it.each(arrangementNames())(
    'in %s: every joint, and no wire shared, crowded or under a part',
    async (name) => {
      const svg = await drawn(kit, name);
      const read = readSvg(svg, kit.id);
      expect([...read.joints].sort()).toEqual(described(kit));
      expect(lintWires(read)).toEqual([]);
      expect(await drawn(kit, name), 'same input, same bytes').toBe(svg);
    },
  );
});

describe('the reading can fail', () => {
  const kit = kitOf(files[0] ?? '');
  const svg = readFileSync(`out/${kit.id}.svg`, 'utf8');
  it('when a wire’s end is moved off its lug', () => {
    const moved = svg.replace(
      /(-joint-\d+"[^>]*>\s*<path d="M)(\S+) /,
      (_, head, x) => `${head}${Number(x) + 40} `,
    );
    expect([...readSvg(moved, kit.id).joints].sort()).not.toEqual(described(kit));
  });
  it('when a wire is drawn twice, or close beside another, or askew, or under a part', () => {
    const read = readSvg(svg, kit.id);
    const s = read.stretches.find((one) => Math.abs(one.x1 - one.x2) > 40);
    const body = read.bodies[0];
    if (!s || !body) throw new Error('nothing to tamper with');
    const withExtra = (extra: typeof s) => lintWires({ ...read, stretches: [...read.stretches, extra] });
    expect(withExtra({ ...s, wire: 999 })).toContainEqual(expect.stringContaining('share a stretch'));
    expect(withExtra({ ...s, wire: 999, y1: s.y1 + 5, y2: s.y2 + 5 })).toContainEqual(
      expect.stringContaining('apart'),
    );
    expect(withExtra({ ...s, wire: 999, y2: s.y2 + 5 })).toContainEqual(expect.stringContaining('askew'));
    const y = body.y + body.height / 2;
    expect(withExtra({ wire: 999, x1: body.x - 9, x2: body.x + 60, y1: y, y2: y })).toContainEqual(
      expect.stringContaining(`under ${body.part}`),
    );
  });
});
