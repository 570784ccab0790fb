/** About how high paragraphs are in a column, so that a picture beside them can be made as high. */
import { linesIn } from '../common/flow.ts';
import type { Block } from './document.ts';

/** Sizes of the template's paragraphs, points, and of what is small; less paper has smaller type. */
const TYPE = { page: 9.5, small: 8 } as const;
/** From one line to the next, and from one paragraph's last to the next one's first, by the size of type. */
const [LINE, PARAGRAPH] = [1.35, 1.6] as const;
const MILLIMETRES = 25.4 / 72;

/**
 * The height of paragraphs; other blocks count for nothing.
 *
 * @param width of the column, millimetres
 * @returns millimetres
 */
export const textHeight = (blocks: readonly Block[], width: number): number =>
  blocks.reduce((sum, block) => {
    if (block.is !== 'paragraph') return sum;
    const size = (block.small ? TYPE.small : TYPE.page) * MILLIMETRES;
    const lines = linesIn(block.text, size, width, block.strong ? 'bold' : 'regular').length;
    return sum + ((lines - 1) * LINE + PARAGRAPH) * size;
  }, 0);
