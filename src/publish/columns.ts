/** Aligned columns of text for the terminal, and the figures in them. */
import { printQuantity } from '../common/units.ts';

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

export const ohmsText = (value: number): string => printQuantity(value, 'ohm', 4);

/** `+30.5 %`; a distance from or to an open circuit has no figure. */
export const percentText = (percent: number): string =>
  Number.isFinite(percent) ? `${signed(percent, 1)} %` : 'open';

/** With its sign and so many digits after the point; zero has no sign. */
export function signed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  if (Number(text) === 0) return (0).toFixed(digits);
  return value > 0 ? `+${text}` : text;
}

/** `selector 2`; `always` for a kit without a switch. */
export const stateText = (settings: Readonly<Record<string, number>>): string =>
  Object.entries(settings)
    .map(([name, position]) => `${name} ${position}`)
    .join(', ') || 'always';
