/** The response as an aligned table for the terminal, and as comma-separated values. */

import { csvFormatRows } from 'd3-dsv';
import {
  type Curve,
  type CurveShape,
  decibels,
  type FrequencyResponse,
  type Knobs,
  type PickupCurve,
  type StateResponse,
} from '../analyse/index.ts';
import { soundingText } from '../annotate/cards.ts';
import { substitutionLines } from '../annotate/stock-notes.ts';
import { type Circuit, outputOf, type State, voiceName } from '../circuit/circuit.ts';
import { positionCell } from '../circuit/position.ts';
import { formatSigned } from '../common/figures.ts';
import { nth } from '../common/must.ts';
import { formatQuantity } from '../common/units.ts';
import { labelOf } from '../describe/kit.ts';
import { isPickup } from '../parts/index.ts';
import { columns } from './columns.ts';

const HEADS = ['resonance', 'height', '−3 dB at', 'reference', 'height', 'off by', '', ''];
/** Lower than this nobody hears it. Decibels. */
const SILENT = -150;

/**
 * One line for each sounding pickup in each state, beside that in its reference harness, and one for them together where
 * there are several.
 *
 * @param steps also say the setting of the knobs, which differs from line to line
 */
export function responseTable(states: readonly StateResponse[], steps = false): string {
  const heads = ['position', ...(steps ? ['volume', 'tone'] : []), 'sounding', ...HEADS];
  const rows = states.flatMap((entry, k) => {
    const before = states[k - 1];
    const first = before?.index !== entry.index || before.state.output !== entry.state.output;
    return linesOf(entry).map((line, i) => [
      first && i === 0 ? placeCell(entry.state) : '',
      ...(steps ? [entry.knobs.volume, entry.knobs.tone].map((knob) => (i === 0 ? `${knob}` : '')) : []),
      ...line,
    ]);
  });
  return columns(heads, rows, steps ? 4 : 2);
}

/** The position, and which output of the jack, where it has several. */
function placeCell(state: State): string {
  const output = outputOf(state);
  return `${positionCell(state)}${output === undefined ? '' : `, ${output}`}`;
}

function linesOf({ state, pickups, together }: StateResponse): readonly (readonly string[])[] {
  const each = pickups.map((curve) => [
    voiceName(state, curve.pickup),
    ...shapeCells(curve),
    ...referenceCells(curve),
  ]);
  return together && pickups.length > 1 ? [...each, ['together', ...shapeCells(together)]] : each;
}

function shapeCells({ shape }: Curve): readonly string[] {
  if (shape.plateau <= SILENT) return ['no output', '', ''];
  return [...peakCells(shape), shape.cutoff === undefined ? 'over 20 kHz' : hertz(shape.cutoff)];
}

const peakCells = ({ resonance }: CurveShape): readonly string[] =>
  resonance ? [hertz(resonance.frequency), `${formatSigned(resonance.height, 1)} dB`] : ['no peak', ''];

function referenceCells({ reference, difference }: PickupCurve): readonly string[] {
  const { frequency, percent, height } = difference;
  return [
    ...peakCells(reference.shape),
    frequency === undefined ? '' : `${formatSigned(frequency, 0)} Hz`,
    percent === undefined ? '' : `${formatSigned(percent, 1)} %`,
    height === undefined ? '' : `${formatSigned(height, 1)} dB`,
  ];
}

const hertz = (frequency: number): string => `${Math.round(frequency)} Hz`;

/** What the figures hold for, in a line above the table. */
export function responseHead({ kit }: Circuit, knobs?: Knobs): string {
  const { cable, amplifier } = kit.outputLoad;
  const setting = knobs ? `volume ${knobs.volume}, tone ${knobs.tone}; ` : '';
  const load = `cable ${formatQuantity(cable.value, 'farad')}, amplifier ${formatQuantity(amplifier.value, 'ohm')}`;
  const replaced = substitutionLines(kit).map((line) => `${line}\n`);
  return `${kit.title}\n${replaced.join('')}${setting}${load}; peak heights relative to the level at 100 Hz${kit.parts.some((part) => isPickup(part) && !part.coreLoss) ? ', core loss neglected' : ''}`;
}

interface Column {
  readonly head: string;
  readonly gain: readonly number[];
}

/**
 * A row a frequency: hertz, then decibels of every state, of each of its pickups alone where it has several, and of
 * every pickup's reference. −200 stands for silence.
 */
export function responseCsv(circuit: Circuit, { frequencies, states }: FrequencyResponse): string {
  const columns = [
    ...states.flatMap((state) => columnsOf(circuit, state)),
    ...referenceColumns(circuit, states),
  ];
  const rows = frequencies.map((frequency, i) => [
    frequency.toFixed(2),
    ...columns.map(({ gain }) => level(nth(gain, i))),
  ]);
  const heads = ['frequency in Hz', ...columns.map(({ head }) => `${head}, dB`)];
  return `${csvFormatRows([heads, ...rows])}\n`;
}

function columnsOf(circuit: Circuit, { state, pickups, together }: StateResponse): readonly Column[] {
  const name = placeCell(state);
  const all = together ? [{ head: `${name}: ${soundingText(circuit, state)}`, gain: together.gain }] : [];
  const alone = pickups.length > 1 ? pickups : [];
  return [
    ...all,
    ...alone.map(({ pickup, gain }) => ({ head: `${name}: from ${labelOf(circuit.kit, pickup)}`, gain })),
  ];
}

/** Once each, in the order written: a reference is the same in every state. */
function referenceColumns(circuit: Circuit, states: readonly StateResponse[]): readonly Column[] {
  const all = states.flatMap((state) => state.pickups);
  return circuit.kit.parts.flatMap(({ name, label }): Column[] => {
    const found = all.find((one) => one.pickup === name);
    return found ? [{ head: `reference: ${label}`, gain: found.reference.gain }] : [];
  });
}

/** Adding zero turns −0.000 into 0.000. */
const level = (gain: number): string => (Math.round(decibels(gain) * 1000) / 1000 + 0).toFixed(3);
