/**
 * Where parts go that have no seat: clear of one another, as near as can be to what they are joined to, and no further from
 * where they stood than they must. Compared with trying every place.
 */
import { describe, expect, it } from 'vitest';
import { PITCH } from '../../src/common/geometry.ts';
import { seeded } from '../../src/common/random.ts';
import type { Joint, Kit } from '../../src/describe/kit.ts';
import { mayMirror, outlineOf } from '../../src/parts/index.ts';
import type { Arrangement } from '../../src/place/arrangement.ts';
import { elkGraph } from '../../src/place/elk.ts';
import { extent, toSheet } from '../../src/place/frame.ts';
import { packed } from '../../src/place/pack.ts';
import type { GridPart } from '../../src/place/placement.ts';
import { initialPlacement } from '../../src/place/seating.ts';
import { apart, boxOf, clash, lugCentre, settle } from '../../src/place/settle.ts';
import { frameOf } from '../../src/place/wiring.ts';
import { makeKit, sampleCircuit } from '../analyse/kits.ts';

const random = seeded(60781);
const upTo = (most: number): number => Math.floor(random() * (most + 1));
const KITS = ['wren-sh', 'heron-ss', 'kestrel-hss'].map((id) => sampleCircuit(id).kit);
const outlined = (kit: Kit) => kit.parts.map((part) => ({ part, outline: outlineOf(part) }));

/** The parts of a kit anywhere within so many grid steps, any way round, some of them fixed. */
const scattered = (kit: Kit, width: number, fixed: (i: number) => boolean): readonly GridPart[] =>
  outlined(kit).map((one, i) => ({
    ...one,
    column: upTo(width),
    row: upTo(width),
    turn: 0,
    mirror: mayMirror(one.part) && random() < 0.5,
    fixed: fixed(i),
    turnable: !fixed(i),
  }));

const middleOf = (gridPart: GridPart, lug: string): { x: number; y: number } => {
  const tag = gridPart.outline.lugs.find((one) => one.lug === lug)?.tag;
  if (!tag) throw new Error(`no ${lug}`);
  const p = toSheet(frameOf(gridPart, 0, 0), { x: tag.x + tag.width / 2, y: tag.y + tag.height / 2 });
  return { x: Math.round(p.x / PITCH), y: Math.round(p.y / PITCH) };
};

it('a lug’s middle is that of its tag, to the nearest grid step', () => {
  for (const kit of KITS)
    for (const gridPart of scattered(kit, 20, () => false))
      for (const { lug } of gridPart.outline.lugs)
        expect(lugCentre(gridPart, lug)).toEqual(middleOf(gridPart, lug));
});

/** Straight wires between lugs, of one part or of all: two a grid step, five for a component's leg. */
function pull(gridParts: readonly GridPart[], joints: readonly Joint[], only?: string): number {
  const by = new Map(gridParts.map((gridPart) => [gridPart.part.name, gridPart]));
  let sum = 0;
  for (const { kind, from, to } of joints) {
    if (from.part === to.part || (only !== undefined && from.part !== only && to.part !== only)) continue;
    const [one, other] = [by.get(from.part), by.get(to.part)];
    if (!one || !other) throw new Error('no such part');
    const [a, b] = [middleOf(one, from.lug), middleOf(other, to.lug)];
    sum += (kind === 'leg' ? 5 : 2) * (Math.abs(a.x - b.x) + Math.abs(a.y - b.y));
  }
  return sum;
}

const near = (a: GridPart, b: GridPart, gap: number): boolean => {
  const [p, q] = [boxOf(a), boxOf(b)];
  return p.x0 - q.x1 < gap && q.x0 - p.x1 < gap && p.y0 - q.y1 < gap && q.y0 - p.y1 < gap;
};

it('two boxes clash when less than the gap is between them on both axes', () => {
  for (let i = 0; i < 500; i++) {
    const [a, b] = [0, 1].map(() => {
      const [x0, y0] = [upTo(8), upTo(8)];
      return { x0, y0, x1: x0 + 1 + upTo(4), y1: y0 + 1 + upTo(4) };
    });
    if (!a || !b) continue;
    const gap = upTo(3);
    const across = Math.max(a.x0, b.x0) - Math.min(a.x1, b.x1);
    const down = Math.max(a.y0, b.y0) - Math.min(a.y1, b.y1);
    expect(clash(a, b, gap)).toBe(across < gap && down < gap);
  }
});

describe('parts on one another', () => {
  it('move apart, those that are fixed stay, each goes to the nearest place that is free', () => {
    for (const kit of KITS)
      for (let run = 0; run < 4; run++) {
        const gap = 1 + (run % 3);
        // Fixed parts are never on one another to begin with.
        const before = scattered(kit, 25, (i) => i === 1);
        const after = apart(before, gap);
        const taken = after.filter(({ fixed }) => fixed);
        after.forEach((one, i) => {
          const was = before[i] ?? one;
          expect({ ...one, column: 0, row: 0 }).toEqual({ ...was, column: 0, row: 0 });
          if (one.fixed) {
            expect(one).toBe(was);
            return;
          }
          const away = Math.abs(one.column - was.column) + Math.abs(one.row - was.row);
          if (away === 0) expect(one).toBe(was);
          const free = (column: number, row: number): boolean =>
            !taken.some((other) => near({ ...was, column, row }, other, gap));
          expect(free(one.column, one.row)).toBe(true);
          // None nearer; of those as near none further down, and of these none further right.
          const better: string[] = [];
          for (let dy = -away; dy <= away; dy++)
            for (let dx = Math.abs(dy) - away; dx <= away - Math.abs(dy); dx++) {
              const reach = Math.abs(dx) + Math.abs(dy);
              if (reach < away && free(was.column + dx, was.row + dy)) better.push(`${dx} ${dy}`);
            }
          expect(better).toEqual([]);
          taken.push(one);
        });
      }
  });
});

describe('a loose part', () => {
  it('goes where its wires are shortest, clear of the others, either way round if it may', () => {
    for (const kit of KITS)
      for (let loose = kit.id.length % 3; loose < kit.parts.length; loose += 3) {
        const start = apart(
          scattered(kit, 40, () => true).map((one) => ({ ...one, fixed: false, turnable: true })),
          6,
        );
        const gridParts = start.map((one, i) => ({ ...one, fixed: i !== loose }));
        const [between, reach] = [3, 7];
        // What is far from its place takes several times as many moves as one settling makes.
        let after: readonly GridPart[] = gridParts;
        for (let again = 0; again < 4; again++) after = settle(after, kit.joints, { between }, reach);
        const [was, now] = [gridParts[loose], after[loose]];
        if (!was || !now) throw new Error('no part');
        gridParts.forEach((one, i) => {
          if (i !== loose) expect(after[i]).toBe(one);
        });
        const costAt = (next: Partial<GridPart>): number => {
          const moved = gridParts.map((one, i) => (i === loose ? { ...one, ...next } : one));
          const own = moved[loose];
          if (!own || moved.some((one, i) => i !== loose && near(own, one, between))) return Infinity;
          return pull(moved, kit.joints, was.part.name);
        };
        // Within reach of where it stands it could not stand better: it may have come there in several moves.
        const here = costAt(now);
        for (const mirror of mayMirror(was.part) ? [false, true] : [was.mirror])
          for (let dy = -reach; dy <= reach; dy++)
            for (let dx = -reach; dx <= reach; dx++) {
              if (Math.abs(dx) + Math.abs(dy) > 3 && (3 * dx + dy) % 5 !== 0) continue;
              const there = costAt({ column: now.column + dx, row: now.row + dy, mirror });
              if (there < here) expect({ there, dx, dy, mirror, part: was.part.name }).toBe(here);
            }
        expect(costAt(now)).toBeLessThanOrEqual(costAt(was));
      }
  });

  it('with no wires, or with none that would be shorter elsewhere, stays where it is', () => {
    const kit = makeKit({
      parts: { a: { kind: 'jack' }, b: { kind: 'single-coil' }, c: { kind: 'pot', value: '250k' } },
      joints: ['c.1 > c.case'],
    });
    const gridParts = scattered(kit, 40, () => false).map((one, i) => ({
      ...one,
      column: 30 * i,
      mirror: false,
    }));
    expect(settle(gridParts, kit.joints, { between: 3 }, 8)).toEqual(gridParts);
  });

  it('settles with others until none would rather stand elsewhere', () => {
    const atRest: boolean[] = [];
    for (const kit of [...KITS, ...KITS]) {
      const start = apart(
        scattered(kit, 50, () => false),
        4,
      );
      const once = settle(start, kit.joints, { between: 3 }, 6);
      expect(pull(once, kit.joints)).toBeLessThan(pull(start, kit.joints));
      // Several times round, so that a part may follow one that went later.
      let one = start;
      const places = (gridParts: readonly GridPart[]) =>
        gridParts.map(({ column, row, mirror }) => ({ column, row, mirror }));
      for (let times = 0; times < 3; times++) one = settle(one, kit.joints, { between: 3 }, 6);
      atRest.push(JSON.stringify(places(one)) === JSON.stringify(places(once)));
      once.forEach((a, i) => {
        for (const b of once.slice(i + 1)) expect(near(a, b, 3)).toBe(false);
      });
    }
    // Most have come to rest by then.
    expect(atRest.filter(Boolean).length).toBeGreaterThan(atRest.length / 2);
  });
});

describe('seats', () => {
  const kit = makeKit({
    parts: {
      neck: { kind: 'single-coil' },
      bridge: { kind: 'humbucker' },
      one: { kind: 'pot', value: '250k' },
      two: { kind: 'pot', value: '250k' },
      three: { kind: 'pot', value: '250k' },
      out: { kind: 'jack' },
    },
    joints: [],
  });
  const seat = (more: object) => ({ step: [0, 0], turn: 0, mirror: false, ...more });
  const arrangement = {
    arrangement: 'a',
    about: 'b',
    seats: [
      seat({ seat: 'pickup', at: [2, 3], step: [4, 30], mirror: true }),
      seat({ seat: 'pot', at: [50, 10], step: [20, 0], wrap: { after: 2, step: [5, 40] }, turn: 1 }),
    ],
  } as Arrangement;
  const laid = new Map(kit.parts.map(({ name }, i) => [name, { x: 100 * i, y: 7 * i }]));
  const stands = (gridParts: readonly GridPart[]) =>
    gridParts.map(({ column, row, turn, mirror, fixed, turnable }) => ({
      column,
      row,
      turn,
      mirror,
      fixed,
      turnable,
    }));

  it('are taken in the order of the kit, row by row, as far out as is asked', () => {
    for (const by of [1, 1.5]) {
      const at = (column: number, row: number, turn: number, mirror: boolean) => ({
        column: Math.round(column * by),
        row: Math.round(row * by),
        turn,
        mirror,
        fixed: true,
        turnable: false,
      });
      const found = stands(initialPlacement(outlined(kit), arrangement, 'right', laid, by));
      expect(found.slice(0, 5)).toEqual([
        at(2, 3, 0, true),
        at(6, 33, 0, true),
        at(50, 10, 1, false),
        at(70, 10, 1, false),
        at(55, 50, 1, false),
      ]);
      // Without a seat: where the layout has it, on the grid.
      expect(found[5]).toEqual({ column: 31, row: 2, turn: 0, mirror: false, fixed: false, turnable: true });
    }
  });

  it('for the other hand lie left for right, and what may be mirrored is', () => {
    const [right, left] = (['right', 'left'] as const).map((hand) =>
      initialPlacement(outlined(kit), arrangement, hand, laid, 1),
    );
    right?.slice(0, 5).forEach((one, i) => {
      const other = left?.[i];
      if (!other) throw new Error('no part');
      const [a, b] = [boxOf(one), boxOf(other)];
      expect([b.x0, b.x1, b.y0, b.y1]).toEqual([-a.x1, -a.x0, a.y0, a.y1]);
      expect(other.mirror).toBe(mayMirror(one.part) ? !one.mirror : one.mirror);
      expect(other.turn).toBe(one.turn);
    });
    expect(left?.[5]).toEqual(right?.[5]);
  });

  it('that are taken are not taken twice: who comes second looks for a place', () => {
    const both = {
      ...arrangement,
      seats: [seat({ seat: 'pot', at: [5, 5], step: [12, 0] }), seat({ seat: 'jack', at: [18, 6] })],
    };
    const found = initialPlacement(outlined(kit), both as Arrangement, 'right', laid, 1);
    expect(found.map(({ part, fixed }) => [part.name, fixed])).toEqual([
      ['neck', false],
      ['bridge', false],
      ['one', true],
      ['two', true],
      ['three', true],
      ['out', false],
    ]);
    // It asks for the place it found taken.
    expect(found[5]).toMatchObject({ column: 18, row: 6 });
  });
});

describe('very many parts', () => {
  const COUNT = 60;
  const kit = makeKit({
    parts: Object.fromEntries(
      Array.from({ length: COUNT }, (_, i) => [
        `p${i}`,
        i % 7 === 0 ? { kind: 'pot', value: '250k' } : { kind: 'resistor', value: '1k' },
      ]),
    ),
    // Two rings of neighbours that the order of the kit does not show, and some parts alone.
    joints: Array.from(
      { length: COUNT - 6 },
      (_, i) => `p${(i * 17) % (COUNT - 6)}.1 > p${((i + 1) * 17) % (COUNT - 6)}.2`,
    ),
  });
  const places = packed(outlined(kit), kit.joints, 4);
  const boxes = outlined(kit).map(({ part, outline }) => {
    const place = places.get(part.name);
    if (!place) throw new Error('no place');
    return { ...place, width: outline.width, height: outline.height };
  });

  it('stand on a lattice, a gap between any two, none of them twice', () => {
    expect(places.size).toBe(COUNT);
    boxes.forEach((a, i) => {
      expect([a.x % PITCH, a.y % PITCH]).toEqual([0, 0]);
      for (const b of boxes.slice(i + 1)) {
        const across = Math.max(a.x, b.x) - Math.min(a.x + a.width, b.x + b.width);
        const down = Math.max(a.y, b.y) - Math.min(a.y + a.height, b.y + b.height);
        expect(Math.max(across, down)).toBeGreaterThanOrEqual(4 * PITCH);
      }
    });
    // As many columns as rows, as nearly as may be, and no wider than their widest part and the gap ask.
    const columns = [...new Set(boxes.map(({ x }) => x))].sort((a, b) => a - b);
    expect(columns).toHaveLength(8);
    columns.slice(1).forEach((x, i) => {
      const widest = Math.max(...boxes.filter((box) => box.x === columns[i]).map(({ width }) => width));
      expect(x - (columns[i] ?? 0)).toBe(widest + 4 * PITCH);
    });
    const rows = [...new Set(boxes.map(({ y }) => y))].sort((a, b) => a - b);
    expect(rows).toHaveLength(8);
    rows.slice(1).forEach((y, i) => {
      const highest = Math.max(...boxes.filter((box) => box.y === rows[i]).map(({ height }) => height));
      expect(y - (rows[i] ?? 0)).toBe(highest + 4 * PITCH);
    });
  });

  it('have their neighbours beside them', () => {
    const cell = (name: string) => {
      const place = places.get(name);
      const columns = [...new Set(boxes.map(({ x }) => x))].sort((a, b) => a - b);
      const rows = [...new Set(boxes.map(({ y }) => y))].sort((a, b) => a - b);
      return { x: columns.indexOf(place?.x ?? -1), y: rows.indexOf(place?.y ?? -1) };
    };
    const lengths = kit.joints.map(({ from, to }) => {
      const [a, b] = [cell(from.part), cell(to.part)];
      return Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
    });
    // A ring on a lattice can have every neighbour in the next cell.
    expect(lengths.reduce((a, b) => a + b, 0)).toBeLessThan(1.25 * lengths.length);
  });
});

it('the layered layout is told of every wire between two parts, each at a place of its own on the border', () => {
  for (const kit of KITS) {
    const parts = outlined(kit).map(({ part, outline }) => ({ name: part.name, outline }));
    const { children = [], edges = [] } = elkGraph(parts, kit.joints);
    const between = kit.joints.filter(({ from, to }) => from.part !== to.part);
    expect(edges).toHaveLength(between.length);
    const ids = children.flatMap(({ ports = [] }) => ports.map(({ id }) => id));
    expect([...ids].sort()).toEqual(edges.flatMap(({ sources, targets }) => [...sources, ...targets]).sort());
    expect(new Set(ids).size).toBe(2 * between.length);
    edges.forEach(({ sources, targets }, i) => {
      const { from, to } = between[i] ?? { from: { part: '', lug: '' }, to: { part: '', lug: '' } };
      expect([sources[0]?.split('#')[0], targets[0]?.split('#')[0]]).toEqual([
        `${from.part}.${from.lug}`,
        `${to.part}.${to.lug}`,
      ]);
    });
    for (const { id, ports = [], width = 0, height = 0 } of children) {
      const outline = parts.find(({ name }) => name === id)?.outline;
      expect([width, height]).toEqual([outline?.width, outline?.height]);
      for (const port of ports) {
        const side = port.layoutOptions?.['elk.port.side'];
        const [, lug = '', nth = '0'] = /\.(\w+)#(\d+)$/.exec(port.id) ?? [];
        const ways = outline?.lugs.find((one) => one.lug === lug)?.ports ?? [];
        // The first wire takes the lug's best way, the next the next.
        const way = ways[Number(nth) % ways.length];
        if (!way) throw new Error('no way');
        const { inward, node } = way;
        expect(side).toBe(inward.x > 0 ? 'WEST' : inward.x < 0 ? 'EAST' : inward.y > 0 ? 'NORTH' : 'SOUTH');
        expect([port.x, port.y]).toEqual([
          side === 'WEST' ? 0 : side === 'EAST' ? width : node.x,
          side === 'NORTH' ? 0 : side === 'SOUTH' ? height : node.y,
        ]);
      }
    }
  }
});

it('a part turned by a quarter takes up its height across', () => {
  const frame = { x: 0, y: 0, width: 40, height: 100, mirror: false } as const;
  expect([0, 1, 2, 3].map((turn) => extent({ ...frame, turn: turn as 0 }))).toEqual([
    { width: 40, height: 100 },
    { width: 100, height: 40 },
    { width: 40, height: 100 },
    { width: 100, height: 40 },
  ]);
});
