/** Every text stands out from what is painted below it. */
import { contrast } from '../../common/contrast.ts';
import { centreOf, overlaps } from '../../common/geometry.ts';
import type { Drawing } from '../drawing.ts';
import { type Finding, finding } from '../finding.ts';
import { SpatialIndex } from '../near.ts';
import type { TextMark } from '../paint.ts';
import { touchesArea } from '../space.ts';
import { groundOf } from './texts.ts';

/** Least contrast of text, WCAG 2.2, 1.4.3 (from memory); large type might have less, but none is given less here. */
const LEAST = 4.5;
/** What a drawing without a painted page lies on. */
const PAPER = '#ffffff';

export function contrastFindings(drawing: Drawing): readonly Finding[] {
  const nearShapes = new SpatialIndex(drawing.shapes, ({ outer }) => outer);
  const nearLines = new SpatialIndex(drawing.lines, ({ box }) => box);
  return drawing.texts.flatMap((text): readonly Finding[] => {
    const [shapes, lines] = [nearShapes.query(text.box), nearLines.query(text.box)];
    const ground = groundOf(text, shapes);
    const between = (order: number): boolean => order > (ground?.order ?? -1) && order < text.order;
    // A text partly on another ink must stand out from both.
    const fills = [
      ground?.fill ?? PAPER,
      ...shapes
        .filter(({ order, area, fill }) => fill !== 'none' && between(order) && onArea(text, area))
        .map((s) => s.fill),
      ...lines
        .filter(({ order, box, fill }) => fill !== 'none' && between(order) && overlaps(box, text.box))
        .map((l) => l.fill),
    ];
    const worst = fills
      .map((fill) => ({ fill, ratio: contrast(text.fill, fill) }))
      .reduce((a, b) => (b.ratio < a.ratio ? b : a));
    if (worst.ratio >= LEAST) return [];
    const detail = { text: text.words, ink: text.fill, ground: worst.fill, ratio: worst.ratio, least: LEAST };
    return [finding('contrast', centreOf(text.box), detail)];
  });
}

const onArea = (text: TextMark, area: Parameters<typeof touchesArea>[0]): boolean =>
  text.ink.some((ink) => touchesArea(area, ink));
