/** Which settings of the switches a kit, or a switch by its kind, intends to be silent or out of phase. */
import { closestName } from '../common/nearest.ts';
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import { findPart, type IntendedAt, type Kit } from '../describe/kit.ts';
import { contactAt, contactsOf, whatIs } from '../parts/index.ts';
import type { Contact } from '../parts/kind.ts';
import type { Setting } from './circuit.ts';
import { writtenAs } from './position.ts';

type Placed = Pick<Setting, 'positions'>;

const isCalled = (contact: Contact, written: string | number): boolean =>
  writtenAs(contact).includes(String(written));

/** Whether every switch that is named is in one of the positions given for it. */
export const isAt = (kit: Pick<Kit, 'parts'>, place: IntendedAt, { positions }: Placed): boolean =>
  Object.entries(place.positions).every(([name, some]) => {
    const part = findPart(kit, name);
    const contact = part && contactAt(part, positions[name]);
    return contact !== undefined && some.some((one) => isCalled(contact, one));
  });

/** Names of the switches that are in a position made for silence, as a pressed kill button. */
export const silencersAt = ({ parts }: Pick<Kit, 'parts'>, { positions }: Placed): readonly string[] =>
  parts.filter((part) => contactAt(part, positions[part.name])?.silent === true).map(({ name }) => name);

/** Whether no output is what is wanted in a setting. */
export const isMeantSilent = (kit: Kit, setting: Placed): boolean =>
  silencersAt(kit, setting).length > 0 ||
  (kit.intended?.silent.some((place) => isAt(kit, place, setting)) ?? false);

/** Whether pickups that are out of phase are what is wanted in a setting. */
export const isMeantOutOfPhase = (kit: Kit, setting: Placed): boolean =>
  kit.intended?.outOfPhase.some((place) => isAt(kit, place, setting)) ?? false;

const NO_SWITCH = {
  why: 'this entry names no switch',
  remedy: 'Write a switch and its position, such as { selector: 2 }; or remove the entry.',
};

/** Entries of `intended` that name what the kit does not have. Of a part that could not be read nothing is known. */
export const intendedErrors = (kit: Kit, opaque: readonly string[]): readonly Problem[] =>
  [...(kit.intended?.silent ?? []), ...(kit.intended?.outOfPhase ?? [])].flatMap(({ path, positions }) => {
    const named = Object.entries(positions).filter(([name]) => !opaque.includes(name));
    // An entry has a number; where all positions are meant, none is named.
    return Object.keys(positions).length === 0 && typeof path.at(-1) === 'number'
      ? [problem('bad-value', path, NO_SWITCH)]
      : named.flatMap(([name, some]) => switchErrors(kit, name, some, [...path, name]));
  });

function switchErrors(
  kit: Kit,
  name: string,
  some: readonly (string | number)[],
  path: KeyPath,
): readonly Problem[] {
  const allowed = kit.parts.filter((one) => contactsOf(one).length > 0).map((one) => one.name);
  const part = findPart(kit, name);
  if (!part) {
    const detail = { part: name, allowed, ...nearest(name, allowed) };
    return [problem('unknown-switch', path, detail, 'key')];
  }
  const what = whatIs(part);
  const contacts = contactsOf(part);
  if (contacts.length === 0) return [problem('not-a-switch', path, { part: name, what, allowed }, 'key')];
  const called = contacts.map((one) => one.called ?? String(one.position));
  return some.map(String).flatMap((got, i) =>
    contacts.some((contact) => isCalled(contact, got))
      ? []
      : [
          problem('unknown-position', some.length > 1 ? [...path, i] : path, {
            part: name,
            what,
            got,
            allowed: called,
            ...nearest(got, called),
          }),
        ],
  );
}

function nearest(word: string, allowed: readonly string[]): { nearest?: string } {
  const meant = closestName(word, allowed);
  return meant === undefined ? {} : { nearest: meant };
}
