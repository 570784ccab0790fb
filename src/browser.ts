/**
 * The public names for a page: the same descriptions, solved and drawn into the page's own document. It touches no file and no
 * network; arrangements other than free flow are data that the page brings.
 */
import type { Knobs } from './analyse/index.ts';
import type { Kit } from './describe/kit.ts';
import { type Aspect, sheetOf } from './draw/compose.ts';
import { plotToElement, sheetToElement } from './draw/page.ts';
import { themes } from './draw/theme.ts';
import { type Arrangement, freeFlow } from './place/arrangement.ts';
import type { PlaceOptions } from './place/place.ts';
import { composeResponse, prepare } from './prepare.ts';

export { choosePads, solveLoads, solveResponse } from './analyse/index.ts';
export { kitFromValue, readKit } from './checked.ts';
export { defineKit } from './describe/define.ts';
export { formatDiagnostic } from './describe/diagnostics.ts';
export { arrangementSchema } from './place/arrangement.ts';
export type * from './public-types.ts';
export { buildCircuit } from './solve/build.ts';

/** From the kit to the drawing as an element of the page, in free flow unless an arrangement is given. */
export async function draw(
  kit: Kit,
  arrangement: Arrangement = freeFlow,
  options: Aspect & PlaceOptions = {},
): Promise<SVGSVGElement> {
  const prepared = await prepare(kit, arrangement, options);
  return sheetToElement(sheetOf(prepared, options), themes[options.theme ?? 'light']);
}

/** From the kit to its response plot as an element of the page. */
export const drawResponse = (kit: Kit, knobs?: Knobs): SVGSVGElement =>
  plotToElement(composeResponse(kit, knobs));
