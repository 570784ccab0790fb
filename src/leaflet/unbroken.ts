/** A leaflet in which no line ends between a number and its unit. */
import { unbrokenText } from '../messages/unbroken.ts';
import type { Block, Cell, Shown } from './document.ts';

const unbrokenCell = (cell: Cell): Cell =>
  'text' in cell ? { ...cell, text: unbrokenText(cell.text) } : cell;

/** The same blocks with spaces that do not break before units; pictures stay as they are. */
export const unbroken = (blocks: readonly Block[]): readonly Block[] => blocks.map(unbrokenBlock);

const unbrokenShown = (shown: Shown): Shown => ({ ...shown, blocks: unbroken(shown.blocks) });

function unbrokenBlock(block: Block): Block {
  switch (block.is) {
    case 'heading':
    case 'paragraph':
      return { ...block, text: unbrokenText(block.text) };
    case 'list':
      return { ...block, items: block.items.map(unbrokenText) };
    case 'table':
      return { ...block, rows: block.rows.map((row) => row.map(unbrokenCell)) };
    case 'sheet':
      return block.caption === undefined ? block : { ...block, caption: unbrokenText(block.caption) };
    case 'steps':
    case 'box':
    case 'beside':
    case 'together':
      return { ...block, blocks: unbroken(block.blocks) };
    case 'pairs':
      return { ...block, items: block.items.map(unbrokenShown) };
    case 'step':
      return {
        ...block,
        blocks: unbroken(block.blocks),
        tests: block.tests.map(unbrokenShown),
        closing: unbroken(block.closing),
      };
    case 'figure':
    case 'contents':
    case 'lines':
      return block;
  }
}
