/**
 * The harness as far as it is made: joints made before thin and grey, new ones with an outline about them, parts that are
 * not concerned pale. New and old differ by form, so that they do on a black and white copy too.
 */
import { lugId, lugIdOf } from '../../circuit/circuit.ts';
import {
  around,
  centreOf,
  inside,
  overlaps,
  type Point,
  type Rect,
  rectAbout,
} from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { is } from '../../parts/index.ts';
import { rectToSheet } from '../../place/frame.ts';
import { OPENING, openingsOf } from '../../place/openings.ts';
import type { PlacedPart, PlacedWire } from '../../place/placement.ts';
import { CLASS } from '../classes.ts';
import { drawFace, type Look, tagLook } from '../part.ts';
import { Pen } from '../pen.ts';
import type { Sheet } from '../sheet.ts';
import { kept, LINE, type Theme } from '../theme.ts';
import { drawSolder, heightOf, leavesBody, strokeAttributes, strokes, wirePath } from '../wires.ts';
import { inkBeside, paperBeside } from './contour.ts';
import { namesOf, outside, roomOf, type Tag, tagsOf } from './tags.ts';

/** Of a joint: not there yet, made before, made now, or as it is where none is told from another. */
export type Made = 'absent' | 'before' | 'new' | 'plain';

interface Scene {
  readonly sheet: Sheet;
  readonly theme: Theme;
  /** By joint, as the circuit has them. */
  readonly made: readonly Made[];
  /** Names of the parts that are drawn in full. */
  readonly concerned: ReadonlySet<string>;
  /** Size of names, drawing units. */
  readonly type: number;
  /** With what parts are below their names. */
  readonly values?: boolean;
  /** Whether an end of a joint that was made before is only hooked in as yet; none where left out. */
  readonly hooked?: (joint: number, end: EndName) => boolean;
}

/** Where everything of a scene comes to lie. */
export interface Harness extends Scene {
  readonly parts: readonly PlacedPart[];
  /** By `part.lug`. */
  readonly tags: ReadonlyMap<string, Tag>;
  /** By joint: its points from edge to edge of the tags. */
  readonly paths: readonly (readonly Point[])[];
  /** What words and tags take. */
  readonly words: readonly Rect[];
}

/** What a part's name and its tags take. */
export const wordsOf = (
  { tags, type, values }: Pick<Harness, 'tags' | 'type' | 'values'>,
  placed: PlacedPart,
): readonly Rect[] => [
  ...namesOf(placed, type, values).map(roomOf),
  ...placed.outline.lugs.flatMap(({ lug }) => tags.get(lugId(placed.part.name, lug))?.rect ?? []),
];

/** Either end of a joint. */
export type EndName = 'from' | 'to';
export const endNames = ['from', 'to'] as const;

export function harnessOf(scene: Scene): Harness {
  const { sheet, made, concerned, type } = scene;
  const { wires } = sheet.placement;
  const soldered = new Set(
    wires.flatMap(({ joint }, i) => (made[i] === 'absent' ? [] : [joint.from.part, joint.to.part])),
  );
  // A component is not there before its first leg is soldered.
  const parts = sheet.placement.parts.filter(({ part }) => !is(part, 'component') || soldered.has(part.name));
  const tags = new Map(
    parts
      .flatMap((placed) => tagsOf(placed, type, concerned.has(placed.part.name), sheet.language))
      .map((tag) => [tag.id, tag] as const),
  );
  const harness = { ...scene, parts, tags };
  return {
    ...harness,
    paths: wires.map((wire, i) => {
      const { from, to } = wire.joint;
      const points = outside(wire.points, tags.get(lugIdOf(from))?.rect, tags.get(lugIdOf(to))?.rect);
      if (made[i] === 'plain') return points;
      return [
        ...bodyEnd(parts, wire, from, points[0]),
        ...points,
        ...bodyEnd(parts, wire, to, points.at(-1)),
      ];
    }),
    words: parts.flatMap((placed) => wordsOf(harness, placed)),
  };
}

/** Where a component leg leaves its body: its line is drawn from there, so that all of the leg stands out. */
function bodyEnd(
  parts: readonly PlacedPart[],
  { joint, own }: PlacedWire,
  end: PlacedWire['joint']['from'],
  tip: Point | undefined,
): readonly Point[] {
  const placed = parts.find(({ part }) => part.name === end.part);
  if (joint.kind !== 'leg' || !own.includes(end.part) || !placed || !tip) return [];
  const { x, y, width, height } = rectToSheet(placed.frame, placed.outline.body);
  const edge = {
    x: Math.min(Math.max(tip.x, x), x + width),
    y: Math.min(Math.max(tip.y, y), y + height),
  };
  // A leg begins in line with its body.
  return edge.x === tip.x || edge.y === tip.y ? [edge] : [];
}

/** What a harness takes up, all parts and joints of the kit counted, whether they are there yet or not. */
export function extentOf(harness: Harness): readonly Rect[] {
  const { sheet, words, paths } = harness;
  const bodies = sheet.placement.parts.flatMap(roomsOf);
  const lines = paths.flat().map(({ x, y }): Rect => ({ x: x - 8, y: y - 8, width: 16, height: 16 }));
  return [...bodies, ...words, ...lines];
}

/** What a part's body and its tags take up on the sheet. */
export const roomsOf = ({ frame, outline }: PlacedPart): readonly Rect[] =>
  [outline.body, ...outline.lugs.map(({ tag }) => tag)].map((rect) => rectToSheet(frame, rect));

/** A joint's ends that are soldered: all but where a component leg leaves its body. */
const solderedEnds = (wires: readonly PlacedWire[], wire: PlacedWire): readonly EndName[] =>
  endNames.filter((end) => !leavesBody(wires, wire, wire.joint[end]));

/** Ink of what was made before, and of parts that are not concerned: dark enough to be left by a copier in black and white. */
const GREY = { line: '#6f7a83', outline: '#8a959e', inside: '#e3e8eb', plate: '#fbfbf9' } as const;
const BEFORE = { light: 2.4, print: LINE.hairline } as const;

const paled = (theme: Theme): Theme =>
  theme.monochrome
    ? theme
    : {
        ...theme,
        ink: GREY.line,
        outline: GREY.outline,
        plate: GREY.plate,
        inside: GREY.inside,
        coil: GREY.inside,
        lug: theme.paper,
        lugInk: theme.quiet,
        solder: theme.paper,
        leg: GREY.line,
        resistor: theme.paper,
        capacitor: theme.paper,
        capacitorInk: theme.quiet,
        bands: {},
        tints: {},
      };

/** Radius of an end that is not soldered yet. */
const HOOKED = 3.6;

/** How much an opening leaves free on either side of what passes over it: the outline of a new joint and some air. */
const HALF_OPEN = 10;

/**
 * Draws parts, then joints: those made before below, then the outlines of the new ones, then the new ones.
 *
 * @param window what is seen of it: parts beyond it are left out, and names that would be cut off
 * @param again begins the ids of joints where they may have been drawn before
 */
export function drawHarness(pen: Pen, id: string, harness: Harness, window: Rect, again = id): void {
  const { sheet, theme, made } = harness;
  const { wires } = sheet.placement;
  for (const placed of harness.parts)
    if (roomsOf(placed).some((rect) => overlaps(rect, window))) drawPart(pen, id, placed, harness, window);
  const there = new Set(wires.flatMap((_, i) => (made[i] === 'absent' ? [] : [i])));
  const height = (i: number): number => heightOf(sheet.lines, i) + (made[i] === 'new' ? 4e6 : 0);
  const drawn = wires.map((wire, i) => ({ ...wire, points: nth(harness.paths, i) }));
  const { of: gaps } = openingsOf(drawn, height, there);
  const order = [...there].sort((a, b) => height(a) - height(b));
  const half = made.includes('plain') ? OPENING.half : HALF_OPEN;
  const pathOf = (i: number): string => wirePath(nth(harness.paths, i), nth(gaps, i), half);
  const groupOf = (i: number): Pen =>
    pen.group({ id: `${again}-joint-${i + 1}`, fill: 'none', 'stroke-linejoin': 'round' });
  const lineOf = (i: number) => strokes(nth(sheet.lines, i), theme);
  const before = theme.monochrome
    ? { stroke: theme.ink, width: BEFORE.print }
    : { stroke: GREY.line, width: BEFORE.light };
  for (const i of order)
    if (made[i] === 'before') {
      const group = groupOf(i);
      group.stroke(pathOf(i), strokeAttributes(before));
      for (const end of solderedEnds(wires, nth(wires, i))) {
        const open = harness.hooked?.(i, end) ?? false;
        const at = endAt(harness, i, end);
        // A line that leaves the window ends there without being joined to anything.
        if (!inside(around(at.x, at.y, 1, 1), window)) continue;
        group.circle(at, open ? HOOKED : 2.6, {
          fill: open ? theme.paper : before.stroke,
          ...(open ? { stroke: theme.quiet, 'stroke-width': LINE.hairline } : {}),
        });
      }
    }
  const fresh = order.filter((i) => made[i] === 'new');
  const marks = fresh.length === 0 ? pen : pen.group({ id: `${id}-marks`, fill: 'none' });
  // All edges first, so that none lies across another's inside.
  for (const [beside, stroke] of [
    [inkBeside, theme.ink],
    [paperBeside, theme.paper],
  ] as const)
    for (const i of fresh) {
      const line = Math.max(...lineOf(i).map(({ width }) => width));
      const width = line + 2 * beside(nth(sheet.lines, i));
      marks.stroke(pathOf(i), {
        class: CLASS.mark,
        'stroke-linejoin': 'round',
        ...strokeAttributes({ stroke, width }),
      });
    }
  for (const i of order.filter((one) => made[one] === 'new' || made[one] === 'plain')) {
    const group = groupOf(i);
    for (const one of lineOf(i)) group.stroke(pathOf(i), strokeAttributes(one));
    if (made[i] === 'plain')
      for (const end of solderedEnds(wires, nth(wires, i))) drawSolder(group, endAt(harness, i, end), theme);
  }
}

/** Where a joint's line ends. */
function endAt({ paths }: Harness, joint: number, end: EndName): Point {
  const path = nth(paths, joint);
  return nth(path, end === 'from' ? 0 : path.length - 1);
}

function drawPart(pen: Pen, id: string, placed: PlacedPart, harness: Harness, window: Rect): void {
  const { sheet, tags, type, concerned } = harness;
  const { part, frame, outline } = placed;
  const full = concerned.has(part.name);
  const theme = full ? harness.theme : paled(harness.theme);
  const used = new Set(
    sheet.placement.wires.flatMap(({ joint: { from, to } }) => [lugIdOf(from), lugIdOf(to)]),
  );
  const look: Look = {
    theme,
    language: sheet.language,
    closed: sheet.closed,
    turned: sheet.turned,
    joined: new Set(),
    meeting: new Set(),
    highlighted: new Set(),
    tints: full ? sheet.tints : new Map(),
    least: type,
  };
  const group = new Pen(pen.into.group({ id: `${id}-part-${part.name}` }), frame);
  drawFace(group, placed, look);
  const still = group.still();
  const names = namesOf(placed, type, harness.values).filter((name) => inside(roomOf(name), window));
  const [first] = names;
  // A name that outgrows a low body gets a plate that has grown with it.
  if (first && !is(part, 'component')) {
    const room = rectAbout(names.map(roomOf));
    const plate = around(first.centre.x, centreOf(room).y, room.width + type / 2, room.height + type / 3);
    if (plate.height > rectToSheet(frame, outline.body).height)
      still.rect(plate, { rx: 8, fill: theme.plate, stroke: theme.outline, 'stroke-width': kept(theme, 1) });
  }
  for (const { text, centre, size, weight } of names)
    still.text(text, centre, {
      size,
      weight,
      fill: full && weight === 'bold' ? theme.ink : harness.theme.quiet,
    });
  for (const { lug, surface } of outline.lugs) {
    const tag = surface ? undefined : tags.get(lugId(part.name, lug));
    if (!tag) continue;
    // Only where all joints are told alike is an unused lug one that stays free.
    const free = harness.made.includes('plain') && !used.has(tag.id);
    const solid = { ...tagLook(theme, true), fill: full && !free ? theme.lug : theme.paper };
    still.rect(tag.rect, {
      class: CLASS.tag,
      ...(free ? tagLook(theme, false) : solid),
      'stroke-width': kept(theme, full ? 1.4 : 1),
    });
    if (tag.size !== undefined)
      still.text(
        tag.lug,
        { x: tag.rect.x + tag.rect.width / 2, y: tag.rect.y + tag.rect.height / 2 },
        { size: tag.size, weight: 'bold', fill: theme.lugInk, lift: /[gjpqy]/.test(tag.lug) ? 1 : 0 },
      );
  }
}
