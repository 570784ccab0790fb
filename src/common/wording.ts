/**
 * Every message the program gives about a description, in one place: what is wrong, and what to do. A stage
 * reports a code with its details; only here do they become sentences.
 */
import { type NoteDetails, noteWording } from './note-wording.ts';
import { bare, headOf, list, meant, q, type Words } from './quoting.ts';

/** What each code must be told. */
export interface Details extends NoteDetails {
  // Reading the file.
  'file-unreadable': { reason: string };
  'file-too-large': { most: number };
  'output-taken': { output: string; file: string };
  'file-empty': Record<never, never>;
  'no-kit': Record<never, never>;
  'not-text': Record<never, never>;
  'bad-syntax': { reason: string };
  'duplicate-key': { key: string };
  'too-many-aliases': Record<never, never>;
  'too-deep': Record<never, never>;
  'too-long': { most: number };
  'script-failed': { reason: string };
  // The shape of the description.
  'unknown-key': { key: string; nearest?: string; allowed: readonly string[] };
  'decimal-comma': { got: string; meant?: string };
  'missing-key': { key: string; what: string };
  'wrong-type': { expected: string; got: string };
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
  'never-joined': { part: string; what: string };
  'lug-to-itself': { lug: string };
  'joined-twice': { a: string; b: string };
  'leg-free': { part: string; leg: string; what: string };
  'leg-is-no-leg': { from: string; to: string };
  'link-across-parts': { from: string; to: string };
  'bend-needs-case': { from: string; to: string };
  'no-jack': Record<never, never>;
  'several-jacks': { parts: readonly string[] };
  'jack-free': { part: string; lug: string };
  'jack-exchanged': { part: string; on: readonly string[] };
  'no-pickup': Record<never, never>;
  'pickup-no-hot': { part: string };
  'pickup-no-ground': { part: string };
  'ground-point-no-ground': { part: string; sleeve: string };
  'dead-state': { state: string; pot?: string };
  'hot-shorted': { state: string; pot?: string };
  'too-many': { what: string; count: string; most: number };
  'crowded-lug': { lug: string; count: number; most: number };
  'unknown-arrangement': { got: string; nearest?: string; allowed: readonly string[] };
  'bad-arrangement': { reason: string };
  'unknown-page': { got: string; nearest?: string; allowed: readonly string[] };
  'kit-id-taken': { id: string; file: string };
  'missing-glyph': { text: string; glyphs: readonly string[] };
  // Drawing.
  'no-way': Record<never, never>;
  'drawing-misleads': { drawing: string; findings: readonly string[]; more: number };
  'drawing-untidy': { drawing: string; findings: readonly string[]; more: number };
}

type Wording = { readonly [C in keyof Details]: (detail: Details[C]) => Words };

/** The first findings of a drawing, and how many more there are. */
const found = ({ findings, more }: { findings: readonly string[]; more: number }): string =>
  `${findings.map((one) => one.replace(/[\p{Cc}\p{Cf}]/gu, ' ')).join('; ')}${more > 0 ? `; and ${more} more` : ''}`;
/** A character by itself and by its number in Unicode: some cannot be seen, and some would turn the line round. */
const glyphWords = (glyph: string): string => {
  const number = `U+${(glyph.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
  return /[\p{C}\p{Z}\p{M}]/u.test(glyph) ? number : `${glyph} (${number})`;
};
const exchangeLugs = (pot: string): string =>
  `Exchange lugs 1 and 3 of ${q(pot)}: on 10 its wiper is at lug 3, so ground belongs at lug 1.`;

const fault = (message: string, remedy: string): Words => ({ severity: 'fault', message, remedy });
export const wording: Wording = {
  'file-unreadable': (d) =>
    fault(`the file cannot be read: ${d.reason}`, 'Check the path and the permissions.'),
  'file-too-large': (d) =>
    fault(
      `the file has more than ${d.most / 1e6} million bytes`,
      'Name another file; a usual kit has a few thousand.',
    ),
  'output-taken': (d) =>
    fault(
      `${bare(d.output)} is what ${d.file} is drawn as too`,
      'Give one of the two kits another id, or draw them into two folders with --out.',
    ),
  'file-empty': () =>
    fault('the file is empty', 'Write at least kit, title, parts and joints; the README has a first kit.'),
  'no-kit': () =>
    fault(
      'not a kit: it has neither kit nor parts nor joints',
      'Name another file; the README has a first kit.',
    ),
  'not-text': () => fault('the file is not text in UTF-8', 'Save the description as plain text in UTF-8.'),
  'bad-syntax': (d) =>
    fault(d.reason, 'Fix the text at this place; indent with spaces and close every quote and bracket.'),
  'duplicate-key': (d) =>
    fault(`${q(d.key)} stands here twice`, 'Give each part, and each key, a name of its own.'),
  'too-many-aliases': () =>
    fault('aliases in this file unfold without end', 'Write the parts out instead of using aliases.'),
  'script-failed': (d) =>
    fault(
      `the file could not be run: ${d.reason}`,
      'It must export one kit by default: export default defineKit({ … }).',
    ),
  'too-deep': () =>
    fault(
      'brackets or indentation nest too deep for a kit',
      'Close the brackets; a kit needs no more than four levels.',
    ),
  'too-long': (d) =>
    fault(
      `the file is longer than ${d.most / 1000} thousand characters`,
      'Give one kit’s description; a usual one has a few thousand characters.',
    ),
  'unknown-key': (d) => fault(`unknown key ${q(d.key)}`, meant(d.nearest, `Allowed: ${list(d.allowed)}.`)),
  'decimal-comma': (d) =>
    fault(
      `${q(d.got)}: inside braces a comma ends a value`,
      `The decimal sign is a point: ${d.meant === undefined ? 'write 5.7k, not 5,7k' : `write ${bare(d.meant)}`}. Thousands are written with k: 470k.`,
    ),
  'missing-key': (d) => fault(`${d.what} has no ${q(d.key)}`, `Add ${bare(d.key)}.`),
  'wrong-type': (d) => fault(`expected ${headOf(d.expected)}, found ${d.got}`, `Write ${d.expected}.`),
  'bad-choice': (d) =>
    fault(`${q(d.got)} is not among the choices`, meant(d.nearest, `Allowed: ${list(d.allowed)}.`)),
  'bad-quantity': (d) => fault(`${q(d.got)}: ${d.why}`, `Write a value such as ${d.examples}.`),
  'bad-length': (d) => fault(`${q(d.got)}: ${d.why}`, `Write a length such as ${d.examples}.`),
  'bad-kit-id': (d) =>
    fault(
      `${q(d.got)} cannot name files`,
      'Use lower-case letters, digits and single hyphens, starting with a letter, at most 40 characters.',
    ),
  'bad-name': (d) =>
    fault(
      `${q(d.got)} cannot name a part`,
      'Use lower-case letters, digits and single hyphens, starting with a letter, at most 24 characters.',
    ),
  'bad-joint': (d) =>
    fault(
      `${q(d.got)} is not a joint`,
      d.arrow === undefined
        ? 'Write PART.LUG > PART.LUG, for example neck.hot > selector.A1.'
        : `Write > in place of ${d.arrow}, for example neck.hot > selector.A1.`,
    ),
  'joint-kind': (d) =>
    fault(
      d.found.length === 0
        ? 'this joint does not say which lugs it joins'
        : `this joint is of ${d.found.length} kinds at once: ${list(d.found)}`,
      `Write exactly one of ${list(d.allowed)}, with PART.LUG > PART.LUG after it.`,
    ),
  'bad-colour': (d) =>
    fault(
      `${q(d.got)} is not an IEC 60757 colour code`,
      meant(
        d.nearest,
        `Allowed: ${list(d.allowed)}; or two together in this order, green and yellow only as GNYE.`,
      ),
    ),
  'bad-value': (d) => fault(d.why, d.remedy),
  'unknown-part': (d) =>
    fault(`there is no part ${q(d.part)}`, meant(d.nearest, `Parts of this kit: ${list(d.allowed)}.`)),
  'unknown-lug': (d) =>
    fault(
      `${q(d.part)} (${d.what}) has no lug ${q(d.lug)}`,
      meant(d.nearest, `Its lugs: ${list(d.allowed)}.`),
    ),
  'never-joined': (d) =>
    fault(`${q(d.part)} (${d.what}) is not connected`, 'Add its joints, or take it out of parts.'),
  'lug-to-itself': (d) => fault(`${bare(d.lug)} is joined to itself`, 'Name the other end.'),
  'joined-twice': (d) =>
    fault(`${bare(d.a)} and ${bare(d.b)} are joined twice`, 'Keep one of the two joints.'),
  'leg-free': (d) =>
    fault(
      `leg ${bare(d.leg)} of ${q(d.part)} (${d.what}) is not connected`,
      'Join it, or take the part out.',
    ),
  'leg-is-no-leg': (d) =>
    fault(
      `neither ${bare(d.from)} nor ${bare(d.to)} is a component’s leg`,
      'Use leg only for a resistor or capacitor soldered by its own wire; else use wire.',
    ),
  'link-across-parts': (d) =>
    fault(
      `${bare(d.from)} and ${bare(d.to)} are on two parts`,
      'A link joins lugs of one part; use wire between parts.',
    ),
  'bend-needs-case': (d) =>
    fault(
      `${bare(d.from)} cannot be bent onto ${bare(d.to)}`,
      'A bend runs from a lug of a pot to that pot’s own case.',
    ),
  'no-jack': () =>
    fault('the kit has no output jack', 'Add a part of kind jack and join its tip and sleeve.'),
  'several-jacks': (d) =>
    fault(
      `the kit has several jacks: ${list(d.parts)}`,
      'Keep one; circuits with two outputs are not covered yet.',
    ),
  'no-pickup': () => fault('the kit has no pickup', 'Add a part of kind single-coil or humbucker.'),
  'jack-free': (d) =>
    fault(
      `the ${bare(d.lug)} of ${q(d.part)} is not connected`,
      d.lug === 'sleeve'
        ? `Join ${bare(d.part)}.sleeve to the grounded case of a pot.`
        : `Join ${bare(d.part)}.tip to the volume pot, or to the switch.`,
    ),
  'jack-exchanged': (d) =>
    fault(
      `tip and sleeve of ${q(d.part)} are swapped: ${list(d.on)} ${d.on.length === 1 ? 'is' : 'are'} connected to the tip`,
      `Connect ${bare(d.part)}.sleeve to ground, and ${bare(d.part)}.tip to the volume control or the switch.`,
    ),
  'pickup-no-hot': (d) =>
    fault(
      `the hot lead of ${q(d.part)} is not connected`,
      `Join ${bare(d.part)}.hot to the switch or the volume pot.`,
    ),
  'pickup-no-ground': (d) =>
    fault(
      `${q(d.part)} has no way to ground`,
      `Join ${bare(d.part)}.ground to the grounded case of a pot or to the jack’s sleeve.`,
    ),
  'ground-point-no-ground': (d) =>
    fault(
      `${q(d.part)} is not joined to ground`,
      `Join it to a case that is joined to ${bare(d.sleeve)}; strings that float hum, and strings on the signal do worse.`,
    ),
  'dead-state': (d) =>
    fault(
      `nothing sounds with ${bare(d.state)}`,
      d.pot === undefined
        ? 'Follow the path from the tip back to a pickup in that position and add the missing joint.'
        : exchangeLugs(d.pot),
    ),
  'hot-shorted': (d) =>
    fault(
      `the tip is joined to ground with ${bare(d.state)}`,
      d.pot === undefined
        ? 'Find the joint that ties the signal to ground and move it.'
        : exchangeLugs(d.pot),
    ),
  'too-many': (d) => fault(`the kit has ${d.count} ${d.what}`, `Use at most ${d.most} in one kit.`),
  'crowded-lug': (d) =>
    fault(
      `${d.count} joints meet at ${d.lug}, which has room for ${d.most}`,
      'Join one of them to another lug of the same net, such as the other end of a wire that is there already.',
    ),
  'unknown-arrangement': (d) =>
    fault(`there is no arrangement ${q(d.got)}`, meant(d.nearest, `Arrangements: ${list(d.allowed)}.`)),
  'unknown-page': (d) =>
    fault(`there is no page format ${q(d.got)}`, meant(d.nearest, `Page formats: ${list(d.allowed)}.`)),
  'bad-arrangement': (d) =>
    fault(
      `the arrangement cannot be used: ${d.reason}`,
      'Name another, or fix that file; those in layouts/ show the form.',
    ),
  'kit-id-taken': (d) =>
    fault(`“${d.id}” is the id of ${d.file} too`, 'Give each kit an id of its own: it names the files.'),
  'missing-glyph': (d) =>
    fault(
      `${q(d.text)} has ${d.glyphs.length === 1 ? 'a character' : 'characters'} the drawing’s font lacks: ${list(d.glyphs.map(glyphWords))}`,
      `Write ${d.glyphs.length === 1 ? 'it' : 'them'} with other characters.`,
    ),
  'no-way': () =>
    fault(
      'no way was found for every wire of this kit, so it is not drawn',
      'Try another arrangement with --arrangement, or join some wires at other lugs of the same net. Please report it: no kit should bring this about.',
    ),
  'drawing-misleads': (d) =>
    fault(
      `${bare(d.drawing)} would mislead, and is not written: ${found(d)}`,
      'Try another arrangement with --arrangement, or a shorter label. Please report it: no kit should bring this about.',
    ),
  'drawing-untidy': (d) => ({
    severity: 'warning',
    message: `${bare(d.drawing)} is not as neat as it should be: ${found(d)}`,
    remedy: 'Look at it before you print it; a shorter label or another arrangement may help.',
  }),
  ...noteWording,
};
