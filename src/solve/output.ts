/** What each output of the jack is plugged into: the cable's capacitance and the amplifier's input resistance. */
import type { OutputLoad } from '../describe/kit.ts';
import { AMPLIFIER, type Branch, CABLE, capacitor, type Port, resistor } from './network.ts';

/** The network as it is played: with cable and amplifier at every output of the jack, where there is one. */
export const withOutputLoad = (
  {
    branches,
    jack,
    outputs = jack ? [jack] : [],
  }: {
    readonly branches: readonly Branch[];
    readonly jack: Port | undefined;
    readonly outputs?: readonly Port[];
  },
  outputLoad: OutputLoad,
): readonly Branch[] => [
  ...branches,
  ...outputs.flatMap(({ from, to }) => [
    capacitor(from, to, outputLoad.cable.value, CABLE),
    resistor(from, to, outputLoad.amplifier.value, AMPLIFIER),
  ]),
];
