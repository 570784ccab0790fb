import { definePart } from './kind.ts';
import { buildPickup, coilOf, type PickupPart, pickupFields, pickupLugs } from './pickup.ts';

export type Humbucker = PickupPart<'humbucker'>;

/**
 * Humbucker with two leads: its coils are joined inside, so to the harness it is one winding. Defaults 8.2 kΩ,
 * 4.4 H, 130 pF; made for 500 kΩ pots. Common practice, no source.
 */
export const humbucker = definePart({
  kind: 'humbucker',
  what: 'humbucker pickup with two leads',
  fields: pickupFields,
  build: (base, written): Humbucker =>
    buildPickup(base, written, { resistance: 8.2e3, inductance: 4.4, capacitance: 130e-12, pots: 500e3 }),
  lugs: () => pickupLugs,
  elements: (part) => coilOf(part),
});
