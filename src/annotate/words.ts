/** Sentences of the sheet: the lines that say what is seen, and the description for those who cannot see the picture. */

import type { Circuit, State } from '../circuit/circuit.ts';
import { placeText } from '../circuit/position.ts';
import { type Hand, type Kit, labelOf, type View } from '../describe/kit.ts';
import { colourNames } from '../describe/words.ts';
import { contactAt, controlsOf, partOfControl } from '../parts/index.ts';
import type { Card } from './cards.ts';
import type { LineColour } from './lines.ts';

const SIDES: Readonly<Record<View, string>> = {
  'solder-side': 'Seen from the solder side',
  'component-side': 'Seen from the component side, as if through the plate',
};

/** The side it is seen from and the hand it is built for. */
export const viewLine = (view: View, hand: Hand): string => `${SIDES[view]}; ${hand}-handed build.`;

/** What of a drawing's lines has to be explained. */
export interface LineNotes {
  /** Some line crosses another. */
  readonly crossings: boolean;
  /** Some line has a colour, and whether all of them have the colour of their insulation, or that of their signal. */
  readonly colours?: LineColour | 'both';
  /** Some line has letters. */
  readonly letters: boolean;
}

const COLOURS: Readonly<Record<LineColour | 'both', string>> = {
  insulation: 'Line colour and letters: the wire’s insulation (IEC 60757).',
  both: 'Line colour: the wire’s insulation where letters give it (IEC 60757), else the signal carried.',
  signal: 'Line colour: signal carried.',
};

/** Where the switches and blends are, by their labels: `Selector in position 2, Tone pulled out`. */
export const settingText = ({ kit }: Circuit, { positions, positionNames }: State): string =>
  Object.entries(positions)
    .map(([id, position]) => `${labelOf(kit, partOfControl(id))} ${placeText(position, positionNames[id])}`)
    .join(', ');

/** How the switches and controls are drawn, and how to read the lines. */
export function stateLine(
  { kit, states }: Circuit,
  state: State | undefined,
  { crossings, colours, letters }: LineNotes,
): string {
  const drawn = kit.parts.flatMap((part) => {
    const contact = contactAt(part, state?.positions[part.name]);
    return contact ? [`${part.label} ${placeText(contact.position, contact.called)}`] : [];
  });
  return [
    ...(drawn.length === 0 ? [] : [`${drawn.join(', ')}.`]),
    ...controlsLine(kit, state ?? states[0]),
    ...(crossings ? ['At a crossing, the broken line passes underneath.'] : []),
    ...(colours === undefined ? [] : [COLOURS[colours]]),
    ...(letters && (colours === undefined || colours === 'signal')
      ? ['Letters: insulation colour (IEC 60757).']
      : []),
  ].join(' ');
}

/** Where the controls stand: `All controls on 10, Blend at centre.` */
function controlsLine(kit: Kit, state: State | undefined): readonly string[] {
  const controls = kit.parts.flatMap(controlsOf);
  const blends = controls.flatMap(({ id, part }) =>
    state?.turned?.[id] === undefined ? [] : [`${labelOf(kit, part)} ${state.positionNames[id]}`],
  );
  if (controls.length === 0) return [];
  if (blends.length === controls.length) return [`${blends.join(', ')}.`];
  return [`${['All controls on 10', ...blends].join(', ')}.`];
}

/** What sounds and what each pickup sees, state by state. */
export const describeCards = (cards: readonly Card[]): string =>
  cards
    .map((card) => {
      const rows = card.rows.map(
        (row) =>
          `${row.label}: DC load ${row.dcLoad}, signal load ${row.signalLoad}${row.level === undefined ? '' : `, ${row.level}`}`,
      );
      const title = card.joined === undefined ? card.title : `${card.title}, ${card.joined}`;
      const where = card.badge === '' ? '' : `Position ${card.badge}: `;
      return `${where}${title}.${rows.length === 0 ? '' : ` ${rows.join('; ')}.`}`;
    })
    .join(' ');

/** The joints one by one. */
export function describeJoints(circuit: Circuit): string {
  const end = ({ part, lug }: { part: string; lug: string }): string =>
    `${labelOf(circuit.kit, part)} ${/^\d+$/.test(lug) ? `lug ${lug}` : lug}`;
  const joints = circuit.joints.map((joint) => `${joint.kind} from ${end(joint.from)} to ${end(joint.to)}`);
  return `Joints: ${joints.join('; ')}.`;
}

/** A wire's colour in words: `BKRD` is black and red. */
export const colourName = (code: string): string =>
  (code.match(/../g) ?? []).map((letters) => colourNames[letters] ?? letters).join(' and ');
