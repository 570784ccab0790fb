/**
 * A position that is silent because two coils meant to be in series, of two pickups or of one, are not linked: one is at the
 * output, the other at ground, and nothing leads from the first to the second. Found by trying: the link that makes exactly those
 * positions sound, with both.
 */
import { buildGraph } from '../circuit/build.ts';
import { endAt, type Graph, jointsAtLugs, type LugId, lugId, type State } from '../circuit/circuit.ts';
import type { Kit } from '../describe/kit.ts';
import { elementsLike, is, isPickup, lugsWith } from '../parts/index.ts';
import { makeNetlist } from './netlist.ts';
import { solveSounding } from './sounding.ts';

interface SeriesLink {
  readonly from: LugId;
  readonly to: LugId;
}

/** More settings than these are not tried: every pair of pickups is solved in each. */
const MOST_STATES = 64;

/** The link that would end the silence, from the far lead of one coil to the hot lead of another. */
export function missingLink(
  kit: Kit,
  silent: readonly State[],
  all: readonly State[],
): SeriesLink | undefined {
  const [first] = silent;
  if (!first || all.length > MOST_STATES) return undefined;
  const graph = buildGraph(kit);
  const free = freeThrows(kit);
  const { nodeOf } = makeNetlist(graph, first);
  const coils = kit.parts.filter(isPickup).flatMap((part) =>
    elementsLike(part, 'coil').map((coil) => ({
      pickup: part.name,
      hot: lugId(part.name, coil.hot),
      far: lugId(part.name, coil.return),
    })),
  );
  for (const upper of coils)
    for (const lower of coils) {
      if (upper === lower) continue;
      // A throw that only this position reaches: there the link changes no other.
      const own = free.find((lug) => nodeOf.get(lug) === nodeOf.get(upper.far));
      const link = { from: own ?? upper.far, to: lower.hot };
      if (endsSilence(kit, link, [upper.pickup, lower.pickup], silent, all)) return link;
    }
  return undefined;
}

/** Throws of switches that have no joint. */
function freeThrows(kit: Kit): readonly LugId[] {
  const joined = jointsAtLugs(kit.joints);
  return kit.parts
    .filter((part) => is(part, 'switch'))
    .flatMap((part) => lugsWith(part, 'throw').map((lug) => lugId(part.name, lug)))
    .filter((lug) => !joined.has(lug));
}

/** Whether both pickups sound in the silent states then, and every other state stays as it is. */
function endsSilence(
  kit: Kit,
  { from, to }: SeriesLink,
  pair: readonly string[],
  silent: readonly State[],
  all: readonly State[],
): boolean {
  const joint = { kind: 'wire', from: endAt(from), to: endAt(to), index: kit.joints.length } as const;
  const linked: Graph = buildGraph({ ...kit, joints: [...kit.joints, joint] });
  const after = (state: State) => solveSounding(linked, state);
  const sounds = (state: State): boolean => {
    const { sounding, coils, shorted } = after(state);
    return !shorted && pair.every((name) => sounding.includes(name) && coils?.[name] === undefined);
  };
  return (
    silent.every(sounds) &&
    all.every((state) => {
      if (silent.includes(state)) return true;
      const { sounding, shorted } = after(state);
      return shorted === state.shorted && sounding.join() === state.sounding.join();
    })
  );
}
