/** Joints between two lugs whose tags have grown until hardly any of the line is left between them: led round the outside of both. */
import { overlaps, type Point, type Rect } from '../../common/geometry.ts';
import { lengthOf, runsOf } from './beads.ts';

/** Of a line that is still seen: two dots of solder and some of the line between them, drawing units. */
const LEAST = 14;
/** How far round it leads, and from the edges that face each other to where it ends. */
const ROUND = [16, 24, 32] as const;
const INWARD = 7;
/** Of its line with its outline. */
const WIDE = 13;
/** What it costs to pass over another tag, another line, a part, and a unit of the way. */
const PRICE = { tag: 1000, line: 100, face: 60, unit: 1 } as const;

/** What a line that is led round stays clear of. */
interface Beside {
  readonly tags: readonly Rect[];
  readonly lines: readonly (readonly Point[])[];
  readonly faces: readonly Rect[];
}

/**
 * @param points of a joint from the edge of one tag to that of another
 * @param tags of its own lugs
 * @returns the same line where enough of it is seen
 */
export function ledRound(
  points: readonly Point[],
  [from, to]: readonly [Rect, Rect],
  { tags, lines, faces }: Beside,
): readonly Point[] {
  if (lengthOf(points) >= LEAST) return points;
  const taken = lines.flatMap((line) => runsOf(line, 1));
  let [best, least] = [points, Number.POSITIVE_INFINITY];
  for (const side of [1, -1])
    for (const far of ROUND) {
      const path = pathRound(from, to, side, far);
      const runs = runsOf(path, WIDE);
      const over = (rects: readonly Rect[]): number =>
        rects.filter((rect) => runs.some((run) => overlaps(run, rect))).length;
      const cost =
        PRICE.unit * far + PRICE.tag * over(tags) + PRICE.line * over(taken) + PRICE.face * over(faces);
      if (cost < least) [best, least] = [path, cost];
    }
  return best;
}

/** Out of one tag to a side, along both, and into the other. */
function pathRound(from: Rect, to: Rect, side: number, far: number): readonly Point[] {
  const upright =
    Math.abs(middle(from.y, from.height) - middle(to.y, to.height)) >=
    Math.abs(middle(from.x, from.width) - middle(to.x, to.width));
  const turned = ({ x, y, width, height }: Rect): Rect => ({ x: y, y: x, width: height, height: width });
  const [a, b] = upright ? [from, to] : [turned(from), turned(to)];
  const edge = ({ x, width }: Rect): number => (side > 0 ? x + width : x);
  const out = side > 0 ? Math.max(edge(a), edge(b)) + far : Math.min(edge(a), edge(b)) - far;
  const first = a.y < b.y;
  const [start, end] = [
    first ? a.y + a.height - INWARD : a.y + INWARD,
    first ? b.y + INWARD : b.y + b.height - INWARD,
  ];
  const path = [
    { x: edge(a), y: start },
    { x: out, y: start },
    { x: out, y: end },
    { x: edge(b), y: end },
  ];
  return upright ? path : path.map(({ x, y }) => ({ x: y, y: x }));
}

const middle = (from: number, length: number): number => from + length / 2;
