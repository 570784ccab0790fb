/**
 * A bench that follows the steps as a customer reads them, and knows nothing of how they were planned: it hooks, solders, bends, and
 * notes what cannot be done. What it knows of lugs is common practice, no source.
 */
import { stepsOf } from '../../src/annotate/steps.ts';
import { type Circuit, lugIdOf } from '../../src/circuit/circuit.ts';
import { findPart, type Joint } from '../../src/describe/kit.ts';
import { isPickup } from '../../src/parts/index.ts';

export interface Done {
  /** What could not be done as written. */
  readonly faults: readonly string[];
  /** Steps in which the iron touches each lug. */
  readonly heats: ReadonlyMap<string, readonly number[]>;
  /** Of each joint the step in which it is placed, and that after which both its ends are soldered. */
  readonly placed: readonly number[];
  readonly made: readonly number[];
  /** Lugs that are joined in the end, each group sorted. */
  readonly nets: readonly (readonly string[])[];
}

/** Nothing can be hooked to a pot's case, a frame or a ground tag. */
export const isSurface = (circuit: Circuit, lug: string): boolean =>
  ['case', 'point'].includes(circuit.lugs.get(lug)?.role ?? '');

/** A lead is part of its pickup, and what a ground point stands for is on the instrument: where nothing else comes there, there is nothing to solder. */
export function needsNoSolder({ kit, joints }: Circuit, joint: Joint, lug: string): boolean {
  if (joint.kind !== 'wire' && joint.kind !== 'braid') return false;
  const alone = (one: string): boolean =>
    joints.filter(({ from, to }) => lugIdOf(from) === one || lugIdOf(to) === one).length === 1;
  const partAt = (end: Joint['from']) => findPart(kit, end.part);
  const end = lugIdOf(joint.from) === lug ? joint.from : joint.to;
  const part = partAt(end);
  if (!part || !alone(lug)) return false;
  if (part.kind === 'ground-point') return true;
  // Of two leads that are joined one is soldered to the other.
  const first = partAt(joint.from);
  return isPickup(part) && (end === joint.from || !first || !isPickup(first) || !alone(lugIdOf(joint.from)));
}

const text = ({ from, to }: Joint): string => `${lugIdOf(from)} > ${lugIdOf(to)}`;

/** Follows all steps. */
export function follow(circuit: Circuit): Done {
  const faults: string[] = [];
  const heats = new Map<string, number[]>();
  const placed: number[] = circuit.joints.map(() => 0);
  const bent = new Set<string>();
  /** Ends that hang in a lug without solder, and ends that are soldered, as `joint lug`. */
  const hooked = new Map<string, Set<number>>();
  const soldered = new Map<string, number>();
  const steps = stepsOf(circuit);
  for (const { number, details, heats: ironed } of steps) {
    const bends: string[] = [];
    for (const { index, from, to, kind } of details) {
      const joint = circuit.joints[index];
      if (!joint) faults.push(`step ${number} has a joint ${index} that the kit has not`);
      if (placed[index] !== 0) faults.push(`joint ${index} is in two steps`);
      placed[index] = number;
      for (const { lug, soldered: how } of [from, to]) {
        if (how === 'none') {
          if (kind === 'bend') bends.push(lug);
          else if (kind !== 'leg' && !(joint && needsNoSolder(circuit, joint, lug)))
            faults.push(`${lug} needs solder: joint ${index} is a ${kind}`);
          soldered.set(`${index} ${lug}`, number);
          continue;
        }
        if (bent.has(lug)) faults.push(`${lug} is closed in step ${number}`);
        if (how !== 'now' && isSurface(circuit, lug)) faults.push(`${lug} has nothing to hook to`);
        hooked.set(lug, (hooked.get(lug) ?? new Set()).add(index));
      }
    }
    for (const { lug, joints } of ironed) {
      const waiting = hooked.get(lug) ?? new Set();
      heats.set(lug, [...(heats.get(lug) ?? []), number]);
      if (waiting.size === 0) faults.push(`step ${number} solders nothing at ${lug}`);
      if ([...waiting].sort().join() !== [...joints].sort().join())
        faults.push(`step ${number} solders ${joints} at ${lug}, where ${[...waiting]} wait`);
      for (const index of waiting) soldered.set(`${index} ${lug}`, number);
      hooked.delete(lug);
    }
    // What a joint says of its ends is what the iron does.
    for (const { index, from, to } of details)
      for (const { lug, soldered: how } of [from, to]) {
        const now = soldered.has(`${index} ${lug}`);
        if (now !== (how === 'now' || how === 'none'))
          faults.push(`joint ${index} says ${JSON.stringify(how)}`);
      }
    for (const lug of bends) bent.add(lug);
  }
  for (const [lug, joints] of hooked) faults.push(`${[...joints]} hang unsoldered in ${lug}`);
  // What was promised for later came at that step.
  for (const { details } of steps)
    for (const { index, from, to } of details)
      for (const { lug, soldered: how } of [from, to])
        if (typeof how === 'object' && soldered.get(`${index} ${lug}`) !== how.later)
          faults.push(`joint ${index} at ${lug} was to be soldered in step ${how.later}`);
  const made = circuit.joints.map((joint, i) =>
    Math.max(...[joint.from, joint.to].map((end) => soldered.get(`${i} ${lugIdOf(end)}`) ?? Infinity)),
  );
  for (const [i, step] of made.entries())
    if (!Number.isFinite(step)) faults.push(`${text(circuit.joints[i] as Joint)} is never soldered through`);
  return { faults, heats, placed, made, nets: joined(circuit) };
}

/** Groups of lugs that the joints of the steps make one, by walking from lug to lug. */
function joined(circuit: Circuit): readonly (readonly string[])[] {
  const beside = new Map<string, Set<string>>();
  for (const { details } of stepsOf(circuit))
    for (const { from, to } of details) {
      beside.set(from.lug, (beside.get(from.lug) ?? new Set()).add(to.lug));
      beside.set(to.lug, (beside.get(to.lug) ?? new Set()).add(from.lug));
    }
  const groups: string[][] = [];
  const seen = new Set<string>();
  for (const start of beside.keys()) {
    if (seen.has(start)) continue;
    const group = new Set([start]);
    for (const lug of group) for (const next of beside.get(lug) ?? []) group.add(next);
    for (const lug of group) seen.add(lug);
    groups.push([...group].sort());
  }
  return groups.sort();
}

/** The nets of two lugs or more that the kit describes. */
export const describedNets = ({ nets }: Circuit): readonly (readonly string[])[] =>
  nets
    .filter(({ lugs }) => lugs.length > 1)
    .map(({ lugs }) => [...lugs].sort())
    .sort();

/** Whether a joint is a lead of a pickup. */
export const isLead = ({ kit }: Circuit, { from, to }: Joint): boolean =>
  [from, to].some(({ part }) => {
    const found = findPart(kit, part);
    return found !== undefined && isPickup(found);
  });
