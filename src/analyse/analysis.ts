/** Everything the analysis says of a circuit, in one value that can be written as JSON. */
import type { Circuit } from '../circuit/circuit.ts';
import type { ControlRole } from '../parts/kind.ts';
import { rolesOf } from './controls.ts';
import { type LimitOptions, type Limits, solveLimits } from './limits.ts';
import { type LoadOptions, type StateLoads, solveLoads } from './loads.ts';
import { readMeter, type StateReadings } from './meter.ts';
import { type StateResponse, solveKnobSettings } from './response.ts';

interface Analysis {
  readonly kit: string;
  /** Hertz, where signal loads are taken. */
  readonly frequency: number;
  readonly controls: Readonly<Record<string, ControlRole>>;
  readonly loads: readonly StateLoads[];
  /** Shapes of the curves at every knob setting; their points are left to `solveResponse`. */
  readonly response: readonly StateResponse[];
  readonly meter: readonly StateReadings[];
  readonly limits: Limits;
}

/** All figures of the handbook's table. */
export function analyse(circuit: Circuit, options: LoadOptions & LimitOptions = {}): Analysis {
  const roles = rolesOf(circuit);
  return {
    kit: circuit.kit.id,
    frequency: options.frequency ?? circuit.kit.outputLoad.frequency.value,
    controls: Object.fromEntries(roles),
    loads: solveLoads(circuit, options),
    response: solveKnobSettings(circuit),
    meter: readMeter(circuit, roles),
    limits: solveLimits(circuit, options),
  };
}

/** A value as JSON text. JSON knows no infinity, so an open circuit is written `"open"`. */
export const toJson = (value: unknown, indent = 2): string =>
  JSON.stringify(value, (_, one: unknown) => (one === Infinity ? 'open' : one), indent);
