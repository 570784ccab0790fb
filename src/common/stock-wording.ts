/** The words about parts lists, and about kits against a list: see `wording.ts`. */
import { clip, list, type Message, meant, quote } from './quoting.ts';

/** `value` is a part's value in words; absent where the kind has none, as of a switch. */
interface Named {
  code: string;
  value?: string;
}

export interface StockDetails {
  // The list itself.
  'list-empty': { csv: boolean };
  'list-shape': { got: string };
  'two-lists': { files: readonly string[] };
  'duplicate-code': { code: string; line: number };
  'replaced-by-itself': { code: string };
  /** From the first back to it. */
  'replaced-in-circle': { codes: readonly string[] };
  'replaced-by-unknown': { code: string; got: string; nearest?: string };
  'replaced-by-other-kind': { code: string; kind: string; by: string; byKind: string };
  'replacement-not-in-stock': { code: string; by: string };
  'column-twice': { column: string; first: string };
  'column-missing': { column: string; found: readonly string[] };
  'column-unknown': { column: string; nearest?: string; allowed: readonly string[] };
  'column-not-read': { column: string; read: readonly string[] };
  'cell-without-column': { got: string };
  // A kit against the list.
  'no-parts-list': { code: string };
  'unknown-code': { code: string; file: string; nearest?: string };
  'code-of-other-kind': { part: string; kind: string; code: string; listed: string };
  'code-contradicts': {
    field: string;
    got: string;
    code: string;
    listed?: string;
    file: string;
    line: number;
  };
  /** `by`: what replaces it by the list, and is not in stock either. */
  'out-of-stock': {
    part: string;
    listed: Named;
    by?: string;
    nearest: readonly string[];
    file: string;
    line: number;
  };
  'not-listed': { part: string; got: string; nearest: readonly string[]; file: string };
  substituted: { part: string; from: Named; to: Named };
}

type Wording = { readonly [C in keyof StockDetails]: (detail: StockDetails[C]) => Message };

const error = (message: string, remedy: string): Message => ({ severity: 'error', message, remedy });
const warning = (message: string, remedy: string): Message => ({ severity: 'warning', message, remedy });

/** `470 kΩ (R-470K)`. */
export const named = ({ code, value }: Named): string =>
  value === undefined ? clip(code) : `${value} (${clip(code)})`;

/** A part that is drawn and solved with what replaces it: `Neck pad: 470 kΩ (R-470K) is replaced by 510 kΩ (R-510K)`. */
const substitutionText = (part: string, from: Named, to: Named): string =>
  `${part}: ${named(from)} is replaced by ${named(to)}`;

export const stockWording: Wording = {
  'list-empty': ({ csv }) =>
    error(
      'the parts list is empty',
      csv
        ? 'Write a first row with the names of the columns, such as code, kind, value, price, in-stock, and a row for each item.'
        : 'Write stock: and below it a list of items, such as - { code: R-470K, kind: resistor, value: 470k }.',
    ),
  'list-shape': (d) =>
    error(
      `expected a parts list, found ${d.got}`,
      'Write stock: and below it a list of items, such as - { code: R-470K, kind: resistor, value: 470k }.',
    ),
  'two-lists': (d) =>
    error(
      `this folder has two parts lists: ${list(d.files)}`,
      'Keep one of them, or name the one that counts under parts: in solderleaf.yaml.',
    ),
  'duplicate-code': (d) =>
    error(
      `the code ${quote(d.code)} is already used in line ${d.line}`,
      'Give each item a unique code, or remove one of the two.',
    ),
  'replaced-by-itself': (d) =>
    error(`${quote(d.code)} is replaced by itself`, 'Name the code of another item, or remove replaced-by.'),
  'replaced-in-circle': (d) =>
    error(
      `the replacements form a loop: ${d.codes.map(clip).join(' is replaced by ')}`,
      'Remove replaced-by from the item that is to be used.',
    ),
  'replaced-by-unknown': (d) =>
    error(
      `${quote(d.code)} is replaced by ${quote(d.got)}, which is not in the list`,
      meant(d.nearest, 'Add that item to the list, or name the code of one that is there.'),
    ),
  'replaced-by-other-kind': (d) =>
    error(
      `${quote(d.code)} is a ${d.kind}, and ${quote(d.by)}, which replaces it, is a ${d.byKind}`,
      'Name an item of the same kind: the kit’s joints are soldered to its lugs.',
    ),
  'replacement-not-in-stock': (d) =>
    warning(
      `${quote(d.code)} is not in stock, and neither is ${quote(d.by)}, which replaces it`,
      'Name a replacement that is in stock; a kit that needs this item cannot be drawn until then.',
    ),
  'column-twice': (d) =>
    error(
      `the column ${quote(d.column)} is there twice; the first is column ${d.first}`,
      'Remove or rename one of the two in the spreadsheet, and export it again.',
    ),
  'column-missing': (d) =>
    error(
      `there is no column ${quote(d.column)}`,
      `Name it in the first row; columns found: ${list(d.found)}.`,
    ),
  'column-unknown': (d) =>
    error(`unknown column ${quote(d.column)}`, meant(d.nearest, `Columns: ${list(d.allowed)}.`)),
  'column-not-read': (d) => ({
    severity: 'note',
    message: `the column ${quote(d.column)} is not read`,
    remedy: `Nothing needs to be done if it is for your own use. Columns that are read: ${d.read.join(', ')}.`,
  }),
  'cell-without-column': (d) =>
    error(
      `${quote(d.got)} is in a column without a name`,
      'Name the column in the first row, or empty the cell. A separator within a text needs quotes round the text.',
    ),
  'no-parts-list': (d) =>
    error(
      `${quote(d.code)} is a stock code, and this kit has no parts list`,
      'Put parts.yaml or parts.csv in the folder of the kit or in one above it, or write the value in place of the code.',
    ),
  'unknown-code': (d) =>
    error(
      `${quote(d.code)} is not in the parts list ${clip(d.file)}`,
      meant(d.nearest, 'Add the item to the list, or write a code that is in it.'),
    ),
  'code-of-other-kind': (d) =>
    error(
      `${quote(d.part)} is a ${d.kind}, and ${quote(d.code)} in the parts list is a ${d.listed}`,
      `Write kind: ${d.listed}, or the code of a ${d.kind}.`,
    ),
  'code-contradicts': (d) =>
    error(
      `${d.field} ${clip(d.got)} contradicts ${quote(d.code)}, ${d.listed === undefined ? `which has another ${d.field} where it says none` : `whose ${d.field} is ${clip(d.listed)}`} (${clip(d.file)}:${d.line})`,
      `Remove ${d.field} here, as the code stands for it, or write the code of an item that has it.`,
    ),
  'out-of-stock': (d) =>
    error(
      `${quote(d.part)}: ${named(d.listed)} is not in stock${d.by === undefined ? '' : `, and neither is ${quote(d.by)}, which replaces it`} (${clip(d.file)}:${d.line})`,
      d.nearest.length === 0
        ? 'Nothing of its kind is in stock. Add to the parts list an item that is, and name its code there under replaced-by.'
        : `Nearest in stock: ${list(d.nearest)}. Use one of these, or name its code in the parts list under replaced-by.`,
    ),
  'not-listed': (d) =>
    warning(
      `${quote(d.part)} is ${d.got}, which is not in the parts list ${clip(d.file)}`,
      d.nearest.length === 0
        ? 'Add it to the list; nothing of its kind is in stock.'
        : `Nearest in stock: ${list(d.nearest)}. Use one of these, or add it to the list.`,
    ),
  substituted: (d) => ({
    severity: 'note',
    message: substitutionText(d.part, d.from, d.to),
    remedy: 'Loads and drawings are those of the replacement, as the parts list says.',
  }),
};
