/** What it means when a meter shows something else than it should: found from the circuit by taking joints away and bridging lugs. */
import type { Circuit, LugId } from '../circuit/circuit.ts';
import { lugId } from '../circuit/circuit.ts';
import { PITCH, type Rect } from '../common/geometry.ts';
import { remembered } from '../common/remembered.ts';
import { outlineOf, type Part } from '../parts/index.ts';
import type { Netlist } from '../solve/netlist.ts';
import { partOf } from '../solve/network.ts';
import {
  differs,
  type ExpectedReading,
  expectedAt,
  type MeterSetting,
  networkAt,
  type Probes,
  readingAt,
  readingKind,
} from './probing.ts';

/** A reading that cannot be taken for the one expected, whatever the tolerances, and the joints any one of which makes it when it is not soldered through. */
interface MissingJoint {
  /** Ohms, infinite for an open circuit; near this for all the joints. */
  readonly ohms: number;
  /** Indices of joints, in the order written. */
  readonly joints: readonly number[];
}

export interface Misread {
  /** By reading, the open circuit first. */
  readonly missing: readonly MissingJoint[];
  /** Lugs beside each other, on one part, that short the probes where solder joins them; empty where a short is expected. */
  readonly bridged: readonly (readonly [LugId, LugId])[];
  /** Names of the parts whose resistance counts, in the order written; none where a short is expected. */
  readonly values: readonly string[];
}

/** A reading that changes by less than this share goes by another part. */
const ALIKE = 0.005;

/**
 * What other readings mean at one pair of probes.
 *
 * @param after the harness by then
 * @param without the same without one of its joints, by that joint's index
 */
export function misreadings(
  circuit: Circuit,
  after: Circuit,
  without: ReadonlyMap<number, Circuit>,
  probes: Probes,
  setting: MeterSetting,
): Misread {
  const all = networkAt(circuit, after, setting);
  const expected = expectedAt(circuit, all, probes);
  const { nominal } = expected;
  const found: (ExpectedReading & { readonly joints: number[] })[] = [];
  for (const [i, less] of without) {
    const other = networkAt(circuit, less, setting);
    const reads = expectedAt(circuit, other, probes);
    if (!differs(expected, reads)) continue;
    const alike = found.find((one) => !differs(one, reads));
    if (alike) alike.joints.push(i);
    else found.push({ ...reads, joints: [i] });
  }
  const node = (lug: LugId) => all.nodeOf.get(lug);
  const [a, b] = [node(probes.from), node(probes.to)];
  const bridged =
    readingKind(nominal) === 'short'
      ? []
      : circuit.kit.parts
          .flatMap(neighboursOf)
          .filter(
            ([one, other]) =>
              (node(one) === a && node(other) === b) || (node(one) === b && node(other) === a),
          );
  return {
    missing: found
      .map(({ nominal: ohms, joints }) => ({ ohms, joints }))
      .sort((one, other) => other.ohms - one.ohms),
    bridged,
    values: readingKind(nominal) === 'value' ? valuesIn(all, probes, circuit) : [],
  };
}

/** Parts that the reading goes by: it is another when their resistance is. */
function valuesIn(netlist: Netlist, probes: Probes, { kit }: Circuit): readonly string[] {
  const nominal = readingAt(netlist, probes);
  return kit.parts.flatMap(({ name }) => {
    const branches = netlist.branches.map((branch) =>
      partOf(branch) === name && branch.kind !== 'capacitor' ? { ...branch, ohms: branch.ohms * 2 } : branch,
    );
    return same(readingAt({ ...netlist, branches, nodeOf: netlist.nodeOf }, probes), nominal) ? [] : [name];
  });
}

const same = (a: number, b: number): boolean =>
  a === b || (readingKind(a) === 'short' && readingKind(b) === 'short') || Math.abs(a / b - 1) < ALIKE;

/** Pairs of lugs of a part that lie so near each other that a drop of solder can join them; common practice, no source. */
const neighboursOf = remembered((part: Part): readonly (readonly [LugId, LugId])[] => {
  const { lugs } = outlineOf(part);
  return lugs.flatMap((one, i) =>
    lugs
      .slice(i + 1)
      .filter(({ tag }) => gapBetween(one.tag, tag) <= NEAR)
      .map((other) => [lugId(part.name, one.lug), lugId(part.name, other.lug)] as const),
  );
});

/** Drawing units: the tags of lugs that follow one another on a part are nearer. */
const NEAR = 2.5 * PITCH;

function gapBetween(r: Rect, s: Rect): number {
  const along = (from: number, size: number, other: number, otherSize: number): number =>
    Math.max(0, Math.max(from, other) - Math.min(from + size, other + otherSize));
  return Math.hypot(along(r.x, r.width, s.x, s.width), along(r.y, r.height, s.y, s.height));
}
