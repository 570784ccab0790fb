import { z } from 'zod';
import { given, givenOr, type Sourced } from '../common/units.ts';
import { sayIn } from '../messages/say.ts';
import { type Gang, gangWords, roleField, roleOf, tapers, trackFields } from './gang.ts';
import { type ControlRole, definePart, type PartBase, type TrackLaw } from './kind.ts';
import { twoGangFace, twoGangLugs, twoGangOutlineBetween, twoTracks, usualGangs } from './two-gangs.ts';

interface Blend extends PartBase<'blend'> {
  readonly a: Gang;
  readonly b: Gang;
  readonly role?: ControlRole;
}

/** Of gang a the anticlockwise half has the resistance, of gang b the clockwise half. Common practice, no source. */
const HALVES: readonly [TrackLaw, TrackLaw] = ['lower-half', 'upper-half'];

/**
 * Blend pot: two gangs on one shaft with a detent in the middle. Each has all of its resistance in one half of the rotation
 * and none in the other, so that in the middle both wipers are at an end of their tracks: gang a at a3, gang b at b1. With a plain taper
 * both gangs have it, and the middle is half a track away from either end. Tolerance ±20 % is common practice, no source.
 */
export const blend = definePart({
  kind: 'blend',
  what: 'blend pot',
  is: ['pot'],
  mirrors: false,
  narrowTurns: 'aside',
  fields: {
    ...trackFields,
    taper: z
      .enum(['blend', ...tapers])
      .optional()
      .describe(
        'blend by default: no resistance in one half of the rotation; otherwise the taper of both gangs',
      ),
    role: roleField,
  },
  build: (base, written): Blend => {
    const { value, tolerance, midpoint, taper } = written;
    const gang = (half: TrackLaw): Gang => {
      const law: Sourced<TrackLaw> =
        taper === undefined || taper === 'blend' ? givenOr<TrackLaw>(undefined, half) : given(taper);
      return {
        value: given(value),
        taper: law,
        tolerance: givenOr(tolerance, 0.2),
        midpoint: givenOr(midpoint, 0.15),
      };
    };
    return { ...base, a: gang(HALVES[0]), b: gang(HALVES[1]), role: written.role ?? 'blend' };
  },
  lugs: twoGangLugs,
  elements: (part) => twoTracks(part, [roleOf(part.role), roleOf(part.role)]),
  usual: ({ a, b }) => usualGangs({ a, b }, ['value'], ['value']).slice(0, 1),
  withOhms: (part, ohms) => ({
    ...part,
    a: { ...part.a, value: given(ohms) },
    b: { ...part.b, value: given(ohms) },
  }),
  // Both gangs are alike, and their wipers rest in the middle, where words would hide them.
  outline: (part, _, language, narrow) =>
    twoGangOutlineBetween(
      part.label,
      sayIn(language)('face.both-gangs', { value: gangWords(part.a, language) }),
      narrow,
    ),
  face: (part, seen) => twoGangFace(part, seen, true),
});
