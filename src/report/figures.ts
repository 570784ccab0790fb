/** All figures of a kit, as `loads` reports them. */
import { solveLimits, solveResponse } from '../analyse/index.ts';
import type { Kit } from '../describe/kit.ts';
import { analyse } from '../prepare.ts';
import type { Figures } from './loads-data.ts';

export interface FigureOptions {
  /** With their limits under the tolerances of all parts; takes seconds. */
  readonly tolerance?: boolean;
  readonly seed?: number;
  readonly samples?: number;
}

export function figuresOf(kit: Kit, { tolerance = false, seed, samples }: FigureOptions = {}): Figures {
  const analysed = analyse(kit);
  const options = { ...(seed === undefined ? {} : { seed }), ...(samples === undefined ? {} : { samples }) };
  return {
    ...analysed,
    // The shapes alone are asked for; of the curve one point is the least there is.
    response: solveResponse(analysed.circuit, { points: 1 }).states,
    ...(tolerance ? { limits: solveLimits(analysed.circuit, options) } : {}),
  };
}
