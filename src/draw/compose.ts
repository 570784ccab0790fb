/** From a placed circuit to the sheet of one of its drawings: the whole, a state or a step, seen from either side. */

import { hasTone, readOutputs, type StateLoads } from '../analyse/index.ts';
import { cardsOf, cardsSay, soundingText } from '../annotate/cards.ts';
import { type Line, linesOf, tintOfPickup } from '../annotate/lines.ts';
import { liveJoints } from '../annotate/live.ts';
import { padsOf } from '../annotate/pads.ts';
import { type Step, stepsOf } from '../annotate/steps.ts';
import { substitutionLines } from '../annotate/stock-notes.ts';
import {
  describeCards,
  describeJoints,
  type LineNotes,
  settingText,
  stateLine,
  viewLine,
} from '../annotate/words.ts';
import type { Circuit, State } from '../circuit/circuit.ts';
import { remembered } from '../common/remembered.ts';
import { type Hand, labelOf } from '../describe/kit.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { isPickup, partOfControl } from '../parts/index.ts';
import type { Arrangement } from '../place/arrangement.ts';
import { crossingsIn } from '../place/openings.ts';
import type { Placement } from '../place/placement.ts';
import { storedOf } from '../place/stored.ts';
import { flipped } from '../place/view.ts';
import { type BareLeg, bareLegs, bareLegText } from './bare-legs.ts';
import { recordOf } from './canvas.ts';
import { leastWidth, readableAcross } from './column.ts';
import { drawingId, drawingName, type Variant } from './drawing-name.ts';
import type { Page } from './head.ts';
import { hooksOf, settingIn } from './hooks.ts';
import { markOfTexts } from './mark.ts';
import { inOrder, type Piece, titleOf } from './pieces.ts';
import { contentsOf, drawSheet, type Sheet } from './sheet.ts';
import { planOf } from './sheets.ts';
import { type Theme, themes } from './theme.ts';
import { type Emphasis, insulationOf } from './wires.ts';

/** What of a kit's drawings does not change with view, state, step or theme. The placement is what takes time. */
export interface Prepared {
  readonly circuit: Circuit;
  readonly loads: readonly StateLoads[];
  readonly hand: Hand;
  readonly placement: Placement;
  /** What it was placed by, where that is known: it tells what distances are on the instrument. */
  readonly arrangement?: Arrangement;
  /** Of the kit as it is placed usually, where this is the kit placed anew for a column: both show one revision. */
  readonly mark?: string;
}

/** Which of a kit's drawings is wanted, and the page it is fitted to. */
export interface Aspect extends Variant {
  readonly page?: Page;
  /** Printed beside the revision mark; as it is given, such as `2026-11-30`. */
  readonly date?: string;
}

/**
 * From the placed circuit to all that one of its drawings shows.
 *
 * @param mark in place of the circuit's own revision mark
 */
export const sheetOf = (prepared: Prepared, aspect: Aspect = {}, mark = markOf(prepared)): Sheet => ({
  ...unmarked(prepared, aspect),
  revision: { mark, ...(aspect.date === undefined ? {} : { date: aspect.date }) },
});

/**
 * The revision mark of all drawings of a placed circuit: its main sheet's, and what its steps say. View, theme, page and date do
 * not count, since they show the same joints and figures another way; places of parts and wires do, save those in a column.
 */
export const markOf = remembered((prepared: Prepared): string => {
  if (prepared.mark !== undefined) return prepared.mark;
  const { circuit, hand, placement } = prepared;
  // One that is read from a drawing is another object each time, and mostly the same placement.
  const known = marksOf(circuit);
  const key = JSON.stringify([hand, storedOf(placement, circuit.joints)]);
  const mark = known.get(key) ?? newMark(prepared);
  known.set(key, mark);
  return mark;
});

/** Marks by hand and placement of one circuit. */
const marksOf = remembered((_: Circuit) => new Map<string, string>());

const newMark = (prepared: Prepared): string =>
  markOfTexts([
    // What ids begin with is of no matter to whoever reads the sheet.
    recordOf((root) =>
      drawSheet(root, { ...unmarked(prepared), id: drawingName(prepared.circuit, prepared.hand, {}) }),
    ),
    ...stepsOf(prepared.circuit).flatMap(({ title, lines }) => [title, ...lines]),
  ]);

function unmarked(prepared: Prepared, aspect: Aspect = {}): Sheet {
  const { circuit, loads, hand, placement } = prepared;
  const { kit } = circuit;
  const { language } = kit;
  const { view = kit.view, page, sheet = 1 } = aspect;
  const state = aspect.state === undefined ? undefined : circuit.states[aspect.state];
  const steps = aspect.step === undefined ? [] : stepsOf(circuit);
  const step = steps.find(({ number }) => number === aspect.step);
  const theme = themes[aspect.theme ?? 'light'];
  const given = linesOf(circuit);
  const lines = aspect.lines === 'signal' ? given.map(({ look, tint }) => ({ look, tint })) : given;
  const cards = cardsOf(circuit, loads, readOutputs(circuit));
  const only = aspect.only === undefined || aspect.only.length === 0 ? undefined : inOrder(aspect.only);
  const shows = (piece: Piece): boolean => only === undefined || only.includes(piece);
  const say = sayIn(language);
  const stepLine = step
    ? say('step.of', {
        number: step.number,
        count: steps.length,
        title: withinSentence(language, step.title),
      })
    : '';
  const notes = notesOn(placement, lines, theme);
  // A key in a page lies beside a drawing that the page's script puts in any position.
  const anyState = aspect.mode === 'inline' && !state ? { anyState: true as const } : {};
  const replaced = substitutionLines(kit, language).map((line) => `${line}.`);
  const views = [
    viewLine(view, hand, language),
    ...(step ? [`${stepLine} ${say('step.new', { how: theme.monochrome ? 'dotted' : 'other' })}`] : []),
    // A key by itself tells of crossings whether its drawing has any or not, as it tells of what can be anywhere.
    ...(step
      ? []
      : [stateLine(circuit, state, shows('drawing') ? notes : { ...notes, crossings: true, ...anyState })]
    ).filter((line) => line !== ''),
    ...(state || !shows('drawing') ? [] : bareLegsOf(prepared, step)).map((one) => bareLegText(circuit, one)),
    ...(state ? [shownLine(circuit, state, theme)] : []),
    ...replaced,
  ];
  const pickups = kit.parts.filter(isPickup);
  const settings = kit.parts.map(
    (part) => [part.name, settingIn(circuit, state ?? circuit.states[0], part)] as const,
  );
  return {
    id: drawingId(circuit, hand, aspect),
    language,
    title: only ? titleOf(kit.title, only, language) : kit.title,
    ...(state && Object.keys(state.positions).length > 0 ? { setting: settingText(circuit, state) } : {}),
    headLines: views,
    description: [
      ...(sheet === 1 ? views : []),
      ...(step || !shows('cards') ? [] : [describeCards(cards)]),
      ...(step && shows('checklist') ? step.lines : []),
      ...(sheet === 1 && shows('drawing') ? [describeJoints(circuit)] : []),
    ].join(' '),
    placement: view === 'component-side' ? flipped(placement) : placement,
    lines,
    cards,
    switches: Object.keys(circuit.states[0]?.positions ?? {}).map((name) =>
      labelOf(kit, partOfControl(name)),
    ),
    legend: cardsSay(cards, kit.outputLoad.frequency.value, language, hasTone(circuit)),
    tints: new Map(pickups.map((part) => [part.name, tintOfPickup(circuit, part.name)])),
    pickups: new Map(
      pickups.map((part) => [tintOfPickup(circuit, part.name), say('key.hot', { pickup: part.label })]),
    ),
    highlighted: new Set(padsOf(circuit, loads).map((pad) => pad.part)),
    turned: new Map(settings.map(([name, { turned }]) => [name, turned])),
    closed: new Map(settings.flatMap(([name, { closed }]) => (closed ? [[name, closed]] : []))),
    ...(aspect.mode === 'inline'
      ? { hooks: hooksOf(circuit, state !== undefined || aspect.step !== undefined) }
      : {}),
    ...(state ? { emphasis: emphasisOfState(circuit, state) } : {}),
    ...(state && aspect.state !== undefined ? { shownState: aspect.state } : {}),
    ...(step
      ? {
          emphasis: emphasisOfStep(circuit, steps, step),
          checklist: step.lines,
          workLines: [stepLine, ...replaced],
        }
      : {}),
    ...(only ? { only } : {}),
    ...(page ? { page } : {}),
    ...(aspect.width === undefined ? {} : { width: aspect.width }),
    ...(aspect.sheet === undefined ? {} : { number: aspect.sheet }),
  };
}

/** A drawing's sheets, one by one: on a page it may take several, and may lie the other way round. */
export function sheetsOf(prepared: Prepared, aspect: Aspect = {}): readonly Aspect[] {
  const { sheet: _, ...whole } = aspect;
  if (!aspect.page || aspect.width !== undefined) return [whole];
  const contents = contentsOf(sheetOf(prepared, whole), themes[aspect.theme ?? 'light']);
  const { page, sheets } = planOf(contents, aspect.page);
  return sheets.map((_, i) => ({ ...whole, page, ...(i === 0 ? {} : { sheet: i + 1 }) }));
}

/** The least width of the column that a drawing is composed for, where it is wider than what is asked for. */
export function wantedWidth(prepared: Prepared, aspect: Aspect): number | undefined {
  const { width } = aspect;
  if (width === undefined) return undefined;
  const least = leastWidth(contentsOf(sheetOf(prepared, aspect), themes[aspect.theme ?? 'light']));
  return width < least ? least : undefined;
}

/** The least width of a column, CSS pixels, in which the wiring's type is readable; absent where a drawing does not show it. */
export function readableWidth(
  prepared: Prepared,
  aspect: Aspect & { readonly width: number },
): number | undefined {
  const { drawing } = contentsOf(unmarked(prepared, aspect), themes[aspect.theme ?? 'light']);
  return drawing && readableAcross(drawing);
}

/** What a drawing of one position shows; where nothing is heard there is no signal path. */
const shownLine = (circuit: Circuit, state: State, { monochrome }: Theme): string =>
  state.sounding.length === 0
    ? sayIn(circuit.kit.language)('drawn.silent')
    : sayIn(circuit.kit.language)('drawn.selected', {
        pickups: soundingText(circuit, state),
        rest: monochrome ? 'dashed' : 'other',
      });

/** A title in the middle of a sentence: German alone writes its nouns with a capital there. */
const withinSentence = (language: Language, title: string): string =>
  language === 'de' ? title : title.toLocaleLowerCase(language);

/** Bare legs to sleeve; in a step those that come with it. */
const bareLegsOf = ({ circuit, placement }: Prepared, step: Step | undefined): readonly BareLeg[] =>
  bareLegs(circuit, placement).filter(({ leg }) => !step || step.joints.includes(leg));

/** What a drawing's lines need said, and nothing that it has not. */
function notesOn({ wires }: Placement, lines: readonly Line[], theme: Theme): LineNotes {
  const signals = lines.filter(({ look }) => look === 'signal');
  const wired = lines.filter(({ look }) => look === 'signal' || look === 'ground');
  const insulated = wired.filter((line) => insulationOf(line, theme).length > 0);
  const tinted = signals.some((line) => insulationOf(line, theme).length === 0);
  const colours = insulated.length > 0 ? (tinted ? 'both' : 'insulation') : 'signal';
  return {
    crossings: crossingsIn(wires).length > 0,
    ...(!theme.monochrome && wired.length > 0 ? { colours } : {}),
    letters: wires.some(({ joint }) => joint.colour !== undefined),
  };
}

const emphasisOfState = (circuit: Circuit, state: State): readonly Emphasis[] => {
  const live = liveJoints(circuit, state);
  return circuit.joints.map((_, i) => (live.has(i) ? 'plain' : 'pale'));
};

const emphasisOfStep = (circuit: Circuit, steps: readonly Step[], now: Step): readonly Emphasis[] => {
  const when = new Map(steps.flatMap(({ number, joints }) => joints.map((i) => [i, number] as const)));
  return circuit.joints.map((_, i) => {
    const number = when.get(i) ?? 0;
    return number > now.number ? 'absent' : number === now.number ? 'new' : 'plain';
  });
};
