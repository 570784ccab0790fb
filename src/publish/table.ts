/** Loads as an aligned table for the terminal, and as JSON. */
import type { StateLoads } from '../analyse/index.ts';
import { printQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';
import { aligned, stateText } from './align.ts';

const HEADS = [
  'state',
  'sounding',
  'DC load',
  'reference',
  'signal load',
  'reference',
  'off by',
  'total load',
] as const;

/** One line for each sounding pickup in each state. */
export function loadsTable(loads: readonly StateLoads[]): string {
  const rows = loads.flatMap(({ state, loads: entries }) =>
    entries.map((entry, i) => [
      i === 0 ? stateText(state.settings) : '',
      entry.pickup,
      printQuantity(entry.dcLoad, 'ohm', 4),
      printQuantity(entry.reference.dcLoad, 'ohm', 4),
      printQuantity(entry.signalLoad, 'ohm', 4),
      printQuantity(entry.reference.signalLoad, 'ohm', 4),
      `${entry.difference.signalLoad.percent > 0 ? '+' : ''}${entry.difference.signalLoad.percent.toFixed(1)} %`,
      printQuantity(entry.total.signalLoad, 'ohm', 4),
    ]),
  );
  return aligned([HEADS, ...rows], 2);
}

/** The loads as plain data, ohms, unrounded; an open circuit is `"open"` once printed. */
export const loadsData = (kit: Kit, loads: readonly StateLoads[]): object => ({
  kit: kit.id,
  states: loads.map(({ state, loads: entries }) => ({
    state: state.settings,
    sounding: state.sounding,
    pickups: Object.fromEntries(
      entries.map((entry) => [
        entry.pickup,
        {
          dcLoad: entry.dcLoad,
          signalLoad: entry.signalLoad,
          totalLoad: entry.total.signalLoad,
          reference: entry.reference,
          difference: entry.difference,
        },
      ]),
    ),
  })),
});
