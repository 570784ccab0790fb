/**
 * The response plot, read back from its SVG: its axes are inverted from their printed figures, and what the curves and
 * labels say is held against the solver, which `tests/reference` and `tests/oracle` hold against the outside.
 */
import { describe, expect, it } from 'vitest';
import { decibels, type Knobs, knobsAtFull, solveResponse } from '../../src/analyse/index.ts';
import { drawResponse } from '../../src/pipeline.ts';
import { sampleNames } from '../analyse/kits.ts';
import { circuits } from './kits.ts';
import { axesOf, circlesOf, group, heightAt, overlaps, pointsOf, struckBy, textsOf } from './read-plot.ts';

const drawn = new Map<string, string>();

function svgOf(name: string, knobs: Knobs = knobsAtFull): string {
  const key = `${name} ${knobs.volume} ${knobs.tone}`;
  const circuit = circuits.get(name);
  if (!circuit) throw new Error(`no kit ${name}`);
  const svg = drawn.get(key) ?? drawResponse(circuit.kit, knobs);
  drawn.set(key, svg);
  return svg;
}

function solved(name: string, knobs: Knobs, hertz: number) {
  const circuit = circuits.get(name);
  if (!circuit) throw new Error(`no kit ${name}`);
  return solveResponse(circuit, { knobs, points: 1, from: hertz });
}

/** Whether a badge is of a state: `1/2·1, 2·2` is of three. */
const isOf = (badge: string, positions: Readonly<Record<string, number>>): boolean =>
  badge === '•' ||
  badge
    .split(', ')
    .some((one) =>
      one.split('·').every((part, i) => part.split('/').includes(String(Object.values(positions)[i]))),
    );

/** The number of the one panel that tells of a state, and its badge; states nobody could tell apart share one. */
function panelOf(svg: string, id: string, positions: Readonly<Record<string, number>>) {
  const badges: string[] = [];
  for (let n = 1; svg.includes(`id="${id}-position-${n}"`); n++)
    badges.push(textsOf(group(svg, `${id}-position-${n}`))[0]?.words ?? '');
  const own = badges.flatMap((badge, i) => (isOf(badge, positions) ? [{ number: i + 1, badge }] : []));
  if (own.length !== 1 || !own[0]) throw new Error(`${own.length} panels of ${JSON.stringify(positions)}`);
  return { ...own[0], count: badges.length };
}

const names = [...circuits.keys()];
const idOf = (name: string): string => `${circuits.get(name)?.kit.id}-response`;
const SETTINGS: readonly Knobs[] = [
  knobsAtFull,
  { volume: 5, tone: 2 },
  { volume: 2, tone: 10 },
  { volume: 10, tone: 0 },
  { volume: 0, tone: 10 },
];
const cases = names.flatMap((name) =>
  // Twenty-seven states take their time; once is enough.
  (name === 'many' ? SETTINGS.slice(0, 1) : SETTINGS).map((knobs) => [name, knobs] as const),
);

describe.each(cases)('%s at %o', (name, knobs) => {
  it('keeps texts off each other and on the sheet', () => {
    const svg = svgOf(name, knobs);
    const [, , width = 0, height = 0] = (/viewBox="([^"]*)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);
    const texts = textsOf(svg);
    expect(texts.length).toBeGreaterThan(15);
    expect(overlaps(texts)).toEqual([]);
    expect(
      texts.filter((one) => one.left < 0 || one.right > width || one.top < 0 || one.bottom > height),
    ).toEqual([]);
  });

  it('draws each line where the solver says', () => {
    const svg = svgOf(name, knobs);
    const axes = axesOf(svg, `${idOf(name)}-axes`);
    for (const hertz of [25, 110, 1000, 2900, 4400, 6000, 12_000, 19_000]) {
      for (const { index, together, state } of solved(name, knobs, hertz).states) {
        const { number } = panelOf(svg, idOf(name), state.positions);
        const points = pointsOf(group(svg, `${idOf(name)}-line-${number}`));
        const wanted = decibels(together?.gain[0] ?? 0);
        if (points.length === 0) expect(wanted).toBeLessThan(-150);
        else {
          const y = heightAt(points, axes.place(hertz));
          // A line that has gone below the floor is not drawn; it must really be there.
          const floor = axes.decibels(points.at(-1)?.[1] ?? 0);
          if (Number.isNaN(y)) expect(wanted).toBeLessThan(floor + 0.05);
          // Of many states those within a tenth of a decibel share a line.
          else {
            const off = Math.abs(axes.decibels(y) - wanted);
            expect(off, `state ${index + 1}, ${hertz} Hz`).toBeLessThan(name === 'many' ? 0.15 : 0.05);
          }
        }
      }
    }
  });
});

describe.each(names)('%s', (name) => {
  const id = idOf(name);

  it('draws the references of every panel where the solver says', () => {
    const svg = svgOf(name);
    let seen = 0;
    for (const hertz of [300, 1000, 2900, 4400, 6000]) {
      for (const { pickups, state } of solved(name, knobsAtFull, hertz).states) {
        const panel = `${id}-position-${panelOf(svg, id, state.positions).number}`;
        const axes = axesOf(svg, `${panel}-axes`);
        const lines = [1, 2, 3].map((n) => pointsOf(group(svg, `${panel}-reference-${n}`)));
        for (const { reference } of pickups) {
          const wanted = decibels(reference.gain[0] ?? 0);
          const off = lines
            .filter((points) => points.length > 0)
            .map((points) => Math.abs(axes.decibels(heightAt(points, axes.place(hertz))) - wanted));
          // References nearer than 0.2 dB share a line.
          expect(Math.min(...off), `${panel}, ${hertz} Hz`).toBeLessThan(0.25);
          seen += 1;
        }
      }
    }
    expect(seen).toBeGreaterThan(0);
  });

  it('writes the frequency of a flag in bold, and the height below it not', () => {
    const lines = [...group(svgOf(name), `${id}-flags`).matchAll(/<text([^>]*)>([^<]*)</g)];
    const bold = (unit: RegExp) =>
      lines
        .filter(([, , words = '']) => unit.test(words))
        .map(([, look = '']) => /font-weight="700"/.test(look));
    // In a plot of many positions flags have a badge alone.
    expect(bold(/Hz$/)).not.toContain(false);
    expect(bold(/dB$/)).not.toContain(true);
    if (name === 'heron-ss') expect(bold(/Hz$/).length).toBeGreaterThan(0);
  });

  it('names each line at its end in bold, a reference in regular', () => {
    const ends = [...group(svgOf(name), `${id}-names`).matchAll(/<text([^>]*)>([^<]*)</g)].map(
      ([, look = '', words = '']) => ({ bold: /font-weight="700"/.test(look), words }),
    );
    const named = ends.filter(({ words }) => !/^\d+(·\d+)*$/.test(words));
    expect(named.some(({ bold }) => bold)).toBe(true);
    for (const { bold, words } of named) expect(bold, words).toBe(!/reference/i.test(words));
  });

  it('writes frequencies as people read them', () => {
    const figures = textsOf(group(svgOf(name), `${id}-axes-hertz`)).map(({ words }) => words);
    expect(figures).toEqual(expect.arrayContaining(['100', '1k', '10k']));
    for (const figure of figures) expect(figure).toMatch(/^\d{2,3}$|^\d{1,2}k$/);
  });

  it('marks each resonance and −3 dB point at its place with the solver’s figure', () => {
    const svg = svgOf(name);
    const { states } = solved(name, knobsAtFull, 1000);
    const flags = textsOf(group(svg, `${id}-flags`)).map(({ words }) => words);
    const dots = circlesOf(group(svg, `${id}-flags`));
    const all = axesOf(svg, `${id}-axes`);
    // A pin leads from each flag down to the resonance it tells of.
    const pins = [...group(svg, `${id}-flags`).matchAll(/<path d="M[^"]*L([\d.]+) ([\d.]+)"/g)];
    expect(pins.map(([, x, y]) => [Number(x), Number(y)])).toEqual(dots.map(([x, y]) => [x, y]));
    expect(states.every(({ together }) => together?.shape.resonance)).toBe(true);
    for (const { together, state } of states) {
      const { number, badge, count } = panelOf(svg, id, state.positions);
      expect(dots).toHaveLength(count);
      const { resonance, cutoff } = together?.shape ?? {};
      if (!resonance || cutoff === undefined) throw new Error('every one of these states has a peak');
      const marks = group(svg, `${id}-position-${number}-marks`);
      const words = textsOf(marks).map((one) => one.words);
      const figure = words.map((one) => /^([\d.]+) kHz, \+([\d.]+) dB$/.exec(one)).find(Boolean);
      expect(Number(figure?.[1]) * 1000, words.join()).toBeCloseTo(
        Number(resonance.frequency.toPrecision(3)),
        6,
      );
      expect(Number(figure?.[2])).toBe(Number(resonance.height.toFixed(1)));
      const fall = words.map((one) => /^−3 dB at ([\d.]+) kHz$/.exec(one)).find(Boolean);
      expect(Number(fall?.[1]) * 1000).toBeCloseTo(Number(cutoff.toPrecision(3)), 6);

      const at = flags.indexOf(badge);
      expect(at, `flag ${badge}`).toBeGreaterThanOrEqual(0);
      if (count <= 10) expect(flags.slice(at + 1, at + 3).join(', ')).toBe(figure?.[0]);
      expect(
        dots.some(
          ([x, y]) =>
            Math.abs(all.hertz(x) / resonance.frequency - 1) < 1e-3 &&
            Math.abs(all.decibels(y) - resonance.level) < 0.01,
        ),
      ).toBe(true);
      const own = axesOf(svg, `${id}-position-${number}-axes`);
      const [x, y] = circlesOf(marks).at(-1) ?? [0, 0];
      expect(own.hertz(x) / cutoff).toBeCloseTo(1, 2);
      expect(own.decibels(y)).toBeCloseTo((together?.shape.plateau ?? 0) - 3.0103, 1);
    }
  });

  it('names every line at its end, each with its number, references too', () => {
    const svg = svgOf(name);
    const ends = textsOf(group(svg, `${id}-names`)).map(({ words }) => words);
    const circuit = circuits.get(name);
    for (const { positions, sounding } of circuit?.states ?? []) {
      const label = sounding.map((one) => circuit?.kit.parts.find((part) => part.name === one)?.label);
      const at = ends.indexOf(panelOf(svg, id, positions).badge);
      expect(ends[at + 1]).toBe(label.join(' + '));
    }
    expect(ends.filter((words) => words.startsWith('reference, ')).length).toBeGreaterThan(0);
  });

  it('is plain SVG with ids of its own, described, and the same every time', () => {
    const svg = svgOf(name);
    const kit = circuits.get(name)?.kit;
    if (!kit) throw new Error('no kit');
    expect(drawResponse(kit) === svg).toBe(true);
    const ids = [...svg.matchAll(/\sid="([^"]*)"/g)].map((found) => found[1] ?? '');
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter((one) => !one.startsWith(`${id}-`))).toEqual([]);
    expect(svg.slice(0, svg.indexOf('>'))).toContain(`role="img" aria-labelledby="${id}-title ${id}-desc"`);
    expect(svg.match(/<script|href|url\(|<style|NaN|Infinity|undefined/g)).toBeNull();
    // Numbers are rounded.
    expect(svg.match(/\d+\.\d{3}/)?.[0]).toBeUndefined();
    const texts = [...svg.matchAll(/<text([^>]*)>/g)];
    expect(texts.filter(([tag]) => !tag.includes('textLength='))).toEqual([]);
  });
});

it.each(sampleNames())('%s: no line runs through a text', (name) => {
  const svg = svgOf(name);
  const id = idOf(name);
  const count = circuits.get(name)?.states.length ?? 0;
  for (let n = 1; n <= count; n++) {
    const panel = group(svg, `${id}-position-${n}`);
    for (const line of ['line', 'reference-1', 'reference-2'])
      expect(struckBy(textsOf(panel), pointsOf(group(svg, `${id}-position-${n}-${line}`)))).toEqual([]);
    expect(struckBy(textsOf(group(svg, `${id}-all`)), pointsOf(group(svg, `${id}-line-${n}`)))).toEqual([]);
  }
});

it.each(sampleNames())('%s: what clears the lines behind a text lies behind a text', (name) => {
  const svg = svgOf(name);
  const paper = /<rect[^>]*fill="(#[\da-f]{6})"/.exec(svg)?.[1] ?? '';
  const texts = textsOf(svg);
  const cleared = [
    ...svg.matchAll(/<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"([^>]*)>/g),
  ].filter(
    ([, , , width, height, style = '']) =>
      style.includes(`fill="${paper}"`) && Number(height) < 24 && Number(width) < 200,
  );
  expect(cleared.length).toBeGreaterThan(0);
  for (const [, x, y, width, height] of cleared) {
    const [left, top, right, bottom] = [
      Number(x),
      Number(y),
      Number(x) + Number(width),
      Number(y) + Number(height),
    ];
    const behind = texts.filter(
      (one) =>
        one.left >= left - 1 && one.right <= right + 1 && one.top >= top - 6 && one.bottom <= bottom + 6,
    );
    expect(behind.length, `${x},${y}`).toBeGreaterThan(0);
  }
});

it('says so where nothing is heard', () => {
  const svg = svgOf('heron-ss', { volume: 0, tone: 10 });
  const words = textsOf(svg).map((one) => one.words);
  expect(words).toContain('No output at this setting.');
  expect(words.filter((one) => one === 'no output').length).toBeGreaterThanOrEqual(3);
  expect(pointsOf(group(svg, 'heron-ss-response-line-1'))).toEqual([]);
});

it.each(sampleNames())(
  '%s: one pickup is a solid line of its tint, several take turns in dashes of theirs',
  (name) => {
    const svg = svgOf(name);
    const seen = new Map<string, number>();
    circuits.get(name)?.states.forEach(({ sounding }, i) => {
      const line = group(svg, `${idOf(name)}-line-${i + 1}`);
      const dashes = [...line.matchAll(/stroke-dasharray="(\d+) (\d+)"/g)].map((found) => Number(found[1]));
      const before = seen.get(sounding.join()) ?? 0;
      seen.set(sounding.join(), before + 1);
      const tints = [...line.matchAll(/stroke="(#[\da-f]{6})"/g)].map((found) => found[1]);
      expect(new Set(tints).size, `state ${i + 1}`).toBe(sounding.length);
      expect(dashes).toHaveLength(sounding.length === 1 && before === 0 ? 0 : sounding.length);
    });
  },
);

it('tells second and third states of the same pickups apart without colour', () => {
  const svg = svgOf('nine');
  const dashes = [1, 2, 3].map(
    (n) => /stroke-dasharray="([^"]*)"/.exec(group(svg, `nine-response-line-${n}`))?.[1] ?? 'solid',
  );
  expect(new Set(dashes).size).toBe(3);
});

it('would find texts on one another and a line through a text', () => {
  const svg = svgOf('heron-ss');
  const texts = textsOf(svg);
  const [first] = texts;
  if (!first) throw new Error('no text');
  expect(overlaps([...texts, { ...first, left: first.left + 5, right: first.right + 5 }])).toHaveLength(1);
  const y = (first.top + first.bottom) / 2;
  expect(
    struckBy(texts, [
      [first.left - 4, y],
      [first.right + 4, y],
    ]),
  ).toEqual([first.words]);
});
