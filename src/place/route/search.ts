/** The cheapest way for one wire: A* over (node, heading), with a bucket queue since every cost is a small whole number. */
import { type Direction, type Field, STEP_X, STEP_Y, type Task, type Track } from './field.ts';

/** What a wire pays, in half grid steps. */
export interface Prices {
  readonly step: number;
  readonly bend: number;
  readonly crossing: number;
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
  #round = 0;

  constructor(field: Field) {
    this.#field = field;
    const size = field.columns * field.rows * 4;
    this.#cost = new Int32Array(size);
    this.#parent = new Int32Array(size);
    this.#gate = new Int32Array(size);
    this.#stamp = new Int32Array(size);
    this.#closed = new Int32Array(size);
  }

  /** The cheapest track, or `undefined` when there is no way at all. */
  run(task: Task, prices: Prices): { readonly track: Track; readonly cost: number } | undefined {
    const field = this.#field;
    const { columns, rows } = field;
    const round = ++this.#round;
    const targets = new Map<number, number[]>();
    let [left, right, top, bottom] = [columns, 0, rows, 0];
    task.to.forEach((gate, i) => {
      const at = targets.get(gate.node);
      if (at) at.push(i);
      else targets.set(gate.node, [i]);
      const x = gate.node % columns;
      const y = (gate.node - x) / columns;
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    });
    const rest = (node: number): number => {
      const x = node % columns;
      const y = (node - x) / columns;
      const dx = x < left ? left - x : x > right ? x - right : 0;
      const dy = y < top ? top - y : y > bottom ? y - bottom : 0;
      return (dx + dy) * prices.step;
    };
    const buckets: (number[] | undefined)[] = [];
    const push = (state: number, cost: number, parent: number, gate: number): void => {
      if (this.#stamp[state] === round && (this.#cost[state] ?? 0) <= cost) return;
      this.#stamp[state] = round;
      this.#cost[state] = cost;
      this.#parent[state] = parent;
      this.#gate[state] = gate;
      const key = cost + rest(state >> 2);
      const bucket = buckets[key];
      if (bucket) bucket.push(state);
      else buckets[key] = [state];
    };
    const slotPrice = (node: number, axis: number): number => {
      const slot = node * 2 + axis;
      return (field.used[slot] ?? 0) * prices.conflict + (field.history[slot] ?? 0);
    };
    const arrive = (node: number, axis: number): number =>
      prices.step +
      (field.dear[node] ?? 0) +
      slotPrice(node, axis) +
      ((field.used[node * 2 + 1 - axis] ?? 0) > 0 ? prices.crossing : 0);

    task.from.forEach((gate, i) => {
      if (field.blocked[gate.node]) return;
      const out = (gate.inward + 2) & 3;
      push(gate.node * 4 + out, slotPrice(gate.node, out & 1) + i, NONE, i);
    });

    let best = { cost: Number.POSITIVE_INFINITY, state: NONE, gate: NONE };
    for (let key = 0; key < buckets.length && key < best.cost; key++) {
      const bucket = buckets[key];
      if (!bucket) continue;
      // The bucket grows while it is read: a straight step towards the target keeps the key.
      for (let b = 0; b < bucket.length; b++) {
        const state = bucket[b] ?? 0;
        if (this.#closed[state] === round) continue;
        const cost = this.#cost[state] ?? 0;
        const node = state >> 2;
        if (cost + rest(node) !== key) continue;
        this.#closed[state] = round;
        const heading = (state & 3) as Direction;
        for (const i of targets.get(node) ?? []) {
          const inward = task.to[i]?.inward ?? 0;
          if (((inward + 2) & 3) === heading) continue;
          const end = cost + i + (inward === heading ? 0 : prices.bend + slotPrice(node, inward & 1));
          if (end < best.cost) best = { cost: end, state, gate: i };
        }
        const x = node % columns;
        const y = (node - x) / columns;
        for (const turn of [0, 1, 3] as const) {
          const next = ((heading + turn) & 3) as Direction;
          const nx = x + STEP_X[next];
          const ny = y + STEP_Y[next];
          if (nx < 0 || ny < 0 || nx >= columns || ny >= rows) continue;
          const to = ny * columns + nx;
          if (field.blocked[to]) continue;
          const bend = turn === 0 ? 0 : prices.bend + slotPrice(node, next & 1);
          push(to * 4 + next, cost + bend + arrive(to, next & 1), state, this.#gate[state] ?? 0);
        }
      }
    }
    if (best.state === NONE) return undefined;
    const nodes: number[] = [];
    for (let s = best.state; s !== NONE; s = this.#parent[s] ?? NONE) nodes.push(s >> 2);
    nodes.reverse();
    return { track: { from: this.#gate[best.state] ?? 0, to: best.gate, nodes }, cost: best.cost };
  }
}
