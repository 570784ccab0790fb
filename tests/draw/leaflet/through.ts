/** Wires that run through what they do not end at, asked of a picture alone: a lug's tag, or the solder of another joint. */
import { type Box, inBox, type Point, read } from '../../truth/reader.ts';

type Segment = readonly [Point, Point];

/** Of a point from a level or upright line. */
const farFrom = (p: Point, [a, b]: Segment): number =>
  Math.hypot(
    Math.max(0, Math.min(a.x, b.x) - p.x, p.x - Math.max(a.x, b.x)),
    Math.max(0, Math.min(a.y, b.y) - p.y, p.y - Math.max(a.y, b.y)),
  );

/** Whether a line comes so near to a box. */
const comesTo = ([a, b]: Segment, { x, y, w, h }: Box, reach: number): boolean =>
  Math.min(a.x, b.x) < x + w + reach &&
  Math.max(a.x, b.x) > x - reach &&
  Math.min(a.y, b.y) < y + h + reach &&
  Math.max(a.y, b.y) > y - reach;

/** Of a stroke that only touches the edge it ends at. */
const TOUCH = 0.6;

/** What wires of a figure run through: tags that they do not end at, their own tags, and the solder of other joints. An opening is counted as a piece of its wire. */
export function throughIn(svg: string): readonly string[] {
  const { rects, circles, wires, texts } = read(svg);
  const tags = rects
    .filter(({ group, corner, h }) => /-part-/.test(group) && corner === 5 && h < 60)
    .map((box) => {
      const words = texts.find(({ middle, y }) => inBox(box, { x: middle, y: y - 4 }))?.words ?? '';
      return { box, name: `${box.group.replace(/.*-part-/, '')} ${words}` };
    });
  const dots = circles.flatMap(({ group, x, y, r, width, stroke }) => {
    const joint = /-(?:end|made)-(\d+)(?:-from|-to)?$/.exec(group)?.[1];
    return joint === undefined || r > 7
      ? []
      : [{ joint: Number(joint), x, y, r: r + (stroke === 'none' ? 0 : width / 2) }];
  });
  const errors: string[] = [];
  for (const { joint, pieces, strokes } of wires) {
    const points = pieces.flat();
    const segments = points.slice(1).map((b, i): Segment => [points[i] ?? b, b]);
    const half = Math.max(...strokes.map(({ width }) => width)) / 2;
    const ends = [points[0], points.at(-1)];
    for (const { box, name } of tags) {
      const own = ends.some((end) => end && inBox(box, end, TOUCH));
      if (segments.some((one) => comesTo(one, box, own ? -TOUCH : half)))
        errors.push(`the wire ${joint} through ${own ? 'its own' : 'the'} lug ${name}`);
    }
    for (const dot of dots)
      if (dot.joint !== joint && segments.some((one) => farFrom(dot, one) < dot.r + half))
        errors.push(`the wire ${joint} through solder of ${dot.joint}`);
  }
  return [...new Set(errors)];
}
