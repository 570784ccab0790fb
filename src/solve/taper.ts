/** The law of a pot's track: which share of it lies between the anticlockwise end and the wiper. */
import type { TrackLaw } from '../parts/kind.ts';

/**
 * Share of the track below the wiper at `rotation` (0 to 1). The log law is r(x) = (bˣ − 1)/(b − 1) with
 * b = (1/m − 1)², where m is the share at half rotation: IEC 60393 gives no midpoint, so m is a parameter. The
 * reverse log law is its mirror image, 1 − r(1 − x). A gang of a blend has its whole resistance in one half of the rotation, evenly,
 * and none in the other. Both ends are exact, so that an end merges and never leaves
 * a tiny resistor behind.
 */
export function trackShare(taper: TrackLaw, midpoint: number, rotation: number): number {
  if (rotation <= 0) return 0;
  if (rotation >= 1) return 1;
  switch (taper) {
    case 'linear':
      return rotation;
    case 'log':
      return logShare(midpoint, rotation);
    case 'reverse-log':
      return 1 - logShare(midpoint, 1 - rotation);
    case 'lower-half':
      return Math.min(1, 2 * rotation);
    case 'upper-half':
      return Math.max(0, 2 * rotation - 1);
  }
}

function logShare(midpoint: number, x: number): number {
  const b = (1 / midpoint - 1) ** 2;
  // b = 1 is the straight line that the law tends to at m = 1/2.
  return Math.abs(b - 1) < 1e-9 ? x : (b ** x - 1) / (b - 1);
}
