/** Meter readings, and the limits of every figure, as aligned tables for the terminal. */

import type {
  HarnessReadings,
  Limits,
  Reading,
  ResonanceLimits,
  SampledRange,
  StateReadings,
  ToleranceRange,
} from '../analyse/index.ts';
import { type Circuit, endAt, type LugId, lugId, voiceName } from '../circuit/circuit.ts';
import { positionCell } from '../circuit/position.ts';
import { formatCount, formatDecibels, formatSigned, roundedTo } from '../common/figures.ts';
import { formatQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';
import { lugsWith } from '../parts/index.ts';
import { columns, ohmsText } from './columns.ts';

const BEFORE = 'no pickups';
const FINISHED = 'finished';
const METER_HEADS = [
  'position',
  'measured',
  `volume on 10: ${BEFORE}`,
  FINISHED,
  `volume on 0: ${BEFORE}`,
  FINISHED,
];

/** Tip to sleeve, then each lug to ground, in every position. */
export function meterTable(kit: Kit, states: readonly StateReadings[]): string {
  const rows = states.flatMap(({ state, volumeFull, volumeZero }) => [
    [positionCell(state), 'tip to sleeve', ...both(volumeFull.jack), ...both(volumeZero.jack)],
    ...volumeFull.lugs
      // The tip's own net says the same as the line above.
      .filter(({ lugs }) => !isTip(kit, lugs))
      .map((reading) => [
        '',
        measuredText(kit, reading.probe, reading.lugs),
        ...both(reading),
        ...both(lugOf(volumeZero, reading.net)),
      ]),
  ]);
  return columns(METER_HEADS, rows);
}

/** The lugs of the jack's outputs, the tip first. */
const outputsOf = (kit: Kit): readonly LugId[] =>
  kit.parts.flatMap((part) => lugsWith(part, 'output').map((lug) => lugId(part.name, lug)));

const isTip = (kit: Kit, lugs: readonly LugId[]): boolean =>
  outputsOf(kit)
    .slice(0, 1)
    .some((tip) => lugs.includes(tip));

/** `volume.3 to ground`; of the ring of a stereo jack `ring to sleeve`, as of the tip. */
function measuredText(kit: Kit, probe: LugId, lugs: readonly LugId[]): string {
  const output = outputsOf(kit).find((one) => lugs.includes(one));
  return output === undefined ? `${probe} to ground` : `${endAt(output).lug} to sleeve`;
}

const both = (reading: Reading | undefined): readonly string[] =>
  reading ? [ohmsText(reading.disconnected), ohmsText(reading.connected)] : ['', ''];

const lugOf = (readings: HarnessReadings, net: number): Reading | undefined =>
  readings.lugs.find((one) => one.net === net);

/** Two figures with a dash between, in one unit where both print in one. */
function rangeText([from, to]: readonly [string, string]): string {
  if (from === to) return to;
  const unit = to.slice(to.lastIndexOf(' '));
  return unit.startsWith(' ') && from.endsWith(unit)
    ? `${from.slice(0, -unit.length)}–${to}`
    : `${from}–${to}`;
}

/** Limits of a resistance, rounded outwards: no value within the tolerances lies outside what is printed. */
const ohmRange = ({ low, high }: Pick<ToleranceRange, 'low' | 'high'>): string =>
  rangeText([
    formatQuantity(roundedTo(low, 3, Math.floor), 'ohm'),
    formatQuantity(roundedTo(high, 3, Math.ceil), 'ohm'),
  ]);
const hertzRange = (range: SampledRange | undefined): string =>
  range ? rangeText([`${Math.round(range.low)} Hz`, `${Math.round(range.high)} Hz`]) : '';
const decibelRange = (range: SampledRange | undefined): string =>
  range ? `${formatSigned(range.low, 1)} to ${formatDecibels(range.high)}` : '';

/** The limits of loads and readings; apart from them, where most resonances lie. */
export function limitTables({ kit, nets }: Circuit, limits: Limits): string {
  const { temperatures, seed, samples } = limits;
  const peak = (resonance: ResonanceLimits | undefined) => [
    hertzRange(resonance?.frequency) || 'no peak',
    decibelRange(resonance?.height),
  ];
  const loads = limits.states.flatMap(({ state, pickups }) =>
    pickups.map((one, i) => [
      i === 0 ? positionCell(state) : '',
      voiceName(state, one.pickup),
      ohmRange(one.dcLoad),
      ohmRange(one.signalLoad),
      ohmRange(one.total.signalLoad),
    ]),
  );
  const peaks = limits.states.flatMap(({ state, pickups, resonance }) => {
    const each = pickups.map((one, i) => [
      i === 0 ? positionCell(state) : '',
      voiceName(state, one.pickup),
      ...peak(one.resonance),
    ]);
    return pickups.length > 1 ? [...each, ['', 'together', ...peak(resonance)]] : each;
  });
  const meter = limits.states.flatMap(({ state, jack, lugs }) => {
    const tip = jack && [
      [
        positionCell(state),
        'tip to sleeve',
        ohmRange(jack.volumeFull.disconnected),
        ohmRange(jack.volumeFull.connected),
      ],
    ];
    const rest = lugs
      .map((one) => ({ one, lugs: nets[one.net]?.lugs ?? [one.lug] }))
      .filter((entry) => !isTip(kit, entry.lugs))
      .map(({ one, lugs: all }) => [
        '',
        measuredText(kit, one.lug, all),
        ohmRange(one.disconnected),
        ohmRange(one.connected),
      ]);
    return [...(tip ?? []), ...rest];
  });
  return [
    `Worst-case limits of loads and multimeter readings: all parts within tolerance, ${temperatures.low} to ${temperatures.high} °C`,
    columns(['position', 'sounding', 'DC load', 'signal load', 'total load'], loads),
    '',
    columns(['position', 'measured', `volume on 10: ${BEFORE}`, FINISHED], meter),
    '',
    `Resonance: 95 % of ${formatCount(samples)} samples, each value uniform within its tolerance, seed ${seed}`,
    columns(['position', 'sounding', 'resonance', 'height'], peaks),
  ].join('\n');
}
