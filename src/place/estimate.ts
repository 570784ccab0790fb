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
import { type GridPart, standing } from './placement.ts';
import { leastBends } from './route/bends.ts';
import { legExcess } from './route/route.ts';
import { type Box, boxOf } from './settle.ts';
import { loosePickups, SPRAWL_UNLAID, spread } from './tidiness.ts';
import { frameOf, heading, LEG_WEIGHT } from './wiring.ts';

/** In the router's own units, half grid steps: see `route/route.ts`. */
const STEP = 2;
const BEND = 10;
/** Less than a crossing costs there: wires may go round what their straight lines cross. */
const CROSSING = 36;
/** A pair of parts nearer than is wanted, and every grid step that is missing. */
const NEAR = 60;
const NEARER = 12;

/** The ways into a lug, from the part's own column and row: column, row, heading outwards and price, one after another. */
type Ways = Int32Array;
const FIELDS = 4;

/** Parts nearer than this, grid units, are all but one on the other: worth more than any number of pairs that are merely near. */
const LEAST = 2;
const TOUCHING = 1000;

/** Of a joint: the straight line from way to way, its box, and what its wire costs at least. */
const [X1, Y1, X2, Y2, LEFT, TOP, RIGHT, BOTTOM, COST] = [0, 1, 2, 3, 4, 5, 6, 7, 8] as const;
const LINE = 9;

export class Estimate {
  readonly #between: number;
  /** Numbers of the parts at the two ends of each joint, and of the lugs. */
  readonly #from: Int32Array;
  readonly #to: Int32Array;
  readonly #fromLug: Int32Array;
  readonly #toLug: Int32Array;
  /** What a grid step of each joint costs. */
  readonly #step: Int32Array;
  /** Names of the lugs, by number. */
  readonly #lugs: readonly string[];
  /** By joint and joint: 1 where they end at a common lug. */
  readonly #meet: Uint8Array;
  /** Numbers of the joints of each part. */
  readonly #of: readonly (readonly number[])[];
  /** By lug and orientation. */
  readonly #ways: (Ways | undefined)[] = [];
  readonly #pickups: readonly number[];
  #parts: readonly GridPart[];
  #boxes: Box[];
  /** `LINE` figures a joint. */
  readonly #lines: Int32Array;
  #wires = 0;
  #crossings = 0;
  #crowding = 0;
  #nearPairs = 0;
  /** What was before the last move. */
  readonly #saved: Int32Array;
  #undo: (() => void) | undefined;

  /**
   * @param joints those that need a way across the sheet
   * @param between room wanted between parts, grid units
   */
  constructor(gridParts: readonly GridPart[], joints: readonly Joint[], between: number) {
    const number = new Map(gridParts.map(({ part }, i) => [part.name, i]));
    const ends = joints.flatMap(({ from, to }) => [from, to]);
    const ids = [...new Set(ends.map(lugIdOf))];
    const lugNumber = new Map(ids.map((id, i) => [id, i]));
    const numbers = (of: (joint: Joint) => number): Int32Array => Int32Array.from(joints, of);
    this.#between = between;
    this.#from = numbers(({ from }) => number.get(from.part) ?? 0);
    this.#to = numbers(({ to }) => number.get(to.part) ?? 0);
    this.#fromLug = numbers(({ from }) => lugNumber.get(lugIdOf(from)) ?? 0);
    this.#toLug = numbers(({ to }) => lugNumber.get(lugIdOf(to)) ?? 0);
    this.#step = numbers(({ kind }) => STEP * (kind === 'leg' ? LEG_WEIGHT : 1));
    this.#lugs = ids.map((id) => ends.find((end) => lugIdOf(end) === id)?.lug ?? '');
    this.#meet = Uint8Array.from({ length: joints.length ** 2 }, (_, i) => {
      const [k, m] = [Math.floor(i / joints.length), i % joints.length];
      const own = [this.#fromLug[k], this.#toLug[k]];
      return own.includes(this.#fromLug[m]) || own.includes(this.#toLug[m]) ? 1 : 0;
    });
    const all = [...joints.keys()];
    this.#of = gridParts.map((_, i) => all.filter((k) => this.#from[k] === i || this.#to[k] === i));
    this.#pickups = loosePickups(gridParts);
    this.#parts = gridParts;
    this.#boxes = gridParts.map(boxOf);
    this.#lines = new Int32Array(joints.length * LINE);
    this.#saved = new Int32Array(joints.length * LINE);
    for (const k of all) this.#draw(k);
    this.#wires = all.reduce((sum, k) => sum + (this.#lines[k * LINE + COST] ?? 0), 0);
    this.#crossings = this.#crossingsOf(all);
    this.#crowd([...gridParts.keys()], 1);
  }

  get gridParts(): readonly GridPart[] {
    return this.#parts;
  }

  get cost(): number {
    return (
      this.#wires +
      CROSSING * this.#crossings +
      this.#crowding +
      spread(this.#parts, this.#boxes, this.#pickups, SPRAWL_UNLAID)
    );
  }

  /** How many pairs of parts are nearer than the room wanted between them, those that touch counted far more. */
  get nearPairs(): number {
    return this.#nearPairs;
  }

  /** Stands parts elsewhere, and answers the cost then; `undo` takes the last move back. */
  move(next: readonly GridPart[]): number {
    const before = this.#parts;
    const moved: number[] = [];
    for (let i = 0; i < next.length; i++) if (next[i] !== before[i]) moved.push(i);
    const joints = this.#jointsOf(moved);
    const boxes = moved.map((i) => nth(this.#boxes, i));
    const [wires, crossings, crowding] = [this.#wires, this.#crossings, this.#crowding];
    const nearPairs = this.#nearPairs;
    this.#undo = () => {
      this.#parts = before;
      for (const k of joints)
        for (let field = k * LINE; field < (k + 1) * LINE; field++)
          this.#lines[field] = this.#saved[field] ?? 0;
      moved.forEach((i, n) => {
        this.#boxes[i] = nth(boxes, n);
      });
      [this.#wires, this.#crossings, this.#crowding] = [wires, crossings, crowding];
      this.#nearPairs = nearPairs;
    };
    this.#crossings -= this.#crossingsOf(joints);
    this.#crowd(moved, -1);
    this.#parts = next;
    for (const i of moved) this.#boxes[i] = boxOf(nth(next, i));
    for (const k of joints) {
      for (let field = k * LINE; field < (k + 1) * LINE; field++)
        this.#saved[field] = this.#lines[field] ?? 0;
      this.#draw(k);
      this.#wires += (this.#lines[k * LINE + COST] ?? 0) - (this.#saved[k * LINE + COST] ?? 0);
    }
    this.#crossings += this.#crossingsOf(joints);
    this.#crowd(moved, 1);
    return this.cost;
  }

  undo(): void {
    this.#undo?.();
  }

  #jointsOf(moved: readonly number[]): readonly number[] {
    const [only, second] = moved;
    const first = this.#of[only ?? -1] ?? [];
    if (second === undefined) return first;
    return [...first, ...(this.#of[second] ?? []).filter((k) => !first.includes(k))];
  }

  /** Draws a joint's line anew: between the cheapest pair of ways into its two lugs. */
  #draw(k: number): void {
    const [a, b] = [nth(this.#parts, nth(this.#from, k)), nth(this.#parts, nth(this.#to, k))];
    const starts = this.#waysInto(a, nth(this.#fromLug, k));
    const ends = this.#waysInto(b, nth(this.#toLug, k));
    const [lines, at, step] = [this.#lines, k * LINE, this.#step[k] ?? STEP];
    const [ax, ay, bx, by] = [a.column, a.row, b.column, b.row];
    let least = 1e9;
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
        lines[at + X1] = x1;
        lines[at + Y1] = y1;
        lines[at + X2] = x2;
        lines[at + Y2] = y2;
      }
    }
    lines[at + COST] = least;
    this.#box(at);
  }

  /** Tells the box of a line. */
  #box(at: number): void {
    const lines = this.#lines;
    const x1 = lines[at + X1] ?? 0;
    const y1 = lines[at + Y1] ?? 0;
    const x2 = lines[at + X2] ?? 0;
    const y2 = lines[at + Y2] ?? 0;
    lines[at + LEFT] = Math.min(x1, x2);
    lines[at + RIGHT] = Math.max(x1, x2);
    lines[at + TOP] = Math.min(y1, y2);
    lines[at + BOTTOM] = Math.max(y1, y2);
  }

  #waysInto(gridPart: GridPart, lug: number): Ways {
    const key = lug * 8 + gridPart.turn * 2 + (gridPart.mirror ? 1 : 0);
    const known = this.#ways[key];
    if (known) return known;
    const frame = frameOf({ ...gridPart, column: 0, row: 0 }, 0, 0);
    const ports = standing(gridPart).lugs.find((one) => one.lug === this.#lugs[lug])?.ports ?? [];
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

  /** Crossings of some lines with all lines, each once; those that end at one lug fan out from it. */
  #crossingsOf(some: readonly number[]): number {
    const count = this.#step.length;
    let found = 0;
    for (let i = 0; i < some.length; i++) {
      const k = some[i] ?? 0;
      for (let m = 0; m < count; m++)
        if (m !== k && this.#meet[k * count + m] === 0 && this.#cross(k, m))
          // A pair of which both have moved is met twice.
          found += some.includes(m) ? 1 : 2;
    }
    return found / 2;
  }

  /** Whether two straight lines cross, their ends left out. */
  #cross(k: number, m: number): boolean {
    const [lines, a, b] = [this.#lines, k * LINE, m * LINE];
    if ((lines[a + RIGHT] ?? 0) < (lines[b + LEFT] ?? 0)) return false;
    if ((lines[a + LEFT] ?? 0) > (lines[b + RIGHT] ?? 0)) return false;
    if ((lines[a + BOTTOM] ?? 0) < (lines[b + TOP] ?? 0)) return false;
    if ((lines[a + TOP] ?? 0) > (lines[b + BOTTOM] ?? 0)) return false;
    const ax1 = lines[a] ?? 0;
    const ay1 = lines[a + Y1] ?? 0;
    const ax2 = lines[a + X2] ?? 0;
    const ay2 = lines[a + Y2] ?? 0;
    const bx1 = lines[b] ?? 0;
    const by1 = lines[b + Y1] ?? 0;
    const bx2 = lines[b + X2] ?? 0;
    const by2 = lines[b + Y2] ?? 0;
    const [dx, dy, ex, ey] = [ax2 - ax1, ay2 - ay1, bx2 - bx1, by2 - by1];
    const p = dx * (by1 - ay1) - dy * (bx1 - ax1);
    const q = dx * (by2 - ay1) - dy * (bx2 - ax1);
    if ((p >= 0 && q >= 0) || (p <= 0 && q <= 0)) return false;
    const r = ex * (ay1 - by1) - ey * (ax1 - bx1);
    const t = ex * (ay2 - by1) - ey * (ax2 - bx1);
    return (r > 0 && t < 0) || (r < 0 && t > 0);
  }

  /** Adds (`by` 1) or takes away (`by` −1) what pairs of some parts with all parts lack in room, each once. */
  #crowd(some: readonly number[], by: 1 | -1): void {
    const touching = this.#between - Math.min(LEAST, this.#between);
    for (const i of some) {
      const a = nth(this.#boxes, i);
      for (let k = 0; k < this.#boxes.length; k++) {
        if (k === i || (k < i && some.includes(k))) continue;
        const b = nth(this.#boxes, k);
        const across = Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0) + this.#between;
        if (across <= 0) continue;
        const down = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0) + this.#between;
        if (down <= 0) continue;
        const least = Math.min(across, down);
        this.#crowding += by * (NEAR + NEARER * least);
        this.#nearPairs += by * (least > touching ? TOUCHING : 1);
      }
    }
  }
}
