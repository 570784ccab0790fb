/** A multimeter's probe: a needle whose tip touches a lug, a handle, and a flag. */
import { lugId } from '../../circuit/circuit.ts';
import { around, centreOf, overlaps, type Point, type Rect } from '../../common/geometry.ts';
import { must } from '../../common/must.ts';
import { textWidth } from '../../common/text.ts';
import { rectToSheet } from '../../place/frame.ts';
import type { Pen } from '../pen.ts';
import { LINE, type Theme } from '../theme.ts';
import { runsOf } from './beads.ts';
import type { Harness } from './harness.ts';

export interface Probe {
  readonly tip: Point;
  /** Unit vector from the tip to the hand. */
  readonly out: Point;
  readonly flag: Rect;
}

/** What is written on the flags. The first probe is the red one, in the meter's plus socket, by convention of multimeters (common practice, no source). */
const FLAGS = ['P1 +', 'P2 \u2212'] as const;

/** Sizes of a probe by the size of type: its needle, its handle from where that ends, and the flag's box. */
const SIZE = { needle: 1.3, handle: 1.9, thick: 0.8, tall: 1.5, air: 0.7 } as const;

/** What it costs to hide a word or another probe, the face of a part, a wire. */
const PRICE = { word: 1000, face: 60, line: 40 } as const;
const WAYS = 16;
/** How far from the middle of a case to its edge the tip stands. */
const ON_CASE = 0.82;

/** A place for a probe on each of these lugs, one after another: where it hides the least. */
export function probesOf(harness: Harness, lugs: readonly string[]): readonly Probe[] {
  const faces = harness.parts.map(({ frame, outline }) => rectToSheet(frame, outline.body));
  const lines = harness.paths.flatMap((path, i) => (harness.made[i] === 'absent' ? [] : runsOf(path, 4)));
  const placed: Rect[] = [];
  return lugs.map((lug) => {
    let best: Probe | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const probe of spotsOf(harness, lug)) {
      const room = probeRoom(probe, harness.type);
      const hides = (rects: readonly Rect[]): number =>
        rects.filter((rect) => room.some((one) => overlaps(one, rect))).length;
      const cost =
        PRICE.word * hides([...harness.words, ...placed]) +
        PRICE.face * hides(faces) +
        PRICE.line * hides(lines);
      if (cost < least) [best, least] = [probe, cost];
    }
    const probe = must(best, `a place to hold a probe to ${lug}`);
    placed.push(...probeRoom(probe, harness.type));
    return probe;
  });
}

function* spotsOf({ parts, tags, type }: Harness, id: string): Generator<Probe> {
  for (const { part, frame, outline } of parts)
    for (const { lug, tag, surface } of outline.lugs) {
      if (lugId(part.name, lug) !== id) continue;
      const rect = surface
        ? rectToSheet(frame, outline.body)
        : (tags.get(id)?.rect ?? rectToSheet(frame, tag));
      const share = surface ? ON_CASE : 1;
      const { x, y } = centreOf(rect);
      for (let way = 0; way < WAYS; way++) {
        const angle = (2 * Math.PI * (way + 0.5)) / WAYS;
        const out = { x: Math.cos(angle), y: Math.sin(angle) };
        // On a case along its round edge, on a tag where the needle's line leaves it.
        const reach = surface
          ? { x: (share * rect.width) / 2, y: (share * rect.height) / 2 }
          : edgeAlong(rect, out);
        const tip = { x: x + reach.x * out.x, y: y + reach.y * out.y };
        const far = { x: tip.x + out.x * lengthOf(type), y: tip.y + out.y * lengthOf(type) };
        const width = Math.max(...FLAGS.map((words) => textWidth(words, type, 'bold'))) + SIZE.air * type;
        yield {
          tip,
          out,
          flag: around(
            far.x + (out.x * width) / 2,
            far.y + (out.y * SIZE.tall * type) / 2,
            width,
            SIZE.tall * type,
          ),
        };
      }
    }
}

/** From the middle of a rectangle to its edge. */
function edgeAlong({ width, height }: Rect, { x, y }: Point): Point {
  const t = Math.min(width / 2 / Math.abs(x), height / 2 / Math.abs(y));
  return { x: t, y: t };
}

const lengthOf = (type: number): number => type * (SIZE.needle + SIZE.handle);

/** What a probe takes: squares along it, and its flag. */
export function probeRoom({ tip, out, flag }: Probe, type: number): readonly Rect[] {
  const along = (from: number, to: number, wide: number): readonly Rect[] => {
    const count = Math.ceil((to - from) / 3);
    return Array.from({ length: count + 1 }, (_, i) => {
      const s = from + ((to - from) * i) / count;
      return around(tip.x + out.x * s, tip.y + out.y * s, wide, wide);
    });
  };
  const needle = SIZE.needle * type;
  // The tip itself touches the lug.
  return [...along(4, needle, 3), ...along(needle, lengthOf(type), SIZE.thick * type), flag];
}

export function drawProbe(
  pen: Pen,
  { tip, out, flag }: Probe,
  index: number,
  type: number,
  theme: Theme,
): void {
  const on = (s: number): Point => ({ x: tip.x + out.x * s, y: tip.y + out.y * s });
  const needle = SIZE.needle * type;
  const thick = SIZE.thick * type;
  const round = { 'stroke-linecap': 'round' } as const;
  const [edge, fill] = [theme.ink, index === 0 ? (theme.bands.RD ?? theme.paper) : theme.ink];
  pen.line([tip, on(needle)], { stroke: theme.ink, 'stroke-width': LINE.outline + 1, ...round });
  pen.circle(tip, 2.6, { fill: theme.ink });
  const handle = [on(needle + thick / 2), on(lengthOf(type) - thick / 2)];
  pen.line(handle, { stroke: edge, 'stroke-width': thick, ...round });
  pen.line(handle, { stroke: fill, 'stroke-width': thick - 3, ...round });
  pen.rect(flag, { rx: 4, fill: theme.paper, stroke: edge, 'stroke-width': LINE.outline });
  pen.text(FLAGS[index === 0 ? 0 : 1], centreOf(flag), { size: type, weight: 'bold', fill: theme.ink });
}
