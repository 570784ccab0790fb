/** Where a part's values were written, as tables for the terminal. */
import type { ExplainedPart } from '../describe/explain.ts';
import { columns } from './columns.ts';

const where = ({ file, line }: { readonly file: string; readonly line: number }): string =>
  line === 0 ? file : `${file}:${line}`;

/** One line for each field, then one for each joint. */
export function explainTable({ name, files, fields, joints }: ExplainedPart): string {
  const [file, ...bases] = files;
  const chain = bases.map((base) => `, which extends ${base}`).join('');
  const rows = fields.map(({ field, value, place, before }) => [
    field,
    value,
    place ? where(place) : 'default',
    before.map((one) => `${one.value} (${where(one.place)})`).join(', '),
  ]);
  const replaces = rows.some((row) => row[3] !== '') ? 'replaces' : '';
  const table = columns(['field', 'value', 'written in', replaces], rows, 4);
  const wiring = columns(
    ['joint', 'written in'],
    joints.map(({ value, place }) => [value, where(place)]),
  );
  return [`${name} in ${file}${chain}`, table, ...(joints.length > 0 ? [wiring] : [])].join('\n\n');
}
