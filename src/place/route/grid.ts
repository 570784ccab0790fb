/**
 * The grid that wires run on, and who runs where. A node holds at most one wire along each axis: two straight ones
 * cross squarely, and no two ever share a stretch. A bend takes both axes of its node.
 */

/** Directions: 0 right, 1 down, 2 left, 3 up; `d & 1` is the axis, `(d + 2) & 3` the opposite. */
export type Direction = 0 | 1 | 2 | 3;

export const STEP_X: readonly number[] = [1, 0, -1, 0];
export const STEP_Y: readonly number[] = [0, 1, 0, -1];

/** A way into a lug: the node outside it, and the direction from there into the lug. */
export interface AccessPoint {
  readonly node: number;
  readonly inward: Direction;
  /** What choosing this way costs beyond the wire. */
  readonly cost: number;
}

/** A wire to be routed: every gate of its one end and of its other. */
export interface RouteRequest {
  readonly from: readonly AccessPoint[];
  readonly to: readonly AccessPoint[];
  /** How many times a step counts: a component's leg is short, a wire is cut to length. */
  readonly weight: number;
}

/** A wire routed: the gates used and every node from the one to the other. */
export interface RoutedPath {
  readonly from: number;
  readonly to: number;
  readonly nodes: readonly number[];
}

export class Grid {
  readonly columns: number;
  readonly rows: number;
  /** How many parts forbid a node; 0 where wires may be. */
  readonly blocked: Uint8Array;
  /** What a node costs beyond the step to it: outside lugs that other wires need. */
  readonly extraCost: Uint16Array;
  /** How many wires use a node along an axis: index `node * 2 + axis`. */
  readonly used: Uint16Array;
  /** What past conflicts add to the cost of a node and axis. */
  readonly history: Int32Array;

  constructor(columns: number, rows: number) {
    this.columns = columns;
    this.rows = rows;
    this.blocked = new Uint8Array(columns * rows);
    this.extraCost = new Uint16Array(columns * rows);
    this.used = new Uint16Array(columns * rows * 2);
    this.history = new Int32Array(columns * rows * 2);
    // The outermost nodes are closed, so that no search has to look where the grid ends.
    for (let x = 0; x < columns; x++) for (const y of [0, rows - 1]) this.close(this.node(x, y), 1);
    for (let y = 1; y < rows - 1; y++) for (const x of [0, columns - 1]) this.close(this.node(x, y), 1);
  }

  node(x: number, y: number): number {
    return y * this.columns + x;
  }

  /** Closes a node (`by` 1), or takes that back (`by` −1). */
  close(node: number, by: 1 | -1): void {
    this.blocked[node] = (this.blocked[node] ?? 0) + by;
  }

  /** Adds to what a node costs. */
  charge(node: number, price: number): void {
    this.extraCost[node] = (this.extraCost[node] ?? 0) + price;
  }

  /** Adds (`by` 1) or takes away (`by` −1) a track's use of its nodes. */
  mark(task: RouteRequest, track: RoutedPath, by: 1 | -1): void {
    this.eachSlot(task, track, (slot) => {
      this.used[slot] = (this.used[slot] ?? 0) + by;
    });
  }

  /** Visits the node-and-axis slots a track takes, its stubs into the lugs included. */
  eachSlot(task: RouteRequest, track: RoutedPath, visit: (slot: number) => void): void {
    const { nodes } = track;
    const into = task.to[track.to]?.inward ?? 0;
    let before = ((task.from[track.from]?.inward ?? 0) + 2) & 3;
    for (let i = 0; i < nodes.length; i++) {
      const node = nodes[i] ?? 0;
      const after = i === nodes.length - 1 ? into : this.heading(node, nodes[i + 1] ?? 0);
      visit(node * 2 + (before & 1));
      if ((before & 1) !== (after & 1)) visit(node * 2 + (after & 1));
      before = after;
    }
  }

  heading(a: number, b: number): Direction {
    return b === a + 1 ? 0 : b === a - 1 ? 2 : b > a ? 1 : 3;
  }
}
