/** A parts list's text to its items, with every problem at once and in its place. */
import { closestName } from '../common/nearest.ts';
import { type Diagnostic, type KeyPath, type Problem, problem } from '../common/problem.ts';
import { kinds } from '../parts/index.ts';
import { isMap, type Written } from './chain.ts';
import { toDiagnostics } from './diagnostics.ts';
import { problemsOf, typeName } from './issues.ts';
import { isKind, kindProblem, readPart } from './read-part.ts';
import { parseText, type Source, sourceOf } from './source.ts';
import { itemOf, type PartsList, type StockItem } from './stock.ts';
import { parseListCsv } from './stock-csv.ts';
import { itemShapes, listFields, listHeadSchema } from './stock-schema.ts';

/** Characters: some ten thousand items. */
export const LONGEST_LIST = 2_000_000;

interface ParsedList {
  readonly source: Source;
  readonly value?: unknown;
  readonly problems: readonly Problem[];
  /** Fields that a table has no column for. */
  readonly missing?: readonly string[];
  readonly called?: (path: KeyPath) => string | undefined;
}

/**
 * Reads a list: CSV when the file's name ends so, else YAML or JSON.
 *
 * @param currency of the prices, where the list does not say
 */
export function readPartsList(text: string, file: string, currency?: string): PartsList {
  const { source, value, problems, missing = [], called } = parse(text, file);
  const found = [...problems];
  const head = value === undefined ? undefined : readHead(value, found);
  // A cell that could not be read has been told of.
  const told = new Set(problems.map(({ path }) => path.join('.')));
  const items: StockItem[] = [];
  const rows = head?.stock ?? [];
  for (const [i, written] of rows.entries()) {
    const read = readItem(i, written, source);
    const isTold = ({ path, detail }: Problem): boolean =>
      told.has(path.join('.')) || ('key' in detail && missing.includes(detail.key));
    found.push(...read.problems.filter((one) => !isTold(one)));
    const isSound = !problems.some(({ path }) => path[0] === 'stock' && path[1] === i);
    if (read.item && isSound) items.push(read.item);
  }
  found.push(...codeProblems(rows, source), ...replacementProblems(rows, items));
  const diagnostics = found.flatMap((one) =>
    toDiagnostics([one], source).map((said) => inSheet(said, called?.(one.path))),
  );
  const given = head?.currency ?? currency;
  return {
    file,
    ...(given === undefined ? {} : { currency: given }),
    items,
    diagnostics: diagnostics.sort((a, b) => a.place.line - b.place.line || a.place.column - b.place.column),
  };
}

const inSheet = (said: Diagnostic, called: string | undefined): Diagnostic =>
  called === undefined ? said : { ...said, message: `${called}: ${said.message}` };

function parse(text: string, file: string): ParsedList {
  if (!/\.csv$/i.test(file)) {
    const empty = text.trim() === '';
    const parsed = parseText(text, file, LONGEST_LIST);
    return empty || parsed.value === null
      ? { source: parsed.source, problems: [problem('list-empty', [], { csv: false })] }
      : parsed;
  }
  const table = parseListCsv(text);
  const problems = [...table.syntaxProblems.map((one) => one.problem), ...table.problems];
  return {
    source: sourceOf(text, file, table),
    problems,
    missing: table.missing,
    called: table.called,
    ...('value' in table ? { value: table.value } : {}),
  };
}

/** The list's own keys. */
function readHead(value: unknown, found: Problem[]) {
  if (!isMap(value) || !Object.hasOwn(value, 'stock')) {
    found.push(
      isMap(value) && Object.keys(value).some((key) => closestName(key, ['stock']) !== undefined)
        ? problem('missing-key', [], { key: 'stock', what: 'the parts list' })
        : problem('list-shape', [], { got: isMap(value) ? 'keys without stock' : typeName(value) }),
    );
    return undefined;
  }
  const read = listHeadSchema.safeParse(value);
  if (!read.success)
    found.push(
      ...problemsOf(read.error.issues, { schema: listHeadSchema, value, path: [], what: 'the parts list' }),
    );
  const { stock } = value;
  if (stock !== null && !Array.isArray(stock))
    found.push(problem('wrong-type', ['stock'], { expected: ITEMS, got: typeName(stock) }));
  const currency = read.success ? read.data.currency : undefined;
  return { stock: Array.isArray(stock) ? (stock as readonly unknown[]) : [], currency };
}

const ITEM = 'an item, such as { code: R-470K, kind: resistor, value: 470k }';
const ITEMS = 'a list of items, such as - { code: R-470K, kind: resistor, value: 470k }';

function readItem(
  i: number,
  written: unknown,
  source: Source,
): { readonly item?: StockItem; readonly problems: readonly Problem[] } {
  const path = ['stock', i];
  if (!isMap(written))
    return { problems: [problem('wrong-type', path, { expected: ITEM, got: typeName(written) })] };
  const { kind } = written;
  const code = typeof written.code === 'string' ? written.code.trim() : undefined;
  const what = code === undefined ? `item ${i + 1}` : `“${code}”`;
  if (typeof kind !== 'string' || !isKind(kind)) return { problems: [kindProblem(path, what, written)] };
  const schema = itemShapes[kind];
  const read = schema.safeParse(written);
  if (!read.success)
    return {
      problems: problemsOf(read.error.issues, {
        schema,
        value: written,
        path,
        what: `${what} (${kinds[kind].what})`,
      }),
    };
  const fields: Written = Object.fromEntries(
    Object.entries(written).filter(([key]) => key !== 'kind' && !Object.hasOwn(listFields, key)),
  );
  const made = readPart(read.data.code, { kind, ...fields });
  const problems = made.problems.map((one) => ({ ...one, path: [...path, ...one.path.slice(2)] }));
  if (!made.part || problems.length > 0) return { problems };
  // The place depends on the path alone; any code will do.
  const placeOf = (...steps: KeyPath) =>
    source.placeOf(problem('bad-value', [...path, ...steps], { why: '', remedy: '' }));
  const { price, supplier, 'in-stock': stock = true, 'replaced-by': replacedBy } = read.data;
  const item: StockItem = {
    code: read.data.code,
    kind,
    fields,
    part: made.part,
    ...(price === undefined ? {} : { price }),
    ...(supplier === undefined ? {} : { supplier }),
    inStock: stock !== false && stock !== 0,
    ...(typeof stock === 'number' ? { pieces: stock } : {}),
    ...(replacedBy === undefined ? {} : { replacedBy }),
    place: placeOf(),
    places: new Map(Object.keys(written).map((field) => [field, placeOf(field)])),
  };
  return { item, problems: [] };
}

const textIn = (written: unknown, key: string): string | undefined => {
  const found = isMap(written) ? written[key] : undefined;
  return typeof found === 'string' && found.trim() !== '' ? found.trim() : undefined;
};

/** Codes that stand for two items. */
function codeProblems(rows: readonly unknown[], source: Source): readonly Problem[] {
  const first = new Map<string, number>();
  return rows.flatMap((written, i) => {
    const code = textIn(written, 'code');
    if (code === undefined) return [];
    const before = first.get(code);
    if (before === undefined) {
      first.set(code, i);
      return [];
    }
    const { line } = source.placeOf(problem('list-empty', ['stock', before, 'code'], { csv: false }));
    return [problem('duplicate-code', ['stock', i, 'code'], { code, line })];
  });
}

/** Replacements that lead nowhere. Faulty items have a code and a kind as well, so that one problem makes no second. */
function replacementProblems(rows: readonly unknown[], items: readonly StockItem[]): readonly Problem[] {
  const codes = new Map<string, number>();
  for (const [i, written] of rows.entries()) {
    const code = textIn(written, 'code');
    if (code !== undefined && !codes.has(code)) codes.set(code, i);
  }
  const next = (code: string): string | undefined => textIn(rows[codes.get(code) ?? -1], 'replaced-by');
  const circles = new Set<string>();
  return rows.flatMap((written, i): readonly Problem[] => {
    const [code, by, kind] = [
      textIn(written, 'code'),
      textIn(written, 'replaced-by'),
      textIn(written, 'kind'),
    ];
    if (code === undefined || by === undefined) return [];
    const path = ['stock', i, 'replaced-by'];
    if (by === code) return [problem('replaced-by-itself', path, { code })];
    const target = codes.get(by);
    if (target === undefined) {
      const nearest = closestName(by, [...codes.keys()]);
      return [
        problem('replaced-by-unknown', path, {
          code,
          got: by,
          ...(nearest === undefined ? {} : { nearest }),
        }),
      ];
    }
    const byKind = textIn(rows[target], 'kind');
    if (kind !== undefined && byKind !== undefined && kind !== byKind && isKind(kind) && isKind(byKind))
      return [problem('replaced-by-other-kind', path, { code, kind, by, byKind })];
    const way = [code];
    let at: string | undefined = by;
    while (at !== undefined && !way.includes(at)) {
      way.push(at);
      at = next(at);
    }
    if (at === code) {
      if (circles.has(code)) return [];
      for (const one of way) circles.add(one);
      return [problem('replaced-in-circle', path, { codes: [...way, code] })];
    }
    const list = { file: '', items, diagnostics: [] };
    const isOut = (one: string): boolean => itemOf(list, one)?.inStock === false;
    // In a chain each says it of its own replacement only.
    return isOut(code) && isOut(by) && next(by) === undefined
      ? [problem('replacement-not-in-stock', path, { code, by })]
      : [];
  });
}
