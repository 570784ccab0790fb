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

type SingleCoil = PickupPart<'single-coil'>;

/** Single coil pickup, two leads. Defaults 6.0 kΩ, 2.4 H, 110 pF; made for 250 kΩ pots. Common practice, no source. */
export const singleCoil = definePart({
  kind: 'single-coil',
  what: 'single coil pickup',
  is: ['pickup'],
  mirrors: true,
  turns: 'halves',
  fields: pickupFields,
  build: (base, written): SingleCoil =>
    buildPickup(base, written, { resistance: 6e3, inductance: 2.4, capacitance: 110e-12, pots: 250e3 }),
  lugs: pickupLugs,
  elements: (part) => coilOf(part, 1),
  usual: (part) => usualWinding(part),
  outline: (part, _, language) => pickupOutline(part, 'face.single-coil', language),
  face: (_, seen) => pickupFace(seen, [30], 34),
});
