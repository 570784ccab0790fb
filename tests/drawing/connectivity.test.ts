/** What is drawn equals what is described: read back from the written SVG, for every sample in every arrangement. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import { readKit } from '../../src/describe/read.ts';
import { lugsOf } from '../../src/parts/index.ts';
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
const lugNames = (kit: Kit): readonly string[] =>
  kit.parts.flatMap((part) => lugsOf(part).map((lug) => `${part.name}.${lug.name}`)).sort();
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
      expect(read.faults).toEqual([]);
      expect(read.lugs.map((lug) => lug.name).sort(), 'every lug, once').toEqual(lugNames(kit));
      expect(read.bodies.map((body) => body.part).sort(), 'every part’s body, once').toEqual(
        kit.parts.map((part) => part.name).sort(),
      );
      expect(await drawn(kit, name), 'same input, same bytes').toBe(svg);
    },
  );
});

describe('the reading can fail', () => {
  const kit = kitOf(files[0] ?? '');
  const svg = readFileSync(`out/${kit.id}.svg`, 'utf8');
  const read = readSvg(svg, kit.id);
  const add = (d: string): string =>
    svg.replace(
      `<g id="${kit.id}-wires">`,
      (head) => `${head}<g id="x-joint-999"><path d="${d}"></path></g>`,
    );
  const lint = (text: string): readonly string[] => lintWires(readSvg(text, kit.id));
  const saying = (words: string) => expect.stringContaining(words);
  const long = [...read.stretches].sort((a, b) => Math.abs(b.x1 - b.x2) - Math.abs(a.x1 - a.x2))[0];
  if (!long) throw new Error('nothing to tamper with');
  const beside = (by: number): string => add(`M${long.x1} ${long.y1 + by}L${long.x2} ${long.y2 + by}`);
  const crossed = read.wires.find((wire) => wire.openings.length > 0);
  const opening = /L([-\d.]+) ([-\d.]+)M([-\d.]+) ([-\d.]+)/g;

  it('not while nothing is tampered with', () => {
    expect(read.faults).toEqual([]);
    expect(lint(svg)).toEqual([]);
  });
  it('when a wire’s end is moved off its lug', () => {
    const moved = svg.replace(
      /(-joint-\d+"[^>]*>\s*<path d="M)(\S+) /,
      (_, head, x) => `${head}${Number(x) + 40} `,
    );
    expect([...readSvg(moved, kit.id).joints].sort()).not.toEqual(described(kit));
    expect(readSvg(moved, kit.id).faults).toContainEqual(saying('is not one line'));
  });
  it('when a wire is missing, or a lug bears another name', () => {
    const fewer = svg.replace(/<g id="[^"]*-joint-1".*?<\/g>/s, '');
    expect([...readSvg(fewer, kit.id).joints].sort()).not.toEqual(described(kit));
    const renamed = svg.replace('>tip</text>', '>top</text>');
    expect([...readSvg(renamed, kit.id).joints].sort()).not.toEqual(described(kit));
  });
  it('when a wire is drawn twice, close beside another, or askew', () => {
    expect(lint(beside(0))).toContainEqual(saying('share a stretch'));
    expect([...readSvg(beside(0), kit.id).joints].sort()).not.toEqual(described(kit));
    expect(lint(beside(5))).toContainEqual(saying('run 5 apart'));
    expect(lint(add(`M${long.x1} ${long.y1}L${long.x2} ${long.y2 + 5}`))).toContainEqual(
      saying('runs askew'),
    );
  });
  it('when a wire runs under a part, over another’s lug or just inside a case it is not soldered to', () => {
    for (const { part, round, x, y, width, height } of read.bodies) {
      const at = round ? y + 6 : y + height / 2;
      expect(lint(add(`M${x - 9} ${at}L${x + width + 9} ${at}`))).toContainEqual(saying(`under ${part}`));
    }
    for (const { name, round, x, y, width } of read.lugs)
      if (!round)
        expect(lint(add(`M${x + width / 2} ${y - 9}L${x + width / 2} ${y + 60}`))).toContainEqual(
          saying(`over ${name}`),
        );
  });
  it('when a wire turns upon another', () => {
    const x = (long.x1 + long.x2) / 2;
    const turned = add(`M${x - 30} ${long.y1 - 30}L${x} ${long.y1 - 30}L${x} ${long.y1}`);
    expect(lint(turned)).toContainEqual(saying('knocks'));
  });
  it('when an opening is closed, too wide, or askew', () => {
    expect(crossed, 'a crossing to tamper with').toBeDefined();
    expect(lint(svg.replaceAll(opening, ''))).toContainEqual(saying('cross with 0'));
    const wide = svg.replaceAll(opening, 'L$1 $2M-999 $4');
    expect(readSvg(wide, kit.id).faults).toContainEqual(saying('broken'));
    const askew = svg.replaceAll(opening, (_, a, b, c, d) => `L${a} ${b}M${Number(c) + 2} ${Number(d) + 2}`);
    expect(readSvg(askew, kit.id).faults).toContainEqual(saying('broken'));
  });
  it('when a part is moved on its own', () => {
    const moved = svg.replace(/<g id="[^"]*-part-[^"]*"/, (head) => `${head} transform="translate(9 0)"`);
    expect(readSvg(moved, kit.id).faults).toContainEqual(saying('transform'));
  });
});
