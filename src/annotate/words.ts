/** Sentences of the sheet: the lines that say what is seen, and the description for those who cannot see the picture. */

import type { Circuit, State } from '../circuit/circuit.ts';
import { placeText } from '../circuit/position.ts';
import { type Hand, type JointKind, type Kit, labelOf, type View } from '../describe/kit.ts';
import type { MessageKey } from '../messages/en.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { apartIn, lugInSentence, positionWords } from '../messages/words.ts';
import { contactAt, controlsOf, partOfControl } from '../parts/index.ts';
import type { Card } from './cards.ts';
import type { LineColour } from './lines.ts';

/** The side it is seen from and the hand it is built for. */
export const viewLine = (view: View, hand: Hand, language: Language): string =>
  view === 'solder-side'
    ? sayIn(language)('view.solder-side', { hand })
    : sayIn(language)('view.component-side', { hand });

/** What of a drawing's lines has to be explained. */
export interface LineNotes {
  /** Some line crosses another. */
  readonly crossings: boolean;
  /** Some line has a colour, and whether all of them have the colour of their insulation, or that of their signal. */
  readonly colours?: LineColour | 'both';
  /** Some line has letters. */
  readonly letters: boolean;
  /** The drawing that it is read beside may be in any position, so none is named. */
  readonly anyState?: true;
}

const COLOURS = {
  insulation: 'lines.insulation',
  both: 'lines.both',
  signal: 'lines.signal',
} as const satisfies Readonly<Record<LineColour | 'both', MessageKey>>;

/** Where the switches and blends are, by their labels: `Selector in position 2, Tone pulled out`. */
export const settingText = ({ kit }: Circuit, { positions, positionNames }: State): string =>
  Object.entries(positions)
    .map(
      ([id, position]) =>
        `${labelOf(kit, partOfControl(id))} ${placeText(position, positionNames[id], kit.language)}`,
    )
    .join(', ');

/** How the switches and controls are drawn, and how to read the lines. */
export function stateLine(
  { kit, states }: Circuit,
  state: State | undefined,
  { crossings, colours, letters, anyState }: LineNotes,
): string {
  const { language } = kit;
  const say = sayIn(language);
  const drawn = kit.parts.flatMap((part) => {
    const contact = contactAt(part, state?.positions[part.name]);
    return contact ? [`${part.label} ${placeText(contact.position, contact.called, language)}`] : [];
  });
  return [
    ...(drawn.length === 0 || anyState ? [] : [`${drawn.join(', ')}.`]),
    ...controlsLine(kit, anyState ? undefined : (state ?? states[0])),
    ...(crossings ? [say('lines.crossing')] : []),
    ...(colours === undefined ? [] : [say(COLOURS[colours])]),
    ...(letters && (colours === undefined || colours === 'signal') ? [say('lines.letters')] : []),
  ].join(' ');
}

/** Where the controls stand: `All controls on 10, Blend at centre.` */
function controlsLine(kit: Kit, state: State | undefined): readonly string[] {
  const controls = kit.parts.flatMap(controlsOf);
  const blends = controls.flatMap(({ id, part }) =>
    state?.turned?.[id] === undefined
      ? []
      : [`${labelOf(kit, part)} ${positionWords(kit.language, state.positionNames[id] ?? '')}`],
  );
  if (controls.length === 0) return [];
  if (blends.length === controls.length) return [`${blends.join(', ')}.`];
  return [`${[sayIn(kit.language)('controls.full'), ...blends].join(', ')}.`];
}

/** What sounds and what each pickup sees, state by state. */
export const describeCards = (cards: readonly Card[]): string =>
  cards
    .map((card) => {
      const say = sayIn(card.language);
      const rows = card.rows.map(({ label, dcLoad, signalLoad, level }) => {
        const words = say('desc.load', { pickup: label, dc: dcLoad, signal: signalLoad });
        return level === undefined ? words : `${words}, ${level}`;
      });
      const title = card.joined === undefined ? card.title : `${card.title}, ${card.joined}`;
      const first =
        card.badge === '' ? `${title}.` : say('desc.position', { position: card.badge, words: title });
      return rows.length === 0 ? first : `${first} ${apartIn(card.language, rows)}.`;
    })
    .join(' ');

const JOINTS = {
  wire: 'joint.wire',
  leg: 'joint.leg',
  jumper: 'joint.jumper',
  bend: 'joint.bend',
  braid: 'joint.braid',
} as const satisfies Readonly<Record<JointKind, MessageKey>>;

/** The joints one by one. */
export function describeJoints(circuit: Circuit): string {
  const { kit } = circuit;
  const say = sayIn(kit.language);
  const end = ({ part, lug }: { part: string; lug: string }): string =>
    `${labelOf(kit, part)} ${lugInSentence(kit.language, lug)}`;
  const joints = circuit.joints.map(({ kind, from, to }) =>
    say('desc.joint', { joint: say(JOINTS[kind]), from: end(from), to: end(to) }),
  );
  return say('desc.joints', { joints: apartIn(kit.language, joints) });
}
