/** The soldering, step by step: each with its drawing at the same place and scale, its joints to tick, and its test. */
import { stepTests } from '../annotate/step-tests.ts';
import type { Step } from '../annotate/steps.ts';
import { nth } from '../common/must.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Box } from '../draw/leaflet/figure.ts';
import type { Language } from '../messages/language.ts';
import type { Say } from '../messages/say.ts';
import { type Block, strong, TICK, text } from './document.ts';
import type { Pictures } from './pictures.ts';
import { jackTest, pickupStep, stepTest } from './tests.ts';

/** Of a page's height the share that a step's drawing may take: below it stand its joints and its test. */
const DRAWING = 0.45;

/** All steps, with the test before the first lead of a pickup where that comes, and the last test behind them. */
export function stepsSection(
  prepared: Prepared,
  steps: readonly Step[],
  pictures: Pictures,
  say: Say,
  language: Language,
  inner: Box,
): readonly Block[] {
  const drawings = pictures.steps(steps, { ...inner, height: inner.height * DRAWING });
  const tests = stepTests(prepared.circuit, language);
  const pickups = pickupStep(prepared, steps);
  const jack = (when: 'before' | 'finished') => jackTest(prepared, when, pictures, steps, say, language);
  return [
    ...steps.flatMap(({ number, title, lines, notes }, i): readonly Block[] => [
      // Of a kit that begins with its pickups there is nothing to measure yet.
      ...(number === pickups && i > 0 ? jack('before') : []),
      { is: 'heading', level: 2, text: say('leaflet.step', { number, title }), page: true },
      { is: 'figure', picture: nth(drawings, i) },
      {
        is: 'table',
        columns: [
          { head: say('leaflet.done') },
          { head: say('leaflet.number') },
          { head: say('leaflet.joint'), share: 1 },
        ],
        rows: lines.map((line, k) => [TICK, strong(String(k + 1)), text(line)]),
      },
      ...notes.map((note): Block => ({ is: 'paragraph', text: note, small: true })),
      ...stepTest(nth(tests, i), pictures, say),
    ]),
    ...jack('finished'),
  ];
}
