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
import { formatSigned } from '../common/figures.ts';
import { nth } from '../common/must.ts';
import { labelOf } from '../describe/kit.ts';
import { figuresIn } from '../messages/figures.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { apartIn, listIn, lugWords } from '../messages/words.ts';
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
  /** That it is worded in. */
  readonly language: Language;
  /** Prefix of every id: other than that of any of the kit's drawings, so that plot and diagram can stand on one page. */
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

/** The plot of a solved response; `knobs` is the setting it was solved at, `id` what its ids begin with. */
export function plotOf(
  circuit: Circuit,
  response: FrequencyResponse,
  knobs: Knobs,
  id = `${circuit.kit.id}-response`,
): Plot {
  const { kit } = circuit;
  const { language } = kit;
  const all = response.states.map((solved): Solved => {
    const tints = solved.state.sounding.map((pickup) => tintOfPickup(circuit, pickup));
    const output = outputOf(solved.state);
    const heard = solved.together && solved.together.shape.plateau > SILENT ? solved.together : undefined;
    return {
      settings: [solved.state],
      name: [
        soundingText(circuit, solved.state),
        ...(output === undefined ? [] : [`(${lugWords(language, output)})`]),
      ].join(' '),
      tints,
      ...(heard ? { trace: traceOf(heard, language) } : {}),
      references: heard ? referencesOf(solved.pickups, kit) : [],
      rows: solved.pickups.map((pickup) =>
        rowOf(
          pickup,
          voiceName(solved.state, pickup.pickup, labelOf(kit, pickup.pickup), language),
          language,
        ),
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
    language,
    id,
    title: kit.title,
    lines: [
      ...linesUnderTitle(circuit, knobs),
      ...substitutionLines(kit, language).map((line) => `${line}.`),
    ],
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
  const say = sayIn(kit.language);
  const figures = figuresIn(kit.language);
  const neglected = kit.parts.some((part) => isPickup(part) && !part.coreLoss);
  return [
    say('plot.lead', {
      volume: figures.of(String(knobs.volume)),
      tone: figures.of(String(knobs.tone)),
      cable: figures.quantity(kit.outputLoad.cable.value, 'farad'),
      amplifier: figures.quantity(kit.outputLoad.amplifier.value, 'ohm'),
    }),
    say('plot.references', { loss: neglected ? 'neglected' : 'other' }),
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
    const trace = traceOf(reference, kit.language);
    if (trace.plateau <= SILENT) continue;
    const name = labelOf(kit, pickup);
    const group = groups.find((one) => alike(one.trace, trace));
    if (group) group.names.push(name);
    else groups.push({ trace, names: [name] });
  }
  return groups.map(({ trace, names }) => ({
    trace,
    words: sayIn(kit.language)('plot.reference-of', { pickups: listIn(kit.language, names) }),
  }));
}

const alike = (a: Trace, b: Trace, within = SAME): boolean =>
  a.levels.every((level, i) => Math.abs(level - nth(b.levels, i)) < within);

const traceOf = ({ gain, shape }: Curve, language: Language): Trace => ({
  levels: gain.map(decibels),
  ...marksOf(shape, language),
});

const marksOf = ({ plateau, resonance, cutoff }: CurveShape, language: Language): Omit<Trace, 'levels'> => ({
  plateau,
  ...(resonance
    ? {
        resonance: {
          frequency: resonance.frequency,
          level: resonance.level,
          words: [
            figuresIn(language).hertz(resonance.frequency),
            figuresIn(language).decibels(resonance.height),
          ],
        },
      }
    : {}),
  ...(cutoff === undefined
    ? {}
    : {
        cutoff: {
          frequency: cutoff,
          level: plateau - HALF_POWER,
          words: [sayIn(language)('plot.cutoff', { frequency: figuresIn(language).hertz(cutoff) })],
        },
      }),
});

function rowOf({ shape, reference, difference }: PickupCurve, label: string, language: Language): PlotRow {
  const say = sayIn(language);
  const figures = figuresIn(language);
  const { percent, height } = difference;
  if (shape.plateau <= SILENT) return { label, words: say('level.none') };
  if (percent === undefined || height === undefined) {
    if (shape.resonance) return { label, words: say('plot.only-here') };
    return {
      label,
      words: say(reference.shape.resonance ? 'plot.only-there' : 'plot.neither'),
    };
  }
  const same = [formatSigned(percent, 0), formatSigned(height, 1)].every((figure) => Number(figure) === 0);
  return {
    label,
    words: same
      ? say('verdict.as-designed')
      : say('plot.difference', { percent: figures.percent(percent), height: figures.decibels(height) }),
  };
}

function descriptionOf({ language, lines, states }: Pick<Plot, 'language' | 'lines' | 'states'>): string {
  const say = sayIn(language);
  const each = states.map(({ badge, name, trace, rows }) => {
    if (!trace) return say('desc.position', { position: badge, words: `${name}, ${say('level.none')}` });
    const { resonance, cutoff } = trace;
    const words = [
      name,
      resonance ? say('plot.resonance', { figures: resonance.words.join(', ') }) : say('plot.no-resonance'),
      ...(cutoff ? [cutoff.words.join(' ')] : []),
    ].join(', ');
    const against = rows.map((row) => say('plot.against', { pickup: row.label, words: row.words }));
    return `${say('desc.position', { position: badge, words })} ${apartIn(language, against)}.`;
  });
  return `${lines[0]} ${each.join(' ')}`;
}
