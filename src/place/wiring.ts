/** From parts standing on the grid to wires: the field of free nodes, the gates of every lug, the routed lines. */
import { PITCH, type Point, type Rect } from '../common/geometry.ts';
import type { Joint } from '../describe/kit.ts';
import { directionToSheet, extent, type Frame, rectToSheet, toSheet } from './frame.ts';
import type { Port } from './outlines/outline.ts';
import type { PlacedWire, Stand } from './placement.ts';
import { type Direction, Field, type Gate, type Task, type Track } from './route/field.ts';
import { type Routed, routeAll } from './route/route.ts';

/** Free columns and rows kept around the parts for wires that go round the outside. */
const MARGIN = 5;
/** No wire's centre line comes nearer to a lug than this, drawing units. */
const LUG_CLEARANCE = 6;

/** A part's frame with the field's corner as origin. */
export const frameOf = (stand: Stand, left: number, top: number): Frame => ({
  x: (stand.column - left + MARGIN) * PITCH,
  y: (stand.row - top + MARGIN) * PITCH,
  width: stand.outline.width,
  height: stand.outline.height,
  turn: stand.turn,
  mirror: stand.mirror,
});

/** The stands' common extent, grid units. */
export function bounds(stands: readonly Stand[]): Rect {
  const boxes = stands.map((stand) => {
    const size = extent(frameOf(stand, 0, 0));
    return [
      stand.column,
      stand.row,
      stand.column + size.width / PITCH,
      stand.row + size.height / PITCH,
    ] as const;
  });
  const left = Math.min(...boxes.map((b) => b[0]));
  const top = Math.min(...boxes.map((b) => b[1]));
  return {
    x: left,
    y: top,
    width: Math.max(...boxes.map((b) => b[2])) - left,
    height: Math.max(...boxes.map((b) => b[3])) - top,
  };
}

export interface Wired {
  readonly frames: ReadonlyMap<string, Frame>;
  readonly wires: readonly PlacedWire[];
  readonly routed: Routed;
}

/** Routes every joint between the stands, or answers `undefined` when they stand too close for that. */
export function wire(stands: readonly Stand[], joints: readonly Joint[], polish?: number): Wired | undefined {
  const box = bounds(stands);
  const field = new Field(Math.ceil(box.width) + 2 * MARGIN + 1, Math.ceil(box.height) + 2 * MARGIN + 1);
  const frames = new Map(stands.map((stand) => [stand.part.name, frameOf(stand, box.x, box.y)]));
  const ports = new Map<string, readonly Port[]>();
  const needed = new Set(joints.flatMap((j) => [`${j.from.part}.${j.from.lug}`, `${j.to.part}.${j.to.lug}`]));
  for (const stand of stands) {
    const frame = frames.get(stand.part.name);
    if (!frame) continue;
    for (const rect of stand.outline.blocked) block(field, rectToSheet(frame, rect), 0);
    for (const lug of stand.outline.lugs) {
      if (lug.lug !== 'case') block(field, rectToSheet(frame, lug.tag), LUG_CLEARANCE);
      ports.set(
        `${stand.part.name}.${lug.lug}`,
        lug.ports.map((port) => portToSheet(frame, port)),
      );
    }
  }
  for (const name of needed)
    for (const port of ports.get(name) ?? []) field.dear[nodeOf(field, port.node)] = 2;
  const gates = (end: Joint['from']): readonly Gate[] =>
    (ports.get(`${end.part}.${end.lug}`) ?? []).map((port) => ({
      node: nodeOf(field, port.node),
      inward: heading(port.inward),
    }));
  const tasks = joints.map((joint): Task => ({ from: gates(joint.from), to: gates(joint.to) }));
  const routed = routeAll(field, tasks, polish);
  if (!routed) return undefined;
  const wires = joints.map((joint, i): PlacedWire => {
    const track = routed.tracks[i] ?? { from: 0, to: 0, nodes: [] };
    return {
      joint,
      points: line(
        field,
        track,
        ports.get(`${joint.from.part}.${joint.from.lug}`)?.[track.from]?.spot,
        ports.get(`${joint.to.part}.${joint.to.lug}`)?.[track.to]?.spot,
      ),
    };
  });
  return { frames, wires, routed };
}

const portToSheet = (frame: Frame, port: Port): Port => ({
  node: toSheet(frame, port.node),
  inward: directionToSheet(frame, port.inward),
  spot: toSheet(frame, port.spot),
});

const nodeOf = (field: Field, p: Point): number =>
  field.node(Math.round(p.x / PITCH), Math.round(p.y / PITCH));

const heading = (d: Point): Direction => (d.x > 0 ? 0 : d.x < 0 ? 2 : d.y > 0 ? 1 : 3);

/** Closes every node within `clearance` of a rectangle; its bounds count as inside when there is none. */
function block(field: Field, rect: Rect, clearance: number): void {
  const near = clearance === 0 ? 0 : clearance - 0.01;
  const [x0, x1] = [Math.ceil((rect.x - near) / PITCH), Math.floor((rect.x + rect.width + near) / PITCH)];
  const [y0, y1] = [Math.ceil((rect.y - near) / PITCH), Math.floor((rect.y + rect.height + near) / PITCH)];
  for (let y = Math.max(0, y0); y <= Math.min(field.rows - 1, y1); y++)
    for (let x = Math.max(0, x0); x <= Math.min(field.columns - 1, x1); x++)
      field.blocked[field.node(x, y)] = 1;
}

/** A track's corners, from spot to spot. */
function line(field: Field, track: Track, from: Point | undefined, to: Point | undefined): readonly Point[] {
  const path = [
    ...(from ? [from] : []),
    ...track.nodes.map((node) => ({
      x: (node % field.columns) * PITCH,
      y: Math.floor(node / field.columns) * PITCH,
    })),
    ...(to ? [to] : []),
  ];
  return path.filter((p, i) => {
    const [a, b] = [path[i - 1], path[i + 1]];
    return !a || !b || !((a.x === p.x && p.x === b.x) || (a.y === p.y && p.y === b.y));
  });
}
