/**
 * The stage of every joint, by its number in the order of soldering: ground, then jumpers and bent lugs, components, the wires
 * between switch and pots, the way out, pickups last, since heat would harm them and they are in the way. Common practice, no source.
 */
import { type Graph, type LugId, lugIdOf, netAt } from '../circuit/circuit.ts';
import { DisjointSet } from '../circuit/disjoint-set.ts';
import { must, nth } from '../common/must.ts';
import { findPart, type Joint } from '../describe/kit.ts';
import { is } from '../parts/index.ts';
import { componentsOf, isAtPickup } from './ends.ts';

/** Numbers as a description writes them. */
export const STAGES = { ground: 1, jumpers: 2, components: 3, controls: 4, output: 5, pickups: 6 } as const;
export type Stage = keyof typeof STAGES;

/**
 * The number of each joint's stage, 1 to 99, in the order of the joints. Beyond the stages' own order:
 *
 * - a joint's own `step` in the description goes before its stage;
 * - both legs of a component are soldered in one stage, and so are components that are joined by their legs: the latest `step` that
 *   one of them has, else with the pickups where a leg ends at one, else in the stage of components;
 * - a lug is bent onto its case in the stage of the first other joint to that case, so that the case need not be heated for it, but not
 *   with the pickups; and no earlier than the last other joint at the lug is made, since it is closed from then on.
 */
export const stageNumbers = (graph: Graph): readonly number[] => numbered(graph).map(({ number }) => number);

/** A lug whose bend has a `step` of its own that is earlier than that of another joint at the lug. */
interface EarlyBend {
  /** The bend, and the joint that comes to the lug last. */
  readonly bend: Joint;
  readonly last: Joint;
  /** Numbers of the stage that the bend asks for, and of the one in which it is made: that of the last joint. */
  readonly asked: number;
  readonly made: number;
}

/** The bends that are made later than their own `step` says, in the order of the joints. */
export const earlyBends = (graph: Graph): readonly EarlyBend[] =>
  numbered(graph).flatMap(({ joint, number, last }) =>
    joint.step !== undefined && last && joint.step < number
      ? [{ bend: joint, last, asked: joint.step, made: number }]
      : [],
  );

interface Numbered {
  readonly joint: Joint;
  readonly number: number;
  /** Of a bend that waits for another joint at its lug, that joint. */
  readonly last?: Joint;
}

function numbered(graph: Graph): readonly Numbered[] {
  const { joints } = graph;
  const components = componentNumbers(graph);
  const numbers = joints.map(
    (joint) =>
      joint.step ?? components.get(componentsOf(graph, joint)[0] ?? '') ?? STAGES[stageOf(graph, joint)],
  );
  const othersAt = (lug: LugId, own: number): readonly { readonly last: Joint; readonly number: number }[] =>
    joints.flatMap((joint, k) =>
      k !== own && joint.kind !== 'bend' && [joint.from, joint.to].some((end) => lugIdOf(end) === lug)
        ? [{ last: joint, number: nth(numbers, k) }]
        : [],
    );
  return joints.map((joint, i): Numbered => {
    if (joint.kind !== 'bend') return { joint, number: nth(numbers, i) };
    const first = Math.min(...othersAt(lugIdOf(joint.to), i).map(({ number }) => number));
    const stage = joint.step ?? (first < STAGES.pickups ? first : nth(numbers, i));
    return othersAt(lugIdOf(joint.from), i).reduce<Numbered>(
      (bend, { last, number }) => (number > bend.number ? { joint, number, last } : bend),
      { joint, number: stage },
    );
  });
}

function stageOf(graph: Graph, joint: Joint): Stage {
  const { kind, from, to } = joint;
  if (isAtPickup(graph, joint)) return 'pickups';
  if (kind === 'leg') return 'components';
  if (netAt(graph, lugIdOf(from)).role === 'ground') return 'ground';
  if (kind === 'jumper' || kind === 'bend') return 'jumpers';
  const parts = [from, to].map((end) => must(findPart(graph.kit, end.part), `part ${end.part}`));
  return parts.some((part) => is(part, 'jack')) ? 'output' : 'controls';
}

/** The number of each component that has a leg joint, by its name. */
function componentNumbers(graph: Graph): ReadonlyMap<string, number> {
  const together = new DisjointSet();
  const legs = graph.joints.flatMap((joint) => {
    const components = componentsOf(graph, joint);
    for (const one of components) together.join(nth(components, 0), one);
    return components.map((component) => ({ component, joint }));
  });
  return new Map(
    legs.map(({ component }) => {
      const all = legs.filter((leg) => together.same(leg.component, component)).map(({ joint }) => joint);
      const own = all.flatMap(({ step }) => step ?? []);
      const stage = all.some((joint) => isAtPickup(graph, joint)) ? STAGES.pickups : STAGES.components;
      return [component, own.length > 0 ? Math.max(...own) : stage];
    }),
  );
}
