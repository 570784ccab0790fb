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
  readMeter,
  type StateLoads,
  type StateReadings,
  solveLoads,
  solveResponse,
} from './analyse/index.ts';
import { padsOf } from './annotate/pads.ts';
import { type Plot, plotOf } from './annotate/plot.ts';
import type { Circuit } from './circuit/circuit.ts';
import type { Kit } from './describe/kit.ts';
import { type Aspect, drawingName, type Prepared, sheetOf } from './draw/compose.ts';
import { plotToSvg, sheetToSvg } from './draw/headless.ts';
import { themes } from './draw/theme.ts';
import type { Arrangement } from './place/arrangement.ts';
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
  arrangement: Arrangement,
  { hand = kit.hand, ...options }: PlaceOptions = {},
): Promise<Prepared> {
  const circuit = buildCircuit(kit);
  const loads = solveLoads(circuit);
  const captions = new Map(padsOf(circuit, loads).map((pad) => [pad.part, pad.caption]));
  return {
    circuit,
    loads,
    hand,
    placement: await place(circuit, arrangement, captions, { ...options, hand }),
  };
}

/** One drawing of a prepared kit: its name, which is its file's too, and the text of its SVG. */
export const render = (prepared: Prepared, aspect: Aspect = {}) => ({
  name: drawingName(prepared, aspect),
  svg: sheetToSvg(sheetOf(prepared, aspect), themes[aspect.theme ?? 'light']),
});

/** From the kit to the text of its SVG file. */
export const draw = async (
  kit: Kit,
  arrangement: Arrangement,
  options: Aspect & PlaceOptions = {},
): Promise<string> => render(await prepare(kit, arrangement, options), options).svg;

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
