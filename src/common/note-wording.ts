/** The notes among the messages: what is right but worth a second look. */
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
    cutoff: string;
    reference: string;
    control?: string;
    exchange?: readonly string[];
  };
  'control-idle': { part: string; fall?: string; free: readonly string[] };
  'value-unlikely': { what: string; got: string; least: string; most: string; likely?: string };
}

const note = (message: string, remedy: string): Words => ({ severity: 'note', message, remedy });

/** `: lug 1 in place of 3`, where exchanging them is known to help. */
const lugMove = (used: readonly string[] | undefined): string => {
  if (used === undefined) return '';
  const [lug, other] = used;
  if (other !== undefined) return `: exchange lugs ${lug} and ${other}`;
  return `: lug ${lug === '3' ? '1 in place of 3' : '3 in place of 1'}`;
};

export const noteWording: { readonly [C in keyof NoteDetails]: (detail: NoteDetails[C]) => Words } = {
  'load-off-reference': (d) =>
    note(
      `${q(d.part)} has a signal load of ${d.load} with ${bare(d.state)}, ${Math.abs(d.percent)} % ${d.percent < 0 ? 'below' : 'above'} its reference of ${d.reference}; notes begin at ${d.limit} %`,
      'If that is not wanted, change a pot or add a padding resistor; “solderleaf pad” shows both with their figures.',
    ),
  'capacitor-across': (d) =>
    note(
      `${q(d.capacitor)} lies straight across the signal${d.control === undefined ? '' : ` with ${q(d.control)} at full`}, ${bare(d.states)}: ${q(d.pickup)} is 3 dB down at ${d.cutoff}, in the harness it was made for at ${d.reference}`,
      d.control === undefined
        ? 'Put the lugs 1 and 2 of a tone pot in its way to ground, or take it off the signal.'
        : `Check which lug of ${q(d.control)} goes where${lugMove(d.exchange)}. A tone lies between its lugs 1 and 2: at full its whole track then stands before the capacitor.`,
    ),
  'control-idle': (d) =>
    note(
      d.fall === undefined
        ? `turning ${q(d.part)} changes nothing at the jack`
        : `turned down to 0, ${q(d.part)} takes only ${d.fall} off at 1 kHz`,
      `${d.free.length === 0 ? '' : `Joined to nothing: lug ${list(d.free)}. `}${
        d.fall === undefined
          ? 'A volume has the signal at lug 3, the output at 2 and ground at 1; a tone lies between 1 and 2, its capacitor between it and ground.'
          : `A volume needs ground at lug 1: bend ${bare(d.part)}.1 onto its case, and join the case to ground.`
      }`,
    ),
  'value-unlikely': (d) =>
    note(
      `${d.what} of ${d.got}?${d.likely === undefined ? '' : ` Did you mean ${d.likely}?`}`,
      `Usual are ${d.least} to ${d.most}; k stands for thousand, M for million, m for a thousandth.`,
    ),
};
