import { z } from 'zod';
import { around, at } from '../common/geometry.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { positionWords } from '../messages/words.ts';
import { type Contact, definePart, type LugSpec, type PartBase, type Seen } from './kind.ts';
import { g, nameLines, type Outline, tagCentre, tagPorts, titleLabels, widestLine } from './outline.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

const CONTACT_KINDS = ['normally-open', 'normally-closed'] as const;

interface KillButton extends PartBase<'kill-button'> {
  readonly contact: (typeof CONTACT_KINDS)[number];
}

const LUGS = [
  { name: '1', role: 'throw', pole: 'A' },
  { name: '2', role: 'throw', pole: 'A' },
] as const satisfies readonly LugSpec[];
const [LEFT, RIGHT] = LUGS;

/** At rest first: it is what a drawing shows where no position is asked for. Pressed, it is there to silence the output. */
const contactsOf = ({ contact }: KillButton): readonly Contact[] =>
  (['released', 'pressed'] as const).map((called, i) => ({
    position: i + 1,
    called,
    mark: called,
    ...(called === 'pressed' ? { silent: true as const } : {}),
    joins: (contact === 'normally-closed') === (called === 'released') ? [[LEFT.name, RIGHT.name]] : [],
  }));

/** Momentary push button with one contact between lugs 1 and 2. */
export const killButton = definePart({
  kind: 'kill-button',
  what: 'momentary push button',
  is: ['switch'],
  mirrors: false,
  fields: {
    contact: z
      .enum(CONTACT_KINDS)
      .optional()
      .describe(
        'normally-open, by default: lugs 1 and 2 are connected while pressed; normally-closed: while released',
      ),
  },
  build: (base, { contact }): KillButton => ({ ...base, contact: contact ?? 'normally-open' }),
  lugs: LUGS,
  elements: () => [],
  contacts: contactsOf,
  outline: (part, _, language) => buttonOutline(part, language),
  face: (part, seen) => buttonFace(part, seen),
});

/** Least width of the plate, grid units, and what a line of the name leaves free at its edges. */
const LEAST = 7;
const MARGIN = 10;
/** Below the two lugs' row, grid units: where the lines stand that say what the contact does in either position, and where the plate ends. */
const FIRST_LINE = 1.3;
const LINE = 1;
const END = 3;

/** A lug at either edge, the button's contact between them under its name. */
function buttonOutline(part: KillButton, language: Language): Outline {
  const say = sayIn(language);
  const what = say('face.push-button');
  const names = nameLines(part.label, g(LEAST) - MARGIN);
  const across = Math.max(LEAST, Math.ceil((widestLine(names, what) + MARGIN) / g(1)));
  const labels = titleLabels(names, what, (line) => at(g(2 + across / 2), g(0.85 + line)));
  const row = labels.length + 3;
  const body = { x: g(2), y: 0, width: g(across), height: g(row + END) };
  return {
    width: g(across + 4),
    height: body.height,
    body,
    blocked: [body],
    lugs: LUGS.map(({ name: lug }) => {
      const left = lug === LEFT.name;
      const x = left ? 1 : across + 3;
      const tag = around(g(x) + (left ? 4 : -4), g(row), 26, 20);
      return { lug, tag, ports: tagPorts(tag, x, row, [left ? 'left' : 'right', 'up', 'down']) };
    }),
    labels,
    // Both positions: one word alone would be taken for the one that is drawn.
    marks: contactsOf(part).map(({ position, mark, joins }, i) => ({
      text: say('face.contact', {
        position: positionWords(language, mark ?? ''),
        contact: joins.length === 0 ? 'open' : 'closed',
      }),
      positions: [position],
      centre: at(g(2 + across / 2), g(row + FIRST_LINE + LINE * i)),
    })),
  };
}

/** Drawing units: from the middle to either contact, how far the bar is lifted off them, and how far the plunger rises above the contacts. */
const HALF = 20;
const LIFT = 10;
const PLUNGER = 22;

/** Two contacts and the bar that the plunger carries: it lies on both where they are connected, above or below them where they are not. */
function buttonFace({ contact }: KillButton, { outline, closed }: Seen): readonly Shape[] {
  const { body } = outline;
  const middle = body.x + body.width / 2;
  const { y } = tagCentre(outline, LEFT.name);
  const touching = closed.some((group) => group.some((lug) => lug === LEFT.name));
  const bar = touching ? y : contact === 'normally-open' ? y - LIFT : y + LIFT;
  const ends = [at(middle - HALF, bar), at(middle + HALF, bar)];
  const contacts = [at(middle - HALF, y), at(middle + HALF, y)];
  const top = at(middle, bar - PLUNGER);
  return [
    plate(body, 12),
    conductor(2, run(at(middle, bar), top), run(at(middle - 8, top.y), at(middle + 8, top.y))),
    touching ? { shape: 'path', role: 'bridge', runs: [run(...ends)], width: 7 } : conductor(3, run(...ends)),
    conductor(
      2,
      run(at(body.x, y), at(middle - HALF, y)),
      run(at(body.x + body.width, y), at(middle + HALF, y)),
    ),
    ...contacts.map((centre): Shape => ({ shape: 'circle', role: 'contact', centre, radius: 4 })),
  ];
}
