/** Another placement, one step away: what a search tries. */
import { remembered } from '../common/remembered.ts';
import type { Joint } from '../describe/kit.ts';
import { type Orientation, orientationsOf } from '../parts/index.ts';
import type { GridPart } from './placement.ts';
import { boxOf, lugCentre } from './settle.ts';

type Random = () => number;

const pick = <T>(from: readonly T[], random: Random): T | undefined =>
  from[Math.floor(random() * from.length)];

/** By part, its joints with other parts: asked for at every step. */
const jointsOf = remembered((joints: readonly Joint[]): ReadonlyMap<string, readonly Joint[]> => {
  const of = new Map<string, Joint[]>();
  for (const joint of joints)
    if (joint.from.part !== joint.to.part)
      for (const { part } of [joint.from, joint.to]) of.set(part, [...(of.get(part) ?? []), joint]);
  return of;
});

/** The ways a part may stand other than it does. */
const otherWays = ({ part, turn, mirror, turnable }: GridPart): readonly Orientation[] =>
  turnable ? orientationsOf(part).filter((one) => one.turn !== turn || one.mirror !== mirror) : [];

/** A part turned about its middle. */
export function turnedTo(gridPart: GridPart, { turn, mirror }: Orientation): GridPart {
  const turned = { ...gridPart, turn, mirror };
  const [a, b] = [boxOf(gridPart), boxOf(turned)];
  return {
    ...turned,
    column: Math.round((a.x0 + a.x1 - b.x1 + b.x0) / 2),
    row: Math.round((a.y0 + a.y1 - b.y1 + b.y0) / 2),
  };
}

/** In `step`, a number that says to turn the part. */
const TURN = 0.5;

/**
 * A loose part moved, turned, brought beside one that it is joined to, or exchanged with another.
 *
 * @param loose numbers of the parts that may be moved
 * @returns `undefined` where the step that was drawn changes nothing
 */
export function step(
  gridParts: readonly GridPart[],
  loose: readonly number[],
  joints: readonly Joint[],
  random: Random,
): readonly GridPart[] | undefined {
  const i = pick(loose, random) ?? 0;
  const gridPart = gridParts[i];
  if (!gridPart) return undefined;
  const put = (next: Partial<GridPart>): readonly GridPart[] =>
    gridParts.map((one, k) => (k === i ? { ...one, ...next } : one));
  const kind = gridPart.fixed ? TURN : random();
  if (kind < 0.4) {
    const reach = random() < 0.5 ? 2 : 8;
    const off = (): number => Math.floor(random() * (2 * reach + 1)) - reach;
    return put({ column: gridPart.column + off(), row: gridPart.row + off() });
  }
  if (kind < 0.55) {
    const way = pick(otherWays(gridPart), random);
    return way && put(turnedTo(gridPart, way));
  }
  if (kind < 0.85) {
    const next = beside(gridParts, gridPart, joints, random);
    return next && put(next);
  }
  const other = gridParts[pick(loose, random) ?? 0];
  if (!other || other === gridPart || other.fixed) return undefined;
  return gridParts.map((one) =>
    one === gridPart
      ? { ...one, column: other.column, row: other.row }
      : one === other
        ? { ...one, column: gridPart.column, row: gridPart.row }
        : one,
  );
}

/** The part where one of its lugs comes near the lug it is joined to, turned otherwise in half of the cases. */
function beside(
  gridParts: readonly GridPart[],
  gridPart: GridPart,
  joints: readonly Joint[],
  random: Random,
): Partial<GridPart> | undefined {
  const joint = pick(jointsOf(joints).get(gridPart.part.name) ?? [], random);
  if (!joint) return undefined;
  const [near, far] =
    joint.from.part === gridPart.part.name ? [joint.from, joint.to] : [joint.to, joint.from];
  const other = gridParts.find((one) => one.part.name === far.part);
  if (!other) return undefined;
  const way = (random() < 0.5 ? pick(otherWays(gridPart), random) : undefined) ?? gridPart;
  const turned = { ...gridPart, turn: way.turn, mirror: way.mirror };
  const a = lugCentre(turned, near.lug);
  const b = lugCentre(other, far.lug);
  const off = (): number => Math.floor(random() * 13) - 6;
  return {
    turn: way.turn,
    mirror: way.mirror,
    column: gridPart.column + b.x - a.x + off(),
    row: gridPart.row + b.y - a.y + off(),
  };
}
