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
import { type Graph, type LugId, lugId, type Setting } from '../circuit/circuit.ts';
import { DisjointSet } from '../circuit/disjoint-set.ts';
import { elementsLike, elementsOf, type Part, terminalsOf } from '../parts/index.ts';
import type { CircuitElement } from '../parts/kind.ts';
import { type Branch, capacitanceOf, type Port, type Winding } from './network.ts';
import { type PotRotations, placeOf } from './rest.ts';
import { signsOf } from './signs.ts';
import { trackShare } from './taper.ts';

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

/** The network of one state. */
export function makeNetlist(circuit: Graph, state: Setting, controls: PotRotations = {}): Netlist {
  const placed = circuit.kit.parts.flatMap((part) =>
    elementsOf(part).map((element) => ({
      part,
      element,
      ...standing(circuit, state, part, element, controls),
    })),
  );
  const joined = new DisjointSet();
  for (const joint of circuit.joints)
    joined.join(lugId(joint.from.part, joint.from.lug), lugId(joint.to.part, joint.to.lug));
  for (const group of state.closedContacts) for (const id of group.slice(1)) joined.join(group[0] ?? id, id);
  for (const { part, element, share, off } of placed)
    for (const [a, b] of off ? [] : idealJoins(element, share))
      joined.join(lugId(part.name, a), lugId(part.name, b));
  const nodeOf = numberNodes(circuit, placed, joined);
  const signs = signsOf(circuit.kit);
  const branches = placed.flatMap(({ part, element, share, off }) =>
    branchesOf(
      part,
      element,
      off ? undefined : share,
      signs.get(part.name) ?? 1,
      (terminal) => nodeOf.get(lugId(part.name, terminal)) ?? -1,
    ),
  );
  const outputs = outputPorts(circuit, nodeOf);
  return {
    size: new Set(nodeOf.values()).size,
    // A branch with both ends on one node carries nothing and would only be noise, but for a coil that is shorted: its
    // current weakens the coil that it is coupled to.
    branches: branches.filter(
      (branch) => branch.a !== branch.b || (branch.kind === 'winding' && branch.mutual !== undefined),
    ),
    nodeOf,
    jack: outputs[state.output ?? 0],
    outputs,
  };
}

interface Placed {
  readonly part: Part;
  readonly element: CircuitElement;
  /** Of a track: the share of it below the wiper. */
  readonly share: number;
  /** The wiper is off the track and touches nothing. */
  readonly off: boolean;
}

function standing(
  circuit: Graph,
  state: Setting,
  part: Part,
  element: CircuitElement,
  controls: PotRotations,
): Pick<Placed, 'share' | 'off'> {
  if (element.kind !== 'track') return { share: 0, off: false };
  const rotation = placeOf(circuit, state, part, element, controls);
  return {
    share: trackShare(element.taper.value, element.midpoint.value, rotation),
    off: element.noLoad === true && rotation >= 1,
  };
}

/** Terminals that an element itself makes one: the wiper at an end, and a part of no resistance. */
function idealJoins(element: CircuitElement, share: number): readonly (readonly [string, string])[] {
  switch (element.kind) {
    case 'track':
      return [
        ...(share * element.ohms.value === 0 ? [[element.anticlockwise, element.wiper] as const] : []),
        ...((1 - share) * element.ohms.value === 0 ? [[element.wiper, element.clockwise] as const] : []),
      ];
    case 'resistance':
      return element.ohms.value === 0 ? [[element.a, element.b]] : [];
    case 'coil':
    case 'coupling':
    case 'capacitance':
      return [];
  }
}

function numberNodes(
  circuit: Graph,
  placed: readonly Placed[],
  joined: DisjointSet,
): ReadonlyMap<LugId, number> {
  const inner = placed.flatMap(({ part, element }) =>
    terminalsOf(element).map((name) => lugId(part.name, name)),
  );
  const numbers = new Map<string, number>();
  const nodeOf = new Map<LugId, number>();
  for (const id of [...circuit.lugs.keys(), ...inner]) {
    const root = joined.find(id);
    const number = numbers.get(root) ?? numbers.size;
    numbers.set(root, number);
    nodeOf.set(id, number);
  }
  return nodeOf;
}

function branchesOf(
  part: Part,
  element: CircuitElement,
  share: number | undefined,
  sign: number,
  node: (terminal: string) => number,
): readonly Branch[] {
  const of = `${part.name}.${element.id}`;
  switch (element.kind) {
    case 'resistance':
      return [{ kind: 'resistor', of, a: node(element.a), b: node(element.b), ohms: element.ohms.value }];
    case 'capacitance':
      return [
        { kind: 'capacitor', of, a: node(element.a), b: node(element.b), farads: element.farads.value },
      ];
    case 'track': {
      const [low, wiper, high] = [element.anticlockwise, element.wiper, element.clockwise].map(node);
      const [a, w, c] = [low ?? -1, wiper ?? -1, high ?? -1];
      if (share === undefined) return [{ kind: 'resistor', of, a, b: c, ohms: element.ohms.value }];
      return [
        { kind: 'resistor', of, a, b: w, ohms: share * element.ohms.value },
        { kind: 'resistor', of, a: w, b: c, ohms: (1 - share) * element.ohms.value },
      ];
    }
    case 'coupling':
      return [];
    case 'coil': {
      const at = { pickup: part.name, coil: of, a: node(element.hot), b: node(element.return) };
      const { resistance, inductance, capacitance, coreLoss, signal, hum } = element;
      const mutual = mutualOf(part, element.id);
      return [
        {
          kind: 'winding',
          of,
          ...at,
          ohms: resistance.value,
          henries: inductance.value,
          signal: sign * (signal ?? 1),
          ...(hum === undefined ? {} : { hum }),
          ...(mutual ? { mutual } : {}),
        },
        { kind: 'capacitor', of: capacitanceOf(of), ...at, farads: capacitance.value },
        ...(coreLoss
          ? [{ kind: 'resistor', of: `${of}.core-loss`, ...at, ohms: coreLoss.value } as const]
          : []),
      ];
    }
  }
}

/** What a coil of a part is coupled to, if anything. */
function mutualOf(part: Part, coil: string): Winding['mutual'] {
  for (const { coils, factor } of elementsLike(part, 'coupling')) {
    const other = coils.includes(coil) ? coils.find((one) => one !== coil) : undefined;
    if (other !== undefined) return { other: `${part.name}.${other}`, factor: factor.value };
  }
  return undefined;
}

function outputPorts(circuit: Graph, nodeOf: ReadonlyMap<LugId, number>): readonly Port[] {
  const lugs = [...circuit.lugs.values()];
  const to = nodeOf.get(lugs.find((lug) => lug.role === 'sleeve')?.id ?? '');
  if (to === undefined) return [];
  return lugs
    .filter((lug) => lug.role === 'output')
    .flatMap(({ id }) => {
      const from = nodeOf.get(id);
      return from === undefined ? [] : [{ from, to }];
    });
}
