/**
 * All wires of a kit. First every wire takes its cheapest way, even over others; then those in each other's way are
 * laid again and again while the price of sharing rises, until none share; at last each is lifted and laid once more
 * among the others to spare crossings, bends and length.
 */
import type { Field, Task, Track } from './field.ts';
import { type Prices, Search } from './search.ts';

export interface Routed {
  readonly tracks: readonly Track[];
  /** What the wires cost together, for comparing placements: length, bends and crossings. */
  readonly cost: number;
}

const PRICE = { step: 2, bend: 7, crossing: 16 } as const;
/** Rounds of laying again before the placement is judged too tight. */
const ROUNDS = 40;
/** Sharing is never worth this. */
const FORBIDDEN = 4000;

/** Lays every wire, or answers `undefined` when they do not fit. Tasks are laid short ones first. */
export function routeAll(field: Field, tasks: readonly Task[], polish = 2): Routed | undefined {
  const search = new Search(field);
  const tracks: (Track | undefined)[] = tasks.map(() => undefined);
  const order = tasks
    .map((task, i) => ({ i, span: span(field, task) }))
    .sort((a, b) => a.span - b.span || a.i - b.i)
    .map((entry) => entry.i);

  const lay = (i: number, prices: Prices): boolean => {
    const task = tasks[i];
    if (!task) return false;
    const old = tracks[i];
    if (old) field.mark(task, old, -1);
    const found = search.run(task, prices);
    const track = found?.track ?? old;
    if (!track) return false;
    field.mark(task, track, 1);
    tracks[i] = track;
    return true;
  };

  let conflict = 12;
  for (const i of order) if (!lay(i, { ...PRICE, conflict })) return undefined;
  for (let round = 0; ; round++) {
    const clashing = order.filter((i) => {
      const [task, track] = [tasks[i], tracks[i]];
      let shares = false;
      if (task && track)
        field.eachSlot(task, track, (slot) => {
          shares ||= (field.used[slot] ?? 0) > 1;
        });
      return shares;
    });
    if (clashing.length === 0) break;
    if (round === ROUNDS) return undefined;
    for (let slot = 0; slot < field.used.length; slot++)
      if ((field.used[slot] ?? 0) > 1) field.history[slot] = (field.history[slot] ?? 0) + 6;
    conflict = Math.min(FORBIDDEN, Math.round(conflict * 1.5));
    for (const i of clashing) lay(i, { ...PRICE, conflict });
  }
  field.history.fill(0);
  for (let pass = 0; pass < polish; pass++)
    for (const i of [...order].reverse()) lay(i, { ...PRICE, conflict: FORBIDDEN });

  const laid = tracks.filter((track) => track !== undefined);
  return { tracks: laid, cost: costOf(field, tasks, laid) };
}

/** Least distance between any two gates of a task, grid steps. */
function span(field: Field, task: Task): number {
  let least = Number.POSITIVE_INFINITY;
  for (const a of task.from)
    for (const b of task.to) {
      const dx = Math.abs((a.node % field.columns) - (b.node % field.columns));
      const dy = Math.abs(Math.floor(a.node / field.columns) - Math.floor(b.node / field.columns));
      least = Math.min(least, dx + dy);
    }
  return least;
}

function costOf(field: Field, tasks: readonly Task[], tracks: readonly Track[]): number {
  let cost = 0;
  for (const [i, track] of tracks.entries()) {
    const task = tasks[i];
    if (!task) continue;
    let bends = -track.nodes.length;
    field.eachSlot(task, track, () => {
      bends++;
    });
    cost += track.nodes.length * PRICE.step + bends * PRICE.bend;
  }
  for (let node = 0; node < field.blocked.length; node++)
    if ((field.used[node * 2] ?? 0) > 0 && (field.used[node * 2 + 1] ?? 0) > 0) cost += PRICE.crossing;
  // A bend takes both axes of its node, so it was counted as a crossing too.
  return cost;
}
