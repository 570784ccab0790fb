/**
 * Joints of a drawing against those described. The two legs of a resistor or capacitor have no names in a drawing, as
 * they have none in reality, and are electrically alike; so the joints are the same when they can be made so by
 * naming each such part's legs one way or the other.
 */
import { must } from '../../common/must.ts';
import type { DrawnLug, DrawnWire } from '../drawing.ts';

/** Two lugs, `part.lug`, in alphabetical order. */
export type Pair = readonly [string, string];

export const pair = (a: string, b: string): Pair => (a < b ? [a, b] : [b, a]);
export const pairKey = ([a, b]: Pair): string => `${a} > ${b}`;

export interface NamedWire {
  readonly wire: DrawnWire;
  readonly pair: Pair;
}

/** Tries allowed before no naming is held to fit; a kit needs a few for each two-legged part. */
const TRIES = 20_000;

/** The two ends of a component as drawn, and what the description calls them. */
interface Legs {
  readonly ends: readonly DrawnLug[];
  readonly names: readonly string[];
}

/**
 * Names the legs so that the joints drawn are those described, or else as many of them as a search part by part finds.
 *
 * @param legs of each component, in any order, by part
 * @param surfaces names of cases, which a drawing does not write
 */
export function nameWires(
  wires: readonly DrawnWire[],
  legs: ReadonlyMap<string, Legs>,
  surfaces: ReadonlyMap<DrawnLug, string>,
  described: readonly Pair[],
): readonly NamedWire[] {
  const parts = [...legs.keys()];
  const names = new Map(surfaces);
  const nameOf = (lug: DrawnLug | undefined): string =>
    lug ? `${lug.part}.${lug.name ?? names.get(lug) ?? 'leg'}` : '?';
  const named = (): readonly NamedWire[] =>
    wires.map((wire) => ({ wire, pair: pair(nameOf(wire.ends[0]), nameOf(wire.ends[1])) }));
  const depth = new Map(parts.map((part, i) => [part, i]));
  const last = (ends: readonly string[]): number =>
    Math.max(-1, ...ends.map((part) => depth.get(part) ?? -1));
  // Joints become certain with the last of their two-legged parts; those of each depth are compared by themselves.
  const wanted = parts.map((_, i) => tally(described.filter((p) => last(p.map(partOf)) === i)));
  const certain = parts.map((_, i) =>
    wires.filter(({ ends }) => last(ends.map((end) => end?.part ?? '')) === i),
  );

  const call = (part: string, turned: boolean): void => {
    const own = must(legs.get(part), `part ${part} with legs`);
    const order = turned ? [...own.names].reverse() : own.names;
    own.ends.forEach((lug, k) => {
      names.set(lug, order[k] ?? `leg ${k + 1}`);
    });
  };
  let tries = 0;
  const descend = (i: number): boolean => {
    const part = parts[i];
    if (part === undefined) return true;
    for (const turned of [false, true]) {
      if (++tries > TRIES) return false;
      call(part, turned);
      const found = tally((certain[i] ?? []).map(({ ends }) => pair(nameOf(ends[0]), nameOf(ends[1]))));
      if (found === wanted[i] && descend(i + 1)) return true;
    }
    return false;
  };
  if (descend(0)) return named();
  // No naming fits: each part keeps the one by which more is as described, so that only what differs is reported.
  const keys = new Set(described.map(pairKey));
  const fitting = (part: string, turned: boolean): number => {
    call(part, turned);
    return new Set(
      named()
        .map((one) => pairKey(one.pair))
        .filter((key) => keys.has(key)),
    ).size;
  };
  for (const part of [...parts, ...parts]) call(part, fitting(part, true) > fitting(part, false));
  return named();
}

const partOf = (end: string): string => end.slice(0, end.indexOf('.'));
const tally = (pairs: readonly Pair[]): string => pairs.map(pairKey).sort().join('\n');
