/** Kits placed with the shortest of searches, and their steps with a mixture of ends: soldered, hooked, a component's own. */
import { stepsOf } from '../../../src/annotate/steps.ts';
import type { Circuit } from '../../../src/circuit/circuit.ts';
import type { Kit } from '../../../src/describe/kit.ts';
import type { Prepared } from '../../../src/draw/compose.ts';
import type { FigureStep, Soldered } from '../../../src/draw/leaflet/step.ts';
import { circuitFile, circuitNameIn } from '../../../src/files/circuits.ts';
import { findArrangement } from '../../../src/files/layouts.ts';
import { loadKit } from '../../../src/files/load.ts';
import { componentOf, is } from '../../../src/parts/index.ts';
import { prepare } from '../../../src/pipeline.ts';
import { placedOnce } from '../../tools/placements.ts';
import { sample } from '../../truth/draw.ts';

const made = new Map<string, Promise<Prepared>>();

export function placed(name: string): Promise<Prepared> {
  const known = made.get(name);
  if (known) return known;
  const now = placedAnew(name);
  made.set(name, now);
  return now;
}

/** @param name of a sample, or `circuit/NAME` */
async function placedAnew(name: string): Promise<Prepared> {
  const circuit = circuitNameIn(name);
  const kit = circuit === undefined ? sample(name) : (await loadKit(circuitFile(circuit))).kit;
  if (!kit) throw new Error(name);
  return placedKit(kit);
}

/** Any kit, placed with the shortest of searches. */
export function placedKit(kit: Kit): Promise<Prepared> {
  const arrangement = findArrangement(kit.arrangement);
  if (typeof arrangement === 'string') throw new Error(arrangement);
  return prepare(kit, arrangement, { effort: { steps: 0, seed: 1 }, ...placedOnce });
}

/** The joints of the kit's steps; every fifth end that wants solder is hooked until the last step. */
export function figureSteps(circuit: Circuit): readonly FigureStep[] {
  const steps = stepsOf(circuit);
  const last = steps.length;
  return steps.map(({ number, joints }) => ({
    number,
    details: joints.map((index) => {
      const { kind, from, to } = circuit.joints[index] ?? {};
      const end = (lug: typeof from, k: number): { readonly soldered: Soldered } => {
        const part = circuit.kit.parts.find((one) => one.name === lug?.part);
        if (kind === 'leg' && part && componentOf(part)) return { soldered: 'none' };
        // On the instrument: this end stays free on the bench.
        if (part && is(part, 'ground-point')) return { soldered: 'none' };
        return { soldered: (index * 2 + k) % 5 === 0 && number < last ? { later: last } : 'now' };
      };
      return { index, from: end(from, 0), to: end(to, 1) };
    }),
  }));
}
