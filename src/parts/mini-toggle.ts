import { z } from 'zod';
import { sayIn } from '../messages/say.ts';
import { blockFace, blockOutline } from './block.ts';
import {
  columnsOfPoles,
  contactsOfStops,
  doubleThrowLugs,
  lugsOfPoles,
  type Poles,
  polesField,
  type Stop,
  USUAL_POLES,
} from './double-throw.ts';
import { type Contact, definePart, type PartBase } from './kind.ts';

const ACTIONS = ['on-on', 'on-off-on', 'on-on-on'] as const;
type Action = (typeof ACTIONS)[number];

interface MiniToggle extends PartBase<'mini-toggle'> {
  readonly action: Action;
  readonly poles: Poles;
}

/** The lever tips the contact over to its far side: down, it touches the upper lugs. Common practice, no source. */
const DOWN: Stop = { called: 'down', mark: 'down', a: 1, b: 1 };
const UP: Stop = { called: 'up', mark: 'up', a: 2, b: 2 };
const CENTRE = { called: 'in the centre', mark: 'centre' } as const;
/** In the centre of an on-on-on pole A touches throw 1, pole B throw 2. Common practice, no source: some are made the other way round. */
const STOPS: Readonly<Record<Action, readonly Stop[]>> = {
  'on-on': [DOWN, UP],
  'on-off-on': [DOWN, CENTRE, UP],
  'on-on-on': [DOWN, { ...CENTRE, a: 1, b: 2 }, UP],
};
const contactsOf = ({ action, poles }: MiniToggle): readonly Contact[] =>
  contactsOfStops(STOPS[action], poles);

/**
 * Miniature toggle, two throws a pole. The first position joins X0 and X1, the last X0 and X2; “up” and “down” are of its lever, with
 * lugs 1 above, as it is drawn.
 */
export const miniToggle = definePart({
  kind: 'mini-toggle',
  what: 'mini toggle switch',
  is: ['switch'],
  moves: 'toggle',
  mirrors: false,
  fields: {
    action: z
      .enum(ACTIONS)
      .describe(
        'on-on: two positions; on-off-on: nothing connected in the centre; on-on-on: in the centre A0 to A1 and B0 to B2',
      ),
    poles: polesField,
  },
  build: (base, { action, poles }): MiniToggle => ({ ...base, action, poles: poles ?? USUAL_POLES }),
  validate: ({ action, poles }) =>
    action === 'on-on-on' && poles === 1
      ? [
          {
            path: ['poles'],
            why: 'an on-on-on toggle has two poles, which its centre sets to different sides',
            remedy: 'Write poles: 2; or action: on-on or on-off-on for one pole.',
          },
        ]
      : [],
  lugs: doubleThrowLugs,
  lugsOf: ({ poles }) => lugsOfPoles(poles),
  elements: () => [],
  contacts: contactsOf,
  outline: (part, _, language, narrow) =>
    blockOutline(
      part.label,
      sayIn(language)('face.toggle', { action: part.action }),
      columnsOfPoles(part.poles),
      contactsOf(part),
      language,
      narrow,
    ),
  face: ({ poles }, seen) => blockFace(columnsOfPoles(poles), seen),
});
