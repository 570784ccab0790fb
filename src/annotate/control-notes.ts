/** Warnings on controls: wired backwards, or not what the kit says they are. */
import { idleControls, rolesOf, solvedRole } from '../analyse/index.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { exchanged } from '../circuit/exchange.ts';
import { type Problem, problem } from '../common/problem.ts';
import { type Control, controlsOf } from '../parts/index.ts';
import { controlRoles } from '../parts/kind.ts';
import { keptAtCentre, MOST_SETTINGS, solvedEnd } from '../solve/full.ts';

/** A blend that is not turned; and one warning or none a control: nothing of one that has no effect, which has a warning of its own. */
export function controlNotes(circuit: Circuit): readonly Problem[] {
  const { settings } = circuit;
  const kept = keptAtCentre(circuit).map((control) =>
    problem(
      'blend-at-centre-only',
      fieldOf(control),
      { part: control.id, count: settings.length * 3, most: MOST_SETTINGS },
      'key',
    ),
  );
  const idle = new Set(idleControls(circuit).map(({ pot }) => pot));
  const own = circuit.kit.parts
    .flatMap(controlsOf)
    .filter(({ id }) => !idle.has(id))
    .flatMap((control) => [...roleNotes(circuit, control), ...directionNotes(circuit, control)]);
  return [...kept, ...own];
}

/** Where a role is written: at the part, or in the field of the shaft. */
const fieldOf = ({ id, part }: Control, field?: string): readonly string[] => [
  'parts',
  part,
  ...id.split('.').slice(1),
  ...(field === undefined ? [] : [field]),
];

function roleNotes(circuit: Circuit, control: Control): readonly Problem[] {
  const { id, role } = control;
  if (role === undefined)
    return solvedRole(circuit, control) === 'other'
      ? [problem('role-unknown', fieldOf(control), { part: id, allowed: controlRoles }, 'key')]
      : [];
  if (role === 'other') return [];
  const found = solvedRole(circuit, control);
  // Nothing plain to set against what is written.
  if (found === role || found === 'other') return [];
  return [problem('role-contradicts', fieldOf(control), { part: id, written: role, found }, 'key')];
}

function directionNotes(circuit: Circuit, control: Control): readonly Problem[] {
  const { id, tracks } = control;
  const { kit } = circuit;
  const role = rolesOf(circuit).get(id);
  if (role !== 'volume' && role !== 'tone') return [];
  const end = solvedEnd(circuit, control);
  if (end === undefined) return [];
  if (end === (kit.hand === 'left' ? 'anticlockwise' : 'clockwise'))
    return tracks.some(({ noLoad }) => noLoad !== undefined && noLoad !== end)
      ? [problem('no-load-other-end', fieldOf(control), { part: id, full: end }, 'key')]
      : [];
  const { used, ends, joints } = exchanged(kit, control);
  const [move] = joints;
  const detail = { part: id, hand: kit.hand, end, exchange: { used, ends } };
  return move
    ? [
        problem(
          'control-backwards',
          ['joints', move.joint.index, move.joint.kind, move.end, 'lug'],
          detail,
          'value',
        ),
      ]
    : [problem('control-backwards', fieldOf(control), detail, 'key')];
}
