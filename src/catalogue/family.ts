/** Families of kits: one base, and by matrix what changes in it. */

import { z } from 'zod';
import { ID, ID_LONGEST } from '../common/names.ts';
import { closestName } from '../common/nearest.ts';
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import { isMap, type Written } from '../describe/chain.ts';
import { problemsOf, typeName } from '../describe/issues.ts';
import { headSchema } from '../describe/schema.ts';
import type { Member } from './catalogue.ts';
import { type Composed, compose, contradictions, type Piece } from './member.ts';
import { familySchema } from './schema.ts';

interface Axis {
  readonly name: string;
  readonly values: ReadonlyMap<string, Piece>;
}

/** By axis the values of one combination. */
type Values = Member['values'];

export interface Family {
  readonly index: number;
  /** Where it is written. */
  readonly path: KeyPath;
  readonly kit: string;
  readonly written: Written;
  readonly axes: readonly Axis[];
  /** Each by axis the values that are excluded together. */
  readonly except: readonly Readonly<Record<string, readonly string[]>>[];
}

/** Keys of a family that each member has, with the names of axes put in. */
const HEAD = ['title', 'about', 'extends'] as const;
const PLACEHOLDER = /\{([^{}]*)\}/g;
const AXES = 'axes with their values, such as { pots: { 250k: { … }, 500k: { … } } }';

/** Reads one family of a catalogue; its members are not worked out. */
export function readFamily(value: unknown, index: number) {
  const path: KeyPath = ['families', index];
  const what = `item ${index + 1} of “families”`;
  if (!isMap(value)) {
    const expected = 'a family: its keys kit, extends and matrix';
    return { problems: [problem('wrong-type', path, { expected, got: typeName(value) })] };
  }
  const read = familySchema.safeParse(value);
  const problems: Problem[] = read.error
    ? [...problemsOf(read.error.issues, { schema: familySchema, value, path, what })]
    : [];
  const axes = readAxes(value.matrix, [...path, 'matrix']);
  problems.push(...axes.problems);
  const except = readExcept(value.except, axes.axes, [...path, 'except']);
  problems.push(...except.problems);
  if (!read.success || problems.length > 0) return { problems };
  const family: Family = {
    index,
    path,
    kit: read.data.kit,
    written: value,
    axes: axes.axes,
    except: except.except,
  };
  return { family, problems };
}

/**
 * Works out the members of a family, each by its values.
 *
 * @param most kits that the catalogue may have
 */
export function expandFamily(family: Family, most: number) {
  const problems = patternProblems(family);
  const count = family.axes.reduce((product, { values }) => product * values.size, 1);
  const at = [...family.path, 'matrix'];
  if (count > most) problems.push(problem('too-many-kits', at, { count, most }, 'key'));
  if (problems.length > 0) return { members: [], problems };
  const members = membersOf(family);
  if (members.length === 0) problems.push(problem('family-empty', family.path, {}));
  problems.push(...idProblems(family, members), ...axisProblems(family, members));
  return { members, problems };
}

function readAxes(matrix: unknown, path: KeyPath) {
  const problems: Problem[] = [];
  // What is no map at all is told by the family's own schema.
  const axes = Object.entries(isMap(matrix) ? matrix : {}).map(([name, values]): Axis => {
    const pieces = Object.entries(isMap(values) ? values : {}).map(([value, written]) => {
      const at = [...path, name, value];
      // A value that changes nothing may be left empty: it is the base as it is.
      const piece = written === null ? {} : written;
      problems.push(...pieceProblems(piece, at, `“${name}: ${value}”`));
      return [value, { value: isMap(piece) ? piece : {}, path: at }] as const;
    });
    return { name, values: new Map(pieces) };
  });
  if (isMap(matrix) && axes.length === 0)
    problems.push(problem('wrong-type', path, { expected: AXES, got: 'nothing' }));
  return { axes, problems };
}

/** Parts and joints are left to the reading of the kits: only the base knows what may be changed in a part. */
const pieceShape = headSchema
  .omit({ kit: true })
  .partial()
  .extend({ parts: z.record(z.string(), z.unknown()).optional(), joints: z.array(z.unknown()).optional() });

function pieceProblems(piece: unknown, path: KeyPath, what: string): readonly Problem[] {
  if (!isMap(piece)) {
    const expected = 'what this value changes in the kit, such as { parts: { volume: { value: 500k } } }';
    return [problem('wrong-type', path, { expected, got: typeName(piece) })];
  }
  const { error } = pieceShape.safeParse(piece);
  return error ? problemsOf(error.issues, { schema: pieceShape, value: piece, path, what }) : [];
}

/** Of each excluded combination the axes and values, which must be those of the matrix. */
function readExcept(written: unknown, axes: readonly Axis[], path: KeyPath) {
  const problems: Problem[] = [];
  const list = Array.isArray(written) ? (written as readonly unknown[]) : [];
  const except = list.map((one, i) => {
    const entries = Object.entries(isMap(one) ? one : {}).map(([name, given]) => {
      const at = [...path, i, name];
      const values = (Array.isArray(given) ? given : [given]).map(String);
      const axis = axes.find((other) => other.name === name);
      if (!axis) problems.push(unknownAxis(name, axes, at, 'key'));
      for (const [k, value] of values.entries()) {
        const allowed = [...(axis?.values.keys() ?? [])];
        if (!axis || allowed.includes(value)) continue;
        const near = closestName(value, allowed);
        const detail = { axis: name, got: value, allowed, ...(near === undefined ? {} : { nearest: near }) };
        problems.push(problem('unknown-axis-value', Array.isArray(given) ? [...at, k] : at, detail));
      }
      return [name, values] as const;
    });
    return Object.fromEntries(entries);
  });
  return { except, problems };
}

function unknownAxis(got: string, axes: readonly Axis[], path: KeyPath, at: 'key' | 'value'): Problem {
  const allowed = axes.map(({ name }) => name);
  const near = closestName(got, allowed);
  return problem(
    'unknown-axis',
    path,
    { got, allowed, ...(near === undefined ? {} : { nearest: near }) },
    at,
  );
}

/** What is wrong with the names of axes in ids and titles. */
function patternProblems({ path, kit, written, axes }: Family): Problem[] {
  const names = new Set(axes.map(({ name }) => name));
  const namedIn = (text: unknown): readonly string[] =>
    typeof text === 'string' ? [...text.matchAll(PLACEHOLDER)].map((found) => found[1] ?? '') : [];
  const unknown = (['kit', ...HEAD] as const).flatMap((key) =>
    namedIn(written[key])
      .filter((name) => !names.has(name))
      .map((name) => unknownAxis(name, axes, [...path, key], 'value')),
  );
  const missing = axes
    .filter(({ name, values }) => values.size > 1 && !namedIn(kit).includes(name))
    .map(({ name }) => problem('axis-not-in-id', [...path, 'kit'], { axis: name, pattern: kit }));
  // The name that was meant is not missing as well.
  const inId = unknown.some((found) => found.path.at(-1) === 'kit');
  return inId ? unknown : [...unknown, ...missing];
}

/** Every combination of the matrix but those excluded, the last axis changing fastest. */
function membersOf({ axes, except }: Family): readonly Values[] {
  const all = axes.reduce<readonly Values[]>(
    (some, { name, values }) =>
      some.flatMap((before) => [...values.keys()].map((value) => ({ ...before, [name]: value }))),
    [{}],
  );
  const isExcluded = (member: Values): boolean =>
    except.some((one) => Object.entries(one).every(([name, values]) => values.includes(member[name] ?? '')));
  return all.filter((member) => !isExcluded(member));
}

const filled = (pattern: string, values: Values): string =>
  pattern.replace(PLACEHOLDER, (_, name: string) => values[name] ?? '');

export const memberId = ({ kit }: Family, values: Values): string => filled(kit, values);

/** One bad id of a family is told, as the others are most often bad in the same way. */
function idProblems(family: Family, members: readonly Values[]): readonly Problem[] {
  const path = [...family.path, 'kit'];
  const ids = members.map((values) => memberId(family, values));
  const bad = ids.find((id) => id.length > ID_LONGEST || !ID.test(id));
  return bad === undefined ? [] : [problem('bad-member-id', path, { id: bad, pattern: family.kit })];
}

/** Two values of two axes that some member has both of must not contradict each other. */
function axisProblems({ axes }: Family, members: readonly Values[]): readonly Problem[] {
  return axes.flatMap((first, i) =>
    axes.slice(i + 1).flatMap((second) => {
      const together = new Set(members.map((one) => JSON.stringify([one[first.name], one[second.name]])));
      return [...first.values].flatMap(([one, piece]) =>
        [...second.values].flatMap(([other, against]) =>
          together.has(JSON.stringify([one, other]))
            ? contradictions(piece, against).map(({ path, ...detail }) =>
                problem('axes-contradict', path, {
                  ...detail,
                  first: `${first.name}: ${one}`,
                  second: `${second.name}: ${other}`,
                }),
              )
            : [],
        ),
      );
    }),
  );
}

/** The description of a member, which extends the family's base, and where its pieces are written. */
export function describeMember(family: Family, values: Values): Composed {
  const { written, path, axes } = family;
  const head = HEAD.flatMap((key) => {
    const text = written[key];
    return typeof text === 'string' ? [[key, filled(text, values)] as const] : [];
  });
  const own = { value: { kit: memberId(family, values), ...Object.fromEntries(head) }, path };
  const pieces = axes.flatMap(({ name, values: all }) => all.get(values[name] ?? '') ?? []);
  return compose([own, ...pieces]);
}
