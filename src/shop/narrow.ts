/** A kit for a column as narrow as a phone: placed anew for it, its wiring, key and cards as pieces of their own. */
import type { Kit } from '../describe/kit.ts';
import { unitsAcross } from '../draw/column.ts';
import { type Aspect, type Prepared, readableWidth, wantedWidth } from '../draw/compose.ts';
import type { Piece } from '../draw/pieces.ts';
import { smallestType } from '../inspect/index.ts';
import { render, renderInline } from '../pipeline.ts';
import { type Arrangement, narrowColumn } from '../place/arrangement.ts';
import type { PlaceOptions } from '../place/place.ts';
import { prepare } from '../prepare.ts';

/** CSS pixels: what a phone shows across. */
const COLUMN = 360;

interface NarrowOptions extends Omit<Aspect, 'only' | 'page' | 'sheet' | 'step' | 'width'>, PlaceOptions {
  /** Of the column, CSS pixels. */
  readonly width?: number;
  /** The revision mark that all else of the kit bears; without it that of the column's own places. */
  readonly mark?: string;
}

/** One of the pieces: a drawing by itself. */
interface NarrowPiece {
  /** Of its file, and the prefix of its ids. */
  readonly name: string;
  /** For an `<img>`. */
  readonly svg: string;
  /** To stand in a page: the same with classes for its inks. */
  readonly inline: string;
  /** CSS pixels at which its type is as large as `leastType` says; more than the column's where a kit needs it. */
  readonly width: number;
  readonly height: number;
}

export interface Narrow {
  readonly prepared: Prepared;
  readonly drawing: NarrowPiece;
  readonly key: NarrowPiece;
  readonly cards: NarrowPiece;
  /** The smallest type of all pieces, CSS pixels. */
  readonly leastType: number;
}

/**
 * The pieces of a kit for a narrow column, no type in them under 11 pixels. A piece that does not fit is wider than the column,
 * and to be scrolled sideways.
 *
 * @param placed what places it
 * @throws NoRouteError when the wires of a kit find no way at any spacing
 */
export async function narrowOf(
  kit: Kit,
  { width = COLUMN, mark, hand, effort, progress, store, ...aspect }: NarrowOptions = {},
  placed: (kit: Kit, arrangement: Arrangement, options: PlaceOptions) => Promise<Prepared> = prepare,
): Promise<Narrow> {
  const anew = await placed(kit, narrowColumn(unitsAcross(width)), {
    ...(hand ? { hand } : {}),
    ...(effort ? { effort } : {}),
    ...(progress ? { progress } : {}),
    ...(store ? { store } : {}),
  });
  const prepared = mark === undefined ? anew : { ...anew, mark };
  const piece = (only: Piece): NarrowPiece => pieceOf(prepared, { ...aspect, only: [only], width });
  const [drawing, key, cards] = [piece('drawing'), piece('key'), piece('cards')];
  const types = [drawing, key, cards].flatMap(({ svg }) => smallestType(svg) ?? []);
  return { prepared, drawing, key, cards, leastType: Math.min(...types) };
}

function pieceOf(prepared: Prepared, asked: Aspect & { readonly width: number }): NarrowPiece {
  const least = Math.max(readableWidth(prepared, asked) ?? 0, wantedWidth(prepared, asked) ?? 0);
  const aspect = { ...asked, width: Math.max(asked.width, least) };
  const { name, svg } = render(prepared, aspect);
  return {
    name,
    svg,
    inline: renderInline(prepared, aspect),
    width: aspect.width,
    height: Number(/ height="(\d+)"/.exec(svg)?.[1]),
  };
}
