/** Texts keep off one another, off every line, and off every edge; what a text belongs to holds it whole. */
import { centreOf, overlaps } from '../../common/geometry.ts';
import { CLASS } from '../../draw/classes.ts';
import type { Drawing, DrawnPart } from '../drawing.ts';
import { type Finding, finding } from '../finding.ts';
import { SpatialIndex } from '../near.ts';
import type { AreaMark, LineMark, TextMark } from '../paint.ts';
import {
  areaContains,
  boxOfSegment,
  grown,
  grownArea,
  type Segment,
  strokeHitsRect,
  touchesArea,
} from '../space.ts';

/** A stretch of a line. */
interface Run {
  readonly line: LineMark;
  readonly stretch: Segment;
}

export function textFindings(drawing: Drawing): readonly Finding[] {
  const shapes = new SpatialIndex(
    drawing.shapes.filter(({ is }) => !is.includes(CLASS.paper)),
    ({ outer }) => outer,
  );
  // By stretches: a wire's whole box spans half the sheet.
  const lines = new SpatialIndex(
    drawing.lines.flatMap((line) => line.stretches.map((stretch): Run => ({ line, stretch }))),
    ({ line, stretch }) => grown(boxOfSegment(stretch), Math.max(line.half, line.cap)),
  );
  const texts = new SpatialIndex(drawing.texts, ({ box }) => box);
  return [
    ...drawing.texts.flatMap((text) => [
      ...onTexts(
        text,
        texts.query(text.box).filter((other) => other.order > text.order),
      ),
      ...onPaint(text, lines.query(text.box), shapes.query(text.box), drawing.id),
    ]),
    ...drawing.parts.flatMap(outside),
    ...outsideCards(drawing),
  ];
}

/** The topmost filled area under a text that holds the whole of it; what is painted below that does not show. */
export const groundOf = (text: TextMark, shapes: readonly AreaMark[]): AreaMark | undefined =>
  shapes.findLast(
    ({ order, fill, area }) =>
      order < text.order &&
      fill !== 'none' &&
      overlaps(area, text.box) &&
      text.ink.every((box) => areaContains(area, box)),
  );

function onPaint(
  text: TextMark,
  lines: readonly Run[],
  shapes: readonly AreaMark[],
  id: string,
): readonly Finding[] {
  const ground = groundOf(text, shapes)?.order ?? -1;
  return [
    ...onLines(text, lines, ground),
    ...shapes.flatMap((shape) => (shape.order >= ground ? onArea(text, shape, id) : [])),
  ];
}

const onTexts = (text: TextMark, others: readonly TextMark[]): readonly Finding[] =>
  others
    .filter(
      ({ box, ink }) => overlaps(text.box, box) && text.ink.some((a) => ink.some((b) => overlaps(a, b))),
    )
    .map((other) => finding('text-on-text', centreOf(text.box), { text: text.words, other: other.words }));

function onLines(text: TextMark, lines: readonly Run[], ground: number): readonly Finding[] {
  return lines
    .filter(
      ({ line: { order, half, cap }, stretch }) =>
        order > ground &&
        strokeHitsRect(stretch, half, cap, text.box) &&
        text.ink.some((ink) => strokeHitsRect(stretch, half, cap, ink)),
    )
    .slice(0, 1)
    .map(({ line }) =>
      finding('text-on-line', centreOf(text.box), { text: text.words, line: lineWords(line) }),
    );
}

/** An area the text does not stand in must not be touched, one that it stands in must be its own and hold it whole. */
function onArea(text: TextMark, shape: AreaMark, id: string): readonly Finding[] {
  if (!overlaps(shape.outer, text.box) || !text.ink.some((ink) => touchesArea(shape.outer, ink))) return [];
  const detail = { text: text.words, area: shapeWords(shape, id) };
  const where = centreOf(text.box);
  const inner = grownArea(shape.area, -shape.half);
  if (!text.ink.every((ink) => areaContains(inner, ink))) return [finding('text-on-edge', where, detail)];
  if (ownerOf(shape) !== ownerOf(text)) return [finding('text-misplaced', where, detail)];
  return shape.order > text.order && shape.fill !== 'none' ? [finding('text-covered', where, detail)] : [];
}

/** The innermost named group: a part, a wire, a card, the key. */
const ownerOf = ({ groups }: TextMark | AreaMark): string => groups[groups.length - 1] ?? '';

/** A part with plates or cases keeps its words on them, or on its tags. */
function outside({ name, bodies, lugs, texts }: DrawnPart): readonly Finding[] {
  const plates = bodies.filter(({ is }) => !is.includes(CLASS.body));
  if (plates.length === 0) return [];
  const areas = [...plates.map(({ area }) => area), ...lugs.map(({ area }) => area)];
  return texts
    .filter(({ ink }) => !areas.some((area) => ink.every((box) => areaContains(area, box))))
    .map(({ words, box }) =>
      finding('text-outside', centreOf(box), { text: words, area: `the part ${name}` }),
    );
}

function outsideCards({ shapes, texts }: Drawing): readonly Finding[] {
  return shapes
    .filter(({ is }) => is.includes(CLASS.card))
    .flatMap((card) =>
      texts
        .filter(
          (text) => ownerOf(text) === ownerOf(card) && !text.ink.every((ink) => areaContains(card.area, ink)),
        )
        .map(({ words, box }) => finding('text-outside', centreOf(box), { text: words, area: 'its card' })),
    );
}

const nameIn = (groups: readonly string[]): string | undefined => groups[groups.length - 1];

const lineWords = ({ groups }: LineMark): string => {
  const name = nameIn(groups);
  return name === undefined ? 'a line' : name.includes('-joint-') ? `a wire (${name})` : `a line of ${name}`;
};

function shapeWords({ is, groups }: AreaMark, id: string): string {
  const [sort] = is;
  const name = nameIn(groups);
  const what = sort === undefined ? 'a shape' : `a ${sort.replace(/^sl-/, '').replace('-', ' ')}`;
  return name === undefined ? what : `${what} of ${name.replace(`${id}-`, '')}`;
}
