/** From the soldered harness to the instrument that plays. Common practice, no source. */
import type { Prepared } from '../draw/compose.ts';
import type { Say } from '../messages/say.ts';
import { is, isPickup } from '../parts/index.ts';
import type { Block } from './document.ts';

export function fittingSection({ circuit: { kit } }: Pick<Prepared, 'circuit'>, say: Say): readonly Block[] {
  const has = (trait: Parameters<typeof is>[1]): boolean => kit.parts.some((part) => is(part, trait));
  const points = kit.parts.filter((part) => is(part, 'ground-point'));
  const items = [
    ...(has('pot') || has('switch') || has('jack') ? [say('fit.nuts')] : []),
    say('fit.wires'),
    ...points.map(({ label: point }) => say('fit.point', { point })),
    ...(has('jack') ? [say('fit.plug')] : []),
    ...(has('jack') && kit.parts.some(isPickup) ? [say('fit.tap')] : []),
    say('fit.stop'),
  ];
  return [
    { is: 'heading', level: 1, text: say('leaflet.fitting') },
    { is: 'list', items },
  ];
}
