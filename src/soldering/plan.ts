/**
 * The plan of the soldering: which joint is placed in which step, and when each lug is heated.
 *
 * - Every joint is **placed** in exactly one step.
 * - At each of its ends it is then either **soldered** in that step, or **hooked** through the lug and left unsoldered, because a
 *   later step brings more joints to that lug: they are soldered together then. So a lug is heated in one step, the last that brings
 *   a joint to it. Where a component leg leaves its body, and at a lug that is bent, there is nothing to solder.
 * - A **surface** (a pot's case, a tag, a frame) holds nothing unsoldered: it is heated in every step that brings a joint to it. Joints of
 *   one stage that share a surface are therefore placed in one step, however many they are.
 * - A lug that a pickup's lead comes to waits for the lead, and a pad at it waits with it. It is soldered before the pickups as
 *   well, and so heated twice, only where no meter at the jack would reach the harness otherwise.
 * - Both legs of a component are placed in one step.
 * - A lug that is bent onto its case is closed by that: it is bent in the last step that brings a joint to it.
 * - Steps come in the order of the stages (`stages.ts`). A stage of more than `MOST` joints becomes several steps, lugs and components kept
 *   whole; joints with a `step` of their own in the description stay together.
 *
 * Common practice, no source.
 */
import type { Graph, LugId } from '../circuit/circuit.ts';
import { DisjointSet } from '../circuit/disjoint-set.ts';
import { must, nth } from '../common/must.ts';
import { remembered } from '../common/remembered.ts';
import { partNamed } from '../describe/kit.ts';
import { isPickup } from '../parts/index.ts';
import { componentsOf, solderedLugs } from './ends.ts';
import { firstPickupStep, type Heated, heatsOf, jointsByLug, type Reheated } from './heats.ts';
import { STAGES, type Stage, stageNumbers } from './stages.ts';

/** A lug that is soldered in a step. */
export interface Heat {
  readonly lug: LugId;
  /** Indices of the joints that this solders to it, those hooked through it before included. */
  readonly joints: readonly number[];
  /** Why the lug is heated in another step as well; absent where it is not. */
  readonly why?: Reheated;
}

export interface PlannedStep {
  /** Counted from 1 without gaps. */
  readonly number: number;
  /** Absent for a number that the description has and no stage. */
  readonly stage?: Stage;
  /** The number that its joints have in the description, or would have. */
  readonly written: number;
  /** Which of how many steps of its stage it is; absent where it is the only one. */
  readonly share?: { readonly part: number; readonly of: number };
  /** Indices of the joints that are placed in it, in the order written. */
  readonly joints: readonly number[];
  readonly heats: readonly Heat[];
}

export interface Plan {
  readonly steps: readonly PlannedStep[];
  /** Of each joint the step in which it is placed, and that after which it conducts. */
  readonly placed: readonly number[];
  readonly made: readonly number[];
  /** The first step with a lead of a pickup; absent where there is none. */
  readonly pickups?: number;
}

/** More joints than these are hard to follow in one drawing. Common practice, no source. */
export const MOST = 7;

/** The plan of a graph's soldering; the same one whenever it is asked for. */
export const planOf: (graph: Graph) => Plan = remembered((graph) => {
  const numbers = stageNumbers(graph);
  const groups = [...new Set(numbers)]
    .sort((a, b) => a - b)
    .flatMap((written) => {
      const joints = numbers.flatMap((one, i) => (one === written ? [i] : []));
      const parts = split(graph, joints);
      return parts.map((some, k) => ({
        written,
        joints: some,
        ...(parts.length > 1 ? { share: { part: k + 1, of: parts.length } } : {}),
      }));
    });
  const stepOf = new Map(groups.flatMap(({ joints }, k) => joints.map((i) => [i, k + 1] as const)));
  const placed = numbers.map((_, i) => must(stepOf.get(i), `step of joint ${i}`));
  const heated = heatsOf(graph, placed);
  const at = jointsByLug(graph);
  const stages = new Map<number, Stage>(
    (Object.keys(STAGES) as Stage[]).map((stage) => [STAGES[stage], stage] as const),
  );
  const steps = groups.map((group, k): PlannedStep => {
    const stage = stages.get(group.written);
    const number = k + 1;
    return { number, ...(stage === undefined ? {} : { stage }), ...group, heats: heatsIn(number) };
  });
  function heatsIn(number: number): readonly Heat[] {
    return [...heated].flatMap(([lug, { steps: when, why }]) => {
      if (!when.includes(number)) return [];
      const before = when[when.indexOf(number) - 1] ?? 0;
      const joints = (at.get(lug) ?? []).filter((i) => nth(placed, i) > before && nth(placed, i) <= number);
      return [{ lug, joints, ...(why === undefined ? {} : { why }) }];
    });
  }
  const pickups = firstPickupStep(graph, placed);
  return {
    steps,
    placed,
    made: graph.joints.map((joint, i) =>
      Math.max(
        nth(placed, i),
        ...solderedLugs(graph, joint).map((lug) =>
          solderedAt(must(heated.get(lug), `heat of ${lug}`), nth(placed, i)),
        ),
      ),
    ),
    ...(pickups === undefined ? {} : { pickups }),
  };
});

/** The step in which a joint is soldered to a lug: the first from the one in which it is placed that heats the lug. */
const solderedAt = ({ steps }: Heated, placed: number): number =>
  must(
    steps.find((step) => step >= placed),
    'heat after a joint is placed',
  );

/** The step in which a joint is soldered to one of its lugs. */
export const solderedIn = ({ steps }: Plan, joint: number, lug: LugId): number =>
  must(
    steps.find(({ heats }) => heats.some((heat) => heat.lug === lug && heat.joints.includes(joint))),
    `heat of ${lug}`,
  ).number;

/** Joints of one stage in as many steps as it takes: what shares a lug or a component stays together. */
function split(graph: Graph, joints: readonly number[]): readonly (readonly number[])[] {
  if (joints.length <= MOST) return [joints];
  const whole = clusters(joints, (i) => {
    const joint = nth(graph.joints, i);
    const own = joint.step === undefined ? [] : ['the description'];
    return [...solderedLugs(graph, joint), ...componentsOf(graph, joint), ...own];
  });
  return packed(byPart(graph, whole), Math.ceil(joints.length / Math.ceil(joints.length / MOST)));
}

/** Joints in clusters, each with all that share anything with it, in the order of their first joints. */
function clusters(
  joints: readonly number[],
  shared: (joint: number) => readonly string[],
): readonly (readonly number[])[] {
  const together = new DisjointSet();
  const name = (i: number): string => `joint ${i}`;
  for (const i of joints) for (const one of shared(i)) together.join(name(i), one);
  const found = new Map<string, number[]>();
  for (const i of joints) {
    const root = together.find(name(i));
    found.set(root, [...(found.get(root) ?? []), i]);
  }
  return [...found.values()];
}

/** Clusters of one and the same pickup side by side, and made one where they are few enough for a step. */
function byPart(graph: Graph, whole: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const grouped = new Map<string, (readonly number[])[]>();
  for (const [k, cluster] of whole.entries()) {
    const pickups = new Set(
      cluster.flatMap((i) => {
        const { from, to } = nth(graph.joints, i);
        return [from, to].map(({ part }) => part).filter((part) => isPickup(partNamed(graph.kit, part)));
      }),
    );
    const [only, ...others] = pickups;
    const key = only === undefined || others.length > 0 ? `cluster ${k}` : only;
    grouped.set(key, [...(grouped.get(key) ?? []), cluster]);
  }
  return [...grouped.values()].flatMap((some) => (some.flat().length <= MOST ? [some.flat()] : some));
}

/** Whole clusters, each in the first step that has fewer than `wanted` joints and room for it; a larger one has a step of its own. */
function packed(whole: readonly (readonly number[])[], wanted: number): readonly (readonly number[])[] {
  const steps: number[][] = [];
  for (const cluster of whole) {
    const roomy = steps.find(({ length }) => length < wanted && length + cluster.length <= MOST);
    if (roomy) roomy.push(...cluster);
    else steps.push([...cluster]);
  }
  return steps.map((step) => step.sort((a, b) => a - b));
}
