/**
 * A sheet fitted to a printed page: of all ways to divide the page (key above the drawing or beside it, cards below or beside it, so
 * many abreast) the one whose smallest type is largest. The drawing takes all the room that the rest leaves it.
 */
import { fine, round2 } from '../common/geometry.ts';
import { must } from '../common/must.ts';
import { CAP_HEIGHT } from '../common/text.ts';
import {
  type Block,
  type Contents,
  cardsBlock,
  cardsWidth,
  drawingBlock,
  headBlock,
  keyBlock,
  type Layout,
  NOTHING,
  stacked,
  workBlock,
} from './blocks.ts';
import type { Page } from './head.ts';
import { widestKey } from './key.ts';

/** A way to lay out a page, and how high the smallest capitals are on it, millimetres. */
export interface Fitted {
  readonly layout: Layout;
  readonly capitals: number;
}

/** Type of everything but the drawing, drawing units. */
const TYPE = 12;
/** Capitals of everything but the drawing, millimetres: from what only the largest kits need to what still looks well. */
const [SMALLEST, LARGEST] = [0.1, 2.4] as const;
/** Halvings of the range between those. */
const HALVINGS = 10;
/** Capitals in a drawing are no higher than this, millimetres: lines would look coarse. */
const MOST_DRAWN = 3.2;
/**
 * The revision mark, millimetres: its type, how far the middle of its capitals stands above the paper's edge, which few printers come
 * nearer to than 5 (common practice, no source), and how much it needs there. It stands in the margin where that is as large.
 */
const MARK = { size: 2.5, up: 5.9, room: 7.8 } as const;
/** Between the drawing and what stands beside it. */
const GUTTER = 24;
/** Widths of what stands beside the drawing that are tried. */
const BESIDE = [170, 220, 300] as const;

export function fitPage(contents: Contents, page: Page): Fitted {
  let best: Measured | undefined;
  let chosen: At | undefined;
  for (const way of waysOf(contents)) {
    const at: At = (capitals) => fitted(contents, page, capitals / (TYPE * CAP_HEIGHT), way);
    const least = best?.capitals ?? SMALLEST;
    const one = largest(at, least, ({ drawn }, capitals) => drawn >= capitals - 1e-9);
    if (one && (!best || better(one, best))) [best, chosen] = [one, at];
  }
  const { drawn, capitals } = must(best, 'a way to fit a page');
  // Where the page's width limits the drawing, there is room for larger type beside it.
  const full = largest(
    must(chosen, 'a way'),
    capitals,
    (one, size) => one.drawn >= Math.max(drawn * NO_LOSS, size / ALIKE),
  );
  return must(full ?? best, 'a way to fit a page');
}

/** By how much the type beside the drawing may be larger. */
const ALIKE = 1.2;
/** What the drawing may give to the type beside it. */
const NO_LOSS = 0.999;

/** One way at a size of the type beside the drawing. */
type At = (capitals: number) => Measured | undefined;

/**
 * The largest type beside the drawing that leaves it room enough: the larger the one, the smaller the other.
 *
 * @param least nothing smaller is of interest
 */
function largest(
  at: At,
  least: number,
  isGood: (one: Measured, capitals: number) => boolean,
): Measured | undefined {
  const good = (capitals: number): Measured | undefined => {
    const one = at(capitals);
    return one && isGood(one, capitals) ? one : undefined;
  };
  let best = good(least);
  if (!best) return undefined;
  const most = good(LARGEST);
  if (most) return most;
  let low = least;
  let high: number = LARGEST;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    const one = good(middle);
    if (one) [best, low] = [one, middle];
    else high = middle;
  }
  return best;
}

type Measured = Fitted & { readonly drawn: number };

/** The smallest capitals decide; where they are alike, the drawing's. */
const better = (a: Measured, b: Measured): boolean =>
  a.capitals > b.capitals + 1e-6 || (a.capitals > b.capitals - 1e-6 && a.drawn > b.drawn + 1e-6);

/** What stands beside the drawing, and how many cards abreast. */
interface Way {
  readonly head: 'above' | 'beside';
  readonly key: 'above' | 'beside';
  readonly foot: 'below' | 'beside';
  readonly abreast: number;
  /** Most that a key beside the drawing is wide. */
  readonly wide: number;
  /** Whether each entry of the key has a row of its own. */
  readonly single: boolean;
}

/** Numbers abreast that differ in how many rows they make. */
const countsOf = (cards: number): readonly number[] => [
  ...new Set(Array.from({ length: cards }, (_, i) => Math.ceil(cards / (i + 1)))),
];

/** Tables abreast that are tried. */
const TABLES = [1, 2, 3] as const;

const ABOVE = { head: 'above', key: 'above', wide: 0, single: false } as const;

function waysOf({ drawing, key, cards, table, work }: Contents): readonly Way[] {
  const counts = cards.length === 0 ? [1] : table ? TABLES : countsOf(cards.length);
  // Of ways that are alike the one with the fewest rows is taken.
  if (!drawing) return counts.map((abreast) => ({ ...ABOVE, foot: 'below', abreast }) as const);
  const keys: readonly Omit<Way, 'foot' | 'abreast'>[] = [
    ABOVE,
    ...(key.length === 0 ? [] : BESIDE).flatMap((wide) =>
      (['above', 'beside'] as const).flatMap((head) =>
        [true, false].map((single) => ({ head, key: 'beside', wide, single }) as const),
      ),
    ),
  ];
  const feet = cards.length + work.length > 0 ? (['below', 'beside'] as const) : (['below'] as const);
  return keys.flatMap((one) => feet.flatMap((foot) => counts.map((abreast) => ({ ...one, foot, abreast }))));
}

/** The page laid out in one way, or nothing where that has no room. */
function fitted(contents: Contents, page: Page, unit: number, way: Way): Measured | undefined {
  const { drawing, cards, work, key } = contents;
  const width = (page.width - 2 * page.margin) / unit;
  const height = (page.height - page.margin - Math.max(page.margin, MARK.room)) / unit;
  const hasFoot = cards.length + work.length > 0;
  const least = cardsWidth(contents, way.abreast);
  const beside = Math.max(
    way.key === 'beside' ? Math.min(way.wide, widestKey(key)) : 0,
    way.foot === 'below' ? 0 : cards.length > 0 ? least : Math.min(BESIDE[2], width / 3),
  );
  if (Math.max(least, beside) > width) return undefined;
  const blocks = (where: 'above' | 'beside', wide: number): readonly Block[] => [
    ...(way.head === where ? [headBlock(contents, wide)] : []),
    ...(way.key === where ? [keyBlock(contents, wide, way.single)] : []),
  ];
  const foot = (wide: number): readonly Block[] =>
    !hasFoot ? [] : [cards.length > 0 ? cardsBlock(contents, wide, way.abreast) : workBlock(contents, wide)];
  const top = stacked(blocks('above', width));
  const side = stacked([...blocks('beside', beside), ...(way.foot === 'beside' ? foot(beside) : [])]);
  const bottom = stacked(way.foot === 'below' ? foot(width) : []);
  const under = top.height + (top.height > 0 ? AIR : 0);
  const middle = height - under - (bottom.height > 0 ? bottom.height + AIR : 0);
  if (middle < side.height) return undefined;
  const room = { width: width - (beside > 0 ? beside + GUTTER : 0), height: middle };
  const capital = unit * TYPE * CAP_HEIGHT;
  const most = drawing ? MOST_DRAWN / (unit * drawing.type * CAP_HEIGHT) : 1;
  const ratio = drawing ? Math.min(room.width / drawing.width, room.height / drawing.height, most) : 1;
  if (ratio <= 0) return undefined;
  const drawn = drawing ? unit * ratio * drawing.type * CAP_HEIGHT : capital;
  const wiring = drawingBlock(contents, room.width, ratio);
  const end = under + Math.max(wiring.height, side.height);
  return {
    capitals: Math.min(capital, drawn),
    drawn,
    layout: placed(page, unit, ratio, {
      ...NOTHING,
      ...top.put(0, 0),
      ...wiring.put(0, under),
      ...side.put(width - beside, under),
      ...bottom.put(0, end + (end > 0 ? AIR : 0)),
    }),
  };
}

/** Between what stands above the drawing, the drawing, and what stands below it. */
const AIR = 14;

/** In the drawing's units, the margins outside. */
function placed(page: Page, unit: number, ratio: number, all: typeof NOTHING): Layout {
  const scale = fine(1 / ratio);
  const millimetre = 1 / (ratio * unit);
  return {
    ...all,
    drawing: { x: round2(all.drawing.x * scale), y: round2(all.drawing.y * scale) },
    box: {
      x: round2(-page.margin * millimetre),
      y: round2(-page.margin * millimetre),
      width: round2(page.width * millimetre),
      height: round2(page.height * millimetre),
    },
    mark: {
      x: round2((page.width - 2 * page.margin) * millimetre),
      y: round2((page.height - page.margin - MARK.up) * millimetre),
      size: round2(MARK.size * millimetre),
    },
    width: `${page.width}mm`,
    height: `${page.height}mm`,
    scale,
  };
}
