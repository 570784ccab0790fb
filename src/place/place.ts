/**
 * From the circuit to places and wires: the layered layout gives every part a first place, the arrangement seats
 * those it names, the rest settle between them, and the wires are laid. When they do not fit, everything moves
 * apart and is tried again.
 */

import type { Circuit } from '../circuit/circuit.ts';
import { PITCH, round2 } from '../common/geometry.ts';
import type { Hand, Joint } from '../describe/kit.ts';
import { outlineOf } from '../parts/index.ts';
import type { Arrangement } from './arrangement.ts';
import { clearCrossings } from './clear.ts';
import { narrowIn, wiredInColumn } from './column.ts';
import { elkGraph, layOut } from './elk.ts';
import { DEFAULT_EFFORT, type Effort } from './improve.ts';
import { packed } from './pack.ts';
import { type GridPart, type Placement, standing } from './placement.ts';
import { search } from './search.ts';
import { initialPlacement } from './seating.ts';
import { apart, settle } from './settle.ts';
import { askedText, type OutlinedPart, type PlacementStore, restored, storedOf } from './stored.ts';
import { type Wired, Wiring } from './wiring.ts';

/** Words to be drawn beside a part, by part name; they need room, so placing must know them. */
type Captions = ReadonlyMap<string, string>;

/** A kit whose wires find no way at any spacing: an error of that kit, and of no other. */
export class NoRouteError extends Error {}

/** Beyond so many parts there is no search for better places: it would take minutes and gain little. */
const MANY = 100;
/** Grid units between the parts of such a kit, besides twice what is kept free in any. */
const PACKED = 10;

/** Free columns and rows around the parts. */
const MARGIN = 8;

/** Grid units kept free between parts: tried one after the other until every wire can be routed. */
const SPREADS = [3, 4, 5, 6, 8, 11, 15] as const;

/** Grid units between parts as the layered layout leaves them. */
const APART = 2;

export interface PlaceOptions {
  readonly effort?: Effort;
  readonly hand?: Hand;
  /** Told what is being done, which for a large kit takes seconds. */
  readonly progress?: (stage: string) => void;
  /** Where placements are kept: one of a circuit that reads the same to placing is taken again. */
  readonly store?: PlacementStore;
}

/**
 * Places a circuit's parts and lays its wires, seen from the solder side.
 *
 * @throws NoRouteError when even the widest spacing leaves some wire no way, not expected for any valid kit
 */
export async function place(
  circuit: Circuit,
  arrangement: Arrangement,
  captions: Captions,
  { effort = DEFAULT_EFFORT, hand = 'right', progress = () => undefined, store }: PlaceOptions = {},
): Promise<Placement> {
  const { joints } = circuit.kit;
  const parts = circuit.kit.parts.map((part) => ({
    part,
    outline: outlineOf(part, captions.get(part.name), circuit.kit.language, narrowIn(arrangement)),
  }));
  const options = { effort, hand, progress };
  if (!store) return placedAnew(circuit, parts, arrangement, options);
  const asked = askedText({ parts, joints, arrangement, hand, effort });
  const before = restored(store.find(asked), parts, joints);
  if (before) return before;
  const placement = await placedAnew(circuit, parts, arrangement, options);
  store.keep(asked, storedOf(placement, joints));
  return placement;
}

/** Reads nothing of the circuit that `askedText` does not tell. */
async function placedAnew(
  { kit }: Circuit,
  parts: readonly OutlinedPart[],
  arrangement: Arrangement,
  { effort, hand, progress }: Required<Omit<PlaceOptions, 'store'>>,
): Promise<Placement> {
  progress('placing parts');
  const many = parts.length > MANY;
  const { widest } = arrangement;
  // What fits in no column, as hundreds of parts do not, is placed as wide as it comes.
  if (widest !== undefined && !many) {
    const wiring = wiredInColumn(parts, kit.joints, widest, MARGIN, effort);
    if (wiring) return finish(wiring.gridParts, wiring.result());
  }
  const seeds = many
    ? undefined
    : await layOut(
        elkGraph(
          parts.map(({ part, outline }) => ({ name: part.name, outline })),
          kit.joints,
        ),
      );
  const reach = arrangement.seats.length > 0 ? 60 : 6;
  let best: { readonly wiring: Wiring; readonly spoilt: number } | undefined;
  for (const between of SPREADS) {
    const by = 1 + (between - SPREADS[0]) / 10;
    const laid = seeds ?? packed(parts, kit.joints, PACKED + 2 * between);
    const gridParts = initialPlacement(parts, arrangement, hand, laid, by);
    const spaced = apart(gridParts, Math.max(APART, between - SPREADS[0]));
    // What is packed has its room for wires, which settling would take away.
    const settled = many ? spaced : settle(spaced, kit.joints, { between }, reach);
    progress(`laying ${kit.joints.length} wires`);
    if (!many) progress('optimising placement');
    const wiring = many
      ? wiredOnce(settled, kit.joints)
      : search(settled, kit.joints, between, MARGIN, effort);
    if (!wiring) continue;
    const spoilt = many ? 0 : clearCrossings(wiring);
    if (!best || spoilt < best.spoilt) best = { wiring, spoilt };
    if (spoilt === 0) break;
  }
  if (best) return finish(best.wiring.gridParts, best.wiring.result());
  throw new NoRouteError(`no way found for every wire of ${kit.id}`);
}

/** Very many parts stay where they are put: a search would take minutes. */
function wiredOnce(gridParts: readonly GridPart[], joints: readonly Joint[]): Wiring | undefined {
  const wiring = new Wiring(gridParts, joints, MARGIN, true);
  return wiring.routeAll(1) ? wiring : undefined;
}

/** Crops the grid to what is drawn, one pitch of margin about it. */
function finish(gridParts: readonly GridPart[], wired: Wired): Placement {
  const boxes = gridParts.map((gridPart) => {
    const frame = wired.frames.get(gridPart.part.name);
    const turned = gridPart.turn % 2 === 1;
    const { width: w, height: h } = standing(gridPart);
    return { x: frame?.x ?? 0, y: frame?.y ?? 0, width: turned ? h : w, height: turned ? w : h };
  });
  const points = wired.wires.flatMap((wire) => wire.points);
  const left = Math.min(...boxes.map((b) => b.x), ...points.map((p) => p.x)) - PITCH;
  const top = Math.min(...boxes.map((b) => b.y), ...points.map((p) => p.y)) - PITCH;
  const right = Math.max(...boxes.map((b) => b.x + b.width), ...points.map((p) => p.x)) + PITCH;
  const bottom = Math.max(...boxes.map((b) => b.y + b.height), ...points.map((p) => p.y)) + PITCH;
  return {
    width: right - left,
    height: bottom - top,
    parts: gridParts.flatMap((gridPart) => {
      const frame = wired.frames.get(gridPart.part.name);
      return frame
        ? [
            {
              part: gridPart.part,
              outline: standing(gridPart),
              frame: { ...frame, x: frame.x - left, y: frame.y - top },
            },
          ]
        : [];
    }),
    wires: wired.wires.map((wire) => ({
      ...wire,
      points: wire.points.map((p) => ({ x: round2(p.x - left), y: round2(p.y - top) })),
    })),
  };
}
