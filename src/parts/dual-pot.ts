import { z } from 'zod';
import { given } from '../common/units.ts';
import { sayIn } from '../messages/say.ts';
import { buildGang, type Gang, gangFields, gangWords, roleField, roleOf } from './gang.ts';
import { type ControlRole, definePart, type PartBase } from './kind.ts';
import { twoGangFace, twoGangLugs, twoGangOutline, twoTracks, usualGangs } from './two-gangs.ts';

interface DualPot extends PartBase<'dual-pot'> {
  readonly a: Gang;
  readonly b: Gang;
  readonly role?: ControlRole;
}

/** Dual-gang pot: two tracks, `a` and `b`, that one shaft turns together. Both are alike unless `b` says otherwise. */
export const dualPot = definePart({
  kind: 'dual-pot',
  what: 'dual-gang pot',
  is: ['pot'],
  mirrors: false,
  narrowTurns: 'aside',
  fields: {
    ...gangFields,
    b: z
      .strictObject({ ...gangFields, value: gangFields.value.optional() })
      .optional()
      .describe('What gang b has of its own; the rest is as in gang a'),
    role: roleField,
  },
  build: (base, { b = {}, role, ...a }): DualPot => {
    const own = Object.fromEntries(Object.entries(b).filter(([, value]) => value !== undefined));
    return { ...base, a: buildGang(base, a), b: buildGang(base, { ...a, ...own }), ...roleOf(role) };
  },
  lugs: twoGangLugs,
  elements: (part) => twoTracks(part, [roleOf(part.role), roleOf(part.role)]),
  usual: ({ a, b }) => usualGangs({ a, b }, ['value'], ['b', 'value']),
  withOhms: (part, ohms) => ({
    ...part,
    a: { ...part.a, value: given(ohms) },
    b: { ...part.b, value: given(ohms) },
  }),
  outline: (part, _, language, narrow) =>
    twoGangOutline(
      [
        [part.label, gangWords(part.a, language)],
        ['', sayIn(language)('face.same-shaft', { value: gangWords(part.b, language) })],
      ],
      narrow,
    ),
  face: (part, seen) => twoGangFace(part, seen),
});
