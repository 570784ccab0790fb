/** From zod's issues to problems of our own; none of zod's words reach the user. */
import { z } from 'zod';
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import { decimalCommas } from './decimal-comma.ts';
import { meantBy } from './synonyms.ts';
import { colours, meantColour } from './words.ts';

type Issue = z.core.$ZodIssue;

/** What the issues are about: the schema that found them, the value it read, and where that value stands. */
interface Context {
  readonly schema: z.ZodType;
  readonly value: unknown;
  readonly path: KeyPath;
  /** In words: `the kit`, `“volume” (pot)`. */
  readonly what: string;
}

export function problemsOf(issues: readonly Issue[], context: Context): readonly Problem[] {
  const unknown = issues.flatMap((issue) => unknownKeys(issue, context));
  const commas = decimalCommas(
    unknown.map((found) => found.path),
    context.value,
    context.path,
  );
  // A misspelt key is one problem, not two: the key it was meant to be is not reported as missing as well.
  const guessed = new Set(unknown.map((found) => `${found.inside}.${found.nearest}`));
  return issues.flatMap((issue) => {
    // The part of a number before the comma is not a value.
    if (commas.halves.has(joined(steps(issue)))) return [];
    if (issue.code === 'unrecognized_keys')
      return unknownKeys(issue, context).map((found) => commas.at.get(joined(found.path)) ?? found.problem);
    const missing = missingKey(issue, context);
    if (missing) return guessed.has(`${missing.inside}.${missing.key}`) ? [] : [missing.problem];
    const within = issuesWithin(issue, context);
    if (within.length > 0) return problemsOf(within, context);
    return [translate(issue, context)];
  });
}

/**
 * Of a union what is wrong deeper down, where the value is of the type of one choice: of a list that is allowed, its items are to
 * blame.
 */
function issuesWithin(issue: Issue, { value }: Context): readonly Issue[] {
  if (issue.code !== 'invalid_union' || !Array.isArray(valueAt(value, steps(issue)))) return [];
  const deeper = issue.errors.filter((some) => some.length > 0 && some.every(({ path }) => path.length > 0));
  const [only, ...more] = deeper;
  return only && more.length === 0
    ? only.map((one) => ({ ...one, path: [...issue.path, ...one.path] }) as Issue)
    : [];
}

const joined = (path: KeyPath): string => path.join('.');
const steps = (issue: Issue): KeyPath =>
  issue.path.map((step) => (typeof step === 'number' ? step : String(step)));
const isMap = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value at a path, going by own keys only. */
function valueAt(value: unknown, path: KeyPath): unknown {
  return path.reduce<unknown>(
    (at, step) =>
      typeof at === 'object' && at !== null && Object.hasOwn(at, step)
        ? (at as Readonly<Record<string | number, unknown>>)[step]
        : undefined,
    value,
  );
}

/** The keys a schema allows at a path. */
function allowedAt(schema: z.core.$ZodType, path: KeyPath): readonly string[] {
  if (schema instanceof z.ZodOptional) return allowedAt(schema.unwrap(), path);
  const [step, ...rest] = path;
  if (schema instanceof z.ZodArray) return allowedAt(schema.element, rest);
  if (!(schema instanceof z.ZodObject)) return [];
  if (step === undefined) return Object.keys(schema.shape);
  const inner: z.core.$ZodType | undefined = Object.hasOwn(schema.shape, step)
    ? schema.shape[step]
    : undefined;
  return inner ? allowedAt(inner, rest) : [];
}

/** The values a schema allows at a path, where it is a choice of some. */
function choicesAt(schema: z.core.$ZodType, path: KeyPath): readonly string[] {
  if (schema instanceof z.ZodOptional) return choicesAt(schema.unwrap(), path);
  const [step, ...rest] = path;
  if (step === undefined) return schema instanceof z.ZodEnum ? schema.options.map(String) : [];
  if (schema instanceof z.ZodArray) return choicesAt(schema.element, rest);
  const inner: z.core.$ZodType | undefined =
    schema instanceof z.ZodObject && Object.hasOwn(schema.shape, step) ? schema.shape[step] : undefined;
  return inner ? choicesAt(inner, rest) : [];
}

function unknownKeys(issue: Issue, { schema, path }: Context) {
  if (issue.code !== 'unrecognized_keys') return [];
  const inside = steps(issue);
  const allowed = allowedAt(schema, inside);
  return issue.keys.map((key) => {
    const meant = meantBy(key, allowed);
    const detail = { key, allowed, ...(meant === undefined ? {} : { nearest: meant }) };
    return {
      path: [...inside, key],
      inside: joined(inside),
      nearest: meant,
      problem: problem('unknown-key', [...path, ...inside, key], detail, 'key'),
    };
  });
}

function missingKey(issue: Issue, { schema, value, path, what }: Context) {
  const at = steps(issue);
  const key = at.at(-1);
  const inside = at.slice(0, -1);
  if (key === undefined || !isMap(valueAt(value, inside)) || valueAt(value, at) !== undefined)
    return undefined;
  const last = inside.at(-1);
  const name =
    last === undefined
      ? what
      : typeof last === 'number'
        ? `item ${last + 1} of “${inside.at(-2)}”`
        : `“${last}”`;
  const allowed = choicesAt(schema, at);
  const detail = { key: String(key), what: name, ...(allowed.length > 0 ? { allowed } : {}) };
  const found = problem('missing-key', [...path, ...inside], detail, 'key');
  return { inside: joined(inside), key, problem: found };
}

/** What a person calls a value's type. */
export function typeName(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  switch (typeof value) {
    case 'string':
      return 'text';
    case 'bigint':
      return 'a number';
    case 'number':
      if (Number.isNaN(value)) return 'a value that is not a number';
      return Number.isFinite(value) ? 'a number' : 'a number that is too large';
    case 'boolean':
      return `${value} (a yes/no value)`;
    case 'object':
      return 'keys and values';
    default:
      return 'a piece of script';
  }
}

/** A value as the user wrote it, as far as a short text can show it. */
const shown = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
    ? String(value)
    : typeName(value);

const EXPECTED: Readonly<Record<string, string>> = {
  string: 'text (in quotes if it looks like a number)',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  tuple: 'a list',
  array: 'a list',
  object: 'keys and values',
  record: 'keys and values',
};

/** What a field itself says it expects; zod's own messages never begin so. */
const ownWords = (issue: Issue): string | undefined => /^expected (.+)$/.exec(issue.message)?.[1];

/** A map by its keys, where only some are allowed. */
function mapWords(
  { expected }: z.core.$ZodIssueInvalidType,
  { schema }: Context,
  at: KeyPath,
): string | undefined {
  const keys = expected === 'object' ? allowedAt(schema, at) : [];
  return keys.length === 0
    ? undefined
    : `keys and values, such as { ${keys.map((key) => `${key}: …`).join(', ')} }`;
}

/** Problems that go by the field, whatever is wrong with it. */
function byField(
  field: string | number | undefined,
  got: string,
): readonly ['bad-kit-id' | 'bad-colour', string] | undefined {
  if (field === 'kit') return ['bad-kit-id', got];
  return field === 'colour' ? ['bad-colour', got] : undefined;
}

function translate(issue: Issue, context: Context): Problem {
  const at = steps(issue);
  const path = [...context.path, ...at];
  const written = valueAt(context.value, at);
  const got = shown(written);
  const wrongType = (expected: string): Problem =>
    problem('wrong-type', path, { expected, got: typeName(written) });
  if (issue.code === 'invalid_type')
    return wrongType(
      ownWords(issue) ?? mapWords(issue, context, at) ?? EXPECTED[issue.expected] ?? 'another kind of value',
    );
  // A field that says itself what to do goes before what fields of its name usually want.
  if (issue.code === 'custom' && typeof issue.params?.remedy === 'string')
    return size(path, `“${got}”: ${issue.message}`, issue.params.remedy);
  const special = typeof written === 'string' ? byField(at.at(-1), got) : undefined;
  if (special?.[0] === 'bad-kit-id') return problem('bad-kit-id', path, { got });
  if (special?.[0] === 'bad-colour') {
    const meant = meantColour(got);
    return problem('bad-colour', path, { got, allowed: colours, ...(meant ? { nearest: meant } : {}) });
  }
  const empty = (): Problem =>
    size(path, `${quoted(at.at(-1))} is empty`, 'Enter a value, or remove the key if it is not required.');
  // Of a title and a label only a visible character is required.
  if (issue.code === 'invalid_format' && issue.pattern === String(/\S/)) return empty();
  switch (issue.code) {
    case 'custom':
      return quantity(issue, path, got);
    case 'invalid_value':
      return choice(path, written, issue.values.map(String));
    case 'invalid_union':
      return union(issue, path, written);
    case 'too_small':
      if (issue.origin === 'number')
        return size(path, `${got} is too small`, `Write at least ${issue.minimum}.`);
      return Number(issue.minimum) > 1
        ? size(path, `${quoted(at.at(-1))} is too short`, `Write at least ${issue.minimum} values.`)
        : empty();
    case 'too_big':
      if (issue.origin === 'number')
        return size(path, `${got} is too large`, `Write at most ${issue.maximum}.`);
      return issue.origin === 'array'
        ? size(path, `${quoted(at.at(-1))} is too long`, `Write at most ${issue.maximum} values.`)
        : size(path, `${quoted(at.at(-1))} is longer than ${issue.maximum} characters`, 'Shorten it.');
    default:
      return size(path, `${quoted(at.at(-1))} is not valid`, 'See the README for the format.');
  }
}

const quoted = (field: string | number | undefined): string =>
  field === undefined ? 'this' : typeof field === 'number' ? `item ${field + 1}` : `“${field}”`;
const size = (path: KeyPath, why: string, remedy: string): Problem =>
  problem('bad-value', path, { why, remedy });

function quantity(issue: z.core.$ZodIssueCustom, path: KeyPath, got: string): Problem {
  const { quantity: of, examples } = issue.params ?? {};
  const comma = got.includes(',') ? '; the decimal sign is a point, and thousands are written with k' : '';
  const detail = { got, why: `${issue.message}${comma}`, examples: String(examples) };
  return problem(of === 'length' ? 'bad-length' : 'bad-quantity', path, detail);
}

function choice(path: KeyPath, written: unknown, allowed: readonly string[]): Problem {
  if (typeof written === 'object')
    return problem('wrong-type', path, { expected: `one of ${allowed.join(', ')}`, got: typeName(written) });
  const got = shown(written);
  const meant = meantBy(got, allowed);
  return problem('bad-choice', path, { got, allowed, ...(meant === undefined ? {} : { nearest: meant }) });
}

/** A union is either a choice of fixed values or of types; the fields' own words win where they give any. */
function union(issue: z.core.$ZodIssueInvalidUnion, path: KeyPath, written: unknown): Problem {
  const inner = issue.errors.flat();
  const values = inner.flatMap((found) => (found.code === 'invalid_value' ? found.values.map(String) : []));
  if (values.length > 0) return choice(path, written, values);
  const types = inner.flatMap((found) =>
    found.code === 'invalid_type' ? [EXPECTED[found.expected] ?? ''] : [],
  );
  const expected = ownWords(issue) ?? [...new Set(types)].filter((type) => type !== '').join(' or ');
  return problem('wrong-type', path, {
    expected: expected || 'another kind of value',
    got: typeName(written),
  });
}
