/** A member of a family: the pieces of its axes' values made one description, and where each piece is written. */
import { isDeepStrictEqual } from 'node:util';
import type { KeyPath } from '../common/problem.ts';
import { isMap, type Written } from '../describe/chain.ts';
import { endsOf, keyOf } from '../describe/merge.ts';

/** What one value of an axis changes in the kit. */
export interface Piece {
  readonly value: Written;
  /** Where it stands in the catalogue's file. */
  readonly path: KeyPath;
}

export interface Composed {
  readonly description: Written;
  /** The path in the catalogue's file of what stands at a path of the description, as far as that is written there. */
  readonly pathOf: (path: KeyPath) => KeyPath;
}

const LISTS = ['parts', 'joints', 'keys'] as const;
/** Keys of a kit that are not merged like the others. */
const OWN = new Set(['parts', 'joints', 'remove']);
const listIn = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** Puts pieces together, later ones over earlier ones; where two say the same, it is said once. */
export function compose(pieces: readonly Piece[]): Composed {
  const origins = new Map<string, KeyPath>();
  const note = (at: KeyPath, from: KeyPath): unknown => origins.set(JSON.stringify(at), from);
  const head = new Map<string, unknown>();
  const parts = new Map<string, unknown>();
  const joints: unknown[] = [];
  const remove = new Map<string, unknown[]>();
  const put = (into: Map<string, unknown>, key: string, value: unknown, at: KeyPath, from: KeyPath): void => {
    const before = into.get(key);
    into.set(key, isMap(before) && isMap(value) ? { ...before, ...value } : value);
    note(at, from);
    if (isMap(value)) for (const field of Object.keys(value)) note([...at, field], [...from, field]);
  };
  const push = (into: unknown[], values: readonly unknown[], at: KeyPath, from: KeyPath): void => {
    for (const [i, value] of values.entries()) {
      if (into.some((one) => isDeepStrictEqual(one, value))) continue;
      note([...at, into.length], [...from, i]);
      into.push(value);
    }
  };
  for (const { value, path } of pieces) {
    for (const [key, its] of Object.entries(value))
      if (!OWN.has(key)) put(head, key, its, [key], [...path, key]);
    if (isMap(value.parts))
      for (const [name, its] of Object.entries(value.parts))
        put(parts, name, its, ['parts', name], [...path, 'parts', name]);
    push(joints, listIn(value.joints), ['joints'], [...path, 'joints']);
    for (const list of LISTS) {
      const its = isMap(value.remove) ? listIn(value.remove[list]) : [];
      const before = remove.get(list) ?? [];
      if (its.length > 0) remove.set(list, before);
      push(before, its, ['remove', list], [...path, 'remove', list]);
    }
  }
  const description: Written = {
    ...Object.fromEntries(head),
    ...(remove.size > 0 ? { remove: Object.fromEntries(remove) } : {}),
    ...(parts.size > 0 ? { parts: Object.fromEntries(parts) } : {}),
    ...(joints.length > 0 ? { joints } : {}),
  };
  return { description, pathOf: (path) => originOf(origins, path) };
}

function originOf(origins: ReadonlyMap<string, KeyPath>, path: KeyPath): KeyPath {
  for (let steps = path.length; steps > 0; steps--) {
    const from = origins.get(JSON.stringify(path.slice(0, steps)));
    if (from) return [...from, ...path.slice(steps)];
  }
  return origins.get('["kit"]') ?? [];
}

/** One thing that a piece says: of a field, a joint or a key. */
interface Said {
  /** As a message names it: `volume.value`. */
  readonly what: string;
  readonly words: string;
  readonly value: unknown;
  readonly path: KeyPath;
}

const REMOVED = Symbol('removed');
const shown = (value: unknown): string => (typeof value === 'object' ? JSON.stringify(value) : String(value));

function sayings({ value, path }: Piece): ReadonlyMap<string, Said> {
  const all = new Map<string, Said>();
  const say = (what: string, its: unknown, from: KeyPath): unknown =>
    all.set(what, {
      what,
      value: its,
      words: its === REMOVED ? 'removed' : shown(its),
      path: [...path, ...from],
    });
  const fields = (name: string, its: unknown, from: KeyPath): void => {
    if (!isMap(its)) say(name, its, from);
    else for (const [field, one] of Object.entries(its)) say(`${name}.${field}`, one, [...from, field]);
  };
  for (const [key, its] of Object.entries(value)) if (!OWN.has(key)) fields(key, its, [key]);
  if (isMap(value.parts))
    for (const [name, its] of Object.entries(value.parts)) fields(name, its, ['parts', name]);
  for (const [i, joint] of listIn(value.joints).entries()) {
    const ends = endsOf(joint);
    if (ends) say(keyOf(ends), joint, ['joints', i]);
  }
  const gone = isMap(value.remove) ? value.remove : {};
  for (const [i, joint] of listIn(gone.joints).entries()) {
    const ends = endsOf(joint);
    if (ends && !all.has(keyOf(ends))) say(keyOf(ends), REMOVED, ['remove', 'joints', i]);
  }
  // A part that is removed and described anew is another part.
  for (const list of ['keys', 'parts'])
    for (const [i, name] of listIn(gone[list]).entries())
      if (typeof name === 'string' && !all.has(name) && !all.has(`${name}.kind`))
        say(name, REMOVED, ['remove', list, i]);
  return all;
}

interface Contradiction {
  readonly what: string;
  readonly said: readonly [string, string];
  /** Where the second of the two says it. */
  readonly path: KeyPath;
}

/** What two pieces say differently, so that neither of them could be told to hold. */
export function contradictions(first: Piece, second: Piece): readonly Contradiction[] {
  const [one, other] = [sayings(first), sayings(second)];
  return [...other.values()].flatMap((said) => {
    const [part = ''] = said.what.split('.', 1);
    // What takes out a part takes out what is said of it, unless that makes the part anew.
    const whole = one.get(part);
    const under =
      said.value === REMOVED
        ? [...one.values()].find(({ what }) => what.startsWith(`${said.what}.`))
        : undefined;
    const anew = other.has(`${part}.kind`) || one.has(`${part}.kind`);
    const against = one.get(said.what) ?? (anew ? undefined : whole?.value === REMOVED ? whole : under);
    return against === undefined || isDeepStrictEqual(against.value, said.value)
      ? []
      : [{ what: said.what, said: [against.words, said.words] as const, path: said.path }];
  });
}
