/** A placement seen from the other side: left and right exchanged. Frames mirror with it; text keeps upright. */
import { round2 } from '../common/geometry.ts';
import { extent, type Turn } from './frame.ts';
import type { Placement } from './placement.ts';

/** The same placement as it looks from behind. Turning it twice gives it back. */
export function flipped(placement: Placement): Placement {
  const { width } = placement;
  return {
    ...placement,
    parts: placement.parts.map((placed) => {
      const { frame } = placed;
      return {
        ...placed,
        frame: {
          ...frame,
          x: width - frame.x - extent(frame).width,
          mirror: !frame.mirror,
          // A quarter turn seen from behind goes the other way.
          turn: ((4 - frame.turn) % 4) as Turn,
        },
      };
    }),
    wires: placement.wires.map((wire) => ({
      ...wire,
      points: wire.points.map((p) => ({ x: round2(width - p.x), y: p.y })),
    })),
  };
}
