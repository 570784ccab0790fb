/** The words about a kit that extends another: see `wording.ts`. */
import { clip, list, type Message, meant, quote } from './quoting.ts';

export interface ExtendsDetails {
  'base-unreadable': { got: string; reason: string; nearest?: string; allowed?: readonly string[] };
  /** `files`: the loop, or the whole chain where it is longer than `most`. */
  'extends-itself': { files: readonly string[]; most?: number };
  'remove-without-extends': Record<never, never>;
  'title-inherited': { title: string; base: string };
  /** `changed`: it is to be changed, not removed, and may be meant to be new. */
  'not-in-base': {
    what: 'part' | 'joint' | 'key';
    got: string;
    nearest?: string;
    allowed: readonly string[];
    changed?: boolean;
  };
}

type Wording = { readonly [C in keyof ExtendsDetails]: (detail: ExtendsDetails[C]) => Message };

const error = (message: string, remedy: string): Message => ({ severity: 'error', message, remedy });

export const extendsWording: Wording = {
  'base-unreadable': (d) =>
    error(
      `the base ${quote(d.got)} cannot be read: ${d.reason}`,
      meant(
        d.nearest,
        d.allowed
          ? `Circuits that ship: ${list(d.allowed)}.`
          : 'Write a path from the folder of this file, such as ./base.yaml, or circuit/NAME for a circuit that ships.',
      ),
    ),
  'extends-itself': (d) =>
    error(
      d.most === undefined
        ? `this kit extends itself: ${d.files.map(clip).join(' extends ')}`
        : `this kit has more than ${d.most} bases`,
      'Extend a kit that is complete by itself.',
    ),
  'remove-without-extends': () =>
    error(
      'there is nothing to remove: this kit does not extend another',
      'Name the base with extends, or delete what is listed here from the kit itself.',
    ),
  'title-inherited': (d) => ({
    severity: 'note',
    message: `this kit has no title of its own; its drawing is headed ${quote(d.title)}, as that of ${quote(d.base)}`,
    remedy: 'Add a title that tells the two apart, or this same title if it is meant.',
  }),
  'not-in-base': (d) =>
    error(
      `the base has no ${d.what} ${quote(d.got)}`,
      meant(
        d.nearest,
        `The base has: ${list(d.allowed)}${d.changed ? `. A new ${d.what} needs its kind` : ''}.`,
      ),
    ),
};

/**
 * Added to what is to be done about a problem whose place is in a base of the kit that is read.
 *
 * @param own whether the base has the problem by itself, and not only together with what the kit changes
 * @param ships whether the base is a circuit that ships, which is nobody's to correct
 */
export const inBase = (kit: string, own: boolean, ships: boolean): string =>
  ships && !own
    ? `Your kit ${clip(kit)} extends this circuit: change or remove it in your kit, not here.`
    : `This file is a base of ${clip(kit)}${own ? '' : ': correct it here, or change or remove it there'}.`;
