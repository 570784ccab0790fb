/** When each lug is heated: once, in the last step that brings a joint to it, but for the exceptions. */
import type { Graph, LugId } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { isAtPickup, isSurface, solderedLugs } from './ends.ts';
import { outputReached } from './reach.ts';

/**
 * Why a lug is heated in more than one step: it is a `surface`, through which nothing can be hooked; or it is soldered before the
 * pickups as well, so that the harness can be tested (`test`).
 */
export type Reheated = 'surface' | 'test';

/** Of each lug the steps in which it is heated, in order, and why where they are several. */
export interface Heated {
  readonly steps: readonly number[];
  readonly why?: Reheated;
}

/** Steps by lug that are as few as they can be, for joints that are placed in the steps given. */
export function heatsOf(graph: Graph, placed: readonly number[]): ReadonlyMap<LugId, Heated> {
  const at = jointsByLug(graph);
  const stepsAt = (lug: LugId): readonly number[] =>
    [...new Set((at.get(lug) ?? []).map((i) => nth(placed, i)))].sort((a, b) => a - b);
  const early = soldersEarly(graph, placed, at);
  return new Map(
    [...at.keys()].map((lug): [LugId, Heated] => {
      const steps = stepsAt(lug);
      if (isSurface(graph, lug)) return [lug, steps.length > 1 ? { steps, why: 'surface' } : { steps }];
      const last = nth(steps, steps.length - 1);
      const before = early.get(lug);
      return [lug, before === undefined ? { steps: [last] } : { steps: [before, last], why: 'test' }];
    }),
  );
}

/** Indices of the joints that need solder at each lug. */
export function jointsByLug(graph: Graph): ReadonlyMap<LugId, readonly number[]> {
  const at = new Map<LugId, number[]>();
  for (const [i, joint] of graph.joints.entries())
    for (const lug of solderedLugs(graph, joint)) at.set(lug, [...(at.get(lug) ?? []), i]);
  return at;
}

/** The first step with a lead of a pickup; absent where there is none. */
export function firstPickupStep(graph: Graph, placed: readonly number[]): number | undefined {
  const steps = placed.filter((_, i) => isAtPickup(graph, nth(graph.joints, i)));
  return steps.length === 0 ? undefined : Math.min(...steps);
}

/**
 * Lugs that a lead of a pickup still comes to and that are soldered before the pickups all the same, each with the step: those
 * without which no meter at the jack would reach the harness, in some position in which it could. As few as that takes: none of
 * them can be left out.
 */
function soldersEarly(
  graph: Graph,
  placed: readonly number[],
  at: ReadonlyMap<LugId, readonly number[]>,
): ReadonlyMap<LugId, number> {
  const first = firstPickupStep(graph, placed);
  if (first === undefined) return new Map();
  const before = (joints: readonly number[]) =>
    joints.map((i) => nth(placed, i)).filter((step) => step < first);
  const shared = new Map(
    [...at].flatMap(([lug, joints]): readonly (readonly [LugId, number])[] => {
      const steps = before(joints);
      return isSurface(graph, lug) || steps.length === 0 || steps.length === joints.length
        ? []
        : [[lug, Math.max(...steps)]];
    }),
  );
  const reached = (early: ReadonlySet<LugId>): readonly boolean[] => {
    const waits = (lug: LugId) => shared.has(lug) && !early.has(lug);
    const made = graph.joints.filter(
      (joint, i) => nth(placed, i) < first && !solderedLugs(graph, joint).some(waits),
    );
    return outputReached({ ...graph, joints: made });
  };
  const all = new Set(shared.keys());
  const wanted = reached(all);
  const enough = (early: ReadonlySet<LugId>): boolean => {
    const found = reached(early);
    return wanted.every((is, i) => !is || found[i] === true);
  };
  if (enough(new Set())) return new Map();
  const needed = new Set(all);
  for (const lug of all) {
    needed.delete(lug);
    if (!enough(needed)) needed.add(lug);
  }
  return new Map([...shared].filter(([lug]) => needed.has(lug)));
}
