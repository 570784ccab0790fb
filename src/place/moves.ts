/** Another placement, one step away: what a search tries. */
import { nth } from '../common/must.ts';
import type { Joint } from '../describe/kit.ts';
import { type Orientation, orientationsOf } from '../parts/index.ts';
import { type GridPart, looseOnes } from './placement.ts';
import { lugOffsets, type Move, type Places, WAYS, wayOf } from './places.ts';
import { boxOf } from './settle.ts';

type Random = () => number;

/** A part turned about its middle. */
export function turnedTo(gridPart: GridPart, { turn, mirror }: Orientation): GridPart {
  const turned = { ...gridPart, turn, mirror };
  const [a, b] = [boxOf(gridPart), boxOf(turned)];
  return {
    ...turned,
    column: Math.round((a.x0 + a.x1 - b.x1 + b.x0) / 2),
    row: Math.round((a.y0 + a.y1 - b.y1 + b.y0) / 2),
  };
}

/** One end of a joint as seen from its other end: the middles of the own lug and of the other part's, and that part. */
interface Tie {
  readonly own: Int32Array;
  readonly other: number;
  readonly theirs: Int32Array;
}

/** What kind of step is drawn: shares of all. */
const [ASIDE, TURN, BESIDE] = [0.4, 0.55, 0.85] as const;
/** A loose part goes aside by no more than this: half of them only a little. */
const [NEAR, FAR] = [2, 8] as const;
/** How far from the lug it is joined to the lug of a part that is brought beside another may come to lie. */
const ROUND = 6;

/** Draws steps for the loose parts of a placement. */
export class Moves {
  readonly loose: readonly number[];
  readonly #fixed: readonly boolean[];
  readonly #ways: readonly (readonly number[])[];
  readonly #ties: readonly (readonly Tie[])[];

  /** @param joints with other parts or their own */
  constructor(gridParts: readonly GridPart[], joints: readonly Joint[]) {
    this.loose = looseOnes(gridParts);
    this.#fixed = gridParts.map(({ fixed }) => fixed);
    this.#ways = gridParts.map(({ part, outline, turnable }) =>
      turnable ? orientationsOf(part, outline).map(wayOf) : [],
    );
    const number = new Map(gridParts.map(({ part }, i) => [part.name, i]));
    this.#ties = gridParts.map((gridPart) =>
      joints.flatMap(({ from, to }): Tie[] => {
        if (from.part === to.part) return [];
        const ends = from.part === gridPart.part.name ? [from, to] : [to, from];
        const [near, far] = [nth(ends, 0), nth(ends, 1)];
        const other = number.get(far.part);
        if (near.part !== gridPart.part.name || other === undefined) return [];
        return [
          {
            own: lugOffsets(gridPart, near.lug),
            other,
            theirs: lugOffsets(nth(gridParts, other), far.lug),
          },
        ];
      }),
    );
  }

  /**
   * A loose part moved, turned, brought beside one that it is joined to, or exchanged with another.
   *
   * @param into where the step is written
   * @returns false where the step that was drawn changes nothing
   */
  draw(places: Places, random: Random, into: Move): boolean {
    into.clear();
    const i = nth(this.loose, Math.floor(random() * this.loose.length));
    const kind = this.#fixed[i] ? ASIDE : random();
    if (kind < ASIDE) {
      const reach = random() < 0.5 ? NEAR : FAR;
      const off = (): number => Math.floor(random() * (2 * reach + 1)) - reach;
      const column = nth(places.column, i) + off();
      into.add(i, column, nth(places.row, i) + off(), nth(places.way, i));
    } else if (kind < TURN) this.#turn(places, i, random, into);
    else if (kind < BESIDE) this.#beside(places, i, random, into);
    else this.#exchange(places, i, random, into);
    return into.count > 0;
  }

  /** A way other than the part stands in; its own where it has no other. */
  #otherWay(i: number, now: number, random: Random): number {
    const ways = nth(this.#ways, i);
    if (ways.length < 2) return now;
    const drawn = Math.floor(random() * (ways.length - 1));
    const at = ways.indexOf(now);
    return nth(ways, drawn < at ? drawn : drawn + 1);
  }

  #turn(places: Places, i: number, random: Random, into: Move): void {
    const now = nth(places.way, i);
    const way = this.#otherWay(i, now, random);
    if (way === now) return;
    const { width, height } = places;
    const aside = nth(width, i * WAYS + now) - nth(width, i * WAYS + way);
    const down = nth(height, i * WAYS + now) - nth(height, i * WAYS + way);
    const column = Math.round(nth(places.column, i) + aside / 2);
    into.add(i, column, Math.round(nth(places.row, i) + down / 2), way);
  }

  /** The part where one of its lugs comes near the lug it is joined to, turned otherwise in half of the cases. */
  #beside(places: Places, i: number, random: Random, into: Move): void {
    const ties = nth(this.#ties, i);
    if (ties.length === 0) return;
    const { own, other, theirs } = nth(ties, Math.floor(random() * ties.length));
    const now = nth(places.way, i);
    const way = random() < 0.5 ? this.#otherWay(i, now, random) : now;
    const there = nth(places.way, other);
    const off = (): number => Math.floor(random() * (2 * ROUND + 1)) - ROUND;
    const column = nth(places.column, other) + nth(theirs, 2 * there) - nth(own, 2 * way) + off();
    const row = nth(places.row, other) + nth(theirs, 2 * there + 1) - nth(own, 2 * way + 1) + off();
    into.add(i, column, row, way);
  }

  #exchange(places: Places, i: number, random: Random, into: Move): void {
    const k = nth(this.loose, Math.floor(random() * this.loose.length));
    if (k === i || this.#fixed[k]) return;
    const { column, row, way } = places;
    into.add(i, nth(column, k), nth(row, k), nth(way, i));
    into.add(k, nth(column, i), nth(row, i), nth(way, k));
  }
}
