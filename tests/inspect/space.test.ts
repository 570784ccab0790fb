/** What of a stroke is painted (SVG 2, 13.5.4, stroke-linecap; from memory). */
import { expect, it } from 'vitest';
import { inks } from '../../src/inspect/space.ts';

const box = { x: 0, y: 0, width: 10, height: 10 };
const point = { a: { x: 5, y: 12 }, b: { x: 5, y: 12 } };

it('a stretch without length is painted by its caps alone', () => {
  expect(inks(point, 4, 0, box)).toBe(false);
  expect(inks(point, 4, 4, box)).toBe(true);
});
it('a stretch with length is painted as wide as the stroke', () => {
  const level = { a: { x: 2, y: 12 }, b: { x: 8, y: 12 } };
  expect(inks(level, 4, 0, box)).toBe(true);
  expect(inks(level, 1, 0, box)).toBe(false);
});
