/** A random kit through the reader, the error checks, the pipeline and the check of what was drawn. */
import fc from 'fast-check';
import { glyphErrors } from '../../src/annotate/notes.ts';
import { hands, type Kit, views } from '../../src/describe/kit.ts';
import { kitFromValue } from '../../src/describe/read.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';
import { formatFinding, inspect } from '../../src/inspect/index.ts';
import { findErrors } from '../../src/solve/errors.ts';
import { drawnIn } from '../inspect/variants.ts';
import { circuits, type Description } from './circuits.ts';

/** The same circuits on every machine and every run. */
const SEED = 60757;
/** A short search: what must hold, must hold wherever the search stops. */
const EFFORT = { steps: 40, seed: SEED };

/** The kit of a random description, which must be without error. */
export function validKit(description: Description): Kit {
  const { kit, problems } = kitFromValue(description, 'random.ts');
  const all = [...problems, ...(kit ? [...findErrors(kit), ...glyphErrors(kit)] : [])];
  if (!kit || all.length > 0) throw new Error(`no valid kit: ${JSON.stringify(all)}`);
  return kit;
}

/** Draws so many random circuits, each in the arrangements given in turn, and fails on the smallest that has a finding. */
export async function checkRandom(runs: number, arrangements: readonly string[]): Promise<void> {
  const aspect = fc.record({
    name: fc.constantFrom(...arrangements),
    view: fc.constantFrom(...views),
    theme: fc.constantFrom(...(Object.keys(themes) as ThemeName[])),
    hand: fc.constantFrom(...hands),
  });
  await fc.assert(
    fc.asyncProperty(circuits, aspect, async (description, { name, ...rest }) => {
      const kit = validKit(description);
      const findings = inspect(await drawnIn(kit, name, { ...rest, effort: EFFORT }), kit);
      if (findings.length > 0) throw new Error(`in ${name}:\n${findings.map(formatFinding).join('\n')}`);
    }),
    // Shrinking draws again for every step, so it is bounded.
    { seed: SEED, numRuns: runs, interruptAfterTimeLimit: 580_000, markInterruptAsFailure: true },
  );
}
