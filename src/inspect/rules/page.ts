/** Everything lies on the page, and on a page with a size in millimetres no type is too small to read. */
import { centreOf, type Rect } from '../../common/geometry.ts';
import type { Drawing } from '../drawing.ts';
import { type Finding, finding } from '../finding.ts';
import type { Mark } from '../paint.ts';

/** Smallest type on paper, millimetres, as printers measure it: the em, of which a capital is 0.73. */
export const LEAST_TYPE = 2;
/** Less than what drawings are rounded to. */
const SLACK = 0.02;

export function pageFindings({ page, scale, marks, texts }: Drawing): readonly Finding[] {
  return [
    ...marks
      .filter((mark) => !within(page, boxOf(mark)))
      .map((mark) => finding('off-page', centreOf(boxOf(mark)), { what: wordsOf(mark) })),
    ...texts
      .filter(({ size }) => scale !== undefined && size * scale < LEAST_TYPE)
      .map(({ words, size, box }) =>
        finding('small-type', centreOf(box), { text: words, size: size * (scale ?? 0), least: LEAST_TYPE }),
      ),
  ];
}

const boxOf = (mark: Mark): Rect => (mark.kind === 'area' ? mark.outer : mark.box);

const within = (page: Rect, box: Rect): boolean =>
  box.x >= page.x - SLACK &&
  box.y >= page.y - SLACK &&
  box.x + box.width <= page.x + page.width + SLACK &&
  box.y + box.height <= page.y + page.height + SLACK;

const wordsOf = (mark: Mark): string =>
  mark.kind === 'text'
    ? `“${mark.words}”`
    : `a shape of ${mark.groups[mark.groups.length - 1] ?? 'the page'}`;
