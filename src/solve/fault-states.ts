/** What is wrong with a kit whose names are sound: pickups without a way back, states that are dead or shorted. */

import { lugId, type State } from '../circuit/circuit.ts';
import { exchanged } from '../circuit/exchange.ts';
import { Union } from '../circuit/union.ts';
import { type Path, type Problem, problem } from '../common/problem.ts';
import type { Joint, Kit } from '../describe/kit.ts';
import { contactsOf, elementsOf, isPickup, lugsOf, type Part } from '../parts/index.ts';
import { buildCircuit } from './build.ts';

/**
 * Pickups that are heard in no state, and whose return cannot reach the jack's sleeve through joints, through any position
 * of any switch, or through another pickup's coil, which is the way of a series circuit. One that is heard has its way
 * back, whichever of its leads that is.
 */
export function groundFaults(kit: Kit, states: readonly State[]): readonly Problem[] {
  const jack = kit.parts.find((part) => part.kind === 'jack');
  if (!jack) return [];
  const heard = new Set(states.flatMap((state) => state.sounding));
  const silent = kit.parts.filter((part) => isPickup(part) && !heard.has(part.name));
  return silent.flatMap((pickup) => {
    const reach = reachWithout(pickup, kit);
    const returns = elementsOf(pickup).flatMap((element) =>
      element.kind === 'coil' ? [element.return] : [],
    );
    const grounded = returns.every((lug) => reach.same(lugId(pickup.name, lug), lugId(jack.name, 'sleeve')));
    return grounded
      ? []
      : [problem('pickup-no-ground', ['parts', pickup.name], { part: pickup.name }, 'key')];
  });
}

/**
 * A jack whose tip and sleeve are swapped: pot cases or the strings are connected to the tip, none to the sleeve. It
 * sounds, and hums, with the signal on every shield.
 */
export function jackFaults(kit: Kit): readonly Problem[] {
  const jack = kit.parts.find((part) => part.kind === 'jack');
  if (!jack) return [];
  const nets = jointNets(kit);
  const grounds = kit.parts.flatMap((part) =>
    lugsOf(part).flatMap(({ name, role }) =>
      role === 'case' || role === 'point' ? [lugId(part.name, name)] : [],
    ),
  );
  const on = (lug: string): readonly string[] =>
    grounds.filter((ground) => nets.same(ground, lugId(jack.name, lug)));
  // With a pickup's return on the sleeve the jack is right, and a case is on the signal.
  const returns = kit.parts.flatMap((part) =>
    lugsOf(part).flatMap(({ name, role }) => (role === 'return' ? [lugId(part.name, name)] : [])),
  );
  const grounded = returns.some((lug) => nets.same(lug, lugId(jack.name, 'sleeve')));
  return grounded || on('tip').length === 0 || on('sleeve').length > 0
    ? []
    : [problem('jack-exchanged', ['parts', jack.name], { part: jack.name, on: on('tip') }, 'key')];
}

/**
 * Ground points that joints do not tie to the jack's sleeve: strings that hum, or strings on the signal. A resistor and a
 * capacitor may lie between, against shocks, when nothing but their legs meets the strings.
 */
export function groundPointFaults(kit: Kit): readonly Problem[] {
  const jack = kit.parts.find((part) => part.kind === 'jack');
  if (!jack) return [];
  const nets = jointNets(kit);
  const sleeve = lugId(jack.name, 'sleeve');
  return kit.parts
    .filter((part) => part.kind === 'ground-point')
    .filter((part) => lugsOf(part).some((lug) => !nets.same(lugId(part.name, lug.name), sleeve)))
    .filter((part) => !isProtected(kit, nets, part, sleeve))
    .map((part) =>
      problem('ground-point-no-ground', ['parts', part.name], { part: part.name, sleeve }, 'key'),
    );
}

/** Whether components lead from a ground point to the sleeve, and all that is joined to it are their legs. */
function isProtected(kit: Kit, nets: Union, point: Part, sleeve: string): boolean {
  const on = kit.parts.flatMap((part) =>
    lugsOf(part).flatMap((lug) =>
      lugsOf(point).some(({ name }) => nets.same(lugId(part.name, lug.name), lugId(point.name, name)))
        ? [{ part, lug }]
        : [],
    ),
  );
  const others = on.filter(({ lug }) => lug.role !== 'point');
  const leads = others.some(({ part }) =>
    lugsOf(part).some(({ name }) => nets.same(lugId(part.name, name), sleeve)),
  );
  return leads && others.every(({ lug }) => lug.role === 'leg');
}

/** What joints alone hold together. */
function jointNets(kit: Kit): Union {
  const nets = new Union();
  for (const joint of kit.joints) nets.join(idOf(joint.from), idOf(joint.to));
  return nets;
}

function reachWithout(pickup: Part, kit: Kit): Union {
  const reach = new Union();
  for (const joint of kit.joints) reach.join(idOf(joint.from), idOf(joint.to));
  for (const part of kit.parts) {
    for (const contact of contactsOf(part))
      for (const [first, ...others] of contact.joins)
        for (const other of others) reach.join(lugId(part.name, first ?? other), lugId(part.name, other));
    if (part === pickup) continue;
    for (const element of elementsOf(part))
      if (element.kind === 'coil')
        reach.join(lugId(part.name, element.hot), lugId(part.name, element.return));
  }
  return reach;
}

const idOf = (end: Joint['from']): string => lugId(end.part, end.lug);

/**
 * States in which the tip is tied to ground, and states in which nothing sounds. `explained` says that a fault already
 * found accounts for silence, so that only shorts are worth a word.
 */
export function stateFaults(kit: Kit, states: readonly State[], explained: boolean): readonly Problem[] {
  const shorted = states.filter((state) => state.shorted);
  const dead = explained ? [] : states.filter((state) => !state.shorted && state.sounding.length === 0);
  return [
    ...silentFaults(kit, 'hot-shorted', settingsOf(shorted, states)),
    ...silentFaults(kit, 'dead-state', settingsOf(dead, states)),
  ];
}

/** Where exchanging lugs 1 and 3 of a pot fixes every state, the joint at its clockwise end is the place to look at. */
function silentFaults(
  kit: Kit,
  code: 'hot-shorted' | 'dead-state',
  settings: readonly string[],
): readonly Problem[] {
  const backwards = settings.length === 0 ? undefined : backwardsPot(kit);
  const move = backwards?.joints[0];
  return settings.map((state) =>
    backwards && move
      ? problem(code, ['joints', move.joint.index, move.joint.kind, move.end, 'lug'], {
          state,
          pot: backwards.pot,
        })
      : problem(code, placeOf(kit), { state }, 'key'),
  );
}

function backwardsPot(kit: Kit) {
  for (const { name: pot } of kit.parts.filter((part) => part.kind === 'pot')) {
    const { kit: turned, joints } = exchanged(kit, pot);
    const { states } = buildCircuit(turned);
    if (states.every((state) => !state.shorted && state.sounding.length > 0)) return { pot, joints };
  }
  return undefined;
}

/** The states in words; one word for all of them when it is all of them. */
function settingsOf(some: readonly State[], all: readonly State[]): readonly string[] {
  if (some.length === 0) return [];
  if (some.length === all.length)
    return [all.length === 1 ? 'every control at full' : 'every setting of the switches'];
  return some.map(stateText);
}

/** `selector at 2`; several switches in the order written. */
export const stateText = (state: State): string =>
  Object.entries(state.settings)
    .map(([name, position]) => `${name} at ${position}`)
    .join(', ');

/** A state is the switch's affair, or the jack's where there is no switch. */
function placeOf(kit: Kit): Path {
  const part =
    kit.parts.find((candidate) => contactsOf(candidate).length > 0) ??
    kit.parts.find(({ kind }) => kind === 'jack');
  return part ? ['parts', part.name] : ['parts'];
}
