/** What the check of a drawing can find, and the words for each, in one place. */
import { type Point, round2 } from '../common/geometry.ts';
import { quote } from '../common/quoting.ts';

/** What could make a customer solder, buy or read wrong; or what is only not as neat as it should be. */
export type Weight = 'misleading' | 'untidy';

export interface Finding {
  readonly rule: Rule;
  readonly weight: Weight;
  /** In the units of the view box; absent where a finding concerns the whole drawing. */
  readonly where?: Point;
  readonly message: string;
}

const WORDS = {
  // Reading.
  unreadable: (d: { reason: string }) => `not a drawing that can be checked: ${d.reason}`,
  'not-read': (d: { what: string }) => `${d.what} is not read by this check`,
  // Texts.
  'text-on-text': (d: { text: string; other: string }) => `${quote(d.text)} touches ${quote(d.other)}`,
  'text-on-line': (d: { text: string; line: string }) => `${quote(d.text)} touches ${d.line}`,
  'text-on-edge': (d: { text: string; area: string }) =>
    `${quote(d.text)} extends beyond the edge of ${d.area}`,
  'text-misplaced': (d: { text: string; area: string }) =>
    `${quote(d.text)} is in ${d.area}, where it does not belong`,
  'text-outside': (d: { text: string; area: string }) => `${quote(d.text)} is outside ${d.area}`,
  'text-covered': (d: { text: string; area: string }) => `${quote(d.text)} is covered by ${d.area}`,
  'small-type': (d: { text: string; size: number; least: number }) =>
    `${quote(d.text)} is ${round2(d.size)} mm high on the page; at least ${d.least} mm is needed`,
  contrast: (d: { text: string; ink: string; ground: string; ratio: number; least: number }) =>
    `${quote(d.text)} has ${d.ink} on ${d.ground}, a contrast of ${round2(d.ratio)}:1; at least ${d.least}:1 is needed`,
  'chip-place': (d: { code: string; what: string }) => `the colour code ${quote(d.code)} ${d.what}`,
  'off-page': (d: { what: string }) => `${d.what} extends beyond the edge of the page`,
  // Wires.
  'lug-too-near': (d: { wire: string; lug: string; least: number }) =>
    `${d.wire} passes within ${d.least} units of ${d.lug}, which it is not connected to`,
  'under-part': (d: { wire: string; part: string }) => `${d.wire} runs under ${d.part}`,
  'wires-overlap': (d: { wire: string; other: string }) => `${d.wire} and ${d.other} overlap`,
  'parallel-gap': (d: { wire: string; other: string; gap: number; least: number }) =>
    `${d.wire} and ${d.other} run ${round2(d.gap)} units apart; at least ${d.least} is needed`,
  'diagonal-wire': (d: { wire: string }) => `${d.wire} is not horizontal or vertical`,
  crossing: (d: { wire: string; other: string; open: number }) =>
    `${d.wire} and ${d.other} cross, ${d.open === 0 ? 'but neither line is' : 'and both lines are'} broken`,
  'unexpected-gap': (d: { wire: string }) => `${d.wire} has a gap where nothing crosses it`,
  'gap-at-end': (d: { wire: string; seen: number; least: number }) =>
    `${d.wire} has a gap ${round2(d.seen)} units from its end; at least ${d.least} must be seen, or it looks unconnected`,
  'gap-at-corner': (d: { wire: string; seen: number; least: number }) =>
    `${d.wire} has a gap ${round2(d.seen)} units from a corner; at least ${d.least} must be seen`,
  'short-stub': (d: { wire: string; seen: number; least: number }) =>
    `${d.wire} has only ${round2(d.seen)} units between two gaps; at least ${d.least} must be seen`,
  'wire-on-wire': (d: { wire: string; other: string }) => `${d.wire} bends or ends on ${d.other}`,
  broken: (d: { wire: string }) => `${d.wire} is not a continuous line with gaps only at crossings`,
  revision: (d: { what: string }) => `the revision mark ${d.what}`,
  // Drawn again in the same places.
  'unknown-aspect': (d: { id: string }) =>
    `${quote(d.id)} does not say which drawing of the kit this is: its view, position, step or theme`,
  'differs-from-kit': (d: { what: string; drawn: string; described: string }) =>
    `${quote(d.what)}: the drawing has ${d.drawn.slice(0, 120)}, the kit gives ${d.described.slice(0, 120)}`,
  // What is joined to what.
  'end-not-on-lug': (d: { wire: string }) => `${d.wire} has an end that is not on a lug`,
  lug: (d: { part: string; what: string }) => `${d.part} ${d.what}`,
  body: (d: { part: string; count: number }) =>
    `${d.part} has ${d.count === 0 ? 'no body' : `${d.count} overlapping bodies`} in the drawing`,
  'parts-touch': (d: { part: string; other: string }) => `${d.part} and ${d.other} overlap`,
  'other-kit': (d: { drawn: string; kits: readonly string[] }) =>
    `the drawing shows kit ${quote(d.drawn)}, but the kits given are: ${d.kits.map(quote).join(', ')}`,
  part: (d: { part: string; what: string }) => `${quote(d.part)} ${d.what}`,
  'joint-missing': (d: { joint: string }) => `${d.joint} is in the kit but not in the drawing`,
  'joint-extra': (d: { joint: string }) => `${d.joint} is in the drawing but not in the kit`,
  colour: (d: { joint: string; drawn: string; described: string }) =>
    `${d.joint} has the colour code ${quote(d.drawn)}; the kit says ${d.described}`,
} as const;

export type Rule = keyof typeof WORDS;

/** Rules of neatness; whatever breaks another one may mislead. */
const NEATNESS: ReadonlySet<Rule> = new Set<Rule>([
  'text-on-line',
  'text-on-edge',
  'text-outside',
  'small-type',
  'contrast',
  'parallel-gap',
  'diagonal-wire',
  'gap-at-end',
  'gap-at-corner',
  'short-stub',
]);

type Details<R extends Rule> = Parameters<(typeof WORDS)[R]>[0];

export const finding = <R extends Rule>(rule: R, where: Point | undefined, detail: Details<R>): Finding => ({
  rule,
  weight: NEATNESS.has(rule) ? 'untidy' : 'misleading',
  ...(where === undefined ? {} : { where: { x: round2(where.x), y: round2(where.y) } }),
  // Each rule's words take just its own details; the table above pairs them.
  message: (WORDS[rule] as (d: Details<R>) => string)(detail),
});

/** `12.5,40  text-on-text  “Neck” touches “Bridge”`. */
export const formatFinding = ({ rule, where, message }: Finding): string =>
  `${where ? `${where.x},${where.y}` : '-'}  ${rule}  ${message}`;
