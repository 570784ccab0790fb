/** Tests with a multimeter: after a step, before the pickups are fitted, and when everything is soldered. */

import { jackTests, meterHints, stepTests } from '../annotate/step-tests.ts';
import type { Step } from '../annotate/steps.ts';
import { must } from '../common/must.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Language } from '../messages/language.ts';
import type { Say } from '../messages/say.ts';
import { isPickup } from '../parts/index.ts';
import { planOf } from '../soldering/plan.ts';
import { type Block, type Picture, strong, TICK, text } from './document.ts';
import type { Pictures } from './pictures.ts';

/**
 * What stands below a step's joints; nothing where no reading proves anything and nothing is to be looked at.
 *
 * @param hints how a meter is held and read, before the first test
 */
export function stepTest(
  { step, tests, byEye }: StepTests,
  shown: Shown,
  say: Say,
  hints: readonly Block[],
): readonly Block[] {
  const looked: readonly Block[] = byEye === undefined ? [] : [{ is: 'paragraph', text: byEye, small: true }];
  if (tests.length === 0) return looked;
  const told = tests.map(({ fromName, toName, setting, expected, wrong }, i): Block => {
    const held = probesIn(fromName, toName, say);
    const blocks: readonly Block[] = [
      {
        is: 'paragraph',
        text: say('leaflet.test-number', { number: `${step}.${i + 1}`, probes: held }),
        tick: true,
      },
      ...(setting === '' ? [] : [{ is: 'paragraph', text: `${setting}.` } as const]),
      { is: 'paragraph', text: say('leaflet.reads', { reading: expected }), strong: true },
      ...wrong.map((words): Block => ({ is: 'paragraph', text: words, small: true })),
    ];
    return { is: 'beside', share: shown.share, picture: shown.at(nameAt(step, i)), blocks };
  });
  // What no test proves stays with the last one, wherever a page ends.
  return [...hints, ...told.slice(0, -1), { is: 'together', blocks: [...told.slice(-1), ...looked] }];
}

/** How a meter is held and read, as small print. */
export const meterBlocks = (language: Language): readonly Block[] =>
  meterHints(language).map((hint): Block => ({ is: 'paragraph', text: hint, small: true }));

type StepTests = ReturnType<typeof stepTests>[number];

const probesIn = (from: string, to: string, say: Say): string => say('leaflet.probes-at', { from, to });

/** The pictures of all tests of a kit, which have one scale. */
interface Shown {
  /** Of the page's width what a picture takes, as a fraction. */
  readonly share: number;
  /** By the name of the test. */
  readonly at: (name: string) => Picture;
}

const nameAt = (step: number, i: number): string => `step-${step}-test-${i + 1}`;

export function testPictures(
  prepared: Prepared,
  steps: readonly Step[],
  pictures: Pictures,
  say: Say,
  language: Language,
): Shown {
  const { circuit } = prepared;
  const jack = jackTests(circuit, language);
  const whenAt = { before: pickupStep(prepared, steps) - 1, finished: steps.length };
  const all = pictures.probes([
    ...stepTests(circuit, language).flatMap(({ step, tests }) =>
      tests.map(({ from, to, fromName, toName }, i) => ({
        ...{ name: nameAt(step, i), step, from, to },
        alt: probesIn(fromName, toName, say),
      })),
    ),
    ...(['before', 'finished'] as const).flatMap((when) =>
      // Of a kit that begins with its pickups there is nothing to measure before.
      whenAt[when] < 1
        ? []
        : jack[when].slice(0, 1).map(({ from, to, fromName, toName }) => ({
            ...{ name: `test-${when}`, step: whenAt[when], from, to },
            alt: probesIn(fromName, toName, say),
          })),
    ),
  ]);
  return { share: pictures.probeShare, at: (name) => must(all.get(name), `the picture of ${name}`) };
}

/** The test at the jack in every position; nothing for a kit without a jack. */
export function jackTest(
  prepared: Prepared,
  when: 'before' | 'finished',
  shown: Shown,
  say: Say,
  language: Language,
  hints: readonly Block[],
): readonly Block[] {
  const tests = jackTests(prepared.circuit, language)[when];
  const [first] = tests;
  if (!first) return [];
  const places = new Set(tests.map(({ from, to }) => `${from} ${to}`));
  const together = places.size === 1;
  const held = probesIn(first.fromName, first.toName, say);
  const beside: readonly Block[] = [
    ...(together ? [{ is: 'paragraph', text: held } as const] : []),
    ...hints,
    { is: 'paragraph', text: say('test.nearly-looks'), small: true },
  ];
  const test: readonly Block[] = [
    {
      is: 'heading',
      // Before the pickups it is one of the steps of soldering.
      level: when === 'before' ? 2 : 1,
      text: say(when === 'before' ? 'leaflet.test-before' : 'leaflet.test-finished'),
    },
    {
      is: 'paragraph',
      text: say(when === 'before' ? 'leaflet.test-before-say' : 'leaflet.test-finished-say'),
    },
    { is: 'paragraph', text: say('leaflet.test-wrong', { faults: say('leaflet.faults') }) },
    ...(when === 'before' ? [] : assumedValues(prepared, say)),
    {
      is: 'beside',
      share: shown.share,
      picture: shown.at(`test-${when}`),
      blocks: beside,
    },
    {
      is: 'table',
      columns: [
        { head: say('leaflet.done') },
        { head: say('leaflet.position'), share: 3 },
        ...(together ? [] : [{ head: say('leaflet.probes'), share: 3 }]),
        { head: say('leaflet.volume-full'), share: 6 },
        { head: say('leaflet.volume-zero'), share: 3 },
      ],
      rows: tests.map(({ position, fromName, toName, volumeFull, volumeZero }) => [
        TICK,
        strong(position === '' ? say('leaflet.always') : position),
        ...(together ? [] : [text(probesIn(fromName, toName, say))]),
        text(volumeFull),
        text(volumeZero),
      ]),
    },
  ];
  return [{ is: 'together', blocks: test }];
}

/** A sentence where the description does not give a pickup's resistance: readings with it are then assumed too. */
export function assumedValues({ circuit: { kit } }: Prepared, say: Say): readonly Block[] {
  const assumed = kit.parts.filter(isPickup).filter(({ resistance }) => resistance.from === 'default');
  if (assumed.length === 0) return [];
  const pickups = assumed.map(({ label }) => label).join(', ');
  return [{ is: 'paragraph', text: say('leaflet.assumed-say', { pickups }) }];
}

/** The first step with a lead of a pickup; one more than there are where no step has one. */
export function pickupStep({ circuit }: Prepared, steps: readonly Step[]): number {
  return planOf(circuit).pickups ?? steps.length + 1;
}
