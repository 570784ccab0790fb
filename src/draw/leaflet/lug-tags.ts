/**
 * Tags of lugs that grow with their names where a figure is printed small. A tag grows to the side where there is room, so that no wire
 * runs through it or close by that does not end at it.
 */
import { lugId, lugIdOf } from '../../circuit/circuit.ts';
import { overlaps, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { remembered } from '../../common/remembered.ts';
import { textWidth } from '../../common/text.ts';
import { lugWords } from '../../messages/words.ts';
import { is } from '../../parts/index.ts';
import { rectToSheet } from '../../place/frame.ts';
import type { PlacedPart, Placement } from '../../place/placement.ts';
import type { Sheet } from '../sheet.ts';
import { runsOf } from './beads.ts';

/** A lug's tag on the sheet, and the size of its name; without one where there is no room for it. */
export interface Tag {
  readonly id: string;
  /** Its name on the drawing. */
  readonly lug: string;
  readonly rect: Rect;
  readonly size?: number;
}

/** Around a name in its tag, by its size; across less where there is no room for more. */
const ROUND = { across: 0.7, least: 0.2, along: 0.12 } as const;

/** What a tag stays clear of: so far from the middle of a wire, drawing units; between it and another tag the middle is kept. */
interface Beside {
  readonly rect: Rect;
  readonly air?: number;
}

/** Between a tag and the middle of a wire, drawing units: with the outline of a new one; on a side where its own solder is between the two; and of a wire that ends here. */
export const AIR = { wire: 9, solder: 17, own: 9 } as const;
/** From a tag to what it could reach when it grows, drawing units. */
const REACH = 80;
/** How far off its edge an end on a tag may be, drawing units. */
export const EDGE = 0.5;

/** From one number to a larger one. */
interface Span {
  readonly from: number;
  readonly to: number;
}

const acrossOf = ({ x, width }: Rect): Span => ({ from: x, to: x + width });
const downOf = ({ y, height }: Rect): Span => ({ from: y, to: y + height });
const meet = (a: Span, b: Span, air: number): boolean => a.from < b.to + air && b.from < a.to + air;

/** A span grown to a length about its middle, or moved aside and, at last, shorter, so that it stays within limits as far as it can. */
function grownSpan({ from, to }: Span, wanted: number, least: number, { from: low, to: high }: Span): Span {
  const length = Math.max(to - from, Math.min(wanted, Math.max(least, high - low)));
  const middle = (from + to) / 2;
  const [first, last] = [Math.max(low, to - length), Math.min(high - length, from)];
  // Where both limits cannot be kept it stands between them.
  const start =
    first > last ? (low + high - length) / 2 : Math.min(Math.max(middle - length / 2, first), last);
  const held = Math.min(Math.max(start, to - length), from);
  return { from: held, to: held + length };
}

/** How far a span may reach, by what stands before and behind it. */
function limitsOf(span: Span, others: readonly { readonly span: Span; readonly air?: number }[]): Span {
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const { span: other, air } of others) {
    if (other.to <= span.from)
      from = Math.max(from, air === undefined ? (other.to + span.from) / 2 : other.to + air);
    else if (other.from >= span.to)
      to = Math.min(to, air === undefined ? (other.from + span.to) / 2 : other.from - air);
  }
  return { from: Math.min(from, span.from), to: Math.max(to, span.to) };
}

function grown(rect: Rect, lug: string, size: number, beside: readonly Beside[]): Rect {
  const words = textWidth(lug, size, 'bold');
  const [across, down] = [acrossOf(rect), downOf(rect)];
  const height = size * (1 + ROUND.along);
  const tall = grownSpan(
    down,
    height,
    height,
    limitsOf(
      down,
      beside.flatMap(({ rect: other, ...air }) =>
        meet(acrossOf(other), across, 0) ? { span: downOf(other), ...air } : [],
      ),
    ),
  );
  const wide = grownSpan(
    across,
    words + ROUND.across * size,
    words + ROUND.least * size,
    limitsOf(
      across,
      beside.flatMap(({ rect: other, ...air }) =>
        meet(downOf(other), tall, air.air === undefined ? 0 : AIR.wire)
          ? { span: acrossOf(other), ...air }
          : [],
      ),
    ),
  );
  return { x: wide.from, y: tall.from, width: wide.to - wide.from, height: tall.to - tall.from };
}

/** What is near the tag of a lug: wires that do not end there, and other tags. */
function besideOf(id: string, rect: Rect, { wires, parts }: Placement): readonly Beside[] {
  const near = {
    x: rect.x - REACH,
    y: rect.y - REACH,
    width: rect.width + 2 * REACH,
    height: rect.height + 2 * REACH,
  };
  // An end beside the tag, not above or below it.
  const ends = wires.flatMap(({ joint: { from, to }, points }) => [
    ...(lugIdOf(from) === id ? [nth(points, 0)] : []),
    ...(lugIdOf(to) === id ? [nth(points, points.length - 1)] : []),
  ]);
  const [left, right, above, below] = [
    ends.some((end) => end.x <= rect.x + EDGE),
    ends.some((end) => end.x >= rect.x + rect.width - EDGE),
    ends.some((end) => end.y <= rect.y + EDGE),
    ends.some((end) => end.y >= rect.y + rect.height - EDGE),
  ];
  const lines = wires.flatMap(({ joint: { from, to }, points }): readonly Beside[] => {
    const mine = [from, to].map((end) => lugIdOf(end) === id);
    return runsOf(points, 0).flatMap((run, i) => {
      if (!meet(acrossOf(run), acrossOf(near), 0) || !meet(downOf(run), downOf(near), 0)) return [];
      if (mine.includes(true))
        // What ends here comes to the tag, and turns before it.
        return (mine[0] && i === 0) || (mine[1] && i === points.length - 2)
          ? []
          : { rect: run, air: AIR.own };
      const aside =
        run.x > rect.x + rect.width
          ? right
          : run.x + run.width < rect.x
            ? left
            : run.y > rect.y
              ? below
              : above;
      return { rect: run, air: aside ? AIR.solder : AIR.wire };
    });
  });
  const tags = parts.flatMap(({ part, frame, outline }) =>
    is(part, 'component')
      ? []
      : outline.lugs.flatMap(({ lug, tag, surface }): Beside | [] => {
          if (surface || lugId(part.name, lug) === id) return [];
          const other = rectToSheet(frame, tag);
          return overlaps(other, near) ? { rect: other } : [];
        }),
  );
  return [...lines, ...tags];
}

const besideIn = remembered((_: Placement) => new Map<string, readonly Beside[]>());
/** The same, found once for a placement: figures try many sizes of type. */
function besideOnce(id: string, rect: Rect, placement: Placement): readonly Beside[] {
  const known = besideIn(placement);
  const now = known.get(id) ?? besideOf(id, rect, placement);
  known.set(id, now);
  return now;
}

/** Tags of a part's lugs in which names are of a size; surfaces and the legs of components have none. */
export const tagsOf = (
  { part, frame, outline }: PlacedPart,
  size: number,
  named: boolean,
  { language, placement }: Sheet,
): readonly Tag[] =>
  is(part, 'component')
    ? []
    : outline.lugs.flatMap(({ lug, tag, surface }) => {
        if (surface) return [];
        const rect = rectToSheet(frame, tag);
        const words = lugWords(language, lug);
        const own = { id: lugId(part.name, lug), lug: words };
        return [
          named
            ? { ...own, rect: grown(rect, words, size, besideOnce(own.id, rect, placement)), size }
            : { ...own, rect },
        ];
      });
