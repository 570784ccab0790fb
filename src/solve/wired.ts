/**
 * What the networks of a graph have in common whatever its switches and controls do, worked out once: its terminals by number, which
 * of them joints make one, and the elements between them. A network is then made by numbers alone.
 */
import { type Graph, type LugId, lugId, type Setting } from '../circuit/circuit.ts';
import { must, nth } from '../common/must.ts';
import { elementsLike, elementsOf, type Part, terminalsOf } from '../parts/index.ts';
import type { CircuitElement } from '../parts/kind.ts';
import type { Winding } from './network.ts';
import { signsOf } from './signs.ts';

/** An element of a part, and the numbers of its terminals in the order of `terminalsOf`. */
export interface PlacedElement {
  readonly part: Part;
  readonly element: CircuitElement;
  /** `volume.track` */
  readonly of: string;
  readonly at: readonly number[];
  /** Of a coil: its pickup's sign, and what it is coupled to. */
  readonly sign: number;
  readonly mutual?: Winding['mutual'];
}

interface Wired {
  readonly lugs: Graph['lugs'];
  readonly joints: Graph['joints'];
  /** Every lug, then every `part.#name` inside a part. */
  readonly terminals: readonly LugId[];
  readonly elements: readonly PlacedElement[];
  /** Terminals from each of the jack's outputs to its sleeve, in the order of its lugs. */
  readonly outputs: readonly { readonly from: number; readonly to: number }[];
  /** Of each terminal one that it is joined to, itself at the root; joints and closed contacts only. */
  readonly joined: (setting: Pick<Setting, 'closedContacts'>) => Int32Array;
}

const known = new WeakMap<Graph['kit'], Wired>();

/** The common part of a graph's networks. */
export function wiredOf(graph: Pick<Graph, 'kit' | 'joints' | 'lugs'>): Wired {
  const before = known.get(graph.kit);
  // A kit may have been given the lugs or the joints of another.
  if (before && before.lugs === graph.lugs && before.joints === graph.joints) return before;
  const wired = wire(graph);
  known.set(graph.kit, wired);
  return wired;
}

function wire({ kit, joints, lugs }: Pick<Graph, 'kit' | 'joints' | 'lugs'>): Wired {
  const numbers = new Map<LugId, number>();
  const numberOf = (id: LugId): number => {
    const number = numbers.get(id) ?? numbers.size;
    numbers.set(id, number);
    return number;
  };
  for (const id of lugs.keys()) numberOf(id);
  const signs = signsOf(kit);
  const elements = kit.parts.flatMap((part) =>
    elementsOf(part).map((element): PlacedElement => {
      const mutual = element.kind === 'coil' ? mutualOf(part, element.id) : undefined;
      return {
        part,
        element,
        of: `${part.name}.${element.id}`,
        at: terminalsOf(element).map((name) => numberOf(lugId(part.name, name))),
        sign: signs.get(part.name) ?? 1,
        ...(mutual ? { mutual } : {}),
      };
    }),
  );
  const at = (id: LugId): number => must(numbers.get(id), `terminal ${id}`);
  const byJoints = Int32Array.from(numbers.values());
  for (const { from, to } of joints)
    unite(byJoints, at(lugId(from.part, from.lug)), at(lugId(to.part, to.lug)));
  // Settings that differ in no switch, as those of a blend, have the very same contacts.
  const byContacts = new WeakMap<Setting['closedContacts'], Int32Array>();
  const joined: Wired['joined'] = ({ closedContacts }) => {
    const before = byContacts.get(closedContacts);
    if (before) return before;
    const parents = byJoints.slice();
    for (const [first, ...others] of closedContacts)
      for (const other of others) unite(parents, at(first ?? other), at(other));
    for (const i of parents.keys()) parents[i] = rootOf(parents, i);
    byContacts.set(closedContacts, parents);
    return parents;
  };
  return { lugs, joints, terminals: [...numbers.keys()], elements, outputs: outputsOf(lugs, at), joined };
}

/** The root of a terminal; the way to it is made shorter. */
export function rootOf(parents: Int32Array, terminal: number): number {
  let root = terminal;
  for (let up = nth(parents, root); up !== root; up = nth(parents, root)) {
    parents[root] = nth(parents, up);
    root = up;
  }
  return root;
}

/** Makes two terminals one node. */
export function unite(parents: Int32Array, a: number, b: number): void {
  parents[rootOf(parents, b)] = rootOf(parents, a);
}

/** What a coil of a part is coupled to, if anything. */
function mutualOf(part: Part, coil: string): Winding['mutual'] {
  for (const { coils, factor } of elementsLike(part, 'coupling')) {
    const other = coils.includes(coil) ? coils.find((one) => one !== coil) : undefined;
    if (other !== undefined) return { other: `${part.name}.${other}`, factor: factor.value };
  }
  return undefined;
}

function outputsOf(lugs: Graph['lugs'], at: (id: LugId) => number): Wired['outputs'] {
  const all = [...lugs.values()];
  const sleeve = all.find(({ role }) => role === 'sleeve');
  if (!sleeve) return [];
  return all.filter(({ role }) => role === 'output').map(({ id }) => ({ from: at(id), to: at(sleeve.id) }));
}
