/** What the jack is plugged into: the cable's capacitance and the amplifier's input resistance. */
import type { OutputLoad } from '../describe/kit.ts';
import { AMPLIFIER, type Branch, CABLE, capacitor, type Port, resistor } from './network.ts';

/** The network as it is played: with cable and amplifier at the jack, where there is one. */
export function withOutputLoad(
  { branches, jack }: { readonly branches: readonly Branch[]; readonly jack: Port | undefined },
  outputLoad: OutputLoad,
): readonly Branch[] {
  if (jack === undefined) return branches;
  return [
    ...branches,
    capacitor(jack.from, jack.to, outputLoad.cable.value, CABLE),
    resistor(jack.from, jack.to, outputLoad.amplifier.value, AMPLIFIER),
  ];
}
