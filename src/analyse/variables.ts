/** What may differ from one harness to the next of the same kit: each value's factor, from its tolerance. */
import type { Kit } from '../describe/kit.ts';
import { elementsOf } from '../parts/index.ts';
import type { CircuitElement } from '../parts/kind.ts';
import { CABLE, capacitanceOf, inductanceOf } from '../solve/network.ts';

/** A value, and the smallest and largest factor on it. */
export interface ToleranceParameter {
  /** `volume.track`, as the solver names it. */
  readonly of: string;
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
 * Every value that has a tolerance: of resistors, tracks and capacitors; of a winding its resistance, with temperature besides, its
 * inductance and its capacitance; and the cable's capacitance. Core loss, coupling and the amplifier's input are taken as given.
 */
export const toleranceParameters = (
  kit: Kit,
  temperatures: Temperatures = roomTemperatures,
): readonly ToleranceParameter[] => [
  ...kit.parts.flatMap((part) =>
    elementsOf(part).flatMap((element) => valuesOf(`${part.name}.${element.id}`, element, temperatures)),
  ),
  within(CABLE, kit.outputLoad.cableTolerance.value),
];

const within = (of: string, tolerance: number): ToleranceParameter => ({
  of,
  low: 1 - tolerance,
  high: 1 + tolerance,
});

function valuesOf(
  of: string,
  element: CircuitElement,
  { low, high }: Temperatures,
): readonly ToleranceParameter[] {
  // How closely two coils are coupled is taken as given.
  if (element.kind === 'coupling') return [];
  if (element.kind !== 'coil') return [within(of, element.tolerance.value)];
  const [resistance, inductance, capacitance] = element.tolerances;
  const warmed = (degrees: number) => 1 + COPPER * (degrees - REFERENCE_TEMPERATURE);
  return [
    { of, low: (1 - resistance.value) * warmed(low), high: (1 + resistance.value) * warmed(high) },
    within(inductanceOf(of), inductance.value),
    within(capacitanceOf(of), capacitance.value),
  ];
}
