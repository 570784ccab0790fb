/** Bands and codes on components. Sources: IEC 60062 (colours, tolerances, codes) and IEC 60063 (series), from memory. */
import { describe, expect, it } from 'vitest';
import { described, drawn } from './draw.ts';
import type { Part } from './reader.ts';

/** IEC 60062: colours by figure, as a person sees them; each with the hue, saturation and lightness it must fall into. */
const FIGURES = ['black', 'brown', 'red', 'orange', 'yellow', 'green', 'blue', 'violet', 'grey', 'white'];
const MULTIPLIERS: Readonly<Record<number, string>> = {
  ...Object.fromEntries(FIGURES.map((name, power) => [power, name])),
  [-1]: 'gold',
  [-2]: 'silver',
};
const TOLERANCES: Readonly<Record<string, string>> = {
  '0.1%': 'violet',
  '0.25%': 'blue',
  '0.5%': 'green',
  '1%': 'brown',
  '2%': 'red',
  '5%': 'gold',
  '10%': 'silver',
};

/** What a person would call an ink. */
function colourOf(ink: string): string {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => Number.parseInt(ink.slice(i, i + 2), 16) / 255);
  const [most, least] = [Math.max(r, g, b), Math.min(r, g, b)];
  const light = (most + least) / 2;
  const spread = most - least;
  const strength = spread === 0 ? 0 : spread / (1 - Math.abs(2 * light - 1));
  const hue =
    spread === 0
      ? 0
      : 60 *
        (most === r ? ((g - b) / spread + 6) % 6 : most === g ? (b - r) / spread + 2 : (r - g) / spread + 4);
  if (strength < 0.2)
    return light < 0.25 ? 'black' : light > 0.88 ? 'white' : light > 0.62 ? 'silver' : 'grey';
  if (hue < 15 || hue > 340) return light < 0.3 ? 'brown' : 'red';
  if (hue < 50) return light < 0.35 ? 'brown' : strength < 0.6 ? 'gold' : hue < 40 ? 'orange' : 'yellow';
  if (hue < 70) return 'yellow';
  return hue < 170 ? 'green' : hue < 255 ? 'blue' : 'violet';
}

/** Bands from the first to the last: the tolerance band stands apart from the others. */
function bandsOf({ rects }: Part): readonly string[] {
  const bands = rects.filter(({ w, h }) => w < 8 && h > 10).sort((a, b) => a.x - b.x);
  const first = (bands[1]?.x ?? 0) - (bands[0]?.x ?? 0);
  const last = (bands.at(-1)?.x ?? 0) - (bands.at(-2)?.x ?? 0);
  expect(Math.abs(first - last)).toBeGreaterThan(2);
  return (last > first ? bands : bands.reverse()).map(({ fill }) => colourOf(fill));
}

/** Ohms and tolerance that bands stand for: two or three figures, how many zeros, the tolerance. */
function meantBy(bands: readonly string[]): { readonly ohms: number; readonly tolerance: string } {
  const figures = bands.slice(0, -2).map((band) => FIGURES.indexOf(band));
  const power = Object.entries(MULTIPLIERS).find(([, band]) => band === bands.at(-2))?.[0];
  const tolerance = Object.entries(TOLERANCES).find(([, band]) => band === bands.at(-1))?.[0];
  return { ohms: Number(`${figures.join('')}e${power}`), tolerance: tolerance ?? 'none' };
}

/** Resistors or capacitors end to end from tip to sleeve, so that one drawing shows many. */
function chain(id: string, kind: string, parts: readonly Readonly<Record<string, unknown>>[]) {
  const names = parts.map((_, i) => `x${i}`);
  const ends = ['output.tip', ...names.flatMap((name) => [`${name}.1`, `${name}.2`]), 'output.sleeve'];
  return described({
    kit: id,
    title: 'Components in a chain',
    parts: {
      pickup: { kind: 'single-coil' },
      output: { kind: 'jack' },
      ...Object.fromEntries(names.map((name, i) => [name, { kind, ...parts[i] }])),
    },
    joints: [
      { wire: 'pickup.hot > output.tip' },
      { wire: 'pickup.ground > output.sleeve' },
      ...Array.from({ length: names.length + 1 }, (_, i) => ({ leg: `${ends[2 * i]} > ${ends[2 * i + 1]}` })),
    ],
  });
}

/** IEC 60063: E96 is round(100 · 10^(i/96)); E24 and E12 are written out, as two of their values are not what a formula gives. */
const E96 = Array.from({ length: 96 }, (_, i) => Math.round(100 * 10 ** (i / 96)));
const E24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];
const E12 = [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82];

async function resistors(id: string, list: readonly { readonly ohms: number; readonly tolerance: string }[]) {
  const { parts } = await drawn(
    chain(
      id,
      'resistor',
      list.map(({ ohms, tolerance }) => ({ value: ohms, tolerance })),
    ),
  );
  list.forEach(({ ohms, tolerance }, i) => {
    const part = parts.find(({ name }) => name === `x${i}`);
    if (!part) throw new Error(`no x${i}`);
    const bands = bandsOf(part);
    expect(meantBy(bands), `${ohms} Ω, ${bands.join(' ')}`).toEqual({ ohms, tolerance });
  });
}

describe('a resistor’s bands', () => {
  it.each([0, 1, 2, 3])('of E96, 1 %%, part %i of 4', (part) =>
    resistors(
      `e96-${part}`,
      E96.slice(24 * part, 24 * part + 24).map((value, i) => ({
        ohms: value * 10 ** ((i + part) % 5),
        tolerance: '1%',
      })),
    ),
  );
  it('of E24, 5 %, over the decades', () =>
    resistors(
      'e24',
      E24.map((value, i) => ({ ohms: Number(`${value}e${(i % 7) - 1}`), tolerance: '5%' })),
    ));
  it.each(Object.keys(TOLERANCES))('of a tolerance of %s', (tolerance) =>
    resistors(`tolerance-${tolerance.replace(/\W/g, '')}`, [
      { ohms: 470e3, tolerance },
      { ohms: 1.5e6, tolerance },
    ]),
  );
});

it('a capacitor’s code: two figures and how many zeros follow, in picofarads (IEC 60062)', async () => {
  const list = E12.flatMap((value) => [`${value}0p`, `${value}n`]);
  const { parts } = await drawn(
    chain(
      'codes',
      'capacitor',
      list.map((value) => ({ value })),
    ),
  );
  list.forEach((value, i) => {
    const code = value.endsWith('n') ? `${value.slice(0, 2)}3` : `${value.slice(0, 2)}1`;
    expect(
      parts.find(({ name }) => name === `x${i}`)?.texts.map(({ words }) => words),
      value,
    ).toContain(code);
  });
});
