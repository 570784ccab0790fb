/**
 * Where the names of parts stand in a figure that is printed small, with the values of components: where they stand in the wiring as long as they have
 * room there in their larger type; else in other lines, moved, or as a last resort shortened, so that none lies on a lug, a part, a wire or
 * another name.
 */
import { inside, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { is } from '../../parts/index.ts';
import type { LabelSlot } from '../../parts/outline.ts';
import { rectToSheet } from '../../place/frame.ts';
import type { PlacedPart } from '../../place/placement.ts';
import { piecesOf } from './faces.ts';
import {
  type Care,
  CLOSE,
  isFree,
  nameSpots,
  PRICE,
  shortOf,
  standing,
  USUAL,
  valueSpots,
  type Written,
  waysOf,
} from './name-spots.ts';
import { allClear, choiceOf, type Leader, NEVER, type Obstacle, settled } from './spots.ts';

/** What is written at a part: its name, and what it is. */
export interface Words {
  readonly name: readonly LabelSlot[];
  /** Empty where there is no room for it. */
  readonly value: readonly LabelSlot[];
  /** From the part to a name that stands away from it. */
  readonly leaders: readonly Leader[];
}

/** What names may lie on or not: each of the kit's wires with the parts that it ends at, and all tags. */
interface Around {
  readonly wires: readonly {
    readonly ends: readonly string[];
    /** What its line takes, and what it takes with its outline and some air. */
    readonly runs: readonly Rect[];
    readonly beside: readonly Rect[];
  }[];
  readonly tags: readonly Rect[];
  /** By the name of a part what is drawn on its face. */
  readonly ink: ReadonlyMap<string, readonly Rect[]>;
}

/**
 * The words of parts at a size of type.
 *
 * @param written those whose words are found
 * @param parts all that are drawn
 * @param within where names stand at last: off what is drawn on faces, and looked for more closely where they find no good place. Left out, they stand only roughly
 */
export function wordsIn(
  written: readonly PlacedPart[],
  parts: readonly PlacedPart[],
  size: number,
  { wires, tags, ink }: Around,
  values: 'all' | 'components',
  within?: Rect,
): ReadonlyMap<string, Words> {
  const pieces = written.flatMap(piecesOf);
  const bodies = parts.flatMap(piecesOf).map((placed) => ({
    placed,
    rect: rectToSheet(placed.frame, placed.outline.body),
  }));
  const obstaclesAt = (piece: PlacedPart): readonly Obstacle[] => {
    const { part } = piece;
    const component = is(part, 'component');
    return [
      ...tags.map((rect) => ({ rect, hidden: NEVER, crossed: NEVER })),
      ...bodies.flatMap(({ placed, rect }) =>
        placed === piece
          ? component
            ? { rect, hidden: NEVER, crossed: 0 }
            : []
          : { rect, hidden: NEVER, crossed: NEVER },
      ),
      ...(is(part, 'ground-point') || within ? (ink.get(part.name) ?? []) : []).map((rect) => ({
        rect,
        hidden: is(part, 'ground-point') ? PRICE.symbol : PRICE.ink,
        crossed: 0,
      })),
      ...wires.flatMap(({ ends, runs, beside }) => {
        const own = ends.includes(part.name) && !component;
        return [
          ...runs.map((rect) => ({ rect, hidden: own ? PRICE.ownWire : PRICE.wire, crossed: PRICE.across })),
          ...beside.map((rect) => ({ rect, hidden: own ? 0 : PRICE.beside, crossed: 0 })),
        ];
      }),
    ];
  };
  const told = ({ part }: PlacedPart): boolean => values === 'all' && !is(part, 'component');
  const namesAt = (placed: PlacedPart, care: Care): readonly Written[] => {
    const obstacles = obstaclesAt(placed);
    const whole = choiceOf(nameSpots(placed, waysOf(placed, size, told(placed)), care), obstacles);
    // Only a name that has no place as it is gets shortened.
    return whole.some(({ price }) => price < PRICE.short)
      ? whole
      : [...whole, ...choiceOf(nameSpots(placed, shortOf(placed, size), care), obstacles)].sort(
          (a, b) => a.price - b.price,
        );
  };
  const usual = pieces.flatMap((placed) => {
    const [way] = waysOf(placed, size, told(placed));
    return way ? [{ placed, spot: standing(way.slots, 0) }] : [];
  });
  // Mostly every name has room where it stands in the wiring, and nothing is better.
  const stays =
    usual.every(({ placed, spot }) => isFree(placed, spot.room)) &&
    allClear(usual.map(({ placed, spot }) => ({ spot, obstacles: obstaclesAt(placed) })));
  const named = stays
    ? new Map(usual.map(({ placed, spot }) => [placed, spot]))
    : stand(
        pieces,
        (placed) => namesAt(placed, USUAL),
        within && {
          from: PRICE.ownWire,
          others: PRICE.ownWire,
          closely: (placed) => namesAt(placed, CLOSE).filter(({ room }) => inside(room, within)),
        },
      );
  // A value takes what the names leave.
  const taken = [...named.values()].map(({ room }) => ({ rect: room, hidden: NEVER, crossed: 0 }));
  const valued = stand(pieces, (placed) =>
    is(placed.part, 'component')
      ? choiceOf(valueSpots(placed, size), [...obstaclesAt(placed), ...taken])
      : [],
  );
  const slots = (placed: PlacedPart, found: ReadonlyMap<PlacedPart, Written>) =>
    piecesOf(placed).flatMap((piece) => slotsAt(found.get(piece)));
  return new Map(
    written.map((placed): [string, Words] => [
      placed.part.name,
      {
        name: slots(placed, named),
        value: slots(placed, valued),
        leaders: piecesOf(placed).flatMap((piece) => {
          const leader = named.get(piece)?.leader;
          return leader ? [leader] : [];
        }),
      },
    ]),
  );
}

/** Where the words stand of the parts that have any. */
function stand(
  parts: readonly PlacedPart[],
  choiceAt: (placed: PlacedPart) => readonly Written[],
  crowd?: {
    readonly from: number;
    readonly others: number;
    readonly closely: (placed: PlacedPart) => readonly Written[];
  },
): ReadonlyMap<PlacedPart, Written> {
  const marks = parts.flatMap((placed) => {
    const choice = choiceAt(placed);
    return choice.length === 0 ? [] : { placed, choice };
  });
  const spots = settled(
    marks.map(({ choice }) => choice),
    crowd && { ...crowd, closely: (mark) => crowd.closely(nth(marks, mark).placed) },
  );
  return new Map(marks.map(({ placed }, i) => [placed, nth(spots, i)]));
}

/** Lines where they stand at last; none where nothing is written. */
const slotsAt = (at: Written | undefined): readonly LabelSlot[] =>
  at?.slots.map((slot) => ({
    ...slot,
    centre: { x: slot.centre.x + at.by.x, y: slot.centre.y + at.by.y },
  })) ?? [];
