/** The soldering, step by step: each with its drawing at the same place and scale, and its joints to tick. */
import type { Step } from '../annotate/steps.ts';
import { nth } from '../common/must.ts';
import type { Box } from '../draw/leaflet/figure.ts';
import type { Say } from '../messages/say.ts';
import { type Block, strong, TICK, text } from './document.ts';
import type { Pictures } from './pictures.ts';

/** Of a page's height the share that a step's drawing may take: below it stand its joints and its test. */
const DRAWING = 0.5;

export function stepsSection(
  steps: readonly Step[],
  pictures: Pictures,
  say: Say,
  inner: Box,
): readonly Block[] {
  const drawings = pictures.steps(steps, { ...inner, height: inner.height * DRAWING });
  return steps.flatMap(({ number, title, lines, notes }, i): readonly Block[] => [
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
  ]);
}
