/** An order as text for the terminal, and as CSV for a spreadsheet. */
import { stringify } from 'csv-stringify/sync';
import { andList } from '../../common/quoting.ts';
import { colourNames } from '../../describe/words.ts';
import { columns } from '../../report/columns.ts';
import type { Order, PartLine, WireLine } from './count.ts';

/** At least two decimals, and at most the four that a price of one piece may have. */
const amount = (value: number): string =>
  Math.round(value * 100) / 100 === value ? value.toFixed(2) : String(value);

/** `red`, `red and blue`. */
const colourWords = ({ colour, kind }: WireLine): string =>
  colour === undefined
    ? kind === 'jumper'
      ? 'bare'
      : 'no colour given'
    : andList(
        (colour === 'GNYE' ? ['GN', 'YE'] : (colour.match(/../g) ?? [])).map(
          (code) => colourNames[code] ?? code,
        ),
      );

export function orderText(order: Order): string {
  const { parts, wires, wanted, substitutions } = order;
  const currency = order.currency === undefined ? '' : ` ${order.currency}`;
  const unpriced = parts.filter(({ cost }) => cost === undefined);
  const short = shortLines(order);
  const total = `Cost of the parts that have a price: ${amount(order.cost)}${currency}`;
  return [
    `Order: ${wanted.map(({ id, quantity }) => `${quantity} × ${id}`).join(', ')}`,
    '',
    'Parts',
    columns(
      ['code', 'part', 'value', 'quantity', 'in stock', 'short', 'price', 'cost'],
      parts.map((line) => partRow(line, parts)),
      3,
      '  ',
    ),
    '',
    unpriced.length === 0
      ? `Cost: ${amount(order.cost)}${currency}`
      : `${total}; without a price: ${[...new Set(unpriced.map(({ code, what }) => code ?? what))].join(', ')}`,
    ...(short.length === 0 ? [] : ['', 'Short', ...short.map((line) => `  ${line}`)]),
    ...(substitutions.length === 0 ? [] : ['', 'Replaced', ...replacedLines(substitutions)]),
    ...(wires.length === 0
      ? []
      : [
          '',
          'Wire, without an allowance for waste',
          columns(
            ['kind', 'colour', '', 'length', 'pieces', 'of these without a length'],
            wires.map((line) => [
              line.kind,
              line.colour ?? '',
              colourWords(line),
              line.pieces === line.withoutLength ? '' : `${line.length.toFixed(2)} m`,
              String(line.pieces),
              line.withoutLength === 0 ? '' : String(line.withoutLength),
            ]),
            3,
            '  ',
          ),
        ]),
  ].join('\n');
}

/** `R-510K in place of R-470K: hs-dark (pad), hss (pad-neck, pad-middle)`. */
function replacedLines(substitutions: Order['substitutions']): readonly string[] {
  const lines = new Map<string, Map<string, string[]>>();
  for (const { from, to, kit, part } of substitutions) {
    const item = `  ${to} in place of ${from}: `;
    const kits = lines.get(item) ?? new Map<string, string[]>();
    lines.set(item, kits.set(kit, [...(kits.get(kit) ?? []), part]));
  }
  return [...lines].map(
    ([item, kits]) => `${item}${[...kits].map(([kit, parts]) => `${kit} (${parts.join(', ')})`).join(', ')}`,
  );
}

const nameOf = ({ code, what, value }: PartLine): string =>
  code ?? `${what}${value === undefined ? '' : ` ${value}`}`;

/** A line for each item of which there is not enough. */
export const shortLines = ({ parts }: Order): readonly string[] =>
  parts.filter((line) => (line.short ?? 0) > 0).map(shortText);

const shortText = (line: PartLine): string =>
  `${nameOf(line)}: ${line.short} of ${line.quantity}, ${line.pieces} in stock${line.replacedBy === undefined ? '' : `; replaced by ${line.replacedBy}`}`;

function partRow(line: PartLine, all: readonly PartLine[]): readonly string[] {
  // Two pickups of one kind and resistance may differ in what no line says; the kits they are for tell them apart.
  const alike = all.filter((one) => nameOf(one) === nameOf(line)).length > 1;
  const what = alike ? `${line.what}, for ${line.kits.join(', ')}` : line.what;
  const { code, value, quantity, pieces, short, price, cost } = line;
  return [
    code ?? '',
    what,
    value ?? '',
    String(quantity),
    pieces === undefined ? '' : String(pieces),
    short === undefined || short === 0 ? '' : String(short),
    price === undefined ? '' : amount(price),
    cost === undefined ? '' : amount(cost),
  ];
}

const HEADS = [
  'Code',
  'Part',
  'Value',
  'Quantity',
  'In stock',
  'Short',
  'Price',
  'Cost',
  'Currency',
  'Supplier',
  'Replaced by',
  'In place of',
  'Length in m',
  'Without length',
  'Kits',
];

/**
 * One table of parts and wires, as spreadsheets open it: cells that would be taken for formulas begin with an apostrophe.
 *
 * @param comma whether decimals have a comma and cells a semicolon between them, as many countries' spreadsheets expect
 * @param forFile whether it begins with the mark by which spreadsheets tell UTF-8, and has line ends of RFC 4180
 */
export function orderCsv(order: Order, comma: boolean, forFile: boolean): string {
  const decimals = (text: string): string => (comma ? text.replace(/(\d)\.(\d)/g, '$1,$2') : text);
  const figure = (value: number | undefined): string => (value === undefined ? '' : decimals(String(value)));
  const money = (value: number | undefined): string => (value === undefined ? '' : decimals(amount(value)));
  const currency = order.currency ?? '';
  const parts = order.parts.map((line) => [
    line.code ?? '',
    line.what,
    decimals(line.value ?? ''),
    figure(line.quantity),
    figure(line.pieces),
    figure(line.short),
    money(line.price),
    money(line.cost),
    line.cost === undefined ? '' : currency,
    line.supplier ?? '',
    line.replacedBy ?? '',
    line.inPlaceOf?.join(' ') ?? '',
    '',
    '',
    line.kits.join(' '),
  ]);
  const wires = order.wires.map((line) => [
    '',
    line.kind,
    `${line.colour === undefined ? '' : `${line.colour} `}${colourWords(line)}`,
    figure(line.pieces),
    ...Array<string>(8).fill(''),
    figure(line.pieces === line.withoutLength ? undefined : line.length),
    figure(line.withoutLength),
    '',
  ]);
  return stringify([HEADS, ...parts, ...wires], {
    delimiter: comma ? ';' : ',',
    escape_formulas: true,
    ...(forFile ? { bom: true, record_delimiter: 'windows' as const } : {}),
  });
}
