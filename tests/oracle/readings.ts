/** Readings of a multimeter on a harness that is not finished, asked of ngspice. */
import { rolesOf, rotationsAt } from '../../src/analyse/controls.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { type Check, direct, wrong } from './compare.ts';
import { ownNetlist } from './own-netlist.ts';
import { runSpice } from './spice.ts';

const LIMIT = 1e-6;

/** Where the probes are held, and how switches and volume controls stand. */
interface Asked {
  readonly from: string;
  readonly to: string;
  readonly state: number;
  readonly volume: 10 | 0;
}

/** What ngspice is asked for one reading, on a harness whose joints and values are those of the circuit given. */
export function check(what: string, whole: Circuit, harness: Circuit, reading: Asked, ohms: number): Check {
  const { state, volume, from, to } = reading;
  const found = whole.states[state];
  if (!found) throw new Error(`no state ${state}`);
  const own = ownNetlist(harness, found, rotationsAt(rolesOf(whole), { volume, tone: 10 }));
  return direct(`${what}, ${from} to ${to}`, own.lines, { from: own.node(from), to: own.node(to) }, ohms);
}

/** The harness with the values of another kit that is the same but for them. */
export const withValues = (harness: Circuit, kit: Circuit['kit']): Circuit => ({
  ...harness,
  kit: { ...kit, joints: harness.kit.joints },
});

export async function failures(checks: readonly Check[]): Promise<readonly string[]> {
  const found: string[] = [];
  for (let i = 0; i < checks.length; i += 100) {
    const batch = checks.slice(i, i + 100);
    const jobs = batch.map(({ job }) => job);
    found.push(...wrong(batch, await runSpice(jobs, 'lin 1 1000 1000'), LIMIT));
  }
  return found;
}
