/** The shape of a response curve: where it peaks, how high, and where it has fallen by 3 dB. */
import { nth } from '../common/must.ts';

/** Gain, volts per volt, at a frequency. */
export type Gain = (frequency: number) => number;

export interface Peak {
  /** Hertz. */
  readonly frequency: number;
  /** Decibels above the plateau. */
  readonly height: number;
  /** Decibels, 0 for one volt at the jack per volt induced. */
  readonly level: number;
}

export interface CurveShape {
  /** Level at 100 Hz, decibels: below every resonance of a pickup, where the curve is flat. */
  readonly plateau: number;
  /** The highest peak; absent when the curve only falls. */
  readonly resonance?: Peak;
  /** Hertz where the curve, beyond its peak, has fallen to the plateau's half power; absent beyond the range. */
  readonly cutoff?: number;
}

export const LOWEST = 20;
export const HIGHEST = 20_000;
export const PLATEAU = 100;
/** A resonance lower than this cannot be heard. Decibels. */
const LEAST_HEIGHT = 0.1;
/** Silence, so that the figures stay finite. */
const FLOOR = 1e-10;

/** Decibels of a gain, −200 for silence. */
export const decibels = (gain: number): number => 20 * Math.log10(Math.max(gain, FLOOR));

/** Frequencies evenly spaced on a logarithmic axis, both ends included. */
export function logGrid(points: number, from = LOWEST, to = HIGHEST): readonly number[] {
  if (points < 2) return [from];
  return Array.from({ length: points }, (_, i) =>
    i === points - 1 ? to : from * (to / from) ** (i / (points - 1)),
  );
}

const COARSE = logGrid(61, PLATEAU, HIGHEST);

/** Plateau, resonance by refined search, and −3 dB point of a curve. */
export function shapeOf(gain: Gain): CurveShape {
  const values = COARSE.map(gain);
  const flat = nth(values, 0);
  const resonance = peakOf(gain, values, flat);
  const cutoff = cutoffOf(gain, values, flat, resonance?.frequency ?? PLATEAU);
  return {
    plateau: decibels(flat),
    ...(resonance ? { resonance } : {}),
    ...(cutoff === undefined ? {} : { cutoff }),
  };
}

function peakOf(gain: Gain, values: readonly number[], flat: number): Peak | undefined {
  let best: number | undefined;
  let highest = 0;
  for (let i = 1; i < values.length - 1; i++) {
    const here = nth(values, i);
    const summit = here > nth(values, i - 1) && here >= nth(values, i + 1);
    if (summit && here > highest) [best, highest] = [i, here];
  }
  if (best === undefined || flat <= FLOOR) return undefined;
  const frequency = highestBetween(gain, nth(COARSE, best - 1), nth(COARSE, best + 1), 1e-9);
  const level = decibels(gain(frequency));
  const height = level - decibels(flat);
  return height < LEAST_HEIGHT ? undefined : { frequency, height, level };
}

function cutoffOf(gain: Gain, values: readonly number[], flat: number, above: number): number | undefined {
  const wanted = flat * Math.SQRT1_2;
  if (flat <= FLOOR) return undefined;
  const i = COARSE.findIndex((f, k) => f > above && nth(values, k) < wanted);
  let [low, high] = [Math.max(above, COARSE[i - 1] ?? PLATEAU), COARSE[i]];
  if (high === undefined) return undefined;
  for (let k = 0; k < 40; k++) {
    const middle = Math.sqrt(low * high);
    if (gain(middle) >= wanted) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * The frequency of the highest gain between two others, by Brent's search: parabolas through the best three points,
 * golden sections where a parabola will not do. `tolerance` is relative.
 */
export function highestBetween(gain: Gain, from: number, to: number, tolerance: number): number {
  const golden = (3 - Math.sqrt(5)) / 2;
  const down = (x: number) => -gain(Math.exp(x));
  let [low, high] = [Math.log(from), Math.log(to)];
  let x = low + golden * (high - low);
  let [w, v] = [x, x];
  let fx = down(x);
  let [fw, fv] = [fx, fx];
  let [step, before] = [0, 0];
  for (let k = 0; k < 100; k++) {
    const middle = (low + high) / 2;
    if (Math.abs(x - middle) <= 2 * tolerance - (high - low) / 2) break;
    const [r, q0] = [(x - w) * (fx - fv), (x - v) * (fx - fw)];
    let [p, q] = [(x - v) * q0 - (x - w) * r, 2 * (q0 - r)];
    if (q > 0) p = -p;
    q = Math.abs(q);
    const usable = Math.abs(p) < Math.abs(0.5 * q * before) && p > q * (low - x) && p < q * (high - x);
    if (usable) [before, step] = [step, p / q];
    else {
      before = x >= middle ? low - x : high - x;
      step = golden * before;
    }
    const u = x + (Math.abs(step) >= tolerance ? step : Math.sign(step || 1) * tolerance);
    const fu = down(u);
    if (fu <= fx) {
      if (u >= x) low = x;
      else high = x;
      [v, w, x] = [w, x, u];
      [fv, fw, fx] = [fw, fx, fu];
    } else {
      if (u < x) low = u;
      else high = u;
      if (fu <= fw || w === x) {
        [v, w] = [w, u];
        [fv, fw] = [fw, fu];
      } else if (fu <= fv || v === x || v === w) [v, fv] = [u, fu];
    }
  }
  return Math.exp(x);
}
