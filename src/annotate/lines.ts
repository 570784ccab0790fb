/** How each joint is to be drawn: its look, which says what it is made of, and its tint, which says what it carries. */

import { type Circuit, lugAt, lugIdOf, type Net, netAt } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { remembered } from '../common/remembered.ts';
import type { Joint } from '../describe/kit.ts';
import { componentOf, isPickup, type Part } from '../parts/index.ts';
import { toneNets } from './tone-nets.ts';

/** `sleeved` is a component leg sleeved. */
type LineLook = 'signal' | 'ground' | 'leg' | 'sleeved' | 'jumper' | 'bend' | 'braid';

export interface Line {
  readonly look: LineLook;
  /** `ground`, `switch-output`, `output`, `tone`, `other`, or `pickup-n`; see `tintOfPickup`. */
  readonly tint: string;
  /** IEC 60757 code of the insulation, of one colour or two, where the kit gives it. */
  readonly colour?: string;
}

/** What a line's colour tells: which wire of the kit it is, as far as the kit says, or what signal it carries. */
export const lineColours = ['insulation', 'signal'] as const;
export type LineColour = (typeof lineColours)[number];

/** One line a joint, in the order written. */
export const linesOf: (circuit: Circuit) => readonly Line[] = remembered((circuit) => {
  const parts = new Map(circuit.kit.parts.map((part) => [part.name, part]));
  const tones = toneNets(circuit);
  const tints = circuit.nets.map((net) => tintOf(circuit, net, tones));
  return circuit.joints.map((joint) => {
    const tint = nth(tints, netAt(circuit, lugIdOf(joint.from)).index);
    const look = lookOf(joint, tint, parts);
    const insulated = (look === 'signal' || look === 'ground') && joint.colour !== undefined;
    return { look, tint, ...(insulated ? { colour: joint.colour } : {}) };
  });
});

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

/** A net's tint: one pickup's own; a tone control's; switch output, up to the volume; from there to the jack; or none of these. */
function tintOf(circuit: Circuit, net: Net, tones: ReadonlySet<number>): string {
  if (net.role === 'ground' || net.role === 'output') return net.role;
  if (net.pickup !== undefined) return tintOfPickup(circuit, net.pickup);
  if (tones.has(net.index)) return 'tone';
  const roles = new Set(net.lugs.map((id) => lugAt(circuit, id).role));
  return roles.has('common') && roles.has('clockwise') ? 'switch-output' : 'other';
}
