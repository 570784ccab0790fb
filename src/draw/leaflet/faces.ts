/** What of a part's face the figures of a leaflet keep clear of words and numbers: its pieces, and the contacts and symbols that are drawn on it. */
import { around, at, inside, overlaps, type Point, type Rect, rectAbout } from '../../common/geometry.ts';
import { remembered } from '../../common/remembered.ts';
import { faceOf, is } from '../../parts/index.ts';
import type { PathStep, Shape } from '../../parts/shape.ts';
import { rectFromSheet, rectToSheet } from '../../place/frame.ts';
import type { PlacedPart } from '../../place/placement.ts';
import type { Sheet } from '../sheet.ts';

/** The pieces of a part that stand apart on the drawing, each with its own body and its own words: mostly one, but two of a pot with a switch behind it. */
export const piecesOf = remembered((placed: PlacedPart): readonly PlacedPart[] => {
  const { outline } = placed;
  const words = outline.labels.filter(({ centre }) => !holds(outline.body, centre));
  const behind = outline.blocked.find(
    (rect) => !overlaps(rect, outline.body) && words.some(({ centre }) => holds(rect, centre)),
  );
  if (!behind || is(placed.part, 'component')) return [placed];
  const there = words.filter(({ centre }) => holds(behind, centre));
  return [
    { ...placed, outline: { ...outline, labels: outline.labels.filter((label) => !there.includes(label)) } },
    { ...placed, outline: { ...outline, body: behind, labels: there } },
  ];
});

const holds = (rect: Rect, { x, y }: Point): boolean => inside({ x, y, width: 0, height: 0 }, rect);

/** What a part's pieces take up on the sheet, without its tags. */
export const bodiesOf = (placed: PlacedPart): readonly Rect[] =>
  piecesOf(placed).map(({ frame, outline }) => rectToSheet(frame, outline.body));

/** Around a name in a box that has grown with it, by the size of type: across, and down. */
const ROUND = { across: 0.25, down: 0.17 } as const;

/** A ground point whose box has grown with its words, but not beyond its lug. */
export function grownAbout(placed: PlacedPart, words: readonly Rect[], type: number): PlacedPart {
  const { part, frame, outline } = placed;
  if (!is(part, 'ground-point') || words.length === 0) return placed;
  const { x, y, width, height } = rectAbout(words);
  const [across, down] = [ROUND.across * type, ROUND.down * type];
  const wanted = rectFromSheet(frame, {
    x: x - across,
    y: y - down,
    width: width + 2 * across,
    height: height + 2 * down,
  });
  const { body } = outline;
  const grown = rectAbout([body, { ...wanted, x: Math.max(body.x, wanted.x) }]);
  return { ...placed, outline: { ...outline, body: grown } };
}

/** By the name of a part what is drawn on its face and must be seen: coils, contacts and those that are closed, wipers, and the symbol of a ground point or of a jack. */
export const inkOf = remembered(
  (sheet: Sheet): ReadonlyMap<string, readonly Rect[]> =>
    new Map(sheet.placement.parts.map((placed) => [placed.part.name, inkOn(placed, sheet)])),
);

function inkOn({ part, frame, outline }: PlacedPart, { language, closed, turned }: Sheet): readonly Rect[] {
  if (is(part, 'component')) return [];
  const own = closed.get(part.name);
  const shapes = faceOf(part, { outline, language, closed: own ?? [], turned: turned.get(part.name) ?? {} });
  return shapes.flatMap(inkIn).map((rect) => rectToSheet(frame, rect));
}

/** What of a shape must be seen. */
function inkIn(shape: Shape): readonly Rect[] {
  if (shape.shape === 'circle' && shape.role !== 'case') {
    const { x, y } = shape.centre;
    return [around(x, y, 2 * shape.radius, 2 * shape.radius)];
  }
  if (shape.shape === 'path' && (shape.role === 'bridge' || shape.role === 'conductor'))
    return shape.runs.flatMap((run) => straight(run, shape.width));
  return shape.shape === 'rect' && (shape.role === 'bush' || shape.role === 'coil') ? [shape.rect] : [];
}

/** Longest piece of a line that leads aslant, which is cut into several, drawing units. */
const PIECE = 6;

/** Rectangles about the straight pieces of a run. */
function straight(run: readonly PathStep[], width: number): readonly Rect[] {
  return run.slice(1).flatMap(({ to, radius }, i): readonly Rect[] => {
    const from = run[i]?.to;
    if (!from || radius !== undefined) return [];
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const count = dx === 0 || dy === 0 ? 1 : Math.ceil(Math.hypot(dx, dy) / PIECE);
    return Array.from({ length: count }, (_, k) => {
      const [a, b] = [k / count, (k + 1) / count].map((t) => at(from.x + dx * t, from.y + dy * t));
      return {
        x: Math.min(a?.x ?? 0, b?.x ?? 0) - width / 2,
        y: Math.min(a?.y ?? 0, b?.y ?? 0) - width / 2,
        width: Math.abs(dx) / count + width,
        height: Math.abs(dy) / count + width,
      };
    });
  });
}
