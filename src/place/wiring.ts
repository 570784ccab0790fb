/**
 * From parts standing on the grid to wires: the grid of free nodes, the gates of every lug, the routed lines. Parts
 * can be moved afterwards; only the wires concerned are then laid again, which is what makes a search affordable.
 */
import { lugIdOf } from '../circuit/circuit.ts';
import { PITCH, type Point, type Rect, sameBox } from '../common/geometry.ts';
import type { Joint } from '../describe/kit.ts';
import { is } from '../parts/index.ts';
import type { Port } from '../parts/outline.ts';
import { directionToSheet, extent, type Frame, rectToSheet, toSheet } from './frame.ts';
import { chargeOutside, closeBeside, ringsPrice } from './outside.ts';
import { type GridPart, type PlacedWire, standing } from './placement.ts';
import { type AccessPoint, type Direction, Grid, type RoutedPath, type RouteRequest } from './route/grid.ts';
import { Router } from './route/route.ts';
import { line, met } from './track.ts';

/** No wire's centre line comes nearer to a lug than this, drawing units. */
const LUG_CLEARANCE = 6;
/** Price of the node outside a lug: a wire that only passes there hides where the lug's own wire begins. */
const BESIDE_LUG = 120;

/** A step of a component's leg counts as so many of a wire. */
export const LEG_WEIGHT = 3;

/** A part's frame with the grid's corner as origin. */
export const frameOf = (gridPart: GridPart, left: number, top: number): Frame => ({
  x: (gridPart.column - left) * PITCH,
  y: (gridPart.row - top) * PITCH,
  width: standing(gridPart).width,
  height: standing(gridPart).height,
  turn: gridPart.turn,
  mirror: gridPart.mirror,
});

/** The parts' common extent, grid units. */
export function bounds(gridParts: readonly GridPart[]): Rect {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const gridPart of gridParts) {
    const size = extent(frameOf(gridPart, 0, 0));
    left = Math.min(left, gridPart.column);
    top = Math.min(top, gridPart.row);
    right = Math.max(right, gridPart.column + size.width / PITCH);
    bottom = Math.max(bottom, gridPart.row + size.height / PITCH);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
}

export interface Wired {
  readonly frames: ReadonlyMap<string, Frame>;
  readonly wires: readonly PlacedWire[];
}

/** What a step back needs. */
interface Remembered {
  readonly gridParts: readonly GridPart[];
  readonly tasks: readonly RouteRequest[];
  readonly tracks: readonly (RoutedPath | undefined)[];
}

export class Wiring {
  readonly #joints: readonly Joint[];
  /** Indices of the joints that have a way across the sheet: all but straps. */
  readonly #ways: readonly number[];
  /** Of the column that nothing leaves, grid units, where there is one. */
  readonly widest: number | undefined;
  readonly #left: number;
  readonly #top: number;
  readonly #grid: Grid;
  readonly #router: Router;
  readonly #needed: ReadonlySet<string>;
  /** How many joints end at each lug. */
  readonly #ends: ReadonlyMap<string, number>;
  readonly #ports = new Map<string, readonly Port[]>();
  #gridParts: readonly GridPart[] = [];
  #tasks: readonly RouteRequest[] = [];

  /**
   * @param margin kept free around the parts, grid units, for wires that go round the outside and for parts to move to
   * @param many whether there are too many parts for wires to keep clear of one another
   * @param widest of a column from 0 that neither parts nor wires leave, grid units; without it there is none
   */
  constructor(
    gridParts: readonly GridPart[],
    joints: readonly Joint[],
    margin: number,
    many: boolean,
    widest?: number,
  ) {
    const box = bounds(gridParts);
    this.#joints = joints;
    this.widest = widest;
    // One more on every side for the grid's closed edge.
    this.#left = (widest === undefined ? box.x : 0) - margin - 1;
    this.#top = box.y - margin - 1;
    const across = widest ?? Math.ceil(box.width);
    this.#grid = new Grid(across + 2 * margin + 3, Math.ceil(box.height) + 2 * margin + 3);
    if (widest !== undefined) closeBeside(this.#grid, margin + 1, widest);
    this.#ends = endsOf(joints);
    this.#needed = new Set(this.#ends.keys());
    for (const gridPart of gridParts) this.#gridPart(gridPart, 1);
    this.#gridParts = gridParts;
    this.#chargeOutside(1);
    this.#ways = joints.flatMap((joint, i) => (this.#strapOf(joint) ? [] : [i]));
    this.#tasks = this.#ways.map((i) => this.#taskOf(i));
    this.#router = new Router(this.#grid, this.#tasks, many);
  }

  get gridParts(): readonly GridPart[] {
    return this.#gridParts;
  }

  /** What the wires cost together; see `route/route.ts`. */
  get cost(): number {
    return this.#router.cost;
  }

  /** Added to the score for detours, see `route/route.ts`, and for wires that run round the outside of all parts. */
  get excess(): number {
    return this.#router.excess + ringsPrice(this.#grid, this.#router.paths, this.#box());
  }

  /** Work done so far; see `route/search.ts`. */
  get work(): number {
    return this.#router.work;
  }

  /** Lays every wire; false when the parts stand too close for that. */
  routeAll(polish: number, patience?: number): boolean {
    if (!this.#router.routeAll(patience)) return false;
    this.#router.refine(polish);
    return true;
  }

  refine(passes: number): void {
    this.#router.refine(passes);
  }

  remember(): Remembered {
    return { gridParts: this.#gridParts, tasks: this.#tasks, tracks: [...this.#router.paths] };
  }

  /** Back to what was remembered. */
  restore(before: Remembered): void {
    this.#replace(before.gridParts);
    this.#tasks = before.tasks;
    this.#router.restore(before.tasks, before.tracks);
  }

  /**
   * Parts stand elsewhere: wires of theirs and wires in their way are laid again. False when that does not work out, or
   * plainly makes the wires cost more than `most`; then `restore` must follow.
   */
  move(gridParts: readonly GridPart[], most: number): boolean {
    const box = bounds(gridParts);
    const room = 3;
    if (
      box.x < this.#left + room ||
      box.y < this.#top + room ||
      box.x + box.width > this.#left + this.#grid.columns - room ||
      box.y + box.height > this.#top + this.#grid.rows - room
    )
      return false;
    if (this.widest !== undefined && (box.x < 0 || box.x + box.width > this.widest)) return false;
    const moved = this.#replace(gridParts);
    const tasks = this.#tasks.map((task, k) => {
      const joint = this.#joints[this.#ways[k] ?? -1];
      return joint && (moved.has(joint.from.part) || moved.has(joint.to.part))
        ? this.#taskOf(this.#ways[k] ?? -1)
        : task;
    });
    const which = tasks.flatMap((task, k) => (task !== this.#tasks[k] || this.#router.blocked(k) ? [k] : []));
    this.#tasks = tasks;
    return this.#router.reroute(tasks, which, most);
  }

  /** Lays the wire of a joint once more, off some points; see `route/route.ts`. */
  relay(wire: number, off: readonly Point[]): boolean {
    return this.#router.relay(
      this.#ways.indexOf(wire),
      off.map((p) => this.#nodeOf(p)),
    );
  }

  /** The wires as lines. */
  result(): Wired {
    const frames = new Map(
      this.#gridParts.map((gridPart) => [gridPart.part.name, frameOf(gridPart, this.#left, this.#top)]),
    );
    const trackOf = new Map(this.#ways.map((i, k) => [i, this.#router.paths[k]]));
    const wires = this.#joints.map((joint, i): PlacedWire => {
      const track = trackOf.get(i);
      const port = (end: Joint['from'], nth: number) => this.#ports.get(lugIdOf(end))?.[nth];
      return {
        joint,
        own: this.#twoLegged(joint),
        points: track
          ? line(
              this.#grid,
              track,
              met(port(joint.from, track.from), this.#meets(joint.from)),
              met(port(joint.to, track.to), this.#meets(joint.to)),
            )
          : (this.#strapOf(joint) ?? []),
      };
    });
    return { frames, wires };
  }

  /** Whether several joints meet at a lug. */
  #meets(end: Joint['from']): boolean {
    return (this.#ends.get(lugIdOf(end)) ?? 0) > 1;
  }

  /** Takes stands that differ off the grid and puts them where they stand now; answers whose they are. */
  #replace(gridParts: readonly GridPart[]): ReadonlySet<string> {
    const moved = new Set<string>();
    const resized = !sameBox(bounds(this.#gridParts), bounds(gridParts));
    if (resized) this.#chargeOutside(-1);
    gridParts.forEach((gridPart, i) => {
      const before = this.#gridParts[i];
      if (!before || before === gridPart) return;
      this.#gridPart(before, -1);
      moved.add(gridPart.part.name);
    });
    for (const gridPart of gridParts) if (moved.has(gridPart.part.name)) this.#gridPart(gridPart, 1);
    this.#gridParts = gridParts;
    if (resized) this.#chargeOutside(1);
    return moved;
  }

  #chargeOutside(by: 1 | -1): void {
    chargeOutside(this.#grid, this.#box(), by);
  }

  /** All parts' extent on the grid. */
  #box(): Rect {
    const box = bounds(this.#gridParts);
    return { ...box, x: box.x - this.#left, y: box.y - this.#top };
  }

  /** Puts a part on the grid (`by` 1) or takes it off (`by` −1). */
  #gridPart(gridPart: GridPart, by: 1 | -1): void {
    const frame = frameOf(gridPart, this.#left, this.#top);
    for (const rect of standing(gridPart).blocked) block(this.#grid, rectToSheet(frame, rect), 0, by);
    for (const lug of standing(gridPart).lugs) {
      if (!lug.surface) block(this.#grid, rectToSheet(frame, lug.tag), LUG_CLEARANCE, by);
      const end = `${gridPart.part.name}.${lug.lug}`;
      const ports = lug.ports.map((port) => portToSheet(frame, port));
      this.#ports.set(end, ports);
      if (this.#needed.has(end))
        for (const { node } of ports) this.#grid.charge(this.#nodeOf(node), by * BESIDE_LUG);
    }
  }

  #taskOf(index: number): RouteRequest {
    const joint = this.#joints[index];
    const gates = (end: Joint['from'] | undefined): readonly AccessPoint[] =>
      (end ? (this.#ports.get(lugIdOf(end)) ?? []) : []).map((port) => ({
        node: this.#nodeOf(port.node),
        inward: heading(port.inward),
        cost: port.price ?? 0,
      }));
    return { from: gates(joint?.from), to: gates(joint?.to), weight: joint?.kind === 'leg' ? LEG_WEIGHT : 1 };
  }

  /** A lug bent over onto the case it belongs to lies where it lies: nothing to route. */
  #strapOf({ kind, from, to }: Joint): readonly Point[] | undefined {
    if (kind !== 'bend' || from.part !== to.part) return undefined;
    const gridPart = this.#gridParts.find(({ part }) => part.name === from.part);
    if (!gridPart) return undefined;
    const frame = frameOf(gridPart, this.#left, this.#top);
    const strapTo = (own: string, other: string) => {
      const strap = standing(gridPart).lugs.find(({ lug }) => lug === own)?.strap;
      return strap?.to === other ? strap : undefined;
    };
    const [ahead, back] = [strapTo(from.lug, to.lug), strapTo(to.lug, from.lug)];
    if (ahead) return [toSheet(frame, ahead.from), toSheet(frame, ahead.end)];
    return back && [toSheet(frame, back.end), toSheet(frame, back.from)];
  }

  #twoLegged({ from, to }: Joint): readonly string[] {
    return this.#gridParts.flatMap(({ part }) =>
      is(part, 'component') && (part.name === from.part || part.name === to.part) ? [part.name] : [],
    );
  }

  #nodeOf(p: Point): number {
    return this.#grid.node(Math.round(p.x / PITCH), Math.round(p.y / PITCH));
  }
}

/** How many joints end at each lug, by `part.lug`. */
export function endsOf(joints: readonly Joint[]): ReadonlyMap<string, number> {
  const ends = new Map<string, number>();
  for (const end of joints.flatMap(({ from, to }) => [lugIdOf(from), lugIdOf(to)]))
    ends.set(end, (ends.get(end) ?? 0) + 1);
  return ends;
}

const portToSheet = (frame: Frame, port: Port): Port => ({
  node: toSheet(frame, port.node),
  inward: directionToSheet(frame, port.inward),
  spot: toSheet(frame, port.spot),
  ...(port.via ? { via: toSheet(frame, port.via) } : {}),
  price: port.price ?? 0,
});

export const heading = (d: Point): Direction => (d.x > 0 ? 0 : d.x < 0 ? 2 : d.y > 0 ? 1 : 3);

/** Closes (or opens again) every node within `clearance` of a rectangle; its bounds count as inside when there is none. */
function block(grid: Grid, rect: Rect, clearance: number, by: 1 | -1): void {
  const near = clearance === 0 ? 0 : clearance - 0.01;
  const [x0, x1] = [Math.ceil((rect.x - near) / PITCH), Math.floor((rect.x + rect.width + near) / PITCH)];
  const [y0, y1] = [Math.ceil((rect.y - near) / PITCH), Math.floor((rect.y + rect.height + near) / PITCH)];
  for (let y = Math.max(0, y0); y <= Math.min(grid.rows - 1, y1); y++)
    for (let x = Math.max(0, x0); x <= Math.min(grid.columns - 1, x1); x++) grid.close(grid.node(x, y), by);
}
