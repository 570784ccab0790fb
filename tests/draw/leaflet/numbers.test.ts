/** Numbers, colour codes and names of step drawings hide nothing: asked of the pictures, on the page of an A4 and an A5 leaflet. What must not be hidden: common practice, no source. */
import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { stepsOf } from '../../../src/annotate/steps.ts';
import type { Prepared } from '../../../src/draw/compose.ts';
import { stepFigures } from '../../../src/draw/leaflet/step-figure.ts';
import { samples } from '../../truth/draw.ts';
import { inBox, read } from '../../truth/reader.ts';
import { placed, placedKit } from './kits.ts';
import { oddKits } from './odd.ts';
import { crowdedNamesIn, onFacesIn, overlapsIn, strayedNumbersIn, unnamedIn } from './overlaps.ts';
import { throughIn } from './through.ts';

/** What a page leaves for a drawing, millimetres, and how high it is where it is crowded. */
const ROOMS = {
  A4: { width: 178, height: 119.25, tallest: 164.3 },
  A5: { width: 124, height: 83.7, tallest: 115.3 },
} as const;
type Paper = keyof typeof ROOMS;

const figures = (prepared: Prepared, paper: Paper) => {
  const { tallest, ...room } = ROOMS[paper];
  return stepFigures(prepared, stepsOf(prepared.circuit), room, { altOf: () => 'a step', tallest }).figures;
};

/** The pictures of a kit, drawn once for all that is asked of them. */
const drawn = new Map<string, ReturnType<typeof figures>>();
async function figuresOf(name: string, paper: Paper): Promise<ReturnType<typeof figures>> {
  const key = `${name} ${paper}`;
  const now = drawn.get(key) ?? figures(await placed(name), paper);
  drawn.set(key, now);
  return now;
}

const errorsIn = (all: ReturnType<typeof figures>): readonly string[] =>
  all.flatMap(({ svg }, i) =>
    [...overlapsIn(svg), ...crowdedNamesIn(svg)].map((error) => `step ${i + 1}: ${error}`),
  );

const labelsOf = ({ circuit }: Prepared): ReadonlyMap<string, string> =>
  new Map(circuit.kit.parts.map(({ name, label }) => [name, label]));

const circuits = readdirSync('samples/circuits').map((file) => `circuit/${file.replace('.yaml', '')}`);
const all = [...samples, ...circuits];

it.each(all)('%s on A4: nothing lies on anything', async (name) => {
  expect(errorsIn(await figuresOf(name, 'A4'))).toEqual([]);
});

it.each(all)('%s on A5: nothing lies on anything', async (name) => {
  expect(errorsIn(await figuresOf(name, 'A5'))).toEqual([]);
});

it.each(all)(
  '%s: every part has its whole name, off a pot’s wiper and within the box of a ground point, and no number lies on a coil',
  async (name) => {
    const labels = labelsOf(await placed(name));
    for (const paper of ['A4', 'A5'] as const)
      for (const { svg } of await figuresOf(name, paper)) {
        expect(onFacesIn(svg)).toEqual([]);
        expect(unnamedIn(svg, labels)).toEqual([]);
        expect(read(svg).texts.filter(({ words }) => words.includes('…'))).toEqual([]);
      }
  },
);

it.each(all)(
  '%s: no wire runs through a lug or the solder of a joint that it does not end at',
  async (name) => {
    for (const paper of ['A4', 'A5'] as const) {
      const through = (await figuresOf(name, paper)).flatMap(({ svg }, i) =>
        throughIn(svg).map((error) => `${paper}, step ${i + 1}: ${error}`),
      );
      expect(through).toEqual([]);
    }
  },
);

/** Numbers that stand nearer to another joint's end than to their own, where lines lie too close for any other place. */
const STRAYED: Readonly<Record<string, number>> = { 'kestrel-hss': 5, 'osprey-hsh': 7 };

it.each(Object.entries(STRAYED))('%s on A4: numbers stand at their own ends', async (name, known) => {
  const errors = (await figuresOf(name, 'A4')).flatMap(({ svg }) => strayedNumbersIn(svg));
  expect(errors.filter((error) => error.startsWith('paper'))).toEqual([]);
  expect(errors.length).toBeLessThanOrEqual(known);
});

/**
 * What remains of odd kits, where long names and random wiring, placed without a search, lie closer than in any leaflet: numbers or their leaders
 * that cross one lug, wire or name, and the name of a switch beside its own wires.
 */
const REMAINING: Readonly<Record<string, number>> = {
  'A5 names of thirty wide letters': 1,
  'A5 random kit 11': 2,
  'A5 random kit 13': 3,
  'A5 random kit 15': 1,
  'A4 random kit 16': 2,
  'A5 random kit 16': 7,
};

const odd = Object.entries(oddKits).flatMap(([name, kit]) =>
  (['A5', 'A4'] as const).map((paper) => [name, paper, kit] as const),
);
it.each(odd)(
  '%s on %s has no more in the way than is known, and no part without a name',
  async (name, paper, kit) => {
    const prepared = await placedKit(kit);
    const pictures = figures(prepared, paper);
    expect(errorsIn(pictures).length).toBeLessThanOrEqual(REMAINING[`${paper} ${name}`] ?? 0);
    expect(pictures.flatMap(({ svg }) => unnamedIn(svg, labelsOf(prepared)))).toEqual([]);
  },
);

it('no wire runs through the solder of another lug where names are long', async () => {
  const kit = oddKits['names of thirty letters in words'];
  if (!kit) throw new Error('no such kit');
  const pictures = figures(await placedKit(kit), 'A4');
  expect(pictures.flatMap(({ svg }) => throughIn(svg))).toEqual([]);
});

it.each(samples)('%s: each new coloured wire has its code once in its step', async (name) => {
  const steps = stepsOf((await placed(name)).circuit);
  let count = 0;
  for (const [i, { svg }] of (await figuresOf(name, 'A4')).entries()) {
    const wanted = (steps[i]?.details ?? []).flatMap(({ index, colour }) =>
      colour === undefined ? [] : [`${index + 1} ${colour}`],
    );
    const written = read(svg).texts.flatMap(({ group, words }) => {
      const joint = /-colour-(\d+)$/.exec(group)?.[1];
      return joint === undefined ? [] : [`${joint} ${words}`];
    });
    expect([...written].sort()).toEqual([...wanted].sort());
    count += wanted.length;
  }
  expect(count).toBeGreaterThan(3);
});

it('names the switch behind a push-pull pot, and has no solder at an end that stays free', async () => {
  for (const paper of ['A4', 'A5'] as const)
    for (const { svg } of await figuresOf('circuit/hh-toggle-3-1v1t-split', paper)) {
      const { parts, circles } = read(svg);
      const words = (name: string) => parts.find((part) => part.name === name)?.texts.map((one) => one.words);
      expect(words('tone')?.filter((one) => one === 'Tone')).toHaveLength(2);
      const point = parts.find(({ name }) => name === 'strings')?.rects.find(({ corner }) => corner === 5);
      if (!point) throw new Error('no ground point');
      const reach = { x: point.x - 6, y: point.y - 6, w: point.w + 12, h: point.h + 12 };
      expect(circles.filter((one) => inBox(reach, one))).toEqual([]);
    }
});
