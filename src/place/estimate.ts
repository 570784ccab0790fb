/**
 * What a placement would cost without a wire being laid: for every joint the least that its wire must pay on an empty sheet,
 * straight lines that cross, parts that stand too near. A few microseconds a move, so that thousands can be tried where only some
 * hundreds can be routed. It ranks good placements badly among themselves: they are routed to tell the best.
 */
import { lugIdOf } from '../circuit/circuit.ts';
import { PITCH } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import type { Joint } from '../describe/kit.ts';
import { directionToSheet, toSheet } from './frame.ts';
import { type Column, Lanes } from './lanes.ts';
import { Lines } from './lines.ts';
import { type GridPart, standing } from './placement.ts';
import { Move, Places, turnedThus, WAYS } from './places.ts';
import { leastBends } from './route/bends.ts';
import { legExcess } from './route/route.ts';
import { loosePickups, SPRAWL_UNLAID, untidiness } from './tidiness.ts';
import { frameOf, heading, LEG_WEIGHT } from './wiring.ts';

/** In the router's own units, half grid steps: see `route/route.ts`. */
const STEP = 2;
const BEND = 10;
/** Less than a crossing costs there: wires may go round what their straight lines cross. */
const CROSSING = 44;
/** A pair of parts nearer than is wanted, and every grid step that is missing. */
const NEAR = 60;
const NEARER = 12;

/** The ways into a lug, from the part's own column and row: column, row, heading outwards and price, one after another. */
type Ways = Int32Array;
const FIELDS = 4;

/** Parts nearer than this, grid units, are all but one on the other: worth more than any number of pairs that are merely near. */
const LEAST = 2;
const TOUCHING = 1000;
/** And such as overlap, which must never be. */
export const OVERLAPPING = 1_000_000;

export class Estimate {
  readonly #between: number;
  /** Of a column. */
  readonly #lanes: Lanes | undefined;
  /** Numbers of the parts at the two ends of each joint, and of the lugs. */
  readonly #from: Int32Array;
  readonly #to: Int32Array;
  readonly #fromLug: Int32Array;
  readonly #toLug: Int32Array;
  /** What a grid step of each joint costs. */
  readonly #step: Int32Array;
  /** Names of the lugs, by number. */
  readonly #lugs: readonly string[];
  /** Numbers of the joints of each part. */
  readonly #of: readonly (readonly number[])[];
  /** By lug and orientation. */
  readonly #ways: (Ways | undefined)[] = [];
  readonly #pickups: readonly number[];
  readonly #places: Places;
  readonly #gridParts: readonly GridPart[];
  readonly #lines: Lines;
  #wires = 0;
  #crossings = 0;
  #crowding = 0;
  #nearPairs = 0;
  /** What was before the last move. */
  readonly #before = new Move();
  readonly #sums = { wires: 0, crossings: 0, crowding: 0, nearPairs: 0 };
  #standing: readonly GridPart[];
  /** Joints of the last move, and whether it still has to be counted. */
  #moved: readonly number[] = [];
  #pending = false;

  /**
   * @param joints those that need a way across the sheet
   * @param between room wanted between parts, grid units
   * @param column that no part may leave; without it there is none
   */
  constructor(gridParts: readonly GridPart[], joints: readonly Joint[], between: number, column?: Column) {
    const number = new Map(gridParts.map(({ part }, i) => [part.name, i]));
    const ends = joints.flatMap(({ from, to }) => [from, to]);
    const ids = [...new Set(ends.map(lugIdOf))];
    const lugNumber = new Map(ids.map((id, i) => [id, i]));
    const numbers = (of: (joint: Joint) => number): Int32Array => Int32Array.from(joints, of);
    this.#between = between;
    this.#lanes = column ? new Lanes(gridParts, joints, column) : undefined;
    this.#from = numbers(({ from }) => number.get(from.part) ?? 0);
    this.#to = numbers(({ to }) => number.get(to.part) ?? 0);
    this.#fromLug = numbers(({ from }) => lugNumber.get(lugIdOf(from)) ?? 0);
    this.#toLug = numbers(({ to }) => lugNumber.get(lugIdOf(to)) ?? 0);
    this.#step = numbers(({ kind }) => STEP * (kind === 'leg' ? LEG_WEIGHT : 1));
    this.#lugs = ids.map((id) => ends.find((end) => lugIdOf(end) === id)?.lug ?? '');
    const all = [...joints.keys()];
    // Such as end at a common lug fan out from it.
    const others = all.map((k) => {
      const own = [this.#fromLug[k], this.#toLug[k]];
      return Int32Array.from(
        all.filter((m) => m !== k && !own.includes(this.#fromLug[m]) && !own.includes(this.#toLug[m])),
      );
    });
    this.#of = gridParts.map((_, i) => all.filter((k) => this.#from[k] === i || this.#to[k] === i));
    this.#pickups = loosePickups(gridParts);
    this.#places = new Places(gridParts);
    this.#gridParts = gridParts;
    this.#standing = gridParts;
    this.#lines = new Lines(others);
    for (const k of all) this.#draw(k);
    this.#wires = all.reduce((sum, k) => sum + this.#lines.cost(k), 0);
    for (const k of all) this.#crossings += this.#lines.recount(all, k);
    this.#lines.settle(all);
    // Each pair is met from both its parts.
    for (const i of gridParts.keys()) this.#crowd(i, -1, 1);
    this.#crowding /= 2;
    this.#nearPairs /= 2;
  }

  /** Where the parts stand now, for reading. */
  get places(): Places {
    return this.#places;
  }

  get gridParts(): readonly GridPart[] {
    return this.#places.gridParts;
  }

  get cost(): number {
    return this.#wires + CROSSING * this.#crossings + this.#crowding + this.#spread() + this.#jams();
  }

  /** How many pairs of parts are nearer than the room wanted between them, those that touch counted far more. */
  get nearPairs(): number {
    return this.#nearPairs;
  }

  /**
   * Stands parts elsewhere, and answers the cost then; `undo` takes that back. Where the cost would be more than `most` it answers
   * `undefined`, mostly long before all is reckoned, and nothing has changed.
   */
  apply(move: Move, most = Number.POSITIVE_INFINITY): number | undefined {
    if (this.#pending) this.#lines.settle(this.#moved);
    this.#pending = false;
    const joints = this.#jointsOf(move);
    this.#remember();
    for (const k of joints) this.#wires -= this.#lines.cost(k);
    this.#crossings -= this.#lines.crossingsAmong(joints);
    this.#crowdMoved(move, -1);
    this.#stand(move);
    this.#crowdMoved(move, 1);
    const spread = this.#spread();
    this.#moved = joints;
    const rest = (): number => this.#wires + CROSSING * this.#crossings + this.#crowding + spread;
    if (rest() > most) return this.#refuse(0);
    for (let n = 0; n < joints.length; n++) {
      const k = joints[n] ?? 0;
      this.#draw(k);
      this.#wires += this.#lines.cost(k);
      if (rest() > most) return this.#refuse(n + 1);
    }
    for (let n = 0; n < joints.length; n++) {
      this.#crossings += this.#lines.recount(joints, n);
      if (rest() > most) return this.#refuse(joints.length);
    }
    const cost = rest() + this.#jams();
    if (cost > most) return this.#refuse(joints.length);
    this.#pending = true;
    return cost;
  }

  /** Takes the last move back, once. */
  undo(): void {
    this.#refuse(this.#moved.length);
    this.#pending = false;
  }

  /** Puts back what was, where so many of the moved joints have been drawn anew. */
  #refuse(drawn: number): undefined {
    const { part, column, row, way, count } = this.#before;
    for (let m = 0; m < count; m++) this.#places.set(nth(part, m), nth(column, m), nth(row, m), nth(way, m));
    this.#places.known = this.#standing;
    for (let n = 0; n < drawn; n++) this.#lines.putBack(this.#moved[n] ?? 0);
    const { wires, crossings, crowding, nearPairs } = this.#sums;
    this.#wires = wires;
    this.#crossings = crossings;
    this.#crowding = crowding;
    this.#nearPairs = nearPairs;
    this.#before.clear();
    return undefined;
  }

  #remember(): void {
    this.#standing = this.#places.known;
    this.#sums.wires = this.#wires;
    this.#sums.crossings = this.#crossings;
    this.#sums.crowding = this.#crowding;
    this.#sums.nearPairs = this.#nearPairs;
  }

  #stand(move: Move): void {
    const places = this.#places;
    this.#before.clear();
    for (let m = 0; m < move.count; m++) {
      const i = move.part[m] ?? 0;
      this.#before.add(i, places.column[i] ?? 0, places.row[i] ?? 0, places.way[i] ?? 0);
      places.set(i, move.column[m] ?? 0, move.row[m] ?? 0, move.way[m] ?? 0);
    }
  }

  #crowdMoved({ count, part }: Move, by: 1 | -1): void {
    for (let m = 0; m < count; m++) this.#crowd(part[m] ?? 0, m === 1 ? (part[0] ?? 0) : -1, by);
  }

  #jointsOf({ count, part }: Move): readonly number[] {
    const first = this.#of[part[0] ?? -1] ?? [];
    if (count < 2) return first;
    return [...first, ...nth(this.#of, nth(part, 1)).filter((k) => !first.includes(k))];
  }

  /** Draws a joint's line anew: between the cheapest pair of ways into its two lugs. */
  #draw(k: number): void {
    const a = this.#from[k] ?? 0;
    const b = this.#to[k] ?? 0;
    const { column, row } = this.#places;
    const starts = this.#waysInto(a, this.#fromLug[k] ?? 0);
    const ends = this.#waysInto(b, this.#toLug[k] ?? 0);
    const step = this.#step[k] ?? STEP;
    const ax = column[a] ?? 0;
    const ay = row[a] ?? 0;
    const bx = column[b] ?? 0;
    const by = row[b] ?? 0;
    let least = 1e9;
    let [fromX, fromY, toX, toY] = [ax, ay, bx, by];
    for (let s = 0; s < starts.length; s += FIELDS) {
      const x1 = ax + (starts[s] ?? 0);
      const y1 = ay + (starts[s + 1] ?? 0);
      for (let e = 0; e < ends.length; e += FIELDS) {
        const x2 = bx + (ends[e] ?? 0);
        const y2 = by + (ends[e + 1] ?? 0);
        const far = Math.abs(x2 - x1) + Math.abs(y2 - y1);
        const long = step > STEP ? legExcess(far) : 0;
        const plain = step * far + long + (starts[s + 3] ?? 0) + (ends[e + 3] ?? 0);
        if (plain >= least) continue;
        const arriving = ((ends[e + 2] ?? 0) + 2) & 3;
        const cost = plain + BEND * leastBends(starts[s + 2] ?? 0, arriving, x2 - x1, y2 - y1);
        if (cost >= least) continue;
        least = cost;
        fromX = x1;
        fromY = y1;
        toX = x2;
        toY = y2;
      }
    }
    this.#lines.draw(k, fromX, fromY, toX, toY, least);
  }

  #waysInto(part: number, lug: number): Ways {
    const way = this.#places.way[part] ?? 0;
    const key = lug * WAYS + way;
    const known = this.#ways[key];
    if (known) return known;
    const turned = turnedThus(nth(this.#gridParts, part), way);
    const frame = frameOf({ ...turned, column: 0, row: 0 }, 0, 0);
    const ports = standing(turned).lugs.find((one) => one.lug === this.#lugs[lug])?.ports ?? [];
    const ways = Int32Array.from(
      ports.flatMap(({ node, inward, price = 0 }) => {
        const p = toSheet(frame, node);
        const outward = (heading(directionToSheet(frame, inward)) + 2) & 3;
        return [Math.round(p.x / PITCH), Math.round(p.y / PITCH), outward, price];
      }),
    );
    this.#ways[key] = ways;
    return ways;
  }

  /** Adds (`by` 1) or takes away (`by` −1) what pairs of a part with all others but one lack in room. */
  #crowd(i: number, but: number, by: 1 | -1): void {
    const { column, row, way, width, height, count } = this.#places;
    const between = this.#between;
    const touching = between - Math.min(LEAST, between);
    const x0 = column[i] ?? 0;
    const y0 = row[i] ?? 0;
    const x1 = x0 + (width[i * WAYS + (way[i] ?? 0)] ?? 0);
    const y1 = y0 + (height[i * WAYS + (way[i] ?? 0)] ?? 0);
    for (let k = 0; k < count; k++) {
      if (k === i || k === but) continue;
      const left = column[k] ?? 0;
      const right = left + (width[k * WAYS + (way[k] ?? 0)] ?? 0);
      const across = Math.min(x1, right) - Math.max(x0, left) + between;
      if (across <= 0) continue;
      const top = row[k] ?? 0;
      const bottom = top + (height[k * WAYS + (way[k] ?? 0)] ?? 0);
      const down = Math.min(y1, bottom) - Math.max(y0, top) + between;
      if (down <= 0) continue;
      const least = Math.min(across, down);
      this.#crowding += by * (NEAR + NEARER * least);
      this.#nearPairs += by * (least >= between ? OVERLAPPING : least > touching ? TOUCHING : 1);
    }
  }

  #jams(): number {
    return this.#lanes?.price(this.#places, this.#lines) ?? 0;
  }

  #spread(): number {
    const { column, row, way, width, height, count } = this.#places;
    let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = 0; i < count; i++) {
      const x = column[i] ?? 0;
      const y = row[i] ?? 0;
      const turned = i * WAYS + (way[i] ?? 0);
      left = Math.min(left, x);
      top = Math.min(top, y);
      right = Math.max(right, x + (width[turned] ?? 0));
      bottom = Math.max(bottom, y + (height[turned] ?? 0));
    }
    const across = this.#lanes ? OVERLAPPING * this.#lanes.outside(left, right) : right - left;
    return SPRAWL_UNLAID * Math.round(across + bottom - top) + untidiness(this.#places, this.#pickups);
  }
}
