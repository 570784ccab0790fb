/** The index of what lies near: it may name too much, as what lies in the same square does, and never too little. */
import { expect, it } from 'vitest';
import { overlaps, type Rect } from '../../src/common/geometry.ts';
import { seeded } from '../../src/common/random.ts';
import { SpatialIndex } from '../../src/inspect/near.ts';
import { grown } from '../../src/inspect/space.ts';

const near = (boxes: readonly Rect[]): SpatialIndex<Rect> => new SpatialIndex(boxes, (box) => box);

it('names all that a box meets, each once and in its order, and nothing from two squares away', () => {
  const random = seeded(1618);
  const box = (): Rect => ({
    x: random() * 2000 - 1000,
    y: random() * 2000 - 1000,
    width: random() * 300,
    height: random() * 300,
  });
  const boxes = Array.from({ length: 300 }, box);
  const index = near(boxes);
  for (let i = 0; i < 200; i++) {
    const asked = box();
    const found = index.query(asked);
    for (const one of boxes) if (overlaps(one, asked)) expect(found).toContain(one);
    // A square is 96 wide: what is a whole one off in either direction cannot share any.
    for (const one of found) expect(overlaps(one, grown(asked, 97))).toBe(true);
    expect(found.map((one) => boxes.indexOf(one))).toEqual(
      found.map((one) => boxes.indexOf(one)).sort((a, b) => a - b),
    );
    expect(new Set(found).size).toBe(found.length);
  }
});

it('boxes that touch by a side or a corner are named, as their lines may be thick', () => {
  const one = { x: 10, y: 10, width: 86, height: 86 };
  const index = near([one]);
  expect(index.query({ x: 96, y: 96, width: 50, height: 50 })).toEqual([one]);
  expect(index.query({ x: -40, y: -40, width: 50, height: 50 })).toEqual([one]);
});

it('one far beyond any sheet is named for what lies there, in moderate time, and for nothing nearer', () => {
  const far = { x: 1e9, y: 5, width: 10, height: 10 };
  const long = { x: -1e12, y: 300, width: 2e12, height: 10 };
  // The last square before the bounds, and the first of the row below it at the other end.
  const last = { x: 1999.5 * 96, y: 5, width: 1, height: 1 };
  const index = near([far, long, last]);
  expect(index.query({ x: 2e9, y: 5, width: 10, height: 10 })).toContain(far);
  expect(index.query({ x: 0, y: 300, width: 10, height: 10 })).toEqual([long]);
  expect(index.query({ x: 0, y: 5, width: 10, height: 10 })).toEqual([]);
  for (let column = -2100; column < 2100; column += 7)
    for (const y of [-150, 110]) {
      const found = index.query({ x: column * 96 + 40, y, width: 10, height: 10 });
      expect(found).toEqual([]);
    }
  expect(index.query({ x: 1999.5 * 96, y: 5, width: 1, height: 1 })).toContain(last);
});
