/** Meter readings and the spread of every figure as aligned tables for the terminal. */
import type {
  DrawnRange,
  HarnessReadings,
  Range,
  Reading,
  ResonanceSpread,
  Spread,
  StateReadings,
} from '../analyse/index.ts';
import type { Circuit, LugId } from '../circuit/circuit.ts';
import { printQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';
import { isPickup } from '../parts/index.ts';
import { columns, ohmsText, stateText } from './columns.ts';

/** The lug of a net that a probe reaches before the pickups are fitted: one that does not belong to a pickup. */
export function probeLug(kit: Kit, lugs: readonly LugId[]): LugId {
  const pickups = new Set(kit.parts.filter(isPickup).map((part) => part.name));
  return lugs.find((id) => !pickups.has(id.slice(0, id.lastIndexOf('.')))) ?? lugs[0] ?? '';
}

const METER_HEADS = [
  'state',
  'from',
  'volume full: bare',
  'with pickups',
  'volume at zero: bare',
  'with pickups',
];

/** Tip to sleeve, then each lug to ground, in every state; `bare` is before the pickups are fitted. */
export function meterTable(kit: Kit, states: readonly StateReadings[]): string {
  const rows = states.flatMap(({ state, volumeFull, volumeZero }) => [
    [stateText(state.settings), 'tip to sleeve', ...both(volumeFull.jack), ...both(volumeZero.jack)],
    ...volumeFull.lugs
      // The tip's own net says the same as the line above.
      .filter(({ lugs }) => !isTip(kit, lugs))
      .map((reading) => [
        '',
        probeLug(kit, reading.lugs),
        ...both(reading),
        ...both(lugOf(volumeZero, reading.net)),
      ]),
  ]);
  return columns(METER_HEADS, rows);
}

const isTip = (kit: Kit, lugs: readonly LugId[]): boolean =>
  kit.parts.some((part) => part.kind === 'jack' && lugs.includes(`${part.name}.tip`));

const both = (reading: Reading | undefined): readonly string[] =>
  reading ? [ohmsText(reading.unfitted), ohmsText(reading.fitted)] : ['', ''];

const lugOf = (readings: HarnessReadings, net: number): Reading | undefined =>
  readings.lugs.find((one) => one.net === net);

/** From the smallest to the largest, in one unit where both print in one. */
function rangeText({ low, high }: Pick<Range, 'low' | 'high'>, text: (value: number) => string): string {
  const [from, to] = [text(low), text(high)];
  if (from === to) return to;
  const unit = to.slice(to.lastIndexOf(' '));
  return unit.startsWith(' ') && from.endsWith(unit)
    ? `${from.slice(0, -unit.length)}–${to}`
    : `${from}–${to}`;
}

const ohmRange = (range: Pick<Range, 'low' | 'high'>): string =>
  rangeText(range, (value) => printQuantity(value, 'ohm', 3));
const hertzRange = (range: DrawnRange | undefined): string =>
  range ? rangeText(range, (value) => `${Math.round(value)} Hz`) : '';
const decibelRange = (range: DrawnRange | undefined): string =>
  range ? rangeText(range, (value) => `${value.toFixed(1)} dB`) : '';

/** Smallest and largest of every figure. */
export function spreadTables({ kit, nets }: Circuit, spread: Spread): string {
  const { temperatures, seed, draws } = spread;
  const peak = (resonance: ResonanceSpread | undefined) => [
    hertzRange(resonance?.frequency) || 'no peak',
    decibelRange(resonance?.height),
  ];
  const loads = spread.states.flatMap(({ state, pickups, resonance }) => {
    const each = pickups.map((one, i) => [
      i === 0 ? stateText(state.settings) : '',
      one.pickup,
      ohmRange(one.dcLoad),
      ohmRange(one.signalLoad),
      ohmRange(one.total.signalLoad),
      ...peak(one.resonance),
    ]);
    return pickups.length > 1 ? [...each, ['', 'together', '', '', '', ...peak(resonance)]] : each;
  });
  const meter = spread.states.flatMap(({ state, jack, lugs }) => {
    const tip = jack && [
      [
        stateText(state.settings),
        'tip to sleeve',
        ohmRange(jack.volumeFull.unfitted),
        ohmRange(jack.volumeFull.fitted),
      ],
    ];
    const rest = lugs
      .map((one) => ({ one, lugs: nets[one.net]?.lugs ?? [one.lug] }))
      .filter((entry) => !isTip(kit, entry.lugs))
      .map(({ one, lugs: all }) => ['', probeLug(kit, all), ohmRange(one.unfitted), ohmRange(one.fitted)]);
    return [...(tip ?? []), ...rest];
  });
  return [
    `Spread, smallest to largest under part tolerances, ${temperatures.low} to ${temperatures.high} °C`,
    `At the corners of tolerance, where that is exact; else, as with resonances, from ${draws} draws, seed ${seed}.`,
    '',
    columns(['state', 'sounding', 'DC load', 'signal load', 'total load', 'resonance', 'height'], loads),
    '',
    columns(['state', 'from', 'volume full: bare', 'with pickups'], meter),
  ].join('\n');
}
