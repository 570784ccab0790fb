import { z } from 'zod';
import { given, givenOr, type Sourced } from '../common/units.ts';
import { fraction, ohms } from './fields.ts';
import { definePart, type PartBase, type Taper } from './kind.ts';

export interface Pot extends PartBase<'pot'> {
  /** Resistance of the whole track, ohms. */
  readonly value: Sourced;
  readonly taper: Sourced<Taper>;
  readonly tolerance: Sourced;
  /** Share of the track below the wiper at half rotation, for the log laws. */
  readonly midpoint: Sourced;
}

/**
 * Potentiometer. Terminals are electrical: 1 the anticlockwise end, 2 the wiper, 3 the clockwise end, seen from
 * the shaft. The case is a place to solder to and no part of the circuit inside. Tolerance ±20 % and a log
 * midpoint of 15 % are common practice, no source.
 */
export const pot = definePart({
  kind: 'pot',
  what: 'pot',
  fields: {
    value: ohms('Resistance of the whole track'),
    taper: z.enum(['linear', 'log', 'reverse-log']).optional().describe('Law of the track; log by default'),
    tolerance: fraction('Tolerance of the track').optional(),
    midpoint: fraction('Share of the track below the wiper at half rotation (log laws)').optional(),
  },
  build: (base, written): Pot => ({
    ...base,
    value: given(written.value),
    taper: givenOr<Taper>(written.taper, 'log'),
    tolerance: givenOr(written.tolerance, 0.2),
    midpoint: givenOr(written.midpoint, 0.15),
  }),
  lugs: () => [
    { name: '1', role: 'anticlockwise' },
    { name: '2', role: 'wiper' },
    { name: '3', role: 'clockwise' },
    { name: 'case', role: 'case' },
  ],
  elements: (part) => [
    {
      kind: 'track',
      id: 'track',
      anticlockwise: '1',
      wiper: '2',
      clockwise: '3',
      ohms: part.value,
      tolerance: part.tolerance,
      taper: part.taper,
      midpoint: part.midpoint,
    },
  ],
});
