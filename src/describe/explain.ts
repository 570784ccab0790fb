/** Where each value of a part comes from: the lines it was written in, along the chain of bases, or a default. */
import { closestName } from '../common/nearest.ts';
import { type Problem, problem, type SourceLocation } from '../common/problem.ts';
import type { Part } from '../parts/index.ts';
import { isMap, type Layer } from './chain.ts';
import { type Merged, merge, type Piece } from './merge.ts';
import { partShapes } from './schema.ts';

/** A value as it is written, and its place; `line` 0 in a script, whose lines are not known. */
interface WrittenValue {
  readonly value: string;
  readonly place: SourceLocation;
}

interface ExplainedField {
  readonly field: string;
  /** The value that holds, in SI units where it is a default. */
  readonly value: string;
  /** Absent for a default. */
  readonly place?: SourceLocation;
  /** What it replaces, the nearest base first. */
  readonly before: readonly WrittenValue[];
}

export interface ExplainedPart {
  readonly name: string;
  /** The kit's own file, then its bases. */
  readonly files: readonly string[];
  readonly fields: readonly ExplainedField[];
  readonly joints: readonly WrittenValue[];
}

/**
 * @param part the part as it was read, which knows its defaults; absent where it is faulty
 * @returns a problem when no part has the name
 */
export function explainPart(
  layers: readonly Layer[],
  name: string,
  part: Part | undefined,
): ExplainedPart | Problem {
  const { parts, joints } = merge(layers);
  const merged = parts.get(name);
  if (!merged) {
    const allowed = [...parts.keys()];
    const nearest = closestName(name, allowed);
    const detail = { part: name, allowed, ...(nearest === undefined ? {} : { nearest }) };
    return problem('unknown-part', ['explain'], detail);
  }
  return {
    name,
    files: layers.map(({ source }) => source.file).reverse(),
    fields: fieldNames(merged).flatMap((field) => explainField(field, merged, part)),
    joints: joints.flatMap((joint) =>
      joint.ends?.some((end) => end.startsWith(`${name}.`)) ? [writtenValue(joint)] : [],
    ),
  };
}

/** The fields of the part's kind in the order of its description, and what else is written. */
function fieldNames({ value, fields }: Merged): readonly string[] {
  const kind = isMap(value) ? value.kind : undefined;
  const shapes: Readonly<Record<string, { readonly shape: object }>> = partShapes;
  const shape = typeof kind === 'string' && Object.hasOwn(shapes, kind) ? shapes[kind]?.shape : undefined;
  return [...new Set([...Object.keys(shape ?? {}), ...fields.keys()])];
}

function explainField(field: string, { fields }: Merged, part: Part | undefined): readonly ExplainedField[] {
  const [last, ...before] = [...(fields.get(field) ?? [])].reverse();
  if (last) return [{ field, ...writtenValue(last), before: before.map(writtenValue) }];
  const value = part && defaultOf(part, field);
  return value === undefined ? [] : [{ field, value, before: [] }];
}

const writtenValue = ({ source, path, value }: Piece): WrittenValue => {
  // The place depends on the path alone; any code will do.
  const place = source.placeOf(problem('bad-value', path, { why: '', remedy: '' }));
  return { value: inWords(value), place: source.exact ? place : { ...place, line: 0 } };
};

/** What a part has for a field that is not written; absent where it has nothing. */
function defaultOf(part: Part, field: string): string | undefined {
  const name = field.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
  const found = Object.entries(part).find(([key]) => key === name)?.[1];
  return found === undefined ? undefined : inWords(found);
}

/** A value on one line: a quantity without its origin, a map or list by its members. */
function inWords(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inWords).join(', ')}]`;
  if (!isMap(value)) return String(value ?? '');
  if ('from' in value && 'value' in value) return inWords(value.value);
  return `{ ${Object.entries(value)
    .map(([key, its]) => `${key}: ${inWords(its)}`)
    .join(', ')} }`;
}
