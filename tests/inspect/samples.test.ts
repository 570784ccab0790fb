/** Every drawing of every sample, read from its SVG: nothing touches what it should not, and it says what is described. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../src/inspect/drawing.ts';
import { formatFinding, inspect } from '../../src/inspect/index.ts';
import { wireOf } from '../../src/inspect/rules/chips.ts';
import { lugsOf } from '../../src/parts/index.ts';
import { placedAnew } from '../tools/placements.ts';
import { aspects, drawnIn, sampleKits, type Variant, variants } from './variants.ts';

const all: Variant[] = [];
for await (const variant of variants()) all.push(variant);
const others: Variant[] = [];
for await (const variant of aspects()) others.push(variant);

describe('as drawn', () => {
  it.each(all)('$name: nothing is found', ({ svg, kit }) => {
    expect(inspect(svg, kit).map(formatFinding)).toEqual([]);
  });
  it.each(all)('$name: the reading leaves nothing out', ({ svg, kit }) => {
    const drawing = readDrawing(svg);
    if ('rule' in drawing) throw new Error(drawing.message);
    expect(drawing.wires).toHaveLength(kit.joints.length);
    expect(drawing.parts.flatMap(({ lugs }) => lugs)).toHaveLength(kit.parts.flatMap(lugsOf).length);
    expect(drawing.texts).toHaveLength(svg.match(/<text\s/g)?.length ?? 0);
    expect(drawing.marks).toHaveLength(svg.match(/<(text|rect|circle|path)\s/g)?.length ?? 0);
    expect(drawing.chips.length).toBeGreaterThan(0);
    const cards = drawing.shapes.filter(({ is }) => is.includes('sl-card'));
    expect(cards.length, 'a card a state').toBeGreaterThanOrEqual(3);
  });
  it('same input, same bytes', async () => {
    for (const { svg, kit, arrangement, aspect } of all.slice(0, 2))
      expect(await drawnIn(kit, arrangement, { ...aspect, ...placedAnew })).toBe(svg);
  });
});

describe('left-handed, in every state, up to every step, on a page', () => {
  it.each(others)('$name: nothing is found', ({ svg, kit, aspect }) => {
    // Up to a step some joints are not there yet; what is there must still be as described.
    const early = [
      ...(aspect.step === undefined ? [] : ['joint-missing', 'part-loose']),
      // How small a sheet gets on a page depends on its shape, and `draw` says so.
      ...(aspect.page ? ['small-type'] : []),
    ];
    const found = inspect(svg, kit).filter(({ rule }) => !early.includes(rule));
    expect(found.map(formatFinding)).toEqual([]);
  });
});

describe('colour codes', () => {
  it.skipIf(process.env.SOLDERLEAF_WITHOUT_OUT === '1').each(sampleKits())(
    'out/$id.svg: every wire whose colour is given shows it',
    (kit) => {
      const drawing = readDrawing(readFileSync(`out/${kit.id}.svg`, 'utf8'));
      if ('rule' in drawing) throw new Error(drawing.message);
      // A long wire shows it twice.
      const shown = new Map(drawing.chips.map((chip) => [wireOf(chip, drawing.wires), chip.code]));
      expect([...shown.values()].sort()).toEqual(kit.joints.flatMap(({ colour }) => colour ?? []).sort());
    },
  );
});

it.skipIf(process.env.SOLDERLEAF_WITHOUT_OUT === '1').each(sampleKits())(
  'out/$id.svg as committed: nothing is found',
  (kit) => {
    expect(inspect(readFileSync(`out/${kit.id}.svg`, 'utf8'), kit).map(formatFinding)).toEqual([]);
  },
);
