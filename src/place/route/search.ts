/**
 * The cheapest way for one wire: A* over (node, heading), with a bucket queue since every cost is a small whole number.
 * Placing spends its time here, so the loop reads typed arrays and allocates next to nothing.
 */
import { type Grid, type RoutedPath, type RouteRequest, STEP_X, STEP_Y } from './grid.ts';
import { BucketQueue } from './queue.ts';

/** What a wire pays, in half grid steps. */
export interface RoutingCosts {
  readonly step: number;
  readonly bend: number;
  readonly crossing: number;
  /** For a crossing right behind another, which leaves too little of the wire to be seen between them. */
  readonly closeCrossing: number;
  /** For a bend right before or behind a crossing, where what is left of the wire looks like a hook. */
  readonly hook: number;
  /** For each wire already on a node along the same axis; rises while conflicts last. */
  readonly conflict: number;
  /** By how many quarters the way still to go is overrated: 0 finds the cheapest way, more a good one sooner. */
  readonly overestimate: number;
}

/** A way found and what it costs. */
interface Found {
  readonly path: RoutedPath;
  readonly cost: number;
}

/** Of a state, in this order: */
const KNOWN = 4;
/** First, `2 * round` once it is found in this round, one more once nothing cheaper can be; then the least cost found. */
const COST = 1;
/** The state it was found from, or a gate of the wire's beginning as `-1 - gate`. */
const PARENT = 2;
/** 1 where it was found without a bend, 2 by way of a gate of the wire's end; what the way back leads to is not known then. */
const STRAIGHT = 3;

export class PathSearch {
  readonly #grid: Grid;
  /** By state, which is `node * 4 + heading`: what is known of it, `KNOWN` figures one beside the other, as they are read together. */
  readonly #known: Int32Array;
  /** Nodes that a gate of the target lies at, by round. */
  readonly #target: Int32Array;
  /** From a node to the next one, by heading. */
  readonly #ways: readonly number[];
  readonly #columnOf: Int16Array;
  readonly #rowOf: Int16Array;
  /** Steps from each column and row to the box about the target's gates, negative where it lies left or above. */
  readonly #across: Int16Array;
  readonly #down: Int16Array;
  readonly #queue = new BucketQueue();
  #round = 0;
  #work = 0;

  constructor(grid: Grid) {
    this.#grid = grid;
    const { columns, rows } = grid;
    const nodes = columns * rows;
    this.#ways = [1, columns, -1, -columns];
    this.#known = new Int32Array(nodes * 4 * KNOWN);
    this.#target = new Int32Array(nodes);
    this.#columnOf = new Int16Array(nodes);
    this.#rowOf = new Int16Array(nodes);
    for (let node = 0, y = 0; y < rows; y++)
      for (let x = 0; x < columns; x++, node++) {
        this.#columnOf[node] = x;
        this.#rowOf[node] = y;
      }
    this.#across = new Int16Array(columns);
    this.#down = new Int16Array(rows);
  }

  /** States looked at so far, by which work is measured: a time would differ from one machine to the next. */
  get work(): number {
    return this.#work;
  }

  /** The cheapest way, or `undefined` when there is no way, or none for `most` or less. What a gate leads into is a lug and closed. */
  findPath(task: RouteRequest, prices: RoutingCosts, most = 1e9): Found | undefined {
    const { blocked, used, history, extraCost } = this.#grid;
    const [known, targets] = [this.#known, this.#target];
    const [columnOf, rowOf, ways, queue] = [this.#columnOf, this.#rowOf, this.#ways, this.#queue];
    const { step, bend, crossing, closeCrossing, hook, conflict, overestimate } = prices;
    const round = ++this.#round;
    this.#aim(task);
    queue.clear();
    task.from.forEach((gate, i) => {
      if (blocked[gate.node]) return;
      const state = gate.node * 4 + ((gate.inward + 2) & 3);
      const cost = this.#slotPrice(gate.node, gate.inward & 1, conflict) + gate.cost;
      const at = state * KNOWN;
      if (known[at] === 2 * round && (known[at + COST] ?? 0) <= cost) return;
      known[at] = 2 * round;
      known[at + COST] = cost;
      known[at + PARENT] = -1 - i;
      known[at + STRAIGHT] = targets[gate.node] === round ? 2 : 1;
      const rest = this.#rest(columnOf[gate.node] ?? 0, rowOf[gate.node] ?? 0, state & 3, step, bend);
      queue.push(state, cost + rest + ((rest * overestimate) >> 2));
    });
    let bestCost = most + 1;
    let bestState = -1;
    let bestGate = -1;
    // A straight step towards the target keeps the key, and the newest comes first: that goes deep.
    for (let state = queue.pop(bestCost); state !== -1; state = queue.pop(bestCost)) {
      // What was found again for less has been read by then.
      const at = state * KNOWN;
      if (known[at] === 2 * round + 1) continue;
      known[at] = 2 * round + 1;
      this.#work++;
      const cost = known[at + COST] ?? 0;
      const node = state >> 2;
      const heading = state & 3;
      if (targets[node] === round)
        for (const [i, gate] of task.to.entries()) {
          if (gate.node !== node || (gate.inward ^ 2) === heading) continue;
          const turn = gate.inward === heading ? 0 : bend + this.#slotPrice(node, gate.inward & 1, conflict);
          const end = cost + gate.cost + turn;
          if (end >= bestCost) continue;
          bestCost = end;
          bestState = state;
          bestGate = i;
        }
      const x = columnOf[node] ?? 0;
      const y = rowOf[node] ?? 0;
      for (let next = 0; next < 4; next++) {
        if ((next ^ 2) === heading) continue;
        const to = node + (ways[next] ?? 0);
        if (blocked[to]) continue;
        const there = to * 4 + next;
        const into = there * KNOWN;
        // Nothing cheaper can be.
        if (known[into] === 2 * round + 1) continue;
        const axis = next & 1;
        const slot = to * 2 + axis;
        let arrived = cost + step + (used[slot] ?? 0) * conflict + (history[slot] ?? 0);
        // A wire's own lug costs it nothing extra, which also keeps the search from spreading before it arrives.
        if (targets[to] !== round) arrived += extraCost[to] ?? 0;
        if (next !== heading) {
          arrived += bend + this.#slotPrice(node, axis, conflict);
          // Along the new axis lies what crosses the old one.
          if (used[(node - (ways[heading] ?? 0)) * 2 + axis]) arrived += hook;
        }
        if (used[slot ^ 1])
          arrived += crossing + (next !== heading ? hook : used[node * 2 + 1 - axis] ? closeCrossing : 0);
        if (known[into] === 2 * round && (known[into + COST] ?? 0) <= arrived) continue;
        const rest = this.#rest(x + (STEP_X[next] ?? 0), y + (STEP_Y[next] ?? 0), next, step, bend);
        if (arrived + rest >= bestCost) continue;
        if (targets[to] !== round && used[slot] === 0 && used[slot ^ 1] === 0) {
          // Whoever arrived here from the side and turns has paid no more, so whatever leads on from here is known, and so is
          // the way back along that side, from its last bend: this spares nearly half of the states. Not where a wire runs or
          // the way may end, which makes other prices.
          const cross = axis ^ 1;
          const turned = arrived - bend - (used[(to + (ways[next] ?? 0)) * 2 + cross] ? hook : 0);
          const [right, left] = [(next + 1) & 3, (next + 3) & 3];
          const behindRight = used[(to - (ways[right] ?? 0)) * 2 + axis] ? hook : 0;
          const behindLeft = used[(to - (ways[left] ?? 0)) * 2 + axis] ? hook : 0;
          const fromRight = (to * 4 + right) * KNOWN;
          const fromLeft = (to * 4 + left) * KNOWN;
          if (
            (known[fromRight] ?? 0) >= 2 * round &&
            (known[fromRight + COST] ?? 0) + behindRight <= turned &&
            known[fromRight + STRAIGHT] === 0
          )
            continue;
          if (
            (known[fromLeft] ?? 0) >= 2 * round &&
            (known[fromLeft + COST] ?? 0) + behindLeft <= turned &&
            known[fromLeft + STRAIGHT] === 0
          )
            continue;
        }
        const before = known[at + STRAIGHT] ?? 0;
        known[into] = 2 * round;
        known[into + COST] = arrived;
        known[into + PARENT] = state;
        known[into + STRAIGHT] = targets[node] === round || before === 2 ? 2 : next === heading ? before : 0;
        queue.push(there, arrived + rest + ((rest * overestimate) >> 2));
      }
    }
    return bestState === -1 ? undefined : { path: this.#trackTo(bestState, bestGate), cost: bestCost };
  }

  /** What a track costs by the same reckoning as `run`'s; the track itself must not be marked on the grid. */
  costOf(task: RouteRequest, { from, to, nodes }: RoutedPath, prices: RoutingCosts): number {
    const { used, extraCost } = this.#grid;
    const { step, bend, crossing, closeCrossing, hook, conflict } = prices;
    const [begin, end] = [task.from[from], task.to[to]];
    if (!begin || !end) return Number.POSITIVE_INFINITY;
    const own = new Set(task.to.map(({ node }) => node));
    let heading = (begin.inward + 2) & 3;
    let cost = begin.cost + end.cost + this.#slotPrice(begin.node, heading & 1, conflict);
    for (let i = 1; i < nodes.length; i++) {
      const [node, to] = [nodes[i - 1] ?? 0, nodes[i] ?? 0];
      const next = this.#grid.heading(node, to);
      const axis = next & 1;
      cost += step + this.#slotPrice(to, axis, conflict) + (own.has(to) ? 0 : (extraCost[to] ?? 0));
      if (next !== heading) {
        cost += bend + this.#slotPrice(node, axis, conflict);
        if (used[(node - (this.#ways[heading] ?? 0)) * 2 + axis]) cost += hook;
      }
      if (used[to * 2 + 1 - axis])
        cost += crossing + (next !== heading ? hook : used[node * 2 + 1 - axis] ? closeCrossing : 0);
      heading = next;
    }
    return heading === end.inward ? cost : cost + bend + this.#slotPrice(end.node, end.inward & 1, conflict);
  }

  #trackTo(last: number, to: number): RoutedPath {
    const nodes: number[] = [];
    let state = last;
    for (; state >= 0; state = this.#known[state * KNOWN + PARENT] ?? -1) nodes.push(state >> 2);
    return { from: -1 - state, to, nodes: nodes.reverse() };
  }

  /** Marks the target's gates, and tells every column and row how far it is from the box about them. */
  #aim(task: RouteRequest): void {
    let [left, right, top, bottom] = [this.#across.length, 0, this.#down.length, 0];
    for (const { node } of task.to) {
      this.#target[node] = this.#round;
      const [x, y] = [this.#columnOf[node] ?? 0, this.#rowOf[node] ?? 0];
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
    for (let x = 0; x < this.#across.length; x++)
      this.#across[x] = x < left ? left - x : x > right ? right - x : 0;
    for (let y = 0; y < this.#down.length; y++)
      this.#down[y] = y < top ? top - y : y > bottom ? bottom - y : 0;
  }

  /** Least that is still to be paid from a state: the way on an empty sheet, with the bends it must have. */
  #rest(x: number, y: number, heading: number, step: number, bend: number): number {
    const dx = this.#across[x] ?? 0;
    const dy = this.#down[y] ?? 0;
    if (dx === 0 && dy === 0) return 0;
    const level = (heading & 1) === 0;
    const ahead = (level ? dx : dy) * (heading < 2 ? 1 : -1);
    const aside = level ? dy : dx;
    const bends = ahead < 0 ? 2 : aside === 0 ? 0 : 1;
    return (Math.abs(dx) + Math.abs(dy)) * step + bends * bend;
  }

  #slotPrice(node: number, axis: number, conflict: number): number {
    const slot = node * 2 + axis;
    return (this.#grid.used[slot] ?? 0) * conflict + (this.#grid.history[slot] ?? 0);
  }
}
