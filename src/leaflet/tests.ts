/** Tests with a multimeter: after a step, before the pickups are fitted, and when everything is soldered. */

import { jackTests, meterHints, stepTests } from '../annotate/step-tests.ts';
import type { Step } from '../annotate/steps.ts';
import { must } from '../common/must.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Language } from '../messages/language.ts';
import type { Say } from '../messages/say.ts';
import { isPickup } from '../parts/index.ts';
import { planOf } from '../soldering/plan.ts';
import { type Block, type Picture, type Shown, strong, TICK, text } from './document.ts';
import type { Pictures } from './pictures.ts';

/** The readings that prove a step, one below another; none where no reading proves anything. */
export function readingsOf({ step, tests }: StepTests, shown: TestPictures, say: Say): readonly Shown[] {
  return tests.map(({ fromName, toName, setting, expected, wrong }, i) => {
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
    return { share: shown.share, picture: shown.at(nameAt(step, i)), blocks };
  });
}

/** How a meter is held and read, before the first step; nothing for a kit in which nothing is measured. */
export function measuringSection({ circuit }: Prepared, say: Say): readonly Block[] {
  const { language } = circuit.kit;
  const { before, finished } = jackTests(circuit, language);
  const measured = stepTests(circuit, language).some(({ tests }) => tests.length > 0);
  if (!measured && before.length === 0 && finished.length === 0) return [];
  return [
    { is: 'heading', level: 2, text: say('leaflet.measuring') },
    { is: 'list', items: meterHints(language) },
  ];
}

type StepTests = ReturnType<typeof stepTests>[number];

const probesIn = (from: string, to: string, say: Say): string => say('leaflet.probes-at', { from, to });

/** The pictures of all tests of a kit, which have one scale. */
interface TestPictures {
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
): TestPictures {
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
  shown: TestPictures,
  say: Say,
  language: Language,
): readonly Block[] {
  const tests = jackTests(prepared.circuit, language)[when];
  const [first] = tests;
  if (!first) return [];
  const places = new Set(tests.map(({ from, to }) => `${from} ${to}`));
  const together = places.size === 1;
  const held = probesIn(first.fromName, first.toName, say);
  const beside: readonly Block[] = [
    ...(together ? [{ is: 'paragraph', text: held } as const] : []),
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
  return when === 'before' ? [{ is: 'together', blocks: test }] : test;
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
