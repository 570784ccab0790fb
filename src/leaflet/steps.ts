/** The soldering, step by step: each with its drawing at the same place and scale, and its joints to tick. */
import { stepsOf } from '../annotate/steps.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Say } from '../messages/say.ts';
import { type Block, TICK, text } from './document.ts';
import type { Pictures, Room } from './pictures.ts';

/** Of a page's height the share that a step's drawing may take: below it stand its joints and its test. */
const DRAWING = 0.5;

export function stepsSection(
  prepared: Prepared,
  pictures: Pictures,
  say: Say,
  inner: Room,
): readonly Block[] {
  return stepsOf(prepared.circuit).flatMap(({ number, title, lines }, i): readonly Block[] => [
    ...(i === 0 ? ([{ is: 'heading', level: 1, text: say('leaflet.steps'), page: true }] as const) : []),
    {
      is: 'heading',
      level: 2,
      text: say('leaflet.step', { number, title }),
      badge: String(number),
      ...(i === 0 ? {} : { page: true as const }),
    },
    { is: 'figure', picture: pictures.step(number, { ...inner, height: inner.height * DRAWING }) },
    ...(i === 0 ? [{ is: 'paragraph', text: say('leaflet.steps-say') } as const] : []),
    {
      is: 'table',
      columns: [{ head: say('leaflet.done') }, { head: say('leaflet.joint'), share: 1 }],
      rows: lines.map((line) => [TICK, text(line)]),
    },
  ]);
}
