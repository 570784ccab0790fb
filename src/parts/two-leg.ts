/** What resistor and capacitor share: two legs of their own, and a tube over either leg when asked for. */
import { z } from 'zod';
import type { LugSpec } from './kind.ts';

export const twoLegs: readonly LugSpec[] = [
  { name: '1', role: 'leg' },
  { name: '2', role: 'leg' },
];

/** The legs that get sleeving: `1`, `2` or both. */
export const sleeveField = z
  .union([z.literal(1), z.literal(2), z.literal('both')])
  .optional()
  .describe('Which leg gets sleeving: 1, 2 or both');

/** Sleeved legs by lug name. */
export const sleeves = (written: 1 | 2 | 'both' | undefined): readonly string[] =>
  written === undefined ? [] : written === 'both' ? ['1', '2'] : [String(written)];
