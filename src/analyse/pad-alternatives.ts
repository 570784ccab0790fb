/** What can be done instead of a pad on the pickup's own lug, each solved; and what makes a load too heavy. */
import { type Circuit, type Lug, type LugId, lugAt, lugId, type State } from '../circuit/circuit.ts';
import { must } from '../common/must.ts';
import { type Kit, partNamed } from '../describe/kit.ts';
import { contactsOf, controlsOf, is, isPickup, resistorOf } from '../parts/index.ts';
import { loadsOf } from '../solve/measure.ts';
import { makeNetlist } from '../solve/netlist.ts';
import { type Branch, elementName, partOf } from '../solve/network.ts';
import { knobsAtFull, rolesOf, rotationsAt } from './controls.ts';
import { lugFor, type NewResistor, withResistor, withValues } from './kit-changes.ts';
import { chainOf, pickupLoadBranches, type StateLoads } from './loads.ts';
import { type Effect, effectsOf, improves, loadFor, type Match, worsened } from './pad-effects.ts';
import { pickupPort } from './ports.ts';

/** Every one brings the judged load nearer its reference, and makes none worse where that one is judged. */
export type Alternative =
  /** The same resistor where the signal reaches the volume: in circuit in every position. */
  | (Solved & { readonly kind: 'elsewhere'; readonly pad: NewResistor })
  /** The same resistor on a pole that is free: in circuit only where that pole's contact is closed. */
  | (Solved & {
      readonly kind: 'spare-pole';
      readonly pad: NewResistor;
      /** Indices of the states it is in circuit in. */
      readonly states: readonly number[];
    })
  /** Pots of the values in the pickup's reference harness instead; ohms by the control's id. */
  | (Solved & { readonly kind: 'pots'; readonly pots: Readonly<Record<string, number>> })
  /** A resistor that loads this pickup, on the lug of the one it suits; the same for others that want one. */
  | (Solved & {
      readonly kind: 'move';
      readonly part: string;
      /** The first is the one that is there; the others are of its value, or of the nearest available. */
      readonly pads: readonly Placed[];
    })
  /** A resistor that loads this pickup and suits none. */
  | (Solved & { readonly kind: 'remove'; readonly part: string })
  /** A jumper on a tone control's pole, so that it works on this pickup too. */
  | (Solved & {
      readonly kind: 'tone-jumper';
      readonly from: LugId;
      readonly to: LugId;
      readonly tones: readonly string[];
    });

interface Solved {
  /** Every pickup in every state, before and after. */
  readonly effects: readonly Effect[];
  /** Those of them that get over 10 % further from their reference, in positions that several share. */
  readonly worse: readonly Effect[];
}

/** A resistor on the signal lead of a pickup. */
export interface Placed extends NewResistor {
  readonly pickup: string;
}

/** What is to be bettered. */
export interface Asked {
  /** As it is now. */
  readonly kit: Kit;
  readonly now: readonly StateLoads[];
  /** What is changed: the same, without the pickup's own pads. */
  readonly circuit: Circuit;
  readonly pickup: string;
  /** Index of the state it is judged in. */
  readonly index: number;
  readonly match: Match;
  /** Where its signal leaves. */
  readonly lug: Lug;
}

type Untried = {
  readonly [K in Alternative['kind']]: Omit<Extract<Alternative, { kind: K }>, keyof Solved>;
}[Alternative['kind']];

/** The alternative with what it does, if it is better than what is there. */
export function ifBetter(asked: Asked, one: Untried, after: Kit): readonly Alternative[] {
  const effects = effectsOf(asked.now, after, asked.match);
  if (!improves(asked.match, asked.now, effects, asked.pickup)) return [];
  return [{ ...one, effects, worse: effects.filter((effect) => worsened(asked.match, effect)) }];
}

/** A part that loads a pickup, and what its load would be without it: ohms, infinite when nothing else loads it. */
export interface Cause {
  readonly part: string;
  readonly without: number;
}

/** Pots and resistors whose removal raises a pickup's load, the heaviest first. */
export function causesOf(circuit: Circuit, pickup: string, index: number, match: Match): readonly Cause[] {
  const { now, without } = loadsWithout(circuit, pickup, index, match);
  return circuit.kit.parts
    .filter((part) => is(part, 'pot') || resistorOf(part) !== undefined)
    .map((part) => ({ part: part.name, without: without((branch) => partOf(branch) === part.name) }))
    .filter(({ without }) => without > now * RAISED)
    .sort((a, b) => (a.without === b.without ? 0 : b.without - a.without));
}

/** What is more than this has not risen by rounding only. */
const RAISED = 1 + 1e-9;

/** A pickup's load as it is, and as it is without some branches. */
function loadsWithout(circuit: Circuit, pickup: string, index: number, match: Match) {
  const state = must(circuit.states[index], `state ${index}`);
  const netlist = makeNetlist(circuit, state);
  const { port, kept } = pickupPort(partNamed(circuit.kit, pickup), state, netlist);
  const bare = pickupLoadBranches(netlist, chainOf(circuit, state, pickup), kept);
  const frequency = circuit.kit.outputLoad.frequency.value;
  const load = (branches: readonly Branch[]) => loadFor(match, loadsOf(branches, port, frequency));
  return {
    now: load(bare),
    without: (gone: (branch: Branch) => boolean) => load(bare.filter((branch) => !gone(branch))),
  };
}

/** The pad at the volume's input, if that is another net than the pickup's own. */
export function elsewhere(asked: Asked, pad: NewResistor): readonly Alternative[] {
  const { circuit, lug: own } = asked;
  const inputs = volumesInPath(asked)
    .map((id) => lugAt(circuit, id))
    .filter((lug) => lug.net !== own.net);
  return inputs.flatMap((lug) => {
    const moved = { part: pad.part, ohms: pad.ohms, from: lugFor(circuit, lug.net) ?? lug.id, to: pad.to };
    return ifBetter(asked, { kind: 'elsewhere', pad: moved }, withResistor(circuit.kit, moved));
  });
}

/**
 * Lugs of volume pots at which the pickup's signal comes in where it is judged: with the control half way they are still one node with its
 * signal lead. That is the end where it is at full, whichever end that is, or the wiper of one that is wired in reverse.
 */
function volumesInPath({ circuit, index, lug }: Asked): readonly LugId[] {
  const state = must(circuit.states[index], `state ${index}`);
  const roles = rolesOf(circuit);
  const atFull = rotationsAt(roles, knobsAtFull);
  return circuit.kit.parts.flatMap(controlsOf).flatMap(({ id, part, tracks }) => {
    if (roles.get(id) !== 'volume') return [];
    const { nodeOf } = makeNetlist(circuit, state, { ...atFull, [id]: 0.5 });
    return tracks
      .flatMap(({ anticlockwise, wiper, clockwise }) => [clockwise, anticlockwise, wiper])
      .map((name) => lugId(part, name))
      .filter((one) => nodeOf.get(one) === nodeOf.get(lug.id));
  });
}

/** The pad behind a pole that nothing is joined to: its common on the pickup's lug, its throw to the pad. */
export function sparePoles(asked: Asked, pad: NewResistor): readonly Alternative[] {
  const { circuit } = asked;
  return freePoles(circuit).flatMap(({ common, throws }) =>
    throws.flatMap((lug): readonly Alternative[] => {
      const states = circuit.states.flatMap((state, i) => (touches(state, common, lug) ? [i] : []));
      if (!states.includes(asked.index)) return [];
      const behind: NewResistor = {
        part: pad.part,
        ohms: pad.ohms,
        from: lug,
        to: pad.to,
        wires: [[pad.from, common]],
      };
      return ifBetter(asked, { kind: 'spare-pole', pad: behind, states }, withResistor(circuit.kit, behind));
    }),
  );
}

export const touches = (state: State, a: LugId, b: LugId): boolean =>
  state.closedContacts.some((group) => group.includes(a) && group.includes(b));

/** Poles of which no lug is joined to anything. */
function freePoles(
  circuit: Circuit,
): readonly { readonly common: LugId; readonly throws: readonly LugId[] }[] {
  const lugs = [...circuit.lugs.values()];
  return circuit.kit.parts
    .filter((part) => contactsOf(part).length > 0)
    .flatMap((part) => {
      const own = lugs.filter((lug) => lug.part === part.name);
      const poles = [...new Set(own.map((lug) => lug.pole))];
      return poles.flatMap((pole) => {
        const pins = own.filter((lug) => lug.pole === pole);
        const common = pins.find((lug) => lug.role === 'common');
        const free = pins.every((lug) => (circuit.nets[lug.net]?.lugs.length ?? 0) === 1);
        const throws = pins.filter((lug) => lug.role === 'throw').map((lug) => lug.id);
        return free && common ? [{ common: common.id, throws }] : [];
      });
    });
}

/** The pots that load a pickup, changed to the values of its reference harness. */
export function otherPots(asked: Asked): readonly Alternative[] {
  const { circuit, pickup, index, match } = asked;
  const { reference } = must(
    circuit.kit.parts.filter(isPickup).find((part) => part.name === pickup),
    `pickup ${pickup}`,
  );
  const { now, without } = loadsWithout(circuit, pickup, index, match);
  const roles = rolesOf(circuit);
  const pots: Record<string, number> = {};
  for (const { id, part, tracks } of circuit.kit.parts.flatMap(controlsOf)) {
    const role = roles.get(id);
    if (role !== 'volume' && role !== 'tone') continue;
    const own = new Set(tracks.map((track) => elementName(part, track)));
    const wanted = role === 'volume' ? reference.volume.value : reference.tone.value;
    const differs = tracks.some(({ ohms }) => ohms.value !== wanted);
    if (differs && without((branch) => own.has(branch.of)) > now * RAISED) pots[id] = wanted;
  }
  if (Object.keys(pots).length === 0) return [];
  return ifBetter(asked, { kind: 'pots', pots }, withValues(circuit.kit, pots));
}
