/** The outline of any part. */
import type { Part } from '../../parts/index.ts';
import { groundPointOutline } from './ground-point.ts';
import { jackOutline } from './jack.ts';
import { leverOutline } from './lever.ts';
import type { Outline } from './outline.ts';
import { pickupOutline } from './pickup.ts';
import { potOutline } from './pot.ts';
import { twoLegOutline } from './two-leg.ts';

/** `caption` is what the annotation says beside the part, where it says something. */
export function outlineOf(part: Part, caption?: string): Outline {
  switch (part.kind) {
    case 'single-coil':
    case 'humbucker':
      return pickupOutline(part);
    case 'pot':
      return potOutline(part);
    case 'lever-3':
    case 'lever-5':
      return leverOutline(part);
    case 'resistor':
    case 'capacitor':
      return twoLegOutline(part, caption);
    case 'jack':
      return jackOutline(part);
    case 'ground-point':
      return groundPointOutline(part);
  }
}
