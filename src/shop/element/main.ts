/** The script of a shop page. It is built by itself, as `dist/solderleaf-figure.js`. */
import { define } from './element.ts';
import { FIGURE_TAG } from './tag.ts';

define(FIGURE_TAG);
