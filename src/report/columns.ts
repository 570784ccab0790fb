/** Aligned columns of text for the terminal, and the figures in them. */
import { formatSigned } from '../common/figures.ts';
import { formatQuantity } from '../common/units.ts';

/** A table: the first `left` columns flush left, the others flush right; columns that are empty throughout are left out. */
export function columns(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  left = 2,
  indent = '',
): string {
  const used = heads.map((head, c) => head !== '' || rows.some((row) => (row[c] ?? '') !== ''));
  const all = [heads, ...rows];
  const widths = heads.map((_, c) => Math.max(...all.map((row) => (row[c] ?? '').length)));
  return all
    .map((row) => {
      const cells = heads.flatMap((_, c) => {
        const cell = row[c] ?? '';
        return used[c] ? [c < left ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0)] : [];
      });
      return `${indent}${cells.join('  ')}`.trimEnd();
    })
    .join('\n');
}

export const ohmsText = (value: number): string => formatQuantity(value, 'ohm', 4);

/** `+30.5 %`; a distance from or to an open circuit has no figure. */
export const percentText = (percent: number): string =>
  Number.isFinite(percent) ? `${formatSigned(percent, 1)} %` : '–';
