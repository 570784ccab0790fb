/**
 * From the circuit to places and wires: the layered layout gives every part a first place, the arrangement seats
 * those it names, the rest settle between them, and the wires are laid. When they do not fit, everything moves
 * apart and is tried again.
 */

import type { Circuit } from '../circuit/circuit.ts';
import { PITCH } from '../common/geometry.ts';
import type { Part } from '../parts/index.ts';
import type { Arrangement } from './arrangement.ts';
import { elkGraph, layOut } from './elk.ts';
import { DEFAULT_EFFORT, type Effort, improve } from './improve.ts';
import { outlineOf } from './outlines/index.ts';
import type { Outline } from './outlines/outline.ts';
import type { Placement, Stand } from './placement.ts';
import { settle } from './settle.ts';
import { type Wired, Wiring } from './wiring.ts';

/** Words to be drawn beside a part, by part name; they need room, so placing must know them. */
export type Captions = ReadonlyMap<string, string>;

/** Free columns and rows around the parts. */
const MARGIN = 8;

const SPREADS = [3, 4, 5, 6, 8] as const;

/** @throws Error when even the widest spacing leaves some wire no way, which no description should bring about. */
export async function place(
  circuit: Circuit,
  arrangement: Arrangement,
  captions: Captions,
  effort: Effort = DEFAULT_EFFORT,
): Promise<Placement> {
  const { kit } = circuit;
  const parts = kit.parts.map((part) => ({ part, outline: outlineOf(part, captions.get(part.name)) }));
  const seats = seated(kit.parts, arrangement);
  const seeds = await layOut(
    elkGraph(
      parts.map(({ part, outline }) => ({ name: part.name, outline })),
      kit.joints,
    ),
  );
  for (const between of SPREADS) {
    const stands = parts.map(({ part, outline }): Stand => {
      const seat = seats.get(part.name);
      if (seat) return spread(part, outline, seat, between);
      const seed = seeds.get(part.name) ?? { x: 0, y: 0 };
      return {
        part,
        outline,
        column: Math.round(seed.x / PITCH),
        row: Math.round(seed.y / PITCH),
        turn: 0,
        mirror: false,
        fixed: false,
      };
    });
    const settled = settle(stands, kit.joints, { between }, seats.size > 0 ? 60 : 6);
    const wiring = new Wiring(settled, kit.joints, MARGIN);
    if (!wiring.layAll(2)) continue;
    improve(wiring, kit.joints, between, effort);
    return finish(wiring.stands, wiring.result());
  }
  throw new Error(`no way found for every wire of ${kit.id}`);
}

type Seat = Pick<Stand, 'column' | 'row' | 'turn' | 'mirror'>;

function seated(parts: readonly Part[], arrangement: Arrangement): ReadonlyMap<string, Seat> {
  const taken = new Map<string, Seat>();
  for (const seat of arrangement.seats)
    parts
      .filter((part) => seat.kinds.includes(part.kind))
      .forEach((part, i) => {
        taken.set(part.name, {
          column: seat.at[0] + i * seat.step[0],
          row: seat.at[1] + i * seat.step[1],
          turn: seat.turn,
          mirror: seat.mirror,
        });
      });
  return taken;
}

/** A seat moved outwards when the kit needs more room than the arrangement foresaw. */
function spread(part: Part, outline: Outline, seat: Seat, between: number): Stand {
  const by = 1 + (between - SPREADS[0]) / 10;
  return {
    part,
    outline,
    column: Math.round(seat.column * by),
    row: Math.round(seat.row * by),
    turn: seat.turn,
    mirror: seat.mirror,
    fixed: true,
  };
}

/** Crops the field to what is drawn, one pitch of margin about it. */
function finish(stands: readonly Stand[], wired: Wired): Placement {
  const boxes = stands.map((stand) => {
    const frame = wired.frames.get(stand.part.name);
    const turned = stand.turn % 2 === 1;
    const [w, h] = [stand.outline.width, stand.outline.height];
    return { x: frame?.x ?? 0, y: frame?.y ?? 0, width: turned ? h : w, height: turned ? w : h };
  });
  const points = wired.wires.flatMap((wire) => wire.points);
  const left = Math.min(...boxes.map((b) => b.x), ...points.map((p) => p.x)) - PITCH;
  const top = Math.min(...boxes.map((b) => b.y), ...points.map((p) => p.y)) - PITCH;
  const right = Math.max(...boxes.map((b) => b.x + b.width), ...points.map((p) => p.x)) + PITCH;
  const bottom = Math.max(...boxes.map((b) => b.y + b.height), ...points.map((p) => p.y)) + PITCH;
  const round = (n: number): number => Math.round(n * 100) / 100;
  return {
    width: right - left,
    height: bottom - top,
    parts: stands.flatMap((stand) => {
      const frame = wired.frames.get(stand.part.name);
      return frame
        ? [
            {
              part: stand.part,
              outline: stand.outline,
              frame: { ...frame, x: frame.x - left, y: frame.y - top },
            },
          ]
        : [];
    }),
    wires: wired.wires.map((wire) => ({
      joint: wire.joint,
      points: wire.points.map((p) => ({ x: round(p.x - left), y: round(p.y - top) })),
    })),
  };
}
