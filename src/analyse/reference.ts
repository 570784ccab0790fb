/**
 * The plain harness that a pickup was made for: one volume, one tone with its capacitor, a jack. It is built as a
 * circuit like any other, so that the reference figures come out of the same solver. A pickup of several coils has them in series there,
 * and is compared with that when it is split or in parallel, too.
 */

import type { Circuit } from '../circuit/circuit.ts';
import { must } from '../common/must.ts';
import { remembered } from '../common/remembered.ts';
import type { End, Joint, OutputLoad } from '../describe/kit.ts';
import { DEFAULT_LANGUAGE } from '../messages/language.ts';
import { capacitor } from '../parts/capacitor.ts';
import { elementsLike, lugsWith, type Part, type Pickup } from '../parts/index.ts';
import { jack } from '../parts/jack.ts';
import { type LugRole, make } from '../parts/kind.ts';
import { pot } from '../parts/pot.ts';
import { buildCircuit } from '../solve/build.ts';

/** Farads. 22 nF serves humbuckers and single coils alike; common practice, no source. */
const TONE_CAPACITOR = 22e-9;

/** The reference harness with this very pickup in it. `+` is in no name that a person may write. */
export const referenceCircuit = (pickup: Pickup, outputLoad: OutputLoad): Circuit =>
  referencesOf(outputLoad)(pickup);

/** Every figure of a kit is held against these, so that each is built once only. */
const referencesOf = remembered((outputLoad: OutputLoad) =>
  remembered((pickup: Pickup) => buildReference(pickup, outputLoad)),
);

function buildReference(pickup: Pickup, outputLoad: OutputLoad): Circuit {
  const volume = make(pot, { name: '+volume' }, { value: pickup.reference.volume.value });
  const tone = make(pot, { name: '+tone' }, { value: pickup.reference.tone.value });
  const cap = make(capacitor, { name: '+capacitor' }, { value: TONE_CAPACITOR });
  const output = make(jack, { name: '+jack' }, {});
  const [near, far] = lugsWith(cap, 'leg').map((lug): End => ({ part: cap.name, lug }));
  const coils = elementsLike(pickup, 'coil');
  const lead = (lug: string | undefined): End => ({
    part: pickup.name,
    lug: must(lug, `lead of ${pickup.name}`),
  });
  const links = coils.slice(1).map(({ hot }, i): readonly [End, End] => [lead(coils[i]?.return), lead(hot)]);
  const joints = [
    [lead(coils[0]?.hot), at(volume, 'clockwise')],
    [lead(coils.at(-1)?.return), at(output, 'sleeve')],
    ...links,
    [at(volume, 'wiper'), at(output, 'output')],
    [at(volume, 'anticlockwise'), at(output, 'sleeve')],
    [at(tone, 'wiper'), at(volume, 'clockwise')],
    [at(tone, 'anticlockwise'), must(near, 'first leg')],
    [must(far, 'second leg'), at(output, 'sleeve')],
  ] as const;
  return buildCircuit({
    id: 'reference',
    title: `What ${pickup.label} was made for`,
    arrangement: '',
    view: 'solder-side',
    hand: 'right',
    language: DEFAULT_LANGUAGE,
    parts: [pickup, volume, tone, cap, output],
    joints: joints.map(([from, to], index): Joint => ({ kind: 'wire', from, to, index })),
    outputLoad,
  });
}

const at = (part: Part, role: LugRole): End => ({
  part: part.name,
  lug: must(lugsWith(part, role)[0], `lug of ${part.name} that is its ${role}`),
});
