/** A pot's outline from the solder side: the case above, and below each gang its three lugs. */
import { around, type Point, type Rect } from '../common/geometry.ts';
import type { GangLugs } from './gang.ts';
import {
  g,
  type LabelSlot,
  type LugOutline,
  type Outline,
  type Port,
  type Strap,
  tagPorts,
} from './outline.ts';
import {
  type GangLabels,
  gangLabels,
  labelsBetween,
  type Size,
  sizeOf,
  smallestPot,
  USUAL,
} from './pot-size.ts';

/** How far inside the case's edge a ground wire ends: on the bare rim, clear of the track seen through the case. */
const CASE_INSET = 7;
/** Ground joints between the lugs are hard to get at with an iron: only where nothing else is left. */
const BETWEEN_LUGS = 500;
/**
 * Lugs with a name of one letter, and of two: how far the outer ones stand from the middle, how far from a lug the wire turns that arrives
 * from the side, by how much the smallest case is larger and how much lower the lugs hang, clear of a long case's straight edge, grid units; how wide a tag is, drawing units.
 */
const NARROW = { column: 3, turn: 1, more: 0, drop: 0, tag: 18 } as const;
const WIDE = { column: 4, turn: 2, more: 1, drop: 1, tag: 26 } as const;
type Spread = typeof NARROW | typeof WIDE;
/** Between two gangs in one case, grid units: for a wire to each of the lugs that face each other; and the most that words take there. */
const GAP = 2;
const WIDEST_GAP = 12;

/**
 * A way onto the case along a grid line: straight in until just inside the edge, which is round about a gang.
 *
 * @param straight whether the edge there is that between two gangs
 */
function casePort(
  { centre, radius }: Size,
  node: Point,
  inward: Point,
  { price = 0, straight = false }: { readonly price?: number; readonly straight?: boolean } = {},
): Port {
  const off = straight ? 0 : inward.x === 0 ? node.x - centre.x : node.y - centre.y;
  const reach = Math.sqrt(radius ** 2 - off ** 2) - CASE_INSET;
  const spot =
    inward.x === 0
      ? { x: node.x, y: centre.y - inward.y * reach }
      : { x: centre.x - inward.x * reach, y: node.y };
  return { node, inward, spot, price };
}

const DOWN = { x: 0, y: 1 } as const;
const UP = { x: 0, y: -1 } as const;
const TO_RIGHT = { x: 1, y: 0 } as const;
const TO_LEFT = { x: -1, y: 0 } as const;

/** Tolerance round the rim so that no two solder joints touch, nor one a lug's stem or strap; between the lugs last. */
function casePorts(sizes: readonly Size[], width: number): readonly Port[] {
  const [first, last] = [sizes[0], sizes.at(-1)];
  if (!first || !last) return [];
  const { middle, lugRow } = first;
  const straight = (x: number): boolean => x > first.centre.x && x < last.centre.x;
  const across = (offs: readonly number[], port: (size: Size, x: number) => Port) =>
    sizes.flatMap((size) => offs.map((off) => port(size, g(size.left + middle + off))));
  return [
    // Above the middle of a gang of two its wiper may stand.
    ...across(sizes.length > 1 ? [-2, 2, -1, 1] : [0, -2, 2, -1, 1], (size, x) =>
      casePort(size, { x, y: 0 }, DOWN, { straight: straight(x) }),
    ),
    ...[0, -1].map((y) => casePort(first, { x: 0, y: g(middle + y) }, TO_RIGHT)),
    ...[0, -1].map((y) => casePort(last, { x: g(width), y: g(middle + y) }, TO_LEFT)),
    ...across([-1, 1], (size, x) =>
      casePort(size, { x, y: g(lugRow) }, UP, { price: BETWEEN_LUGS, straight: straight(x) }),
    ),
  ];
}

/** The strap of a lug bent over onto the case: from its tag straight to the rim. */
function strapOf(tag: Rect, { centre, radius }: Size, to: string, body: Rect): Strap {
  const x = tag.x + tag.width / 2;
  // Between two gangs the edge is straight.
  const inner = x > body.x + radius && x < body.x + body.width - radius;
  const reach = inner ? radius : Math.sqrt(radius ** 2 - (x - centre.x) ** 2);
  return { to, from: { x, y: tag.y + 1 }, end: { x, y: centre.y + reach - 9 } };
}

/** From the solder side, lugs down, the lugs read 3, 2, 1 from left to right. */
const lugOutlines = (
  size: Size,
  lugs: GangLugs,
  caseLug: string,
  body: Rect,
  { column: off, turn, tag: width }: Spread,
  narrow: boolean,
): readonly LugOutline[] =>
  (
    [
      [lugs.clockwise, -off],
      [lugs.wiper, 0],
      [lugs.anticlockwise, off],
    ] as const
  ).map(([lug, column]) => {
    const { left, middle, lugRow } = size;
    const x = left + middle + column;
    const usual = around(g(x), g(lugRow), width, 20);
    // A name is level whichever way a pot is turned: on one that always lies, tags are as wide then, towards the case.
    const tag = narrow
      ? { x: g(x) - 10, y: usual.y + usual.height - width, width: 20, height: width }
      : usual;
    return {
      lug,
      tag,
      ports: tagPorts(tag, x, lugRow, ['down', 'left', 'right']).map((port) => ({
        ...port,
        node: { ...port.node, x: port.node.x - port.inward.x * g(narrow ? 0 : turn - 1) },
      })),
      strap: strapOf(tag, size, caseLug, body),
    };
  });

/** A gang and the words inside its track; the first gang has the pot's name. */
interface GangWords extends Words {
  readonly lugs: GangLugs;
}

interface Words {
  readonly name: string;
  readonly value: string;
}

const leftOf = (more: number, gang: number, gap = GAP): number => gang * (2 * (USUAL.middle + more) + gap);

/**
 * One gang in a round case, or several side by side in a long one.
 *
 * @param narrow whether it is to lie on its side, which makes a long one narrow
 */
export function potOutline(gangs: readonly GangWords[], caseLug: string, narrow = false): Outline {
  const spread = gangs.length > 1 ? WIDE : NARROW;
  const fitted = smallestPot(
    (larger) => {
      const more = spread.more + larger;
      const tried = gangs.map((_, i) => sizeOf(more, leftOf(more, i), spread.drop));
      const labels = tried.flatMap((size, i): readonly GangLabels[] => {
        const words = gangs[i];
        const found = words && gangLabels(size, words.name, words.value);
        return found ? [found] : [];
      });
      return labels.length === gangs.length ? { sizes: tried, labels } : undefined;
    },
    gangs.map(({ name, value }) => `“${name}”, ${value}`).join(' and '),
  );
  return outlineOfGangs(gangs, caseLug, fitted, narrow);
}

/**
 * Two gangs with their words between them, as far apart as that takes: inside their tracks words would hide wipers that stand in the
 * middle.
 */
export function pairOutline(
  lugs: readonly [GangLugs, GangLugs],
  { name, value }: Words,
  caseLug: string,
  narrow = false,
): Outline {
  const gaps = Array.from({ length: WIDEST_GAP - GAP + 1 }, (_, i) => GAP + i);
  const fitted = smallestPot((larger) => {
    const more = WIDE.more + larger;
    return gaps
      .map((gap) => {
        const sizes = [0, 1].map((i) => sizeOf(more, leftOf(more, i, gap), WIDE.drop));
        const [left, right] = sizes;
        const labels = left && right && labelsBetween(left, right, name, value);
        return labels ? { sizes, labels: [labels] } : undefined;
      })
      .find((found) => found !== undefined);
  }, `“${name}”, ${value}`);
  return outlineOfGangs(
    lugs.map((own) => ({ lugs: own })),
    caseLug,
    fitted,
    narrow,
  );
}

function outlineOfGangs(
  gangs: readonly Pick<GangWords, 'lugs'>[],
  caseLug: string,
  { sizes, labels }: { readonly sizes: readonly Size[]; readonly labels: readonly GangLabels[] },
  narrow: boolean,
): Outline {
  const spread = gangs.length > 1 ? WIDE : NARROW;
  const width = Math.max(...sizes.map(({ left, middle }) => left + 2 * middle));
  const [height, rows] = [g(Math.max(...sizes.map(({ lugRow }) => lugRow))), sizes[0]?.middle ?? 0];
  const body = caseOf(sizes);
  const all = (which: (one: GangLabels) => readonly LabelSlot[]): readonly LabelSlot[] =>
    labels.flatMap((one, block) => which(one).map((label) => (narrow ? { ...label, block } : label)));
  return {
    ...(narrow ? { narrow } : {}),
    width: g(width),
    height: height + g(1),
    body,
    blocked: [
      { x: g(1), y: g(1), width: g(width - 2), height: g(2 * rows - 2) },
      ...(gangs.length > 1 ? [leadsOf(sizes, spread)] : []),
    ],
    lugs: [
      ...gangs.flatMap(({ lugs }, i) => {
        const size = sizes[i];
        return size ? lugOutlines(size, lugs, caseLug, body, spread, narrow) : [];
      }),
      { lug: caseLug, tag: body, ports: casePorts(sizes, width), surface: true },
    ],
    labels: all((one) => one.labels),
    asideLabels: all((one) => one.asideLabels),
  };
}

/** Between a long case and its lugs lie their leads and bent lugs, which a wire that ran there would seem to touch. */
function leadsOf(sizes: readonly Size[], { column }: Spread): Rect {
  const middles = sizes.map(({ left, middle }) => left + middle);
  const [first, last] = [Math.min(...middles) - column, Math.max(...middles) + column];
  const [{ middle, lugRow } = { middle: 0, lugRow: 0 }] = sizes;
  return { x: g(first), y: g(2 * middle - 1), width: g(last - first), height: g(lugRow - 2 * middle) };
}

/** What the case takes up. */
function caseOf(sizes: readonly Size[]): Rect {
  const boxes = sizes.map(({ centre, radius }) => around(centre.x, centre.y, 2 * radius, 2 * radius));
  const [left, right] = [Math.min(...boxes.map(({ x }) => x)), Math.max(...boxes.map((b) => b.x + b.width))];
  const [{ y, height } = { y: 0, height: 0 }] = boxes;
  return { x: left, y, width: right - left, height };
}

/** The sizes of a pot's gangs by its outline. */
export function sizesSeen({ width, height }: Outline, gangs: number): readonly Size[] {
  const { drop } = gangs > 1 ? WIDE : NARROW;
  const more = (height / g(1) - 1 - drop) / 2 - USUAL.middle;
  const gap = width / g(1) - 4 * (USUAL.middle + more);
  return Array.from({ length: gangs }, (_, i) => sizeOf(more, leftOf(more, i, gap), drop));
}
