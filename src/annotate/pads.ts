/** The padding resistors of a kit, and what each makes of its pickup's load. */

import type { StateLoads } from '../analyse/index.ts';
import { type Circuit, lugId, netAt } from '../circuit/circuit.ts';
import { labelOf } from '../describe/kit.ts';
import { figuresIn } from '../messages/figures.ts';
import { sayIn } from '../messages/say.ts';
import { resistorOf } from '../parts/index.ts';

interface Pad {
  readonly part: string;
  readonly pickup: string;
  /** For the drawing, the DC load where the pickup sounds alone: `Neck alone: DC load 242 kΩ`. */
  readonly caption: string;
}

/** A padding resistor joins the hot net of a pickup, whatever the switch does, to ground. */
export function padsOf(circuit: Circuit, loads: readonly StateLoads[]): readonly Pad[] {
  const { language } = circuit.kit;
  const say = sayIn(language);
  return circuit.kit.parts.flatMap((part): Pad[] => {
    const body = resistorOf(part);
    if (!body) return [];
    const nets = [body.a, body.b].map((lug) => netAt(circuit, lugId(part.name, lug)));
    const pickup = nets.find((net) => net.pickup !== undefined)?.pickup;
    if (pickup === undefined || !nets.some((net) => net.role === 'ground')) return [];
    const alone = loads.find(({ state }) => state.sounding.length === 1 && state.sounding[0] === pickup);
    const load = alone?.pickups.find((entry) => entry.pickup === pickup)?.dcLoad;
    const label = labelOf(circuit.kit, pickup);
    return load === undefined
      ? []
      : [
          {
            part: part.name,
            pickup,
            caption: say('pads.alone', { pickup: label, load: figuresIn(language).figure(load, 'ohm') }),
          },
        ];
  });
}

/** What a pad says beneath its value, by part; its outline has room for it. */
export const padCaptions = (circuit: Circuit, loads: readonly StateLoads[]): ReadonlyMap<string, string> =>
  new Map(padsOf(circuit, loads).map(({ part, caption }) => [part, caption]));
