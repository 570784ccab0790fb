/** Draws a harness as far as it is made. */
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
import type { PlacedPart } from '../../place/placement.ts';
import { CLASS } from '../classes.ts';
import { drawFace, type Look, tagLook } from '../part.ts';
import { Pen } from '../pen.ts';
import { kept, LINE, type Theme } from '../theme.ts';
import { drawSolder, heightOf, strokeAttributes, strokes, wirePath } from '../wires.ts';
import { inkBeside, paperBeside } from './contour.ts';
import { drawEnd } from './ends.ts';
import { type Harness, roomsOf, slotsOf } from './harness.ts';
import { drawnEnds, type EndName, solderedEnds } from './joint-ends.ts';
import { roomOf } from './tags.ts';

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
      for (const end of drawnEnds(sheet.placement, i)) drawSolder(group, endAt(harness, i, end), theme);
  }
  // On top of what is new, so that two lines that meet at a lug are not taken for one that leads past it.
  for (const i of order) if (made[i] === 'before') drawEndsBefore(pen, again, harness, i, window);
}

/** The ends of a joint that was made before. */
function drawEndsBefore(pen: Pen, id: string, harness: Harness, joint: number, window: Rect): void {
  const { placement } = harness.sheet;
  const wire = nth(placement.wires, joint);
  const shown = new Set(harness.parts.map(({ part }) => part.name));
  const ends = solderedEnds(placement, joint).filter((end) => {
    if (!shown.has(wire.joint[end].part)) return false;
    const { x, y } = endAt(harness, joint, end);
    // A line that leaves the window ends there without being joined to anything.
    return inside(around(x, y, 1, 1), window);
  });
  if (ends.length === 0) return;
  const group = pen.group({ id: `${id}-made-${joint + 1}` });
  for (const end of ends)
    drawEnd(group, harness, { joint, end, look: harness.before?.(joint, end) ?? 'soldered', id });
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
  const names = slotsOf(harness, placed).filter((name) => inside(roomOf(name), window));
  const [first] = names;
  // What stands apart has words of its own.
  const upon = names.filter(({ centre }) => centre.x === first?.centre.x);
  // A name that outgrows a low body gets a plate that has grown with it; a ground point is as large as its name already.
  if (first && !is(part, 'component') && !is(part, 'ground-point')) {
    const room = rectAbout(upon.map(roomOf));
    const plate = around(first.centre.x, centreOf(room).y, room.width + type / 2, room.height + type / 3);
    if (plate.height > rectToSheet(frame, outline.body).height)
      still.rect(plate, { rx: 8, fill: theme.plate, stroke: theme.outline, 'stroke-width': kept(theme, 1) });
  }
  for (const leader of names.length > 0 ? (harness.told.get(part.name)?.leaders ?? []) : [])
    still.line(leader, { stroke: theme.quiet, 'stroke-width': kept(theme, 1) });
  for (const { text, centre, size, weight } of names)
    still.text(text, centre, {
      size,
      weight,
      fill: full && weight === 'bold' ? theme.ink : harness.theme.quiet,
    });
  for (const { lug, surface } of outline.lugs) {
    const tag = surface ? undefined : tags.get(lugId(part.name, lug));
    if (!tag) continue;
    const free = !used.has(tag.id);
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

/** Where a joint's line ends. */
function endAt({ paths }: Harness, joint: number, end: EndName): Point {
  const path = nth(paths, joint);
  return nth(path, end === 'from' ? 0 : path.length - 1);
}
