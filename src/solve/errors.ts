/**
 * What is wrong with a kit as a circuit. Names first; then what stands unjoined; then, if all that is sound, the
 * states. What hangs on a part or joint that could not be read is passed over, never guessed at.
 */

import { lugId, lugIdOf } from '../circuit/circuit.ts';
import { intendedErrors } from '../circuit/intended.ts';
import { jointErrors } from '../circuit/joint-errors.ts';
import { type Problem, problem } from '../common/problem.ts';
import { anythingIntended } from '../describe/intended.ts';
import type { Draft, Kit } from '../describe/kit.ts';
import {
  contactsOf,
  elementsLike,
  is,
  isPickup,
  lugsOf,
  lugsWith,
  type Part,
  whatIs,
} from '../parts/index.ts';
import { buildCircuit } from './build.ts';
import { groundErrors, groundPointErrors, jackErrors } from './ground-errors.ts';
import { outputErrors, stateErrors } from './position-errors.ts';

/** More than these no guitar has; the count of states and paths grows by multiplication. */
const MOST_PICKUPS = 12;
const MOST_STATES = 1024;

/** Every error of a kit, or of a draft of one, in no order that matters: `toDiagnostics` sorts by place. */
export function findErrors(kit: Kit & Partial<Pick<Draft, 'opaque' | 'unread'>>): readonly Problem[] {
  const opaque = kit.opaque ?? [];
  const { problems, joints, lost } = jointErrors(kit, opaque);
  const meant = intendedErrors(kit, opaque);
  const found = [...problems, ...meant, ...countErrors(kit, opaque)];
  // A joint that names nothing, or cannot be read, may be the one that seems to be missing.
  if (lost + (kit.unread ?? 0) > 0) return found;
  // A position that is not known may be the very one that is silent.
  const repaired: Kit = { ...kit, joints, ...(meant.length > 0 ? { intended: anythingIntended } : {}) };
  const free = freeErrors(repaired);
  found.push(...free);
  const tooLarge = sizeErrors(kit);
  found.push(...tooLarge);
  if (opaque.length > 0 || tooLarge.length > 0) return found;
  return [...found, ...pathErrors(repaired, free)];
}

/** What can be said of paths: nothing without a jack that is joined and a pickup. */
function pathErrors(kit: Kit, free: readonly Problem[]): readonly Problem[] {
  const jacks = kit.parts.filter((part) => is(part, 'jack'));
  const [jack] = jacks;
  const unjoined = (part: Part): boolean =>
    free.some((error) => error.code !== 'leg-not-connected' && error.path[1] === part.name);
  if (!jack || jacks.length > 1 || unjoined(jack) || !kit.parts.some(isPickup)) return [];
  const jackError = jackErrors(kit);
  // Every other word about ground would tell to join it to the signal.
  if (jackError.length > 0) return jackError;
  const { states } = buildCircuit(kit);
  const grounds = groundErrors(kit, states).filter(
    (error) => !kit.parts.some((part) => isOf(error, part) && unjoined(part)),
  );
  // A part of the signal's path that is not joined accounts for silence; once it is fixed the states are looked at.
  const explained = grounds.length > 0 || kit.parts.some((part) => carriesSignal(part) && unjoined(part));
  const points = groundPointErrors(kit).filter(
    (found) => !kit.parts.some((part) => isOf(found, part) && unjoined(part)),
  );
  return [
    ...grounds,
    ...points,
    ...stateErrors(kit, states, explained),
    ...(explained ? [] : outputErrors(kit, states)),
  ];
}

const isOf = (error: Problem, part: Part): boolean => error.path[1] === part.name;
const carriesSignal = (part: Part): boolean =>
  (['switch', 'pickup', 'pot'] as const).some((trait) => is(part, trait));

/** A kit needs a jack and a pickup. A part that could not be read may be either. */
function countErrors(kit: Kit, opaque: readonly string[]): readonly Problem[] {
  const jacks = kit.parts.filter((part) => is(part, 'jack')).map((part) => part.name);
  const [, second] = jacks;
  if (second !== undefined) return [problem('several-jacks', ['parts', second], { parts: jacks }, 'key')];
  if (opaque.length > 0) return [];
  return [
    ...(jacks.length === 0 ? [problem('no-jack', ['parts'], {}, 'key')] : []),
    ...(kit.parts.some(isPickup) ? [] : [problem('no-pickup', ['parts'], {}, 'key')]),
  ];
}

/** Parts not connected, and lugs that must not be left free. */
function freeErrors(kit: Kit): readonly Problem[] {
  const joined = new Set(kit.joints.flatMap(({ from, to }) => [lugIdOf(from), lugIdOf(to)]));
  return kit.parts.flatMap((part): readonly Problem[] => {
    const path = ['parts', part.name];
    const free = lugsOf(part).filter((lug) => !joined.has(lugId(part.name, lug.name)));
    if (free.length === lugsOf(part).length)
      return [problem('not-connected', path, { part: part.name, what: whatIs(part) }, 'key')];
    const coils = elementsLike(part, 'coil');
    return free.flatMap((lug) => {
      switch (lug.role) {
        case 'link':
        case 'return':
          // That a single coil has no way back is found from its path.
          return coils.length > 1 ? [freeLead(part, lug.name)] : [];
        case 'leg':
          return [
            problem('leg-not-connected', path, { part: part.name, leg: lug.name, what: whatIs(part) }, 'key'),
          ];
        case 'hot':
          if (coils.length > 1) return [freeLead(part, lug.name)];
          return [problem('pickup-no-hot', path, { part: part.name, lug: lug.name }, 'key')];
        case 'output':
        case 'sleeve':
          return [
            problem(
              'jack-not-connected',
              path,
              { part: part.name, lug: lug.name, signal: lug.role === 'output' },
              'key',
            ),
          ];
        default:
          return [];
      }
    });
  });
}

/** A lead of a pickup with several coils; `link` are the leads that are soldered together where its coils are in series. */
function freeLead(part: Part, lug: string): Problem {
  const link = lugsWith(part, 'link');
  return problem('coil-lead-not-connected', ['parts', part.name], { part: part.name, lug, link }, 'key');
}

/** Kits out of range, checked before anything multiplies. */
function sizeErrors(kit: Kit): readonly Problem[] {
  const pickups = kit.parts.filter(isPickup).length;
  const states = kit.parts.reduce((count, part) => count * Math.max(1, contactsOf(part).length), 1);
  const most = (what: string, count: number, limit: number): readonly Problem[] =>
    count > limit
      ? [problem('too-many', ['parts'], { what, count: countWords(count), most: limit }, 'key')]
      : [];
  return [
    ...most('pickups', pickups, MOST_PICKUPS),
    ...most('settings of its switches', states, MOST_STATES),
  ];
}

/** A count that grew by multiplication may be more than anybody reads, or than a number holds. */
const countWords = (count: number): string => (count > 1e6 ? 'more than a million' : String(count));
