/**
 * Every message the program gives about a description, in one place: what is wrong, and what to do. A stage
 * reports a code with its details; only here do they become sentences.
 */

import { type CatalogueDetails, catalogueWording } from './catalogue-wording.ts';
import { type ExtendsDetails, extendsWording } from './extends-wording.ts';
import { type FileDetails, fileWording } from './file-wording.ts';
import { ID_LONGEST, NAME_LONGEST } from './names.ts';
import { type NoteDetails, noteWording } from './note-wording.ts';
import { type OutputDetails, outputWording } from './output-wording.ts';
import { clip, headOf, list, type Message, meant, quote } from './quoting.ts';
import { type StockDetails, stockWording } from './stock-wording.ts';

/** What each code must be told. */
export interface Details
  extends FileDetails,
    NoteDetails,
    OutputDetails,
    ExtendsDetails,
    StockDetails,
    CatalogueDetails {
  // The shape of the description.
  'unknown-key': { key: string; nearest?: string; allowed: readonly string[] };
  'decimal-comma': { got: string; meant?: string };
  /** `allowed`: the values to choose from, where they are few. */
  'missing-key': { key: string; what: string; allowed?: readonly string[] };
  'wrong-type': { expected: string; got: string };
  'unsupported-kind': { got: string; allowed: readonly string[]; isSwitch: boolean };
  'bad-choice': { got: string; nearest?: string; allowed: readonly string[] };
  'bad-quantity': { got: string; why: string; examples: string };
  'bad-length': { got: string; why: string; examples: string };
  'bad-kit-id': { got: string };
  'bad-name': { got: string };
  'bad-joint': { got: string; arrow?: string };
  'joint-kind': { found: readonly string[]; allowed: readonly string[] };
  'bad-colour': { got: string; nearest?: string; allowed: readonly string[] };
  'bad-value': { why: string; remedy: string };
  // The circuit.
  'unknown-part': { part: string; nearest?: string; allowed: readonly string[] };
  'unknown-lug': { part: string; lug: string; what: string; nearest?: string; allowed: readonly string[] };
  'not-connected': { part: string; what: string };
  'lug-to-itself': { lug: string };
  'joined-twice': { a: string; b: string };
  'leg-not-connected': { part: string; leg: string; what: string };
  /** `joint`: the other one; `inherited`: where that is written, if it is in a base of the kit. */
  'leg-twice': { leg: string; here: string; there: string; joint: string; inherited?: string };
  'not-a-leg': { from: string; to: string };
  'jumper-across-parts': { from: string; to: string };
  'bend-needs-case': { from: string; to: string };
  'no-jack': Record<never, never>;
  'several-jacks': { parts: readonly string[] };
  'jack-not-connected': { part: string; lug: string; signal: boolean };
  'jack-swapped': { part: string; on: readonly string[]; tip: string; sleeve: string };
  'no-pickup': Record<never, never>;
  'pickup-no-hot': { part: string; lug: string };
  'pickup-no-ground': { part: string; lug: string };
  'ground-point-no-ground': { part: string; sleeve: string; on: readonly string[] };
  'too-many': { what: string; count: string; most: number };
  'crowded-lug': { lug: string; count: number; most: number };
  'unknown-arrangement': { got: string; nearest?: string; allowed: readonly string[] };
  'bad-arrangement': { reasons: readonly string[] };
  'unknown-page': { got: string; nearest?: string; allowed: readonly string[] };
  'kit-id-taken': { id: string; file: string };
  'missing-glyph': { text: string; glyphs: readonly string[] };
  // Drawing.
  'no-route': Record<never, never>;
  'drawing-misleads': { drawing: string; findings: readonly string[]; more: number };
  'drawing-untidy': { drawing: string; findings: readonly string[]; more: number };
}

type Wording = { readonly [C in keyof Details]: (detail: Details[C]) => Message };

/** The first findings of a drawing, and how many more there are. */
const found = ({ findings, more }: { findings: readonly string[]; more: number }): string =>
  `${findings.map((one) => one.replace(/[\p{Cc}\p{Cf}]/gu, ' ')).join('; ')}${more > 0 ? `; and ${more} more` : ''}`;
/** A character by itself and by its number in Unicode: some cannot be seen, and some would turn the line round. */
const glyphWords = (glyph: string): string => {
  const number = `U+${(glyph.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
  return /[\p{C}\p{Z}\p{M}]/u.test(glyph) ? number : `${glyph} (${number})`;
};
const error = (message: string, remedy: string): Message => ({ severity: 'error', message, remedy });
export const wording: Wording = {
  ...fileWording,
  'unknown-key': (d) =>
    error(`unknown key ${quote(d.key)}`, meant(d.nearest, `Allowed: ${list(d.allowed)}.`)),
  'decimal-comma': (d) =>
    error(
      `${quote(d.got)}: a comma inside braces ends the value`,
      `Use a decimal point: ${d.meant === undefined ? 'write 5.7k, not 5,7k' : `write ${clip(d.meant)}`}. For thousands write k: 470k.`,
    ),
  'missing-key': (d) =>
    error(
      `${d.what} has no ${quote(d.key)}`,
      `Add the key ${quote(d.key)}${d.allowed === undefined ? '' : `; allowed: ${list(d.allowed)}`}.`,
    ),
  'wrong-type': (d) => error(`expected ${headOf(d.expected)}, found ${d.got}`, `Write ${d.expected}.`),
  'unsupported-kind': (d) =>
    d.isSwitch
      ? error(
          `unknown kind ${quote(d.got)}`,
          'Describe it as kind: switch, with its lugs and positions; see the README.',
        )
      : error(`${quote(d.got)} is a part that is not supported yet`, `Supported kinds: ${list(d.allowed)}.`),
  'bad-choice': (d) =>
    error(`${quote(d.got)} is not allowed here`, meant(d.nearest, `Allowed: ${list(d.allowed)}.`)),
  'bad-quantity': (d) => error(`${quote(d.got)}: ${d.why}`, `Write a value such as ${d.examples}.`),
  'bad-length': (d) => error(`${quote(d.got)}: ${d.why}`, `Write a length such as ${d.examples}.`),
  'bad-kit-id': (d) =>
    error(
      `${quote(d.got)} is not a valid kit id`,
      `Use lower-case letters, digits and single hyphens; start with a letter; at most ${ID_LONGEST} characters. The id is used in file names.`,
    ),
  'bad-name': (d) =>
    error(
      `${quote(d.got)} cannot be the name of a part`,
      `Use lower-case letters, digits and single hyphens, starting with a letter, at most ${NAME_LONGEST} characters.`,
    ),
  'bad-joint': (d) =>
    error(
      `${quote(d.got)} is not a joint`,
      d.arrow === undefined
        ? 'Write PART.LUG > PART.LUG, for example neck.hot > selector.A1.'
        : `Write > in place of ${d.arrow}, for example neck.hot > selector.A1.`,
    ),
  'joint-kind': (d) =>
    error(
      d.found.length === 0
        ? 'this joint does not say which lugs it connects'
        : `this joint has ${d.found.length} kinds: ${list(d.found)}`,
      `Write exactly one of ${list(d.allowed)}, followed by PART.LUG > PART.LUG.`,
    ),
  'bad-colour': (d) =>
    error(
      `${quote(d.got)} is not an IEC 60757 colour code`,
      meant(
        d.nearest,
        `Allowed: ${list(d.allowed)}; or two of them in this order; green and yellow only as GNYE.`,
      ),
    ),
  'bad-value': (d) => error(d.why, d.remedy),
  'unknown-part': (d) =>
    error(`unknown part ${quote(d.part)}`, meant(d.nearest, `Parts of this kit: ${list(d.allowed)}.`)),
  'unknown-lug': (d) =>
    error(
      `${quote(d.part)} (${d.what}) has no lug ${quote(d.lug)}`,
      meant(d.nearest, `Its lugs: ${list(d.allowed)}.`),
    ),
  'not-connected': (d) =>
    error(`${quote(d.part)} (${d.what}) is not connected`, 'Add its joints, or remove it from parts.'),
  'lug-to-itself': (d) => error(`${clip(d.lug)} is connected to itself`, 'Name the other end.'),
  'joined-twice': (d) =>
    error(`${clip(d.a)} and ${clip(d.b)} are connected twice`, 'Remove one of the two joints.'),
  'leg-not-connected': (d) =>
    error(
      `leg ${clip(d.leg)} of ${quote(d.part)} (${d.what}) is not connected`,
      'Connect it, or remove the part.',
    ),
  'leg-twice': (d) =>
    error(
      `leg ${clip(d.leg)} is soldered to two places: ${clip(d.there)}${d.inherited === undefined ? '' : ` (inherited from ${clip(d.inherited)})`} and ${clip(d.here)}`,
      `A leg is one piece of wire and ends at one place. ${d.inherited === undefined ? `Remove one of the two joints;` : `To move it, list the other joint under remove: joints: [${clip(d.joint)}];`} if ${clip(d.there)} and ${clip(d.here)} are to be connected, use a wire or a jumper between them.`,
    ),
  'not-a-leg': (d) =>
    error(
      `neither ${clip(d.from)} nor ${clip(d.to)} is a component leg`,
      'Use leg only for the bare leg of a component; otherwise use wire.',
    ),
  'jumper-across-parts': (d) =>
    error(
      `${clip(d.from)} and ${clip(d.to)} are on different parts`,
      'A jumper connects lugs of one part; use wire between parts.',
    ),
  'bend-needs-case': (d) =>
    error(
      `${clip(d.from)} cannot be bent onto ${clip(d.to)}`,
      'Only a lug of a pot can be bent back, onto that pot’s own case; write bend: POT.1 > POT.case.',
    ),
  'no-jack': () =>
    error('the kit has no output jack', 'Add a part of kind jack and connect its tip and sleeve.'),
  'several-jacks': (d) =>
    error(
      `the kit has several jacks: ${list(d.parts)}`,
      'Keep one; for two outputs use one part of kind stereo-jack.',
    ),
  'no-pickup': () => error('the kit has no pickup', 'Add a part of kind single-coil or humbucker.'),
  'jack-not-connected': (d) =>
    error(
      `the ${clip(d.lug)} of ${quote(d.part)} is not connected`,
      d.signal
        ? `Connect ${clip(d.part)}.${clip(d.lug)} to the volume control or the switch.`
        : `Connect ${clip(d.part)}.${clip(d.lug)} to the grounded case of a pot.`,
    ),
  'jack-swapped': (d) =>
    error(
      `${d.tip.split('.').at(-1)} and sleeve of ${quote(d.part)} are swapped: ${list(d.on)} ${d.on.length === 1 ? 'is' : 'are'} connected to the ${d.tip.split('.').at(-1)}`,
      `Connect ${clip(d.sleeve)} to ground, and ${clip(d.tip)} to the volume control or the switch.`,
    ),
  'pickup-no-hot': (d) =>
    error(
      `the hot lead of ${quote(d.part)} is not connected`,
      `Connect ${clip(d.part)}.${clip(d.lug)} to the switch or the volume control.`,
    ),
  'pickup-no-ground': (d) =>
    error(
      `${quote(d.part)} has no path to ground`,
      `Connect ${clip(d.part)}.${clip(d.lug)} to the grounded case of a pot or to the jack’s sleeve.`,
    ),
  'ground-point-no-ground': (d) =>
    error(
      `${quote(d.part)} is not connected to ground`,
      d.on.length === 0
        ? `Connect it to ${clip(d.sleeve)} or to a grounded case; ungrounded strings or shields hum.`
        : `It is on the signal. First disconnect it from ${list(d.on)}; then connect it to ${clip(d.sleeve)} or to a grounded case.`,
    ),
  'too-many': (d) => error(`the kit has ${d.count} ${d.what}`, `Use at most ${d.most} in one kit.`),
  'crowded-lug': (d) =>
    error(
      `${d.count} joints at ${d.lug}, which has room for ${d.most}`,
      'Move one joint to another lug that is already connected to this one, such as the far end of one of its wires.',
    ),
  'unknown-arrangement': (d) =>
    error(`unknown arrangement ${quote(d.got)}`, meant(d.nearest, `Arrangements: ${list(d.allowed)}.`)),
  'unknown-page': (d) =>
    error(`unknown page format ${quote(d.got)}`, meant(d.nearest, `Page formats: ${list(d.allowed)}.`)),
  'bad-arrangement': (d) =>
    error(
      `the arrangement cannot be used:${d.reasons.map((one) => `${d.reasons.length > 1 ? '\n     ' : ''} ${one}`).join('')}`,
      'Name another, or fix that file; the files in layouts/ are examples.',
    ),
  'kit-id-taken': (d) =>
    error(
      `“${d.id}” is also the id of ${d.file}`,
      'Give each kit a unique id; it is used for the file names.',
    ),
  'missing-glyph': (d) =>
    error(
      `${quote(d.text)} has ${d.glyphs.length === 1 ? 'a character' : 'characters'} that the drawing’s font does not have: ${list(d.glyphs.map(glyphWords))}`,
      `Use other characters in place of ${d.glyphs.length === 1 ? 'it' : 'them'}.`,
    ),
  'no-route': () =>
    error(
      'not every wire of this kit could be routed, so it is not drawn',
      'Try another arrangement with --arrangement, or connect some wires to other lugs of the same net. This is a bug in Solderleaf; please report it.',
    ),
  'drawing-misleads': (d) =>
    error(
      `${clip(d.drawing)} could be misread and was not written: ${found(d)}`,
      'Try another arrangement with --arrangement, or a shorter label. This is a bug in Solderleaf; please report it.',
    ),
  'drawing-untidy': (d) => ({
    severity: 'warning',
    message: `${clip(d.drawing)} is untidy: ${found(d)}`,
    remedy: 'Check it before you print it; a shorter label or another arrangement may help.',
  }),
  ...noteWording,
  ...outputWording,
  ...extendsWording,
  ...stockWording,
  ...catalogueWording,
};
