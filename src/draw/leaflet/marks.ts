/**
 * What is written along the new joints of a step: the number of each at its ends, and the code of its colour. No mark lies on a lug, a solder
 * joint, another line or another mark; one that finds no place so stands aside with a leader.
 */
import { around, inside, overlaps, type Point, type Rect, round2 } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { is } from '../../parts/index.ts';
import { between } from '../../place/openings.ts';
import { drawChip } from '../chips.ts';
import type { Pen } from '../pen.ts';
import { type Care, pointAt, runsOf, spotsAside, spotsFar, spotsOnLine } from './beads.ts';
import { codeAside, codeOnLine, codeRect } from './codes.ts';
import { drawEnd } from './ends.ts';
import { bodiesOf, inkOf } from './faces.ts';
import type { Frame } from './figure.ts';
import { dotAt, type Harness, slotsOf } from './harness.ts';
import { type EndName, endNames, solderedEnds } from './joint-ends.ts';
import { nearnessIn } from './nearness.ts';
import { choiceOf, NEVER, type Obstacle, type Spot, settled } from './spots.ts';
import type { FigureStep } from './step.ts';
import { roomOf } from './tags.ts';

/** An end that has a number. */
interface Numbered {
  readonly joint: number;
  readonly end: EndName;
  readonly number: number;
  readonly hooked: boolean;
  readonly tip: ReturnType<typeof dotAt>;
}

/** A number as large as names, in a ring. */
const radiusOf = (type: number, numbers: readonly number[]): number =>
  round2(type * (Math.max(...numbers) > 9 ? 0.84 : 0.66));

/** Width of a line with its outline, near enough: a new one, and one made before. */
const WIDE = { new: 14, before: 7 } as const;
/** What it costs to lie on the face of a part on each thing that is drawn there, and where the part is pale; to lie on its own line though aside, and to lead across. */
const PRICE = {
  face: 60,
  ink: 300,
  pale: 150,
  beside: 600,
  own: 2000,
  across: { face: 150, ink: 40, body: 400, new: 250, before: 120, own: 60 },
} as const;
/** Of its own line that a leader may lie beside: where both begin. */
const BEGINS = 16;

/** The marks of a step where they stand. */
export interface Marks {
  readonly radius: number;
  readonly numbers: readonly { readonly of: Numbered; readonly spot: Spot }[];
  readonly codes: readonly { readonly joint: number; readonly code: string; readonly spot: Spot }[];
}

export function marksOf(harness: Harness, step: FigureStep, frame: Frame): Marks {
  const { sheet } = harness;
  const { type } = frame;
  const ends = numberedEnds(harness, step);
  const radius = radiusOf(
    type,
    ends.map(({ number }) => number),
  );
  const codes = step.details.flatMap(({ index }) => {
    const code = nth(sheet.placement.wires, index).joint.colour;
    return code === undefined ? [] : { joint: index, code };
  });
  const { room, free } = obstaclesOf(harness);
  const nearness = nearnessIn(harness);
  const numberAt = ({ joint, end, tip, hooked }: Numbered, search: Search): readonly Spot[] => {
    const alike = ends.filter((one) => one.joint === joint).every((one) => one.hooked === hooked);
    const near = nearness(joint, end);
    const path = nth(harness.paths, joint);
    const points = end === 'from' ? path : [...path].reverse();
    return choice(
      [
        near(spotsOnLine(points, radius, alike, search, crossingsAlong(harness, joint, points))),
        near(spotsAside(points, tip, radius, search)),
        near(spotsFar(points, tip, radius, search)),
      ],
      room(joint, tip),
      own(points),
      frame.crop,
      search,
    );
  };
  const codeAt = ({ joint, code }: { joint: number; code: string }, search: Search): readonly Spot[] => {
    const path = nth(harness.paths, joint);
    return choice(
      [codeOnLine(path, code, type), codeAside(path, code, type, free(joint))],
      [...room(joint), ...besideNames(harness)],
      [],
      frame.crop,
      search,
    );
  };
  const choicesWith = (search: Search): readonly (() => readonly Spot[])[] => [
    ...ends.map((end) => () => numberAt(end, search)),
    ...codes.map((code) => () => codeAt(code, search)),
  ];
  const closely = choicesWith(CLOSE);
  const spots = settled(
    choicesWith(USUAL).map((choose) => choose()),
    // In a crowd a place may lie between those that are looked at else.
    { from: CROWDED, others: NEVER, closely: (mark) => nth(closely, mark)() },
  );
  return {
    radius,
    numbers: ends.map((of, i) => ({ of, spot: nth(spots, i) })),
    codes: codes.map((one, i) => ({ ...one, spot: nth(spots, ends.length + i) })),
  };
}

/** @param window outside of which no mark is drawn */
export function drawMarks(
  pen: Pen,
  id: string,
  harness: Harness,
  { radius, numbers, codes }: Marks,
  { type }: Frame,
  window: Rect,
): void {
  const { theme } = harness;
  const seen = <T extends { readonly spot: Spot }>(marks: readonly T[]): readonly T[] =>
    marks.filter(({ spot }) => overlaps(spot.room, window));
  const colours = pen.group({ id: `${id}-colours` });
  for (const { joint, code, spot } of seen(codes)) {
    const group = colours.group({ id: `${id}-colour-${joint + 1}` });
    if (spot.leader) group.line(spot.leader, { stroke: theme.ink, 'stroke-width': LEADER });
    drawChip(group, code, codeRect(spot.centre, code, type), theme, type);
  }
  const group = pen.group({ id: `${id}-numbers` });
  for (const { of, spot } of seen(numbers)) drawNumber(group, id, of, spot, { radius, type, harness });
}

const LEADER = 1.5;

/** Beside a name, by the size of type, where a code would be read as a part of it. */
const BESIDE = 1.5;

const besideNames = (harness: Harness): readonly Obstacle[] =>
  harness.parts
    .flatMap((placed) => slotsOf(harness, placed).map(roomOf))
    .map(({ x, y, width, height }) => ({
      rect: { x: x - BESIDE * harness.type, y, width: width + 2 * BESIDE * harness.type, height },
      hidden: PRICE.beside,
      crossed: 0,
    }));

/** The ends of a step's joints that have numbers: all but those that need no solder. */
function numberedEnds(harness: Harness, { details }: FigureStep): readonly Numbered[] {
  return details.flatMap((detail, i) =>
    endNames.flatMap((end): Numbered | [] => {
      const { index: joint } = detail;
      const { soldered } = detail[end];
      if (soldered === 'none') return [];
      return { joint, end, number: i + 1, hooked: soldered !== 'now', tip: dotAt(harness, joint, end) };
    }),
  );
}

/** A mark that costs so much is looked for more closely: it leads along its own line, or is far from its end. */
const CROWDED = 1200;

/** A spot that costs less hides nothing of importance. */
const GOOD = 700;

/** How places are searched for, and how many a mark then chooses from. */
interface Search extends Care {
  readonly choice: number;
  /** Good spots that are enough to choose from. */
  readonly enough: number;
}
const USUAL: Search = { step: 3, ways: 24, farthest: 240, choice: 120, enough: 40 };
const CLOSE: Search = { step: 1, ways: 96, farthest: 600, choice: 900, enough: 400 };

/** The spots on its line and aside together, the cheapest first; further stages only where there are not enough. */
function choice(
  [onLine, ...aside]: readonly [Iterable<Spot>, ...Iterable<Spot>[]],
  obstacles: readonly Obstacle[],
  line: readonly Obstacle[],
  crop: Rect,
  { choice: most, enough }: Search,
): readonly Spot[] {
  const within = (spots: Iterable<Spot>): readonly Spot[] =>
    [...spots].filter(({ room }) => inside(room, crop));
  const all = [...choiceOf(within(onLine), obstacles, most)];
  for (const spots of aside) {
    if (all.filter(({ price }) => price < GOOD).length >= enough) break;
    all.push(...choiceOf(within(spots), [...obstacles, ...line], most));
  }
  return all.sort((a, b) => a.price - b.price);
}

/** How far along a joint's line others cross it. */
function crossingsAlong(
  { made, paths }: Harness,
  joint: number,
  points: readonly Point[],
): readonly number[] {
  let passed = 0;
  return points.slice(1).flatMap((b, i) => {
    const a = nth(points, i);
    const found = paths.flatMap((path, other) =>
      other === joint || made[other] === 'absent'
        ? []
        : path.slice(1).flatMap((d, k): readonly number[] => {
            const c = nth(path, k);
            const at = a.y === b.y ? { x: c.x, y: a.y } : { x: a.x, y: c.y };
            return (a.y === b.y) !== (c.y === d.y) && between(a, b, at) && between(c, d, at)
              ? [passed + Math.abs(at.x - a.x) + Math.abs(at.y - a.y)]
              : [];
          }),
    );
    passed += Math.abs(b.x - a.x) + Math.abs(b.y - a.y);
    return found;
  });
}

/** A mark's own line, on which it does not lie when it is aside, least of all on a corner, and beyond its beginning is not led across. */
function own(points: readonly Point[]): readonly Obstacle[] {
  const start = pointAt(points, BEGINS);
  const rest = points.slice(1).map((b, i) => [nth(points, i), b] as const);
  const from = rest.findIndex(
    ([a, b]) => (start.x - a.x) * (start.x - b.x) <= 0 && (start.y - a.y) * (start.y - b.y) <= 0,
  );
  return [
    ...runsOf(points, WIDE.new).map((rect) => ({ rect, hidden: PRICE.own, crossed: 0 })),
    ...points.slice(1, -1).map(({ x, y }) => ({ rect: around(x, y, 2, 2), hidden: NEVER, crossed: 0 })),
    ...runsOf([start, ...points.slice(from + 1)], WIDE.new).map((rect) => ({
      rect,
      hidden: 0,
      crossed: PRICE.across.own,
    })),
  ];
}

/** What is in the way of a mark of a joint, or of the number at one of its ends, whose solder is at `tip`. */
function obstaclesOf(harness: Harness) {
  const { parts, paths, made, sheet, concerned } = harness;
  const { wires } = sheet.placement;
  const there = wires.flatMap((_, joint) => (made[joint] === 'absent' ? [] : [joint]));
  const words = harness.words.map((rect) => ({ rect, hidden: NEVER, crossed: NEVER }));
  const faces: readonly Obstacle[] = parts.flatMap((placed) =>
    bodiesOf(placed).map((rect) =>
      is(placed.part, 'component')
        ? { rect, hidden: NEVER, crossed: PRICE.across.body }
        : { rect, hidden: PRICE.face, crossed: PRICE.across.face },
    ),
  );
  const ink = inkOf(sheet);
  const drawn: readonly Obstacle[] = parts.flatMap(({ part }) =>
    (ink.get(part.name) ?? []).map((rect) => ({
      rect,
      hidden: concerned.has(part.name) ? PRICE.ink : PRICE.pale,
      crossed: concerned.has(part.name) ? PRICE.across.ink : 0,
    })),
  );
  const tips = there.flatMap((joint) =>
    solderedEnds(sheet.placement, joint).map((end) => {
      const { x, y, radius } = dotAt(harness, joint, end);
      const size = 2 * radius + (made[joint] === 'new' ? 5 : 0);
      return around(x, y, size, size);
    }),
  );
  const lines = there.flatMap((joint) => {
    const fresh = made[joint] === 'new';
    return runsOf(nth(paths, joint), fresh ? WIDE.new : WIDE.before).map((rect) => ({ joint, rect, fresh }));
  });
  const holds = ({ x, y }: Point, rect: Rect): boolean => inside({ x, y, width: 0, height: 0 }, rect);
  const free =
    (joint: number) =>
    (start: Point): boolean =>
      ![...tips, ...lines.flatMap((line) => (line.joint === joint ? [] : line.rect)), ...harness.words].some(
        (rect) => holds(start, rect),
      );
  const room = (joint: number, tip?: Point): readonly Obstacle[] => {
    const here = (rect: Rect): boolean => tip !== undefined && holds(tip, rect);
    return [
      ...words,
      ...drawn,
      // From a case a leader has to lead across it.
      ...faces.map((face) => (here(face.rect) ? { ...face, crossed: PRICE.across.own } : face)),
      ...tips.map((rect) => ({ rect, hidden: NEVER, crossed: here(rect) ? 0 : NEVER })),
      ...lines
        .filter((line) => line.joint !== joint)
        .map(({ rect, fresh }) => ({
          rect,
          hidden: NEVER,
          crossed: here(rect) ? 0 : fresh ? PRICE.across.new : PRICE.across.before,
        })),
    ];
  };
  return { room, free };
}

function drawNumber(
  pen: Pen,
  id: string,
  { joint, end, number, hooked }: Numbered,
  { centre, leader }: Spot,
  { radius, type, harness }: { radius: number; type: number; harness: Harness },
): void {
  const group = pen.group({ id: `${id}-end-${joint + 1}-${end}` });
  const { theme } = harness;
  if (leader) group.line(leader, { stroke: theme.ink, 'stroke-width': LEADER });
  drawEnd(group, harness, { joint, end, look: hooked ? 'hooked' : 'soldered', id });
  group.circle(centre, radius, {
    fill: hooked ? theme.paper : theme.ink,
    stroke: theme.ink,
    'stroke-width': 2,
  });
  group.text(String(number), centre, {
    size: type,
    weight: 'bold',
    fill: hooked ? theme.ink : theme.paper,
  });
}
