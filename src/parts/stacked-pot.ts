import { z } from 'zod';
import { given } from '../common/units.ts';
import { sayIn } from '../messages/say.ts';
import { buildGang, type Gang, gangFields, gangWords, roleField, roleOf } from './gang.ts';
import { type ControlRole, definePart, type PartBase } from './kind.ts';
import { twoGangFace, twoGangLugs, twoGangOutline, twoTracks, usualGangs } from './two-gangs.ts';

interface StackedPot extends PartBase<'stacked-pot'> {
  readonly a: Gang & { readonly role?: ControlRole };
  readonly b: Gang & { readonly role?: ControlRole };
}

const gangField = (shaft: string) =>
  z.strictObject({ ...gangFields, role: roleField }).describe(`The gang that the ${shaft} shaft turns`);

/** Stacked pot: two tracks, each with a shaft of its own: `a` with the inner one, `b` with the outer one round it. */
export const stackedPot = definePart({
  kind: 'stacked-pot',
  what: 'stacked pot',
  is: ['pot'],
  mirrors: false,
  narrowTurns: 'aside',
  fields: { a: gangField('inner'), b: gangField('outer') },
  build: (base, { a, b }): StackedPot => ({
    ...base,
    a: { ...buildGang(base, a), ...roleOf(a.role) },
    b: { ...buildGang(base, b), ...roleOf(b.role) },
  }),
  lugs: twoGangLugs,
  elements: (part) =>
    twoTracks(part, [
      { shaft: 'a', ...roleOf(part.a.role) },
      { shaft: 'b', ...roleOf(part.b.role) },
    ]),
  usual: ({ a, b }) => usualGangs({ a, b }, ['a', 'value'], ['b', 'value']),
  withOhms: (part, ohms, shaft) => ({
    ...part,
    ...(shaft === 'b' ? {} : { a: { ...part.a, value: given(ohms) } }),
    ...(shaft === 'a' ? {} : { b: { ...part.b, value: given(ohms) } }),
  }),
  outline: (part, _, language, narrow) =>
    twoGangOutline(
      [
        [part.label, sayIn(language)('face.inner-shaft', { value: gangWords(part.a, language) })],
        ['', sayIn(language)('face.outer-shaft', { value: gangWords(part.b, language) })],
      ],
      narrow,
    ),
  face: (part, seen) => twoGangFace(part, seen),
});
