/** From the soldered harness to the instrument that plays. Common practice, no source. */
import { rolesOf } from '../analyse/index.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Say } from '../messages/say.ts';
import { elementsLike, is, isPickup } from '../parts/index.ts';
import type { Block } from './document.ts';
import { controlName } from './words.ts';

export function fittingSection({ circuit }: Pick<Prepared, 'circuit'>, say: Say): readonly Block[] {
  const { kit } = circuit;
  const has = (trait: Parameters<typeof is>[1]): boolean => kit.parts.some((part) => is(part, trait));
  const points = kit.parts.filter((part) => is(part, 'ground-point'));
  const items = [
    ...(has('pot') || has('switch') || has('jack') ? [say('fit.nuts')] : []),
    say('fit.wires'),
    ...points.map(({ label: point }) => say('fit.point', { point })),
    ...(has('jack') ? [say('fit.plug')] : []),
    ...(has('jack') && kit.parts.some(isPickup) ? [say('fit.tap')] : []),
    ...(has('jack') ? toneItems(circuit, say) : []),
    say('fit.stop', { faults: say('leaflet.faults') }),
  ];
  return [
    { is: 'heading', level: 1, text: say('leaflet.fitting') },
    { is: 'list', items },
  ];
}

/** No meter proves a capacitor's leg, as it conducts no direct current; the ear does, by the tone control. */
function toneItems(circuit: Prepared['circuit'], say: Say): readonly string[] {
  const { kit } = circuit;
  const tones = [...rolesOf(circuit)].flatMap(([id, role]) =>
    role === 'tone' ? [controlName(kit, id, say)] : [],
  );
  const capacitors = kit.parts
    .filter((part) => is(part, 'component') && elementsLike(part, 'capacitance').length > 0)
    .map(({ label }) => label);
  if (tones.length === 0 || capacitors.length === 0) return [];
  return [say('fit.tone', { controls: [...new Set(tones)].join(', '), components: capacitors.join(', ') })];
}
