/** The analysis: numbers about a circuit, solved from its network. Knows nothing of drawing. */

export type { Loads } from '../solve/measure.ts';
export { type Across, capacitorsAcross, type Lost } from './across.ts';
export { analyse, toJson } from './analysis.ts';
export { type Knobs, knobSettings, knobsAtFull, rolesOf, rotationsAt, solvedRole } from './controls.ts';
export type { Method, ToleranceRange } from './extremes.ts';
export { hiddenPickups } from './hidden.ts';
export { idleControls, shuntControls } from './idle.ts';
export { idleComponents, idleSwitches } from './idle-parts.ts';
export { legsOf, type NewResistor } from './kit-changes.ts';
export { largerPots } from './larger-pots.ts';
export {
  DEFAULT_SAMPLES,
  DEFAULT_SEED,
  type LimitOptions,
  type Limits,
  MOST_SAMPLES,
  MOST_SEED,
  type PickupLimits,
  type ReadingLimits,
  type ResonanceLimits,
  type SampledRange,
  type StateLimits,
  solveLimits,
} from './limits.ts';
export {
  type Difference,
  differenceOf,
  type LoadOptions,
  type PickupLoads,
  type StateLoads,
  solveLoads,
} from './loads.ts';
export {
  type HarnessReadings,
  type LugReading,
  type Reading,
  readJack,
  readMeter,
  readOutputs,
  type StateReadings,
} from './meter.ts';
export { choosePads } from './pad.ts';
export type { Alternative, Cause } from './pad-alternatives.ts';
export { type Effect, loadFor, type Match } from './pad-effects.ts';
export type { PadAdvice, PadOption, PadOptions, PadPlan } from './pad-plan.ts';
export { type CurveShape, decibels, logGrid, type Peak } from './peak.ts';
export { type ExpectedReading, type MeterSetting, type Probes, readingKind } from './probing.ts';
export {
  type Curve,
  type FrequencyResponse,
  type PickupCurve,
  type ShapeDifference,
  type StateResponse,
  type SweepOptions,
  solveKnobSettings,
  solveResponse,
} from './response.ts';
export { seriesTracks } from './series-tracks.ts';
export { type StepReading, stepReadings } from './step-readings.ts';
export { testCards } from './test-cards.ts';
export { hasTone, toneControlsIn, tonesByPickup } from './tone-controls.ts';
export { type Treble, trebleOf } from './treble.ts';
export type { Temperatures } from './variables.ts';
