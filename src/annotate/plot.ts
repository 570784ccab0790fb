/** The response as a plot shows it: curves in decibels, marks and words, before anything has a place. */

import {
  type Curve,
  type CurveShape,
  decibels,
  type FrequencyResponse,
  type Knobs,
  type PickupCurve,
  type StateResponse,
} from '../analyse/index.ts';
import { type Circuit, outputOf, type State, voiceName } from '../circuit/circuit.ts';
import { formatDecibels, formatHertz, formatSigned } from '../common/figures.ts';
import { nth } from '../common/must.ts';
import { andList } from '../common/quoting.ts';
import { formatQuantity } from '../common/units.ts';
import { labelOf } from '../describe/kit.ts';
import { isPickup } from '../parts/index.ts';
import { soundingText } from './cards.ts';
import { badgeOf } from './combinations.ts';
import { tintOfPickup } from './lines.ts';
import { substitutionLines } from './stock-notes.ts';

/** A point of a curve that is marked, and what is written at it. */
export interface PlotMark {
  /** Hertz. */
  readonly frequency: number;
  /** Decibels. */
  readonly level: number;
  readonly words: readonly string[];
}

export interface Trace {
  /** Decibels at each frequency of the plot; 0 is one volt at the jack per volt induced. */
  readonly levels: readonly number[];
  /** Decibels at 100 Hz. */
  readonly plateau: number;
  readonly resonance?: PlotMark;
  readonly cutoff?: PlotMark;
}

/** What one or more pickups were made for: those whose references no eye can tell apart share a trace. */
interface PlotReference {
  readonly words: string;
  readonly trace: Trace;
}

/** One pickup against its reference. */
interface PlotRow {
  readonly label: string;
  readonly words: string;
}

export interface PlotState {
  /** As on the load cards. */
  readonly badge: string;
  readonly name: string;
  /** One tint a sounding pickup. */
  readonly tints: readonly string[];
  /** How many states before this one have the same tints. */
  readonly variant: number;
  /** Absent when nothing is heard. */
  readonly trace?: Trace;
  readonly references: readonly PlotReference[];
  readonly rows: readonly PlotRow[];
}

export interface Plot {
  /** Prefix of every id: the kit's own with `-response`, so that plot and diagram can stand on one page. */
  readonly id: string;
  readonly title: string;
  /** Small under the title. */
  readonly lines: readonly string[];
  /** For those who cannot see the picture. */
  readonly description: string;
  readonly frequencies: readonly number[];
  readonly states: readonly PlotState[];
  readonly references: readonly PlotReference[];
}

const HALF_POWER = 10 * Math.log10(2);
/** Traces nearer than this are one line on paper. Decibels. */
const SAME = 0.2;
/** With more settings than this, those that nobody could tell apart are one. */
const MOST_PLOTS = 12;
/** About the width of a line. Decibels. */
const UNSEEN = 0.1;
/** Lower than this nobody hears it: a volume at 0. Decibels. */
const SILENT = -150;

/** The plot of a solved response; `knobs` is the setting it was solved at. */
export function plotOf(circuit: Circuit, response: FrequencyResponse, knobs: Knobs): Plot {
  const { kit } = circuit;
  const all = response.states.map((solved): Solved => {
    const tints = solved.state.sounding.map((pickup) => tintOfPickup(circuit, pickup));
    const output = outputOf(solved.state);
    const heard = solved.together && solved.together.shape.plateau > SILENT ? solved.together : undefined;
    return {
      settings: [solved.state],
      name: [soundingText(circuit, solved.state), ...(output === undefined ? [] : [`(${output})`])].join(' '),
      tints,
      ...(heard ? { trace: traceOf(heard) } : {}),
      references: heard ? referencesOf(solved.pickups, kit) : [],
      rows: solved.pickups.map((pickup) =>
        rowOf(pickup, voiceName(solved.state, pickup.pickup, labelOf(kit, pickup.pickup))),
      ),
    };
  });
  const seen: string[] = [];
  const states = (all.length > MOST_PLOTS ? merged(all) : all).map(({ settings, ...rest }): PlotState => {
    const variant = seen.filter((one) => one === rest.tints.join()).length;
    seen.push(rest.tints.join());
    return { ...rest, badge: badgeOf(settings) || '•', variant };
  });
  const plot = {
    id: `${kit.id}-response`,
    title: kit.title,
    lines: [...linesUnderTitle(circuit, knobs), ...substitutionLines(kit).map((line) => `${line}.`)],
    frequencies: response.frequencies,
    states,
    references: referencesOf(eachOnce(response.states, kit.parts), kit),
  };
  return { ...plot, description: descriptionOf(plot) };
}

/** What is solved in some settings, before it is known which others are alike. */
type Solved = Omit<PlotState, 'badge' | 'variant'> & { readonly settings: readonly State[] };

/** Settings of the same pickups whose traces nobody could tell apart, as one. */
function merged(all: readonly Solved[]): readonly Solved[] {
  const groups: Solved[] = [];
  for (const one of all) {
    const at = groups.findIndex((other) => isLike(one, other));
    const other = groups[at];
    if (other) groups[at] = { ...other, settings: [...other.settings, ...one.settings] };
    else groups.push(one);
  }
  return groups;
}

const isLike = (a: Solved, b: Solved): boolean =>
  a.name === b.name &&
  JSON.stringify(a.rows) === JSON.stringify(b.rows) &&
  (a.trace && b.trace ? alike(a.trace, b.trace, UNSEEN) : a.trace === b.trace);

function linesUnderTitle({ kit }: Circuit, knobs: Knobs): readonly string[] {
  const cable = formatQuantity(kit.outputLoad.cable.value, 'farad');
  const amplifier = formatQuantity(kit.outputLoad.amplifier.value, 'ohm');
  return [
    `Response: output voltage at the jack for 1 V induced in each selected coil. Volume ${knobs.volume}, tone ${knobs.tone}; cable ${cable}, amplifier ${amplifier}.`,
    'Dashed grey: the pickup’s reference harness, at the same setting. Peak heights relative to the level at 100 Hz' +
      (kit.parts.some((part) => isPickup(part) && !part.coreLoss) ? ', core loss neglected.' : '.'),
  ];
}

/** Every pickup that sounds anywhere, once, in the order written; a reference is the same in every state. */
function eachOnce(states: readonly StateResponse[], parts: Circuit['kit']['parts']): readonly PickupCurve[] {
  const all = states.flatMap((state) => state.pickups);
  return parts.flatMap((part) => all.find((one) => one.pickup === part.name) ?? []);
}

/** References that lie on one another are drawn once and named together. */
function referencesOf(pickups: readonly PickupCurve[], kit: Circuit['kit']): readonly PlotReference[] {
  const groups: { readonly trace: Trace; readonly names: string[] }[] = [];
  for (const { pickup, reference } of pickups) {
    const trace = traceOf(reference);
    if (trace.plateau <= SILENT) continue;
    const name = labelOf(kit, pickup);
    const group = groups.find((one) => alike(one.trace, trace));
    if (group) group.names.push(name);
    else groups.push({ trace, names: [name] });
  }
  return groups.map(({ trace, names }) => ({ trace, words: `reference, ${andList(names)}` }));
}

const alike = (a: Trace, b: Trace, within = SAME): boolean =>
  a.levels.every((level, i) => Math.abs(level - nth(b.levels, i)) < within);

const traceOf = ({ gain, shape }: Curve): Trace => ({ levels: gain.map(decibels), ...marksOf(shape) });

const marksOf = ({ plateau, resonance, cutoff }: CurveShape): Omit<Trace, 'levels'> => ({
  plateau,
  ...(resonance
    ? {
        resonance: {
          frequency: resonance.frequency,
          level: resonance.level,
          words: [formatHertz(resonance.frequency), formatDecibels(resonance.height)],
        },
      }
    : {}),
  ...(cutoff === undefined
    ? {}
    : {
        cutoff: {
          frequency: cutoff,
          level: plateau - HALF_POWER,
          words: [`−3 dB at ${formatHertz(cutoff)}`],
        },
      }),
});

function rowOf({ shape, reference, difference }: PickupCurve, label: string): PlotRow {
  const { percent, height } = difference;
  if (shape.plateau <= SILENT) return { label, words: 'no output' };
  if (percent === undefined || height === undefined) {
    if (shape.resonance) return { label, words: 'a peak; the reference has none' };
    return {
      label,
      words: reference.shape.resonance ? 'no peak; the reference has one' : 'no peak in either',
    };
  }
  const [apart, higher] = [formatSigned(percent, 0), formatDecibels(height)];
  const same = Number(apart) === 0 && higher === '0.0 dB';
  return { label, words: same ? 'as designed' : `${apart} %, peak ${higher}` };
}

function descriptionOf({ lines, states }: Pick<Plot, 'lines' | 'states'>): string {
  const each = states.map(({ badge, name, trace, rows }) => {
    if (!trace) return `Position ${badge}: ${name}, no output.`;
    const { resonance, cutoff } = trace;
    const peak = resonance ? `resonance ${resonance.words.join(', ')}` : 'no resonance';
    const fall = cutoff ? `, ${cutoff.words.join(' ')}` : '';
    const against = rows.map((row) => `${row.label} against its reference: ${row.words}`);
    return `Position ${badge}: ${name}, ${peak}${fall}. ${against.join('; ')}.`;
  });
  return `${lines[0]} ${each.join(' ')}`;
}
