/** Notes on what the solved circuit does that nobody can have meant: treble lost to a capacitor, pots that do nothing. */

import {
  type Across,
  capacitorsAcross,
  idleComponents,
  idleControls,
  idleSwitches,
  type StateLoads,
  shuntControls,
} from '../analyse/index.ts';
import {
  type Circuit,
  endAt,
  type LugId,
  lugAt,
  lugId,
  lugIdOf,
  lugsJoinedTo,
  netAt,
  SIGNAL_ROLES,
} from '../circuit/circuit.ts';
import { whereText } from '../circuit/position.ts';
import { formatHertz } from '../common/figures.ts';
import { type Problem, problem } from '../common/problem.ts';
import { partNamed } from '../describe/kit.ts';
import { componentOf, elementsLike, lugsOf, whatIs } from '../parts/index.ts';
import { earlyBends } from '../soldering/stages.ts';

/** One note for each capacitor that lies straight across the signal at full. */
export const acrossNotes = (circuit: Circuit, across = capacitorsAcross(circuit)): readonly Problem[] =>
  across.flatMap((one): readonly Problem[] => {
    const [first] = one.lost;
    if (!first) return [];
    const { capacitor, control } = one;
    return [
      problem(
        isAlways(circuit, one) ? 'capacitor-across-always' : 'capacitor-across',
        ['parts', capacitor],
        {
          capacitor,
          where: whereText(
            circuit,
            one.lost.map(({ state }) => state),
          ),
          pickup: first.pickup,
          cutoff: formatHertz(first.cutoff),
          reference: formatHertz(first.reference),
          whole: isWhole(one),
          ...(control === undefined ? {} : { control }),
        },
        'key',
      ),
    ];
  });

/**
 * Whether all that sounds has lost its treble, in every position and with no control that brings it back: nobody means
 * that. One coil of a series pair may well be bridged by a capacitor.
 */
const isAlways = ({ states }: Circuit, one: Across): boolean =>
  one.control === undefined &&
  isWhole(one) &&
  states.every((state) => state.sounding.length === 0 || one.lost.some((lost) => lost.state === state));

/** Whether no pickup keeps its treble where another has lost it. */
const isWhole = ({ lost }: Across): boolean =>
  lost.every(({ state }) =>
    state.sounding.every((pickup) => lost.some((one) => one.state === state && one.pickup === pickup)),
  );

/** Capacitors straight across the signal in every position, which stop the drawing. */
export const acrossErrors = (circuit: Circuit): readonly Problem[] =>
  circuit.kit.parts.some((part) => elementsLike(part, 'capacitance').length > 0)
    ? acrossNotes(circuit).filter(({ code }) => code === 'capacitor-across-always')
    : [];

/** One note for each pot that turns nothing, or for a volume that hardly turns anything down. */
export const idleNotes = (circuit: Circuit): readonly Problem[] =>
  idleControls(circuit).map(({ pot, part: own, fall, free }) => {
    const floating = floatingCases(circuit).find(({ part, on }) => part === own && on.length > 0);
    return problem(
      'control-no-effect',
      ['parts', own],
      {
        part: pot,
        free,
        ...(fall === undefined ? {} : { fall: `${fall.toFixed(1)} dB` }),
        ...(floating ? { floating: floating.lug } : {}),
      },
      'key',
    );
  });

/** One warning for each pot of two lugs, or with its wiper on one of its ends, that shorts the signal where a tone would cut its treble. */
export const shuntNotes = (circuit: Circuit): readonly Problem[] =>
  shuntControls(circuit).map(({ pot, part, ...lugs }) =>
    problem('shunt-control', ['parts', part], { part: pot, ...lugs }, 'key'),
  );

/** One warning for each component that no signal passes, and for each switch that changes nothing. */
export const idlePartNotes = (circuit: Circuit, loads: readonly StateLoads[]): readonly Problem[] => [
  ...idleComponents(circuit)
    .filter((part) => !isOnFloatingCase(circuit, part))
    .map((part) => {
      const what = whatIs(partNamed(circuit.kit, part));
      return problem('component-no-effect', ['parts', part], { part, what }, 'key');
    }),
  ...idleSwitches(circuit, loads).map((part) =>
    problem('switch-no-effect', ['parts', part], { part }, 'key'),
  ),
];

/** Whether a leg is soldered to a case that is not grounded: the missing ground is what to fix, and has a warning of its own. */
const isOnFloatingCase = (circuit: Circuit, part: string): boolean =>
  floatingCases(circuit).some(({ on }) => on.some((lug) => endAt(lug).part === part));

/** One warning for each component leg without sleeving at a lug of a switch's poles: they stand close together, and the leg passes them. */
export const switchLegNotes = (circuit: Circuit): readonly Problem[] =>
  circuit.kit.joints.flatMap((joint) =>
    [[joint.from, joint.to] as const, [joint.to, joint.from] as const].flatMap(([own, other]) => {
      const sleeved = componentOf(partNamed(circuit.kit, own.part))?.sleeved;
      const lug = lugIdOf(other);
      const { role } = lugAt(circuit, lug);
      if (joint.kind !== 'leg' || !sleeved || sleeved.includes(own.lug)) return [];
      if (role !== 'common' && role !== 'throw') return [];
      const sleeving = sleeved.length > 0 ? 'both' : own.lug;
      return [problem('bare-leg-at-switch', ['joints', joint.index], { part: own.part, lug, sleeving })];
    }),
  );

/** One warning for each lug whose bend has a step of its own that is too early, as another joint comes to the lug later. */
export const earlyBendNotes = (circuit: Circuit): readonly Problem[] =>
  earlyBends(circuit).map(({ bend, last, asked, made }) =>
    problem('bent-too-early', ['joints', bend.index, 'step'], {
      lug: lugIdOf(bend.from),
      asked,
      made,
      joint: `${lugIdOf(last.from)} > ${lugIdOf(last.to)}`,
    }),
  );

/** One warning for each case that is not grounded: it floats, or it is on the signal. */
export const caseNotes = (circuit: Circuit): readonly Problem[] =>
  floatingCases(circuit).map(({ part, lug, on, ...kind }) => {
    const path = ['parts', part];
    const signal = on.filter((other) => SIGNAL_ROLES.has(lugAt(circuit, other).role));
    if (signal.length === 0) return problem('case-not-grounded', path, { part, lug, on, ...kind }, 'key');
    const joined = lugsJoinedTo(circuit.joints, lug);
    return problem('case-on-signal', path, { part, lug, on: signal, joined, ...kind }, 'key');
  });

interface FloatingCase {
  readonly part: string;
  readonly lug: LugId;
  /** The lugs that end on it. */
  readonly on: readonly LugId[];
  /** It is the screen of a pickup's leads. */
  readonly shield?: true;
}

/** Cases and the shields of pickups' leads that are not on the net of the jack's sleeve. */
const floatingCases = (circuit: Circuit): readonly FloatingCase[] =>
  circuit.kit.parts.flatMap((part) =>
    lugsOf(part).flatMap(({ name, role }) => {
      const lug = lugId(part.name, name);
      const net = netAt(circuit, lug);
      const on = net.lugs.filter((other) => other !== lug);
      if (net.role === 'ground' || !(role === 'case' || role === 'shield')) return [];
      return [{ part: part.name, lug, on, ...(role === 'shield' ? { shield: true as const } : {}) }];
    }),
  );
