/**
 * A kit's parts against the workshop's list: a code stands for the values of its item, and a value without a code is looked for in the
 * list. What is not in stock gives way to what replaces it. Pure: descriptions in, descriptions out.
 */
import { closestName } from '../common/nearest.ts';
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import { remembered } from '../common/remembered.ts';
import { is, type Kind, kinds, type Part } from '../parts/index.ts';
import type { PartBase } from '../parts/kind.ts';
import { valueNumber, valueWords } from '../parts/value-words.ts';
import { isMap, type Written } from './chain.ts';
import { isKind, readPart } from './read-part.ts';
import {
  availableFor,
  isFaulty,
  itemOf,
  ownFields,
  type PartsList,
  type StockItem,
  type Substitution,
} from './stock.ts';

interface MatchedParts {
  /** Described with the values of their items, and with their codes. */
  readonly parts: Written;
  /** Names of parts that nothing can be said of, as their code leads nowhere. */
  readonly opaque: readonly string[];
  readonly problems: readonly Problem[];
  readonly substitutions: readonly Substitution[];
}

type Common = Pick<PartBase, 'leftHanded'>;
type Found = Omit<Partial<MatchedParts>, 'parts' | 'opaque'> & { readonly written?: Written };

/** @param list absent where the kit has none; a code is then a problem, and a value is taken as it is */
export function matchParts(written: Written, list: PartsList | undefined, common: Common): MatchedParts {
  const parts: Record<string, unknown> = {};
  const opaque: string[] = [];
  const problems: Problem[] = [];
  const substitutions: Substitution[] = [];
  for (const [name, described] of Object.entries(written)) {
    const found = matchPart(name, described, list, common);
    problems.push(...(found.problems ?? []));
    substitutions.push(...(found.substitutions ?? []));
    // Defined, not assigned: a part called `__proto__` must be a part.
    if (found.written !== undefined || !isMap(described))
      Object.defineProperty(parts, name, {
        value: found.written ?? described,
        enumerable: true,
        configurable: true,
        writable: true,
      });
    else opaque.push(name);
  }
  return { parts, opaque, problems, substitutions };
}

function matchPart(name: string, described: unknown, list: PartsList | undefined, common: Common): Found {
  if (!isMap(described)) return {};
  const { kind, code } = described;
  // What is wrong with either is told where the part is read.
  if (typeof kind !== 'string' || !isKind(kind)) return { written: described };
  if (typeof code === 'string' && code.trim() !== '') return byCode({ name, kind, described, list, common });
  if (code !== undefined || !list) return { written: described };
  return byValue({ name, kind, described, list, common });
}

interface Asked {
  readonly name: string;
  readonly kind: Kind;
  readonly described: Written;
  readonly list: PartsList | undefined;
  readonly common: Common;
}

function byCode(asked: Asked): Found {
  const { name, kind, described, list } = asked;
  const code = String(described.code).trim();
  const path = ['parts', name, 'code'];
  if (!list) return { problems: [problem('no-parts-list', path, { code })] };
  const item = itemOf(list, code);
  if (!item) {
    // A list with errors may well have it.
    if (isFaulty(list)) return {};
    const nearest = closestName(
      code,
      list.items.filter((one) => one.kind === kind).map((one) => one.code),
    );
    const detail = { code, file: list.file, ...(nearest === undefined ? {} : { nearest }) };
    return { problems: [problem('unknown-code', path, detail)] };
  }
  if (item.kind !== kind)
    return {
      problems: [problem('code-of-other-kind', path, { part: name, kind, code, listed: item.kind })],
    };
  const problems = contradictions(asked, item);
  const found = taken({ ...asked, list }, item, path);
  return { ...found, problems: [...problems, ...(found.problems ?? [])] };
}

/** Values written beside a code that are not its item's. */
function contradictions({ name, kind, described, common, list }: Asked, item: StockItem): readonly Problem[] {
  return Object.keys(described).flatMap((field) => {
    if (ownFields.includes(field) || (isOptional(kind, field) && !Object.hasOwn(item.fields, field)))
      return [];
    const own = keyOf(kind, item.fields, common);
    const changed = keyOf(kind, { ...item.fields, [field]: described[field] }, common);
    // A value that cannot be read is told of where the part is read.
    if (own === undefined || changed === undefined || own === changed) return [];
    const listed = item.fields[field];
    const detail = {
      field,
      got: inWords(described[field]),
      code: item.code,
      ...(listed === undefined ? {} : { listed: inWords(listed) }),
      file: list?.file ?? '',
      line: item.place.line,
    };
    return [problem('code-contradicts', ['parts', name, field], detail)];
  });
}

const inWords = (value: unknown): string =>
  typeof value === 'object' && value !== null ? JSON.stringify(value) : String(value);

function byValue(asked: Asked & { readonly list: PartsList }): Found {
  const { name, described, list } = asked;
  const fitting = itemsFor(asked);
  const item =
    fitting.find(({ inStock }) => inStock) ??
    fitting.find((one) => availableFor(list, one) !== undefined) ??
    fitting[0];
  if (!item) return { written: described };
  return taken(asked, item, Object.hasOwn(described, 'value') ? ['parts', name, 'value'] : ['parts', name]);
}

/** The part as the item makes it, or as what replaces that does. */
function taken(
  { name, kind, described, list }: Asked & { readonly list: PartsList },
  item: StockItem,
  path: KeyPath,
): Found {
  const used = availableFor(list, item);
  const named = ({ code, part }: StockItem) => {
    const value = valueWords(part);
    return { code, ...(value === undefined ? {} : { value }) };
  };
  if (used === item || !used) {
    const written = { ...item.fields, ...described, code: item.code };
    const { replacedBy: by } = item;
    const out = { part: name, listed: named(item), ...(by === undefined ? {} : { by }) };
    const nearest = nearestInStock(list, item.part);
    const detail = { ...out, nearest, file: list.file, line: item.place.line };
    const at = path.length > 2 ? 'value' : 'key';
    // In a list with errors the replacement may be what is at error.
    if (used || isFaulty(list)) return { written };
    return { written, problems: [problem('out-of-stock', path, detail, at)] };
  }
  // Of what the item asked for has, nothing is left; nor of a tolerance, which the replacement need not keep.
  const kept = Object.entries(described).filter(
    ([field]) => !Object.hasOwn(item.fields, field) && !isTolerance(field),
  );
  return {
    written: { ...Object.fromEntries(kept), ...used.fields, kind, code: used.code },
    substitutions: [{ part: name, path, from: named(item), to: named(used) }],
  };
}

/** Items that a part without a code can be: of its kind, with all that it says, and alike in what makes another part of it. */
function itemsFor({
  kind,
  described,
  list,
  common,
}: Asked & { readonly list: PartsList }): readonly StockItem[] {
  const written = Object.keys(described).filter((field) => !ownFields.includes(field));
  const candidates = list.items.filter((item) => item.kind === kind);
  const [first] = candidates;
  if (!first) return [];
  const pickup = is(first.part, 'pickup');
  // Of a pickup only what is written tells which it is.
  if (pickup && written.length === 0) return [];
  const counts = (field: string): boolean => written.includes(field) || !(pickup || isOptional(kind, field));
  const only = (fields: Written): Written =>
    Object.fromEntries(Object.entries(fields).filter(([field]) => counts(field)));
  const wanted = keyOf(kind, only(described), common);
  return wanted === undefined
    ? []
    : candidates.filter((item) => itemKey(item, only(item.fields), common) === wanted);
}

/** Of an item by the fields that count and the hand: every kit asks for the same ones. */
const keysOfItem = remembered((_item: StockItem) => new Map<string, string | undefined>());

function itemKey(item: StockItem, fields: Written, common: Common): string | undefined {
  const keys = keysOfItem(item);
  const asked = `${common.leftHanded === true} ${Object.keys(fields).join()}`;
  if (!keys.has(asked)) keys.set(asked, keyOf(item.kind, fields, common));
  return keys.get(asked);
}

/** Whether a list names an item of the part's kind, so that the part should be in it. */
export const isLookedUp = ({ items }: PartsList, part: Part): boolean =>
  items.some(({ kind }) => kind === part.kind);

/** Some of the same kind in stock, the nearest value first: `470 kΩ (R-470K)`. */
export function nearestInStock({ items }: PartsList, part: Part): readonly string[] {
  const wanted = valueNumber(part);
  const distance = (item: StockItem): number => {
    const value = valueNumber(item.part);
    return wanted === undefined || value === undefined ? 0 : Math.abs(Math.log(value / wanted));
  };
  return items
    .filter((item) => item.kind === part.kind && item.inStock)
    .map((item) => ({ item, off: distance(item) }))
    .sort((a, b) => a.off - b.off)
    .slice(0, MOST_NEAREST)
    .map(({ item: { code, part: its } }) => {
      const value = valueWords(its);
      return value === undefined ? code : `${value} (${code})`;
    });
}
const MOST_NEAREST = 3;

/** How exact a value is, which a part that does not say leaves open. */
const isTolerance = (field: string): boolean => /(?:^|-)tolerance$/.test(field);
/** A field that may differ where one of the two does not say: the log's midpoint is hardly ever measured. */
const isOptional = (kind: Kind, field: string): boolean =>
  isTolerance(field) || field === 'midpoint' || kinds[kind].is.some((trait) => trait === 'pickup');

/**
 * All that a description says of what is bought, as one text: two parts are alike where it is the same. What the kit alone says of a part
 * does not count. Absent for a description that cannot be read.
 */
function keyOf(kind: Kind, fields: Written, common: Common): string | undefined {
  const bought = Object.fromEntries(Object.entries(fields).filter(([field]) => !ownFields.includes(field)));
  const { part, problems } = readPart('item', { kind, ...bought }, common);
  if (!part || problems.length > 0) return undefined;
  return JSON.stringify(part, (key, value: unknown) => {
    if (key === 'label' || key === 'role') return undefined;
    if (isMap(value) && 'from' in value && 'value' in value) return rounded(value.value);
    return value;
  });
}

/** Without what rounding leaves of a written value. */
const rounded = (value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(12)) : value;
