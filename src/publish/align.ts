/** Tables for the terminal: columns aligned, text to the left and figures to the right. */

/** @param left how many columns, from the first, hold text */
export function aligned(rows: readonly (readonly string[])[], left: number): string {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, c) =>
    Math.max(...rows.map((row) => (row[c] ?? '').length)),
  );
  return rows
    .map((row) =>
      row
        .map((cell, c) => (c < left ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0)))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** A state in words: `selector 2`; `always` where there is no switch. */
export const stateText = (settings: Readonly<Record<string, number>>): string =>
  Object.entries(settings)
    .map(([name, position]) => `${name} ${position}`)
    .join(', ') || 'always';
