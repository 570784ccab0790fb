/** What a kit takes over from its base without a word, and hardly means to. */
import { type Problem, problem } from '../common/problem.ts';
import type { Layer } from './chain.ts';
import type { Kit } from './kit.ts';

/** A note where the title is the base's: two drawings with one title cannot be told apart. */
export function inheritedNotes(layers: readonly Layer[], { title }: Pick<Kit, 'title'>): readonly Problem[] {
  const own = layers.at(-1)?.value;
  const base = own?.extends;
  return typeof base !== 'string' || Object.hasOwn(own ?? {}, 'title')
    ? []
    : [problem('title-inherited', ['extends'], { title, base })];
}
