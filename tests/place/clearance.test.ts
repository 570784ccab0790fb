/** No way is found within six units of a lug, on however fine a part: the clearance that the style asks for. */
import { expect, it } from 'vitest';
import type { Joint } from '../../src/describe/kit.ts';
import { groundPoint } from '../../src/parts/ground-point.ts';
import type { Outline } from '../../src/parts/outline.ts';
import type { GridPart } from '../../src/place/placement.ts';
import { Wiring } from '../../src/place/wiring.ts';

/** A part that is nothing but a tag, `half` units high either way, two grid units wide. */
function tagged(name: string, column: number, half: number): GridPart {
  const middle = { x: 16, y: 16 };
  const outline: Outline = {
    width: 32,
    height: 32,
    body: { x: 15, y: 15, width: 2, height: 2 },
    blocked: [],
    labels: [],
    lugs: [
      {
        lug: '1',
        tag: { x: 14, y: middle.y - half, width: 4, height: 2 * half },
        ports: [{ node: { x: 0, y: 16 }, inward: { x: 1, y: 0 }, spot: { x: 14, y: 16 } }],
      },
    ],
  };
  const part = groundPoint.build({ kind: 'ground-point', name, label: name }, {});
  return { part, outline, column, row: 0, turn: 0, mirror: false, fixed: true, turnable: false };
}

/** How far the wire from `a` to `b` stays from the tag of the part between them. */
function distanceOf(half: number): number {
  const gridParts = [tagged('a', 0, 4), tagged('between', 8, half), tagged('b', 16, 4)];
  const joint: Joint = { kind: 'wire', from: { part: 'a', lug: '1' }, to: { part: 'b', lug: '1' }, index: 0 };
  const wiring = new Wiring(gridParts, [joint], 8, false);
  expect(wiring.routeAll(1)).toBe(true);
  const { frames, wires } = wiring.result();
  const frame = frames.get('between');
  const tag = {
    x0: (frame?.x ?? 0) + 14,
    x1: (frame?.x ?? 0) + 18,
    y0: (frame?.y ?? 0) + 16 - half,
    y1: (frame?.y ?? 0) + 16 + half,
  };
  const points = wires[0]?.points ?? [];
  return Math.min(
    ...points.slice(1).map((b, i) => {
      const a = points[i] ?? b;
      const dx = Math.max(tag.x0 - Math.max(a.x, b.x), Math.min(a.x, b.x) - tag.x1, 0);
      const dy = Math.max(tag.y0 - Math.max(a.y, b.y), Math.min(a.y, b.y) - tag.y1, 0);
      return Math.hypot(dx, dy);
    }),
  );
}

it('keeps six units off a lug, wherever between the grid lines its edge lies', () => {
  for (let half = 1; half <= 24; half += 0.5)
    expect(distanceOf(half), `a tag of ${2 * half}`).toBeGreaterThanOrEqual(6);
});
