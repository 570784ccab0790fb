/** Where the controls stand. */
import type { Graph, Setting } from '../circuit/circuit.ts';
import { controlIdOf, elementsLike, type Part } from '../parts/index.ts';
import type { CircuitElement } from '../parts/kind.ts';

/**
 * Rotation of each control by its id, from zero (0) to full (1), whichever way it is turned for that; of a blend from its anticlockwise
 * end to the clockwise one. A control that is not named stands at full, a blend where the setting has it.
 */
export type PotRotations = Readonly<Record<string, number>>;

type Track = Extract<CircuitElement, { readonly kind: 'track' }>;

/** Where a track rests that nothing is known of but its part: a blend in the middle, every other one at its clockwise end. */
export const rests = ({ taper, role }: Track): number =>
  role === 'blend' || taper.value === 'lower-half' || taper.value === 'upper-half' ? 0.5 : 1;

/** Rotation of a track, 0 at its anticlockwise end, 1 at its clockwise one. */
export function placeOf(
  { fullAt }: Pick<Graph, 'fullAt'>,
  { turned }: Pick<Setting, 'turned'>,
  part: Part,
  track: Track,
  controls: PotRotations = {},
): number {
  const id = controlIdOf(part, track);
  const asked = controls[id] ?? turned?.[id];
  switch (fullAt?.get(id)) {
    case 'middle':
      return asked ?? 0.5;
    case 'anticlockwise':
      return 1 - (asked ?? 1);
    case 'clockwise':
      return asked ?? 1;
    case undefined:
      return asked ?? rests(track);
  }
}

/** Rotation of each track of a part by the track's id. */
export const placesIn = (
  graph: Pick<Graph, 'fullAt'>,
  setting: Pick<Setting, 'turned'>,
  part: Part,
): Readonly<Record<string, number>> =>
  Object.fromEntries(
    elementsLike(part, 'track').map((track) => [track.id, placeOf(graph, setting, part, track)]),
  );
