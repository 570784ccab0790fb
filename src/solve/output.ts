/** What the jack is plugged into: the cable's capacitance and the amplifier's input resistance. */
import type { OutputLoad } from '../describe/kit.ts';
import { AMPLIFIER, type Branch, CABLE, capacitor, type Port, resistor } from './network.ts';

export const outside = (outputLoad: OutputLoad, jack: Port | undefined): readonly Branch[] =>
  jack === undefined || jack.from === jack.to
    ? []
    : [
        capacitor(jack.from, jack.to, outputLoad.cable.value, CABLE),
        resistor(jack.from, jack.to, outputLoad.amplifier.value, AMPLIFIER),
      ];
