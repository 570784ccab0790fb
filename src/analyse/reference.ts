/**
 * The plain harness that a pickup was made for: one volume, one tone with its capacitor, a jack. It is built as a
 * circuit like any other, so that the reference figures come out of the same solver.
 */

import type { Circuit } from '../circuit/circuit.ts';
import type { Joint, Surroundings } from '../describe/kit.ts';
import { capacitor } from '../parts/capacitor.ts';
import type { Part, Pickup } from '../parts/index.ts';
import { jack } from '../parts/jack.ts';
import { pot } from '../parts/pot.ts';
import { buildCircuit } from '../solve/build.ts';

/** Farads. 22 nF serves humbuckers and single coils alike; common practice, no source. */
const TONE_CAPACITOR = 22e-9;

/** Names that a pickup's own cannot clash with, as `+` is in no part's name. */
const VOLUME = '+volume';
const TONE = '+tone';
const CAPACITOR = '+capacitor';
const JACK = '+jack';

const base = <K extends Part['kind']>(kind: K, name: string) => ({ kind, name, label: name });

/** The reference harness with this very pickup in it. */
export function referenceCircuit(pickup: Pickup, surroundings: Surroundings): Circuit {
  const { volume, tone } = pickup.reference;
  const parts: readonly Part[] = [
    pickup,
    pot.build(base('pot', VOLUME), { value: volume.value }),
    pot.build(base('pot', TONE), { value: tone.value }),
    capacitor.build(base('capacitor', CAPACITOR), { value: TONE_CAPACITOR }),
    jack.build(base('jack', JACK), {}),
  ];
  const joints = [
    [`${pickup.name}.hot`, `${VOLUME}.3`],
    [`${pickup.name}.ground`, `${JACK}.sleeve`],
    [`${VOLUME}.2`, `${JACK}.tip`],
    [`${VOLUME}.1`, `${JACK}.sleeve`],
    [`${TONE}.2`, `${VOLUME}.3`],
    [`${TONE}.1`, `${CAPACITOR}.1`],
    [`${CAPACITOR}.2`, `${JACK}.sleeve`],
  ].map(([from = '', to = ''], index): Joint => ({ kind: 'wire', from: end(from), to: end(to), index }));
  return buildCircuit({
    id: 'reference',
    title: `What ${pickup.label} was made for`,
    arrangement: '',
    view: 'solder-side',
    hand: 'right',
    parts,
    joints,
    surroundings,
  });
}

const end = (id: string) => {
  const dot = id.lastIndexOf('.');
  return { part: id.slice(0, dot), lug: id.slice(dot + 1) };
};
