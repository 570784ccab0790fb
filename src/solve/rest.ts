/** Where the controls stand. */
import type { Graph } from '../circuit/circuit.ts';
import { controlIdOf, type Part } from '../parts/index.ts';
import type { CircuitElement } from '../parts/kind.ts';

/**
 * Rotation of each control by its id, from zero (0) to full (1), whichever way it is turned for that; of a blend from its anticlockwise
 * end to the clockwise one. A control that is not named stands at full, a blend in the middle.
 */
export type PotRotations = Readonly<Record<string, number>>;

type Track = Extract<CircuitElement, { readonly kind: 'track' }>;

/** Rotation of a track, 0 at its anticlockwise end, 1 at its clockwise one. */
export function placeOf(_circuit: Graph, part: Part, track: Track, controls: PotRotations): number {
  const law = track.taper.value;
  const rest = track.role === 'blend' || law === 'lower-half' || law === 'upper-half' ? 0.5 : 1;
  return controls[controlIdOf(part, track)] ?? rest;
}
