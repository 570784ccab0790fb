/** How many sheets of a page a drawing takes, which way round, and what each shows. */

import { nth } from '../common/must.ts';
import { sayIn } from '../messages/say.ts';
import type { Contents, Layout } from './blocks.ts';
import { layOutColumn } from './column.ts';
import { type Fitted, fitPage } from './fit-page.ts';
import type { Page } from './head.ts';
import { layOutSheet } from './layout.ts';

/** One sheet: what of a drawing it shows, and where. */
interface Composed {
  readonly contents: Contents;
  readonly layout: Layout;
}

interface OnPage extends Fitted {
  readonly contents: Contents;
}

/** All sheets of a drawing on one page format, as it lies. */
interface Plan {
  readonly page: Page;
  readonly sheets: readonly OnPage[];
}

/** Height of capitals from which paper reads well at arm's length, millimetres: about 7 point (common practice, no source). */
export const GOOD_CAPITALS = 1.8;
/** By how much a second sheet must make type larger to be worth it, where even so it is not that large. */
const WORTH = 1.05;

/** The sheet that is asked for: on a page, in a column, or as large as it has to be. */
export function compose(
  contents: Contents,
  { page, width, number = 1 }: { readonly page?: Page; readonly width?: number; readonly number?: number },
): Composed {
  if (width !== undefined) return { contents, layout: layOutColumn(contents, width) };
  if (!page) return { contents, layout: layOutSheet(contents) };
  if (number > 1) {
    // What the sheets of the cards show depends on nothing that stands on the first.
    const fixed = page.turns ? planOf(contents, page).page : page;
    return nth(cardSheets(contents, fixed), number - 2);
  }
  return nth(planOf(contents, page).sheets, 0);
}

/** On a page that may be turned, the way round that needs fewer sheets for good type, or else has the larger. */
export function planOf(contents: Contents, page: Page): Plan {
  const { turns, ...upright } = page;
  const ways = [upright, ...(turns ? [{ ...upright, width: page.height, height: page.width }] : [])];
  return ways.map((one) => planAs(contents, one)).reduce((best, one) => (isBetter(one, best) ? one : best));
}

const smallest = ({ sheets }: Pick<Plan, 'sheets'>): number =>
  Math.min(...sheets.map(({ capitals }) => capitals));

function isBetter(a: Plan, b: Plan): boolean {
  const [good, other] = [a, b].map((one) => smallest(one) >= GOOD_CAPITALS);
  if (good !== other) return good === true;
  if (good && a.sheets.length !== b.sheets.length) return a.sheets.length < b.sheets.length;
  return (a.sheets[0]?.capitals ?? 0) > (b.sheets[0]?.capitals ?? 0) + 1e-6;
}

function planAs(contents: Contents, page: Page): Plan {
  const one = { contents, ...fitPage(contents, page) };
  if (one.capitals >= GOOD_CAPITALS || !contents.drawing || contents.cards.length === 0)
    return { page, sheets: [one] };
  const several = split(contents, page);
  const reached = smallest({ sheets: several });
  return { page, sheets: reached >= GOOD_CAPITALS || reached > WORTH * one.capitals ? several : [one] };
}

/** The drawing on a sheet of its own, then the cards. */
function split(contents: Contents, page: Page): readonly OnPage[] {
  const rest = cardSheets(contents, page);
  const { views, language } = contents;
  const where = sayIn(language)('sheet.loads-on', { last: rest.length + 1 });
  const first: Contents = {
    ...contents,
    cards: [],
    // A sheet without sentences gets none.
    views: views.length === 0 ? [] : [...views, where],
  };
  return [{ contents: first, ...fitPage(first, page) }, ...rest];
}

/** The cards on as few sheets as give them good type. */
function cardSheets(contents: Contents, page: Page): readonly OnPage[] {
  let best: readonly OnPage[] = [];
  for (let count = 1; count <= contents.cards.length; count++) {
    best = shares(contents, count).map((share) => ({ contents: share, ...fitPage(share, page) }));
    if (smallest({ sheets: best }) >= GOOD_CAPITALS) break;
  }
  return best;
}

/** The cards in even shares, each with what cards say. */
function shares({ title, cards, table, legend, language }: Contents, count: number): readonly Contents[] {
  const each = Math.ceil(cards.length / count);
  const all = Math.ceil(cards.length / each);
  return Array.from({ length: all }, (_, i) => ({
    language,
    ...(title === undefined ? {} : { title }),
    views: title === undefined ? [] : [sayIn(language)('sheet.loads', { number: i + 2, count: all + 1 })],
    key: [],
    cards: cards.slice(i * each, (i + 1) * each),
    ...(table ? { table } : {}),
    legend,
    work: [],
  }));
}
