/** Loads, response and what is assumed of the pickups as aligned tables for the terminal. */

import type { StateLoads } from '../analyse/index.ts';
import { humText, joiningText, levelText } from '../annotate/joining.ts';
import { voiceName } from '../circuit/circuit.ts';
import { positionCell } from '../circuit/position.ts';
import { andList } from '../common/quoting.ts';
import { formatQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';
import { elementsLike, isPickup, type Pickup, whatIs } from '../parts/index.ts';
import { columns, ohmsText, percentText } from './columns.ts';

const LOAD_HEADS = [
  'position',
  'sounding',
  'DC load',
  'reference',
  'off by',
  'signal load',
  'reference',
  'off by',
  '',
  'total load',
] as const;

/** One line for each sounding pickup in each state. */
export function loadsTable(loads: readonly StateLoads[]): string {
  const rows = loads.flatMap(({ state, pickups: entries }) =>
    entries.length === 0
      ? [[positionCell(state), 'none']]
      : entries.map(({ pickup, dcLoad, signalLoad, reference, difference, total }, i) => [
          i === 0 ? positionCell(state) : '',
          voiceName(state, pickup),
          ohmsText(dcLoad),
          ohmsText(reference.dcLoad),
          percentText(difference.dcLoad.percent),
          ohmsText(signalLoad),
          ohmsText(reference.signalLoad),
          offText(difference.signalLoad.ohms),
          percentText(difference.signalLoad.percent),
          ohmsText(total.signalLoad),
        ]),
  );
  return columns(LOAD_HEADS, rows);
}

/** How the pickups of each state are joined, how far the quieter ones are down, and which states cancel hum; empty where there is nothing to say. */
export function togetherTable(loads: readonly StateLoads[]): string {
  const rows = loads.flatMap((entry): readonly (readonly string[])[] => {
    const levels = entry.pickups.flatMap((one) => {
      const words = levelText(one);
      return words === undefined ? [] : [`${one.pickup} ${words}`];
    });
    const joined = joiningText(entry, (name) => name);
    const hum = humText(entry);
    if (joined === undefined && hum === undefined && levels.length === 0) return [];
    const sounding = entry.state.sounding.map((name) => voiceName(entry.state, name)).join(' + ');
    return [[positionCell(entry.state), sounding, joined ?? '', levels.join(', '), hum ?? '']];
  });
  if (rows.length === 0) return '';
  // Without winding directions there is often nothing to say of hum.
  const used = rows.some((row) => row[4] !== '') ? 5 : 4;
  return columns(
    ['position', 'sounding', 'joined', 'level', 'hum'].slice(0, used),
    rows.map((row) => row.slice(0, used)),
    used,
  );
}

const offText = (ohms: number): string => {
  const text = ohmsText(ohms);
  return Number.isFinite(ohms) && ohms > 0 ? `+${text}` : text;
};

/** What a pickup's response hangs on, in the order it is said. */
const windingFields = ['resistance', 'inductance', 'capacitance'] as const;

/** The values of a pickup that nobody gave, and were taken for granted. */
export const defaultedOf = (pickup: Pickup): readonly (typeof windingFields)[number][] =>
  windingFields.filter((field) => pickup[field].from === 'default');

const LETTERS = {
  resistance: ['R', 'ohm'],
  inductance: ['L', 'henry'],
  capacitance: ['C', 'farad'],
} as const;

/** One line a pickup with a value by default, one about core loss, and one about coupling. */
export function assumptions(kit: Kit): string {
  const lines = kit.parts.filter(isPickup).flatMap((pickup) => {
    const values = defaultedOf(pickup).map((field) => {
      const [letter, unit] = LETTERS[field];
      return `${letter} ${formatQuantity(pickup[field].value, unit)}`;
    });
    for (const { factor } of elementsLike(pickup, 'coupling'))
      if (factor.from === 'default') values.push(`coupling of the coils ${Math.abs(factor.value)}`);
    return values.length === 0
      ? []
      : [`${pickup.name}: ${values.join(', ')} assumed, typical of a ${whatIs(pickup)}`];
  });
  return [...lines, ...coreLossLine(kit), couplingLine(kit)].join('\n');
}

/** Where no core loss is given, resonances come out higher than they are. */
function coreLossLine({ parts }: Kit): readonly string[] {
  const without = parts.filter(isPickup).flatMap(({ name, coreLoss }) => (coreLoss ? [] : [name]));
  return without.length === 0
    ? []
    : [`Core loss is neglected for ${andList(without)}: the real peak is lower (in dB) and broader.`];
}

const couplingLine = ({ parts }: Kit): string =>
  parts.some((part) => elementsLike(part, 'coupling').length > 0)
    ? 'Mutual inductance between pickups is neglected; that of two coils with leads of their own in one pickup is included.'
    : 'Mutual inductance between pickups is neglected: each pickup is one winding.';
