/** What must hold of any random kit: checked, drawn in every arrangement, read back by two readers, and solved by two solvers. */

import { acrossErrors } from '../../src/annotate/circuit-notes.ts';
import { glyphErrors } from '../../src/annotate/notes.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { hands, type Kit, views } from '../../src/describe/kit.ts';
import { kitFromValue } from '../../src/describe/read.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';
import { arrangementNames, findArrangement } from '../../src/files/layouts.ts';
import { formatFinding, inspect, proofread } from '../../src/inspect/index.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { DEFAULT_EFFORT, type Effort } from '../../src/place/improve.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { findErrors } from '../../src/solve/errors.ts';
import { loadChecks, meterChecks, wrong } from '../oracle/compare.ts';
import { relationErrors } from '../oracle/relations.ts';
import { runSpice } from '../oracle/spice.ts';
import { jointErrors, read } from '../truth/reader.ts';
import { randomKit } from './kits.ts';

/** The first places, without a search: what must hold, must hold wherever the search begins or stops. */
export const LOW: Effort = { steps: 0, seed: 1 };
export { DEFAULT_EFFORT };

/** The kit of a seed, or the codes of what is wrong with it. */
export function kitOfSeed(seed: number): Kit | readonly string[] {
  const { kit, problems } = kitFromValue(randomKit(seed), 'random.ts');
  const all = [...problems, ...(kit ? [...findErrors(kit), ...glyphErrors(kit)] : [])];
  if (!kit || all.length > 0) return [...new Set(all.map(({ code }) => code))];
  const across = acrossErrors(buildCircuit(kit));
  return across.length > 0 ? across.map(({ code }) => code) : kit;
}

const at = <T>(list: readonly T[], seed: number): T | undefined => list[seed % list.length];

/** Draws a kit in some arrangements, or in all, view, hand and theme going by the seed; answers what is wrong with any of them. */
export async function drawingErrors(
  kit: Kit,
  seed: number,
  effort: Effort,
  names: readonly string[] = arrangementNames(),
): Promise<readonly string[]> {
  const errors: string[] = [];
  for (const [i, name] of names.entries()) {
    const arrangement = findArrangement(name);
    if (typeof arrangement === 'string') throw new Error(arrangement);
    const hand = at(hands, seed + i);
    const prepared = await prepare(kit, arrangement, { effort, ...(hand ? { hand } : {}) });
    const [view, theme] = [at(views, (seed >> 1) + i), at(Object.keys(themes) as ThemeName[], seed + i)];
    const { svg } = render(prepared, { ...(view ? { view } : {}), ...(theme ? { theme } : {}) });
    // Drawing again takes as long as drawing, and is the same in every arrangement: two of them show it.
    const found = (seed + i) % 3 === 0 ? inspect(svg, kit) : proofread(svg, prepared);
    errors.push(
      ...found.map((one) => `${kit.id} in ${name}: ${formatFinding(one)}`),
      ...jointErrors(read(svg), kit).map((one) => `${kit.id} in ${name}: ${one}`),
    );
  }
  return errors;
}

/** States solved of each kit; one with three switches has more than a hundred, much alike. */
const MOST_STATES = 8;

const fewer = (circuit: Circuit): Circuit => ({
  ...circuit,
  states: circuit.states.filter(
    (_, i) => i % Math.max(1, Math.ceil(circuit.states.length / MOST_STATES)) === 0,
  ),
});

/** What of kits is solved otherwise by ngspice: sounding, level, phase, chains; loads, totals and readings to 1e-6. */
export async function solvingErrors(all: readonly Circuit[]): Promise<readonly string[]> {
  const circuits = all.map(fewer);
  const errors = [...(await relationErrors(circuits))];
  for (const circuit of circuits) {
    const checks = [...loadChecks(circuit), ...meterChecks(circuit)];
    for (let i = 0; i < checks.length; i += 100) {
      const batch = checks.slice(i, i + 100);
      const run = await runSpice(
        batch.map(({ job }) => job),
        // Resistances are the same at any frequency, and signal loads are those at 1 kHz.
        'lin 1 1000 1000',
      );
      errors.push(...wrong(batch, run, 1e-6).map((found) => `${circuit.kit.id}: ${found}`));
    }
  }
  return errors;
}
