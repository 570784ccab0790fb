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
import { crowdedNamesIn, overlapsIn, strayedNumbersIn } from './overlaps.ts';
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

const circuits = readdirSync('samples/circuits').map((file) => `circuit/${file.replace('.yaml', '')}`);
const all = [...samples, ...circuits];

it.each(all)('%s on A4: nothing lies on anything', async (name) => {
  expect(errorsIn(await figuresOf(name, 'A4'))).toEqual([]);
});

it.each(all)('%s on A5: nothing lies on anything', async (name) => {
  expect(errorsIn(await figuresOf(name, 'A5'))).toEqual([]);
});

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
 * What remains of odd kits on A5, where long names and random wiring, placed without a search, lie closer than in any leaflet: names that find no room without a wire, numbers
 * or their leaders that cross one lug, wire or corner. On A4 nothing remains.
 */
const REMAINING: Readonly<Record<string, number>> = {
  'names of thirty wide letters': 8,
  'names of thirty letters in words': 1,
  'names with hyphens': 8,
  'random kit 11': 9,
  'random kit 13': 6,
  'random kit 14': 24,
  'random kit 15': 3,
  'random kit 16': 19,
};

// On one paper each, by turns, so that all tests stay within their time.
const odd = Object.entries(oddKits).map(([name, kit], i) => [name, i % 2 === 0 ? 'A5' : 'A4', kit] as const);
it.each(odd)('%s on %s has no more in the way than is known', async (name, paper, kit) => {
  const known = paper === 'A4' ? 0 : (REMAINING[name] ?? 0);
  expect(errorsIn(figures(await placedKit(kit), paper)).length).toBeLessThanOrEqual(known);
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
