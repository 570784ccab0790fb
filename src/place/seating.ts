/** Where every part stands to begin with: on its seat where the arrangement has one, else where the layered layout puts it. */
import { PITCH } from '../common/geometry.ts';
import type { Hand } from '../describe/kit.ts';
import {
  is,
  isPickup,
  mayMirror,
  type Orientation,
  orientationsOf,
  type Part,
  seatOf,
} from '../parts/index.ts';
import type { Outline } from '../parts/outline.ts';
import type { Arrangement } from './arrangement.ts';
import type { GridPart } from './placement.ts';
import { boxOf, clash } from './settle.ts';

export interface Seed {
  readonly x: number;
  readonly y: number;
}

export interface Outlined {
  readonly part: Part;
  readonly outline: Outline;
}

/**
 * Every part's first stand.
 *
 * A left-handed build has its seats the other way round, left for right. Pots and switches stay what they are, since
 * the same parts are sold to both hands; pickups and jacks turn their leads towards the middle.
 *
 * @param by how far seats move outwards, 1 for as the arrangement says
 */
export function initialPlacement(
  parts: readonly Outlined[],
  arrangement: Arrangement,
  hand: Hand,
  laid: ReadonlyMap<string, Seed>,
  by: number,
): readonly GridPart[] {
  const seeds = inOrder(parts, laid);
  const seated: GridPart[] = [];
  const seats = seatsOf(
    parts.map(({ part }) => part),
    arrangement,
  );
  return parts.map(({ part, outline }): GridPart => {
    const seat = seats.get(part.name);
    const seed = seeds.get(part.name) ?? { x: 0, y: 0 };
    const loose: GridPart = {
      part,
      outline,
      column: Math.round(seed.x / PITCH),
      row: Math.round(seed.y / PITCH),
      turn: 0,
      mirror: false,
      fixed: false,
      turnable: true,
    };
    if (!seat) return loose;
    const gridPart: GridPart = {
      ...loose,
      ...seat,
      column: Math.round(seat.column * by),
      row: Math.round(seat.row * by),
      fixed: true,
    };
    const placed = hand === 'left' ? otherHand(gridPart) : gridPart;
    // A kit may have more parts than the arrangement has room for; who finds the seat taken looks for a place.
    if (seated.some((other) => clash(boxOf(other), boxOf(placed), 1))) return { ...placed, fixed: false };
    seated.push(placed);
    return placed;
  });
}

/**
 * Pickups in the places the layout has for them, but from top to bottom in the order written, as on the instrument, and
 * none over another: in series the layout puts them side by side.
 */
function inOrder(parts: readonly Outlined[], laid: ReadonlyMap<string, Seed>): ReadonlyMap<string, Seed> {
  const pickups = parts.filter(({ part }) => isPickup(part));
  const places = pickups
    .flatMap(({ part }) => laid.get(part.name) ?? [])
    .sort((a, b) => a.y - b.y || a.x - b.x);
  const left = Math.min(...places.map(({ x }) => x));
  const ordered = new Map(laid);
  let free = Number.NEGATIVE_INFINITY;
  pickups.forEach(({ part, outline }, i) => {
    const y = Math.max(places[i]?.y ?? 0, free);
    ordered.set(part.name, { x: left, y });
    free = y + outline.height + BELOW * PITCH;
  });
  return ordered;
}
/** Grid units between one pickup and the next. */
const BELOW = 2;

function otherHand(gridPart: GridPart): GridPart {
  const { x0, x1 } = boxOf(gridPart);
  return {
    ...gridPart,
    column: -x0 - (x1 - x0),
    mirror: mayMirror(gridPart.part) ? !gridPart.mirror : gridPart.mirror,
  };
}

/**
 * A component on its head is one with its legs exchanged, and has its words below its name; what is seated as a pot stands upright
 * where its words have no room otherwise, as those of a push-pull pot.
 */
function standingOf(part: Part, { turn, mirror }: Orientation): Orientation {
  if (is(part, 'component') && turn === 2) return { turn: 0, mirror: !mirror };
  const hasRoom = !is(part, 'pot') || orientationsOf(part).some((way) => way.turn === turn);
  return { turn: hasRoom ? turn : 0, mirror };
}

type Seat = Pick<GridPart, 'column' | 'row' | 'turn' | 'mirror' | 'turnable'>;

/** By name the seat of each part that the arrangement has one for; where wires need room, seats move apart from there. */
export function seatsOf(parts: readonly Part[], arrangement: Arrangement): ReadonlyMap<string, Seat> {
  const taken = new Map<string, Seat>();
  for (const seat of arrangement.seats)
    parts
      .filter((part) => seatOf(part) === seat.seat)
      .forEach((part, i) => {
        const row = seat.wrap ? Math.floor(i / seat.wrap.after) : 0;
        const nth = seat.wrap ? i % seat.wrap.after : i;
        taken.set(part.name, {
          column: seat.at[0] + nth * seat.step[0] + row * (seat.wrap?.step[0] ?? 0),
          row: seat.at[1] + nth * seat.step[1] + row * (seat.wrap?.step[1] ?? 0),
          ...standingOf(part, { turn: seat.turn ?? 0, mirror: seat.mirror ?? false }),
          turnable: seat.turn === undefined && seat.mirror === undefined,
        });
      });
  return taken;
}
