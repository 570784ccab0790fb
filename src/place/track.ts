/** From a track on the grid to the corners of a line, from solder spot to solder spot. */
import { PITCH, type Point } from '../common/geometry.ts';
import type { Port } from '../parts/outline.ts';
import type { Grid, RoutedPath } from './route/grid.ts';

/** Where several joints meet, none runs over the corner to the spot: they would lie on one another there. */
export const met = (port: Port | undefined, several: boolean): Port | undefined =>
  port?.via && several ? { node: port.node, inward: port.inward, spot: port.via } : port;

/** A track's corners, from spot to spot. */
export function line(
  grid: Grid,
  track: RoutedPath,
  from: Port | undefined,
  to: Port | undefined,
): readonly Point[] {
  const path = [
    ...(from ? [from.spot] : []),
    ...(from?.via ? [from.via] : []),
    ...track.nodes.map((node) => ({
      x: (node % grid.columns) * PITCH,
      y: Math.floor(node / grid.columns) * PITCH,
    })),
    ...(to?.via ? [to.via] : []),
    ...(to ? [to.spot] : []),
  ];
  return path.filter((p, i) => {
    const [a, b] = [path[i - 1], path[i + 1]];
    return !a || !b || !((a.x === p.x && p.x === b.x) || (a.y === p.y && p.y === b.y));
  });
}
