/** Where the joints on one metal case go, by the numbers that they have in the steps. */
import type { Step } from '../annotate/steps.ts';
import { lugId } from '../circuit/circuit.ts';
import type { Prepared } from '../draw/compose.ts';
import { type CaseJoint, hasRoundCase } from '../draw/leaflet/case-figure.ts';
import type { Say } from '../messages/say.ts';
import { lugsWith, type Part } from '../parts/index.ts';
import type { Block, Shown } from './document.ts';
import type { Pictures } from './pictures.ts';

/** Fewer joints find room on a case anywhere. Common practice, no source. */
const FEWEST = 4;

/** A picture for each case with several joints; nothing for a kit without one. */
export function casePlans(
  { circuit }: Prepared,
  steps: readonly Step[],
  pictures: Pictures,
  say: Say,
): readonly Block[] {
  const plans = circuit.kit.parts.flatMap((part): readonly Shown[] => {
    const joints = jointsOn(part, steps);
    const [first] = joints;
    if (!first || joints.length < FEWEST || !hasRoundCase(part)) return [];
    const words = say('leaflet.case-plan', { part: part.label, ...first });
    const picture = pictures.caseOf(part, joints);
    return [{ picture, share: pictures.probeShare, blocks: [{ is: 'paragraph', text: words }] }];
  });
  const [only, ...others] = plans;
  if (!only) return [];
  return others.length === 0 ? [{ is: 'beside', ...only }] : [{ is: 'pairs', items: plans }];
}

interface Numbered extends CaseJoint {
  readonly step: number;
  /** Among the connections of its step. */
  readonly number: number;
}

/** The joints that are soldered to a part's case, in their order. */
function jointsOn(part: Part, steps: readonly Step[]): readonly Numbered[] {
  const cases = lugsWith(part, 'case').map((lug) => lugId(part.name, lug));
  return steps.flatMap(({ number: step, heats, details }) =>
    heats
      .filter(({ lug }) => cases.includes(lug))
      .flatMap(({ joints }) => joints)
      .map((joint) => ({ joint, number: details.findIndex(({ index }) => index === joint) + 1 }))
      .sort((a, b) => a.number - b.number)
      .map((one) => ({ ...one, step, name: `${step}.${one.number}` })),
  );
}
