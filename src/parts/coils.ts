/** The coils of a pickup that has leads for each of them. */
import type { Sourced } from '../common/units.ts';
import { elementsLike, lugsWith, type Pickup } from './index.ts';

interface SeparateCoil {
  /** In words: `coil A`. */
  readonly called: string;
  /** The lugs at its ends; the one that is joined to the other coil where both are in series comes second. */
  readonly lugs: readonly [string, string];
  /** Ohms, of this coil by itself. */
  readonly resistance: Sourced;
}

/** Coils that a meter reads one by one while no lead is soldered; none of a pickup with one winding or none but two leads. */
export function separateCoils(part: Pickup): readonly SeparateCoil[] {
  const coils = elementsLike(part, 'coil');
  if (coils.length < 2) return [];
  const links = lugsWith(part, 'link');
  return coils.map(({ called = '', hot, return: end, resistance }) => ({
    called,
    lugs: links.includes(hot) ? [end, hot] : [hot, end],
    resistance,
  }));
}
