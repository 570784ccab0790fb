/** The whole sheet: title, view line and key above, the drawing, the load cards below. */

import { type Card, isTable } from '../annotate/cards.ts';
import type { Line } from '../annotate/lines.ts';
import { lugId } from '../circuit/circuit.ts';
import { at, type Point, round2 } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import type { Language } from '../messages/language.ts';
import { apartIn } from '../messages/words.ts';
import { componentOf, elementsLike } from '../parts/index.ts';
import { TYPE } from '../parts/outline.ts';
import { labelsToSheet } from '../place/frame.ts';
import type { Placement } from '../place/placement.ts';
import { endsOf } from '../place/wiring.ts';
import type { Contents } from './blocks.ts';
import type { Attributes, Canvas } from './canvas.ts';
import { drawCard } from './cards.ts';
import { besideDrawing, drawChips } from './chips.ts';
import { openSheet, type Page } from './head.ts';
import { type Hooks, numbered } from './hooks.ts';
import { inkAcross } from './ink-across.ts';
import { drawKey, type KeyEntry, keyOf } from './key.ts';
import { writeLines } from './lines.ts';
import { type Revision, revisionWords } from './mark.ts';
import { drawPart } from './part.ts';
import { Pen } from './pen.ts';
import type { Piece } from './pieces.ts';
import { compose } from './sheets.ts';
import { drawTableHead, drawTableRow, tableOf } from './table.ts';
import { type Theme, themes } from './theme.ts';
import { drawMarks, drawWires, type Emphasis } from './wires.ts';
import { drawWork } from './work.ts';

/** All that is drawn, worked out beforehand. */
export interface Sheet {
  /** That it is worded in. */
  readonly language: Language;
  /** Prefix of every id: the kit's own. */
  readonly id: string;
  readonly title: string;
  /** In words the switch position that is drawn, where the drawing is of one; for those who cannot see it. */
  readonly setting?: string;
  /** Say the side it is seen from, and what is drawn. */
  readonly headLines: readonly string[];
  /** For those who cannot see the picture. */
  readonly description: string;
  readonly placement: Placement;
  readonly lines: readonly Line[];
  readonly cards: readonly Card[];
  /** What the drawing calls the switches whose positions the cards tell, in order. */
  readonly switches: readonly string[];
  /** What the cards say, below them. */
  readonly legend: readonly string[];
  /** Tint by pickup name. */
  readonly tints: ReadonlyMap<string, string>;
  /** Label by tint, for the key. */
  readonly pickups: ReadonlyMap<string, string>;
  readonly highlighted: ReadonlySet<string>;
  /** Contacts drawn closed, by switch. */
  readonly closed: ReadonlyMap<string, readonly (readonly string[])[]>;
  /** Rotation of tracks by part name and the track's id. */
  readonly turned: ReadonlyMap<string, Readonly<Record<string, number>>>;
  /** How each joint stands out, where not all are alike. */
  readonly emphasis?: readonly Emphasis[];
  /** The card of the state that is drawn, where the drawing is of one. */
  readonly shownState?: number;
  /** What is to be done, in place of the cards, where the drawing is of a step. */
  readonly checklist?: readonly string[];
  /** What a checklist without a key begins with. */
  readonly workLines?: readonly string[];
  /** These pieces alone; all of them where it is left out. */
  readonly only?: readonly Piece[];
  readonly page?: Page;
  /** Of a column of a web page, CSS pixels. */
  readonly width?: number;
  /** Written small in the lower right corner. */
  readonly revision?: Revision;
  /** Which of the sheets that a page takes, counted from 1. */
  readonly number?: number;
  /** Of an inline drawing. */
  readonly hooks?: Hooks;
}

/** How much of its own margin a drawing leaves away on a page, which has one. */
const TRIM = { x: 8, y: 10 } as const;
const UNTRIMMED = { x: 0, y: 0 } as const;
const trimOf = ({ page }: Sheet) => (page ? TRIM : UNTRIMMED);

/** What of a sheet's data is to be shown, measured. */
export function contentsOf(sheet: Sheet, theme: Theme): Contents {
  const { language, placement, only, checklist, title, headLines, cards, legend } = sheet;
  const shows = (piece: Piece): boolean => only === undefined || only.includes(piece);
  const trim = trimOf(sheet);
  const labels = placement.parts.flatMap(({ frame, outline }) => labelsToSheet(frame, outline));
  const drawing = {
    width: placement.width - 2 * trim.x,
    height: placement.height - 2 * trim.y,
    type: Math.min(TYPE.lug, ...labels.map(({ size }) => size)),
    // Only a column has no margin to spare. A step keeps it: what is not soldered yet is not drawn, and the drawing must not move.
    ...(sheet.width === undefined || sheet.emphasis?.includes('absent')
      ? {}
      : { ink: inkAcross(placement, sheet.highlighted, besideDrawing(sheet)) }),
  };
  return {
    language,
    ...(only === undefined ? { title } : {}),
    views: shows('key') ? headLines : shows('checklist') ? (sheet.workLines ?? []) : [],
    key: shows('key') ? keyFor(sheet, theme) : [],
    ...(shows('drawing') ? { drawing } : {}),
    cards: checklist || !shows('cards') ? [] : cards,
    ...(isTable(cards) ? { table: tableOf(cards, sheet.switches, language) } : {}),
    legend,
    work: shows('checklist') ? (checklist ?? []) : [],
  };
}

function keyFor(
  { language, placement, lines, emphasis = [], pickups }: Sheet,
  theme: Theme,
): readonly KeyEntry[] {
  const there = placement.wires.filter((_, i) => emphasis[i] !== 'absent');
  const joined = new Set(endsOf(placement.wires.map(({ joint }) => joint)).keys());
  const lugs = placement.parts.flatMap(({ part, outline }) =>
    outline.lugs.map(({ lug, surface }) => ({ surface, used: joined.has(lugId(part.name, lug)) })),
  );
  return keyOf(
    lines.filter((_, i) => emphasis[i] !== 'absent'),
    pickups,
    there.flatMap(({ joint }) => joint.colour ?? []),
    lugs.some(({ surface, used }) => !surface && !used),
    lugs.some(({ surface, used }) => surface && used),
    placement.parts.flatMap(({ part }) => {
      const { value, bands } = componentOf(part) ?? {};
      return value !== undefined && bands ? [{ value, bands }] : [];
    }),
    theme,
    language,
    placement.parts.some(({ part }) =>
      elementsLike(part, 'track').some(({ taper: { value } }) =>
        ['lower-half', 'upper-half'].includes(value),
      ),
    ),
  );
}

/** Draws the sheet into an empty root and sizes it. */
export function drawSheet(root: Canvas, sheet: Sheet, theme: Theme = themes.light): void {
  const { id, language, title, setting } = sheet;
  const { contents, layout } = compose(contentsOf(sheet, theme), sheet);
  const pen = openSheet(
    root,
    { ...sheet, ...layout, title: setting === undefined ? title : apartIn(language, [title, setting]) },
    theme,
  );
  // What is not the drawing may have units of its own.
  const scaled = layout.scale === 1 ? {} : { transform: `scale(${layout.scale})` };
  const group = (name: string, more: Attributes = {}): Pen =>
    pen.group({ id: `${id}-${name}`, ...more, ...scaled });
  if (layout.head.length > 0) writeLines(group('head'), layout.head, theme);
  const { key, work, cards, caption } = layout;
  if (key.rows.length > 0) drawKey(group('key', { fill: 'none' }), key.rows, key.at.x, key.at.y, theme);
  if (contents.drawing) drawWiring(pen, sheet, layout.drawing, theme);
  if (work.lines.length > 0) drawWork(group('work'), work.lines, work.at.x, work.at.y, theme);
  if (caption.length > 0) writeLines(layout.scale === 1 ? pen : group('caption'), caption, theme);
  contents.cards.forEach((card, i) => {
    const shown = sheet.shownState !== undefined && card.states.includes(sheet.shownState);
    const states = sheet.hooks ? { 'data-card': numbered(card.states.map((state) => state + 1)) } : {};
    const [own, box] = [group(`position-${i + 1}`, states), nth(cards, i)];
    if (contents.table) drawTableRow(own, contents.table, card, box, sheet.tints, theme, shown);
    else drawCard(own, card, box, sheet.tints, theme, shown);
  });
  if (sheet.revision) {
    const { x, y, size } = layout.mark;
    root.set({ 'data-revision': sheet.revision.mark });
    const words = revisionWords(sheet.revision);
    pen.group({ id: `${id}-revision` }).text(words, at(x, y), { size, fill: theme.quiet, anchor: 'end' });
  }
  const { table } = contents;
  if (table)
    layout.heads.forEach((box, i) => {
      drawTableHead(group(`loads-${i + 1}`), table, box, theme);
    });
}

/** Parts and wires, the drawing's upper left corner where it is told. */
export function drawWiring(pen: Pen, sheet: Sheet, place: Point, theme: Theme): void {
  const { id, placement, lines, emphasis = [], hooks } = sheet;
  const trim = trimOf(sheet);
  const ends = endsOf(placement.wires.map(({ joint }) => joint));
  const drawing = pen.group({
    id: `${id}-drawing`,
    transform: `translate(${round2(place.x - trim.x)} ${round2(place.y - trim.y)})`,
    // Where wires are left out, what is drawn does not tell the size that it was measured with.
    ...(emphasis.includes('absent') ? { 'data-size': `${placement.width} ${placement.height}` } : {}),
  });
  if (emphasis.includes('new'))
    drawMarks(drawing.group({ id: `${id}-marks` }), placement.wires, theme, emphasis);
  const meeting = new Set([...ends].filter(([, count]) => count > 1).map(([lug]) => lug));
  const look = { ...sheet, theme, joined: new Set(ends.keys()), meeting };
  for (const placed of placement.parts) {
    const { name } = placed.part;
    const group = new Pen(
      drawing.into.group({ id: `${id}-part-${name}`, ...hooks?.parts.get(name) }),
      placed.frame,
    );
    drawPart(group, placed, look);
  }
  drawWires(drawing.group({ id: `${id}-wires` }), id, placement.wires, lines, theme, emphasis, hooks);
  drawChips(drawing.group({ id: `${id}-colours` }), placement, look, emphasis, besideDrawing(sheet));
}
