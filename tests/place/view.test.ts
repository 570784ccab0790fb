/** Views and hands: geometry goes the other way round, parts stay what they are. */
import { describe, expect, it } from 'vitest';
import { arrangementNames, findArrangement } from '../../src/files/layouts.ts';
import { prepare } from '../../src/pipeline.ts';
import { extent, toSheet } from '../../src/place/frame.ts';
import type { Placement } from '../../src/place/placement.ts';
import { flipped } from '../../src/place/view.ts';
import { sampleCircuit } from '../analyse/kits.ts';

const { kit } = sampleCircuit('wren-sh');
const placed = async (name: string, hand: 'right' | 'left'): Promise<Placement> => {
  const arrangement = findArrangement(name);
  if (typeof arrangement === 'string') throw new Error(arrangement);
  // Without a search, which turns seated pickups as their wires are shortest.
  return (await prepare(kit, arrangement, { hand, effort: { steps: 0, seed: 1 } })).placement;
};

describe('seen from the other side', () => {
  it('left and right are exchanged, and twice is as before', async () => {
    const placement = await placed('plate-row', 'right');
    const other = flipped(placement);
    expect(flipped(other)).toEqual(placement);
    placement.parts.forEach(({ frame, outline }, i) => {
      const mirrored = other.parts[i]?.frame;
      if (!mirrored) throw new Error('a part is gone');
      expect(mirrored.x + extent(mirrored).width).toBeCloseTo(placement.width - frame.x, 6);
      for (const { tag } of outline.lugs) {
        const [a, b] = [toSheet(frame, tag), toSheet(mirrored, tag)];
        expect(b.x).toBeCloseTo(placement.width - a.x, 6);
        expect(b.y).toBeCloseTo(a.y, 6);
      }
    });
  });

  it('quarter turns as well', () => {
    for (const turn of [0, 1, 2, 3] as const) {
      const frame = { x: 30, y: 20, width: 40, height: 100, turn, mirror: false };
      const one = { width: 300, height: 200, wires: [], parts: [{ frame }] } as unknown as Placement;
      const other = flipped(one).parts[0]?.frame;
      if (!other) throw new Error('the part is gone');
      for (const p of [
        { x: 0, y: 0 },
        { x: 40, y: 0 },
        { x: 13, y: 77 },
      ]) {
        const [a, b] = [toSheet(frame, p), toSheet(other, p)];
        expect([b.x, b.y]).toEqual([300 - a.x, a.y]);
      }
    }
  });
});

describe('a left-handed build', () => {
  it.each(arrangementNames().filter((name) => !['free-flow', 'narrow-column'].includes(name)))(
    '%s: seats the other way round, pots and switches with their lugs as they are',
    async (name) => {
      const [right, left] = [await placed(name, 'right'), await placed(name, 'left')];
      const of = (placement: Placement, part: string) =>
        placement.parts.find((one) => one.part.name === part)?.frame ?? { x: 0, mirror: true };
      for (const part of ['selector', 'volume', 'tone']) expect(of(left, part).mirror).toBe(false);
      expect(of(left, 'neck').mirror).toBe(!of(right, 'neck').mirror);
      // Who sat left of another now sits right of it.
      expect(Math.sign(of(left, 'neck').x - of(left, 'tone').x)).toBe(
        -Math.sign(of(right, 'neck').x - of(right, 'tone').x),
      );
    },
  );
});
