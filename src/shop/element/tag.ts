/** Of the form of the figure's markup: an element reads its own form only, so that two versions may stand on one page. */
export const FIGURE_TAG = 'solderleaf-figure-1';
