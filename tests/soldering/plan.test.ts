/** The plan of the soldering, followed at a bench of the tests' own; its rules are common practice, no source. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/annotate/steps.ts';
import { type Circuit, lugIdOf } from '../../src/circuit/circuit.ts';
import { loadKit } from '../../src/files/load.ts';
import { MOST, planOf } from '../../src/soldering/plan.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { directResistance } from '../../src/solve/measure.ts';
import { makeNetlist } from '../../src/solve/netlist.ts';
import { kits } from '../random/some.ts';
import { describedNets, follow, isLead, isSurface } from './bench.ts';

const files = ['samples', 'samples/circuits'].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => `${folder}/${name}`),
);

async function circuitOf(file: string): Promise<Circuit> {
  const { kit } = await loadKit(file);
  if (!kit) throw new Error(`${file} is not a kit`);
  return buildCircuit(kit);
}

/** What is wrong with a plan, in words. */
function wrongs(circuit: Circuit): readonly string[] {
  const { faults, heats, placed, nets } = follow(circuit);
  const steps = stepsOf(circuit);
  const found = [...faults];
  if (placed.some((step) => step === 0)) found.push('a joint is in no step');
  if (JSON.stringify(nets) !== JSON.stringify(describedNets(circuit)))
    found.push('other nets than described');
  const excused = new Set(
    steps.flatMap((step) => step.heats.filter(({ why }) => why === 'test').map(({ lug }) => lug)),
  );
  const first = Math.min(
    ...circuit.joints.flatMap((joint, i) => (isLead(circuit, joint) ? [placed[i] ?? 0] : [])),
  );
  for (const [lug, when] of heats) {
    const joints = circuit.joints.flatMap((joint, i) =>
      joint.kind !== 'bend' && [joint.from, joint.to].some((end) => lugIdOf(end) === lug) ? [i] : [],
    );
    const most = isSurface(circuit, lug)
      ? new Set(
          circuit.joints.flatMap((joint, i) =>
            [joint.from, joint.to].some((end) => lugIdOf(end) === lug) ? [placed[i]] : [],
          ),
        ).size
      : excused.has(lug)
        ? 2
        : 1;
    if (when.length > most) found.push(`${lug} is heated in steps ${when}`);
    // Once before the pickups and once with them: where nothing comes with them, one of the two is a heating too many.
    if (excused.has(lug) && !joints.some((i) => (placed[i] ?? 0) >= first))
      found.push(`${lug} has no lead to wait for`);
    if (excused.has(lug) && reads(circuit, placed, excused, lug))
      found.push(`${lug} need not be soldered before the pickups`);
  }
  // Leads of pickups last, both legs of a component together.
  for (const [i, joint] of circuit.joints.entries())
    if (joint.kind !== 'leg' && !isLead(circuit, joint) && (placed[i] ?? 0) >= first && joint.kind !== 'bend')
      found.push(`joint ${i} comes after the first pickup`);
  for (const part of circuit.kit.parts) {
    const legs = circuit.joints.flatMap((joint, i) =>
      joint.kind === 'leg' && [joint.from, joint.to].some((end) => end.part === part.name) ? [placed[i]] : [],
    );
    if (['resistor', 'capacitor'].includes(part.kind) && new Set(legs).size > 1)
      found.push(`${part.name} is soldered in steps ${legs}`);
  }
  return found;
}

/**
 * Whether a meter at the jack, before the pickups, finds a way wherever it does with that lug soldered, when it is not. The solver
 * tells: what it makes of a network is compared with ngspice's in `tests/oracle`.
 */
function reads(
  circuit: Circuit,
  placed: readonly number[],
  early: ReadonlySet<string>,
  lug: string,
): boolean {
  const first = Math.min(
    ...circuit.joints.flatMap((joint, i) => (isLead(circuit, joint) ? [placed[i] ?? 0] : [])),
  );
  const lugsOf = (joint: (typeof circuit.joints)[number]) => [joint.from, joint.to].map(lugIdOf);
  const waits = new Set(
    circuit.joints.flatMap((joint, i) => ((placed[i] ?? 0) >= first ? lugsOf(joint) : [])),
  );
  const finds = (soldered: ReadonlySet<string>): readonly boolean[] => {
    const joints = circuit.joints.filter(
      (joint, i) =>
        (placed[i] ?? 0) < first &&
        lugsOf(joint).every((one) => !waits.has(one) || isSurface(circuit, one) || soldered.has(one)),
    );
    const kit = { ...circuit.kit, joints };
    return circuit.states.flatMap((state) => {
      const { branches, outputs } = makeNetlist({ ...circuit, kit, joints }, state);
      return outputs.map((port) => Number.isFinite(directResistance(branches, port)));
    });
  };
  const [all, less] = [finds(early), finds(new Set([...early].filter((one) => one !== lug)))];
  return all.every((is, i) => is === less[i]);
}

it.each(files)('%s: each joint once, each lug heated once, the nets as described', async (file) => {
  const circuit = await circuitOf(file);
  expect(wrongs(circuit)).toEqual([]);
  expect(circuit.joints.length).toBeGreaterThan(4);
});

it('random kits as well', () => {
  expect(kits.length).toBeGreaterThan(60);
  expect(
    kits.flatMap(({ seed, kit }) => wrongs(buildCircuit(kit)).map((one) => `seed ${seed}: ${one}`)),
  ).toEqual([]);
});

describe('the size of steps', () => {
  it.each(files)('%s: seven joints or fewer, unless they share lugs', async (file) => {
    const circuit = await circuitOf(file);
    for (const { joints } of planOf(circuit).steps) {
      if (joints.length <= MOST) continue;
      // One piece: from every joint to every other by way of lugs and components.
      const names = joints.map((i) => {
        const joint = circuit.joints[i];
        return new Set(
          [joint?.from, joint?.to].flatMap((end) =>
            end === undefined ? [] : [lugIdOf(end), ...(joint?.kind === 'leg' ? [end.part] : [])],
          ),
        );
      });
      const reached = new Set([0]);
      for (const k of reached)
        for (const [other, words] of names.entries())
          if ([...words].some((word) => names[k]?.has(word))) reached.add(other);
      expect(reached.size).toBe(joints.length);
    }
  });
});
