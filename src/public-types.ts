/** Every type that a signature of the library's, for Node or for a page, names. */
export type {
  Alternative,
  Cause,
  Curve,
  CurveShape,
  Difference,
  Effect,
  FrequencyResponse,
  HarnessReadings,
  Knobs,
  LimitOptions,
  Limits,
  LoadOptions,
  Loads,
  LugReading,
  Match,
  Method,
  NewResistor,
  PadAdvice,
  PadOption,
  PadOptions,
  PadPlan,
  Peak,
  PickupCurve,
  PickupLimits,
  PickupLoads,
  Reading,
  ReadingLimits,
  ResonanceLimits,
  SampledRange,
  ShapeDifference,
  StateLimits,
  StateLoads,
  StateReadings,
  StateResponse,
  SweepOptions,
  Temperatures,
  ToleranceRange,
} from './analyse/index.ts';
export type { Plot, PlotState } from './annotate/plot.ts';
export type { Checked } from './checked.ts';
export type { Circuit, Lug, LugId, Net, State } from './circuit/circuit.ts';
export type { Diagnostic, SourceLocation } from './common/problem.ts';
export type { Severity } from './common/quoting.ts';
export type { AvailableValues, SeriesName } from './common/series.ts';
export type { Base, BaseReader } from './describe/chain.ts';
export type { KitChanges, KitDescription } from './describe/define.ts';
export type { End, Hand, Joint, JointKind, Kit, OutputLoad, View } from './describe/kit.ts';
export type { PartsList, StockItem, Substitution } from './describe/stock.ts';
export type { Aspect, Prepared } from './draw/compose.ts';
export type { Page } from './draw/head.ts';
export type { Piece } from './draw/pieces.ts';
export type { ThemeName } from './draw/theme.ts';
export type { Language } from './messages/language.ts';
export type { Part, Pickup } from './parts/index.ts';
export type { Arrangement } from './place/arrangement.ts';
export type { Effort } from './place/improve.ts';
export type { PlaceOptions } from './place/place.ts';
export type { Placement } from './place/placement.ts';
export type { Analysed } from './prepare.ts';
