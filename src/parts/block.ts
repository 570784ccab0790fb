/** A switch seen from the solder side as a plate with lugs at both long edges: what its outline and its face are. */

import { at, PITCH, type Point, type Rect } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { lugWords, positionWords } from '../messages/words.ts';
import type { Contact, Seen } from './kind.ts';
import {
  belowLines,
  g,
  type LugOutline,
  nameLines,
  type Outline,
  TYPE,
  tagCentre,
  tagPorts,
  titleLabels,
  widestLine,
} from './outline.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

/** Lugs at the left and at the right edge, from the top down. */
export interface Columns {
  readonly left: readonly string[];
  readonly right: readonly string[];
  /** The one of them that is the frame itself: a point for a ground wire, which no contact touches. */
  readonly frame?: string;
}

/** Between one lug and the next, grid units. */
const ROW = 3;
const TAG_HEIGHT = 20;
/** How far inside the plate a lug's contact lies, and the first way from contact to contact. */
const CONTACT = 15;
const LANE = 31;
const EDGE = 15;
/** What a line of the name leaves free at the plate's edges. */
const MARGIN = 10;

/** How far a tag reaches onto the plate, drawing units: in a narrow column further, as what it has there it does not take beside it. */
const ONTO = { usual: 1, narrow: 5 } as const;
type Form = keyof typeof ONTO;

/** How far the narrowest tag reaches out from the plate. */
const OUT = 25;

/** Wide enough for its name, and ending where the narrowest ends beside the grid. */
function tagWidth(names: readonly string[], language: Language, form: Form): number {
  const words = names.map((name) => lugWords(language, name));
  const widest = Math.max(0, ...words.map((name) => textWidth(name, TYPE.lug, 'bold') + 10));
  const least = OUT + ONTO[form];
  return least + PITCH * Math.max(0, Math.ceil((widest - least) / PITCH));
}

/** Grid units from the outline's edge to the plate's. */
const insetOf = (names: readonly string[], language: Language, form: Form): number =>
  names.length === 0 ? 1 : Math.ceil((tagWidth(names, language, form) - ONTO[form]) / PITCH);

/** Most groups of contacts that are closed at once: each has a way of its own across the plate. */
const lanesOf = (contacts: readonly Contact[]): number =>
  Math.max(1, ...contacts.map(({ joins }) => joins.length));

/** Room for a mark between the plate's edge and the first way across, and how far above its contact it stands. */
const MARK_ROOM = { usual: 22, narrow: 20 } as const;
const MARK_MIDDLE = 14;
const MARK_ABOVE = 14;
/** Between the two lines of a mark. */
const MARK_LINE = 13;

/** `1`, `1,2`, `2–5`, or what the positions are called. */
function markText(positions: readonly number[], contacts: readonly Contact[], language: Language): string {
  const called = contacts.flatMap(({ position, mark }) =>
    positions.includes(position) && mark !== undefined ? [positionWords(language, mark)] : [],
  );
  if (called.length > 0) return called.join(', ');
  const runs: number[][] = [];
  for (const position of positions) {
    const last = runs.at(-1);
    if (last?.at(-1) === position - 1) last.push(position);
    else runs.push([position]);
  }
  // Two numbers with a comma between are one number where the comma is the decimal sign.
  const between = language === DEFAULT_LANGUAGE ? ',' : '/';
  return runs.map((run) => (run.length > 2 ? `${run[0]}–${run.at(-1)}` : run.join(between))).join(between);
}

/** The positions in which each lug touches another, where these are not all of them: what touches always says nothing. */
const marksOf = (contacts: readonly Contact[], lug: string): readonly number[] => {
  const positions = contacts.flatMap(({ position, joins }) =>
    joins.some((group) => group.includes(lug)) ? [position] : [],
  );
  return positions.length === contacts.length ? [] : positions;
};

/** How much further inside the ways across begin where marks are wide, grid units. */
const furtherIn = (lines: readonly string[], form: Form): number =>
  Math.ceil(Math.max(0, ...lines.map((text) => textWidth(text, TYPE.lug, 'bold') - MARK_ROOM[form])) / PITCH);

interface Written {
  readonly lug: string;
  readonly positions: readonly number[];
  readonly lines: readonly string[];
}

/** The two lines of a text that are as narrow as can be; the text itself where it is one word. */
function halved(text: string): readonly string[] {
  const words = text.split(' ');
  const ways = words.slice(1).map((_, i) => [words.slice(0, i + 1).join(' '), words.slice(i + 1).join(' ')]);
  return ways.sort((a, b) => furtherIn(a, 'narrow') - furtherIn(b, 'narrow'))[0] ?? [text];
}

/**
 * @param what the line below the name: `switch`
 * @param narrow whether marks stand in two lines where one is wide, and take room at their own edge only
 */
export function blockOutline(
  label: string,
  what: string,
  { left, right, frame }: Columns,
  contacts: readonly Contact[],
  language: Language,
  narrow = false,
): Outline {
  const form = narrow ? 'narrow' : 'usual';
  const [from, to] = [insetOf(left, language, form), insetOf(right, language, form)];
  const written = [...left, ...right].flatMap((lug): Written[] => {
    const positions = marksOf(contacts, lug);
    if (positions.length === 0) return [];
    const text = markText(positions, contacts, language);
    return [{ lug, positions, lines: narrow && furtherIn([text], form) > 0 ? halved(text) : [text] }];
  });
  const furtherAt = (lugs: readonly string[]): number =>
    furtherIn(
      written.flatMap(({ lug, lines }) => (lugs.includes(lug) ? lines : [])),
      form,
    );
  const widest = Math.max(furtherAt(left), furtherAt(right));
  const further = narrow
    ? { left: furtherAt(left), right: furtherAt(right) }
    : { left: widest, right: widest };
  const least = Math.max(6, 3 + lanesOf(contacts)) + further.left + further.right;
  const names = nameLines(label, g(least) - MARGIN);
  const below = narrow ? belowLines(what, Math.max(widestLine(names), g(least) - MARGIN)) : [what];
  const inner = Math.max(least, Math.ceil((widestLine(names, ...below) + MARGIN) / g(1)));
  const labels = titleLabels(names, below, (row) => at(g(from + inner / 2), g(0.85 + row)));
  const high = Math.max(1, ...written.map(({ lines }) => lines.length));
  // A way across that passes another one's contact below it needs the room of a mark's second line.
  const apart = high > 1 && right.some((lug) => lug !== frame) ? ROW + 1 : ROW;
  const first = labels.length + 1 + high;
  const height = g(first + apart * (Math.max(left.length, right.length) - 1) + 1);
  const body: Rect = { x: g(from), y: 0, width: g(inner), height };
  const lugs = (names: readonly string[], side: 'left' | 'right'): readonly LugOutline[] =>
    names.map((lug, i) => {
      const width = tagWidth(names, language, form);
      const x = side === 'left' ? body.x + ONTO[form] - width : body.x + body.width - ONTO[form];
      const row = first + apart * i;
      const tag: Rect = { x, y: g(row) - TAG_HEIGHT / 2, width, height: TAG_HEIGHT };
      const column = side === 'left' ? Math.ceil(x / PITCH) : Math.floor((x + width) / PITCH);
      return { lug, tag, ports: tagPorts(tag, column, row, [side, 'up', 'down']) };
    });
  return {
    ...(narrow ? { narrow } : {}),
    width: g(from + inner + to),
    height,
    body,
    blocked: [body],
    lugs: [...lugs(left, 'left'), ...lugs(right, 'right')],
    labels,
    marks: written.flatMap(({ lug, positions, lines }) => {
      const [column, inward, more] = left.includes(lug)
        ? [left, 1, further.left]
        : [right, -1, further.right];
      const edge = inward > 0 ? body.x : body.x + body.width;
      const x = edge + inward * (MARK_MIDDLE + g(more) / 2);
      const lowest = g(first + apart * column.indexOf(lug)) - MARK_ABOVE;
      return lines.map((text, i) => ({
        text,
        positions,
        centre: at(x, lowest - MARK_LINE * (lines.length - 1 - i)),
      }));
    }),
  };
}

/** A contact behind each lug; those that are closed are joined, each group on a way of its own, the later over the earlier. */
export function blockFace({ left, right, frame }: Columns, { outline, closed }: Seen): readonly Shape[] {
  const { body } = outline;
  const contactOf = (lug: string): Contacted => {
    const inward = left.includes(lug) ? 1 : -1;
    const edge = left.includes(lug) ? body.x : body.x + body.width;
    return { lug, inward, edge, at: at(edge + inward * CONTACT, tagCentre(outline, lug).y) };
  };
  const points = [...left, ...right].map(contactOf);
  const contacts = points.filter(({ lug }) => lug !== frame);
  const frames = points.filter(({ lug }) => lug === frame);
  const middle = body.x + body.width / 2;
  const beside = (outline.marks ?? []).flatMap(({ text, centre }) =>
    outline.narrow && centre.x > middle ? [] : [text],
  );
  const groupOf = (lug: string | undefined): number =>
    closed.findIndex((group) => group.some((one) => one === lug));
  /** The way from a contact to its group's lane: below that of a contact across from it, where they would lie on one another. */
  const wayOf = ({ lug, inward, at: end }: Contacted, lane: number): Way => {
    const across = inward < 0 ? left[right.indexOf(lug)] : undefined;
    if (groupOf(across) <= groupOf(lug)) return { y: end.y, points: [end, at(lane, end.y)] };
    const [x, y] = [end.x + inward * JOG, end.y + BELOW];
    return { y, points: [end, at(x, end.y), at(x, y), at(lane, y)] };
  };
  const bridges = closed.flatMap((group, i): readonly Shape[] => {
    const lane = body.x + LANE + g(furtherIn(beside, outline.narrow ? 'narrow' : 'usual')) + EDGE * i;
    const ways = contacts.filter(({ lug }) => group.includes(lug)).map((contact) => wayOf(contact, lane));
    const heights = ways.map(({ y }) => y);
    const runs = [
      run(at(lane, Math.min(...heights)), at(lane, Math.max(...heights))),
      ...ways.map(({ points }) => run(...points)),
    ];
    const over: readonly Shape[] =
      i === 0 ? [] : [{ shape: 'path', role: 'clearance', runs, width: BRIDGE + 6 }];
    return [...over, { shape: 'path', role: 'bridge', runs, width: BRIDGE }];
  });
  return [
    plate(body, 12),
    ...bridges,
    conductor(2, ...points.map(({ edge, at: end }) => run(at(edge, end.y), end))),
    // Joined to the plate, where the others have a contact.
    ...frames.map(({ at: centre }): Shape => ({ shape: 'circle', role: 'dot', centre, radius: 3 })),
    ...contacts.map(({ at: centre }): Shape => ({ shape: 'circle', role: 'contact', centre, radius: 4 })),
  ];
}

interface Contacted {
  readonly lug: string;
  /** 1 where inwards is to the right. */
  readonly inward: number;
  readonly edge: number;
  readonly at: Point;
}

interface Way {
  /** Where it meets the lane. */
  readonly y: number;
  readonly points: readonly Point[];
}

/** Drawing units: width of a closed contact, and how far one goes in and down to pass another. */
const BRIDGE = 7;
const JOG = 10;
const BELOW = 16;
