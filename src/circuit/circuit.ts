/** The component graph: lugs, joints, nets and settings, and the solved states. Plain data, made once. */

import { must, nth } from '../common/must.ts';
import type { End, Joint, Kit } from '../describe/kit.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { coilWords } from '../messages/words.ts';
import { elementsLike, elementsOf, type Part, terminalsOf } from '../parts/index.ts';
import type { LugRole, LugSpec, TrackEnd } from '../parts/kind.ts';

/** `part.lug`, unique in the kit. */
export type LugId = string;

export interface Lug extends LugSpec {
  readonly id: LugId;
  readonly part: string;
  /** The net it belongs to whatever the switches do. */
  readonly net: number;
}

/** Lugs that joints hold together, whatever the switches do. */
export interface Net {
  readonly index: number;
  readonly lugs: readonly LugId[];
  /** What it carries: the jack's sleeve, the jack's tip, one pickup's hot end, or anything else. */
  readonly role: 'ground' | 'output' | 'pickup' | 'other';
  /** The pickup whose hot end is on it, where there is just one. */
  readonly pickup?: string;
}

/** Where a control is at full: at an end of its rotation, or, of a blend, in the middle. */
export type FullAt = TrackEnd | 'middle';

/** One setting of every switch, and of every blend. */
export interface Setting {
  /** Position by switch name, or by the id of a blend's control; empty for a kit without either. */
  readonly positions: Readonly<Record<string, number>>;
  /** Of those positions that have a name, the name, by switch: `pulled out`. */
  readonly positionNames: Readonly<Record<string, string>>;
  /** Lugs the closed contacts hold together. */
  readonly closedContacts: readonly (readonly LugId[])[];
  /** Rotation of blends by the id of their control: 0 anticlockwise, 1 clockwise. */
  readonly turned?: Readonly<Record<string, number>>;
  /** Of a jack with several outputs the one that is looked at, by its number from 0; the first where it is absent. */
  readonly output?: number;
}

/** One output of a jack that has several. */
export interface StateOutput {
  /** Its lug's name: `tip`, `ring`. */
  readonly name: string;
  /** Pickups that are heard at it, controls at full, in the order written. */
  readonly sounding: readonly string[];
  /** Of those that are heard here with some of their coils only, these coils. */
  readonly coils?: Readonly<Record<string, readonly SoundingCoil[]>>;
  /** Those of them that are louder here than at any other output. */
  readonly loudest: readonly string[];
}

/** A coil of a pickup by its element, and in words. */
interface SoundingCoil {
  readonly id: string;
  readonly called: string;
}

/** A setting with what it does, as solved. */
export interface State extends Setting {
  /** Pickups that are heard at the jack, at whichever output, controls at full, in the order written. */
  readonly sounding: readonly string[];
  /** Of those that are heard with some of their coils only, as a split humbucker is: these coils, by pickup. */
  readonly coils?: Readonly<Record<string, readonly SoundingCoil[]>>;
  /** Every output is one node with the sleeve, controls at full: nothing can be heard. */
  readonly shorted: boolean;
  /** One a jack's output, in the order of its lugs; only where it has several. */
  readonly outputs?: readonly StateOutput[];
}

/** A state as it is heard at each output by itself: the state as it is where there is only one. */
export function perOutput(state: State): readonly State[] {
  const { coils: _, ...rest } = state;
  return (
    state.outputs?.map(({ sounding, coils }, output) => ({
      ...rest,
      sounding,
      output,
      ...(coils ? { coils } : {}),
    })) ?? [state]
  );
}

/** Name of the output that is looked at, where the jack has several: `ring`. */
export const outputOf = ({ outputs, output = 0 }: State): string | undefined => outputs?.[output]?.name;

/** A state as it is heard at the output where a pickup is loudest. */
export const atOutputOf = (state: State, pickup: string): State =>
  perOutput(state)[state.outputs?.findIndex(({ loudest }) => loudest.includes(pickup)) ?? 0] ?? state;
/** The coils of a pickup that are heard in a state. */
export function soundingCoils({ sounding, coils }: Pick<State, 'sounding' | 'coils'>, pickup: Part) {
  const all = elementsLike(pickup, 'coil');
  if (!sounding.includes(pickup.name)) return [];
  const some = coils?.[pickup.name];
  return some ? all.filter(({ id }) => some.some((one) => one.id === id)) : all;
}

/** A sounding pickup in words, with its coil where it is split: `Bridge coil A`. */
export function voiceName(
  { coils }: Pick<State, 'coils'>,
  pickup: string,
  label = pickup,
  language: Language = DEFAULT_LANGUAGE,
): string {
  const some = coils?.[pickup];
  return some ? `${label} ${some.map(({ called }) => coilWords(language, called)).join(' + ')}` : label;
}

/** What the description alone says. */
export interface Graph {
  readonly kit: Kit;
  readonly lugs: ReadonlyMap<LugId, Lug>;
  readonly joints: readonly Joint[];
  readonly nets: readonly Net[];
  readonly settings: readonly Setting[];
  /** Where each control is at full, by its id, as solved; until then at its clockwise end, and a blend in the middle. */
  readonly fullAt?: ReadonlyMap<string, FullAt>;
}

/** The graph with its solved states, one a setting. */
export interface Circuit extends Graph {
  readonly states: readonly State[];
}

export const lugId = (part: string, lug: string): LugId => `${part}.${lug}`;
/** The lug at which a joint ends. */
export const lugIdOf = ({ part, lug }: End): LugId => lugId(part, lug);
/** Joints that take up room at each lug: all but the bend of a lug onto its own part. */
export function jointsAtLugs(joints: readonly Joint[]): ReadonlyMap<LugId, readonly Joint[]> {
  const at = new Map<LugId, Joint[]>();
  for (const joint of joints) {
    if (joint.kind === 'bend' && joint.from.part === joint.to.part) continue;
    for (const end of [joint.from, joint.to]) {
      const id = lugIdOf(end);
      at.set(id, [...(at.get(id) ?? []), joint]);
    }
  }
  return at;
}

/** The lugs that joints lead to from one. */
export const lugsJoinedTo = (joints: readonly Joint[], lug: LugId): readonly LugId[] =>
  joints.flatMap(({ from, to }) => {
    const [a, b] = [lugIdOf(from), lugIdOf(to)];
    return a === lug ? [b] : b === lug ? [a] : [];
  });

/** The end at a lug. */
export function endAt(id: LugId): End {
  const dot = id.lastIndexOf('.');
  return { part: id.slice(0, dot), lug: id.slice(dot + 1) };
}

/** A lug of the graph, and the net that it is on. */
export const lugAt = ({ lugs }: Pick<Graph, 'lugs'>, id: LugId): Lug => must(lugs.get(id), `lug ${id}`);
export const netAt = (graph: Pick<Graph, 'lugs' | 'nets'>, id: LugId): Net =>
  nth(graph.nets, lugAt(graph, id).net);

/** Lugs with these carry signal wherever the circuit is right. */
export const SIGNAL_ROLES: ReadonlySet<LugRole> = new Set([
  'hot',
  'output',
  'common',
  'throw',
  'wiper',
  'clockwise',
]);

/** By lug the number of its net, counted from 1: how nets are called outside the program. */
export const netNumbers = ({ lugs }: Pick<Graph, 'lugs'>): ReadonlyMap<LugId, number> =>
  new Map([...lugs.values()].map(({ id, net }) => [id, net + 1]));

/** Indices of the nets that lugs are on; a node inside a part is on none. */
export const netsOf = ({ lugs }: Pick<Graph, 'lugs'>, ids: readonly LugId[]): readonly number[] =>
  ids.flatMap((id) => lugs.get(id)?.net ?? []);

/**
 * From net to net through the elements of parts and through contacts, over those nets that are open. A track leads from each of its
 * ends to its wiper. Lugs that contacts hold together meet in a node of their own, below zero, so that none of them lies
 * between two others.
 */
export function waysBetweenNets(
  graph: Pick<Graph, 'lugs' | 'nets'>,
  parts: readonly Part[],
  contacts: readonly (readonly LugId[])[],
  open: (net: number) => boolean = () => true,
): ReadonlyMap<number, ReadonlySet<number>> {
  const ways = new Map<number, Set<number>>();
  for (const { index } of graph.nets) if (open(index)) ways.set(index, new Set());
  const join = (a: number, b: number): void => {
    if (a === b || !ways.has(a) || !ways.has(b)) return;
    ways.get(a)?.add(b);
    ways.get(b)?.add(a);
  };
  for (const part of parts)
    for (const element of elementsOf(part)) {
      const nets = netsOf(
        graph,
        terminalsOf(element).map((name) => lugId(part.name, name)),
      );
      for (const [i, net] of nets.slice(1).entries()) join(nth(nets, i), net);
    }
  contacts.forEach((ids, i) => {
    ways.set(-1 - i, new Set());
    for (const net of netsOf(graph, ids)) join(-1 - i, net);
  });
  return ways;
}
