/** What an order of kits takes: parts by stock code or by value, wire by colour, what it costs and what is short. Pure. */
import { isDeepStrictEqual } from 'node:util';
import type { Kit } from '../../describe/kit.ts';
import { is, kinds, type Part } from '../../parts/index.ts';
import { valueWords } from '../../parts/value-words.ts';

/** So many of one kit. */
export interface Wanted {
  readonly kit: Kit;
  readonly quantity: number;
}

export interface PartLine {
  /** Where the part is in the parts list. */
  readonly code?: string;
  /** What kind of part it is, in words. */
  readonly what: string;
  readonly value?: string;
  readonly quantity: number;
  /** Ids of the kits that take it. */
  readonly kits: readonly string[];
  /** Of one piece. */
  readonly price?: number;
  readonly cost?: number;
  /** Pieces in stock, where the list counts them. */
  readonly pieces?: number;
  /** Pieces that are not in stock, where the list says how many are. */
  readonly short?: number;
  readonly replacedBy?: string;
  /** Codes of the items that it stands in for here. */
  readonly inPlaceOf?: readonly string[];
  readonly supplier?: string;
}

export interface WireLine {
  readonly kind: 'wire' | 'jumper';
  /** IEC 60757 code; absent where no joint says a colour. */
  readonly colour?: string;
  /** Metres, of the pieces whose length is given. */
  readonly length: number;
  /** All pieces, and those of them whose length is not given. */
  readonly pieces: number;
  readonly withoutLength: number;
}

export interface Order {
  readonly wanted: readonly { readonly id: string; readonly quantity: number }[];
  readonly currency?: string;
  readonly parts: readonly PartLine[];
  readonly wires: readonly WireLine[];
  /** Of all parts with a price. */
  readonly cost: number;
  /** Items that stand in for others. */
  readonly substitutions: readonly {
    readonly kit: string;
    readonly part: string;
    readonly from: string;
    readonly to: string;
  }[];
}

/** @param currency of the prices, where the parts list does not say */
export function countOrder(wanted: readonly Wanted[], currency?: string): Order {
  const parts = partLines(wanted);
  const listed = wanted.flatMap(({ kit }) => kit.list?.currency ?? [])[0] ?? currency;
  return {
    wanted: wanted.map(({ kit, quantity }) => ({ id: kit.id, quantity })),
    ...(listed === undefined ? {} : { currency: listed }),
    parts,
    wires: wireLines(wanted),
    cost: money(parts.reduce((sum, { cost }) => sum + (cost ?? 0), 0)),
    substitutions: wanted.flatMap(({ kit }) =>
      (kit.substitutions ?? []).map(({ part, from, to }) => ({
        kit: kit.id,
        part,
        from: from.code,
        to: to.code,
      })),
    ),
  };
}

/** Without what binary fractions leave: prices have four decimals at most. */
const money = (amount: number): number => Math.round(amount * 1e4) / 1e4;

interface Group {
  readonly part: Part;
  readonly kit: Kit;
  readonly kits: Set<string>;
  /** Codes of the items that were asked for. */
  readonly asked: Set<string>;
  quantity: number;
}

/** A ground point is a place on the instrument, and nobody buys it. */
const isBought = (part: Part): boolean => !is(part, 'ground-point');

function partLines(wanted: readonly Wanted[]): readonly PartLine[] {
  const groups: Group[] = [];
  const known = new Map<string, Group[]>();
  for (const { kit, quantity } of wanted)
    for (const part of kit.parts.filter(isBought)) {
      const key = part.code ?? `${part.kind} ${valueWords(part) ?? ''}`;
      const alike = known.get(key) ?? [];
      let group = alike.find((one) => part.code !== undefined || isAlike(one.part, part));
      if (!group) {
        group = { part, kit, kits: new Set(), asked: new Set(), quantity: 0 };
        groups.push(group);
        known.set(key, [...alike, group]);
      }
      group.quantity += quantity;
      group.kits.add(kit.id);
      const replaced = kit.substitutions?.find((one) => one.part === part.name);
      if (replaced) group.asked.add(replaced.from.code);
    }
  return groups.map(lineOf).sort((a, b) => compare(sortKey(a), sortKey(b)));
}

/** What has a code first; else by kind and value. No locale has a say in it. */
const sortKey = ({ code, what, value }: PartLine): string =>
  `${code === undefined ? 1 : 0}${code ?? ''}${what} ${value ?? ''}`;
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Fields that say what a part is for in its kit, and not what is bought for it. */
const OF_THE_KIT = new Set(['name', 'label', 'role', 'sleeving', 'reference', 'leftHanded']);
const bought = (part: Part): object =>
  Object.fromEntries(Object.entries(part).filter(([field]) => !OF_THE_KIT.has(field)));
const isAlike = (a: Part, b: Part): boolean => isDeepStrictEqual(bought(a), bought(b));

function lineOf({ part, kit, kits, asked, quantity }: Group): PartLine {
  const value = valueWords(part);
  const item = part.code === undefined ? undefined : kit.list?.items.find(({ code }) => code === part.code);
  const there = item && !item.inStock ? 0 : item?.pieces;
  return {
    ...(part.code === undefined ? {} : { code: part.code }),
    what: kinds[part.kind].what,
    ...(value === undefined ? {} : { value }),
    quantity,
    kits: [...kits],
    ...(item?.price === undefined ? {} : { price: item.price, cost: money(item.price * quantity) }),
    ...(there === undefined ? {} : { pieces: there, short: Math.max(0, quantity - there) }),
    ...(item?.replacedBy === undefined ? {} : { replacedBy: item.replacedBy }),
    ...(asked.size === 0 ? {} : { inPlaceOf: [...asked].sort(compare) }),
    ...(item?.supplier === undefined ? {} : { supplier: item.supplier }),
  };
}

function wireLines(wanted: readonly Wanted[]): readonly WireLine[] {
  const lines = new Map<string, WireLine>();
  for (const { kit, quantity } of wanted)
    for (const { kind, colour, length } of kit.joints) {
      // A leg is the component's own, a bend the pot's, and a braid the pickup's.
      if (kind !== 'wire' && kind !== 'jumper') continue;
      const key = `${kind === 'wire' ? 0 : 1}${colour ?? '~'}`;
      const before = lines.get(key);
      lines.set(key, {
        kind,
        ...(colour === undefined ? {} : { colour }),
        // In tenths of a millimetre, so that many pieces add up to what they are.
        length: Math.round(((before?.length ?? 0) + (length ?? 0) * quantity) * 1e4) / 1e4,
        pieces: (before?.pieces ?? 0) + quantity,
        withoutLength: (before?.withoutLength ?? 0) + (length === undefined ? quantity : 0),
      });
    }
  return [...lines].sort(([a], [b]) => compare(a, b)).map(([, line]) => line);
}
