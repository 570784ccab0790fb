/**
 * Crossings where neither wire can be open without hiding an end, a corner or a stub of it: at the very last, one of the two is laid
 * elsewhere. The prices of a way (`route/route.ts`) make such crossings rare; whether one can be drawn hangs on the bends
 * of both wires and on the crossings near by, which no search for a single way knows.
 */
import type { Point } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import { scoreOf } from './improve.ts';
import { type Crossing, spoiltCrossings } from './openings.ts';
import type { Wiring } from './wiring.ts';

/** How often a wire is kept off one more crossing before another is tried. */
const TRIES = 8;
/** Wires laid elsewhere though that spoils as many crossings or more, before it is given up. */
const DETOURS = 60;
/** Of so many spoilt crossings each is tried in a round. */
const AT_ONCE = 6;

/** A way to lay wires once more: what is spoilt then, and the score. */
interface Attempt {
  readonly state: ReturnType<Wiring['remember']>;
  readonly spoilt: readonly Crossing[];
  readonly score: number;
}

/** Lays wires elsewhere until every crossing can be drawn well; answers how many cannot. */
export function clearCrossings(wiring: Wiring): number {
  let now = descended(wiring, attempt(wiring));
  let best = now;
  /** What each wire is kept off from now on, so that no state comes back. */
  const off = new Map<number, Point[]>();
  for (let i = 0; i < DETOURS && best.spoilt.length > 0; i++) {
    const next = detour(wiring, now, nth(now.spoilt, i % now.spoilt.length), off);
    if (!next) continue;
    now = next.spoilt.length < best.spoilt.length ? descended(wiring, next) : next;
    if (now.spoilt.length < best.spoilt.length) best = now;
  }
  wiring.restore(best.state);
  return best.spoilt.length;
}

/** One of a spoilt crossing's wires laid off it for good, even where that spoils others. */
function detour(
  wiring: Wiring,
  now: Attempt,
  { at, wires }: Crossing,
  off: Map<number, Point[]>,
): Attempt | undefined {
  const ways = wires.flatMap((wire) => {
    wiring.restore(now.state);
    const kept = [...(off.get(wire) ?? []), at];
    return wiring.relay(wire, kept) ? [{ wire, kept, made: attempt(wiring) }] : [];
  });
  const [way] = ways.sort(
    (a, b) => a.made.spoilt.length - b.made.spoilt.length || a.made.score - b.made.score,
  );
  if (way) off.set(way.wire, way.kept);
  return way?.made;
}

/** One wire after the other laid elsewhere, as long as that leaves fewer crossings spoilt. */
function descended(wiring: Wiring, from: Attempt): Attempt {
  let now = from;
  for (let next = better(wiring, now); next; next = better(wiring, now)) now = next;
  wiring.restore(now.state);
  return now;
}

function attempt(wiring: Wiring): Attempt {
  return { state: wiring.remember(), spoilt: spoiltCrossings(wiring.result().wires), score: scoreOf(wiring) };
}

/** The cheapest of what leaves the fewest crossings spoilt, fewer than now. */
function better(wiring: Wiring, now: Attempt): Attempt | undefined {
  let best: Attempt | undefined;
  for (const { wires } of now.spoilt.slice(0, AT_ONCE))
    for (const order of [[wires[0]], [wires[1]], wires, [wires[1], wires[0]]]) {
      wiring.restore(now.state);
      const made = relaid(wiring, now, order);
      const most = best ?? { spoilt: now.spoilt, score: Number.NEGATIVE_INFINITY };
      if (!made || made.spoilt.length > most.spoilt.length) continue;
      if (made.spoilt.length < most.spoilt.length || made.score < most.score) best = made;
    }
  return best;
}

/** Some wires laid once more, one after the other, each off the crossings of it that are spoilt, as long as more of them turn up. */
function relaid(wiring: Wiring, now: Attempt, order: readonly number[]): Attempt | undefined {
  let made: Attempt | undefined;
  for (const wire of order) {
    let spoilt = (made ?? now).spoilt.filter(({ wires }) => wires.includes(wire));
    const off = spoilt.map(({ at }) => at);
    for (let i = 0; i < TRIES && spoilt.length > 0; i++) {
      if (!wiring.relay(wire, off)) return undefined;
      made = attempt(wiring);
      spoilt = made.spoilt.filter(({ wires }) => wires.includes(wire));
      off.push(...spoilt.map(({ at }) => at));
    }
  }
  return made;
}
