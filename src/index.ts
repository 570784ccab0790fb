/** The public names. */
export {
  choosePads,
  readMeter,
  solveKnobSettings,
  solveLimits,
  solveLoads,
  solveResponse,
} from './analyse/index.ts';
export { kitFromValue, readKit } from './checked.ts';
export { defineKit } from './describe/define.ts';
export { formatDiagnostic } from './describe/diagnostics.ts';
export { kitJsonSchema } from './describe/json-schema.ts';
export { readPartsList } from './describe/read-stock.ts';
export { readBaseFile } from './files/bases.ts';
export { analyse, composeResponse, draw, drawResponse, prepare, render, sheetsOf } from './pipeline.ts';
export { arrangementSchema } from './place/arrangement.ts';
export type * from './public-types.ts';
export { buildCircuit } from './solve/build.ts';
