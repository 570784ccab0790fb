/**
 * Between which two nodes a pickup's load lies. Of one coil that sounds alone they are its ends. Of two in parallel they are the
 * nodes that they share; of two in series the two that they do not: a humbucker is then one pickup, whatever is connected to
 * the link of its coils. Where something lies between the two, the first is looked out of, and the other belongs to its chain.
 */
import { lugId, type State, soundingCoils } from '../circuit/circuit.ts';
import { must } from '../common/must.ts';
import { elementsLike, type Part } from '../parts/index.ts';
import type { Netlist } from '../solve/netlist.ts';
import { coilName, type Port } from '../solve/network.ts';

interface PickupPort {
  readonly port: Port;
  /** Coils of the same pickup that are not looked out of: they load the others, as those of its chain do. */
  readonly kept: readonly string[];
}

export function pickupPort(
  pickup: Part,
  state: Pick<State, 'sounding' | 'coils'>,
  { nodeOf }: Netlist,
): PickupPort {
  const heard = soundingCoils(state, pickup);
  // Of a silent pickup, which only a test asks for, as of one that sounds with all of its coils.
  const coils = heard.length > 0 ? heard : elementsLike(pickup, 'coil');
  const node = (lug: string): number => must(nodeOf.get(lugId(pickup.name, lug)), `node of ${lug}`);
  const [first, ...others] = coils.map((coil) => ({ from: node(coil.hot), to: node(coil.return) }));
  const whole = others.reduce<Port | undefined>(
    (port, next) => port && joined(port, next),
    must(first, `coil of ${pickup.name}`),
  );
  return whole
    ? { port: whole, kept: [] }
    : {
        port: must(first, `coil of ${pickup.name}`),
        kept: coils.slice(1).map(({ id }) => coilName(pickup.name, id)),
      };
}

/** Two ports in parallel, or in series whichever of their ends meet. */
function joined(one: Port, other: Port): Port | undefined {
  const ends = [other.from, other.to];
  const [from, to] = [ends.includes(one.from), ends.includes(one.to)];
  if (from && to) return one;
  const far = (met: number): number => (other.from === met ? other.to : other.from);
  if (to) return { from: one.from, to: far(one.to) };
  return from ? { from: far(one.from), to: one.to } : undefined;
}
