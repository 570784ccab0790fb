/** What solving the circuit brings up: likely mistakes, and what is right but worth a second look. */
import { exchangeText, type LugExchange } from './exchange-wording.ts';
import { formatSigned } from './figures.ts';
import { andList, clip, list, type Message, quote } from './quoting.ts';

/** `where` is put behind a clause: empty, or with a blank before it. */
export interface NoteDetails {
  'load-off-reference': {
    part: string;
    /** A load, signed per cent off its reference, and where; never empty. */
    figures: readonly { load: string; percent: number; where: string }[];
    reference: string;
    /** Whether the load is too heavy in all of these positions. */
    below: boolean;
    /** The smallest usual value of these pots that brings it within limits, where one does. */
    larger?: { pots: readonly string[]; value: string };
  };
  'two-tone-controls': { tones: readonly string[]; where: string; load: string };
  'capacitor-across': {
    capacitor: string;
    where: string;
    pickup: string;
    /** Whether all that sounds has lost its treble, and not one pickup among others. */
    whole: boolean;
    cutoff: string;
    reference: string;
    control?: string;
  };
  'capacitor-across-always': NoteDetails['capacitor-across'];
  'never-selected': { part: string };
  'hidden-by-pot': { part: string; pot: string; where: string };
  'out-of-phase': { part: string; others: readonly string[]; where: string; silent?: string };
  'first-not-bridge': { part: string; bridge: string; sounding: readonly string[]; found: readonly string[] };
  'same-label': { label: string; other: string };
  'control-no-effect': { part: string; fall?: string; free: readonly string[]; floating?: string };
  /** `wiper`: the lug that `free` is connected to, where it is not free. */
  'shunt-control': { part: string; free: string; wiper?: string };
  'control-backwards': {
    part: string;
    hand: string;
    /** The end where it is at full. */
    end: string;
    exchange: LugExchange;
  };
  'no-load-other-end': { part: string; full: string };
  /** `count` settings, and the most that are solved. */
  'blend-at-centre-only': { part: string; count: number; most: number };
  'role-contradicts': { part: string; written: string; found: string };
  'role-unknown': { part: string; allowed: readonly string[] };
  'component-no-effect': { part: string; what: string };
  'switch-no-effect': { part: string };
  'case-not-grounded': { part: string; lug: string; on: readonly string[]; shield?: true };
  'case-on-signal': {
    part: string;
    lug: string;
    on: readonly string[];
    joined: readonly string[];
    shield?: true;
  };
  'inductance-assumed': {
    part: string;
    resistance: string;
    inductance: string;
    usual: string;
    scaled: string;
  };
  'coil-never-selected': { part: string; coil: string; link: readonly string[] };
  /** `made`: the leads are soldered as usual, and the coils are described as made the same way. */
  'coils-out-of-phase': { part: string; where: string; link: readonly string[]; made?: true };
  /** `where` behind a clause, as everywhere. */
  'pot-in-series': { part: string; pot: string; fall: string; where: string; blend?: true };
  'position-name': { part: string; position: string; named: string; sounding: readonly string[] };
  /** Parts with the same fields left out stand together; never empty. */
  'values-assumed': { groups: readonly { fields: readonly string[]; parts: readonly string[] }[] };
  /** `link`: the leads that are soldered together where the coils are in series. */
  'coil-lead-not-connected': { part: string; lug: string; link: readonly string[] };
  'not-in-stock': { part: string; got: string; stock: readonly string[] };
  'not-preferred': { part: string; got: string; nearest: string };
  /** A bare leg at a switch, whose lugs stand close together; `sleeving` is what to write. */
  'bare-leg-at-switch': { part: string; lug: string; sleeving: string };
  /** `joint`: what comes to the lug in the step `made`, later than the one that is `asked` for the bend. */
  'bent-too-early': { lug: string; asked: number; made: number; joint: string };
  /** A bare leg laid over what is bare too. */
  'bare-legs-cross': { part: string; across: string; sleeving: string };
  /** Two jumpers, each by its joint; the first is the one to insulate. */
  'bare-jumpers-cross': { jumper: string; across: string };
  'unusual-value': {
    what: string;
    got: string;
    least: string;
    most: string;
    likely?: string;
    unit: 'ohm' | 'farad';
  };
}

const error = (message: string, remedy: string): Message => ({ severity: 'error', message, remedy });
const warning = (message: string, remedy: string): Message => ({ severity: 'warning', message, remedy });
const note = (message: string, remedy: string): Message => ({ severity: 'note', message, remedy });

const ROLE_WORDS: Readonly<Record<string, string>> = {
  volume: 'a volume control',
  tone: 'a tone control',
  blend: 'a blend control',
  other: 'another control',
};

const acrossWords = (d: NoteDetails['capacitor-across']): readonly [string, string] => [
  `${quote(d.capacitor)} is connected straight across ${d.whole ? 'the signal' : quote(d.pickup)}${d.control === undefined ? '' : ` with ${quote(d.control)} on 10`}${d.where}: the −3 dB point of ${quote(d.pickup)} is ${d.cutoff} instead of ${d.reference} in its reference harness`,
  d.control === undefined
    ? d.whole
      ? 'Connect it to ground through lugs 1 and 2 of a tone pot, or disconnect it from the signal.'
      : `If this treble cut is intended, ignore this warning; otherwise connect ${quote(d.capacitor)} through lugs 1 and 2 of a tone pot, or remove it.`
    : `Check the lugs of ${quote(d.control)}. A tone control is wired between its lugs 1 and 2: on 10 its whole track is then in series with the capacitor.`,
];

export const noteWording: { readonly [C in keyof NoteDetails]: (detail: NoteDetails[C]) => Message } = {
  'load-off-reference': (d) =>
    note(
      `signal load of ${quote(d.part)}: ${d.figures.map(({ load, percent, where }) => `${load} (${formatSigned(percent, 0)} %)${where}`).join('; ')}; reference ${d.reference}`,
      d.below
        ? `If this is not intended, ${
            d.larger === undefined
              ? 'use larger pots'
              : `use ${d.larger.value} for ${andList(d.larger.pots.map(quote))}, the smallest usual value that brings DC and signal load within 20 %`
          }, or a larger resistor where one is connected across the signal; another padding resistor would load it more.`
        : 'If this is not intended, use a padding resistor; “solderleaf pad KIT” shows which, where, and what it does in every position.',
    ),
  'two-tone-controls': (d) =>
    note(
      `${andList(d.tones.map(quote))} ${d.tones.length === 2 ? 'both' : 'all'} load the signal${d.where}: the signal load is ${d.load}`,
      'This is usual where each pickup has a tone control of its own; if the load is too heavy, use larger tone pots or one tone control for all.',
    ),
  'capacitor-across': (d) => warning(...acrossWords(d)),
  'capacitor-across-always': (d) => error(...acrossWords(d)),
  'never-selected': (d) =>
    warning(
      `${quote(d.part)} is never selected: it has no output in any switch position`,
      'Check that its hot lead reaches a switch throw and its ground lead reaches ground; or remove it from the kit.',
    ),
  'hidden-by-pot': (d) =>
    warning(
      `${quote(d.part)} has almost no output${d.where} with ${quote(d.pot)} on 10; it is heard only with that pot turned down`,
      'If this is intended, as with a blend control, no change is needed; loads and cards are for the pot on 10. Otherwise check the lugs of the pot.',
    ),
  'out-of-phase': (d) =>
    warning(
      `${quote(d.part)} is out of phase with ${andList(d.others.map(quote))}${d.where}${d.silent === undefined ? '' : d.silent === '' ? ': together they have no output' : `; they cancel${d.silent}: no output`}`,
      `Swap its hot and ground leads, or the two starts of a humbucker with four leads; if the thin sound is intended, list the position under “intended: out-of-phase”. Do not swap them where the ground lead is also the shield or connected to a metal cover: separate the two first.`,
    ),
  'first-not-bridge': (d) =>
    warning(
      `position 1 of ${quote(d.part)} selects ${list(d.sounding)}, not ${quote(d.bridge)}`,
      `By convention position 1 is nearest the bridge; ${clip(d.bridge)} is selected in position ${list(d.found)}. Check which pickup goes to which throw.`,
    ),
  'same-label': (d) =>
    warning(`${quote(d.label)} is also the label of ${quote(d.other)}`, 'Give each part a unique label.'),
  'control-no-effect': (d) =>
    warning(
      d.fall === undefined
        ? `${quote(d.part)} has no effect on the output`
        : `turned down to 0, ${quote(d.part)} reduces the output by only ${d.fall} at 1 kHz`,
      `${d.floating === undefined ? (d.free.length === 0 ? '' : `Not connected: lug ${list(d.free)}. `) : `${clip(d.floating)} is not connected to ground, nor is what is soldered to it. `}${
        d.fall === undefined
          ? 'A volume control has the signal at lug 3, the output at 2 and ground at 1; a tone control uses lugs 1 and 2, with the capacitor in series to ground.'
          : 'A volume control needs ground at lug 1: bend it back onto the case, and connect the case to ground.'
      }`,
    ),
  'shunt-control': (d) =>
    warning(
      d.wiper === undefined
        ? `${quote(d.part)} works as a volume control: on 0 it shorts the signal to ground, with no capacitor in series`
        : `lugs ${d.wiper} and ${d.free} of ${quote(d.part)} are connected: it only shorts the signal to ground on 0, and turns it down little before that`,
      d.wiper !== undefined
        ? `For a volume control disconnect lug ${d.wiper} from lug ${d.free}: the signal to lug 3, the output to 2, ground to 1. For a tone control put a capacitor between ${quote(d.part)} and ground.`
        : `For a tone control put a capacitor between ${quote(d.part)} and ground. For a volume control connect lug ${d.free} too: the signal to lug 3, the output to 2, ground to 1.`,
    ),
  'control-backwards': (d) =>
    warning(
      `${quote(d.part)} works backwards in a ${d.hand}-handed build: it is at full when turned fully ${d.end}`,
      `${exchangeText(d.part, d.exchange)}. All figures are for the control at full, wherever that is.`,
    ),
  'no-load-other-end': (d) =>
    warning(
      `${quote(d.part)} is a no-load pot that opens when turned fully ${d.full === 'clockwise' ? 'anticlockwise' : 'clockwise'}, but it is at full when turned fully ${d.full}`,
      'Use a no-load pot that opens at the other end, or a plain pot.',
    ),
  'blend-at-centre-only': (d) =>
    note(
      `${quote(d.part)} is solved at its centre only: with both its ends there would be ${d.count} combinations, and at most ${d.most} are solved`,
      'What sounds towards its ends, and the loads there, are not checked. To see them, describe the kit with fewer switches or blends.',
    ),
  'role-contradicts': (d) =>
    warning(
      `${quote(d.part)} is described as ${ROLE_WORDS[d.written] ?? d.written}, but in this circuit it works as ${ROLE_WORDS[d.found] ?? d.found}`,
      `Check the lugs of ${quote(d.part)}, or change its role.`,
    ),
  'role-unknown': (d) =>
    warning(
      `it cannot be worked out from the circuit what ${quote(d.part)} is for`,
      `Add its role: ${list(d.allowed)}. It is taken as neither a volume nor a tone control: “volume on 0” leaves it where it is.`,
    ),
  'component-no-effect': (d) =>
    warning(
      `${quote(d.part)} is never in circuit: no signal flows through this ${d.what} in any switch position`,
      'Check where each leg is connected: in some switch position both must reach the signal or ground. Otherwise leave it out.',
    ),
  'switch-no-effect': (d) =>
    warning(
      `${quote(d.part)} has no effect: all its positions sound the same`,
      'Connect its commons and throws so that each position selects what it should, or leave it out.',
    ),
  'case-on-signal': (d) =>
    warning(
      `the ${d.shield ? 'shield' : 'case'} of ${quote(d.part)} carries the signal: it is connected to ${list(d.on)}`,
      `First disconnect ${list(d.joined)} from the ${d.shield ? 'shield' : 'case'}; then connect ${clip(d.lug)} to ground. Grounding it now would short the signal.`,
    ),
  'case-not-grounded': (d) =>
    warning(
      `the ${d.shield ? 'shield' : 'case'} of ${quote(d.part)} is not connected to ground${d.on.length === 0 ? '' : `, nor is what is soldered to it: ${list(d.on)}`}`,
      `Connect ${clip(d.lug)} to a grounded case or to the jack’s sleeve; a ${d.shield ? 'shield' : 'case'} that is not grounded picks up hum.`,
    ),
  'inductance-assumed': (d) =>
    warning(
      `${quote(d.part)} has ${d.resistance}, but its inductance is assumed to be ${d.inductance}, typical of a ${d.usual} pickup`,
      `Add its inductance, measured or from the data sheet: with the same wire it would be about ${d.scaled}, with thinner wire less. Resonances and curves are calculated for ${d.inductance}.`,
    ),
  'coil-never-selected': (d) =>
    warning(
      `${quote(d.part)} sounds with one coil only: its ${d.coil} has no output in any switch position`,
      `For both coils in series add the series link between ${d.link.map((lug) => `${clip(d.part)}.${clip(lug)}`).join(' and ')}, and check that nothing grounds it in every position.`,
    ),
  'coils-out-of-phase': (d) =>
    warning(
      `the two coils of ${quote(d.part)} are out of phase${d.where}: they cancel most of the signal`,
      `${
        d.made
          ? 'Its leads are soldered as usual, but by its “wind” and “polarity” the two coils are made so that they cancel: correct these (usual are opposite winds and opposite polarities; leave them out if you do not know them), or, if they are right, exchange the two leads of one coil.'
          : `Exchange the leads of one coil: in series, ${andList(d.link)} are soldered together.`
      } If the thin sound is intended, list the position under “intended: out-of-phase”.`,
    ),
  'coil-lead-not-connected': (d) =>
    error(
      `lead ${clip(d.lug)} of ${quote(d.part)} is not connected`,
      `Connect it. ${
        d.link.includes(d.lug)
          ? `For both coils in series, solder ${andList(d.link.map((lug) => `${clip(d.part)}.${clip(lug)}`))} together.`
          : 'One start goes to the switch or the volume control, the other to ground.'
      } To use one coil only, connect both leads of the other to ground.`,
    ),
  'not-in-stock': (d) =>
    warning(
      `${quote(d.part)} is ${d.got}, which is not in this kit’s stock`,
      `In stock: ${list(d.stock)}. Use one of these, or add ${d.got} to the stock; “solderleaf pad KIT” shows what each value does.`,
    ),
  'not-preferred': (d) =>
    note(
      `${quote(d.part)} is ${d.got}, which is not a preferred value (E24 or E96, IEC 60063)`,
      `Parts of this value are hard to buy; the nearest in E24 is ${d.nearest}.`,
    ),
  'bare-legs-cross': (d) =>
    note(
      `where the parts stand in this drawing, a bare leg of ${quote(d.part)} crosses ${d.across}; the drawing says to sleeve it`,
      `Add sleeving: ${d.sleeving} to ${quote(d.part)}, so that its steps say so too.`,
    ),
  'bare-leg-at-switch': (d) =>
    warning(
      `a bare leg of ${quote(d.part)} is soldered to ${clip(d.lug)}, close to the other lugs of the switch`,
      `Add sleeving: ${d.sleeving} to ${quote(d.part)}, so that the leg cannot touch them.`,
    ),
  'bent-too-early': (d) =>
    warning(
      `${quote(d.lug)} is to be bent in step ${d.asked}, but ${quote(d.joint)} comes to it in step ${d.made}, and nothing can be hooked through a lug that is bent: it is bent in step ${d.made} instead`,
      `Write step: ${d.made}, or leave “step” out; or give every other joint at ${quote(d.lug)} a “step” no later than ${d.asked}. A joint without “step” has the number of its stage, from 1 (ground) to 6 (pickups).`,
    ),
  'bare-jumpers-cross': (d) =>
    note(
      `where the parts stand in this drawing, the bare jumpers ${quote(d.jumper)} and ${quote(d.across)} cross; the drawing says to insulate one`,
      `Write wire in place of jumper for ${quote(d.jumper)}, so that its steps say so too.`,
    ),
  'pot-in-series': (d) =>
    warning(
      `the track of ${quote(d.pot)} is in series with ${quote(d.part)}${d.where}: it is ${d.fall} quieter than without it, all controls on 10`,
      d.blend
        ? `At the centre no resistance should be left between a pickup and the output. Check the lugs of ${quote(d.pot)}: each pickup is on the wiper of a track of its own, the inner ends of the tracks are the output, the outer ends go to ground. Use a blend pot without a “taper” of its own: of a plain track half is always left there.`
        : `Check the lugs of ${quote(d.pot)}: on 10 the signal passes from its wiper to one end without resistance.`,
    ),
  'position-name': (d) =>
    warning(
      `the position ${quote(d.position)} of ${quote(d.part)} selects ${list(d.sounding)}, not ${quote(d.named)}`,
      'Check which pickup goes to which throw, or rename the position.',
    ),
  'values-assumed': (d) =>
    note(
      `values assumed, typical of their kind: ${d.groups.map(({ fields, parts }) => `${andList(fields)} of ${andList(parts.map(quote))}`).join('; ')}`,
      'Add those that you know, measured or from the data sheet: meter readings depend on a pickup’s resistance, resonances and curves on its inductance and capacitance too, settings between 0 and 10 on a pot’s taper.',
    ),
  'unusual-value': (d) =>
    note(
      `${d.got} is unusual for ${d.what}${d.likely === undefined ? '' : `; did you mean ${d.likely}?`}`,
      `Usual values are ${d.least} to ${d.most}; ${
        d.unit === 'ohm'
          ? 'k = thousand, M = million, m = thousandth'
          : 'u = micro (10⁻⁶), n = nano (10⁻⁹), p = pico (10⁻¹²)'
      }.`,
    ),
};
