/** The companion pass: one load card a state, as text and shares, measured before anything is placed. */

import { type PickupLoads, type StateLoads, type Treble, trebleOf } from '../analyse/index.ts';
import { type Circuit, type State, voiceName } from '../circuit/circuit.ts';
import { whereText } from '../circuit/position.ts';
import { labelOf } from '../describe/kit.ts';
import { figuresIn } from '../messages/figures.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { listIn, lugWords } from '../messages/words.ts';
import { contactAt, isPickup, type Part, partOfControl } from '../parts/index.ts';
import { badgeOf, combinationsIn } from './combinations.ts';
import { humText, joiningText, type Labels, levelText } from './joining.ts';
import { blendText, calledOf, type Positioned, positionedIn } from './positioned.ts';

/** One pickup's figures on a card. */
export interface CardRow {
  readonly pickup: string;
  readonly label: string;
  /** One coil of the pickup alone. */
  readonly split?: true;
  readonly dcLoad: string;
  readonly signalLoad: string;
  /** Signal load as a multiple of the reference; 1 is the harness the pickup was made for. */
  readonly ratio: number;
  /** `as designed`, `+31 %, brighter`, `−35 %, heavier load`; `treble cut, −12 dB` where the load is not what one hears. */
  readonly verdict: string;
  /** `5.0 dB quieter`, where it is quieter than the others. */
  readonly level?: string;
}

/** A switch drawn small with its contacts. */
export interface CardSwitch {
  readonly part: Part;
  readonly closed: readonly (readonly string[])[];
}

export interface Card {
  /** That it is worded in. */
  readonly language: Language;
  /** Numbers of the states it is of: more than one where they are alike in all it says. */
  readonly states: readonly number[];
  /** Of a card of several states which these are, in words: `with Kill pressed`. */
  readonly where?: string;
  /** Short, in the badge: `1`; for several switches `1·2`, `1·1/2` for two positions that are alike; empty where the kit has none. */
  readonly badge: string;
  /** The same by switch, as their faces say it: `1/2` and `in`; one after another where several combinations are meant. */
  readonly combinations: readonly (readonly string[])[];
  readonly title: string;
  /** `in parallel, out of phase`, where several sound; `hum-cancelling`. */
  readonly joined?: string;
  readonly rows: readonly CardRow[];
  /** Those that are in one position in all of its states. */
  readonly switches: readonly CardSwitch[];
  /** A switch is left out, as it may be in several positions. */
  readonly undrawn?: true;
  /** The same of every card; left out where a kit has no position to choose. */
  readonly positioned?: readonly Positioned[];
  /** Meter reading at the jack, volume on 10; marked `assumed` where the pickup's resistance is a default. */
  readonly meter: string;
  /** What stands before the reading of a jack with several outputs. */
  readonly measured?: string;
}

/** What the cards’ bars, ticks and readings are, once for all of them. */
export function cardsSay(
  cards: readonly Card[],
  frequency: number,
  language: Language,
  /** Whether the kit has a tone control. */
  toned: boolean,
): readonly string[] {
  const say = sayIn(language);
  const joinedSays = (words: string): boolean => cards.some(({ joined }) => joined?.includes(words) === true);
  const some = (holds: (row: CardRow) => boolean): boolean => cards.some(({ rows }) => rows.some(holds));
  const cut = say('verdict.treble-cut', { level: '' });
  return [
    ...badgeSays(cards, language),
    say('cards.dc-load'),
    say('cards.signal-load', {
      frequency: figuresIn(language).plainHertz(frequency),
      toned: toned ? 'yes' : 'no',
    }),
    say('cards.bar'),
    say('cards.multimeter'),
    ...(some(({ level }) => level !== undefined) || joinedSays(say('level.down', { level: 'dB' }))
      ? [say('cards.level'), say('cards.level-alone')]
      : []),
    ...(some(({ verdict }) => verdict.startsWith(cut)) ? [say('cards.treble')] : []),
    ...(joinedSays(say('joined.series')) ? [say('cards.series')] : []),
    ...(some(({ split }) => split === true) ? [say('cards.split')] : []),
    ...(joinedSays(say('joined.hum')) ? [say('cards.hum')] : []),
  ];
}
/** Which switch each number of a badge is of, and what else a position is called. */
function badgeSays(cards: readonly Card[], language: Language): readonly string[] {
  const say = sayIn(language);
  const [first] = cards;
  const positioned =
    first?.positioned ??
    first?.switches.map(
      ({ part }): Positioned => ({ label: part.label, called: calledOf(part, language) }),
    ) ??
    [];
  const [only, ...more] = positioned;
  if (!only) return [];
  if (isTable(cards)) return [say('cards.columns')];
  const named = positioned.map(({ label, called }) =>
    called.length === 0 ? label : `${label} (${called.join(', ')})`,
  );
  // A blend has nothing written on it.
  const faced = positioned.some(({ plain }) => plain) ? 'no' : 'yes';
  const either = cards.map(({ badge }) => /\d+(?:\/\d+)+/.exec(badge)?.[0]).find((one) => one !== undefined);
  return [
    more.length === 0
      ? say('cards.number', { switch: named.join(''), faced })
      : say('cards.numbers', { switches: named.join(' · '), faced }),
    ...(either === undefined
      ? []
      : [say('cards.either', { numbers: either, positions: listIn(language, either.split('/')) })]),
    ...(cards.some(({ undrawn }) => undrawn) ? [say('cards.undrawn')] : []),
  ];
}

/** One card for every state that is not as an earlier one in all that a card says, in the order of the states. */
export function cardsOf(
  circuit: Circuit,
  loads: readonly StateLoads[],
  /** The jack's output, or each of several, to its sleeve, by state, ohms. */
  jack: readonly (number | readonly number[])[],
): readonly Card[] {
  const treble = trebleOf(circuit);
  const { language } = circuit.kit;
  const say = sayIn(language);
  const figures = figuresIn(language);
  const all = circuit.states.map((state, index): Card => {
    const readings = [jack[index] ?? []].flat();
    const names = state.outputs?.map(({ name }) => `${lugWords(language, name)} `);
    const own = loads[index];
    const label: Labels = (name) => voiceName(state, name, labelOf(circuit.kit, name), language);
    const said = own
      ? [joiningText(own, label, language), humText(own, language)].filter((one) => one !== undefined)
      : [];
    const meter = readings.map((ohms, i) => `${names?.[i] ?? ''}${figures.figure(ohms, 'ohm')}`).join(', ');
    return {
      language,
      states: [index],
      badge: badgeOf([state]),
      combinations: combinationsIn(circuit, [state]),
      title: soundingText(circuit, state),
      ...(said.length === 0 ? {} : { joined: said.join(', ') }),
      rows: (own?.pickups ?? []).map((entry) =>
        row(
          entry,
          label(entry.pickup),
          state.coils?.[entry.pickup] !== undefined,
          treble[index]?.get(entry.pickup),
          language,
        ),
      ),
      switches: circuit.kit.parts.flatMap((part): CardSwitch[] => {
        const contact = contactAt(part, state.positions[part.name]);
        return contact ? [{ part, closed: contact.joins }] : [];
      }),
      meter:
        readings.length === 0
          ? say('meter.none')
          : isAssumed(circuit, state)
            ? say('meter.assumed', { reading: meter })
            : meter,
      ...(names ? { measured: say('meter.outputs') } : {}),
    };
  });
  const positioned = positionedIn(circuit);
  const cards = merged(circuit, all).map((card) => ({
    ...card,
    // Where a card of several states has its blends is said with its switches.
    ...joinedWith(card.where === undefined ? blendText(circuit, card.states) : '', card.joined),
    ...(positioned.length === 0 ? {} : { positioned }),
  }));
  return isTable(cards) ? bySounding(cards) : cards;
}

/** How the pickups of a card are joined, after where its blends stand. */
function joinedWith(blends: string, joined: string | undefined): Pick<Card, 'joined'> {
  const words = [blends, joined ?? ''].filter((text) => text !== '').join(', ');
  return words === '' ? {} : { joined: words };
}

/** Cards alike in title, figures and reading as one: a switch that changes something else, such as a treble bleed, repeats them. */
function merged(circuit: Circuit, cards: readonly Card[]): readonly Card[] {
  const { states } = circuit;
  const like = new Map<string, Card[]>();
  for (const card of cards) {
    const { title, joined, rows, meter } = card;
    // Figures solved in two positions may differ in their last digits, where nobody sees it.
    const seen = rows.map((row) => ({ ...row, ratio: row.ratio.toPrecision(6) }));
    const key = JSON.stringify([title, joined, seen, meter]);
    like.set(key, [...(like.get(key) ?? []), card]);
  }
  return [...like.values()].flatMap(([first, ...others]): Card[] => {
    if (!first) return [];
    const numbers = [first, ...others].flatMap((card) => card.states);
    const own = numbers.flatMap((index) => states[index] ?? []);
    if (own.length === 1) return [first];
    const still = first.switches.filter(
      ({ part }) => new Set(own.map(({ positions }) => positions[part.name])).size === 1,
    );
    const where = whereText(
      circuit,
      own,
      states,
      (id) => labelOf(circuit.kit, partOfControl(id)),
      circuit.kit.language,
    ).trim();
    return [
      {
        ...first,
        states: numbers,
        badge: badgeOf(own),
        combinations: combinationsIn(circuit, own),
        ...(where === '' ? {} : { where }),
        switches: still,
        ...(still.length < first.switches.length ? { undrawn: true as const } : {}),
      },
    ];
  });
}

/** More cards than this are not looked through: they become a table. */
const MOST_CARDS = 12;
export const isTable = ({ length }: readonly Card[]): boolean => length > MOST_CARDS;

/** Cards of the same pickups next to each other, in the order in which they are first met. */
function bySounding(cards: readonly Card[]): readonly Card[] {
  const groups = new Map<string, Card[]>();
  for (const card of cards) {
    const key = JSON.stringify([card.title, card.joined]);
    groups.set(key, [...(groups.get(key) ?? []), card]);
  }
  return [...groups.values()].flat();
}

const isAssumed = ({ kit }: Circuit, state: State): boolean =>
  kit.parts.some(
    (part) => isPickup(part) && state.sounding.includes(part.name) && part.resistance.from === 'default',
  );

/** Labels of the pickups that sound: `Middle + Bridge`; `No output` where it is silent on purpose. */
export const soundingText = ({ kit }: Circuit, state: State): string =>
  state.sounding.map((name) => voiceName(state, name, labelOf(kit, name), kit.language)).join(' + ') ||
  sayIn(kit.language)('sounding.none');

function row(
  loads: PickupLoads,
  label: string,
  split: boolean,
  treble: Treble | undefined,
  language: Language,
): CardRow {
  const ratio = loads.signalLoad / loads.reference.signalLoad;
  const level = levelText(loads, language);
  const figures = figuresIn(language);
  return {
    pickup: loads.pickup,
    label,
    ...(split ? { split: true as const } : {}),
    dcLoad: figures.figure(loads.dcLoad, 'ohm'),
    signalLoad: figures.figure(loads.signalLoad, 'ohm'),
    ratio,
    verdict: verdictOf(ratio, treble, loads.series.length > 0, language),
    ...(level === undefined ? {} : { level }),
  };
}

/** Decibels at the reference's −3 dB point that an ear takes for a loss of treble (common practice, no source). */
const DULL = 1;

/** Per cent from the reference within which a load is as designed: less than pots differ by (common practice, no source). */
const AS_DESIGNED = 10;

/**
 * A load is heavy when its resistance is low: fewer ohms take more from the pickup. What a capacitor takes no resistance shows,
 * pickups in parallel have their resonance higher in spite of a heavier load, and those in series have it lower in spite of a lighter
 * one, so the word follows the solved treble.
 */
function verdictOf(ratio: number, treble: Treble | undefined, inSeries: boolean, language: Language): string {
  const say = sayIn(language);
  const figures = figuresIn(language);
  if (treble?.lost)
    return say('verdict.treble-cut', { level: figures.of(`−${Math.round(-treble.level)} dB`) });
  if (!Number.isFinite(ratio)) return say('verdict.no-load');
  const share = Math.round((ratio - 1) * 100);
  const percent = figures.percent(share, '±');
  const lower = treble?.lower ?? false;
  if (lower && inSeries && share >= -AS_DESIGNED && (share > AS_DESIGNED || (treble?.level ?? 0) < -DULL))
    return say('verdict.duller-in-series', { percent });
  if (Math.abs(share) <= AS_DESIGNED)
    return treble && treble.level < -DULL ? say('verdict.duller', { percent }) : say('verdict.as-designed');
  if (share < 0)
    return treble?.lower === false ? say('verdict.heavier', { percent }) : say('verdict.duller', { percent });
  return lower ? say('verdict.yet-duller', { percent }) : say('verdict.brighter', { percent });
}
