/** How each joint is to be drawn: its look, which says what it is made of, and its tint, which says what it carries. */

import { type Circuit, lugAt, lugIdOf, type Net, netAt } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import type { Joint } from '../describe/kit.ts';
import { componentOf, elementsLike, isPickup, type Part } from '../parts/index.ts';

/** `sleeved` is a component leg sleeved. */
type LineLook = 'signal' | 'ground' | 'leg' | 'sleeved' | 'jumper' | 'bend' | 'braid';

export interface Line {
  readonly look: LineLook;
  /** `ground`, `switch-output`, `output`, `tone`, `other`, or `pickup-n`; see `tintOfPickup`. */
  readonly tint: string;
}

/** One line a joint, in the order written. */
export function linesOf(circuit: Circuit): readonly Line[] {
  const parts = new Map(circuit.kit.parts.map((part) => [part.name, part]));
  const tints = circuit.nets.map((net) => tintOf(circuit, net, parts));
  return circuit.joints.map((joint) => {
    const tint = nth(tints, netAt(circuit, lugIdOf(joint.from)).index);
    return { look: lookOf(joint, tint, parts), tint };
  });
}

/** Tints of one to four pickups in the order written, so that the first and the last of any kit keep theirs. */
const ORDERS: readonly (readonly number[])[] = [[1], [1, 3], [1, 2, 3], [1, 2, 4, 3]];

/** A pickup's tint: the first named and the last named have the same in every kit. */
export function tintOfPickup(circuit: Circuit, pickup: string): string {
  const pickups = circuit.kit.parts.filter(isPickup);
  const index = pickups.findIndex((part) => part.name === pickup);
  return `pickup-${ORDERS[pickups.length - 1]?.[index] ?? (index % 4) + 1}`;
}

function lookOf(joint: Joint, tint: string, parts: ReadonlyMap<string, Part>): LineLook {
  switch (joint.kind) {
    case 'wire':
      return tint === 'ground' ? 'ground' : 'signal';
    case 'leg':
      return [joint.from, joint.to].some((end) => {
        const part = parts.get(end.part);
        return part && componentOf(part)?.sleeved.includes(end.lug);
      })
        ? 'sleeved'
        : 'leg';
    case 'jumper':
    case 'bend':
    case 'braid':
      return joint.kind;
  }
}

/** A net's tint: one pickup's own; switch output, up to the volume; from there to the jack; a tone's; or none of these. */
function tintOf(circuit: Circuit, net: Net, parts: ReadonlyMap<string, Part>): string {
  if (net.role === 'ground' || net.role === 'output') return net.role;
  if (net.pickup !== undefined) return tintOfPickup(circuit, net.pickup);
  const lugs = net.lugs.map((id) => lugAt(circuit, id));
  if (lugs.some((lug) => lug.role === 'common') && lugs.some((lug) => lug.role === 'clockwise'))
    return 'switch-output';
  const tone = lugs.some((lug) => {
    const part = parts.get(lug.part);
    return lug.role === 'anticlockwise' || (part && elementsLike(part, 'capacitance').length > 0);
  });
  return tone ? 'tone' : 'other';
}
