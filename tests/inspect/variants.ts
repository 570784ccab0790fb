/** Every drawing the samples give: each kit in each arrangement, view and theme. */
import { readdirSync, readFileSync } from 'node:fs';
import { stepsOf } from '../../src/annotate/steps.ts';
import { hands, type Kit, views } from '../../src/describe/kit.ts';
import { readKit } from '../../src/describe/read.ts';
import type { Aspect, Prepared } from '../../src/draw/compose.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';
import { arrangementNames, findArrangement, findPage } from '../../src/files/layouts.ts';
import { draw, prepare, render } from '../../src/pipeline.ts';
import type { Arrangement } from '../../src/place/arrangement.ts';
import type { PlaceOptions } from '../../src/place/place.ts';
import { placedOnce } from '../tools/placements.ts';

const NARROW = 'narrow-column';
const FIRST_PLACES: PlaceOptions = { effort: { steps: 0, seed: 1 } };

export interface Variant {
  readonly name: string;
  readonly svg: string;
  readonly kit: Kit;
  readonly arrangement: string;
  readonly aspect: Aspect;
}

const SAMPLES = readdirSync('samples').filter((name) => name.endsWith('.yaml'));

export const sampleKits = (): readonly Kit[] =>
  SAMPLES.map((file) => {
    const { kit } = readKit(readFileSync(`samples/${file}`, 'utf8'), file);
    if (!kit) throw new Error(`${file} does not read`);
    return kit;
  });

const arrangementOf = (name: string): Arrangement => {
  const found = findArrangement(name);
  if (typeof found === 'string') throw new Error(`${name}: ${found}`);
  return found;
};

export const drawnIn = async (
  kit: Kit,
  arrangement: string,
  options: Aspect & PlaceOptions = {},
): Promise<string> => draw(kit, arrangementOf(arrangement), { ...placedOnce, ...options });

/**
 * Placing takes the time and is the same for every view and theme, every state and every step. A kit is placed with the usual search in its own
 * arrangement and, by turns, in one more; in the others where the first places are, which must be as good to read wherever a search stops.
 */
export async function* variants(): AsyncGenerator<Variant> {
  const usual = arrangementNames().filter((name) => name !== NARROW);
  for (const [i, kit] of sampleKits().entries())
    for (const arrangement of arrangementNames()) {
      // Takes as long as all others together, and tests of shop pages read it back too: of one kit.
      if (arrangement === NARROW && i > 0) continue;
      const searched = [kit.arrangement, usual[i % usual.length]].includes(arrangement);
      const prepared = await prepare(kit, arrangementOf(arrangement), searched ? placedOnce : FIRST_PLACES);
      for (const view of views)
        for (const theme of Object.keys(themes) as ThemeName[])
          yield variant(kit, arrangement, prepared, { view, theme });
    }
}

/** Each kit as its own arrangement has it: left-handed, on every page format, in every state and up to every step. */
export async function* aspects(): AsyncGenerator<Variant> {
  for (const [i, kit] of sampleKits().entries()) {
    const { arrangement } = kit;
    for (const hand of hands) {
      // Of every second kit the other hand is drawn where its first places are.
      const searched = hand === hands[0] || i % 2 === 0;
      const prepared = await prepare(kit, arrangementOf(arrangement), {
        ...(searched ? placedOnce : FIRST_PLACES),
        hand,
      });
      const states = prepared.circuit.states.map((_, state) => ({ state }));
      const steps = stepsOf(prepared.circuit).map(({ number }) => ({ step: number }));
      const pages = [LARGE].flatMap((name) => {
        const page = findPage(name);
        return page ? [{ page }] : [];
      });
      for (const aspect of [{}, ...states, ...steps, ...pages])
        for (const view of views) yield variant(kit, arrangement, prepared, { ...aspect, view });
    }
  }
}

/** The page format that the samples' leaflets have. */
const LARGE = 'a4-landscape';

const variant = (kit: Kit, arrangement: string, prepared: Prepared, aspect: Aspect): Variant => {
  const { name, svg } = render(prepared, aspect);
  return {
    name: `${name} in ${arrangement}${aspect.page ? ' on a page' : ''}`,
    kit,
    arrangement,
    aspect,
    svg,
  };
};
