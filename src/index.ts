/** The public names. */
export {
  type Curve,
  choosePads,
  type Knobs,
  type LimitOptions,
  type Limits,
  type PadAdvice,
  type PadOptions,
  type PadPlan,
  type Peak,
  type PickupCurve,
  type Response,
  readMeter,
  type Shape,
  type ShapeDifference,
  type StateLoads,
  type StateReadings,
  type StateResponse,
  type SweepOptions,
  solveKnobSteps,
  solveLimits,
  solveLoads,
  solveResponse,
} from './analyse/index.ts';
export type { Plot, PlotState } from './annotate/plot.ts';
export { type Checked, kitFromValue, readKit } from './checked.ts';
export type { Circuit, State } from './circuit/circuit.ts';
export type { Report } from './common/problem.ts';
export { defineKit, type KitDescription } from './describe/define.ts';
export { kitJsonSchema } from './describe/json-schema.ts';
export type { Kit } from './describe/kit.ts';
export { printReport } from './describe/report.ts';
export type { Aspect, Prepared } from './draw/compose.ts';
export { analyse, composeResponse, draw, drawResponse, prepare, render } from './pipeline.ts';
export { type Arrangement, arrangementSchema } from './place/arrangement.ts';
export { buildCircuit } from './solve/build.ts';
