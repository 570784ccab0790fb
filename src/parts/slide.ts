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
import { definePart, type PartBase } from './kind.ts';

interface Slide extends PartBase<'slide'> {
  readonly poles: Poles;
}

/** The slider takes its contact along: up, towards lugs 1, it joins those to the commons. Common practice, no source. */
const STOPS: readonly Stop[] = [
  { called: 'up', mark: 'up', a: 1, b: 1 },
  { called: 'down', mark: 'down', a: 2, b: 2 },
];

/** Slide switch, two positions, two throws a pole; “up” is towards lugs 1, as it is drawn. */
export const slide = definePart({
  kind: 'slide',
  what: 'slide switch',
  is: ['switch'],
  moves: 'slider',
  mirrors: false,
  fields: { poles: polesField },
  build: (base, { poles }): Slide => ({ ...base, poles: poles ?? USUAL_POLES }),
  lugs: doubleThrowLugs,
  lugsOf: ({ poles }) => lugsOfPoles(poles),
  elements: () => [],
  contacts: ({ poles }) => contactsOfStops(STOPS, poles),
  outline: ({ label, poles }, _, language, narrow) =>
    blockOutline(
      label,
      sayIn(language)('face.slide'),
      columnsOfPoles(poles),
      contactsOfStops(STOPS, poles),
      language,
      narrow,
    ),
  face: ({ poles }, seen) => blockFace(columnsOfPoles(poles), seen),
});
