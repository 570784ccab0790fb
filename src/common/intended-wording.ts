/** Messages about what a kit says is intended: the names in it, and what does not prove true. */
import { list, type Message, meant, quote } from './quoting.ts';

/** `where` is put behind a clause: empty, or with a blank before it. */
export interface IntendedDetails {
  'unknown-switch': { part: string; nearest?: string; allowed: readonly string[] };
  'not-a-switch': { part: string; what: string; allowed: readonly string[] };
  'unknown-position': {
    part: string;
    what: string;
    got: string;
    nearest?: string;
    allowed: readonly string[];
  };
  /** `of`: the kill button, where no entry of the kit says that silence is intended. */
  'not-silent': { where: string; of?: string };
  'not-out-of-phase': { where: string };
}

const error = (message: string, remedy: string): Message => ({ severity: 'error', message, remedy });
const warning = (message: string, remedy: string): Message => ({ severity: 'warning', message, remedy });
const switchesOf = (names: readonly string[]): string =>
  names.length === 0 ? 'This kit has no switch: remove the entry.' : `Switches of this kit: ${list(names)}.`;

/** Behind the remedy for a silent position: nothing where it is silent in every position, which nobody intends. */
export const intendedSilence = ({ partly }: { partly?: true }): string =>
  partly ? ' If there is no output here on purpose, list the position under “intended: silent”.' : '';

export const intendedWording: {
  readonly [C in keyof IntendedDetails]: (detail: IntendedDetails[C]) => Message;
} = {
  'unknown-switch': (d) => error(`unknown switch ${quote(d.part)}`, meant(d.nearest, switchesOf(d.allowed))),
  'not-a-switch': (d) => error(`${quote(d.part)} (${d.what}) is not a switch`, switchesOf(d.allowed)),
  'unknown-position': (d) =>
    error(
      `${quote(d.part)} (${d.what}) has no position ${quote(d.got)}`,
      meant(d.nearest, `Its positions: ${list(d.allowed)}.`),
    ),
  'not-silent': (d) =>
    warning(
      `there is output${d.where}, where silence is intended`,
      d.of === undefined
        ? 'Check the joints of the switch; or remove this entry, if there should be output.'
        : `Check the joints of ${quote(d.of)}; for a switch that does not silence the output use another kind.`,
    ),
  'not-out-of-phase': (d) =>
    warning(
      `no pickups are out of phase${d.where}, where this is intended`,
      'Check the joints of the switch; or remove this entry.',
    ),
};
