/** What it costs a number to stand nearer to another end or lug than to its own, where it would be read as that one's. */
import { lugIdOf } from '../../circuit/circuit.ts';
import type { Point, Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { dotAt, type Harness } from './harness.ts';
import { type EndName, solderedEnds } from './joint-ends.ts';
import type { Spot } from './spots.ts';

/** By how much nearer its own end is to be, as a factor and in drawing units. */
const NEARER = { times: 1.1, by: 3 } as const;
/** What it costs at all, and each unit that is lacking. A number on its own line is told by the line too. */
const PRICE = { aside: { any: 300, unit: 15 }, onLine: { any: 150, unit: 8 } } as const;

/** Of a point from a rectangle, 0 inside. */
const farFrom = (p: Point, { x, y, width, height }: Rect): number =>
  Math.hypot(Math.max(0, x - p.x, p.x - x - width), Math.max(0, y - p.y, p.y - y - height));
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Prices the spots of numbers of a harness by what they stand near. */
export function nearnessIn(harness: Harness) {
  const { sheet, made, tags, concerned, parts } = harness;
  const { wires } = sheet.placement;
  const ends = wires.flatMap((_, joint) =>
    made[joint] === 'absent'
      ? []
      : solderedEnds(sheet.placement, joint).map((end) => ({ joint, end, tip: dotAt(harness, joint, end) })),
  );
  const lugs = parts
    .filter(({ part }) => concerned.has(part.name))
    .flatMap(({ part, outline }) =>
      outline.lugs.flatMap(({ lug }) => tags.get(lugIdOf({ part: part.name, lug })) ?? []),
    );
  return (joint: number, end: EndName) => {
    const tip = dotAt(harness, joint, end);
    const { from, to } = nth(wires, joint).joint;
    const lug = lugIdOf(end === 'from' ? from : to);
    const own = tags.get(lug)?.rect;
    // The joint's other end has the same number.
    const foreign = ends.filter((one) => one.joint !== joint);
    const others = lugs.filter(({ id }) => id !== lugIdOf(from) && id !== lugIdOf(to));
    const priced = (spot: Spot): Spot => {
      const near = Math.min(
        apart(spot.centre, tip),
        own ? farFrom(spot.centre, own) : Number.POSITIVE_INFINITY,
      );
      const wanted = near * NEARER.times + NEARER.by;
      let other = wanted;
      for (const { tip: far } of foreign) other = Math.min(other, apart(spot.centre, far));
      for (const { rect } of others) other = Math.min(other, farFrom(spot.centre, rect));
      const lacks = wanted - other;
      if (lacks <= 0) return spot;
      const price = spot.leader ? PRICE.aside : PRICE.onLine;
      return { ...spot, price: spot.price + price.any + price.unit * lacks };
    };
    // One by one, as far ones are only looked at where no near one is good.
    return function* (spots: Iterable<Spot>): Generator<Spot> {
      for (const spot of spots) yield priced(spot);
    };
  };
}
