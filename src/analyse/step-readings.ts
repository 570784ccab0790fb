/**
 * Which readings prove the joints of a step, and what another reading would mean. A reading proves a joint where without that joint
 * the meter would show something else, whatever the tolerances.
 */
import { type Circuit, type LugId, lugIdOf } from '../circuit/circuit.ts';
import { must, nth } from '../common/must.ts';
import { lugsWith } from '../parts/index.ts';
import { legEnd, unsolderedEnds } from '../soldering/ends.ts';
import { planOf } from '../soldering/plan.ts';
import { type Misread, misreadings } from './misreadings.ts';
import {
  differs,
  type ExpectedReading,
  expectedAt,
  type MeterSetting,
  networkAt,
  type Probes,
  readingAt,
  readingKind,
} from './probing.ts';
import { circuitAfter, withJoints } from './soldered.ts';

export interface StepReading extends Probes, MeterSetting, ExpectedReading, Misread {
  /** The same in every position of the switches and with the volume on 0. */
  readonly everywhere: boolean;
  /** Ohms before the step. */
  readonly before: number;
  /** Indices of the joints that conduct only since this step and that the reading proves. */
  readonly proves: readonly number[];
}

/** More tests than these make a step tedious. Common practice, no source. */
const MOST_READINGS = 3;
/**
 * So many positions, and so many joints of a step, are tried; and in a harness of more joints only those since the step are taken away to
 * see what is read without them. All far more than a guitar has, so that the time for a kit that is none stays within bounds.
 */
const MOST_STATES = 12;
const MOST_FRESH = 24;
const MOST_JOINTS = 100;

/**
 * For each step of the soldering no more than three readings that prove as many as they can of the joints that conduct since that step:
 * none where none does, or none can be proved, as the leg of a capacitor.
 */
export function stepReadings(circuit: Circuit): readonly (readonly StepReading[])[] {
  const { steps } = planOf(circuit);
  return steps.map(({ number }) => readingsAfter(circuit, number));
}

/** A harness after a step, before it, and without each of the joints that conduct since. */
interface Moment {
  readonly circuit: Circuit;
  readonly after: Circuit;
  readonly before: Circuit;
  readonly fresh: readonly number[];
  /** By the index of the joint that is missing. */
  readonly without: ReadonlyMap<number, Circuit>;
}

interface Candidate extends Probes, MeterSetting {
  readonly proves: readonly number[];
  /** The less, the better, among those that prove as many. */
  readonly rank: number;
}

function readingsAfter(circuit: Circuit, step: number): readonly StepReading[] {
  const { made } = planOf(circuit);
  const fresh = made.flatMap((when, i) => (when === step ? [i] : [])).slice(0, MOST_FRESH);
  if (fresh.length === 0) return [];
  const conducts = (i: number): boolean => nth(made, i) <= step;
  const tried = made.length > MOST_JOINTS ? fresh : made.flatMap((_, i) => (conducts(i) ? [i] : []));
  const missing = tried.map((i) => [i, withJoints(circuit, (k) => k !== i && conducts(k))] as const);
  const moment: Moment = {
    circuit,
    fresh,
    after: circuitAfter(circuit, step),
    before: circuitAfter(circuit, step - 1),
    without: new Map(missing),
  };
  const chosen: Candidate[] = [];
  const left = new Set(fresh);
  for (const settings of settingsOf(circuit)) {
    const found = settings.flatMap((setting) => candidatesAt(moment, setting));
    while (left.size > 0 && chosen.length < MOST_READINGS) {
      const best = bestOf(found, left);
      if (!best) break;
      chosen.push(best);
      for (const i of best.proves) left.delete(i);
    }
    if (left.size === 0 || chosen.length >= MOST_READINGS) break;
  }
  return chosen.map((one) => readingOf(moment, one));
}

/** Settings to try, the simplest first: the first position, then the others, then with the volume on 0. */
function settingsOf({ states }: Circuit): readonly (readonly MeterSetting[])[] {
  const indices = states.map((_, i) => i).slice(0, MOST_STATES);
  return [
    [{ state: 0, volume: 10 }],
    indices.slice(1).map((state) => ({ state, volume: 10 })),
    indices.map((state) => ({ state, volume: 0 })),
  ];
}

/** The one that proves most of what is left; of several the one of the least rank. */
function bestOf(found: readonly Candidate[], left: ReadonlySet<number>): Candidate | undefined {
  const gain = ({ proves }: Candidate): number => proves.filter((i) => left.has(i)).length;
  let best: Candidate | undefined;
  for (const one of found) {
    const more = gain(one) - (best ? gain(best) : 0);
    if (more > 0 || (best && more === 0 && one.rank < best.rank)) best = one;
  }
  return best;
}

/** The probes that prove anything at one setting. */
function candidatesAt(moment: Moment, setting: MeterSetting): readonly Candidate[] {
  const { circuit, after } = moment;
  const netlist = networkAt(circuit, after, setting);
  const lugs = probedLugs(moment);
  const sleeve = jackLugs(circuit, 'sleeve')[0];
  const acrossLegs = new Set(legPairs(moment).map(({ from, to }) => `${from} ${to}`));
  return lugs.flatMap((from, k) =>
    lugs.slice(k + 1).flatMap((to): readonly Candidate[] => {
      const shorted = netlist.nodeOf.get(from) === netlist.nodeOf.get(to);
      // Beside shorts, only what is simple to say: to ground at the jack, or across a component.
      if (!shorted && to !== sleeve && !acrossLegs.has(`${from} ${to}`)) return [];
      const probes = { from, to };
      const proves = provenBy(moment, probes, setting);
      return proves.length === 0
        ? []
        : [{ ...probes, ...setting, proves, rank: rankOf(moment, probes, setting) }];
    }),
  );
}

/** Where probes are held: at the ends of the joints that conduct since this step, and at the jack, its sleeve last. */
function probedLugs({ circuit, fresh }: Moment): readonly LugId[] {
  const ends = fresh.flatMap((i) => {
    const joint = nth(circuit.joints, i);
    // A bent lug is as good as any, and so is the free end of a wire; a leg's body and the inside of a pickup are not.
    const own = unsolderedEnds(circuit.kit, joint);
    return (['from', 'to'] as const)
      .filter((end) => own[end] !== 'leg' && own[end] !== 'lead')
      .map((end) => lugIdOf(joint[end]));
  });
  const sleeves = jackLugs(circuit, 'sleeve');
  return [
    ...new Set([...ends, ...jackLugs(circuit, 'output')].filter((lug) => !sleeves.includes(lug))),
    ...sleeves,
  ];
}

const jackLugs = ({ kit }: Circuit, role: 'output' | 'sleeve'): readonly LugId[] =>
  kit.parts.flatMap((part) => lugsWith(part, role).map((lug) => `${part.name}.${lug}`));

/** The lugs that the two legs of a component are soldered to, both ways round. */
function legPairs({ circuit, fresh }: Moment): readonly Probes[] {
  const legs = fresh.flatMap((i) => {
    const joint = nth(circuit.joints, i);
    const own = legEnd(circuit.kit, joint);
    return own ? [{ part: joint[own].part, lug: lugIdOf(joint[own === 'from' ? 'to' : 'from']) }] : [];
  });
  return legs.flatMap((one, k) =>
    legs
      .slice(k + 1)
      .filter(({ part }) => part === one.part)
      .flatMap(({ lug }) => [
        { from: one.lug, to: lug },
        { from: lug, to: one.lug },
      ]),
  );
}

/** The joints without which the meter shows something else, whatever the tolerances. */
function provenBy(
  { circuit, after, fresh, without }: Moment,
  probes: Probes,
  setting: MeterSetting,
): readonly number[] {
  const whole = networkAt(circuit, after, setting);
  const nominal = readingAt(whole, probes);
  if (readingKind(nominal) === 'open') return [];
  return fresh.filter((i) => {
    const less = networkAt(circuit, must(without.get(i), `harness without joint ${i}`), setting);
    const other = readingAt(less, probes);
    if (readingKind(other) !== readingKind(nominal)) return true;
    if (readingKind(nominal) === 'short' || Math.abs(other / nominal - 1) < 1e-6) return false;
    return differs(expectedAt(circuit, whole, probes), expectedAt(circuit, less, probes));
  });
}

/** What is open before the step tells more; the jack is easiest to reach; a short is easiest to read. */
function rankOf({ circuit, after, before }: Moment, { from, to }: Probes, setting: MeterSetting): number {
  const was = readingAt(networkAt(circuit, before, setting), { from, to });
  const is = readingAt(networkAt(circuit, after, setting), { from, to });
  const jack = [...jackLugs(circuit, 'output'), ...jackLugs(circuit, 'sleeve')];
  const atJack = [from, to].filter((lug) => jack.includes(lug)).length;
  return (readingKind(was) === 'open' ? 0 : 8) + (2 - atJack) * 2 + (readingKind(is) === 'short' ? 0 : 1);
}

function readingOf(moment: Moment, { from, to, state, volume, proves }: Candidate): StepReading {
  const { circuit, after, before, without } = moment;
  const probes = { from, to };
  const setting = { state, volume };
  const expected = expectedAt(circuit, networkAt(circuit, after, setting), probes);
  const everywhere = circuit.states
    .slice(0, MOST_STATES)
    .flatMap((_, index) => ([10, 0] as const).map((one) => ({ state: index, volume: one })))
    .every((one) => readingAt(networkAt(circuit, after, one), probes) === expected.nominal);
  return {
    ...probes,
    ...setting,
    ...expected,
    everywhere,
    before: readingAt(networkAt(circuit, before, setting), probes),
    proves,
    ...misreadings(circuit, after, without, probes, setting),
  };
}
