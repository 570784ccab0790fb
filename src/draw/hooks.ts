/**
 * What a page's script finds the elements of an inline drawing by, and what else it may show there: parts, lugs and joints by name,
 * the nets they are on, the states they are live in, and how a part looks in each state.
 */
import { liveJoints } from '../annotate/live.ts';
import { type Circuit, type LugId, lugIdOf, netNumbers, type State } from '../circuit/circuit.ts';
import { must } from '../common/must.ts';
import { contactAt, isPickup, type Part } from '../parts/index.ts';
import { placesIn } from '../solve/rest.ts';
import type { Attributes } from './canvas.ts';

/** How the contacts and tracks of a part are drawn. */
export interface Setting {
  /** Lugs joined by the contacts that are drawn closed; of a switch only. */
  readonly closed?: readonly (readonly string[])[];
  /** Rotation of each track by its id. */
  readonly turned: Readonly<Record<string, number>>;
}

/** A setting of a part with the states that it has it in, counted from 1. */
export interface Variant {
  readonly setting: Setting;
  readonly states: readonly number[];
}

export interface Hooks {
  /** By part name. */
  readonly parts: ReadonlyMap<string, Attributes>;
  readonly lugs: ReadonlyMap<LugId, Attributes>;
  /** In the order of the kit's joints. */
  readonly joints: readonly Attributes[];
  /** By part name, all settings of each part that has several; none where a drawing is of one state or step. */
  readonly variants: ReadonlyMap<string, readonly Variant[]>;
}

/** A part as it is in a state. */
export const settingIn = (circuit: Circuit, state: State | undefined, part: Part): Setting => {
  const contact = contactAt(part, state?.positions[part.name]);
  return { ...(contact ? { closed: contact.joins } : {}), turned: placesIn(circuit, state ?? {}, part) };
};

/** Numbers as an attribute has them. */
export const numbered = (numbers: readonly number[]): string => numbers.join(' ');

/** @param still whether only one state is drawn */
export function hooksOf(circuit: Circuit, still: boolean): Hooks {
  const { kit, joints, states } = circuit;
  const nets = netNumbers(circuit);
  const netOf = (lug: LugId): number => must(nets.get(lug), `a net of ${lug}`);
  const live = states.map((state) => liveJoints(circuit, state));
  const statesWhere = (holds: (state: State, i: number) => boolean): string =>
    numbered(states.flatMap((state, i) => (holds(state, i) ? [i + 1] : [])));
  return {
    parts: new Map(
      kit.parts.map((part) => [
        part.name,
        {
          'data-part': part.name,
          ...(isPickup(part)
            ? { 'data-live': statesWhere(({ sounding }) => sounding.includes(part.name)) }
            : {}),
        },
      ]),
    ),
    lugs: new Map([...nets].map(([lug, net]) => [lug, { 'data-lug': lug, 'data-net': net }])),
    joints: joints.map((joint, i) => {
      const from = lugIdOf(joint.from);
      return {
        'data-joint': i + 1,
        'data-from': from,
        'data-to': lugIdOf(joint.to),
        'data-net': netOf(from),
        'data-live': statesWhere((_, state) => live[state]?.has(i) ?? false),
      };
    }),
    variants: new Map(
      still
        ? []
        : kit.parts.flatMap((part) => {
            const variants = variantsOf(circuit, part);
            return variants.length > 1 ? [[part.name, variants] as const] : [];
          }),
    ),
  };
}

/** Settings of a part in the order of the states that have them first. */
function variantsOf(circuit: Circuit, part: Part): readonly Variant[] {
  const found = new Map<string, { readonly setting: Setting; readonly states: number[] }>();
  circuit.states.forEach((state, i) => {
    const setting = settingIn(circuit, state, part);
    const key = JSON.stringify([setting, state.positions[part.name]]);
    const known = found.get(key);
    if (known) known.states.push(i + 1);
    else found.set(key, { setting, states: [i + 1] });
  });
  return [...found.values()];
}
