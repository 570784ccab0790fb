import { at, type Rect } from '../../common/geometry.ts';
import { POT_CENTRE, POT_RADIUS } from '../../place/outlines/pot.ts';
import { LINE } from '../theme.ts';
import { type Face, inner, labels, tags } from './face.ts';
import { fitLabels } from './fit.ts';

const TRACK = 39;
const TRACK_WIDTH = 5;
/** Half of the opening at the bottom of the track, degrees. */
const OPENING = 48;

const onTrack = (degrees: number, radius = TRACK) => {
  const angle = (degrees * Math.PI) / 180;
  return at(POT_CENTRE.x + radius * Math.sin(angle), POT_CENTRE.y - radius * Math.cos(angle));
};

/** How far below the middle the wiper's arm leaves room for words. */
const ABOVE_WIPER = 19;

/** Whether a box lies inside the track and above the wiper. */
const insideTrack = ({ x, y, width, height }: Rect): boolean =>
  y + height <= POT_CENTRE.y + ABOVE_WIPER &&
  [x, x + width].every((px) =>
    [y, y + height].every(
      (py) => Math.hypot(px - POT_CENTRE.x, py - POT_CENTRE.y) <= TRACK - TRACK_WIDTH / 2 - 1,
    ),
  );

/** A pot: its case, and seen through it the track from lug 1 to lug 3 and the wiper, standing at full. */
export const potFace: Face = (pen, placed, look) => {
  const { theme } = look;
  const { x, y } = POT_CENTRE;
  pen.circle(POT_CENTRE, POT_RADIUS, {
    class: 'sl-case',
    fill: theme.plate,
    stroke: theme.outline,
    'stroke-width': LINE.outline,
  });
  const [clockwise, anticlockwise] = [onTrack(180 + OPENING), onTrack(180 - OPENING)];
  pen.path([[{ to: clockwise }, { to: anticlockwise, radius: TRACK, large: true, clockwise: true }]], {
    stroke: theme.inside,
    'stroke-width': TRACK_WIDTH,
    'stroke-linecap': 'round',
  });
  const lugTop = (lug: string) => {
    const tag = placed.outline.lugs.find((l) => l.lug === lug)?.tag ?? { x, y, width: 0, height: 0 };
    return at(tag.x + tag.width / 2, tag.y);
  };
  pen.path(
    [
      [{ to: clockwise }, { to: lugTop('3') }],
      [{ to: anticlockwise }, { to: lugTop('1') }],
    ],
    inner(theme),
  );
  // The wiper: from its lug up to a hub, and from there an arm to the clockwise end of the track.
  const hub = at(x, y + 30);
  const tip = onTrack(180 + OPENING + 4, TRACK - 4);
  pen.path([[{ to: lugTop('2') }, { to: hub }, { to: tip }]], inner(theme, 2));
  pen.circle(hub, 2.5, { fill: theme.outline });
  pen.circle(tip, 3, { fill: theme.outline });
  labels(pen, placed, theme, undefined, fitLabels(placed.outline.labels, insideTrack));
  tags(pen, placed, look);
};
