/** Kits for the response plot beyond the samples: many states, no switch, long names. */

import type { Circuit } from '../../src/circuit/circuit.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { type Compact, makeKit, mixedSet, sampleCircuit, sampleNames } from '../analyse/kits.ts';

const joints = (mixedSet.joints as readonly string[]).filter((joint) => !joint.includes('selector'));

/** Each position of `extra` puts another capacitor across the coils. */
const extra = (name: string): Compact => ({
  parts: {
    [name]: { kind: 'lever-3' },
    [`${name}-cap-2`]: { kind: 'capacitor', value: '1n' },
    [`${name}-cap-3`]: { kind: 'capacitor', value: '2n2' },
  },
  joints: [
    `${name}.A0 > volume.3`,
    `${name}.A2 > ${name}-cap-2.1`,
    `${name}-cap-2.2 > volume.case`,
    `${name}.A3 > ${name}-cap-3.1`,
    `${name}-cap-3.2 > volume.case`,
  ],
});

const merged = (kit: string, ...all: readonly Compact[]): Compact => ({
  kit,
  parts: Object.assign({}, ...all.map(({ parts }) => parts)),
  joints: all.flatMap((one) => one.joints),
});

/** Selector of three positions and one or two more switches: 9 or 27 states. */
export const nineStates: Kit = makeKit(merged('nine', mixedSet, extra('dark')));
export const manyStates: Kit = makeKit(merged('many', mixedSet, extra('dark'), extra('darker')));

/** No switch: the neck alone, straight to the volume. */
export const noSwitch: Kit = makeKit({
  kit: 'lone',
  parts: Object.fromEntries(
    Object.entries(mixedSet.parts).filter(([name]) => name !== 'selector' && name !== 'bridge'),
  ),
  joints: [...joints.filter((joint) => !joint.includes('bridge')), 'neck.hot > volume.3'],
});

const longNames = (): Kit => {
  const kit = makeKit({ ...mixedSet, kit: 'long' });
  return {
    ...kit,
    title:
      'A title that is longer than any sheet of paper has room for on one line, as nothing stops one from writing it, so there',
    parts: kit.parts.map((part) => ({
      ...part,
      label: `The ${part.label} of a name far longer than it need be`,
    })),
  };
};

export const circuits: ReadonlyMap<string, Circuit> = new Map([
  ...sampleNames().map((name) => [name, sampleCircuit(name)] as const),
  ...[nineStates, manyStates, noSwitch, longNames()].map((kit) => [kit.id, buildCircuit(kit)] as const),
]);
