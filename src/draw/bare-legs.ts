/**
 * Bare legs and jumpers that cross in a drawing: soldered as they are drawn they touch, and short what they carry. That hangs on where the
 * parts stand, so it is known of a placement and not of a kit.
 */

import { linesOf } from '../annotate/lines.ts';
import { type Circuit, lugIdOf, netAt } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { type Problem, problem } from '../common/problem.ts';
import { quote } from '../common/quoting.ts';
import { findPart, type Joint, labelOf } from '../describe/kit.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { lugInSentence, lugWords } from '../messages/words.ts';
import { componentOf } from '../parts/index.ts';
import { crossingsIn } from '../place/openings.ts';
import type { Placement } from '../place/placement.ts';

/** A leg to sleeve or a jumper to insulate, by its joint, and the bare leg or jumper that it crosses. */
export interface BareLeg {
  readonly leg: number;
  readonly across: number;
}

/** Legs and, where two jumpers cross, jumpers that together, covered, leave no two bare ones of different nets crossing. */
export function bareLegs(circuit: Circuit, { wires }: Placement): readonly BareLeg[] {
  const lines = linesOf(circuit);
  const look = (joint: number): string => nth(lines, joint).look;
  const net = (joint: number): number => netAt(circuit, lugIdOf(nth(circuit.joints, joint).from)).index;
  const found: BareLeg[] = [];
  // In the kit's order, whatever order the lines are drawn in.
  const pairs = crossingsIn(wires)
    .map(({ wires: [one, other] }) => [Math.min(one, other), Math.max(one, other)] as const)
    .sort(([a, b], [c, d]) => a - c || b - d);
  for (const [a, b] of pairs) {
    // A leg is sleeved in any case; of two jumpers the later one.
    const leg = [a, b].find((one) => look(one) === 'leg') ?? b;
    const bare = [a, b].every((one) => look(one) === 'leg' || look(one) === 'jumper');
    // On one net it does not matter whether they touch.
    if (!bare || net(a) === net(b)) continue;
    if (found.some((one) => one.leg === a || one.leg === b)) continue;
    found.push({ leg, across: leg === a ? b : a });
  }
  return found;
}

/** The end of a leg at its own component, and its other end. */
function endsOf({ kit, joints }: Circuit, index: number): readonly [Joint['from'], Joint['from']] {
  const { from, to } = nth(joints, index);
  const part = findPart(kit, from.part);
  return part && componentOf(part) ? [from, to] : [to, from];
}

function acrossText(
  circuit: Circuit,
  { leg, across }: BareLeg,
  name: (part: string) => string,
  language: Language,
): string {
  const [[own], [other]] = [endsOf(circuit, leg), endsOf(circuit, across)];
  const jumper = nth(circuit.joints, across).kind === 'jumper';
  return sayIn(language)('bare.across', {
    what: jumper ? 'jumper' : own.part === other.part ? 'own' : 'other',
    part: name(other.part),
  });
}

/** The sentence of a drawing that says so. */
export function bareLegText(circuit: Circuit, one: BareLeg): string {
  const { language } = circuit.kit;
  const say = sayIn(language);
  const name = (part: string): string => labelOf(circuit.kit, part);
  const across = acrossText(circuit, one, name, language);
  const { kind, from, to: far } = nth(circuit.joints, one.leg);
  if (kind === 'jumper')
    return say('bare.insulate', {
      from: lugWords(language, from.lug),
      to: lugWords(language, far.lug),
      part: name(from.part),
      across,
    });
  const [own, other] = endsOf(circuit, one.leg);
  const lug = lugInSentence(language, other.lug);
  const part = findPart(circuit.kit, other.part);
  const to = part && componentOf(part) ? name(other.part) : `${name(other.part)} ${lug}`;
  return say('bare.sleeve', { part: name(own.part), to, across });
}

/** The same as notes on the kit. */
export const bareLegNotes = (circuit: Circuit, placement: Placement): readonly Problem[] =>
  bareLegs(circuit, placement).map((one) => {
    const path = ['joints', nth(circuit.joints, one.leg).index];
    if (nth(circuit.joints, one.leg).kind === 'jumper')
      return problem('bare-jumpers-cross', path, {
        jumper: jointWords(circuit, one.leg),
        across: jointWords(circuit, one.across),
      });
    const [own] = endsOf(circuit, one.leg);
    const part = findPart(circuit.kit, own.part);
    const sleeved = (part && componentOf(part)?.sleeved) ?? [];
    return problem('bare-legs-cross', path, {
      part: own.part,
      across: acrossText(circuit, one, quote, DEFAULT_LANGUAGE),
      sleeving: sleeved.length > 0 ? 'both' : own.lug,
    });
  });

/** A joint as a kit writes it. */
function jointWords(circuit: Circuit, index: number): string {
  const { from, to } = nth(circuit.joints, index);
  return `${lugIdOf(from)} > ${lugIdOf(to)}`;
}
