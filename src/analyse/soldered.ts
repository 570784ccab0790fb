/** The harness as it conducts at a moment of the soldering: of the joints that are soldered at both ends by then. */
import { type Circuit, endAt, type LugId } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { remembered } from '../common/remembered.ts';
import { type Kit, partNamed } from '../describe/kit.ts';
import { is, isPickup } from '../parts/index.ts';
import { planOf } from '../soldering/plan.ts';

/** The circuit with some of its joints only, by their indices; what its states sound like is that of the finished one. */
export const withJoints = (circuit: Circuit, kept: (joint: number) => boolean): Circuit => ({
  ...circuit,
  // Networks are remembered by their kit.
  kit: { ...circuit.kit },
  joints: circuit.joints.filter((_, i) => kept(i)),
});

/**
 * The circuit after a step of the soldering: an end that is only hooked through its lug does not conduct.
 *
 * @param step counted from 1; 0 before the first
 */
export function circuitAfter(circuit: Circuit, step: number): Circuit {
  const { made } = planOf(circuit);
  return withJoints(circuit, (i) => nth(made, i) <= step);
}

/**
 * The circuit just before the first lead of a pickup is soldered: without what is soldered together with such a lead, as a pad is at a
 * pickup's lug. Of a kit in which no pickup has a joint, the whole of it.
 */
export const beforePickups = remembered((circuit: Circuit): Circuit => {
  const { pickups, steps } = planOf(circuit);
  return circuitAfter(circuit, pickups === undefined ? steps.length : pickups - 1);
});

/**
 * The same where all that is only hooked by then touches its lug, as it may; the same circuit where nothing is.
 *
 * @see beforePickups
 */
export const hookedBeforePickups = remembered((circuit: Circuit): Circuit => {
  const { pickups, placed } = planOf(circuit);
  return pickups === undefined ? circuit : withJoints(circuit, (i) => nth(placed, i) < pickups);
});

/**
 * The same where one alone of what is hooked touches its lug, and where all but one do: each once, and none where only one is hooked.
 *
 * @see hookedBeforePickups
 */
export const partlyHooked = remembered((circuit: Circuit): readonly Circuit[] => {
  const { pickups = 0, placed, made } = planOf(circuit);
  const waiting = placed.flatMap((step, i) => (step < pickups && nth(made, i) >= pickups ? [i] : []));
  if (waiting.length < 2) return [];
  const touching = (some: (joint: number) => boolean): Circuit =>
    withJoints(circuit, (i) => nth(placed, i) < pickups && (nth(made, i) < pickups || some(i)));
  return waiting.flatMap((one) => [
    touching((i) => i === one),
    ...(waiting.length > 2 ? [touching((i) => i !== one)] : []),
  ]);
});

/**
 * The lug of a net that a probe reaches before the pickups are connected: one that does not belong to a pickup, nor to a
 * component whose leg may only be hooked by then, where there is such a lug.
 *
 * @throws RangeError where there is no lug
 */
export function probeLug(kit: Kit, lugs: readonly LugId[]): LugId {
  const parts = lugs.map((id) => partNamed(kit, endAt(id).part));
  const fixed = lugs.find((_, i) => !isPickup(nth(parts, i)) && !is(nth(parts, i), 'component'));
  return fixed ?? lugs.find((_, i) => !isPickup(nth(parts, i))) ?? nth(lugs, 0);
}
