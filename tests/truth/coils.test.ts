/**
 * A humbucker with four leads as it is drawn: five places to solder to, each lead of a coil leading to the coil that its name says,
 * and every way to join them read back from the picture. Source: the handbook, “Parts”.
 */
import { describe, expect, it } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import { formatFinding, inspect } from '../../src/inspect/index.ts';
import { ways } from '../oracle/ways.ts';
import { described, drawn } from './draw.ts';
import { type Box, inBox, jointErrors, type Part, type Point } from './reader.ts';

const LEADS = ['a-start', 'a-finish', 'b-finish', 'b-start'];
const seen = (['solder-side', 'component-side'] as const).flatMap((view) =>
  (['right', 'left'] as const).map((hand) => ({ view, hand })),
);

/** A kit of the table that ngspice is asked about; component legs are legs here, as a person writes them. */
function kitOf(name: string): Kit {
  const { parts, joints } = ways[name] ?? { parts: {}, joints: [] };
  const written = joints.map((joint) => {
    const text = String(joint);
    return text.includes('part.') ? { leg: text } : text;
  });
  return described({
    kit: `coils-${name.toLowerCase().replace(/[^a-z]+/g, '-')}`,
    title: name,
    parts,
    joints: written,
  });
}

const coilsOf = ({ rects }: Part): readonly Box[] => {
  const tall = rects.filter(({ w, h }) => h > 2 * w);
  return tall.filter((one) => !tall.some((other) => other !== one && other.w > one.w && inBox(other, one)));
};
const near = (a: Point, box: Box): number => Math.hypot(a.x - (box.x + box.w / 2), a.y - (box.y + box.h / 2));

/** The coil that a letter stands beside. */
function coilNamed(part: Part, letter: string): Box {
  const text = part.texts.find(({ words }) => words === letter);
  const [coil] = text ? [...coilsOf(part)].sort((a, b) => near(text, a) - near(text, b)) : [];
  if (!coil) throw new Error(`no coil ${letter}`);
  return coil;
}

describe.each(seen)('from the $view, $hand-handed', (aspect) => {
  it('has its five tags, and two coils with their letters', async () => {
    const { parts } = await drawn(kitOf('series'), aspect);
    const part = parts.find(({ name }) => name === 'bridge');
    expect(part?.tags.map(({ name }) => name).sort()).toEqual([...LEADS, 'shield'].sort());
    expect(part && coilsOf(part)).toHaveLength(2);
    const [a, b] = ['A', 'B'].map((letter) => part && coilNamed(part, letter));
    expect(a).not.toEqual(b);
  });

  it('each lead is drawn from its own coil to its own tag', async () => {
    const { parts } = await drawn(kitOf('series'), aspect);
    const part = parts.find(({ name }) => name === 'bridge');
    if (!part) throw new Error('no pickup');
    const lines = part.paths.flatMap(({ pieces }) => pieces);
    for (const lead of LEADS) {
      const coil = coilNamed(part, lead.startsWith('a') ? 'A' : 'B');
      const tag = part.tags.find(({ name }) => name === lead)?.box;
      const own = lines.filter(([from]) => from && inBox(coil, from, 1));
      expect(own).toHaveLength(2);
      expect(
        own.filter((line) => {
          const end = line.at(-1);
          return tag && end && inBox(tag, end, 1);
        }),
        lead,
      ).toHaveLength(1);
    }
  });
});

describe('every way to join its coils', () => {
  it.each(Object.keys(ways))('%s: read back as described, with no finding', async (name) => {
    const kit = kitOf(name);
    for (const aspect of seen) {
      const drawing = await drawn(kit, aspect);
      expect(jointErrors(drawing, kit)).toEqual([]);
      expect(inspect(drawing.svg, kit).map(formatFinding)).toEqual([]);
    }
  });
});

describe('cards', () => {
  const cards = async (name: string) => (await drawn(kitOf(name))).texts.map(({ words }) => words).join('\n');
  it('name the coil of a split pickup, and what the reference is', async () => {
    expect(await cards('coil B shorted')).toMatch(/^Bridge coil A$/m);
    expect(await cards('coil A shorted')).toMatch(/^Bridge coil B$/m);
    expect(await cards('coil A shorted')).toContain(
      'One coil alone: tick and level are those of the whole pickup',
    );
    expect(await cards('series')).not.toMatch(/coil [AB]|One coil/);
  });
  it('say what cancels hum, and coils in parallel or against each other', async () => {
    expect(await cards('series')).toMatch(/^hum-cancelling$/m);
    expect(await cards('parallel')).toMatch(/^coils in parallel, hum-cancelling$/m);
    expect(await cards('coil B shorted')).not.toMatch(/^.*hum-cancelling$/m);
    expect(await cards('coils against each other')).toMatch(/^coils out of phase: they cancel, no output$/m);
  });
});
