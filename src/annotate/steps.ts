/**
 * The order of soldering: what is hard to reach later comes first, what heat would harm comes last. Ground, then jumpers
 * and bent lugs, then components, then the wires between switch and pots, then the way out, pickups at the end. Common
 * practice, no source. A joint's own `step` in the description goes before what is worked out here.
 */
import { type Circuit, lugIdOf, netAt } from '../circuit/circuit.ts';
import { findPart, type Joint } from '../describe/kit.ts';
import { colourName } from '../messages/words.ts';
import { componentOf, is, isPickup, type Part } from '../parts/index.ts';

export interface Step {
  /** Counted from 1 without gaps, as the customer counts. */
  readonly number: number;
  readonly title: string;
  /** Indices into the circuit's joints, in the order written. */
  readonly joints: readonly number[];
  /** What to do, a line a joint. */
  readonly lines: readonly string[];
}

const TITLES: Readonly<Record<number, string>> = {
  1: 'Ground',
  2: 'Jumpers and bent lugs',
  3: 'Components',
  4: 'Switch and pots',
  5: 'Output',
  6: 'Pickups',
};

/** The steps of a kit; every joint is in just one of them. */
export function stepsOf(circuit: Circuit): readonly Step[] {
  const numbers = circuit.joints.map((joint) => joint.step ?? stepOf(circuit, joint));
  return [...new Set(numbers)]
    .sort((a, b) => a - b)
    .map((number, i): Step => {
      const joints = numbers.flatMap((one, k) => (one === number ? [k] : []));
      return {
        number: i + 1,
        title: TITLES[number] ?? `Step ${number}`,
        joints,
        lines: joints.flatMap((k) => {
          const joint = circuit.joints[k];
          return joint ? [lineOf(circuit, joint)] : [];
        }),
      };
    });
}

function stepOf(circuit: Circuit, { kind, from, to }: Joint): number {
  const { kit } = circuit;
  const parts = [from, to].flatMap((end) => findPart(kit, end.part) ?? []);
  if (parts.some(isPickup)) return 6;
  if (kind === 'jumper' || kind === 'bend') return 2;
  if (kind === 'leg') return 3;
  if (netAt(circuit, lugIdOf(from)).role === 'ground') return 1;
  return parts.some((part) => is(part, 'jack')) ? 5 : 4;
}

const VERBS = { wire: 'Wire', jumper: 'Bare jumper', braid: 'Braid' } as const;

/** What the component is, so that the right one is picked up: its value, and its bands or code. */
function markOf(part: Part): readonly string[] {
  const facts = componentOf(part);
  if (!facts) return [];
  const { value, bands, print } = facts;
  return [
    value,
    ...(bands ? [bands.map((code) => colourName('en', code)).join(' ')] : []),
    ...(print === undefined ? [] : [`marked ${print}`]),
  ];
}

const sleevedAt = (part: Part, ends: readonly Joint['from'][]): boolean =>
  ends.some((end) => end.part === part.name && componentOf(part)?.sleeved.includes(end.lug));

function lineOf({ kit }: Circuit, { kind, from, to, colour, length }: Joint): string {
  const component = [from, to].flatMap((one) => findPart(kit, one.part) ?? []);
  const end = ({ part: name, lug }: Joint['from']): string => {
    const part = findPart(kit, name);
    const label = part?.label ?? name;
    // The two legs of a component are alike in the hand; a bare number after a name would read as part of it.
    if (part && is(part, 'component')) return label;
    return /^\d+$/.test(lug) ? `${label} lug ${lug}` : `${label} ${lug}`;
  };
  const cut = [
    ...(kind === 'leg' ? component.flatMap(markOf) : []),
    ...(kind === 'leg' && component.some((part) => sleevedAt(part, [from, to])) ? ['sleeved'] : []),
    ...(colour === undefined ? [] : [colourName('en', colour)]),
    ...(length === undefined ? [] : [`${Math.round(length * 1000)} mm`]),
  ].join(', ');
  if (kind === 'bend') return `Bend ${end(from)} back and solder it to ${end(to)}`;
  if (kind === 'leg') {
    const [own, other] = component.some((part) => part.name === from.part && is(part, 'component'))
      ? [from, to]
      : [to, from];
    return `${end(own)}${cut === '' ? '' : ` (${cut})`}: one leg to ${end(other)}`;
  }
  return `${VERBS[kind]}${cut === '' ? '' : ` (${cut})`} from ${end(from)} to ${end(to)}`;
}
