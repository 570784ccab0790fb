import { given } from '../common/units.ts';
import {
  buildGang,
  type Gang,
  gangFields,
  gangWords,
  lugNames,
  roleField,
  roleOf,
  trackOf,
  usualGang,
} from './gang.ts';
import { type ControlRole, definePart, type LugSpec, type PartBase } from './kind.ts';
import { gangFace } from './pot-face.ts';
import { potOutline, sizesSeen } from './pot-outline.ts';

export interface Pot extends PartBase<'pot'>, Gang {
  /** What the kit says it is for. */
  readonly role?: ControlRole;
}

const LUGS = [
  { name: '1', role: 'anticlockwise' },
  { name: '2', role: 'wiper' },
  { name: '3', role: 'clockwise' },
  { name: 'case', role: 'case', room: 11 },
] as const satisfies readonly LugSpec[];
const [ONE, TWO, THREE, CASE] = LUGS;
const NAMES = lugNames([ONE, TWO, THREE]);

/**
 * Potentiometer. Terminals are electrical: 1 the anticlockwise end, 2 the wiper, 3 the clockwise end, seen from
 * the shaft. The case is a place to solder to and no part of the circuit inside. Defaults and the range of usual values are common
 * practice, no source; so is what a no-load pot does: at the end that is full its wiper leaves the track.
 */
export const pot = definePart({
  kind: 'pot',
  what: 'pot',
  is: ['pot'],
  mirrors: false,
  turns: 'quarters',
  fields: { ...gangFields, role: roleField },
  build: (base, written): Pot => ({ ...base, ...buildGang(base, written), ...roleOf(written.role) }),
  lugs: LUGS,
  elements: (part) => [trackOf('track', NAMES, part, roleOf(part.role))],
  usual: (part) => [usualGang(part)],
  withOhms: (part, ohms) => ({ ...part, value: given(ohms) }),
  outline: (part, _, language) =>
    potOutline([{ lugs: NAMES, name: part.label, value: gangWords(part, language) }], CASE.name),
  face: (part, { outline, turned }) =>
    sizesSeen(outline, 1).flatMap((size) => [
      { shape: 'circle', role: 'case', centre: size.centre, radius: size.radius } as const,
      ...gangFace(size, outline, NAMES, part, turned?.track),
    ]),
});
