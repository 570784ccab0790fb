/**
 * Changes to a description as it is written: parts and joints put in after the last, a part's value put in place of the
 * old one. Everything else stays byte for byte, comments, order, alignment and line ends included, because the text is
 * cut at offsets and never printed anew. Whoever calls reads the result again to be sure of it.
 */
import { isMap, isScalar, isSeq, type ParsedNode, parseDocument, type YAMLMap, type YAMLSeq } from 'yaml';
import type { JointKind } from './kit.ts';

export interface AddedPart {
  readonly name: string;
  /** Field by field, `kind` first. */
  readonly fields: Readonly<Record<string, string | number>>;
}

interface AddedJoint {
  readonly kind: JointKind;
  /** `PART.LUG > PART.LUG`. */
  readonly ends: string;
}

export interface KitEdit {
  readonly parts: readonly AddedPart[];
  readonly joints: readonly AddedJoint[];
  /** New values of parts that are there: as text, as the number a description may hold instead, and as the stock code it may name. */
  readonly values: readonly {
    readonly part: string;
    readonly text: string;
    readonly number: number;
    readonly code?: string;
  }[];
}

/** A piece of text put in at an offset, in place of `drop` characters. */
interface Cut {
  readonly at: number;
  readonly drop: number;
  readonly put: string;
}

/**
 * The description's text with the changes in it. A kit that extends another gets all of it in its own text, as a base is never
 * changed.
 *
 * @returns `undefined` when the text is laid out so that there is no place to put them, such as joints behind an alias
 */
export function editKit(text: string, file: string, edit: KitEdit): string | undefined {
  const root = parseDocument(text, { uniqueKeys: false, keepSourceTokens: true }).contents;
  if (!isMap(root)) return undefined;
  const json = /\.json$/i.test(file);
  const [parts, joints] = [root.get('parts', true), root.get('joints', true)];
  const extending = root.has('extends');
  const { parts: added, values, changes } = placesOf(edit, extending, parts);
  const cuts: Cut[] = [];
  for (const { part, text: value } of changes) {
    const described = isMap(parts) ? parts.get(part, true) : undefined;
    const put = isMap(described)
      ? append(text, described, [`${scalar('value', json)}: ${scalar(value, json)}`])
      : undefined;
    if (!put) return undefined;
    cuts.push(...put);
  }
  for (const value of values) {
    const cut = isMap(parts) ? newValue(text, parts, value, json) : undefined;
    if (!cut) return undefined;
    cuts.push(cut);
  }
  // A kit whose base has these lists may have none itself: then they are put in whole, at the end.
  const whole: string[] = [];
  if (extending && added.length > 0 && parts === undefined)
    whole.push(
      `${scalar('parts', json)}: { ${added.map((part) => partLine(part, json, undefined)).join(', ')} }`,
    );
  else if (added.length > 0) {
    const lines = isMap(parts) && added.map((part) => partLine(part, json, columnOf(text, parts)));
    const put = lines && append(text, parts, lines);
    if (!put) return undefined;
    cuts.push(...put);
  }
  if (extending && edit.joints.length > 0 && joints === undefined)
    whole.push(
      `${scalar('joints', json)}: [${edit.joints.map((joint) => jointLine(joint, json, true)).join(', ')}]`,
    );
  else if (edit.joints.length > 0) {
    const lines = isSeq(joints) && edit.joints.map((joint) => jointLine(joint, json, joints.flow === true));
    const put = lines && append(text, joints, lines);
    if (!put) return undefined;
    cuts.push(...put);
  }
  if (whole.length > 0) {
    const put = append(text, root, whole);
    if (!put) return undefined;
    cuts.push(...put);
  }
  return [...cuts]
    .map((cut, order) => ({ ...cut, order }))
    .sort((a, b) => b.at - a.at || b.order - a.order)
    .reduce((done, { at, drop, put }) => done.slice(0, at) + put + done.slice(at + drop), text);
}

/**
 * Where new values go. In a kit that extends another a part may have its value in the base alone: then it is put beside the
 * changes of that part that are there, or is written like a part.
 */
function placesOf(edit: KitEdit, extending: boolean, parts: unknown) {
  const own = (part: string): unknown => (isMap(parts) ? parts.get(part, true) : undefined);
  const hasValue = (described: unknown): boolean =>
    isMap(described) && (described.has('value') || described.has('code'));
  const elsewhere = edit.values.filter(({ part }) => extending && !hasValue(own(part)));
  const changes = elsewhere.filter(({ part }) => own(part) !== undefined);
  const inBase = elsewhere.filter((one) => !changes.includes(one));
  const asParts = inBase.map(({ part, text }) => ({ name: part, fields: { value: text } }));
  const values = edit.values.filter((one) => !elsewhere.includes(one));
  return { parts: [...asParts, ...edit.parts], values, changes };
}

/** The lines a person adds by hand, in the words of a TypeScript kit or of YAML. */
export function linesToAdd(edit: KitEdit, script: boolean): readonly string[] {
  const quote = (value: string | number) => (script && typeof value === 'string' ? `'${value}'` : value);
  const fields = (of: AddedPart) =>
    Object.entries(of.fields)
      .map(([key, value]) => `${key}: ${quote(value)}`)
      .join(', ');
  const value = ({ part, text }: KitEdit['values'][number]) =>
    `in parts, ${part}:  value: ${quote(text)}${script ? ',' : ''}`;
  return [
    ...edit.values.map(value),
    ...edit.parts.map((part) =>
      script
        ? `in parts:   '${part.name}': { ${fields(part)} },`
        : `in parts:   ${partLine(part, false, undefined)}`,
    ),
    ...edit.joints.map((joint) =>
      script
        ? `in joints:  { ${joint.kind}: '${joint.ends}' },`
        : `in joints:  ${jointLine(joint, false, false)}`,
    ),
  ];
}

/** Text that YAML takes for text as it is, even within braces. */
const PLAIN = /^[A-Za-z0-9](?:[A-Za-z0-9 ._>-]*[A-Za-z0-9])?$/;
/** Plain words that YAML does not read as text. */
const NO_TEXT = /^(?:true|false|null)$/i;

function scalar(value: string | number, json: boolean): string {
  if (typeof value === 'number') return String(value);
  return json || !PLAIN.test(value) || NO_TEXT.test(value) ? JSON.stringify(value) : value;
}

/** @param column where the other parts' descriptions begin, counted from their names; they stand in a column there */
function partLine({ name, fields }: AddedPart, json: boolean, column: number | undefined): string {
  const written = Object.entries(fields).map(
    ([key, value]) => `${scalar(key, json)}: ${scalar(value, json)}`,
  );
  return `${`${scalar(name, json)}: `.padEnd(column ?? 0)}{ ${written.join(', ')} }`;
}

function jointLine({ kind, ends }: AddedJoint, json: boolean, flow: boolean): string {
  const written = `${scalar(kind, json)}: ${scalar(ends, json)}`;
  return flow || json ? `{ ${written} }` : `- ${written}`;
}

function newValue(
  text: string,
  parts: YAMLMap,
  { part, text: written, number, code }: KitEdit['values'][number],
  json: boolean,
): Cut | undefined {
  const described = parts.get(part, true);
  // A code that stands in place of the value gives way to another one.
  const coded = isMap(described) && !described.has('value');
  const value = isMap(described) ? described.get(coded ? 'code' : 'value', true) : undefined;
  if (!isScalar(value) || !value.range || (coded && code === undefined)) return undefined;
  const [at, end] = value.range;
  if (coded) return { at, drop: end - at, put: scalar(code ?? '', json) };
  const quote = /^["']/.exec(text.slice(at, end))?.[0];
  const put = quote === undefined ? (json ? String(number) : written) : `${quote}${written}${quote}`;
  return { at, drop: end - at, put };
}

type Collection = YAMLMap | YAMLSeq;

/** A map's or list's items: where each begins and where its last character ends. */
interface Item {
  readonly start: number;
  readonly value: ParsedNode | null;
  readonly end: number;
}

function itemsOf(collection: Collection): readonly Item[] {
  if (isMap(collection))
    return (collection.items as readonly { key: ParsedNode; value: ParsedNode | null }[]).map(
      ({ key, value }) => ({ start: key.range[0], value, end: endOf(value ?? key) }),
    );
  const source = collection.srcToken;
  const dashes = source?.type === 'block-seq' ? source.items.map((item) => item.start) : [];
  return (collection.items as readonly ParsedNode[]).map((value, i) => ({
    start: dashes[i]?.find((token) => token.type === 'seq-item-ind')?.offset ?? value.range[0],
    value,
    end: endOf(value),
  }));
}

/** The end of a value's last character: a block's own range runs on over comments and empty lines. */
function endOf(node: ParsedNode): number {
  if ((isMap(node) || isSeq(node)) && !node.flow) return itemsOf(node).at(-1)?.end ?? node.range[1];
  return node.range[1];
}

const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;

/** The end of the line that `at` stands in, before its line break; a text that ends with its break belongs to its line. */
function lineEnd(text: string, at: number): number {
  const inside = text[at - 1] === '\n' ? at - 1 : at;
  const next = text.indexOf('\n', inside);
  const end = next < 0 ? text.length : next;
  return text[end - 1] === '\r' ? end - 1 : end;
}

const breakAt = (text: string, at: number): string =>
  /^\r?\n/.exec(text.slice(at, at + 2))?.[0] ?? /\r?\n/.exec(text)?.[0] ?? '\n';

/** What stands before an item on its line, if that is only indentation. */
function indentOf(text: string, start: number): string | undefined {
  const before = text.slice(lineStart(text, start), start);
  return /^[ \t]*$/.test(before) ? before : undefined;
}

/** Puts items after the last one of a map or list. */
function append(text: string, collection: Collection, lines: readonly string[]): readonly Cut[] | undefined {
  const last = itemsOf(collection).at(-1);
  if (!last || !collection.range) return undefined;
  const indent = indentOf(text, last.start);
  if (collection.flow) return inFlow(text, last, collection.range[1] - 1, indent, lines);
  if (indent === undefined) return undefined;
  const at = belowOwnComments(text, lineEnd(text, last.end), indent.length);
  return [{ at, drop: 0, put: lines.map((line) => breakAt(text, at) + indent + line).join('') }];
}

/** Comments right below an item that are indented deeper than it are still about it. */
function belowOwnComments(text: string, from: number, indent: number): number {
  const next = /^\r?\n( *)#/.exec(text.slice(from));
  if (!next || (next[1] ?? '').length <= indent) return from;
  return belowOwnComments(text, lineEnd(text, from + next[0].length), indent);
}

/** Within braces or brackets: on lines of their own where the last item has one, else on its line. */
function inFlow(
  text: string,
  last: Item,
  close: number,
  indent: string | undefined,
  lines: readonly string[],
): readonly Cut[] {
  const comma = commaIn(text, last.end, close);
  const after = comma === undefined ? last.end : comma + 1;
  const before = comma === undefined ? [{ at: last.end, drop: 0, put: ',' }] : [];
  if (indent === undefined) return [...before, { at: after, drop: 0, put: ` ${lines.join(', ')}` }];
  const at = Math.min(lineEnd(text, after), close);
  const end = at === close ? after : at;
  const put = lines.map((line) => breakAt(text, lineEnd(text, after)) + indent + line).join(',');
  return [...before, { at: end, drop: 0, put: put + (comma === undefined ? '' : ',') }];
}

/** The comma between two offsets, comments passed over. */
function commaIn(text: string, from: number, to: number): number | undefined {
  for (let at = from; at < to; at++) {
    if (text[at] === ',') return at;
    if (text[at] === '#') at = lineEnd(text, at);
  }
  return undefined;
}

/** The column in which all parts' descriptions begin, if they stand in one; counted from the start of their names. */
function columnOf(text: string, parts: YAMLMap): number | undefined {
  const columns = itemsOf(parts).flatMap(({ start, value }) => {
    const at = value?.range[0];
    return at === undefined || lineStart(text, at) !== lineStart(text, start) ? [] : [at - start];
  });
  const [first] = columns;
  return columns.length > 1 && columns.every((column) => column === first) ? first : undefined;
}
