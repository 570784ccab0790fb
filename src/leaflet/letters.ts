/** Letters that a leaflet prints and the font lacks; those of titles and labels are told whenever a kit is read. */
import { type Problem, problem } from '../common/problem.ts';
import { missingGlyphs } from '../common/text.ts';
import type { Kit } from '../describe/kit.ts';

/** An empty box would be printed in their place. */
export function lettersMissing({ about }: Kit): readonly Problem[] {
  const glyphs = about === undefined ? [] : missingGlyphs(about);
  return about === undefined || glyphs.length === 0
    ? []
    : [problem('missing-glyph', ['about'], { text: about, glyphs })];
}
