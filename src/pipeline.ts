/**
 * The whole way on one page:
 *
 *     description ─▶ model ─▶ graph ─▶ loads ─▶ notes ─▶ placement ─▶ drawing
 *
 * Every stage is a pure function from one read-only type to the next.
 */
import {
  type Knobs,
  knobsAtFull,
  readJack,
  readMeter,
  type StateLoads,
  type StateReadings,
  solveLoads,
  solveResponse,
} from './analyse/index.ts';
import { cardsOf } from './annotate/cards.ts';
import { linesOf, tintOfPickup } from './annotate/lines.ts';
import { padsOf } from './annotate/pads.ts';
import { type Plot, plotOf } from './annotate/plot.ts';
import { describeSheet, viewLine } from './annotate/words.ts';
import { buildCircuit } from './circuit/build.ts';
import type { Circuit } from './circuit/circuit.ts';
import type { Kit } from './describe/kit.ts';
import { plotToSvg, sheetToSvg } from './draw/headless.ts';
import type { Sheet } from './draw/sheet.ts';
import { contactsOf, isPickup } from './parts/index.ts';
import type { Arrangement } from './place/arrangement.ts';
import { place } from './place/place.ts';

/** What the analysis says of a circuit. */
export interface Analysed {
  readonly circuit: Circuit;
  readonly loads: readonly StateLoads[];
  readonly readings: readonly StateReadings[];
}

/** From the kit to its solved circuit. */
export function analyse(kit: Kit): Analysed {
  const circuit = buildCircuit(kit);
  return { circuit, loads: solveLoads(circuit), readings: readMeter(circuit) };
}

/** From the kit to all that its drawing shows. */
export async function compose(kit: Kit, arrangement: Arrangement): Promise<Sheet> {
  const circuit = buildCircuit(kit);
  const loads = solveLoads(circuit);
  const pads = padsOf(circuit, loads);
  const lines = linesOf(circuit);
  const cards = cardsOf(circuit, loads, readJack(circuit));
  const placement = await place(circuit, arrangement, new Map(pads.map((pad) => [pad.part, pad.caption])));
  const pickups = kit.parts.filter(isPickup);
  return {
    id: kit.id,
    title: kit.title,
    view: viewLine(kit),
    description: describeSheet(circuit, cards),
    placement,
    lines,
    cards,
    tints: new Map(pickups.map((part) => [part.name, tintOfPickup(circuit, part.name)])),
    pickups: new Map(pickups.map((part) => [tintOfPickup(circuit, part.name), `${part.label}, hot`])),
    heroes: new Set(pads.map((pad) => pad.part)),
    closed: new Map(
      kit.parts.flatMap((part) => {
        const first = contactsOf(part)[0];
        return first ? [[part.name, first.joins] as const] : [];
      }),
    ),
  };
}

/** From the kit to the text of its SVG file. */
export async function draw(kit: Kit, arrangement: Arrangement): Promise<string> {
  return sheetToSvg(await compose(kit, arrangement));
}

/** Frequencies of a plotted curve: near enough that its straight pieces look round. */
const PLOTTED = 301;

/** From the kit to all that its response plot shows, at one setting of the knobs. */
export function composeResponse(kit: Kit, knobs: Knobs = knobsAtFull): Plot {
  const circuit = buildCircuit(kit);
  return plotOf(circuit, solveResponse(circuit, { knobs, points: PLOTTED }), knobs);
}

/** From the kit to the text of its response plot's SVG file. */
export const drawResponse = (kit: Kit, knobs: Knobs = knobsAtFull): string =>
  plotToSvg(composeResponse(kit, knobs));
