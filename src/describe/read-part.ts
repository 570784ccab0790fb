/** One part of the description to a typed part. */
import { closestName } from '../common/nearest.ts';
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import { type Kind, kinds, type Part } from '../parts/index.ts';
import type { FieldIssue, PartBase } from '../parts/kind.ts';
import { problemsOf, typeName } from './issues.ts';
import { partShapes } from './schema.ts';
import { meantBy, unsupported } from './synonyms.ts';

interface ReadPart {
  /** Absent when the description does not say enough to build one. */
  readonly part?: Part;
  readonly problems: readonly Problem[];
}

const kindNames = Object.keys(kinds) as readonly Kind[];
export const isKind = (text: string): text is Kind => Object.hasOwn(kinds, text);
const isMap = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** @param common what the kit says of all its parts */
export function readPart(name: string, value: unknown, common: Pick<PartBase, 'leftHanded'> = {}): ReadPart {
  const path = ['parts', name];
  if (!isMap(value)) {
    const expected = 'a part, such as { kind: pot, value: 500k }';
    return { problems: [problem('wrong-type', path, { expected, got: typeName(value) })] };
  }
  const kind = value.kind;
  if (typeof kind === 'string' && isKind(kind)) return readFields({ name, ...common }, kind, value);
  return { problems: [kindProblem(path, `“${name}”`, value)] };
}

/** What is wrong with the kind of what is written at a path, which is none that there is. */
export function kindProblem(path: KeyPath, what: string, value: Readonly<Record<string, unknown>>): Problem {
  const kind = value.kind;
  if (kind === undefined) {
    const misspelt = Object.keys(value).find((key) => closestName(key, ['kind']) !== undefined);
    if (misspelt === undefined) return problem('missing-key', path, { key: 'kind', what }, 'key');
    return problem(
      'unknown-key',
      [...path, misspelt],
      { key: misspelt, nearest: 'kind', allowed: ['kind', 'label'] },
      'key',
    );
  }
  if (typeof kind !== 'string')
    return problem('wrong-type', [...path, 'kind'], {
      expected: `a kind: ${kindNames.join(', ')}`,
      got: typeName(kind),
    });
  const meant = meantBy(kind, kindNames);
  const known = unsupported(kind);
  if (known === 'missing' || (known === 'switch' && meant === undefined))
    return problem('unsupported-kind', [...path, 'kind'], {
      got: kind,
      allowed: kindNames,
      isSwitch: known === 'switch',
    });
  return problem('bad-choice', [...path, 'kind'], {
    got: kind,
    allowed: kindNames,
    ...(meant === undefined ? {} : { nearest: meant }),
  });
}

type Common = Pick<PartBase, 'name' | 'leftHanded'>;

function readFields(common: Common, kind: Kind, value: Readonly<Record<string, unknown>>): ReadPart {
  const { name } = common;
  const schema = partShapes[kind];
  const read = schema.safeParse(value);
  if (read.success) {
    const validate = issuesOfPart(kind, read.data).map(({ path, why, remedy }) =>
      problem('bad-value', ['parts', name, ...path], { why, remedy }),
    );
    return validate.length > 0
      ? { problems: validate }
      : { part: build(common, kind, read.data), problems: [] };
  }
  const what = `“${name}” (${kinds[kind].what})`;
  const problems = problemsOf(read.error.issues, { schema, value, path: ['parts', name], what });
  // A mistake in an optional field leaves the part what it is, and its joints can still be checked.
  const faulty = new Set(read.error.issues.flatMap((issue) => issue.path[0] ?? keysOf(issue)));
  const rest = Object.fromEntries(Object.entries(value).filter(([key]) => !faulty.has(key)));
  const again = schema.safeParse(rest);
  return again.success && issuesOfPart(kind, again.data).length === 0
    ? { part: build(common, kind, again.data), problems }
    : { problems };
}

const keysOf = (issue: { readonly code: string; readonly keys?: readonly string[] }): readonly string[] =>
  issue.keys ?? [];

/** What a kind's `build` is to one who knows only that it belongs to the kind; the tables guarantee the rest. */
type Build = (base: PartBase, written: object) => Part;

const issuesOfPart = (kind: Kind, written: object): readonly FieldIssue[] =>
  (kinds[kind] as { readonly validate?: (written: object) => readonly FieldIssue[] }).validate?.(written) ??
  [];

interface WrittenPart {
  readonly label?: string | undefined;
  readonly code?: string | undefined;
}

function build(common: Common, kind: Kind, written: WrittenPart): Part {
  const code = written.code === undefined ? {} : { code: written.code };
  const base = { kind, ...common, label: written.label ?? labelOf(common.name), ...code };
  return (kinds[kind].build as unknown as Build)(base, written);
}

/** `tone-cap` reads `Tone cap` on the drawing. */
function labelOf(name: string): string {
  const words = name.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
