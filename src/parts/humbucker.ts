import { definePart, type PickupPart } from './kind.ts';
import {
  buildPickup,
  coilOf,
  pickupFace,
  pickupFields,
  pickupLugs,
  pickupOutline,
  usualWinding,
} from './pickup.ts';

type Humbucker = PickupPart<'humbucker'>;

/**
 * Humbucker with two leads: its coils are joined inside, so to the harness it is one winding. Defaults 8.2 kΩ,
 * 4.4 H, 130 pF; made for 500 kΩ pots. Common practice, no source.
 */
export const humbucker = definePart({
  kind: 'humbucker',
  what: 'two-lead humbucker pickup',
  is: ['pickup'],
  mirrors: true,
  turns: 'halves',
  fields: pickupFields,
  build: (base, written): Humbucker =>
    buildPickup(base, written, { resistance: 8.2e3, inductance: 4.4, capacitance: 130e-12, pots: 500e3 }),
  lugs: pickupLugs,
  elements: (part) => coilOf(part, 0),
  usual: (part) => usualWinding(part),
  outline: (part, _, language) => pickupOutline(part, 'face.humbucker', language),
  face: (_, seen) => pickupFace(seen, [17, 45], 14),
});
