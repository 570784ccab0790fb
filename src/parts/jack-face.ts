/** What the jacks of this folder share in their looks: the spring that touches the plug's tip, and the bush that holds its sleeve. */
import { at, type Rect } from '../common/geometry.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

/** How far below the sleeve's lug the middle of the plug lies. */
const AXIS = 2;

/** Where the plug lies, by the height of the sleeve's lug. */
export const axisAt = (sleeve: number): number => sleeve + AXIS;

/** @param tip,sleeve heights of the two lugs at the left edge */
export function monoFace(body: Rect, tip: number, sleeve: number): readonly Shape[] {
  const left = body.x + 34;
  const right = body.x + body.width - 14;
  const axis = axisAt(sleeve);
  return [
    plate(body, 12),
    conductor(
      2,
      run(
        at(body.x, tip),
        at(body.x + 18, tip),
        at(body.x + 18, axis - 14),
        at(left + 8, axis - 14),
        at(left + 16, axis - 6),
        at(left + 24, axis - 14),
      ),
    ),
    conductor(2, run(at(body.x, sleeve), at(right - 14, sleeve))),
    {
      shape: 'rect',
      role: 'bush',
      rect: { x: right - 16, y: axis - 16, width: 12, height: 32 },
      radius: 2,
    },
  ];
}
