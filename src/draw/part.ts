/** A part on paper: its face, its labels, and the tags to solder to; for a component its legs. */

import { lugId } from '../circuit/circuit.ts';
import { at, type Point } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import type { Language } from '../messages/language.ts';
import { lugWords } from '../messages/words.ts';
import { componentOf, contactsOf, faceOf, is, type Part } from '../parts/index.ts';
import { TYPE } from '../parts/outline.ts';
import { labelsToSheet } from '../place/frame.ts';
import type { PlacedPart } from '../place/placement.ts';
import { CLASS } from './classes.ts';
import { highlightBox } from './highlight.ts';
import type { Hooks, Setting, Variant } from './hooks.ts';
import { paintShape } from './paint.ts';
import type { Pen } from './pen.ts';
import { drawVersions } from './runs.ts';
import { kept, type Theme } from './theme.ts';
import { legWidth, strokeAttributes, strokes } from './wires.ts';

/** What drawing a part depends on besides the part. */
export interface Look {
  readonly theme: Theme;
  /** Of the words on parts. */
  readonly language: Language;
  /** Lugs joined by the contacts drawn closed, by part name. */
  readonly closed: ReadonlyMap<string, readonly (readonly string[])[]>;
  /** Rotation of tracks by part name and the track's id. */
  readonly turned?: ReadonlyMap<string, Readonly<Record<string, number>>>;
  /** `part.lug` of every lug that something is joined to. */
  readonly joined: ReadonlySet<string>;
  /** `part.lug` of every lug that several joints of the kit meet at. */
  readonly meeting: ReadonlySet<string>;
  /** Parts drawn with the accent: padding resistors. */
  readonly highlighted: ReadonlySet<string>;
  /** Least size of what is printed on a part, where smaller words are left out; drawing units. */
  readonly least?: number;
  /** Tint by pickup name: its coils have it, as the bars of its loads do. */
  readonly tints: ReadonlyMap<string, string>;
  /** Of an inline drawing. */
  readonly hooks?: Hooks;
}

export function drawPart(pen: Pen, placed: PlacedPart, look: Look): void {
  const component = is(placed.part, 'component');
  drawFace(pen, placed, look);
  labels(pen.still(), placed, look.theme, component ? look.theme.accent : look.theme.ink);
  marks(pen, placed, look);
  if (!component) tags(pen, placed, look);
}

/** What a part looks like without a word beside it: no label, no tag. */
export function drawFace(pen: Pen, placed: PlacedPart, look: Look): void {
  const { part, outline } = placed;
  const component = is(part, 'component');
  if (component) {
    highlight(pen, placed, look);
    legs(pen, placed, look);
  }
  const coil = look.theme.tints[look.tints.get(part.name) ?? ''];
  const theme = !look.theme.monochrome && coil !== undefined ? { ...look.theme, coil } : look.theme;
  // A component is the same either way round, but its bands are read from the left, or from the top.
  const face = component ? pen.reading() : pen;
  const shapesIn = ({ closed = [], turned }: Setting) =>
    faceOf(part, { outline, language: look.language, closed, turned })
      .filter((shape) => shape.shape !== 'text' || shape.size >= (look.least ?? 0))
      .map((shape) => ({
        key: JSON.stringify(shape),
        draw: (into: Pen) => paintShape(into, shape, theme),
      }));
  drawVersions(
    face,
    settingsOf(part, look).map(({ setting, states }) => ({ things: shapesIn(setting), states })),
  );
}

/** The settings that a part is drawn in: the one that is shown, or in an inline drawing all of them, that one first. */
const settingsOf = ({ name }: Part, { hooks, closed, turned }: Look): readonly Variant[] => {
  const own = closed.get(name);
  return (
    hooks?.variants.get(name) ?? [
      { setting: { ...(own ? { closed: own } : {}), turned: turned?.get(name) ?? {} }, states: [] },
    ]
  );
};

/** The tags to solder to, with their names. Names longer than the tag has room for are not made: outlines size them. */
function tags(pen: Pen, { part, outline }: PlacedPart, { theme, language, joined, hooks }: Look): void {
  for (const { lug, tag, surface } of outline.lugs) {
    if (surface) continue;
    const words = lugWords(language, lug);
    const id = lugId(part.name, lug);
    const used = joined.has(id);
    pen.rect(tag, { class: CLASS.tag, ...hooks?.lugs.get(id), ...tagLook(theme, used) });
    pen.text(
      words,
      { x: tag.x + tag.width / 2, y: tag.y + tag.height / 2 },
      {
        size: TYPE.lug,
        fill: used ? theme.lugInk : theme.quiet,
        weight: 'bold',
        // A tail would touch a wire's solder joint at the tag's lower edge.
        lift: /[gjpqy]/.test(words) ? 1 : 0,
      },
    );
  }
}

/** A lug's tag; one that nothing is joined to is hollow, so that it is not taken for forgotten. */
export const tagLook = (theme: Theme, used: boolean) => ({
  rx: 5,
  fill: used ? theme.lug : theme.paper,
  stroke: theme.outline,
  'stroke-width': kept(theme, 1),
  ...(used ? {} : { 'stroke-dasharray': '3 2' }),
});

/** The part's own lines of text: its name, its value, and in bold what the annotation says of it. */
function labels(pen: Pen, { outline, frame }: PlacedPart, theme: Theme, annotation: string): void {
  const lines = labelsToSheet(frame, outline);
  lines.forEach(({ text, centre, size, weight }, i) => {
    // A long name takes two bold lines; the annotation is the last of all.
    const isLast = i > 0 && i === lines.length - 1;
    const fill = weight !== 'bold' ? theme.quiet : isLast ? annotation : theme.ink;
    pen.text(text, centre, { size, weight, fill });
  });
}

/** Where a switch's positions are, the one that is drawn in bold. */
function marks(pen: Pen, { part, outline }: PlacedPart, look: Look): void {
  const { theme } = look;
  const settings = settingsOf(part, look);
  for (const { text, centre, positions } of outline.marks ?? [])
    drawVersions(
      pen,
      settings.map(({ setting, states }) => {
        const shown = contactsOf(part).find(({ joins }) => joins === setting.closed)?.position;
        const now = positions.some((position) => position === shown);
        const ink = now ? { fill: theme.ink, weight: 'bold' as const } : { fill: theme.quiet };
        return {
          things: [{ key: `${now}`, draw: (into) => into.text(text, centre, { size: TYPE.lug, ...ink }) }],
          states,
        };
      }),
    );
}

/** How much of a sleeved leg stays bare beside the body. */
const BARE = 5;

/** The sleeving over a leg, from near the body to where its wire goes on with it, and the leg seen through it. */
function sleeving(pen: Pen, { outline }: PlacedPart, end: Point, theme: Theme): void {
  const { body } = outline;
  const from = end.x < body.x ? body.x - BARE : body.x + body.width + BARE;
  for (const one of strokes({ look: 'sleeved', tint: 'other' }, theme))
    pen.line([at(from, end.y), end], strokeAttributes(one));
}

/** The stretch of each leg between the body and the point where wires meet it; where several meet, the whole leg. */
function legs(pen: Pen, placed: PlacedPart, { theme, meeting, hooks }: Look): void {
  const { part, outline } = placed;
  const y = outline.body.y + outline.body.height / 2;
  const ends = outline.lugs.map(({ lug, tag, ports }) => {
    const corner = meeting.has(lugId(part.name, lug)) ? ports[0]?.via : undefined;
    return at(corner?.x ?? tag.x + tag.width / 2, y);
  });
  pen.path([ends.map((to) => ({ to }))], {
    stroke: theme.leg,
    'stroke-width': legWidth(theme),
  });
  const sleeved = componentOf(part)?.sleeved ?? [];
  outline.lugs.forEach(({ lug }, i) => {
    if (sleeved.includes(lug)) sleeving(pen, placed, nth(ends, i), theme);
  });
  // The leg goes on as a line of its own: nothing is soldered here, and nothing must look so.
  outline.lugs.forEach(({ lug }, i) => {
    pen.circle(nth(ends, i), legWidth(theme) / 2, {
      class: CLASS.legEnd,
      ...hooks?.lugs.get(lugId(part.name, lug)),
      fill: theme.leg,
    });
  });
}

/** A pale box behind a padding resistor: it is what the kit is about. */
function highlight(pen: Pen, { part, outline }: PlacedPart, { theme, highlighted }: Look): void {
  if (!highlighted.has(part.name)) return;
  pen.rect(highlightBox(outline), {
    class: CLASS.highlight,
    rx: 10,
    fill: theme.accentFill,
    stroke: theme.accent,
    'stroke-width': kept(theme, 1),
  });
}
