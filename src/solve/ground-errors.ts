/** Pickups without a way back, jacks and ground points that the ground does not reach. */

import { type LugId, lugId, lugIdOf, lugsJoinedTo, SIGNAL_ROLES, type State } from '../circuit/circuit.ts';
import { DisjointSet } from '../circuit/disjoint-set.ts';
import { must } from '../common/must.ts';
import { type Problem, problem } from '../common/problem.ts';
import type { Kit } from '../describe/kit.ts';
import { contactsOf, elementsLike, is, isPickup, lugsOf, lugsWith, type Part } from '../parts/index.ts';
import type { LugRole } from '../parts/kind.ts';

/**
 * Pickups that are heard in no state, and whose return cannot reach the jack's sleeve through joints, through any position
 * of any switch, or through another pickup's coil, which is the way of a series circuit. One that is heard has its way
 * back, whichever of its leads that is.
 */
export function groundErrors(kit: Kit, states: readonly State[]): readonly Problem[] {
  const jack = kit.parts.find((part) => is(part, 'jack'));
  if (!jack) return [];
  const heard = new Set(states.flatMap((state) => state.sounding));
  const silent = kit.parts.filter((part) => isPickup(part) && !heard.has(part.name));
  return silent.flatMap((pickup) => {
    const lug = elementsLike(pickup, 'coil').find(
      (coil) =>
        !reachWithout(pickup, coil.id, kit).same(lugId(pickup.name, coil.return), lugWith(jack, 'sleeve')),
    )?.return;
    return lug === undefined
      ? []
      : [problem('pickup-no-ground', ['parts', pickup.name], { part: pickup.name, lug }, 'key')];
  });
}

/**
 * A jack whose tip and sleeve are swapped: pot cases or the strings are connected to the tip, none to the sleeve. It
 * sounds, and hums, with the signal on every shield.
 */
export function jackErrors(kit: Kit): readonly Problem[] {
  const jack = kit.parts.find((part) => is(part, 'jack'));
  if (!jack) return [];
  const nets = jointNets(kit);
  const grounds = kit.parts.flatMap((part) =>
    lugsOf(part).flatMap(({ name, role }) =>
      role === 'case' || role === 'point' || role === 'shield' ? [lugId(part.name, name)] : [],
    ),
  );
  const sleeve = lugWith(jack, 'sleeve');
  const on = (lug: LugId): readonly LugId[] => grounds.filter((ground) => nets.same(ground, lug));
  // With a pickup's return on the sleeve the jack is right, and a case is on the signal.
  const returns = kit.parts.flatMap((part) =>
    lugsOf(part).flatMap(({ name, role }) => (role === 'return' ? [lugId(part.name, name)] : [])),
  );
  const grounded = returns.some((lug) => nets.same(lug, sleeve));
  const tip = lugsWith(jack, 'output')
    .map((lug) => lugId(jack.name, lug))
    .find((lug) => on(lug).length > 0);
  return grounded || tip === undefined || on(sleeve).length > 0
    ? []
    : [problem('jack-swapped', ['parts', jack.name], { part: jack.name, on: on(tip), tip, sleeve }, 'key')];
}

/**
 * Ground points that joints do not tie to the jack's sleeve: strings that hum, or strings on the signal. A resistor and a
 * capacitor may lie between, against shocks, when nothing but their legs meets the strings.
 */
export function groundPointErrors(kit: Kit): readonly Problem[] {
  const jack = kit.parts.find((part) => is(part, 'jack'));
  if (!jack) return [];
  const nets = jointNets(kit);
  const sleeve = lugWith(jack, 'sleeve');
  return kit.parts
    .filter((part) => is(part, 'ground-point'))
    .map((part) => ({ part: part.name, point: lugWith(part, 'point') }))
    .filter(({ point }) => !nets.same(point, sleeve) && !isProtected(kit, nets, point, sleeve))
    .map(({ part, point }) => {
      const on = isOnSignal(kit, nets, point) ? lugsJoinedTo(kit.joints, point) : [];
      return problem('ground-point-no-ground', ['parts', part], { part, sleeve, on }, 'key');
    });
}

/** Whether joints connect a lug to one that carries signal: a pickup's hot lead, a switch, a track or the jack's tip. */
const isOnSignal = (kit: Kit, nets: DisjointSet, lug: LugId): boolean =>
  kit.parts.some((part) =>
    lugsOf(part).some(({ name, role }) => SIGNAL_ROLES.has(role) && nets.same(lugId(part.name, name), lug)),
  );

/** Whether components lead from a ground point to the sleeve, and all that is joined to it are their legs. */
function isProtected(kit: Kit, nets: DisjointSet, point: LugId, sleeve: LugId): boolean {
  const on = kit.parts.flatMap((part) =>
    lugsOf(part).flatMap((lug) => (nets.same(lugId(part.name, lug.name), point) ? [{ part, lug }] : [])),
  );
  const others = on.filter(({ lug }) => lug.role !== 'point');
  const leads = others.some(({ part }) =>
    lugsOf(part).some(({ name }) => nets.same(lugId(part.name, name), sleeve)),
  );
  return leads && others.every(({ lug }) => lug.role === 'leg');
}

/** The part's lug with a role that its kind has. */
export const lugWith = (part: Part, role: LugRole): LugId =>
  lugId(part.name, must(lugsWith(part, role)[0], `${role} of ${part.name}`));

/** What joints alone hold together. */
export function jointNets(kit: Kit): DisjointSet {
  const nets = new DisjointSet();
  for (const joint of kit.joints) nets.join(lugIdOf(joint.from), lugIdOf(joint.to));
  return nets;
}

/** What joints, contacts and coils hold together, but for one coil of a pickup. */
function reachWithout(pickup: Part, own: string, kit: Kit): DisjointSet {
  const reach = new DisjointSet();
  for (const joint of kit.joints) reach.join(lugIdOf(joint.from), lugIdOf(joint.to));
  for (const part of kit.parts) {
    for (const contact of contactsOf(part))
      for (const [first, ...others] of contact.joins)
        for (const other of others) reach.join(lugId(part.name, first ?? other), lugId(part.name, other));
    for (const coil of elementsLike(part, 'coil'))
      if (part !== pickup || coil.id !== own)
        reach.join(lugId(part.name, coil.hot), lugId(part.name, coil.return));
  }
  return reach;
}
