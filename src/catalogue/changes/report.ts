/** What has changed in a catalogue, as text for the terminal and as plain data. */
import { columns } from '../../report/columns.ts';
import { HEARD, type KitChanges } from './compare.ts';
import type { Surveyed } from './survey.ts';

/** By what it became, in the words of a list. */
const BECAME: Readonly<Record<KitChanges['became'], string>> = {
  new: 'new; nothing to compare with',
  removed: 'no longer in the catalogue',
  changed: 'changed',
  failed: 'has errors, and cannot be drawn',
  same: 'unchanged',
};

export const HEARD_WORDS = `A change counts as heard from ${HEARD.decibels} dB of level, and from ${HEARD.share * 100} % of a frequency (from memory: about the least that is noticed in direct comparison).`;

/** Everything that is said of one kit in a line, in the order of its weight. */
export function linesOf({
  became,
  drawing,
  marks: [was, is],
  price,
  unpriced,
  substitutions,
  problems,
  solved,
  heard,
  figures,
}: KitChanges): readonly string[] {
  const marks = was !== null && is !== null && was !== is ? `; revision mark ${was}, now ${is}` : '';
  const without =
    unpriced === 0 ? '' : `; ${unpriced} ${unpriced === 1 ? 'part has' : 'parts have'} no price in the list`;
  return [
    ...problems.map(({ severity, message }) => `new ${severity}: ${message}`),
    ...solved.map(({ severity, message }) => `no longer: ${severity}: ${message}`),
    ...substitutions.map((words) => `substitution: ${words}`),
    ...(price ? [`price of its parts: ${price[0]}, now ${price[1]}${without}`] : []),
    ...(became === 'changed' && drawing ? [`the drawing changes${marks}`] : []),
    ...(figures.length === 0 ? [] : [heard ? 'a player would hear it' : 'a player would not hear it']),
  ];
}

export const tableRows = (figures: KitChanges['figures']): readonly (readonly string[])[] =>
  figures.map(({ position, what, before, after, heard }, i) => [
    figures[i - 1]?.position === position ? '' : position,
    what,
    before,
    after,
    heard === true ? 'heard' : heard === false ? 'not heard' : '',
  ]);

export const TABLE_HEADS = ['position', 'figure', 'before', 'now', ''] as const;

/** A kit that has changed, its figures as a table; readings at lugs inside are many, and only counted. */
export function kitText({ changes, source }: Surveyed): string {
  const { kit, title, became } = changes;
  const from = source === undefined ? '' : ` (${source})`;
  const { figures } = changes;
  const told = figures.filter(({ sort }) => sort !== 'lug');
  const lugs = figures.length - told.length;
  const rows = tableRows(told);
  return [
    `${kit}: ${BECAME[became]}${from}`,
    ...(title === kit ? [] : [`  ${title}`]),
    ...linesOf(changes).map((line) => `  ${line}`),
    ...(rows.length === 0 ? [] : [columns(TABLE_HEADS, rows, 2, '  ')]),
    ...(lugs === 0
      ? []
      : [`  and ${lugs} ${lugs === 1 ? 'reading' : 'readings'} at lugs inside: see --html or --json`]),
  ].join('\n');
}

const ORDER = ['failed', 'changed', 'new', 'removed', 'same'] as const;

/** `2 changed, 1 has errors, 5 unchanged`. */
export function sumText(all: readonly KitChanges[]): string {
  const counts = ORDER.map((one) => ({ one, count: all.filter(({ became }) => became === one).length }));
  const words = { ...BECAME, new: 'new', failed: 'with errors' };
  const said = counts.filter(({ count }) => count > 0).map(({ one, count }) => `${count} ${words[one]}`);
  const heard = all.filter((one) => one.heard).length;
  const total = `${all.length} ${all.length === 1 ? 'kit' : 'kits'}`;
  return `${total}${said.length === 0 ? '' : `: ${said.join(', ')}`}${heard === 0 ? '' : `; a player would hear ${heard} of them`}`;
}

/** As it is printed with `--json`: figures in ohms, hertz and decibels, `null` where there is none. */
export const changesData = (all: readonly Surveyed[]): object => ({
  heard: { decibels: HEARD.decibels, percent: HEARD.share * 100 },
  kits: all.map(({ changes, source }) => ({ ...changes, source: source ?? null })),
});
