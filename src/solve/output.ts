/** What the jack is plugged into: the cable's capacitance and the amplifier's input resistance. */
import type { Surroundings } from '../describe/kit.ts';
import { type Branch, capacitor, type Port, resistor } from './network.ts';

export const outside = (surroundings: Surroundings, jack: Port | undefined): readonly Branch[] =>
  jack === undefined || jack.from === jack.to
    ? []
    : [
        capacitor(jack.from, jack.to, surroundings.cable.value, 'cable'),
        resistor(jack.from, jack.to, surroundings.amplifier.value, 'amplifier'),
      ];
