/** Numbers, colour codes and names of step drawings hide nothing: asked of the pictures, on the page of an A4 and an A5 leaflet. What must not be hidden: common practice, no source. */
import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { stepsOf } from '../../../src/annotate/steps.ts';
import type { Prepared } from '../../../src/draw/compose.ts';
import { stepFigures } from '../../../src/draw/leaflet/step-figure.ts';
import { samples } from '../../truth/draw.ts';
import { read } from '../../truth/reader.ts';
import { placed, placedKit } from './kits.ts';
import { oddKits } from './odd.ts';
import { crowdedNamesIn, overlapsIn, strayedNumbersIn } from './overlaps.ts';

/** What a page leaves for a drawing, millimetres. */
const ROOMS = { A4: { width: 178, height: 119.25 }, A5: { width: 124, height: 83.7 } } as const;
type Paper = keyof typeof ROOMS;

const figures = (prepared: Prepared, paper: Paper) =>
  stepFigures(prepared, stepsOf(prepared.circuit), ROOMS[paper], { altOf: () => 'a step' });

const errorsOf = (prepared: Prepared, paper: Paper): readonly string[] =>
  figures(prepared, paper).flatMap(({ svg }, i) =>
    [...overlapsIn(svg), ...crowdedNamesIn(svg)].map((error) => `step ${i + 1}: ${error}`),
  );

const circuits = readdirSync('samples/circuits').map((file) => `circuit/${file.replace('.yaml', '')}`);
const all = [...samples, ...circuits];

it.each(all)('%s on A4: nothing lies on anything', async (name) => {
  // One number of a blend's crowd of lugs touches another wire's edge.
  const known = name === 'circuit/bass-ss-blend-1v1t' ? 1 : 0;
  expect(errorsOf(await placed(name), 'A4').length).toBeLessThanOrEqual(known);
});

/**
 * What remains on A5, where a tag of 7-point type takes all of the room between two lugs: placed without a search, so closer than a leaflet's. Each is a
 * number or its leader that crosses one lug, wire or corner.
 */
const REMAINING: Readonly<Record<string, number>> = {
  'osprey-hsh': 1,
  'circuit/bass-ss-blend-1v1t': 2,
  'circuit/hh-toggle-3-1v1t-series-parallel': 2,
  'circuit/hh-toggle-3-1v1t-split': 3,
  'circuit/hh-toggle-3-2v2t-independent': 1,
  'circuit/hsh-lever-5-1v1t-auto-split': 5,
  'circuit/hss-lever-5-1v2t-pads': 1,
  'circuit/sss-lever-5-1v2t-bridge-tone': 1,
  'circuit/hss-lever-5-4p-1v1t-auto-split': 2,
  'circuit/sss-lever-5-1v2t-neck-on': 6,
};

/** Every second circuit is drawn on A5 too, so that all tests stay within their time. */
const half = [...samples, ...circuits.filter((name, i) => i % 2 === 0 || name in REMAINING)];

it.each(half)('%s on A5: no more than is known', async (name) => {
  expect(errorsOf(await placed(name), 'A5').length).toBeLessThanOrEqual(REMAINING[name] ?? 0);
});

/** Numbers that stand nearer to another joint's end than to their own, where lines lie too close for any other place. */
const STRAYED: Readonly<Record<string, number>> = { 'kestrel-hss': 5, 'osprey-hsh': 7 };

it.each(Object.entries(STRAYED))('%s on A4: numbers stand at their own ends', async (name, known) => {
  const errors = figures(await placed(name), 'A4').flatMap(({ svg }) => strayedNumbersIn(svg));
  expect(errors.filter((error) => error.startsWith('paper'))).toEqual([]);
  expect(errors.length).toBeLessThanOrEqual(known);
});

/** The same of odd kits: long names and random wiring, placed without a search. */
const ODD: Readonly<Record<Paper, Readonly<Record<string, number>>>> = {
  A4: {
    'names of thirty letters in words': 4,
    'random kit 11': 3,
    'random kit 13': 6,
    'random kit 14': 1,
    'random kit 16': 7,
  },
  A5: {
    'names of thirty wide letters': 11,
    'names of thirty letters in words': 4,
    'names with hyphens': 8,
    'ten joints on one case': 4,
    'random kit 11': 25,
    'random kit 13': 33,
    'random kit 14': 17,
    'random kit 15': 6,
    'random kit 12': 2,
    'random kit 16': 32,
  },
};

// On one paper each, by turns, so that all tests stay within their time.
const odd = Object.entries(oddKits).map(([name, kit], i) => [name, i % 2 === 0 ? 'A5' : 'A4', kit] as const);
it.each(odd)('%s on %s has no more in the way than is known', async (name, paper, kit) => {
  expect(errorsOf(await placedKit(kit), paper).length).toBeLessThanOrEqual(ODD[paper][name] ?? 0);
});

it.each(samples)('%s: each new coloured wire has its code once in its step', async (name) => {
  const prepared = await placed(name);
  const steps = stepsOf(prepared.circuit);
  let count = 0;
  for (const [i, { svg }] of figures(prepared, 'A4').entries()) {
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
