/** Colour codes of wires in a size that can be read where the drawing is printed small: each on its own wire, where it hides the least. */
import { around, overlaps, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { is } from '../../parts/index.ts';
import { rectToSheet } from '../../place/frame.ts';
import { chipWidth } from '../chips.ts';
import { pointAt, runsOf } from './beads.ts';
import type { Harness } from './harness.ts';

interface Code {
  readonly code: string;
  readonly rect: Rect;
}

/** What it costs to hide a word or another code, a part's face, another wire; a unit away from the middle of its own costs less. */
const PRICE = { word: 1000, face: 200, line: 60, away: 0.2 } as const;
const STEP = 4;

export function codesOf({ sheet, parts, paths, words, type }: Harness): readonly Code[] {
  const faces = parts.map(({ part, frame, outline }) => ({
    rect: rectToSheet(frame, outline.body),
    price: is(part, 'component') ? PRICE.word : PRICE.face,
  }));
  const placed: Rect[] = [];
  return sheet.placement.wires.flatMap(({ joint: { colour: code } }, i): Code | [] => {
    if (code === undefined) return [];
    const path = nth(paths, i);
    const others = paths.flatMap((other, k) => (k === i ? [] : runsOf(other, 8)));
    const length = runsOf(path, 0).reduce((sum, { width, height }) => sum + width + height, 0);
    let best = around(0, 0, chipWidth(code, type), type * 1.3);
    let least = Number.POSITIVE_INFINITY;
    for (let along = 0; along <= length; along += STEP) {
      const { x, y } = pointAt(path, along);
      const rect = around(Math.round(x), Math.round(y), best.width, best.height);
      const cost =
        PRICE.away * Math.abs(along - length / 2) +
        PRICE.word * [...words, ...placed].filter((word) => overlaps(word, rect)).length +
        faces.reduce((sum, face) => sum + (overlaps(face.rect, rect) ? face.price : 0), 0) +
        PRICE.line * others.filter((other) => overlaps(other, rect)).length;
      if (cost < least) [best, least] = [rect, cost];
    }
    placed.push(best);
    return { code, rect: best };
  });
}
