/** How the usual sheet divides its room: head and key above, the drawing, and below it the load cards or the work of a step. */
import { textWidth } from '../common/text.ts';
import {
  abreastIn,
  type Contents,
  cardsBlock,
  cardsWidth,
  drawingBlock,
  headBlock,
  keyBlock,
  type Layout,
  NOTHING,
  stacked,
  workBlock,
} from './blocks.ts';
import { BESIDE_DRAWING } from './chips.ts';
import { EDGE } from './head.ts';
import { widestKey } from './key.ts';
import { workWidth } from './work.ts';

/** Cards abreast that any sheet with cards has room for. */
const ABREAST = 3;
/** A key without a drawing is no wider than reads well. */
const KEY = 720;

/** Size of the revision mark, and how far the middle of its capitals stands above the lower edge. */
const MARK = { size: 10, up: 8 } as const;

/** As large as it has to be: nothing is broken but what a key alone says. */
export function layOutSheet(contents: Contents): Layout {
  const { title, views, drawing, cards, legend, work, key } = contents;
  const texts = views.map((line) => textWidth(line, 12));
  const inner = Math.max(
    drawing?.width ?? 0,
    title === undefined ? 0 : textWidth(title, 22, 'bold'),
    ...(drawing || cards.length > 0 ? texts : texts.map((width) => Math.min(KEY, width))),
    ...work.map(workWidth),
    ...(cards.length === 0 ? [] : legend.map((line) => textWidth(line, 12))),
    cardsWidth(contents, contents.table ? 1 : Math.min(cards.length, ABREAST)),
    drawing ? 0 : Math.min(KEY, widestKey(key)),
  );
  const all = stacked([
    // What is measured to fit is not broken where sums are rounded.
    headBlock(contents, inner + 1),
    keyBlock(contents, inner + 1, false),
    drawingBlock(contents, inner),
    cards.length > 0
      ? cardsBlock(contents, inner, abreastIn(contents, inner))
      : workBlock(contents, inner + 1),
  ]);
  // A drawing has a margin of its own, and by itself needs little more.
  const edge = drawing && all.height === drawing.height ? BESIDE_DRAWING : EDGE;
  const [width, height] = [Math.ceil(inner + 2 * edge), Math.ceil(all.height + 2 * edge)];
  const placed = { ...NOTHING, ...all.put(edge, edge) };
  const { x, y } = placed.drawing;
  return {
    ...placed,
    drawing: { x: Math.round(x), y },
    // In the margin, which nothing else uses: there is always room, and nothing moves for it.
    mark: { x: width - edge, y: height - MARK.up, size: MARK.size },
    box: { x: 0, y: 0, width, height },
    width,
    height,
    scale: 1,
  };
}
