/** From the kit to what can be drawn: solved, annotated and placed. Pure, and the same in a page as in Node. */
import {
  type Knobs,
  knobsAtFull,
  readMeter,
  type StateLoads,
  type StateReadings,
  solveLoads,
  solveResponse,
} from './analyse/index.ts';
import { padCaptions } from './annotate/pads.ts';
import { type Plot, plotOf } from './annotate/plot.ts';
import type { Circuit } from './circuit/circuit.ts';
import type { Kit } from './describe/kit.ts';
import type { Prepared } from './draw/compose.ts';
import { drawingId } from './draw/drawing-name.ts';
import { type Arrangement, freeFlow } from './place/arrangement.ts';
import { type PlaceOptions, place } from './place/place.ts';
import { buildCircuit } from './solve/build.ts';

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

/** From the kit to its placed circuit. `hand` and the search's `effort` are the kit's and the usual ones unless given. */
export async function prepare(
  kit: Kit,
  arrangement: Arrangement = freeFlow,
  { hand = kit.hand, ...options }: PlaceOptions = {},
): Promise<Prepared> {
  const circuit = buildCircuit(kit);
  const loads = solveLoads(circuit);
  const captions = padCaptions(circuit, loads);
  return {
    circuit,
    loads,
    hand,
    placement: await place(circuit, arrangement, captions, { ...options, hand }),
    arrangement,
  };
}

/** Frequencies of a plotted curve: near enough that its straight pieces look round. */
const PLOTTED = 301;

/** From the kit to all that its response plot shows, at one setting of the knobs. */
export function composeResponse(kit: Kit, knobs: Knobs = knobsAtFull): Plot {
  const circuit = buildCircuit(kit);
  const id = `${drawingId(circuit, kit.hand, {})}-response`;
  return plotOf(circuit, solveResponse(circuit, { knobs, points: PLOTTED }), knobs, id);
}
