/**
 * All wires of a kit. First every wire takes its cheapest way, even over others; then those in each other's way are
 * laid again and again while the cost of sharing rises, until none share; at last each is lifted and laid once more
 * among the others to spare crossings, bends and length.
 */
import { nth } from '../../common/must.ts';
import type { Grid, RoutedPath, RouteRequest } from './grid.ts';
import { withoutLoops } from './loops.ts';
import { PathSearch, type RoutingCosts } from './search.ts';
import { leastOf, spanOf, straightOf } from './spans.ts';

/** What a wire pays on the way, and whether it hurries; see `search.ts`. */
type WireCosts = Pick<RoutingCosts, 'step' | 'bend' | 'crossing' | 'closeCrossing' | 'hook' | 'overestimate'>;
/** The first ways need not be the cheapest: every wire is laid again before they count. */
const FEW: WireCosts = { step: 2, bend: 10, crossing: 90, closeCrossing: 80, hook: 24, overestimate: 2 };
/**
 * Among hundreds of parts no wire comes through without crossing many: at the full cost each would look for a way
 * round the whole sheet, and laying them would take minutes.
 */
const MANY: WireCosts = { ...FEW, crossing: 10, closeCrossing: 5, overestimate: 0 };
/** Where nothing else fits. */
const CROSSING_FREELY = { crossing: 24, closeCrossing: 12, hook: 6 } as const;
/** With more wires than these all are laid so at first. */
const CROWDED = 32;
/** For a wire that is to be seen well where it crosses others, whatever else that takes. */
const CROSSING_CLEARLY = { closeCrossing: 200, hook: 200 } as const;
/** Rounds of laying again before the placement is judged too tight, and before a step of the search is: another comes. */
const ROUNDS = 40;
const FEW_ROUNDS = 8;
/** From this round on the wires that end at the same lugs are laid again too. */
const STUBBORN = 10;
/** The cost of sharing when negotiation begins. */
const FIRST_CONFLICT = 12;
/** Sharing is never worth this. */
const FORBIDDEN = 4000;

/** Price of a step beyond the least distance of a wire's lugs; more of one beyond twice what lies between its ends, where it is not short. */
const DETOUR = 2;
const FAR_ROUND = 30;
const SHORT = 9;

/** What is added for a component's leg of so many grid steps: some beyond a pot's width and a half, much beyond two and a half, the stubs into the lugs not counted. */
export const legExcess = (steps: number): number =>
  6 * Math.max(0, steps - 10) + 40 * Math.max(0, steps - 17);

export class Router {
  readonly #grid: Grid;
  readonly #search: PathSearch;
  #costs: WireCosts;
  /** By weight. */
  readonly #shared = new Map<number, RoutingCosts>();
  #requests: readonly RouteRequest[];
  #paths: (RoutedPath | undefined)[];

  /** @param many whether there are too many parts for wires to keep clear of one another */
  constructor(grid: Grid, tasks: readonly RouteRequest[], many: boolean) {
    this.#grid = grid;
    this.#costs = many ? MANY : FEW;
    this.#search = new PathSearch(grid);
    this.#requests = tasks;
    this.#paths = tasks.map(() => undefined);
  }

  get paths(): readonly (RoutedPath | undefined)[] {
    return this.#paths;
  }

  /** States that searches for ways have looked at so far. */
  get work(): number {
    return this.#search.work;
  }

  /**
   * Lays every wire; false when they do not fit.
   *
   * @param patience work after which wires that still clash are given up, each time that they are laid
   */
  routeAll(patience = Number.POSITIVE_INFINITY): boolean {
    const all = this.#requests.map((_, i) => i);
    const lay = (): boolean =>
      this.#routeThese(all, Number.POSITIVE_INFINITY, this.#costs.overestimate, this.work + patience);
    if (this.#requests.length <= CROWDED && lay()) return true;
    // Where it is narrow, wires that would rather go round than cross keep one another from their lugs; and where there are very many,
    // the search for ways round takes three times as long, for ways that are laid once more afterwards.
    const dear = this.#costs;
    this.#costs = { ...dear, ...CROSSING_FREELY };
    for (const i of all) this.#ripUp(i);
    const laid = lay();
    this.#costs = dear;
    return laid;
  }

  /**
   * Lays some wires anew, by tasks that may have changed, and any that they come to clash with; false when they do not
   * fit, or when it is plain before the end that all wires together will cost more than `most`.
   */
  reroute(tasks: readonly RouteRequest[], which: readonly number[], most: number): boolean {
    for (const i of which) this.#ripUp(i);
    this.#requests = tasks;
    return this.#routeThese(which, most - this.cost, 0);
  }

  /** Lays wires that are lifted; see `relay`, and `overestimate` in `search.ts`. */
  #routeThese(
    which: readonly number[],
    most: number,
    overestimate: number,
    mostWork = Number.POSITIVE_INFINITY,
  ): boolean {
    const order = this.#shortFirst(which);
    // Those that follow will cost something too.
    let left = order.reduce(
      (rest, i) => rest - leastOf(nth(this.#requests, i), this.#grid.columns, this.#costs),
      most,
    );
    for (const i of order) {
      left += leastOf(nth(this.#requests, i), this.#grid.columns, this.#costs);
      const cost = this.#lay(i, FIRST_CONFLICT, overestimate, left);
      if (cost === undefined) return false;
      left -= cost;
    }
    return this.#negotiate(overestimate, Number.isFinite(most) ? FEW_ROUNDS : ROUNDS, mostWork);
  }

  /** Lifts and lays every wire `passes` times among the others, long ones first. */
  refine(passes: number): void {
    const order = [...this.#shortFirst(this.#requests.map((_, i) => i))].reverse();
    for (let pass = 0; pass < passes; pass++) for (const i of order) this.#better(i);
  }

  /** Lays a wire once more, off some nodes and with no bend beside a crossing; false where there is no such way. */
  relay(i: number, off: readonly number[]): boolean {
    const task = this.#requests[i];
    if (!task) return false;
    this.#ripUp(i);
    for (const node of off) this.#grid.close(node, 1);
    const costs = { ...this.#costsOf(task, FORBIDDEN), ...CROSSING_CLEARLY };
    const found = this.#search.findPath(task, costs, FORBIDDEN - 1);
    for (const node of off) this.#grid.close(node, -1);
    if (!found) return false;
    const path = withoutLoops(this.#grid, task, found.path);
    this.#grid.mark(task, path, 1);
    this.#paths[i] = path;
    return true;
  }

  /** Puts back tracks that were there before. */
  restore(tasks: readonly RouteRequest[], tracks: readonly (RoutedPath | undefined)[]): void {
    this.#paths.forEach((_, i) => {
      this.#ripUp(i);
    });
    this.#requests = tasks;
    this.#paths = [...tracks];
    this.#paths.forEach((track, i) => {
      const task = tasks[i];
      if (task && track) this.#grid.mark(task, track, 1);
    });
  }

  /** Whether a wire runs where none may be any more. */
  blocked(i: number): boolean {
    return this.#paths[i]?.nodes.some((node) => this.#grid.blocked[node]) ?? false;
  }

  /** What all wires pay together, each crossing once. */
  get cost(): number {
    let cost = 0;
    this.#paths.forEach((track, i) => {
      const task = this.#requests[i];
      if (!task || !track) return;
      this.#grid.mark(task, track, -1);
      cost += this.#search.costOf(task, track, this.#sharedCosts(task.weight));
      this.#grid.mark(task, track, 1);
    });
    return cost;
  }

  /**
   * Added to the score for detours and long legs, half grid steps. It decides between placements and not between paths: a search for a
   * path would take longer and find none that is shorter.
   */
  get excess(): number {
    let excess = 0;
    this.#paths.forEach((path, i) => {
      const task = this.#requests[i];
      if (!task || !path) return;
      const steps = path.nodes.length - 1;
      const span = spanOf(task, this.#grid.columns);
      excess += DETOUR * (steps - span);
      // With the stubs into the two lugs.
      if (steps + 2 > SHORT)
        excess += FAR_ROUND * Math.max(0, steps + 2 - 2 * straightOf(task, path, this.#grid.columns));
      if (task.weight > 1) excess += legExcess(steps);
    });
    return excess;
  }

  #ripUp(i: number): void {
    const [task, track] = [this.#requests[i], this.#paths[i]];
    if (task && track) this.#grid.mark(task, track, -1);
    this.#paths[i] = undefined;
  }

  /** Lays a wire anew if there is a cheaper way for it among the others. */
  #better(i: number): void {
    const [task, track] = [this.#requests[i], this.#paths[i]];
    if (!task || !track) return;
    this.#ripUp(i);
    const costs = this.#costsOf(task, FORBIDDEN);
    const before = this.#search.costOf(task, track, costs);
    const found = this.#wayOf(task, costs, before - 1);
    const way = found && found.cost < before ? found.path : track;
    this.#grid.mark(task, way, 1);
    this.#paths[i] = way;
  }

  /** Lays a wire its cheapest way and answers what that costs; `undefined` when there is none for `most` or less. */
  #lay(i: number, conflict: number, overestimate: number, most?: number): number | undefined {
    const task = this.#requests[i];
    if (!task) return undefined;
    this.#ripUp(i);
    const found = this.#wayOf(task, this.#costsOf(task, conflict, overestimate), most);
    if (!found) return undefined;
    this.#grid.mark(task, found.path, 1);
    this.#paths[i] = found.path;
    return found.cost;
  }

  /** The cheapest way of a wire that is lifted, without loops, and what it costs. */
  #wayOf(task: RouteRequest, costs: RoutingCosts, most?: number) {
    const found = this.#search.findPath(task, costs, most);
    if (!found) return undefined;
    const path = withoutLoops(this.#grid, task, found.path);
    return path === found.path ? found : { path, cost: this.#search.costOf(task, path, costs) };
  }

  #negotiate(overestimate: number, rounds: number, mostWork: number): boolean {
    const { used, history } = this.#grid;
    let conflict = FIRST_CONFLICT;
    for (let round = 0; ; round++) {
      const clashing = this.#requests.flatMap((_, i) => (this.#shares(i) ? [i] : []));
      if (clashing.length === 0) break;
      if (round === rounds || this.work > mostWork) {
        history.fill(0);
        return false;
      }
      for (let slot = 0; slot < used.length; slot++)
        if ((used[slot] ?? 0) > 1) history[slot] = (history[slot] ?? 0) + Math.max(6, conflict >> 3);
      conflict = Math.min(FORBIDDEN, Math.round(conflict * 1.5));
      const again = round < STUBBORN ? clashing : this.#withNeighbours(clashing);
      for (const i of this.#shortFirst(again)) this.#lay(i, conflict, overestimate);
    }
    history.fill(0);
    return true;
  }

  /** Some wires with those that end at the same lugs: these may be what keeps them from their gates. */
  #withNeighbours(some: readonly number[]): readonly number[] {
    const gatesOf = (i: number): readonly number[] => {
      const task = this.#requests[i];
      return task ? [...task.from, ...task.to].map(({ node }) => node) : [];
    };
    const gates = new Set(some.flatMap(gatesOf));
    return this.#requests.flatMap((_, i) => (gatesOf(i).some((node) => gates.has(node)) ? [i] : []));
  }

  #costsOf(task: RouteRequest, conflict: number, overestimate = 0): RoutingCosts {
    return { ...this.#costs, step: this.#costs.step * task.weight, conflict, overestimate };
  }

  /** What a wire of that weight pays of what all pay together: either wire of a crossing meets it. */
  #sharedCosts(weight: number): RoutingCosts {
    const known = this.#shared.get(weight);
    if (known) return known;
    const { crossing, step } = this.#costs;
    const costs = {
      ...this.#costs,
      step: step * weight,
      crossing: crossing / 2,
      conflict: 0,
      overestimate: 0,
    };
    this.#shared.set(weight, costs);
    return costs;
  }

  #shares(i: number): boolean {
    const [task, track] = [this.#requests[i], this.#paths[i]];
    let shares = false;
    if (task && track)
      this.#grid.eachSlot(task, track, (slot) => {
        shares ||= (this.#grid.used[slot] ?? 0) > 1;
      });
    return shares;
  }

  /** Some wires, those first whose gates are nearest to one another. */
  #shortFirst(which: readonly number[]): readonly number[] {
    return which
      .map((i) => ({ i, span: spanOf(nth(this.#requests, i), this.#grid.columns) }))
      .sort((a, b) => a.span - b.span)
      .map(({ i }) => i);
  }
}
