/**
 * All wires of a kit. First every wire takes its cheapest way, even over others; then those in each other's way are
 * laid again and again while the price of sharing rises, until none share; at last each is lifted and laid once more
 * among the others to spare crossings, bends and length.
 */
import type { Field, Task, Track } from './field.ts';
import { type Prices, Search } from './search.ts';

const PRICE = { step: 2, bend: 7, crossing: 32 } as const;
/** Rounds of laying again before the placement is judged too tight. */
const ROUNDS = 40;
/** The price of sharing when negotiation begins. */
const OPENING_PRICE = 12;
/** Sharing is never worth this. */
const FORBIDDEN = 4000;

export class Router {
  readonly #field: Field;
  readonly #search: Search;
  #tasks: readonly Task[];
  #tracks: (Track | undefined)[];
  /** Least distance between any two gates of each task, grid steps: short wires are laid first. */
  #spans: readonly number[];

  constructor(field: Field, tasks: readonly Task[]) {
    this.#field = field;
    this.#search = new Search(field);
    this.#tasks = tasks;
    this.#tracks = tasks.map(() => undefined);
    this.#spans = tasks.map((task) => this.#spanOf(task));
  }

  get tracks(): readonly (Track | undefined)[] {
    return this.#tracks;
  }

  /** Lays every wire; false when they do not fit. */
  layAll(): boolean {
    return this.relay(
      this.#tasks,
      this.#tasks.map((_, i) => i),
    );
  }

  /** Lays some wires anew, by tasks that may have changed, and any that they come to clash with; false when they do not fit. */
  relay(tasks: readonly Task[], which: readonly number[]): boolean {
    for (const i of which) this.#lift(i);
    this.#spans = tasks.map((task, i) =>
      task === this.#tasks[i] ? (this.#spans[i] ?? 0) : this.#spanOf(task),
    );
    this.#tasks = tasks;
    const short = (a: number, b: number): number => this.#span(a) - this.#span(b) || a - b;
    for (const i of [...which].sort(short)) if (!this.#lay(i, OPENING_PRICE)) return false;
    return this.#negotiate();
  }

  /** Lifts and lays every wire `passes` times among the others, long ones first. */
  polish(passes: number): void {
    const order = this.#tasks.map((_, i) => i).sort((a, b) => this.#span(b) - this.#span(a) || b - a);
    for (let pass = 0; pass < passes; pass++) for (const i of order) this.#lay(i, FORBIDDEN);
  }

  /** Puts back tracks that were there before. */
  restore(tasks: readonly Task[], tracks: readonly (Track | undefined)[]): void {
    this.#tracks.forEach((_, i) => {
      this.#lift(i);
    });
    this.#spans = tasks.map((task, i) =>
      task === this.#tasks[i] ? (this.#spans[i] ?? 0) : this.#spanOf(task),
    );
    this.#tasks = tasks;
    this.#tracks = [...tracks];
    this.#tracks.forEach((track, i) => {
      const task = tasks[i];
      if (task && track) this.#field.mark(task, track, 1);
    });
  }

  /** Whether a wire runs where none may be any more. */
  blocked(i: number): boolean {
    return this.#tracks[i]?.nodes.some((node) => this.#field.blocked[node]) ?? false;
  }

  /** What the wires cost together, for comparing placements: length, bends and crossings. */
  get cost(): number {
    let cost = 0;
    const { used } = this.#field;
    this.#tracks.forEach((track, i) => {
      const task = this.#tasks[i];
      if (!task || !track) return;
      let [bends, met] = [-track.nodes.length, 0];
      this.#field.eachSlot(task, track, (slot) => {
        bends++;
        if ((used[slot ^ 1] ?? 0) > 0) met++;
      });
      // A bend takes both axes of its node and so meets itself twice; each true crossing is met from both its wires.
      cost +=
        track.nodes.length * PRICE.step * task.weight +
        bends * PRICE.bend +
        ((met - 2 * bends) * PRICE.crossing) / 2;
    });
    return cost;
  }

  #lift(i: number): void {
    const [task, track] = [this.#tasks[i], this.#tracks[i]];
    if (task && track) this.#field.mark(task, track, -1);
    this.#tracks[i] = undefined;
  }

  #lay(i: number, conflict: number): boolean {
    const task = this.#tasks[i];
    if (!task) return false;
    this.#lift(i);
    const prices: Prices = { ...PRICE, step: PRICE.step * task.weight, conflict };
    const track = this.#search.run(task, prices)?.track;
    if (!track) return false;
    this.#field.mark(task, track, 1);
    this.#tracks[i] = track;
    return true;
  }

  #negotiate(): boolean {
    const { used, history } = this.#field;
    let conflict = OPENING_PRICE;
    for (let round = 0; ; round++) {
      const clashing = this.#tasks.flatMap((_, i) => (this.#shares(i) ? [i] : []));
      if (clashing.length === 0) break;
      if (round === ROUNDS) {
        history.fill(0);
        return false;
      }
      for (let slot = 0; slot < used.length; slot++)
        if ((used[slot] ?? 0) > 1) history[slot] = (history[slot] ?? 0) + 6;
      conflict = Math.min(FORBIDDEN, Math.round(conflict * 1.5));
      for (const i of clashing.sort((a, b) => this.#span(a) - this.#span(b) || a - b)) this.#lay(i, conflict);
    }
    history.fill(0);
    return true;
  }

  #shares(i: number): boolean {
    const [task, track] = [this.#tasks[i], this.#tracks[i]];
    let shares = false;
    if (task && track)
      this.#field.eachSlot(task, track, (slot) => {
        shares ||= (this.#field.used[slot] ?? 0) > 1;
      });
    return shares;
  }

  #span(i: number): number {
    return this.#spans[i] ?? 0;
  }

  #spanOf(task: Task): number {
    const { columns } = this.#field;
    let least = Number.POSITIVE_INFINITY;
    for (const a of task.from)
      for (const b of task.to) {
        const dx = Math.abs((a.node % columns) - (b.node % columns));
        const dy = Math.abs(Math.floor(a.node / columns) - Math.floor(b.node / columns));
        least = Math.min(least, dx + dy);
      }
    return least;
  }
}
