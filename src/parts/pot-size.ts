/** How large a gang of a pot is, and the room that its words have inside the track. */
import { at, type Point, type Rect } from '../common/geometry.ts';
import { must } from '../common/must.ts';
import { firstFit, settingsOf } from './fit.ts';
import { g, type LabelSlot } from './outline.ts';

/** How much larger than the usual case a long name makes it; grid units, to every side. */
const LARGEST = 8;
export const USUAL = { middle: 4, radius: 3.5 } as const;

/** What depends on the size of the case, drawing units. */
export interface Size {
  readonly centre: Point;
  readonly radius: number;
  /** Grid units: how far from the left the gang begins, and from there to its middle. */
  readonly left: number;
  readonly middle: number;
  readonly lugRow: number;
  /** Radius of the track's middle, and how far below the centre the wiper's arm leaves room for words. */
  readonly track: number;
  readonly free: number;
}

/**
 * @param left how far to the right the gang stands, grid units
 * @param drop how much further below the case than usual its lugs hang, grid units
 */
export function sizeOf(more: number, left = 0, drop = 0): Size {
  const middle = USUAL.middle + more;
  const radius = g(USUAL.radius + more);
  const track = radius - TRACK_INSET;
  return {
    centre: at(g(left + middle), g(middle)),
    radius,
    left,
    middle,
    lugRow: 2 * middle + drop,
    track,
    free: Math.cos(radians(OPENING + BEFORE_END)) * (track - SHORT_OF_TRACK) - ARM_ROOM,
  };
}

export interface GangLabels {
  readonly labels: readonly LabelSlot[];
  /** The same for a pot that lies on its side. */
  readonly asideLabels: readonly LabelSlot[];
}

/** The smallest pot that holds what it must. */
export function smallestPot<T>(held: (more: number) => T | undefined, what: string): T {
  for (let more = 0; more < LARGEST; more++) {
    const found = held(more);
    if (found !== undefined) return found;
  }
  return must(held(LARGEST), `a pot that holds ${what}`);
}

/** Name and value inside the track, whether the pot stands or lies on its side; nothing where they have no room. */
export function gangLabels(size: Size, label: string, value: string): GangLabels | undefined {
  const settings = settingsOf(label, value);
  const { x, y } = size.centre;
  // Near the middle of the free room first.
  const offs = Array.from({ length: 16 + 8 * (size.middle - USUAL.middle) }, (_, i) => i);
  const upright = offs.map((off) => at(x, y - 0.5 - off));
  const lying = offs.map((off) => at(x, y - off));
  const labels = settings
    .flatMap((lines) => upright.map((middle) => firstFit(lines, [middle], insideEitherWay(size, middle))))
    .find((found) => found !== undefined);
  const asideLabels = settings
    .flatMap((lines) => lying.map((middle) => firstFit(lines, [middle], besideWiper(size, middle))))
    .find((found) => found !== undefined);
  return labels && asideLabels ? { labels, asideLabels } : undefined;
}

/** Name and value between the tracks of two gangs, whether the pot stands or lies on its side; nothing where they have no room. */
export function labelsBetween(left: Size, right: Size, label: string, value: string): GangLabels | undefined {
  const middle = at((left.centre.x + right.centre.x) / 2, left.centre.y - 0.5);
  const across = middle.x - left.centre.x - left.track - TRACK_WIDTH / 2 - BESIDE_TRACK;
  const along = left.radius - TRACK_INSET;
  const within =
    (wide: number, high: number) =>
    ({ y, width, height }: Rect): boolean =>
      width / 2 <= wide && middle.y - y <= high && y + height - middle.y <= high;
  const settings = settingsOf(label, value);
  const first = (fits: (box: Rect) => boolean): readonly LabelSlot[] | undefined =>
    settings.map((lines) => firstFit(lines, [middle], fits)).find((found) => found !== undefined);
  const [labels, asideLabels] = [first(within(across, along)), first(within(along, across))];
  return labels && asideLabels ? { labels, asideLabels } : undefined;
}
/** Room between such words and a track. */
const BESIDE_TRACK = 4;

export const TRACK_WIDTH = 5;
/** From the case's edge to the middle of the track. */
const TRACK_INSET = 15;
/** Half of the opening at the bottom of the track, degrees; and how far before its end the wiper stands. */
export const OPENING = 36;
export const BEFORE_END = 4;
/** How far inside the track's middle the wiper's tip is, and the room between its arm and words. */
export const SHORT_OF_TRACK = 4;
const ARM_ROOM = 4;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
export const onTrack = ({ centre, track }: Size, degrees: number, inside = 0): Point => {
  const [angle, radius] = [radians(degrees), track - inside];
  return at(centre.x + radius * Math.sin(angle), centre.y - radius * Math.cos(angle));
};

/** Words keep so far from the middle. */
const innerRadius = ({ track }: Size): number => track - TRACK_WIDTH / 2 - 1;

/** Whether a box does so, and with the pot turned upside down as well, where words stand in their order about the same middle. */
const insideEitherWay =
  (size: Size, middle: Point) =>
  (box: Rect): boolean => {
    const inside = insideTrack(size);
    return inside(box) && inside({ ...box, y: 2 * middle.y - box.y - box.height });
  };

/** Whether a box lies inside the track and above the wiper. */
const insideTrack =
  (size: Size) =>
  ({ x, y, height }: Rect): boolean =>
    y + height <= size.centre.y + size.free &&
    // Words are centred, so that one end of them is as near to the track as the other.
    [y, y + height].every((py) => Math.hypot(x - size.centre.x, py - size.centre.y) <= innerRadius(size));

/**
 * Whether a box about a middle, upright on a pot that lies on its side, lies inside the track and beside the wiper, which then is on
 * its left or its right.
 */
const besideWiper =
  (size: Size, middle: Point) =>
  ({ y, width, height }: Rect): boolean => {
    const off = middle.y - size.centre.y;
    const [far, near] = [off - width / 2, off + width / 2];
    return (
      near <= size.free &&
      [y, y + height].every((py) =>
        [far, near].every((end) => Math.hypot(end, py - middle.y) <= innerRadius(size)),
      )
    );
  };
