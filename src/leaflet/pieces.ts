/** What is cut besides wire from lug to lug: pieces that lengthen a component's legs, and all pieces of sleeving. */
import type { Step } from '../annotate/steps.ts';
import { type Circuit, endAt } from '../circuit/circuit.ts';
import { labelOf, partNamed } from '../describe/kit.ts';
import type { Prepared } from '../draw/compose.ts';
import { componentOf, isPickup } from '../parts/index.ts';
import { longSpans } from '../place/leg-spans.ts';
import { componentsOf, unsolderedEnds } from '../soldering/ends.ts';

export interface Piece {
  /** Index into the circuit's joints: where it is needed. */
  readonly joint: number;
  /** Metres. */
  readonly length: number;
}

/** A piece of wire that lengthens a leg, and the length of sleeving over both. */
export interface Extension extends Piece {
  /** The component, as a customer reads it. */
  readonly label: string;
}

/**
 * Metres of sleeving over the end of a pickup's braid, from where it is opened to the joint, and over a joint at the bare end of a
 * lead. Common practice, no source.
 */
const SLEEVED = { braid: 0.03, lead: 0.02 } as const;

/** Metres rounded up to 5 mm, without the rounding errors of binary fractions: a span is an estimate. */
export const upTo5 = (metres: number): number =>
  Number((Math.ceil(metres / 0.005 - 1e-9) * 0.005).toFixed(6));

/** For each component that does not reach a piece at one of its legs: at the sleeved one, where it has one, as the piece is sleeved too. */
export function extensionsOf({ circuit, placement, hand, arrangement }: Prepared): readonly Extension[] {
  const { kit, joints } = circuit;
  return longSpans(circuit, placement, hand, arrangement).flatMap(({ component, metres }): Extension[] => {
    const legs = joints.flatMap((joint, i) => (componentsOf(circuit, joint).includes(component) ? [i] : []));
    const { sleeved = [] } = componentOf(partNamed(kit, component)) ?? {};
    const isSleeved = (i: number): boolean =>
      [joints[i]?.from, joints[i]?.to].some((end) => end?.part === component && sleeved.includes(end.lug));
    const joint = legs.find(isSleeved) ?? legs[0];
    return joint === undefined ? [] : [{ joint, length: upTo5(metres), label: labelOf(kit, component) }];
  });
}

/**
 * All pieces of sleeving, each once.
 *
 * @param legs those over the legs as they are sold; the one over a leg that is lengthened is as long as its extension instead
 */
export function sleevingsOf(
  circuit: Circuit,
  steps: readonly Step[],
  legs: readonly Piece[],
  extensions: readonly Extension[],
): readonly Piece[] {
  const lengthened = new Set(extensions.map(({ joint }) => joint));
  const braids = circuit.joints.flatMap((joint, i) =>
    joint.kind === 'braid' && Object.values(unsolderedEnds(circuit.kit, joint)).includes('lead') ? [i] : [],
  );
  const atLeads = steps.flatMap(({ heats, joints: own }) =>
    heats.flatMap(({ lug, joints }) => {
      const joint = joints.find((i) => own.includes(i)) ?? joints[0];
      return joint !== undefined && isPickup(partNamed(circuit.kit, endAt(lug).part)) ? [joint] : [];
    }),
  );
  return [
    ...legs.filter(({ joint }) => !lengthened.has(joint)),
    ...extensions.map(({ joint, length }) => ({ joint, length })),
    ...braids.map((joint) => ({ joint, length: SLEEVED.braid })),
    ...atLeads.map((joint) => ({ joint, length: SLEEVED.lead })),
  ];
}
