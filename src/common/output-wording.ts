/** Messages about positions and outputs without a signal, and about what a kit says is intended of them. */
import { exchangeText, type LugExchange } from './exchange-wording.ts';
import { clip, list, type Message, meant, quote } from './quoting.ts';

/** `where` is put behind a clause: empty, or with a blank before it. */
export interface OutputDetails {
  /** `partly`: not in every position, so that it may be intended; `link`: the joint that puts two coils in series and ends the silence. */
  'no-output': {
    where: string;
    partly?: true;
    link?: string;
    /** A blend that is silent at its centre; `exchange` where its tracks the other way round end the silence. */
    blend?: string;
    exchange?: LugExchange;
  };
  /** `joints`: that which connects the signal to ground, then others that meet it and would end the short as well. */
  'output-shorted': { where: string; partly?: true; joints: readonly string[] };
  'output-never-sounds': { part: string; lug: string };
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
const intendedSilence = ({ partly }: { partly?: true }): string =>
  partly ? ' If there is no output here on purpose, list the position under “intended: silent”.' : '';

export const outputWording: {
  readonly [C in keyof OutputDetails]: (detail: OutputDetails[C]) => Message;
} = {
  'no-output': (d) =>
    error(
      `no output${d.where}${d.link === undefined ? '' : ': a series link is missing'}`,
      d.link === undefined
        ? d.blend === undefined
          ? `Follow the signal from the jack’s tip back to a pickup and add the missing joint.${intendedSilence(d)}`
          : d.exchange
            ? `The tracks of ${quote(d.blend)} are wired the wrong way round: at its centre they connect the signal to ground. ${exchangeText(d.blend, d.exchange)}.`
            : `Check the lugs of ${quote(d.blend)}: each pickup is on the wiper of a track of its own, the ends that the wipers touch at the centre are the output, the other two ends go to ground.`
        : `Add the joint ${quote(d.link)}: it puts the two coils in series.${intendedSilence(d)}`,
    ),
  'output-shorted': (d) =>
    error(
      `the output is shorted: the tip is connected to ground${d.where}`,
      d.joints.length === 0
        ? `Find the joint that connects the signal to ground and move it.${intendedSilence(d)}`
        : d.joints.length === 1
          ? `${quote(d.joints[0] ?? '')} connects the signal to ground: move one end to the correct lug.${intendedSilence(d)}`
          : `One of these joints is wrong: ${d.joints.map(quote).join(', ')}. Move one end of the wrong joint to the correct lug.${intendedSilence(d)}`,
    ),
  'output-never-sounds': (d) =>
    error(
      `no output at the ${clip(d.lug)} of ${quote(d.part)} in any switch position`,
      `Follow the signal from ${clip(d.part)}.${clip(d.lug)} back to a pickup and add the missing joint; for one output use a part of kind jack.`,
    ),
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
