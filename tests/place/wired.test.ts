/**
 * Wires laid between parts that stand on the grid, and laid again when these move: from solder spot to solder spot, square,
 * off every part; taken back they are as before. And what the search for better places may and may not do.
 */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { PITCH, type Point, type Rect } from '../../src/common/geometry.ts';
import { seeded } from '../../src/common/random.ts';
import type { Joint, Kit } from '../../src/describe/kit.ts';
import { isPickup, mayMirror, orientationsOf, outlineOf } from '../../src/parts/index.ts';
import type { Arrangement } from '../../src/place/arrangement.ts';
import { freeFlow } from '../../src/place/arrangement.ts';
import { extent, rectToSheet, toSheet } from '../../src/place/frame.ts';
import { improve } from '../../src/place/improve.ts';
import { NoRouteError, place } from '../../src/place/place.ts';
import type { GridPart, Placement } from '../../src/place/placement.ts';
import { apart, boxOf, settle } from '../../src/place/settle.ts';
import { bounds, endsOf, Wiring } from '../../src/place/wiring.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { makeKit, sampleCircuit } from '../analyse/kits.ts';

const random = seeded(60841);
const upTo = (most: number): number => Math.floor(random() * (most + 1));

/** The parts of a kit about a square, with room between them. */
function standing(kit: Kit, between: number): readonly GridPart[] {
  const side = Math.ceil(Math.sqrt(kit.parts.length));
  const parts = kit.parts.map((part, i) => ({
    part,
    outline: outlineOf(part),
    column: 24 * (i % side) + upTo(4),
    row: 16 * Math.floor(i / side) + upTo(3),
    turn: 0 as const,
    mirror: mayMirror(part) && i % 2 === 1,
    fixed: false,
    turnable: true,
  }));
  return settle(apart(parts, between), kit.joints, { between }, 3);
}

const KITS = ['wren-sh', 'heron-ss', 'kestrel-hss'].map((id) => sampleCircuit(id).kit);

interface Straight {
  readonly a: Point;
  readonly b: Point;
}
const straights = (points: readonly Point[]): readonly Straight[] =>
  points.slice(1).map((b, i) => ({ a: points[i] ?? b, b }));
const gapTo = ({ a, b }: Straight, r: Rect): number =>
  Math.hypot(
    Math.max(r.x - Math.max(a.x, b.x), Math.min(a.x, b.x) - r.x - r.width, 0),
    Math.max(r.y - Math.max(a.y, b.y), Math.min(a.y, b.y) - r.y - r.height, 0),
  );
const alongside = (s: Straight, t: Straight): boolean => {
  const level = s.a.y === s.b.y && t.a.y === t.b.y && s.a.y === t.a.y;
  const upright = s.a.x === s.b.x && t.a.x === t.b.x && s.a.x === t.a.x;
  const shared = (p: number, q: number, u: number, v: number): number =>
    Math.min(Math.max(p, q), Math.max(u, v)) - Math.max(Math.min(p, q), Math.min(u, v));
  return (
    (level && shared(s.a.x, s.b.x, t.a.x, t.b.x) > 0) || (upright && shared(s.a.y, s.b.y, t.a.y, t.b.y) > 0)
  );
};

/** Everything that must be true of wires among parts, as words where it is not. */
function wrongs(kit: Kit, wiring: Wiring): readonly string[] {
  const wrong: string[] = [];
  const { frames, wires } = wiring.result();
  const meeting = endsOf(kit.joints);
  const stand = wiring.gridParts.map((one) => {
    const frame = frames.get(one.part.name);
    if (!frame) throw new Error('no frame');
    const lugs = one.outline.lugs.map((lug) => ({ ...lug, box: rectToSheet(frame, lug.tag) }));
    return {
      ...one,
      name: one.part.name,
      frame,
      lugs,
      closed: one.outline.blocked.map((r) => rectToSheet(frame, r)),
    };
  });
  const all = wires.map(({ points }) => straights(points));
  wires.forEach(({ joint, points, own }, index) => {
    const { from, to } = joint;
    const told = `${from.part}.${from.lug} > ${to.part}.${to.lug}`;
    if (joint !== kit.joints[index]) wrong.push(`${told} is another joint's`);
    for (const [spot, { part, lug }] of [
      [points[0], from],
      [points.at(-1), to],
    ] as const) {
      const one = stand.find(({ name }) => name === part);
      const ways = one?.lugs.find((each) => each.lug === lug);
      if (!one || !ways || !spot) throw new Error('no end');
      const several = (meeting.get(`${part}.${lug}`) ?? 0) > 1;
      const spots = [
        // Where several meet, the legs' common corner is where they end.
        ...ways.ports.map((port) => (several && port.via ? port.via : port.spot)),
        ...(ways.strap ? [ways.strap.from] : []),
        ...(ways.surface ? one.lugs.flatMap(({ strap }) => strap?.end ?? []) : []),
      ].map((at) => toSheet(one.frame, at));
      if (!spots.some(({ x, y }) => Math.hypot(x - spot.x, y - spot.y) < 1e-6))
        wrong.push(`${told} ends beside ${lug}`);
    }
    const pieces = all[index] ?? [];
    pieces.forEach(({ a, b }, i) => {
      const next = pieces[i + 1];
      if (a.x !== b.x && a.y !== b.y) wrong.push(`${told} runs aslant`);
      // Only corners are told: no two stretches in a row go the same way.
      if (next && (a.x === b.x) === (next.a.x === next.b.x)) wrong.push(`${told} has a corner on a straight`);
    });
    if (joint.kind === 'bend' && from.part === to.part) return;
    const legged = stand.filter(
      ({ name, part: { kind } }) => [from.part, to.part].includes(name) && /resistor|capacitor/.test(kind),
    );
    if (legged.map(({ name }) => name).join() !== own.join()) wrong.push(`${told} is a leg of ${own}`);
    for (const { name, lugs, closed } of stand) {
      for (const { lug, box, surface } of lugs) {
        if (surface || [from, to].some((end) => end.part === name && end.lug === lug)) continue;
        if (pieces.some((piece) => gapTo(piece, box) < 6 - 0.011)) wrong.push(`${told} near ${name}.${lug}`);
      }
      if (name === from.part || name === to.part) continue;
      if (closed.some((rect) => pieces.some((piece) => gapTo(piece, rect) <= 0)))
        wrong.push(`${told} under ${name}`);
    }
    for (const other of all.slice(index + 1))
      if (pieces.some((s) => other.some((t) => alongside(s, t)))) wrong.push(`${told} along another`);
  });
  return wrong;
}
const check = (kit: Kit, wiring: Wiring): void => expect(wrongs(kit, wiring)).toEqual([]);

describe('wires among parts', () => {
  it('run from spot to spot, square, off every part and off one another, also after parts have moved', () => {
    for (const kit of KITS) {
      const wiring = new Wiring(standing(kit, 6), kit.joints, 10, false);
      expect(wiring.routeAll(1)).toBe(true);
      check(kit, wiring);
      let went = 0;
      for (let i = 0; i < 6; i++) {
        const before = { at: wiring.remember(), result: wiring.result(), cost: wiring.cost };
        const which = upTo(kit.parts.length - 1);
        const next = wiring.gridParts.map((one, k) =>
          k === which
            ? {
                ...one,
                column: one.column + upTo(4) - 2,
                row: one.row + upTo(4) - 2,
                mirror: mayMirror(one.part) ? i % 2 === 0 : one.mirror,
              }
            : one,
        );
        if (wiring.move(next, Number.POSITIVE_INFINITY)) {
          went++;
          expect(wiring.gridParts).toBe(next);
          check(kit, wiring);
          if (i % 3 > 0) continue;
        }
        wiring.restore(before.at);
        expect(wiring.result()).toEqual(before.result);
        expect(wiring.cost).toBe(before.cost);
      }
      expect(went).toBeGreaterThan(2);
    }
  });

  it('parts move within the margin, and not beyond it', () => {
    const kit = makeKit({
      parts: { a: { kind: 'ground-point' }, b: { kind: 'ground-point' } },
      joints: ['a.1 > b.1'],
    });
    const margin = 8;
    const [a, b] = kit.parts.map((part, i) => ({
      part,
      outline: outlineOf(part),
      column: 20 * i,
      row: 20 * i,
      turn: 0 as const,
      mirror: i === 0,
      fixed: false,
      turnable: true,
    }));
    if (!a || !b) throw new Error('no parts');
    for (const [which, dx, dy] of [
      [0, -1, 0],
      [0, 0, -1],
      [1, 1, 0],
      [1, 0, 1],
    ] as const) {
      const by = (steps: number): boolean => {
        const wiring = new Wiring([a, b], kit.joints, margin, false);
        expect(wiring.routeAll(0)).toBe(true);
        return wiring.move(
          [a, b].map((one, i) =>
            i === which ? { ...one, column: one.column + dx * steps, row: one.row + dy * steps } : one,
          ),
          Number.POSITIVE_INFINITY,
        );
      };
      // Two grid steps of it are kept for wires that go round the outside.
      expect([by(margin - 2), by(margin)]).toEqual([true, false]);
    }
  });

  it('a wire that a part was put on is laid anew, also if it is not that part’s', () => {
    const kit = makeKit({
      parts: { a: { kind: 'ground-point' }, b: { kind: 'ground-point' }, c: { kind: 'jack' } },
      joints: ['a.1 > b.1'],
    });
    const at = (i: number, column: number, row: number, mirror: boolean): GridPart => {
      const part = kit.parts[i];
      if (!part) throw new Error('no part');
      return { part, outline: outlineOf(part), column, row, turn: 0, mirror, fixed: false, turnable: true };
    };
    const gridParts = [at(0, 0, 10, true), at(1, 40, 10, false), at(2, 18, 30, false)];
    const wiring = new Wiring(gridParts, kit.joints, 8, false);
    expect(wiring.routeAll(1)).toBe(true);
    const straight = wiring.result().wires[0]?.points;
    expect(straight).toHaveLength(2);
    expect(wiring.move([at(0, 0, 10, true), at(1, 40, 10, false), at(2, 18, 8, false)], Infinity)).toBe(true);
    check(kit, wiring);
    expect(wiring.result().wires[0]?.points.length).toBeGreaterThan(2);
  });

  it('a leg’s step costs three times a wire’s', () => {
    const costOf = (kind: Joint['kind']): number => {
      const kit = makeKit({
        parts: { a: { kind: 'ground-point' }, b: { kind: 'ground-point' } },
        joints: ['a.1 > b.1'],
      });
      const gridParts = kit.parts.map((part, i) => ({
        part,
        outline: outlineOf(part),
        column: 30 * i,
        row: 0,
        turn: 0 as const,
        mirror: i === 0,
        fixed: false,
        turnable: true,
      }));
      const wiring = new Wiring(
        gridParts,
        kit.joints.map((joint) => ({ ...joint, kind })),
        8,
        false,
      );
      expect(wiring.routeAll(1)).toBe(true);
      return wiring.cost;
    };
    // The node outside the other lug is the wire's own, and costs nothing more.
    expect([costOf('leg') / costOf('wire'), costOf('jumper')]).toEqual([3, costOf('wire')]);
  });

  it('no wire passes just outside a lug in use where it can go round', () => {
    for (const [joints, beside] of [
      [['a.1 > b.1'], true],
      [['a.1 > b.1', 'c.1 > d.1'], false],
    ] as const) {
      const kit = makeKit({
        parts: Object.fromEntries(['a', 'b', 'c', 'd'].map((name) => [name, { kind: 'ground-point' }])),
        joints: [...joints],
      });
      const stands = [
        [0, 0],
        [0, 40],
        [0, 20],
        [-30, 20],
      ] as const;
      const gridParts = kit.parts.map((part, i) => ({
        part,
        outline: outlineOf(part),
        column: stands[i]?.[0] ?? 0,
        row: stands[i]?.[1] ?? 0,
        turn: 0 as const,
        mirror: i === 3,
        fixed: false,
        turnable: true,
      }));
      const wiring = new Wiring(gridParts, kit.joints, 8, false);
      expect(wiring.routeAll(2)).toBe(true);
      const { wires, frames } = wiring.result();
      const frame = frames.get('c');
      // The node left of the lug of `c`, on the line straight from `a` to `b`.
      const node = { x: (frame?.x ?? 0) - PITCH, y: (frame?.y ?? 0) + PITCH };
      const passes = straights(wires[0]?.points ?? []).some(
        ({ a, b }) => a.x === node.x && b.x === node.x && (a.y - node.y) * (b.y - node.y) < 0,
      );
      expect(passes).toBe(beside);
    }
  });

  it('a lug bent over onto its own case lies where it lies, told from either end; any other joint has a way', () => {
    const written = ['p.1 > p.case', 'p.case > p.3', 'p.2 > p.3', 'p.2 > q.case'];
    const kit = makeKit({
      parts: { p: { kind: 'pot', value: '250k' }, q: { kind: 'pot', value: '250k' } },
      joints: written,
    });
    const gridParts = kit.parts.map((part, i) => ({
      part,
      outline: outlineOf(part),
      column: 20 * i,
      row: 0,
      turn: 0 as const,
      mirror: false,
      fixed: false,
      turnable: true,
    }));
    const joints = kit.joints.map((joint) => ({ ...joint, kind: 'bend' as const }));
    const wiring = new Wiring(gridParts, joints, 8, false);
    expect(wiring.routeAll(1)).toBe(true);
    const { wires, frames } = wiring.result();
    const [first, second, third, fourth] = wires.map(({ points }) => points);
    const frame = frames.get('p');
    const strap = (lug: string) => gridParts[0]?.outline.lugs.find((one) => one.lug === lug)?.strap;
    const [one, three] = [strap('1'), strap('3')];
    if (!frame || !one || !three) throw new Error('no strap');
    expect(first).toEqual([toSheet(frame, one.from), toSheet(frame, one.end)]);
    expect(second).toEqual([toSheet(frame, three.end), toSheet(frame, three.from)]);
    // Between two lugs, or to another part, a bend must be led like a wire.
    expect([one, three].map(({ end: at }) => toSheet(frame, at))).not.toContainEqual(third?.at(-1));
    expect(fourth?.length).toBeGreaterThan(2);
    const asWires = new Wiring(gridParts, kit.joints, 8, false);
    expect(asWires.routeAll(1)).toBe(true);
    expect(asWires.result().wires[0]?.points).not.toEqual(first);
  });

  it('how many joints end at each lug', () => {
    const kit = makeKit({ parts: {}, joints: ['a.1 > b.1', 'a.1 > c.2', 'c.2 > a.1'] });
    expect([...endsOf(kit.joints)].sort()).toEqual([
      ['a.1', 3],
      ['b.1', 1],
      ['c.2', 2],
    ]);
  });
});

/** What the score has beside the wires: ten a grid step of extent, and pickups that stand otherwise than on the instrument. */
/** Half a turn faces the other way, as the mirror does. */
const left = ({ mirror, turn }: GridPart): boolean => mirror !== (turn === 2);
function spread(gridParts: readonly GridPart[]): number {
  const box = bounds(gridParts);
  const pickups = gridParts.filter(({ part, fixed }) => isPickup(part) && !fixed);
  return pickups.slice(1).reduce(
    (sum, lower, i) => {
      const upper = pickups[i];
      if (!upper) return sum;
      const wrong = upper.row > lower.row || (upper.row === lower.row && upper.column > lower.column);
      return (
        sum +
        (wrong ? 300 : 0) +
        (left(upper) !== left(lower) ? 100 : 0) +
        (upper.turn !== lower.turn ? 20 : 0) +
        (upper.column !== lower.column && upper.row !== lower.row ? 60 : 0)
      );
    },
    10 * Math.round(box.width + box.height),
  );
}
const crowded = (gridParts: readonly GridPart[], gap: number): number => {
  const boxes = gridParts.map(boxOf);
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.x0 < b.x1 + gap && b.x0 < a.x1 + gap && a.y0 < b.y1 + gap && b.y0 < a.y1 + gap),
  ).length;
};

describe('the search for better places', () => {
  it('makes none worse, moves no part that is fixed and none nearer than it may stand, and repeats itself', () => {
    for (const kit of KITS.slice(0, 2)) {
      const stand = standing(kit, 3).map((one, i) => ({ ...one, fixed: i % 4 === 0, turnable: i % 4 !== 0 }));
      const runs = [0, 1].map(() => {
        const wiring = new Wiring(stand, kit.joints, 8, false);
        expect(wiring.routeAll(1)).toBe(true);
        const before = wiring.cost + wiring.excess + spread(stand);
        improve(wiring, kit.joints, 3, { steps: 25, seed: 5 });
        const after = wiring.gridParts;
        expect(wiring.cost + wiring.excess + spread(after)).toBeLessThan(before);
        expect(crowded(after, 3)).toBeLessThanOrEqual(crowded(stand, 3));
        stand.forEach((one, i) => {
          if (one.fixed) expect(after[i]).toEqual(one);
          const { turn, mirror } = after[i] ?? {};
          expect(orientationsOf(one.part)).toContainEqual({ turn, mirror });
        });
        check(kit, wiring);
        return after;
      });
      expect(runs[0]).toEqual(runs[1]);
    }
  });

  it('does nothing where there is nothing to move, or no step to spend', () => {
    const [kit] = KITS;
    if (!kit) throw new Error('no kit');
    const loose = standing(kit, 4);
    for (const [stand, steps] of [
      [loose, 0],
      [loose.map((one) => ({ ...one, fixed: true, turnable: false })), 50],
    ] as const) {
      const wiring = new Wiring(stand, kit.joints, 8, false);
      expect(wiring.routeAll(0)).toBe(true);
      const before = wiring.result();
      improve(wiring, kit.joints, 3, { steps, seed: 5 });
      expect(wiring.result()).toEqual(before);
    }
  });
});

describe('a placement', () => {
  const placed = async (kit: Kit, arrangement: Arrangement = freeFlow) => {
    const said: string[] = [];
    const placement = await place(buildCircuit(kit), arrangement, new Map(), {
      effort: { steps: 4, seed: 1 },
      progress: (stage) => said.push(stage),
    });
    return { placement, said };
  };
  const cropped = ({ parts, wires, width, height }: Placement): void => {
    const boxes = parts.map(({ frame }) => ({ x: frame.x, y: frame.y, ...extent(frame) }));
    const points = wires.flatMap((wire) => wire.points);
    const xs = [...boxes.flatMap(({ x, width: w }) => [x, x + w]), ...points.map(({ x }) => x)];
    const ys = [...boxes.flatMap(({ y, height: h }) => [y, y + h]), ...points.map(({ y }) => y)];
    expect([Math.min(...xs), Math.min(...ys)]).toEqual([PITCH, PITCH]);
    expect(Math.max(...xs)).toBeCloseTo(width - PITCH, 6);
    expect(Math.max(...ys)).toBeCloseTo(height - PITCH, 6);
  };

  it('is cropped to what is drawn and a grid step about it, and every part of the kit is on it', async () => {
    for (const kit of KITS.slice(0, 1)) {
      const { placement, said } = await placed(kit);
      cropped(placement);
      expect(placement.parts.map(({ part }) => part)).toEqual(kit.parts);
      expect(said).toEqual(['placing parts', `laying ${kit.joints.length} wires`, 'optimising placement']);
    }
  });

  it('that no spacing gives a way for every wire is refused by the kit’s name', async () => {
    // A lug has three ways in; four wires do not go into it, however far apart the parts are.
    const kit = makeKit({
      kit: 'crowd',
      parts: {
        p: { kind: 'pot', value: '250k' },
        ...Object.fromEntries(Array.from({ length: 4 }, (_, i) => [`g${i}`, { kind: 'ground-point' }])),
      },
      joints: Array.from({ length: 4 }, (_, i) => `g${i}.1 > p.1`),
    });
    const said: string[] = [];
    const tried = place({ kit } as Circuit, freeFlow, new Map(), { progress: (stage) => said.push(stage) });
    await expect(tried).rejects.toThrow(NoRouteError);
    await expect(tried).rejects.toThrow('crowd');
    // At every spacing it was tried.
    expect(said.filter((stage) => stage.startsWith('laying'))).toHaveLength(7);
  });

  it('of more than a hundred parts is packed and not searched, with room between any two for their wires', async () => {
    const kit = makeKit({
      parts: Object.fromEntries(Array.from({ length: 101 }, (_, i) => [`g${i}`, { kind: 'ground-point' }])),
      joints: Array.from({ length: 40 }, (_, i) => `g${2 * i}.1 > g${2 * i + 1}.1`),
    });
    const said: string[] = [];
    const placement = await place({ kit } as Circuit, freeFlow, new Map(), {
      progress: (stage) => said.push(stage),
    });
    expect(said).toEqual(['placing parts', 'laying 40 wires']);
    cropped(placement);
    const boxes = placement.parts.map(({ frame }) => ({ x: frame.x, y: frame.y, ...extent(frame) }));
    const close = boxes.flatMap((a, i) =>
      boxes.slice(i + 1).filter((b) => {
        const across = Math.max(a.x, b.x) - Math.min(a.x + a.width, b.x + b.width);
        const down = Math.max(a.y, b.y) - Math.min(a.y + a.height, b.y + b.height);
        return Math.max(across, down) < 16 * PITCH;
      }),
    );
    expect(close).toEqual([]);
  });

  it('with a seat that is turned is cropped to the part as it lies', async () => {
    const [kit] = KITS;
    if (!kit) throw new Error('no kit');
    for (const turn of [1, 2, 3] as const) {
      const seats = [
        {
          seat: 'jack' as const,
          at: [60, 40] as [number, number],
          step: [0, 0] as [number, number],
          turn,
          mirror: false,
        },
      ];
      const { placement } = await placed(kit, { arrangement: 'a', about: 'b', seats });
      expect(placement.parts.find(({ part }) => part.kind === 'jack')?.frame.turn).toBe(turn);
      cropped(placement);
    }
  });
});
