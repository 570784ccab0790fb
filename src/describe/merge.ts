/**
 * The descriptions of a chain merged into one: what a kit says overrides what its base says, part by part and field by field.
 * Where each piece was written is kept, so that a problem of the whole points into the file it comes from.
 */
import { must } from '../common/must.ts';
import { closestName } from '../common/nearest.ts';
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import { isMap, type Layer, type Placed, type Written } from './chain.ts';
import { typeName } from './issues.ts';
import { jointKinds } from './kit.ts';
import { readJoint } from './read-joint.ts';
import type { Source } from './source.ts';
import { ownFields } from './stock.ts';
import { JOINT } from './words.ts';

/** Where a piece of the whole is written. */
interface Origin {
  readonly source: Source;
  readonly path: KeyPath;
}

/** A value with its origin. */
export interface Piece extends Origin {
  readonly value: unknown;
}

/** A key of the kit or a part: merged field by field where it is a map. */
export interface Merged extends Piece {
  /** Each field's values, the last of which holds; before it those that it replaces. */
  readonly fields: ReadonlyMap<string, readonly Piece[]>;
}

interface MergedJoint extends Piece {
  readonly ends: Ends | undefined;
}

/** The two ends of a joint, each `PART.LUG`, in the order written. */
type Ends = readonly [string, string];

interface Whole {
  readonly value: Written;
  readonly source: Source;
  readonly problems: readonly Problem[];
  /** Parts that are named and cannot be known: they change a part that the base has not. */
  readonly opaque: readonly string[];
  readonly parts: ReadonlyMap<string, Merged>;
  readonly joints: readonly MergedJoint[];
}

/** What the kit of a part must be, where one is expected. */
export const PARTS = 'parts, a line each, such as volume: { kind: pot, value: 500k }';
export const JOINTS = 'joints, a line each, such as - neck.hot > selector.A1';
const CHANGES =
  'changes of the part, such as { value: 250k }, or the part’s name under remove: { parts: [ ] }';

/** @param before problems found while the chain was read */
export function merge(layers: readonly Layer[], before: readonly Placed[] = []): Whole {
  const merging = new Merging();
  for (const layer of layers) merging.add(layer);
  return merging.whole(must(layers.at(-1), 'description').source, before);
}

class Merging {
  readonly #head = new Map<string, Merged>();
  readonly #parts = new Map<string, Merged>();
  #joints: MergedJoint[] = [];
  readonly #opaque = new Set<string>();
  readonly #problems: Placed[] = [];
  /** Of `parts` and `joints`, whether any description has them. */
  readonly #lists = new Set<string>();
  #isFirst = true;

  add(layer: Layer): void {
    const { source, value } = layer;
    // Two kits may not have one id, so that a base's is never taken over.
    this.#head.delete('kit');
    this.#remove(layer);
    for (const [key, written] of Object.entries(value)) {
      const piece = { source, path: [key], value: written };
      if (key === 'parts') this.#addParts(piece);
      else if (key === 'joints') this.#addJoints(piece);
      else if (key !== 'extends' && key !== 'remove')
        this.#head.set(key, mergeMap(this.#head.get(key), piece));
    }
    this.#isFirst = false;
  }

  #report(source: Source, found: Problem): void {
    this.#problems.push({ source, problem: found });
  }

  #remove({ source, remove }: Layer): void {
    const absent = (
      what: 'part' | 'joint' | 'key',
      index: number,
      got: string,
      allowed: readonly string[],
      meant?: string,
    ): void => {
      const nearest = closestName(got, allowed) ?? meant;
      const detail = { what, got, allowed, ...(nearest === undefined ? {} : { nearest }) };
      this.#report(source, problem('not-in-base', ['remove', `${what}s`, index], detail));
    };
    for (const [i, key] of remove.keys.entries())
      if (!this.#removeKey(key)) absent('key', i, key, this.#removable());
    const joints = this.#joints;
    for (const [i, described] of remove.joints.entries()) {
      const path = ['remove', 'joints', i];
      const { problems } = readJoint(i, described, path);
      for (const found of problems) this.#report(source, found);
      const ends = endsOf(described);
      if (!ends || problems.length > 0) continue;
      const same = joints.filter((joint) => joint.ends && keyOf(joint.ends) === keyOf(ends));
      this.#joints = this.#joints.filter((joint) => !same.includes(joint));
      const names = joints.flatMap((joint) => (joint.ends ? [joint.ends.join(' > ')] : []));
      if (same.length === 0)
        absent('joint', i, ends.join(' > '), names, sharing(joints, ends)?.ends?.join(' > '));
    }
    const parts = [...this.#parts.keys()];
    for (const [i, name] of remove.parts.entries()) {
      if (!parts.includes(name)) absent('part', i, name, parts);
      this.#parts.delete(name);
      this.#joints = this.#joints.filter(({ ends }) => !ends?.some((end) => partOf(end) === name));
    }
  }

  /** Keys that may be taken out of the base: without one of these a part would be no part. */
  #removable(): readonly string[] {
    const fields = (of: ReadonlyMap<string, Merged>) =>
      [...of].flatMap(([name, { fields: its }]) =>
        [...its.keys()].filter((field) => field !== 'kind').map((field) => `${name}.${field}`),
      );
    return [...this.#head.keys(), ...fields(this.#head), ...fields(this.#parts)];
  }

  #removeKey(key: string): boolean {
    const [name = '', field] = key.split('.', 2);
    if (field === undefined) return this.#head.delete(key);
    if (!this.#removable().includes(key)) return false;
    const where = this.#parts.has(name) ? this.#parts : this.#head;
    const there = where.get(name);
    if (!there || !isMap(there.value)) return false;
    const { [field]: _, ...value } = there.value;
    where.set(name, { ...there, value, fields: new Map([...there.fields].filter(([one]) => one !== field)) });
    return true;
  }

  #addParts({ source, value }: Piece): void {
    this.#lists.add('parts');
    if (!isMap(value)) {
      this.#report(source, problem('wrong-type', ['parts'], { expected: PARTS, got: typeName(value) }));
      return;
    }
    const base = [...this.#parts.keys()];
    for (const [name, described] of Object.entries(value)) {
      const path = ['parts', name];
      const before = this.#parts.get(name);
      if (before && described === null) {
        this.#report(source, problem('wrong-type', path, { expected: CHANGES, got: typeName(null) }));
      } else if (!before && !this.#isFirst && isMap(described) && !saysKind(described)) {
        const nearest = closestName(name, base);
        const detail = { got: name, allowed: base, ...(nearest === undefined ? {} : { nearest }) };
        this.#report(source, problem('not-in-base', path, { what: 'part', ...detail, changed: true }, 'key'));
        this.#opaque.add(name);
      } else {
        const piece = { source, path, value: described };
        const kept = isSameKind(before?.value, described) ? before : undefined;
        this.#parts.set(name, mergeMap(kept && withoutReplaced(kept, described), piece));
      }
    }
  }

  #addJoints({ source, value }: Piece): void {
    this.#lists.add('joints');
    if (!Array.isArray(value)) {
      this.#report(source, problem('wrong-type', ['joints'], { expected: JOINTS, got: typeName(value) }));
      return;
    }
    // Only a base's joint is replaced; one that is written twice in one file is a mistake.
    const open = new Map<string, number[]>();
    for (const [place, { ends }] of this.#joints.entries())
      if (ends) open.set(keyOf(ends), [...(open.get(keyOf(ends)) ?? []), place]);
    for (const [index, described] of Array.from(value as readonly unknown[]).entries()) {
      const ends = endsOf(described);
      const joint = { source, path: ['joints', index], value: described, ends };
      const place = ends && open.get(keyOf(ends))?.shift();
      if (place === undefined) this.#joints.push(joint);
      else this.#joints[place] = joint;
    }
  }

  whole(top: Source, before: readonly Placed[]): Whole {
    const origins = new Map<string, Origin>();
    const note = (path: KeyPath, origin: Origin): unknown => origins.set(JSON.stringify(path), origin);
    const noteMerged = (path: KeyPath, { fields, ...origin }: Merged): void => {
      note(path, origin);
      for (const [field, pieces] of fields) {
        const last = pieces.at(-1);
        if (last) note([...path, field], last);
      }
    };
    for (const [key, merged] of this.#head) noteMerged([key], merged);
    for (const [name, merged] of this.#parts) noteMerged(['parts', name], merged);
    for (const [i, joint] of this.#joints.entries()) note(['joints', i], joint);
    const placed = [...before, ...this.#problems];
    const valuesOf = (of: ReadonlyMap<string, Piece>) => [...of].map(([key, { value }]) => [key, value]);
    const lists = {
      parts: Object.fromEntries(valuesOf(this.#parts)),
      joints: this.#joints.map(({ value }) => value),
    };
    const value = Object.fromEntries([
      ...valuesOf(this.#head),
      ...Object.entries(lists).filter(([key]) => this.#lists.has(key)),
    ]);
    const problems = placed.map((one) => one.problem);
    const source = sourceOf(top, origins, placed);
    const opaque = [...this.#opaque].filter((name) => !this.#parts.has(name));
    return { value, source, problems, opaque, parts: this.#parts, joints: this.#joints };
  }
}

/** Maps every problem to the text it is in, and to its path there. */
function sourceOf(top: Source, origins: ReadonlyMap<string, Origin>, placed: readonly Placed[]): Source {
  const owners = new Map(placed.map((one) => [one.problem, one.source]));
  const resolve = (found: Problem) => {
    const owner = owners.get(found);
    if (owner) return { source: owner, found };
    for (let steps = found.path.length; steps > 0; steps--) {
      const origin = origins.get(JSON.stringify(found.path.slice(0, steps)));
      if (!origin) continue;
      const path = [...origin.path, ...found.path.slice(steps)];
      return { source: origin.source, found: { ...found, path } as Problem };
    }
    return { source: top, found };
  };
  const placeOf = (found: Problem) => {
    const { source, found: own } = resolve(found);
    return source.placeOf(own);
  };
  const called = top.called === undefined ? {} : { called: top.called };
  return { file: top.file, ...called, exact: top.exact, resolve, placeOf };
}

/** A value over another: field by field where both are maps, else whole. */
function mergeMap(before: Merged | undefined, piece: Piece): Merged {
  const { source, path, value } = piece;
  const own: readonly (readonly [string, Piece])[] = isMap(value)
    ? Object.entries(value).map(([field, its]) => [field, { source, path: [...path, field], value: its }])
    : [];
  if (!before || !isMap(before.value) || !isMap(value))
    return { ...piece, fields: new Map(own.map(([field, its]) => [field, [its]])) };
  const fields = new Map(before.fields);
  for (const [field, its] of own) fields.set(field, [...(fields.get(field) ?? []), its]);
  return { ...before, value: { ...before.value, ...value }, fields };
}

/** A stock code stands in place of values: written over them it takes them out, as a value written over a code takes out the code. */
function withoutReplaced(before: Merged, described: unknown): Merged {
  if (!isMap(before.value) || !isMap(described)) return before;
  const coded = Object.hasOwn(described, 'code');
  const valued = Object.hasOwn(described, 'value');
  const stays = (field: string): boolean =>
    (!coded || ownFields.includes(field)) && (!valued || coded || field !== 'code');
  return {
    ...before,
    value: Object.fromEntries(Object.entries(before.value).filter(([field]) => stays(field))),
    fields: new Map([...before.fields].filter(([field]) => stays(field))),
  };
}

/** Whether a description says, or means to say, what kind of part it is. */
const saysKind = (described: Written): boolean =>
  Object.keys(described).some((key) => closestName(key, ['kind']) !== undefined);

/** Whether a description changes a part; one of another kind is another part, of which no field is kept. */
const isSameKind = (before: unknown, described: unknown): boolean =>
  isMap(before) && isMap(described) && (!Object.hasOwn(described, 'kind') || described.kind === before.kind);

/** The ends of a joint as it is written, if they can be made out. */
export function endsOf(described: unknown): Ends | undefined {
  const kind = isMap(described) ? jointKinds.find((one) => Object.hasOwn(described, one)) : undefined;
  const text = isMap(described) && kind !== undefined ? described[kind] : described;
  const found = typeof text === 'string' ? JOINT.exec(text) : null;
  return found ? [`${found[1]}.${found[2]}`, `${found[3]}.${found[4]}`] : undefined;
}

const partOf = (end: string): string => end.slice(0, end.indexOf('.'));

/** The same for two joints that connect the same lugs, in whichever order they are written. */
export const keyOf = (ends: Ends): string => [...ends].sort().join(' > ');

/** A joint that has one end in common with another. */
const sharing = (joints: readonly MergedJoint[], ends: Ends): MergedJoint | undefined =>
  joints.find((joint) => joint.ends?.some((end) => ends.includes(end)));
