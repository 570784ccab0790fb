/** Where each value of a part comes from: the lines it was written in, along the chain of bases, or a default. */
import { closestName } from '../common/nearest.ts';
import { type Problem, problem, type SourceLocation } from '../common/problem.ts';
import type { Part } from '../parts/index.ts';
import { isMap, type Layer } from './chain.ts';
import type { Kit } from './kit.ts';
import { type Merged, merge, type Piece } from './merge.ts';
import { partShapes } from './schema.ts';
import { itemOf, type StockItem } from './stock.ts';

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
 * @param kit the kit as it was read, which knows its parts list
 * @returns a problem when no part has the name
 */
export function explainPart(
  layers: readonly Layer[],
  name: string,
  part: Part | undefined,
  { list, substitutions = [] }: Pick<Kit, 'list' | 'substitutions'> = {},
): ExplainedPart | Problem {
  const { parts, joints } = merge(layers);
  const merged = parts.get(name);
  if (!merged) {
    const allowed = [...parts.keys()];
    const nearest = closestName(name, allowed);
    const detail = { part: name, allowed, ...(nearest === undefined ? {} : { nearest }) };
    return problem('unknown-part', ['explain'], detail);
  }
  const item = part?.code === undefined || !list ? undefined : itemOf(list, part.code);
  const replaced = substitutions.some((one) => one.part === name);
  return {
    name,
    files: layers.map(({ source }) => source.file).reverse(),
    fields: fieldNames(merged).flatMap((field) => explainField(field, merged, { part, item, replaced })),
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

/** The part as it was read, its item of the list, and whether that takes another one's place. */
interface Found {
  readonly part: Part | undefined;
  readonly item: StockItem | undefined;
  readonly replaced: boolean;
}

function explainField(
  field: string,
  { fields }: Merged,
  { part, item, replaced }: Found,
): readonly ExplainedField[] {
  const [last, ...before] = [...(fields.get(field) ?? [])].reverse();
  const listed = item && fromList(field, item);
  // What the kit writes itself holds, unless another item takes the place of the one it asks for.
  if (listed && (!last || replaced))
    return [{ field, ...listed, before: last ? [last, ...before].map(writtenValue) : [] }];
  if (last) return [{ field, ...writtenValue(last), before: before.map(writtenValue) }];
  const value = part && defaultOf(part, field);
  return value === undefined ? [] : [{ field, value, before: [] }];
}

/** What the list says in a field: the code that a part got by its value too. */
function fromList(field: string, item: StockItem): WrittenValue | undefined {
  const place = item.places.get(field);
  const value = field === 'code' ? item.code : item.fields[field];
  return place && value !== undefined && field !== 'kind' ? { value: inWords(value), place } : undefined;
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
