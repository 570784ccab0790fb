/** A workshop's parts list, once it is read: what it buys, what of it is in stock, and what replaces the rest. */
import type { Diagnostic, KeyPath, SourceLocation } from '../common/problem.ts';
import type { Kind, Part } from '../parts/index.ts';

/** Fields of a part in a kit, whichever item is bought for it; all others are the item's. */
export const ownFields: readonly string[] = ['kind', 'code', 'label', 'role', 'sleeving', 'reference'];

export interface StockItem {
  readonly code: string;
  readonly kind: Kind;
  /** The fields of its kind as a kit would write them. */
  readonly fields: Readonly<Record<string, unknown>>;
  /** The part that they make, named by the code. */
  readonly part: Part;
  /** Of one piece, in the list's currency. */
  readonly price?: number;
  readonly supplier?: string;
  readonly inStock: boolean;
  /** Pieces in stock, where the list counts them. */
  readonly pieces?: number;
  /** The code of the item to be used while this one is not in stock. */
  readonly replacedBy?: string;
  /** Where it is written, and each of its fields. */
  readonly place: SourceLocation;
  readonly places: ReadonlyMap<string, SourceLocation>;
}

export interface PartsList {
  readonly file: string;
  /** Three letters (ISO 4217), where given. */
  readonly currency?: string;
  /** Items that nothing is wrong with, in the order of the list. */
  readonly items: readonly StockItem[];
  /** All that is wrong with the list. */
  readonly diagnostics: readonly Diagnostic[];
}

/** An item as outputs name it. */
export interface NamedItem {
  readonly code: string;
  /** In words: `470 kΩ`; absent where its kind has none, as a switch. */
  readonly value?: string;
}

/** A part that is drawn and solved with what replaces the item it asks for. */
export interface Substitution {
  readonly part: string;
  /** Where the kit asks for the item. */
  readonly path: KeyPath;
  readonly from: NamedItem;
  readonly to: NamedItem;
}

/** The item of a code, if the list has it. */
export const itemOf = (list: PartsList, code: string): StockItem | undefined =>
  list.items.find((item) => item.code === code);

/** The item itself where it is in stock, else what replaces it, if that is. */
export function availableFor(list: PartsList, item: StockItem): StockItem | undefined {
  const seen = new Set<string>();
  for (let at: StockItem | undefined = item; at && !seen.has(at.code); ) {
    if (at.inStock) return at;
    seen.add(at.code);
    at = at.replacedBy === undefined ? undefined : itemOf(list, at.replacedBy);
  }
  return undefined;
}

export const isFaulty = ({ diagnostics }: PartsList): boolean =>
  diagnostics.some(({ severity }) => severity === 'error');
