/** Which wire is open where two cross: exact, whatever hangs together; what cannot be drawn well is laid elsewhere. */
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/common/geometry.ts';
import { PITCH } from '../../src/common/geometry.ts';
import { seeded } from '../../src/common/random.ts';
import { prepare } from '../../src/pipeline.ts';
import { clearCrossings } from '../../src/place/clear.ts';
import { openingsOf, spoiltCrossings } from '../../src/place/openings.ts';
import type { GridPart, PlacedWire, Placement } from '../../src/place/placement.ts';
import { Wiring } from '../../src/place/wiring.ts';
import { kitOfSeed, LOW } from '../random/proof.ts';

const wire = (i: number, ...points: readonly (readonly [number, number])[]): PlacedWire => ({
  joint: { kind: 'wire', from: { part: `a${i}`, lug: '1' }, to: { part: `b${i}`, lug: '1' }, index: i },
  own: [],
  points: points.map(([x, y]) => ({ x, y })),
});
const opened = (wires: readonly PlacedWire[]) => openingsOf(wires, (i) => i, new Set(wires.keys()));

interface Met {
  readonly at: Point;
  /** The stretches that cross there: the wire, and what of it an opening must keep 18 or 22 units from. */
  readonly sides: readonly { readonly on: string; readonly well: boolean }[];
}

/** Every crossing, by brute force and by the rule's own words. */
function metIn(wires: readonly PlacedWire[]): readonly Met[] {
  const stretches = wires.flatMap(({ points }, w) =>
    points.slice(1).map((b, i) => ({ w, i, a: points[i] ?? b, b, last: points.length - 2 })),
  );
  const inside = (v: number, a: number, b: number): boolean => v > Math.min(a, b) && v < Math.max(a, b);
  return stretches.flatMap((h) =>
    stretches.flatMap((v): readonly Met[] => {
      const at = { x: v.a.x, y: h.a.y };
      if (h.w === v.w || h.a.y !== h.b.y || v.a.x !== v.b.x) return [];
      if (!inside(at.x, h.a.x, h.b.x) || !inside(at.y, v.a.y, v.b.y)) return [];
      const side = ({ w, i, a, b, last }: typeof h) => {
        const far = (p: Point): number => Math.abs(p.x - at.x) + Math.abs(p.y - at.y);
        return {
          on: `${w}.${i}`,
          well: far(a) >= (i === 0 ? 22 : 18) && far(b) >= (i === last ? 22 : 18),
        };
      };
      return [{ at, sides: [side(h), side(v)] }];
    }),
  );
}

/** Whether any choice at all leaves 12 units between two openings, and 16 and 12 to ends and corners. */
function canBe(met: readonly Met[]): boolean {
  for (let choice = 0; choice < 2 ** met.length; choice++) {
    const open = met.map(({ at, sides }, k) => ({ at, side: sides[(choice >> k) & 1] }));
    const good = open.every(
      ({ at, side }, k) =>
        side?.well &&
        open.every(
          (other, m) =>
            m === k ||
            other.side?.on !== side.on ||
            Math.abs(other.at.x - at.x) + Math.abs(other.at.y - at.y) >= 24,
        ),
    );
    if (good) return true;
  }
  return false;
}

describe('which wire is open', () => {
  it('none is spoilt where any choice at all spoils none, and some are where none does', () => {
    const random = seeded(71104);
    const upTo = (most: number): number => Math.floor(random() * (most + 1));
    let [good, bad] = [0, 0];
    for (let run = 0; run < 1500; run++) {
      const wires = Array.from({ length: 6 }, (_, i) => {
        const points: [number, number][] = [[PITCH * upTo(9), PITCH * upTo(9)]];
        for (let n = 1 + upTo(2), level = random() < 0.5; n > 0; n--, level = !level) {
          const [x, y] = points.at(-1) ?? [0, 0];
          const by = PITCH * (2 + upTo(6)) * (random() < 0.5 ? 1 : -1);
          points.push(level ? [x + by, y] : [x, y + by]);
        }
        return wire(i, ...points);
      });
      const met = metIn(wires);
      if (met.length === 0 || met.length > 12) continue;
      const possible = canBe(met);
      expect(spoiltCrossings(wires).length === 0, JSON.stringify(wires.map(({ points }) => points))).toBe(
        possible,
      );
      expect(
        opened(wires)
          .of.map(({ length }) => length)
          .reduce((a, b) => a + b),
      ).toBe(met.length);
      if (possible) good++;
      else bad++;
    }
    expect(good).toBeGreaterThan(100);
    expect(bad).toBeGreaterThan(100);
  });

  it('on a lattice as fine as the grid, every second opening of each wire', () => {
    const five = [0, 1, 2, 3, 4].map((i) => PITCH * i);
    const wires = [
      ...five.map((y, i) => wire(i, [-64, y], [128, y])),
      ...five.map((x, i) => wire(5 + i, [x, -64], [x, 128])),
    ];
    const { of, spoilt } = opened(wires);
    expect(spoilt).toEqual([]);
    expect(of.map(({ length }) => length)).toEqual([3, 2, 3, 2, 3, 2, 3, 2, 3, 2]);
  });

  it('a wire that bends a step from a crossing is not the one that opens; where both do, the crossing is spoilt', () => {
    const bent = wire(0, [0, 200], [0, 0], [200, 0]);
    expect(opened([bent, wire(1, [16, -80], [16, 80])]).of.map(({ length }) => length)).toEqual([0, 1]);
    const both = [bent, wire(1, [16, -80], [16, 16], [80, 16])];
    expect(spoiltCrossings(both).map(({ at, wires }) => [at, wires])).toEqual([[{ x: 16, y: 0 }, [0, 1]]]);
    expect(opened(both).of.map(({ length }) => length)).toEqual([1, 0]);
  });
});

const standing = ({ parts }: Placement): readonly GridPart[] =>
  parts.map(({ part, outline, frame }) => ({
    part,
    outline,
    column: frame.x / PITCH,
    row: frame.y / PITCH,
    turn: frame.turn,
    mirror: frame.mirror,
    fixed: true,
    turnable: false,
  }));

it('wires that spoil a crossing are laid elsewhere, each still from lug to lug', {
  timeout: 120_000,
}, async () => {
  let [before, after] = [0, 0];
  for (let seed = 1; seed <= 32; seed++) {
    const kit = kitOfSeed(seed);
    if (!('parts' in kit)) continue;
    const { placement } = await prepare(kit, undefined, { effort: LOW });
    const wiring = new Wiring(standing(placement), kit.joints, 8, false);
    if (!wiring.routeAll(1)) continue;
    const ends = ({ wires }: { readonly wires: readonly PlacedWire[] }) =>
      wires.map(({ points }) => points.length > 1);
    const was = wiring.result();
    const spoilt = spoiltCrossings(was.wires).length;
    const left = clearCrossings(wiring);
    const is = wiring.result();
    expect(left).toBe(spoiltCrossings(is.wires).length);
    expect(left).toBeLessThanOrEqual(spoilt);
    expect(ends(is)).toEqual(ends(was));
    if (spoilt === 0) expect(is).toEqual(was);
    before += spoilt;
    after += left;
  }
  expect(before).toBeGreaterThan(10);
  expect(after).toBeLessThan(before / 10);
});
