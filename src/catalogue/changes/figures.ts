/**
 * What is kept of a kit, to tell later what has changed for customers: its loads, resonances and readings in each position, its
 * price, what replaces what, what breaks a rule, and its revision mark. Plain data, the same bytes for the same kit.
 */
import { createHash } from 'node:crypto';
import { z } from 'zod';
import {
  type CurveShape,
  type HarnessReadings,
  readMeter,
  solveLoads,
  solveResponse,
} from '../../analyse/index.ts';
import { notesOf } from '../../annotate/notes.ts';
import { padCaptions } from '../../annotate/pads.ts';
import { stepsOf } from '../../annotate/steps.ts';
import { substitutionLines } from '../../annotate/stock-notes.ts';
import { type Circuit, outputOf, voiceName } from '../../circuit/circuit.ts';
import { positionCell } from '../../circuit/position.ts';
import { roundedTo } from '../../common/figures.ts';
import type { Diagnostic } from '../../common/problem.ts';
import { toDiagnostics } from '../../describe/diagnostics.ts';
import { type Kit, labelOf } from '../../describe/kit.ts';
import { recordOf } from '../../draw/canvas.ts';
import { markOf, type Prepared, sheetOf } from '../../draw/compose.ts';
import { drawSheet } from '../../draw/sheet.ts';
import { findArrangement } from '../../files/layouts.ts';
import type { Loaded } from '../../files/load.ts';
import { outlineOf } from '../../parts/index.ts';
import { buildCircuit } from '../../solve/build.ts';

/** Ohms; an open circuit has no figure. */
const ohms = z.union([z.number(), z.literal('open')]);

/** One curve as a player hears it: see `CurveShape`. Hertz and decibels; what there is not is null. */
const shapeSchema = z.object({
  plateau: z.number(),
  resonance: z.number().nullable(),
  height: z.number().nullable(),
  cutoff: z.number().nullable(),
});

const pickupSchema = z.object({
  pickup: z.string(),
  label: z.string(),
  dcLoad: ohms,
  signalLoad: ohms,
  /** With the other pickups, cable and amplifier. */
  totalLoad: ohms,
  shape: shapeSchema.nullable(),
});

const stateSchema = z.object({
  position: z.string(),
  sounding: z.array(z.string()),
  pickups: z.array(pickupSchema),
  /** All pickups that sound, by the output that they are heard at; one of a mono jack has no name. */
  together: z.array(z.object({ output: z.string(), shape: shapeSchema })),
  /** With all controls on 10 or the volumes on 0; `disconnected` before the pickups are soldered, `connected` when all is. */
  readings: z.array(
    z.object({ measured: z.string(), volume: z.literal([10, 0]), pickups: z.string(), ohms }),
  ),
});

const problemSchema = z.object({ severity: z.string(), code: z.string(), message: z.string() });

export const figuresSchema = z.object({
  version: z.literal(1),
  kit: z.string(),
  title: z.string(),
  /** Of what a sheet shows but for the places of its parts, SHA-256: what needs no placing to be compared. */
  shown: z.string(),
  /** The revision mark, which the places hang on too; null where nothing was drawn. */
  mark: z.string().nullable(),
  states: z.array(stateSchema),
  price: z
    .object({ amount: z.number(), currency: z.string().nullable(), without: z.array(z.string()) })
    .nullable(),
  substitutions: z.array(z.string()),
  /** Errors and warnings. */
  problems: z.array(problemSchema),
});

export type KitFigures = z.output<typeof figuresSchema>;
export type StateFigures = KitFigures['states'][number];
export type Shape = z.output<typeof shapeSchema>;
export type Ohms = z.output<typeof ohms>;

/** Significant figures that are kept: many more than are shown, and fewer than hang on the order of a sum. */
const FIGURES = 9;

const kept = (value: number): number => roundedTo(value, FIGURES, Math.round);
const keptOhms = (value: number): Ohms => (Number.isFinite(value) ? kept(value) : 'open');
const orNull = (value: number | undefined): number | null => (value === undefined ? null : kept(value));

/**
 * The figures of a kit as it was read. For a build: call it once a kit, hand it the placed circuit that was drawn, and store
 * the result with `saveFigures`; without a placed circuit there is no mark in it.
 *
 * @param loaded a kit with errors has figures too: its errors
 */
export function figuresOf(
  loaded: Loaded,
  prepared?: Prepared,
  id = loaded.kit?.id ?? loaded.file,
): KitFigures {
  const { kit } = loaded;
  if (!kit)
    return {
      version: 1,
      kit: id,
      title: id,
      shown: '',
      mark: null,
      states: [],
      price: null,
      substitutions: [],
      problems: problemsOf(loaded.diagnostics),
    };
  const circuit = prepared?.circuit ?? buildCircuit(kit);
  const loads = solveLoads(circuit);
  const notes = toDiagnostics(notesOf(circuit, loads), loaded.source);
  return {
    version: 1,
    kit: kit.id,
    title: kit.title,
    shown: hashOf(shownOf(circuit, loads)),
    mark: prepared ? markOf(prepared) : null,
    states: statesOf(circuit, loads),
    price: priceOf(kit),
    substitutions: [...substitutionLines(kit)],
    problems: problemsOf([...loaded.diagnostics, ...notes]),
  };
}

const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex');

/** All that a sheet says and shows but for where parts stand and wires run, with what decides that. */
function shownOf(circuit: Circuit, loads: Prepared['loads']): string {
  const { kit } = circuit;
  const captions = padCaptions(circuit, loads);
  const parts = kit.parts.map((part) => {
    const outline = outlineOf(part, captions.get(part.name), kit.language);
    const { width, height } = outline;
    return { part, outline, frame: { x: 0, y: 0, width, height, turn: 0, mirror: false } as const };
  });
  const placement = { width: 1, height: 1, parts, wires: [] };
  const sheet = sheetOf({ circuit, loads, hand: kit.hand, placement }, {}, '');
  return JSON.stringify([
    recordOf((root) => drawSheet(root, sheet)),
    kit.joints,
    stepsOf(circuit),
    [kit.arrangement, findArrangement(kit.arrangement), kit.page],
  ]);
}

function statesOf(circuit: Circuit, loads: Prepared['loads']): StateFigures[] {
  // The shapes alone are asked for; of the curve one point is the least there is.
  const responses = solveResponse(circuit, { points: 1 }).states;
  const meter = readMeter(circuit);
  return loads.map(({ index, state, pickups }): StateFigures => {
    const curves = responses.filter((one) => one.index === index);
    const readings = meter[index];
    return {
      position: positionCell(state),
      sounding: state.sounding.map((name) => voiceName(state, name)),
      pickups: pickups.map(({ pickup, dcLoad, signalLoad, total }) => {
        const curve = curves.flatMap((one) => one.pickups).find((one) => one.pickup === pickup);
        return {
          pickup,
          label: labelOf(circuit.kit, pickup),
          dcLoad: keptOhms(dcLoad),
          signalLoad: keptOhms(signalLoad),
          totalLoad: keptOhms(total.signalLoad),
          shape: curve ? shapeOf(curve.shape) : null,
        };
      }),
      together: curves.flatMap(({ state: heard, together }) =>
        together ? [{ output: outputOf(heard) ?? '', shape: shapeOf(together.shape) }] : [],
      ),
      readings: readings
        ? [...readingsOf(readings.volumeFull, 10), ...readingsOf(readings.volumeZero, 0)]
        : [],
    };
  });
}

const shapeOf = ({ plateau, resonance, cutoff }: CurveShape): Shape => ({
  plateau: kept(plateau),
  resonance: orNull(resonance?.frequency),
  height: orNull(resonance?.height),
  cutoff: orNull(cutoff),
});

/** What the reading at the jack is called; those at lugs go by the lugs. */
export const AT_JACK = 'tip to sleeve';

const readingsOf = ({ jack, lugs }: HarnessReadings, volume: 10 | 0): StateFigures['readings'] =>
  [{ measured: AT_JACK, ...jack }, ...lugs.map((one) => ({ ...one, measured: one.probe }))].flatMap(
    ({ measured, disconnected, connected }) => [
      { measured, volume, pickups: 'disconnected', ohms: keptOhms(disconnected) },
      { measured, volume, pickups: 'connected', ohms: keptOhms(connected) },
    ],
  );

/** What the parts of a kit cost by the list; parts without a price are named, since the sum is then too low. */
function priceOf({ parts, list }: Pick<Kit, 'parts' | 'list'>): KitFigures['price'] {
  if (!list) return null;
  const price = (code: string | undefined): number | undefined =>
    list.items.find((item) => item.code === code)?.price;
  const priced = parts.map(({ name, code }) => ({ name, price: price(code) }));
  if (priced.every((one) => one.price === undefined)) return null;
  return {
    amount: kept(priced.reduce((sum, one) => sum + (one.price ?? 0), 0)),
    currency: list.currency ?? null,
    without: priced.flatMap((one) => (one.price === undefined ? [one.name] : [])),
  };
}

const problemsOf = (diagnostics: readonly Diagnostic[]): KitFigures['problems'] =>
  diagnostics
    .filter(({ severity }) => severity !== 'note')
    .map(({ severity, code, message }) => ({ severity, code, message }));

/** How many warnings a kit has; absent where it has none, as a record keeps it. */
export const warningsOf = ({ problems }: KitFigures): number | undefined =>
  problems.filter(({ severity }) => severity === 'warning').length || undefined;
