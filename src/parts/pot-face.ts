/** What a gang of a pot looks like: the track from one outer lug to the other, and the wiper where it stands. */
import { at, type Point } from '../common/geometry.ts';
import type { Gang, GangLugs } from './gang.ts';
import type { TrackLaw } from './kind.ts';
import { type Outline, tagCentre } from './outline.ts';
import { BEFORE_END, OPENING, onTrack, SHORT_OF_TRACK, type Size, TRACK_WIDTH } from './pot-size.ts';
import { conductor, type PathStep, run, type Shape } from './shape.ts';

/** Where a gang of some law rests: a blend in the middle, where both pickups are at full. */
const restOf = (law: TrackLaw): number => (law === 'lower-half' || law === 'upper-half' ? 0.5 : 1);

/** How far before an end a no-load track ends, as a share of the rotation. */
const GAP = 0.1;
/** How far up from the hub the arm of a wiper is seen that stands between the ends, and the dot where it touches the track. */
const STUB = 8;
const TOUCH = 4.5;

/** Where a track ends: clockwise, anticlockwise. */
const endsOf = (noLoad: Gang['noLoad']): readonly [number, number] => [
  noLoad === 'clockwise' ? 1 - GAP : 1,
  noLoad === 'anticlockwise' ? GAP : 0,
];

/** Degrees clockwise from the top for a rotation, seen from the solder side: there clockwise turns to the left. */
const degreesAt = (rotation: number): number =>
  rotation >= 1
    ? 180 + OPENING
    : rotation <= 0
      ? 180 - OPENING
      : 540 - OPENING - rotation * (360 - 2 * OPENING);

/** A stretch of the circle that the track lies on, from a rotation down to a lower one. */
const arc = (size: Size, from: number, to: number): readonly PathStep[] => [
  { to: onTrack(size, degreesAt(from)) },
  {
    to: onTrack(size, degreesAt(to)),
    radius: size.track,
    large: (from - to) * (360 - 2 * OPENING) > 180,
    clockwise: true,
  },
];

const trackShape = (size: Size, from: number, to: number): Shape => ({
  shape: 'path',
  role: 'track',
  runs: [arc(size, from, to)],
  width: TRACK_WIDTH,
});

/** Resistance, and where the law has none a conductor. */
function trackShapes(size: Size, { taper, noLoad }: Gang): readonly Shape[] {
  switch (taper.value) {
    case 'lower-half':
      return [trackShape(size, 0.5, 0), conductor(2, arc(size, 1, 0.5))];
    case 'upper-half':
      return [trackShape(size, 1, 0.5), conductor(2, arc(size, 0.5, 0))];
    case 'linear':
    case 'log':
    case 'reverse-log':
      return [trackShape(size, ...endsOf(noLoad))];
  }
}

/**
 * The wiper: from its lug up to a hub, and from there an arm to the track; between the ends words hide the arm, where any stand
 * inside the track.
 */
function wiperShapes(size: Size, lugTop: Point, rotation: number, free: boolean): readonly Shape[] {
  const { centre, track } = size;
  const hub = at(centre.x, centre.y + track - 1);
  const dot = (middle: Point, radius: number): Shape => ({
    shape: 'circle',
    role: 'dot',
    centre: middle,
    radius,
  });
  if (rotation > 0 && rotation < 1)
    return [
      conductor(2, run(lugTop, hub, free ? onTrack(size, degreesAt(rotation)) : at(hub.x, hub.y - STUB))),
      dot(hub, 2.5),
      dot(onTrack(size, degreesAt(rotation)), TOUCH),
    ];
  const before = rotation >= 1 ? BEFORE_END : -BEFORE_END;
  const tip = onTrack(size, degreesAt(rotation) + before, SHORT_OF_TRACK);
  return [conductor(2, run(lugTop, hub, tip)), dot(hub, 2.5), dot(tip, 3)];
}

/** What is seen through the case of one gang; `free` where no words stand inside its track. */
export function gangFace(
  size: Size,
  outline: Outline,
  lugs: GangLugs,
  gang: Gang,
  rotation = restOf(gang.taper.value),
  free = false,
): readonly Shape[] {
  const lugTop = (lug: string): Point => {
    const { x, y } = tagCentre(outline, lug);
    return at(x, y - 10);
  };
  const [clockwise, anticlockwise] = endsOf(gang.noLoad).map((x) => onTrack(size, degreesAt(x)));
  return [
    ...trackShapes(size, gang),
    conductor(
      1.5,
      ...(clockwise ? [run(clockwise, lugTop(lugs.clockwise))] : []),
      ...(anticlockwise ? [run(anticlockwise, lugTop(lugs.anticlockwise))] : []),
    ),
    ...wiperShapes(size, lugTop(lugs.wiper), rotation, free),
  ];
}
