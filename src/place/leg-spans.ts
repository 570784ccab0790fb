/** Components whose legs may be too short: how far apart the two lugs are on the instrument that such a part is soldered between. */
import { type Circuit, lugIdOf } from '../circuit/circuit.ts';
import { PITCH, type Point } from '../common/geometry.ts';
import { findPart, type Hand } from '../describe/kit.ts';
import { componentOf } from '../parts/index.ts';
import { tagCentre } from '../parts/outline.ts';
import type { Arrangement } from './arrangement.ts';
import { extent, toSheet } from './frame.ts';
import type { PlacedPart, Placement } from './placement.ts';
import { seatCentres } from './wire-lengths.ts';

/** Metres: a component's body, a leg as it is sold, and what of it goes round a lug. Common practice, no source. */
const BODY = 0.006;
const LEG = { long: 0.025, hooked: 0.003 } as const;
/** Metres from lug to lug that a component reaches with its legs. */
const REACH = BODY + 2 * (LEG.long - LEG.hooked);

interface LongSpan {
  /** The component's name in the kit. */
  readonly component: string;
  /** Metres in a straight line from one lug to the other. */
  readonly metres: number;
}

/**
 * Components that do not reach, in the order written. One between parts that the arrangement has no seats for, or under an arrangement
 * that does not say how large it is, is left out: nobody knows how far it has to reach.
 */
export function longSpans(
  circuit: Circuit,
  placement: Placement,
  hand: Hand,
  arrangement?: Arrangement,
): readonly LongSpan[] {
  const { kit, joints } = circuit;
  const { millimetres } = arrangement ?? {};
  if (millimetres === undefined) return [];
  const unit = millimetres / 1000;
  const centres = seatCentres(placement, kit.parts, arrangement);
  const side = hand === 'left' ? -1 : 1;
  const placeOf = ({ part, lug }: { readonly part: string; readonly lug: string }): Point | undefined => {
    const centre = centres.get(part);
    const placed = placement.parts.find((one) => one.part.name === part);
    if (!centre || !placed) return undefined;
    const own = fromMiddle(placed, lug);
    // Seats of a left-handed build are the other way round; the parts on them are not.
    return { x: side * centre.x + (own.x / PITCH) * unit, y: centre.y + (own.y / PITCH) * unit };
  };
  return kit.parts.flatMap(({ name }): LongSpan[] => {
    const part = findPart(kit, name);
    if (!part || !componentOf(part)) return [];
    const places = joints.flatMap(({ kind, from, to }) => {
      if (kind !== 'leg') return [];
      const other = from.part === name ? to : to.part === name ? from : undefined;
      const place = other && placeOf(other);
      return place ? [{ lug: lugIdOf(from.part === name ? from : to), place }] : [];
    });
    const metres = Math.max(
      0,
      ...places.flatMap((a) =>
        places.map((b) => (a.lug === b.lug ? 0 : Math.hypot(a.place.x - b.place.x, a.place.y - b.place.y))),
      ),
    );
    return metres > REACH ? [{ component: name, metres }] : [];
  });
}

/** Where a lug is from the middle of its part as it stands. */
function fromMiddle({ frame, outline }: PlacedPart, lug: string): Point {
  const { x, y } = toSheet(frame, tagCentre(outline, lug));
  const { width, height } = extent(frame);
  return { x: x - frame.x - width / 2, y: y - frame.y - height / 2 };
}
