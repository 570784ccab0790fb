/**
 * The whole way on one page:
 *
 *     description ─▶ model ─▶ graph ─▶ loads ─▶ notes ─▶ placement ─▶ drawing
 *
 * Every stage is a pure function from one read-only type to the next.
 */
import { type Knobs, knobsAtFull } from './analyse/index.ts';
import type { Kit } from './describe/kit.ts';
import { type Aspect, type Prepared, sheetOf } from './draw/compose.ts';
import { drawingName } from './draw/drawing-name.ts';
import { plotToSvg, sheetToInlineSvg, sheetToSvg } from './draw/headless.ts';
import { themes } from './draw/theme.ts';
import { type Arrangement, freeFlow } from './place/arrangement.ts';
import type { PlaceOptions } from './place/place.ts';
import { composeResponse, prepare } from './prepare.ts';

export { sheetsOf } from './draw/compose.ts';
export { analyse, composeResponse, prepare } from './prepare.ts';

/** One drawing of a prepared kit: its name, which is its file's too, and the text of its SVG. */
export const render = (prepared: Prepared, aspect: Aspect = {}) => ({
  name: drawingName(prepared.circuit, prepared.hand, aspect),
  svg: sheetToSvg(sheetOf(prepared, aspect), themes[aspect.theme ?? 'light']),
});

/** The same to stand in a page, whose stylesheet may set its inks and whose script may find what is in it. */
export const renderInline = (prepared: Prepared, aspect: Aspect = {}): string =>
  sheetToInlineSvg(sheetOf(prepared, { ...aspect, mode: 'inline' }), themes[aspect.theme ?? 'light']);

/** From the kit to the text of its SVG file; in free flow unless an arrangement is given. */
export const draw = async (
  kit: Kit,
  arrangement: Arrangement = freeFlow,
  options: Aspect & PlaceOptions = {},
): Promise<string> => render(await prepare(kit, arrangement, options), options).svg;

/** From the kit to the text of its response plot's SVG file. */
export const drawResponse = (kit: Kit, knobs: Knobs = knobsAtFull): string =>
  plotToSvg(composeResponse(kit, knobs));
