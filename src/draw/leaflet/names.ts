/**
 * Where the names of parts stand in a figure that is printed small, with the values of components: where they stand in the wiring as long as they have
 * room there in their larger type; else in other lines, moved, or as a last resort shortened, so that none lies on a lug, a part, a wire or
 * another name.
 */
import { around, centreOf, inside, type Point, type Rect, rectAbout } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { remembered } from '../../common/remembered.ts';
import { is } from '../../parts/index.ts';
import { type LabelSlot, nameWays } from '../../parts/outline.ts';
import { rectToSheet } from '../../place/frame.ts';
import type { PlacedPart } from '../../place/placement.ts';
import { piecesOf } from './faces.ts';
import { allClear, choiceOf, type Leader, NEVER, type Obstacle, type Spot, settled } from './spots.ts';
import { linesOf, namesOf, roomOf, valuesOf } from './tags.ts';

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

interface Written extends Spot {
  readonly slots: readonly LabelSlot[];
  /** How far from there they stand. */
  readonly by: Point;
}

/** How places for a name are looked for. */
interface Care {
  /** From one place to the next, drawing units. */
  readonly step: number;
  /** How far a name moves across and down, in steps. */
  readonly across: number;
  readonly down: number;
  /** How far from its body a component's words may stand, drawing units. */
  readonly near: number;
  /** So far beside its body the name of another part may stand; only on the body where it is left out. */
  readonly beside?: number;
}
const USUAL: Care = { step: 8, across: 9, down: 6, near: 14 };
const CLOSE: Care = { step: 6, across: 27, down: 20, near: 72, beside: 72 };
/** Letters that are left of a name that is shortened. */
const SHORT = [20, 16, 12, 9, 7, 5, 3] as const;
/** What it costs: other lines than in the wiring, to stand out of its part, each unit beyond it, beside it, farther away with a leader, each unit of that and each wire across it; on a wire of it, on another wire or too close to it; over the symbol of a ground point; to be shortened, and each letter less; to leave a value out. */
const PRICE = {
  lines: 25,
  out: 100,
  beyond: 4,
  aside: 250,
  leader: 200,
  reach: 4,
  across: 60,
  ownWire: 1200,
  wire: 3000,
  beside: 150,
  symbol: 150,
  short: 2000,
  letter: 30,
  left: 2500,
} as const;
/** Between a component's body and its words. */
const BESIDE = 4;

/**
 * The words of parts at a size of type.
 *
 * @param written those whose words are found
 * @param parts all that are drawn
 * @param within where names that find no good place are looked for more closely; left out, they are not
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
      ...(is(part, 'ground-point') ? (ink.get(part.name) ?? []) : []).map((rect) => ({
        rect,
        hidden: PRICE.symbol,
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
  crowd?: { readonly from: number; readonly closely: (placed: PlacedPart) => readonly Written[] },
): ReadonlyMap<PlacedPart, Written> {
  const marks = parts.flatMap((placed) => {
    const choice = choiceAt(placed);
    return choice.length === 0 ? [] : { placed, choice };
  });
  const spots = settled(
    marks.map(({ choice }) => choice),
    crowd && { from: crowd.from, closely: (mark) => crowd.closely(nth(marks, mark).placed) },
  );
  return new Map(marks.map(({ placed }, i) => [placed, nth(spots, i)]));
}

/** Beside words, so that no line touches a letter. */
const AIR = 2;
const airy = (slots: readonly LabelSlot[]): Rect => {
  const { x, y, width, height } = rectAbout(slots.map(roomOf));
  return { x: x - AIR, y, width: width + 2 * AIR, height };
};

const UNMOVED: Point = { x: 0, y: 0 };
const standing = (slots: readonly LabelSlot[], price: number): Written => {
  const room = airy(slots);
  return { centre: centreOf(room), room, slots, by: UNMOVED, price };
};

/** Lines where they stand at last; none where nothing is written. */
const slotsAt = (at: Written | undefined): readonly LabelSlot[] =>
  at?.slots.map((slot) => ({
    ...slot,
    centre: { x: slot.centre.x + at.by.x, y: slot.centre.y + at.by.y },
  })) ?? [];

/** Lines that a name may be written in. */
interface Way {
  readonly slots: readonly LabelSlot[];
  readonly price: number;
}

/** A name in the lines of the wiring, and in other lines. */
function waysOf(placed: PlacedPart, size: number, values: boolean): readonly Way[] {
  const usual = namesOf(placed, size, values);
  if (usual.length === 0) return [];
  const others = nameWays(placed.part.label);
  return [
    { slots: usual, price: 0 },
    ...others.map((lines) => ({ slots: linesOf(placed, lines, size), price: PRICE.lines })),
  ];
}

/** The beginnings of a name. */
function shortOf(placed: PlacedPart, size: number): readonly Way[] {
  const letters = [...placed.part.label];
  return SHORT.filter((count) => count < letters.length).flatMap((count) =>
    nameWays(`${letters.slice(0, count).join('').trimEnd()}…`).map((lines) => ({
      slots: linesOf(placed, lines, size),
      price: PRICE.short + PRICE.letter * (SHORT[0] - count),
    })),
  );
}

/** Whether a name may stand so at no price. */
function isFree({ part, frame, outline }: PlacedPart, room: Rect): boolean {
  const body = rectToSheet(frame, outline.body);
  return is(part, 'component') ? gap(room, body) <= USUAL.near : near(room, body) && inside(room, body);
}

/** Each way where the name stands in the wiring, and moved from there. */
function* nameSpots(placed: PlacedPart, ways: readonly Way[], care: Care): Generator<Written> {
  const { part, frame, outline } = placed;
  const body = rectToSheet(frame, outline.body);
  const component = is(part, 'component');
  for (const { slots, price } of ways) {
    const room = airy(slots);
    const { width, height } = room;
    for (const by of movesOf(care)) {
      const { x, y } = by;
      const rect = { x: room.x + x, y: room.y + y, width, height };
      // A component's name stands at its body, whichever side of it.
      const aside = !component && !near(rect, body);
      const far = component || aside ? gap(rect, body) : 0;
      if (component ? far > care.near : aside && far > (care.beside ?? -1)) continue;
      const leader = far > USUAL.near ? leaderBetween(body, rect) : undefined;
      const out =
        component || inside(rect, body)
          ? 0
          : aside
            ? PRICE.aside + PRICE.beyond * beyond(rect, body)
            : PRICE.out + PRICE.beyond * beyond(rect, body);
      yield {
        centre: centreOf(rect),
        room: rect,
        slots,
        by,
        price: price + Math.abs(x) + Math.abs(y) + out + (leader ? PRICE.leader + PRICE.reach * far : 0),
        ...(leader ? { leader } : {}),
      };
    }
  }
}

/** Between two rectangles the shortest way, or nearly. */
function leaderBetween(from: Rect, to: Rect): Leader {
  const on = ({ x, y, width, height }: Rect, p: Point): Point => ({
    x: Math.min(Math.max(p.x, x), x + width),
    y: Math.min(Math.max(p.y, y), y + height),
  });
  const start = on(from, centreOf(to));
  return [start, on(to, start)];
}

const movesOf = remembered(({ step, across, down }: Care): readonly Point[] => {
  const columns = 2 * across + 1;
  return Array.from({ length: columns * (2 * down + 1) }, (_, i) => ({
    x: ((i % columns) - across) * step,
    y: (Math.floor(i / columns) - down) * step,
  }));
});

/** How far words stand out of a part, either way together. */
const beyond = (words: Rect, body: Rect): number =>
  Math.max(0, words.width - body.width) + Math.max(0, words.height - body.height);

/** Between two rectangles. */
const gap = (r: Rect, s: Rect): number =>
  Math.max(0, s.x - r.x - r.width, r.x - s.x - s.width, s.y - r.y - r.height, r.y - s.y - s.height);

/** Whether the middle of words is on a part. */
function near(words: Rect, { x, y, width, height }: Rect): boolean {
  const [across, down] = [words.x + words.width / 2, words.y + words.height / 2];
  return across >= x && down >= y && across <= x + width && down <= y + height;
}

/** Far from everything, where nothing is in the way of nothing. */
const NOWHERE = around(-1e6, -1e6, 0, 0);

/** A component's value on any side of its body, or nowhere. */
function* valueSpots(placed: PlacedPart, size: number): Generator<Written> {
  const { frame, outline } = placed;
  const body = rectToSheet(frame, outline.body);
  const { x, y } = centreOf(body);
  const usual = valuesOf(placed, size);
  if (usual.length === 0) return;
  yield standing(usual, 0);
  const text = usual.map((slot) => slot.text).join(' ');
  const { width, height } = roomOf({ ...nth(usual, 0), text });
  const [across, down] = [(body.width + width) / 2 + BESIDE, (body.height + height) / 2 + BESIDE];
  const line = (centre: Point, price: number): Written =>
    standing([{ ...nth(usual, 0), text, centre }], price);
  for (let slide = 0; slide <= USUAL.across; slide++)
    for (const way of slide === 0 ? [0] : [-1, 1]) {
      const off = slide * way * USUAL.step;
      yield line({ x: x + off, y: y + down }, 10 + 2 * Math.abs(off));
      yield line({ x: x + off, y: y - down }, 20 + 2 * Math.abs(off));
      if (Math.abs(off) > body.height / 2 + height) continue;
      yield line({ x: x + across, y: y + off }, 30 + 2 * Math.abs(off));
      yield line({ x: x - across, y: y + off }, 30 + 2 * Math.abs(off));
    }
  // Nowhere: the list of joints tells it too.
  yield { centre: { x, y }, room: NOWHERE, slots: [], by: UNMOVED, price: PRICE.left };
}
