/** What the workshop's parts list says, beside the figures that hang on it: codes, prices, and what replaces what. */
import type { AvailableValues } from '../common/series.ts';
import type { Kit } from '../describe/kit.ts';
import type { PartsList, StockItem } from '../describe/stock.ts';
import { resistorOf } from '../parts/index.ts';
import { ohmsText } from './columns.ts';

/** What replaces what, by its codes; nothing for a kit in which all is as it says. */
export const substitutionData = ({ substitutions }: Kit): object =>
  substitutions ? { substitutions: substitutions.map(({ part, from, to }) => ({ part, from, to })) } : {};

interface Listed {
  readonly ohms: number;
  readonly item: StockItem;
}

/** Resistors in stock, the smallest first; of one value that the list has twice, the first. */
export function resistorsInStock(list: PartsList | undefined): readonly Listed[] {
  const found = new Map<number, StockItem>();
  for (const item of list?.items ?? []) {
    const ohms = resistorOf(item.part)?.ohms.value;
    if (ohms !== undefined && item.inStock && !found.has(ohms)) found.set(ohms, item);
  }
  return [...found].map(([ohms, item]) => ({ ohms, item })).sort((a, b) => a.ohms - b.ohms);
}

/** Whether a list has any resistors, in stock or not: only then a pad is to come from it. */
export const listsResistors = (list: PartsList | undefined): boolean =>
  list?.items.some(({ part }) => resistorOf(part) !== undefined) ?? false;

/** The item in stock of a value. */
export const itemOfOhms = ({ list }: Kit, ohms: number): StockItem | undefined =>
  resistorsInStock(list).find((one) => one.ohms === ohms)?.item;

/** `470 kΩ (R-470K, 0.04 EUR)`; the value alone where the list has it not. */
export function ohmsInStock(kit: Kit, ohms: number): string {
  const item = itemOfOhms(kit, ohms);
  if (!item) return ohmsText(ohms);
  const price =
    item.price === undefined ? [] : [`${item.price}${kit.list?.currency ? ` ${kit.list.currency}` : ''}`];
  return `${ohmsText(ohms)} (${[item.code, ...price].join(', ')})`;
}

/** The values of the list that a choice is from: codes and prices by value, in the list's currency. */
export function choiceData(kit: Kit, choice: AvailableValues): object {
  if (typeof choice === 'string') return {};
  const items = resistorsInStock(kit.list).filter(({ ohms }) => choice.stock.includes(ohms));
  if (items.length === 0) return {};
  return {
    listed: items.map(({ ohms, item: { code, price } }) => ({
      ohms,
      code,
      ...(price === undefined ? {} : { price }),
    })),
    ...(kit.list?.currency === undefined ? {} : { currency: kit.list.currency }),
  };
}
