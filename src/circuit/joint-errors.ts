/** What is wrong with joints as they are written: names, and what each kind of joint may join. */
import { closestName } from '../common/nearest.ts';
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import type { End, Joint, Kit } from '../describe/kit.ts';
import { lugsOf, type Part, whatIs } from '../parts/index.ts';
import { LUG_ROOM, type LugSpec } from '../parts/kind.ts';
import { endAt, jointsAtLugs, lugIdOf } from './circuit.ts';
import { DisjointSet } from './disjoint-set.ts';

interface JointErrors {
  readonly problems: readonly Problem[];
  /** The joints whose ends are known, a misspelt end taken for the name it is nearest to. */
  readonly joints: readonly Joint[];
  /** How many joints name something that is like nothing in the kit. */
  readonly lost: number;
}

/** A joint's place: the kind is a step of the path only where it is written as a map. */
const pathOf = (joint: Joint): KeyPath => ['joints', joint.index, joint.kind];

export function jointErrors(kit: Kit, opaque: readonly string[]): JointErrors {
  const names = new Names(kit.parts, opaque);
  const problems: Problem[] = [];
  const joints: Joint[] = [];
  // What a misspelt name was meant to be is only guessed: no second problem is made of it.
  const exact: Joint[] = [];
  for (const joint of kit.joints) {
    const from = names.look(joint.from, [...pathOf(joint), 'from']);
    const to = names.look(joint.to, [...pathOf(joint), 'to']);
    problems.push(...from.problems, ...to.problems);
    if (!from.end || !to.end) continue;
    const known = { ...joint, from: from.end, to: to.end };
    joints.push(known);
    if (from.problems.length + to.problems.length === 0) exact.push(known);
    problems.push(...kindErrors(known, names));
  }
  return {
    problems: [...problems, ...repeats(exact), ...forkedLegs(exact, names), ...crowds(exact, names)],
    joints,
    lost: kit.joints.length - joints.length,
  };
}

/** Lugs with more joints than they have room for; a lug bent to its own case leaves its room free. */
function crowds(joints: readonly Joint[], names: Names): readonly Problem[] {
  return [...jointsAtLugs(joints)].flatMap(([lug, those]) => {
    const { part, lug: name } = endAt(lug);
    const spec = names.lug({ part, lug: name });
    // Of a part that could not be read nobody knows how much room its lugs have.
    const most = spec?.room ?? LUG_ROOM;
    const over = spec && those[most];
    return over ? [problem('crowded-lug', pathOf(over), { lug, count: those.length, most })] : [];
  });
}

interface Looked {
  readonly end?: End;
  readonly problems: readonly Problem[];
}

/** The names of a kit: its parts, their lugs, and what a misspelt one was meant to be. */
class Names {
  readonly #lugs: ReadonlyMap<string, ReadonlyMap<string, LugSpec>>;
  readonly #parts: ReadonlyMap<string, Part>;
  readonly #opaque: ReadonlySet<string>;
  readonly #allowed: readonly string[];
  /** A word misspelt in a thousand joints is looked up once. */
  readonly #meant = new Map<string, string | undefined>();

  constructor(parts: readonly Part[], opaque: readonly string[]) {
    this.#parts = new Map(parts.map((part) => [part.name, part]));
    this.#lugs = new Map(
      parts.map((part) => [part.name, new Map(lugsOf(part).map((lug) => [lug.name, lug]))]),
    );
    this.#opaque = new Set(opaque);
    this.#allowed = [...this.#parts.keys(), ...opaque];
  }

  /** The lug at an end; absent for a part that could not be read. */
  lug(end: End): LugSpec | undefined {
    return this.#lugs.get(end.part)?.get(end.lug);
  }

  look(end: End, path: KeyPath): Looked {
    if (this.#opaque.has(end.part)) return { end, problems: [] };
    const part = this.#parts.get(end.part);
    if (part) return this.#lookLug(part, end, path);
    const meant = this.#nearestPart(end.part);
    const detail = {
      part: end.part,
      allowed: this.#allowed,
      ...(meant === undefined ? {} : { nearest: meant }),
    };
    const found = problem('unknown-part', path, detail);
    if (meant === undefined) return { problems: [found] };
    const next = this.look({ part: meant, lug: end.lug }, path);
    return { ...next, problems: [found, ...next.problems] };
  }

  #lookLug(part: Part, end: End, path: KeyPath): Looked {
    if (this.lug(end)) return { end, problems: [] };
    const allowed = lugsOf(part).map((lug) => lug.name);
    const meant = closestName(
      end.lug,
      allowed.filter((name) => !isOtherLug(end.lug, name)),
    );
    const detail = { part: part.name, lug: end.lug, what: whatIs(part), allowed };
    const found = problem('unknown-lug', [...path, 'lug'], {
      ...detail,
      ...(meant === undefined ? {} : { nearest: meant }),
    });
    return meant === undefined
      ? { problems: [found] }
      : { end: { part: part.name, lug: meant }, problems: [found] };
  }

  #nearestPart(word: string): string | undefined {
    if (!this.#meant.has(word)) this.#meant.set(word, closestName(word, this.#allowed));
    return this.#meant.get(word);
  }
}

/** `B5` is not a misspelling of `B0`: of two letters or digits, one replaced names another lug. */
const isOtherLug = (word: string, name: string): boolean =>
  word.length <= 2 &&
  word.length === name.length &&
  [...word.toLowerCase()].sort().join() !== [...name.toLowerCase()].sort().join();

/** What each kind of joint may join; nothing is said where an end's part could not be read. */
function kindErrors(joint: Joint, names: Names): readonly Problem[] {
  const [a, b] = [lugIdOf(joint.from), lugIdOf(joint.to)];
  if (a === b) return [problem('lug-to-itself', pathOf(joint), { lug: a })];
  const [from, to] = [names.lug(joint.from), names.lug(joint.to)];
  if (!from || !to) return [];
  const onePart = joint.from.part === joint.to.part;
  switch (joint.kind) {
    case 'leg':
      return from.role === 'leg' || to.role === 'leg'
        ? []
        : [problem('not-a-leg', pathOf(joint), { from: a, to: b })];
    case 'jumper':
      return onePart ? [] : [problem('jumper-across-parts', pathOf(joint), { from: a, to: b })];
    case 'bend': {
      const toCase = onePart && to.role === 'case';
      return toCase ? [] : [problem('bend-needs-case', pathOf(joint), { from: a, to: b })];
    }
    case 'wire':
    case 'braid':
      return [];
  }
}

/** Two joints between the same two lugs, whichever way round. */
function repeats(joints: readonly Joint[]): readonly Problem[] {
  const seen = new Set<string>();
  return joints.flatMap((joint) => {
    const [a, b] = [lugIdOf(joint.from), lugIdOf(joint.to)];
    const pair = a < b ? `${a} ${b}` : `${b} ${a}`;
    const again = seen.has(pair) && a !== b;
    seen.add(pair);
    return again ? [problem('joined-twice', pathOf(joint), { a, b })] : [];
  });
}

/**
 * Legs soldered to two places. A joint of kind `leg` takes up one of the legs it names. Where it names two, either of them may be
 * the one: of legs that are joined to one another there must be as many as joints.
 */
function forkedLegs(joints: readonly Joint[], names: Names): readonly Problem[] {
  const groups = new DisjointSet();
  /** Legs of a group that no joint takes up yet, by the group's root. */
  const left = new Map<string, number>();
  const before = new Map<string, Joint>();
  const free = (root: string): number => left.get(root) ?? 1;
  return joints.flatMap((joint) => {
    const legs = [joint.from, joint.to].filter((end) => names.lug(end)?.role === 'leg').map(lugIdOf);
    const [leg, second] = legs;
    if (joint.kind !== 'leg' || leg === undefined || leg === second) return [];
    const roots = [...new Set(legs.map((one) => groups.find(one)))];
    const rest = roots.reduce((sum, root) => sum + free(root), 0) - 1;
    const forked = legs.find((one) => before.has(one));
    const other = forked === undefined ? undefined : before.get(forked);
    if (rest < 0 && forked !== undefined && other) return twice(forked, joint, other);
    if (second !== undefined) groups.join(leg, second);
    left.set(groups.find(leg), rest);
    for (const one of legs) if (!before.has(one)) before.set(one, joint);
    return [];
  });
}

function twice(leg: string, joint: Joint, other: Joint): readonly Problem[] {
  const farEnd = ({ from, to }: Joint): string => lugIdOf(lugIdOf(from) === leg ? to : from);
  const [here, there] = [farEnd(joint), farEnd(other)];
  // Between the same two lugs it is one joint written twice, which is told as that.
  if (here === there) return [];
  const written = `${lugIdOf(other.from)} > ${lugIdOf(other.to)}`;
  const found = problem('leg-twice', pathOf(joint), { leg, here, there, joint: written });
  return [{ ...found, other: pathOf(other) }];
}
