/**
 * Which pickups are made in phase. The strings' signal changes sign with the direction of the winding and with the pole of
 * the magnet; common practice, no source. Where a kit does not say both of every pickup, nothing is said of any: their leads are then taken for
 * what their names say.
 */
import type { Kit } from '../describe/kit.ts';
import { isPickup, type Pickup } from '../parts/index.ts';

/** 1 or −1 by pickup, 1 for those in the majority; empty where the kit does not say. */
export function signsOf({ parts }: Kit): ReadonlyMap<string, number> {
  const found = parts.filter(isPickup).map((pickup) => [pickup.name, signOf(pickup)] as const);
  const known = found.flatMap(([name, sign]) => (sign === undefined ? [] : [[name, sign] as const]));
  if (known.length < found.length) return new Map();
  const balance = known.reduce((sum, [, sign]) => sum + sign, 0);
  const most = balance === 0 ? (known[0]?.[1] ?? 1) : Math.sign(balance);
  return new Map(known.map(([name, sign]) => [name, sign * most]));
}

function signOf({ wind, polarity }: Pickup): number | undefined {
  if (wind === undefined || polarity === undefined) return undefined;
  return (wind === 'clockwise' ? 1 : -1) * (polarity === 'north' ? 1 : -1);
}
