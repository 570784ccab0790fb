/** What may differ from one harness to the next of the same kit: each element's factor, from its tolerance. */
import type { Kit } from '../describe/kit.ts';
import { elementsOf, isPickup, type Part } from '../parts/index.ts';
import type { Element } from '../parts/kind.ts';

/** An element, and the smallest and largest factor on its value. */
export interface Variable {
  /** `volume.track`, as the network's branches name it. */
  readonly of: string;
  readonly part: string;
  readonly low: number;
  readonly high: number;
}

/** Degrees Celsius that the workshop and the stage may have. */
export interface Temperatures {
  readonly low: number;
  readonly high: number;
}

/** A cool and a warm room; common practice, no source. */
export const roomTemperatures: Temperatures = { low: 10, high: 30 };

/** Copper's resistance rises by 0.393 % of its value at 20 °C per kelvin (IEC 60028). */
const COPPER = 0.00393;
const REFERENCE_TEMPERATURE = 20;

/**
 * Every element that has a tolerance. A winding's resistance varies with its own tolerance and with temperature;
 * inductance and capacitance of windings, cable and amplifier are taken as they are, as nobody states theirs.
 */
export const variablesOf = (kit: Kit, temperatures: Temperatures = roomTemperatures): readonly Variable[] =>
  kit.parts.flatMap((part) =>
    elementsOf(part).flatMap((element) => {
      const [low, high] = factorsOf(part, element, temperatures);
      return low === high ? [] : [{ of: `${part.name}.${element.id}`, part: part.name, low, high }];
    }),
  );

function factorsOf(part: Part, element: Element, { low, high }: Temperatures): readonly [number, number] {
  if (element.kind !== 'coil') return [1 - element.tolerance.value, 1 + element.tolerance.value];
  const tolerance = isPickup(part) ? part.tolerance.value : 0;
  const warmed = (degrees: number) => 1 + COPPER * (degrees - REFERENCE_TEMPERATURE);
  return [(1 - tolerance) * warmed(low), (1 + tolerance) * warmed(high)];
}
