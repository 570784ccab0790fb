/** A resistor's bands read as a person reads them. Source: IEC 60062 (colours and tolerances), from memory. */
import { expect } from 'vitest';
import type { Part } from './reader.ts';

/** IEC 60062: colours by figure, as a person sees them; each with the hue, saturation and lightness it must fall into. */
const FIGURES = ['black', 'brown', 'red', 'orange', 'yellow', 'green', 'blue', 'violet', 'grey', 'white'];
const MULTIPLIERS: Readonly<Record<number, string>> = {
  ...Object.fromEntries(FIGURES.map((name, power) => [power, name])),
  [-1]: 'gold',
  [-2]: 'silver',
};
export const TOLERANCES: Readonly<Record<string, string>> = {
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
export function bandsOf({ rects }: Part): readonly string[] {
  const bands = rects.filter(({ w, h }) => w < 8 && h > 10).sort((a, b) => a.x - b.x);
  const first = (bands[1]?.x ?? 0) - (bands[0]?.x ?? 0);
  const last = (bands.at(-1)?.x ?? 0) - (bands.at(-2)?.x ?? 0);
  expect(Math.abs(first - last)).toBeGreaterThan(2);
  return (last > first ? bands : bands.reverse()).map(({ fill }) => colourOf(fill));
}

/** Ohms and tolerance that bands stand for: two or three figures, how many zeros, the tolerance. */
export function meantBy(bands: readonly string[]): { readonly ohms: number; readonly tolerance: string } {
  const figures = bands.slice(0, -2).map((band) => FIGURES.indexOf(band));
  const power = Object.entries(MULTIPLIERS).find(([, band]) => band === bands.at(-2))?.[0];
  const tolerance = Object.entries(TOLERANCES).find(([, band]) => band === bands.at(-1))?.[0];
  return { ohms: Number(`${figures.join('')}e${power}`), tolerance: tolerance ?? 'none' };
}
