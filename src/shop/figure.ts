/** Stand-in. */
import { h } from 'hastscript';
import { drawn, htmlText } from './html.ts';
import type { KitData } from './kit-data.ts';

interface Pieces {
  readonly drawing: string;
  readonly key: string;
}
export interface FigureOptions extends Pieces {
  readonly data: KitData;
  readonly narrow?: Pieces;
  readonly styles: string;
  readonly scheme?: 'auto' | 'light' | 'dark';
}
export const figureHtml = ({ data, narrow, styles, ...wide }: FigureOptions): string =>
  htmlText(
    h(
      'solderleaf-figure-1',
      { dataStyles: styles },
      h('p', data.title),
      drawn(wide.drawing),
      drawn(wide.key),
      ...(narrow ? [drawn(narrow.drawing), drawn(narrow.key)] : []),
    ),
  );
