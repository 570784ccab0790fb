/** What solving the circuit brings up: likely mistakes, and what is right but worth a second look. */
import { bare, list, q, type Words } from './quoting.ts';

export interface NoteDetails {
  'load-off-reference': {
    part: string;
    state: string;
    load: string;
    reference: string;
    percent: number;
    limit: number;
  };
  'capacitor-across': {
    capacitor: string;
    states: string;
    pickup: string;
    /** Whether all that sounds has lost its treble, and not one pickup among others. */
    whole: boolean;
    cutoff: string;
    reference: string;
    control?: string;
    exchange?: readonly string[];
  };
  'capacitor-across-always': NoteDetails['capacitor-across'];
  'never-sounds': { part: string };
  'hidden-by-pot': { part: string; pot: string; states: string };
  'out-of-phase': { part: string; others: readonly string[]; states: string; silent: boolean };
  'first-not-bridge': { part: string; bridge: string; sounding: readonly string[]; found: readonly string[] };
  'same-label': { label: string; other: string };
  'control-idle': { part: string; fall?: string; free: readonly string[]; floating?: string };
  'shunt-control': { part: string; free: string };
  'component-idle': { part: string; what: string };
  'switch-idle': { part: string };
  'case-not-grounded': { part: string; on: readonly string[] };
  'case-on-signal': { part: string; on: readonly string[]; joined: readonly string[] };
  'value-unlikely': {
    what: string;
    got: string;
    least: string;
    most: string;
    likely?: string;
    unit: 'ohm' | 'farad';
  };
}

const fault = (message: string, remedy: string): Words => ({ severity: 'fault', message, remedy });
const warning = (message: string, remedy: string): Words => ({ severity: 'warning', message, remedy });
const note = (message: string, remedy: string): Words => ({ severity: 'note', message, remedy });

/** `: lug 1 in place of 3`, where exchanging them is known to help. */
const lugMove = (used: readonly string[] | undefined): string => {
  if (used === undefined) return '';
  const [lug, other] = used;
  if (other !== undefined) return `: exchange lugs ${lug} and ${other}`;
  return `: lug ${lug === '3' ? '1 in place of 3' : '3 in place of 1'}`;
};

const acrossWords = (d: NoteDetails['capacitor-across']): readonly [string, string] => [
  `${q(d.capacitor)} lies straight across ${d.whole ? 'the signal' : q(d.pickup)}${d.control === undefined ? '' : ` with ${q(d.control)} at full`}, ${bare(d.states)}: ${q(d.pickup)} is 3 dB down at ${d.cutoff}, in its reference harness at ${d.reference}`,
  d.control === undefined
    ? d.whole
      ? 'Connect it to ground through lugs 1 and 2 of a tone pot, or disconnect it from the signal.'
      : `If ${bare(d.pickup)} should give its bass only, leave it so; otherwise connect ${q(d.capacitor)} through lugs 1 and 2 of a tone pot, or remove it.`
    : `Check which lug of ${q(d.control)} goes where${lugMove(d.exchange)}. A tone lies between its lugs 1 and 2: at full its whole track then stands before the capacitor.`,
];

export const noteWording: { readonly [C in keyof NoteDetails]: (detail: NoteDetails[C]) => Words } = {
  'load-off-reference': (d) =>
    note(
      `${q(d.part)} has a signal load of ${d.load} with ${bare(d.state)}, ${Math.abs(d.percent)} % ${d.percent < 0 ? 'below' : 'above'} its reference of ${d.reference}; notes begin at ${d.limit} %`,
      d.percent < 0
        ? 'If that is not wanted, use larger pots, or a larger resistor where one is connected across the signal; another padding resistor only makes the load heavier.'
        : 'If that is not wanted, use a smaller pot or a padding resistor; “solderleaf pad KIT --match signal” shows both with their figures.',
    ),
  'capacitor-across': (d) => warning(...acrossWords(d)),
  'capacitor-across-always': (d) => fault(...acrossWords(d)),
  'never-sounds': (d) =>
    warning(
      `${q(d.part)} is never selected: it is heard in no position of the switches`,
      'Follow its hot lead to the switch and its ground lead to ground; or take it out of the kit.',
    ),
  'hidden-by-pot': (d) =>
    warning(
      `${q(d.part)} is hardly heard ${d.states} with ${q(d.pot)} at full; turned down, that brings it out`,
      'If that is meant, as with a blend, mind that loads and cards are for the pot at full; else check which lug goes where.',
    ),
  'out-of-phase': (d) =>
    warning(
      `${q(d.part)} is out of phase with ${list(d.others)} ${d.states}${d.silent ? ': together they are silent' : ''}`,
      `Exchange the hot and the ground lead of ${q(d.part)}, unless the thin sound is meant.`,
    ),
  'first-not-bridge': (d) =>
    warning(
      `position 1 of ${q(d.part)} sounds ${list(d.sounding)}, not ${q(d.bridge)}`,
      `By convention position 1 is nearest the bridge; ${bare(d.bridge)} sounds in position ${list(d.found)}. Check which pickup goes to which throw.`,
    ),
  'same-label': (d) =>
    warning(`${q(d.label)} is the label of ${q(d.other)} too`, 'Give each part a label of its own.'),
  'control-idle': (d) =>
    warning(
      d.fall === undefined
        ? `turning ${q(d.part)} changes nothing at the jack`
        : `turned down to 0, ${q(d.part)} takes only ${d.fall} off at 1 kHz`,
      `${d.floating === undefined ? (d.free.length === 0 ? '' : `Not connected: lug ${list(d.free)}. `) : `What is soldered to its case ends there: ${bare(d.floating)} is not joined to ground. `}${
        d.fall === undefined
          ? 'A volume has the signal at lug 3, the output at 2 and ground at 1; a tone lies between 1 and 2, its capacitor between it and ground.'
          : `A volume needs ground at lug 1: bend ${bare(d.part)}.1 onto its case, and join the case to ground.`
      }`,
    ),
  'shunt-control': (d) =>
    warning(
      `${q(d.part)} works as a volume control: on 0 it shorts the signal to ground, with no capacitor in series`,
      `For a tone control put a capacitor between ${q(d.part)} and ground. For a volume control connect lug ${d.free} too: the signal to lug 3, the output to 2, ground to 1.`,
    ),
  'component-idle': (d) =>
    warning(
      `${q(d.part)} is never in circuit: no signal flows through this ${d.what} in any switch position`,
      'Check where each leg is connected: in some switch position both must reach the signal or ground. Otherwise leave it out.',
    ),
  'switch-idle': (d) =>
    warning(
      `${q(d.part)} changes nothing: every position sounds the same`,
      'Connect its commons and throws so that each position selects what it should, or leave it out.',
    ),
  'case-on-signal': (d) =>
    warning(
      `the case of ${q(d.part)} carries the signal: it is connected to ${list(d.on)}`,
      `First disconnect ${list(d.joined)} from the case; then connect ${bare(d.part)}.case to ground. Grounding it now would short the signal.`,
    ),
  'case-not-grounded': (d) =>
    warning(
      `the case of ${q(d.part)} is not joined to ground${d.on.length === 0 ? '' : `, nor is what is soldered to it: ${list(d.on)}`}`,
      `Join ${bare(d.part)}.case to a case that is grounded, or to the jack’s sleeve; a case that floats picks up hum.`,
    ),
  'value-unlikely': (d) =>
    note(
      `${d.what} of ${d.got}?${d.likely === undefined ? '' : ` Did you mean ${d.likely}?`}`,
      `Usual are ${d.least} to ${d.most}; ${
        d.unit === 'ohm'
          ? 'k stands for thousand, M for million, m for a thousandth'
          : 'u stands for a millionth, n for a thousandth of that, p for a thousandth again'
      }.`,
    ),
};
