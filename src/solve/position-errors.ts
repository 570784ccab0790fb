/** States that are silent or shorted where they are not meant to be, and outputs that never sound. */

import { type LugId, lugId, lugIdOf, type State } from '../circuit/circuit.ts';
import { exchanged } from '../circuit/exchange.ts';
import { isMeantSilent } from '../circuit/intended.ts';
import { whereText } from '../circuit/position.ts';
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import type { Joint, Kit } from '../describe/kit.ts';
import { contactsOf, controlsOf, is, lugsWith } from '../parts/index.ts';
import { buildCircuit } from './build.ts';
import { jointNets, lugWith } from './ground-errors.ts';
import { missingLink } from './series-link.ts';

/**
 * States in which the tip is tied to ground, and states in which nothing sounds. `explained` says that an error already
 * found accounts for silence, so that only shorts are worth a word.
 */
export function stateErrors(kit: Kit, states: readonly State[], explained: boolean): readonly Problem[] {
  const unmeant = states.filter((state) => !isMeantSilent(kit, state));
  const shorted = unmeant.filter((state) => state.shorted);
  const silent = explained
    ? []
    : unmeant.filter(
        (state) => !state.shorted && state.sounding.length === 0 && !isBlendedAway(state, states),
      );
  return [
    ...silentErrors(kit, 'output-shorted', shorted, states),
    ...silentErrors(kit, 'no-output', silent, states),
  ];
}

/**
 * Whether a blend is turned away from the only pickup that the switches leave on: at its centre they have output, and with the switches
 * set otherwise that end has. A blend that is silent at an end whatever the switches do is wired wrong.
 */
function isBlendedAway(state: State, states: readonly State[]): boolean {
  const { turned = {}, sounding } = state;
  const blends = Object.keys(turned);
  const same = (other: State, names: readonly string[]): boolean =>
    names.every((name) => other.positions[name] === state.positions[name]);
  const heard = states.filter((other) => other.sounding.length > 0);
  const switches = Object.keys(state.positions).filter((name) => !blends.includes(name));
  return (
    blends.length > 0 &&
    sounding.length === 0 &&
    heard.some((other) => same(other, blends)) &&
    heard.some(
      (other) => same(other, switches) && Object.values(other.turned ?? {}).every((at) => at === 0.5),
    )
  );
}

/** Outputs of a jack with several at which nothing is heard in any state, where something is heard at another. */
export function outputErrors(kit: Kit, states: readonly State[]): readonly Problem[] {
  const jack = kit.parts.find((part) => is(part, 'jack'));
  if (!jack || states.every(({ sounding }) => sounding.length === 0)) return [];
  return (states[0]?.outputs ?? []).flatMap(({ name }, i) =>
    states.some(({ outputs }) => (outputs?.[i]?.sounding.length ?? 0) > 0)
      ? []
      : [problem('output-never-sounds', ['parts', jack.name], { part: jack.name, lug: name }, 'key')],
  );
}

function silentErrors(
  kit: Kit,
  code: 'output-shorted' | 'no-output',
  some: readonly State[],
  all: readonly State[],
): readonly Problem[] {
  if (some.length === 0) return [];
  const everywhere = some.length === all.length;
  const causes =
    code === 'no-output' ? [{ joints: [], states: some }] : shorts(kit, everywhere ? some.slice(0, 1) : some);
  return causes.map(({ joints, states }) => {
    const [joint] = joints;
    const where = whereText({ states: all }, everywhere ? all : states);
    const detail = {
      where,
      joints: joints.map(jointWords),
      ...(everywhere ? {} : { partly: true as const }),
      ...(code === 'no-output' ? { ...linkDetail(kit, some, all), ...blendDetail(kit, some) } : {}),
    };
    return joint
      ? problem(code, ['joints', joint.index], detail)
      : problem(code, placeOf(kit), detail, 'key');
  });
}

function linkDetail(kit: Kit, some: readonly State[], all: readonly State[]) {
  const link = missingLink(kit, some, all);
  return link ? { link: `${link.from} > ${link.to}` } : {};
}

/** Of a blend that is silent at its centre, whatever the switches do: its name, and what to exchange where its tracks are the wrong way round. */
function blendDetail(kit: Kit, silent: readonly State[]) {
  const control = kit.parts
    .flatMap(controlsOf)
    .find(({ id }) => silent.some(({ turned }) => turned?.[id] === 0.5));
  if (!control) return {};
  const { kit: other, ends, used } = exchanged(kit, control);
  return {
    blend: control.id,
    ...(isSound(other, buildCircuit(other).states) ? { exchange: { used, ends } } : {}),
  };
}

interface Short {
  readonly joints: readonly Joint[];
  readonly states: readonly State[];
}

/** More joints than these are not tried one by one. */
const MOST_TRIED = 200;

/** States with the same joints to blame are one short. */
function shorts(kit: Kit, states: readonly State[]): readonly Short[] {
  const tried = kit.joints.length > MOST_TRIED ? [] : triedWithout(kit, states);
  const found = new Map<string, Short>();
  for (const state of states) {
    const joints = shorting(tried, state);
    const key = joints.map(({ index }) => index).join(' ');
    found.set(key, { joints, states: [...(found.get(key)?.states ?? []), state] });
  }
  return [...found.values()];
}

/** What becomes of a kit without one of its joints. */
interface Tried {
  readonly joint: Joint;
  readonly states: readonly State[];
  /** Every position sounds. */
  readonly sounds: boolean;
  /** How many cases and ground points are still at ground. */
  readonly grounded: number;
}

/** The kit without each of its joints, for those that may end the short of a state. */
function triedWithout(kit: Kit, shorted: readonly State[]): readonly Tried[] {
  return kit.joints.flatMap((joint) => {
    const without = { ...kit, joints: kit.joints.filter((one) => one !== joint) };
    // What joints and contacts hold together whatever the controls do need not be solved.
    if (shorted.every((state) => isJoinedToGround(without, state))) return [];
    const { states } = buildCircuit(without);
    return [{ joint, states, sounds: isSound(kit, states), grounded: groundedCases(without) }];
  });
}

/** Whether joints and closed contacts alone connect every output of the jack to its sleeve. */
function isJoinedToGround(kit: Kit, { closedContacts }: State): boolean {
  const jack = kit.parts.find((part) => is(part, 'jack'));
  if (!jack) return false;
  const nets = jointNets(kit);
  for (const [first, ...others] of closedContacts)
    for (const other of others) nets.join(first ?? other, other);
  const sleeve = lugWith(jack, 'sleeve');
  return lugsWith(jack, 'output').every((lug) => nets.same(lugId(jack.name, lug), sleeve));
}

/**
 * The joint that connects the tip to ground in a state: without it every position sounds, and every case is grounded that was. After
 * it those that meet it at a lug, of which each would end the short as well.
 */
function shorting(tried: readonly Tried[], state: State): readonly Joint[] {
  const same = ({ positions }: State): boolean =>
    Object.entries(state.positions).every(([name, position]) => positions[name] === position);
  const ending = tried.filter(({ states }) => states.find(same)?.shorted === false);
  const most = Math.max(...ending.map(({ grounded }) => grounded));
  const best = ending.filter(({ sounds, grounded }) => sounds && grounded === most).at(-1);
  if (!best) return [];
  const at = ({ from, to }: Joint): readonly LugId[] => [lugIdOf(from), lugIdOf(to)];
  const beside = ending.filter(
    ({ joint, grounded }) =>
      joint !== best.joint && grounded === most && at(joint).some((lug) => at(best.joint).includes(lug)),
  );
  return [best.joint, ...beside.map(({ joint }) => joint)];
}

/** How many cases and ground points joints connect to the jack's sleeve. */
function groundedCases(kit: Kit): number {
  const jack = kit.parts.find((part) => is(part, 'jack'));
  if (!jack) return 0;
  const nets = jointNets(kit);
  const cases = kit.parts.flatMap((part) =>
    [...lugsWith(part, 'case'), ...lugsWith(part, 'point')].map((lug) => lugId(part.name, lug)),
  );
  return cases.filter((lug) => nets.same(lug, lugWith(jack, 'sleeve'))).length;
}

/** Whether there is output in every state that is not meant to be silent. */
const isSound = (kit: Kit, states: readonly State[]): boolean =>
  states.every(
    (state) =>
      isMeantSilent(kit, state) ||
      isBlendedAway(state, states) ||
      (!state.shorted && state.sounding.length > 0),
  );

const jointWords = ({ from, to }: Joint): string => `${lugIdOf(from)} > ${lugIdOf(to)}`;

/** A state is the switch's affair, or the jack's where there is no switch. */
function placeOf(kit: Kit): KeyPath {
  const part =
    kit.parts.find((candidate) => contactsOf(candidate).length > 0) ??
    kit.parts.find((part) => is(part, 'jack'));
  return part ? ['parts', part.name] : ['parts'];
}
