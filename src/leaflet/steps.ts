/** The soldering, step by step: each with its drawing at the same place and scale, its joints to tick, and its test. */
import { stepTests } from '../annotate/step-tests.ts';
import type { Step } from '../annotate/steps.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Language } from '../messages/language.ts';
import type { Say } from '../messages/say.ts';
import { apartIn } from '../messages/words.ts';
import { is } from '../parts/index.ts';
import type { Cuts } from './cuts.ts';
import { type Block, strong, TICK, text } from './document.ts';
import type { Pictures } from './pictures.ts';
import { assumedValues, jackTest, pickupStep, readingsOf, testPictures } from './tests.ts';
import { kindIn } from './words.ts';

interface Told {
  readonly prepared: Prepared;
  readonly steps: readonly Step[];
  readonly pictures: Pictures;
  readonly cuts: Cuts;
  readonly say: Say;
  readonly language: Language;
}

/** What the marks of a step's drawing mean, each beside a piece of a drawing that shows it. */
export function marksWords(steps: readonly Step[], pictures: Pictures, say: Say): readonly Block[] {
  const { samples } = pictures.steps(steps);
  const told = [
    { text: say('leaflet.rings-say'), picture: samples.lines },
    { text: say('rings.number'), picture: samples.aside },
    { text: say('rings.black'), picture: samples.soldered },
    { text: say('rings.white'), picture: samples.hooked },
    // Most kits have none.
    ...(samples.gathered ? [{ text: say('rings.gathered'), picture: samples.gathered }] : []),
    { text: say('rings.none'), picture: undefined },
  ];
  const paragraph = (words: string): Block => ({ is: 'paragraph', text: words });
  const share = pictures.sampleShare;
  return [
    {
      is: 'pairs',
      items: told.flatMap(({ text: words, picture }) =>
        picture ? [{ picture, share, blocks: [paragraph(words)] }] : [],
      ),
    },
    ...told.flatMap(({ text: words, picture }) => (picture ? [] : [paragraph(words)])),
  ];
}

/** What the components of a step are, whatever they are called: `Tone cap: capacitor; Middle pad: resistor`. */
function componentWords({ kit }: Circuit, { details }: Step, say: Say): readonly Block[] {
  const names = new Set(details.flatMap(({ component }) => component ?? []));
  const words = kit.parts
    .filter(({ name }) => names.has(name))
    .map((part) => say('named.list', { name: part.label, words: kindIn(part, say) }));
  return words.length === 0
    ? []
    : [{ is: 'paragraph', text: `${apartIn(kit.language, words)}.`, small: true }];
}

/** All steps, with the test before the first lead of a pickup where that comes, and the last test behind them. */
export function stepsSection({ prepared, steps, pictures, cuts, say, language }: Told): readonly Block[] {
  const { figures: drawings } = pictures.steps(steps);
  const share = pictures.stepShare;
  const { circuit } = prepared;
  const tests = stepTests(circuit, language);
  const shown = testPictures(prepared, steps, pictures, say, language);
  const pickups = pickupStep(prepared, steps);
  const before = pickups > 1 && pickups <= steps.length && circuit.kit.parts.some((part) => is(part, 'jack'));
  const jack = (when: 'before' | 'finished') => jackTest(prepared, when, shown, say, language);
  const joints = (step: Step): readonly Block[] => [
    {
      is: 'table',
      columns: [
        { head: say('leaflet.done') },
        { head: say('leaflet.number') },
        { head: say('leaflet.joint'), share: 5 },
        { head: say('leaflet.cut'), share: pictures.roomy ? 2.8 : 2 },
      ],
      rows: step.details.map(({ index, line }, k) => [
        TICK,
        strong(String(k + 1)),
        text(line),
        text(cuts.forJoint(index, pictures.roomy ? ', ' : '\n')),
      ]),
    },
    ...componentWords(circuit, step, say),
    ...cuts.extending(step),
    ...step.notes.map((note): Block => ({ is: 'paragraph', text: note, small: true })),
  ];
  const told = steps.flatMap((step, i): readonly Block[] => {
    const { number, title } = step;
    const picture = nth(drawings, i);
    const test = nth(tests, i);
    const readings = readingsOf(test, shown, say);
    const byEye: readonly Block[] =
      test.byEye === undefined ? [] : [{ is: 'paragraph', text: test.byEye, small: true }];
    const blocks: readonly Block[] = [
      { is: 'heading', level: 2, text: say('leaflet.step', { number, title }) },
      ...(share !== undefined
        ? [{ is: 'beside', picture, share, blocks: joints(step) } as const]
        : [{ is: 'figure', picture, held: true } as const, ...joints(step)]),
      ...(number === pickups ? assumedValues(prepared, say) : []),
      ...(readings.length === 0 ? byEye : []),
    ];
    return [
      // Of a kit that begins with its pickups there is nothing to measure yet.
      ...(number === pickups && before ? jack('before') : []),
      {
        is: 'step',
        blocks,
        heading: say('leaflet.tests-after', { number, count: readings.length }),
        tests: readings,
        closing: readings.length === 0 ? [] : byEye,
      },
    ];
  });
  return [{ is: 'steps', largest: pictures.stepsLarger(steps), blocks: told }, ...jack('finished')];
}
