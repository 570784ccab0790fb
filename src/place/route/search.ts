/** The cheapest way for one wire: A* over (node, heading), with a bucket queue since every cost is a small whole number. */
import { type Direction, type Field, STEP_X, STEP_Y, type Task, type Track } from './field.ts';

/** What a wire pays, in half grid steps. */
export interface Prices {
  readonly step: number;
  readonly bend: number;
  readonly crossing: number;
  /** For a crossing right behind another, which leaves but a crumb of the wire to be seen between them. */
  readonly crumb: number;
  /** For each wire already on a node along the same axis; rises while conflicts last. */
  readonly conflict: number;
}

const NONE = -1;

export class Search {
  readonly #field: Field;
  readonly #cost: Int32Array;
  readonly #parent: Int32Array;
  readonly #gate: Int32Array;
  readonly #stamp: Int32Array;
  readonly #closed: Int32Array;
  /** Nodes that a gate of the target lies at, by round. */
  readonly #target: Int32Array;
  /** Kept between runs, so that a search allocates next to nothing; emptied as they are read. */
  readonly #buckets: number[][] = [];
  #highest = 0;
  #round = 0;
  #box = { left: 0, right: 0, top: 0, bottom: 0 };

  constructor(field: Field) {
    this.#field = field;
    const nodes = field.columns * field.rows;
    this.#cost = new Int32Array(nodes * 4);
    this.#parent = new Int32Array(nodes * 4);
    this.#gate = new Int32Array(nodes * 4);
    this.#stamp = new Int32Array(nodes * 4);
    this.#closed = new Int32Array(nodes * 4);
    this.#target = new Int32Array(nodes);
  }

  /** The cheapest track, or `undefined` when there is no way at all. */
  run(task: Task, prices: Prices): { readonly track: Track; readonly cost: number } | undefined {
    const field = this.#field;
    const { columns, rows, blocked, used } = field;
    const round = ++this.#round;
    this.#aim(task);
    this.#highest = 0;
    task.from.forEach((gate, i) => {
      if (blocked[gate.node]) return;
      const out = (gate.inward + 2) & 3;
      this.#push(
        gate.node * 4 + out,
        this.#slotPrice(gate.node, out & 1, prices) + gate.price,
        NONE,
        i,
        prices,
      );
    });

    let bestCost = Number.POSITIVE_INFINITY;
    let bestState = NONE;
    let bestGate = NONE;
    for (let key = 0; key <= this.#highest && key < bestCost; key++) {
      const bucket = this.#buckets[key];
      if (!bucket) continue;
      // The bucket grows while it is read, a straight step towards the target keeps the key: newest first goes deep.
      while (bucket.length > 0 && key < bestCost) {
        const state: number = bucket.pop() ?? 0;
        if (this.#closed[state] === round) continue;
        const cost = this.#cost[state] ?? 0;
        const node = state >> 2;
        const x = node % columns;
        const y = (node - x) / columns;
        const heading = (state & 3) as Direction;
        if (cost + this.#rest(x, y, heading, prices) !== key) continue;
        this.#closed[state] = round;
        if (this.#target[node] === round)
          for (let i = 0; i < task.to.length; i++) {
            const gate = task.to[i];
            if (gate?.node !== node || ((gate.inward + 2) & 3) === heading) continue;
            const turn =
              gate.inward === heading ? 0 : prices.bend + this.#slotPrice(node, gate.inward & 1, prices);
            const end = cost + gate.price + turn;
            if (end >= bestCost) continue;
            bestCost = end;
            bestState = state;
            bestGate = i;
          }
        for (let next = 0; next < 4; next++) {
          if (((next + 2) & 3) === heading) continue;
          const nx = x + STEP_X[next as Direction];
          const ny = y + STEP_Y[next as Direction];
          if (nx < 0 || ny < 0 || nx >= columns || ny >= rows) continue;
          const to = ny * columns + nx;
          if (blocked[to]) continue;
          const axis = next & 1;
          const bend = next === heading ? 0 : prices.bend + this.#slotPrice(node, axis, prices);
          const arrive =
            prices.step +
            // A wire's own lug is not dear to it, which also keeps the search from spreading before it arrives.
            (this.#target[to] === round ? 0 : (field.dear[to] ?? 0)) +
            this.#slotPrice(to, axis, prices) +
            ((used[to * 2 + 1 - axis] ?? 0) > 0
              ? prices.crossing +
                (next === heading && (used[node * 2 + 1 - axis] ?? 0) > 0 ? prices.crumb : 0)
              : 0);
          this.#push(to * 4 + next, cost + bend + arrive, state, this.#gate[state] ?? 0, prices);
        }
      }
    }
    for (let key = 0; key <= this.#highest; key++) {
      const bucket = this.#buckets[key];
      if (bucket) bucket.length = 0;
    }
    if (bestState === NONE) return undefined;
    const nodes: number[] = [];
    for (let s = bestState; s !== NONE; s = this.#parent[s] ?? NONE) nodes.push(s >> 2);
    nodes.reverse();
    return { track: { from: this.#gate[bestState] ?? 0, to: bestGate, nodes }, cost: bestCost };
  }

  /** Marks the target's gates and the box about them, which tells how far there is still to go. */
  #aim(task: Task): void {
    const { columns, rows } = this.#field;
    let [left, right, top, bottom] = [columns, 0, rows, 0];
    for (const { node } of task.to) {
      this.#target[node] = this.#round;
      const x = node % columns;
      const y = (node - x) / columns;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
    this.#box = { left, right, top, bottom };
  }

  /** Least that is still to be paid from a node on a heading: the way on an empty sheet, with the bends it must have. */
  #rest(x: number, y: number, heading: Direction, prices: Prices): number {
    const { left, right, top, bottom } = this.#box;
    const dx = x < left ? left - x : x > right ? right - x : 0;
    const dy = y < top ? top - y : y > bottom ? bottom - y : 0;
    if (dx === 0 && dy === 0) return 0;
    const ahead = STEP_X[heading] * dx + STEP_Y[heading] * dy;
    const aside = (heading & 1) === 0 ? dy : dx;
    const bends = ahead > 0 ? (aside === 0 ? 0 : 1) : ahead < 0 ? 2 : 1;
    return (Math.abs(dx) + Math.abs(dy)) * prices.step + bends * prices.bend;
  }

  #slotPrice(node: number, axis: number, prices: Prices): number {
    const slot = node * 2 + axis;
    return (this.#field.used[slot] ?? 0) * prices.conflict + (this.#field.history[slot] ?? 0);
  }

  #push(state: number, cost: number, parent: number, gate: number, prices: Prices): void {
    if (this.#stamp[state] === this.#round && (this.#cost[state] ?? 0) <= cost) return;
    this.#stamp[state] = this.#round;
    this.#cost[state] = cost;
    this.#parent[state] = parent;
    this.#gate[state] = gate;
    const node = state >> 2;
    const x = node % this.#field.columns;
    const key = cost + this.#rest(x, (node - x) / this.#field.columns, (state & 3) as Direction, prices);
    this.#highest = Math.max(this.#highest, key);
    const bucket = this.#buckets[key];
    if (bucket) bucket.push(state);
    else this.#buckets[key] = [state];
  }
}
