/**
 * From circuit, state and control settings to the flat network. Joints, closed contacts and a wiper at the end of
 * its track are ideal, so they merge nodes; nothing is ever stood in for by a tiny resistor.
 *
 * **Pickup model.** A winding is its source, resistance and inductance in series, with capacitance and core loss
 * across all three. A humbucker with two leads is one winding: the junction of its two coils is out of reach of the
 * harness, and two coils in series, coupled or not, with a capacitance across the pair are to their terminals
 * exactly one coil of the summed resistance, the summed inductance (mutual inductance included) and that
 * capacitance. A meter and an LCR bridge measure just those sums, so splitting them would add a guess and no figure. Where the
 * coils have leads of their own, each is a winding, and they are coupled.
 */
import type { Graph, LugId, Setting } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { type Branch, capacitanceOf, type Port } from './network.ts';
import { type PotRotations, placeOf } from './rest.ts';
import { trackShare } from './taper.ts';
import { type PlacedElement, rootOf, unite, wiredOf } from './wired.ts';

export type { PotRotations };

export interface Netlist {
  /** How many nodes there are. */
  readonly size: number;
  readonly branches: readonly Branch[];
  /** Node of every lug, and of every `part.#name` inside a part. */
  readonly nodeOf: ReadonlyMap<LugId, number>;
  /** From the output that is looked at, usually the tip, to the sleeve, when the kit has a jack. */
  readonly jack: Port | undefined;
  /** From each of the jack's outputs to its sleeve, in the order of its lugs. */
  readonly outputs: readonly Port[];
}

/** Wipers of no-load pots leave their tracks, as they do; or they stay on them, to tell one end of a track from the other. */
type NoLoad = 'leaves' | 'stays';

/** The network of one state. */
export function makeNetlist(
  circuit: Graph,
  state: Setting,
  controls: PotRotations = {},
  noLoad: NoLoad = 'leaves',
): Netlist {
  const { terminals, elements, outputs: outputLugs, joined } = wiredOf(circuit);
  const parents = joined(state).slice();
  const wipers = elements.map((placed) => wiperOf(circuit, state, placed, controls, noLoad));
  for (const [i, placed] of elements.entries()) joinIdeally(parents, placed, nth(wipers, i));
  const { nodes, size } = numberNodes(parents);
  const branches: Branch[] = [];
  // A branch with both ends on one node carries nothing and would only be noise, but for a coil that is shorted: its
  // current weakens the coil that it is coupled to.
  for (const [i, placed] of elements.entries())
    for (const branch of branchesOf(placed, nth(wipers, i), nodes))
      if (branch.a !== branch.b || (branch.kind === 'winding' && branch.mutual !== undefined))
        branches.push(branch);
  const outputs = outputLugs.map(({ from, to }) => ({ from: nth(nodes, from), to: nth(nodes, to) }));
  let nodeOf: ReadonlyMap<LugId, number> | undefined;
  return {
    size,
    branches,
    // Few ask for the node of a lug, and to name them all takes longer than the rest.
    get nodeOf() {
      nodeOf ??= new Map(terminals.map((id, i) => [id, nth(nodes, i)]));
      return nodeOf;
    },
    jack: outputs[state.output ?? 0],
    outputs,
  };
}

/** Where a wiper stands: the share of the track below it, or off the track, where it touches nothing. */
type Wiper = number | 'off';

/** Of an element that is no track, nothing that counts. */
function wiperOf(
  circuit: Graph,
  state: Setting,
  { part, element }: PlacedElement,
  controls: PotRotations,
  noLoad: NoLoad,
): Wiper {
  if (element.kind !== 'track') return 0;
  const rotation = placeOf(circuit, state, part, element, controls);
  const opens = noLoad === 'leaves' ? element.noLoad : undefined;
  return (opens === 'clockwise' && rotation >= 1) || (opens === 'anticlockwise' && rotation <= 0)
    ? 'off'
    : trackShare(element.taper.value, element.midpoint.value, rotation);
}

/** Makes one node of the terminals that an element makes one: the wiper at an end, and a part of no resistance. */
function joinIdeally(parents: Int32Array, { element, at }: PlacedElement, wiper: Wiper): void {
  if (element.kind === 'track') {
    if (wiper === 'off') return;
    if (wiper * element.ohms.value === 0) unite(parents, nth(at, 0), nth(at, 1));
    if ((1 - wiper) * element.ohms.value === 0) unite(parents, nth(at, 1), nth(at, 2));
  } else if (element.kind === 'resistance' && element.ohms.value === 0)
    unite(parents, nth(at, 0), nth(at, 1));
}

/** The node of each terminal, numbered in the order in which they are met. */
function numberNodes(parents: Int32Array): { readonly nodes: Int32Array; readonly size: number } {
  const nodes = new Int32Array(parents.length);
  const numberOf = new Int32Array(parents.length).fill(-1);
  let size = 0;
  for (let i = 0; i < parents.length; i++) {
    const root = rootOf(parents, i);
    if (nth(numberOf, root) < 0) numberOf[root] = size++;
    nodes[i] = nth(numberOf, root);
  }
  return { nodes, size };
}

function branchesOf(
  { part, element, of, at, sign, mutual }: PlacedElement,
  wiper: Wiper,
  nodes: Int32Array,
): readonly Branch[] {
  if (element.kind === 'coupling') return [];
  const [a, b, c] = at.map((terminal) => nth(nodes, terminal)) as [number, number, number];
  switch (element.kind) {
    case 'resistance':
      return [{ kind: 'resistor', of, a, b, ohms: element.ohms.value }];
    case 'capacitance':
      return [{ kind: 'capacitor', of, a, b, farads: element.farads.value }];
    case 'track':
      if (wiper === 'off') return [{ kind: 'resistor', of, a, b: c, ohms: element.ohms.value }];
      return [
        { kind: 'resistor', of, a, b, ohms: wiper * element.ohms.value },
        { kind: 'resistor', of, a: b, b: c, ohms: (1 - wiper) * element.ohms.value },
      ];
    case 'coil': {
      const ends = { pickup: part.name, coil: of, a, b };
      const { resistance, inductance, capacitance, coreLoss, signal, hum } = element;
      return [
        {
          kind: 'winding',
          of,
          ...ends,
          ohms: resistance.value,
          henries: inductance.value,
          signal: sign * (signal ?? 1),
          ...(hum === undefined ? {} : { hum }),
          ...(mutual ? { mutual } : {}),
        },
        { kind: 'capacitor', of: capacitanceOf(of), ...ends, farads: capacitance.value },
        ...(coreLoss
          ? [{ kind: 'resistor', of: `${of}.core-loss`, ...ends, ohms: coreLoss.value } as const]
          : []),
      ];
    }
  }
}
