/** The steps of the soldering in words: what the plan (`soldering/plan.ts`) places in each, as a customer reads it. */
import { type Circuit, endAt, type LugId, lugIdOf } from '../circuit/circuit.ts';
import { must, nth } from '../common/must.ts';
import { findPart, type Joint, type JointKind, labelOf } from '../describe/kit.ts';
import { figuresIn } from '../messages/figures.ts';
import type { Language } from '../messages/language.ts';
import { keyOf, type Say, sayIn } from '../messages/say.ts';
import { colourName } from '../messages/words.ts';
import { separateCoils } from '../parts/coils.ts';
import { componentOf, isPickup, type Part } from '../parts/index.ts';
import { componentsOf, legEnd, unsolderedEnds } from '../soldering/ends.ts';
import { type Heat, type Plan, type PlannedStep, planOf, solderedIn } from '../soldering/plan.ts';
import { endName, rowOf } from './step-words.ts';

/** Where a joint ends. */
interface StepEnd {
  readonly lug: LugId;
  /** As a customer reads it: `Volume lug 1`; of a component its label alone, as its legs are alike. */
  readonly name: string;
  /**
   * Whether the joint is soldered to the lug in this step, or only hooked through it and soldered in a later one; `none` where there is
   * nothing to solder: where a component leg leaves its body, a lead its pickup, at a lug that is bent, and at the free end of a wire to a ground point.
   */
  readonly soldered: 'now' | 'none' | { readonly later: number };
}

interface StepJoint {
  /** Into the circuit's joints. */
  readonly index: number;
  readonly kind: JointKind;
  readonly from: StepEnd;
  readonly to: StepEnd;
  /** IEC 60757 code of the insulation, when given. */
  readonly colour?: string;
  /** Cut length in metres, when given. */
  readonly length?: number;
  /** The component whose leg it is, by its name in the kit. */
  readonly component?: string;
  /** The leg is sleeved. */
  readonly sleeved: boolean;
  /** What to do. */
  readonly line: string;
}

/** A lug that is soldered in a step, with all that is soldered to it then. */
interface StepHeat extends Heat {
  readonly name: string;
}

export interface Step {
  /** Counted from 1 without gaps, as the customer counts. */
  readonly number: number;
  readonly title: string;
  /** Indices into the circuit's joints, in the order written. */
  readonly joints: readonly number[];
  /** What to do, a line a joint. */
  readonly lines: readonly string[];
  /** The same joints with what each is. */
  readonly details: readonly StepJoint[];
  readonly heats: readonly StepHeat[];
  /** Sentences: why a lug is heated here though it is heated in another step too, and why a pad waits; often none. */
  readonly notes: readonly string[];
}

interface Speaking {
  readonly circuit: Circuit;
  readonly plan: Plan;
  readonly say: Say;
  readonly language: Language;
}

/** The steps of a kit; every joint is in just one of them. */
export function stepsOf(circuit: Circuit, language: Language = circuit.kit.language): readonly Step[] {
  const plan = planOf(circuit);
  const speaking = { circuit, plan, say: sayIn(language), language };
  return plan.steps.map((step): Step => {
    const details = detailsOf(speaking, step);
    return {
      number: step.number,
      title: titleOf(speaking, step),
      joints: step.joints,
      lines: details.map(({ line }) => line),
      details,
      heats: step.heats.map((heat) => ({ ...heat, name: endName(circuit, language, endAt(heat.lug)) })),
      notes: notesOf(speaking, step),
    };
  });
}

function titleOf({ circuit, say }: Speaking, { stage, joints, share }: PlannedStep): string {
  const has = (kind: JointKind) => joints.some((i) => nth(circuit.joints, i).kind === kind);
  const what = has('bend') ? (has('jumper') ? 'both' : 'bends') : 'jumpers';
  const key = must(keyOf('step-title', stage ?? 'other'), 'title of a stage');
  const title = say(key, { what });
  return share ? say('steps.share', { title, ...share }) : title;
}

function detailsOf(speaking: Speaking, step: PlannedStep): readonly StepJoint[] {
  const { circuit, plan, language } = speaking;
  // Lugs at which this step solders what was hooked before; said with the first joint that comes there.
  const gathered = new Set(
    step.heats
      .filter(({ joints }) => joints.some((i) => nth(plan.placed, i) < step.number))
      .map(({ lug }) => lug),
  );
  return step.joints.map((index): StepJoint => {
    const joint = nth(circuit.joints, index);
    const own = unsolderedEnds(circuit.kit, joint);
    const endOf = (which: 'from' | 'to'): StepEnd => {
      const lug = lugIdOf(joint[which]);
      const when = own[which] === undefined ? solderedIn(plan, index, lug) : undefined;
      const soldered = when === undefined ? 'none' : when > step.number ? { later: when } : 'now';
      return { lug, name: endName(circuit, language, joint[which]), soldered };
    };
    const [from, to] = [endOf('from'), endOf('to')];
    const { kind, colour, length } = joint;
    const leg = legEnd(circuit.kit, joint);
    const component = leg && joint[leg].part;
    const gathers = [from, to].filter(({ lug, soldered }) => soldered === 'now' && gathered.delete(lug));
    return {
      index,
      kind,
      from,
      to,
      ...(colour === undefined ? {} : { colour }),
      ...(length === undefined ? {} : { length }),
      ...(component === undefined ? {} : { component }),
      sleeved: isSleeved(circuit, joint),
      line: lineOf(speaking, joint, [from, to], gathers),
    };
  });
}

const isSleeved = ({ kit }: Circuit, joint: Joint): boolean =>
  componentsOf({ kit }, joint).some((name) =>
    [joint.from, joint.to].some(
      ({ part, lug }) =>
        part === name && componentOf(must(findPart(kit, name), name))?.sleeved.includes(lug) === true,
    ),
  );

function lineOf(
  speaking: Speaking,
  joint: Joint,
  [from, to]: readonly [StepEnd, StepEnd],
  gathers: readonly StepEnd[],
): string {
  const { circuit, say } = speaking;
  const cut = cutOf(speaking, joint);
  const ends = unsolderedEnds(circuit.kit, joint);
  // A leg and a lead are told of from the part that they belong to.
  const [own, other] = ends.to === 'leg' || ends.to === 'lead' ? [to, from] : [from, to];
  const what = joint.kind === 'wire' && Object.values(ends).includes('lead') ? 'lead' : joint.kind;
  const whole =
    joint.kind === 'leg'
      ? say('steps.leg', { component: own.name, cut, to: other.name })
      : joint.kind === 'bend'
        ? say('steps.bend', { from: own.name, to: other.name })
        : say(must(keyOf('step-joint', what), what), { cut, from: own.name, to: other.name });
  const plain = (['from', 'to'] as const).reduce(
    (line, end) =>
      ends[end] === 'free' ? say('steps.free', { line, point: (end === 'from' ? from : to).name }) : line,
    whole,
  );
  const solderable = [from, to].filter(({ soldered }) => soldered !== 'none');
  const hooked = solderable.reduce(
    (line, { name, soldered }) =>
      typeof soldered === 'object'
        ? say('steps.hook', {
            line,
            end: name,
            ends: joint.kind === 'leg' ? 'one' : 'two',
            step: soldered.later,
          })
        : line,
    plain,
  );
  return gathers.reduce((line, { name }) => say('steps.gather', { line, end: name }), hooked);
}

/** What is cut or picked up, in brackets: ` (orange, 110 mm)`; empty where nothing is said of it. */
function cutOf(speaking: Speaking, joint: Joint): string {
  const { circuit, say } = speaking;
  const { kind, colour, length } = joint;
  const components = componentsOf(circuit, joint).map((name) => must(findPart(circuit.kit, name), name));
  const facts = [
    ...components.flatMap((part) => markOf(speaking, part)),
    ...(kind === 'leg' && isSleeved(circuit, joint) ? [say('steps.sleeved')] : []),
    ...(colour === undefined ? [] : [colourName(speaking.language, colour)]),
    ...(length === undefined ? [] : [figuresIn(speaking.language).of(`${Math.round(length * 1000)} mm`)]),
  ];
  return facts.length === 0 ? '' : ` (${facts.join(', ')})`;
}

/** What the component is, so that the right one is picked up: its value, and its bands or code. */
function markOf(speaking: Speaking, part: Part): readonly string[] {
  const facts = componentOf(part);
  if (!facts) return [];
  const { value, bands, print } = facts;
  return [
    figuresIn(speaking.language).of(value),
    ...(bands ? [bands.map((band) => colourName(speaking.language, band)).join(' ')] : []),
    ...(print === undefined ? [] : [speaking.say('steps.marked', { print })]),
  ];
}

function notesOf(speaking: Speaking, step: PlannedStep): readonly string[] {
  const { circuit, plan, say, language } = speaking;
  const named = (lugs: readonly LugId[]) => rowOf(lugs.map((lug) => endName(circuit, language, endAt(lug))));
  const heatedBefore = (lug: LugId) =>
    plan.steps.some(({ number, heats }) => number < step.number && heats.some((heat) => heat.lug === lug));
  const surfaces = step.heats.filter(({ lug, why }) => why === 'surface' && heatedBefore(lug));
  const early = step.heats.filter(({ lug, why }) => why === 'test' && !heatedBefore(lug));
  const waiting = step.joints.flatMap((index) => {
    const joint = nth(circuit.joints, index);
    const waits = nth(plan.made, index) > step.number && nth(plan.made, index) >= (plan.pickups ?? Infinity);
    return waits ? componentsOf(circuit, joint).map((name) => labelOf(circuit.kit, name)) : [];
  });
  const ends = step.joints.flatMap((index) => {
    const joint = nth(circuit.joints, index);
    const own = unsolderedEnds(circuit.kit, joint);
    return (['from', 'to'] as const).map((end) => ({ lug: lugIdOf(joint[end]), why: own[end] }));
  });
  const braided = step.joints.some((index) => {
    const joint = nth(circuit.joints, index);
    return joint.kind === 'braid' && Object.values(unsolderedEnds(circuit.kit, joint)).includes('lead');
  });
  const cabled =
    plan.pickups === step.number &&
    circuit.kit.parts.some((part) => isPickup(part) && separateCoils(part).length > 0);
  const free = ends.flatMap(({ lug, why }) => (why === 'free' ? [lug] : []));
  const atLeads = step.heats.flatMap(({ lug }) =>
    isPickup(must(findPart(circuit.kit, endAt(lug).part), lug)) ? [lug] : [],
  );
  return [
    ...(free.length === 0 ? [] : [say('steps.why-free', { points: named(free) })]),
    ...(ends.some(({ why }) => why === 'lead') ? [say('steps.why-leads')] : []),
    ...(cabled ? [say('steps.why-cable')] : []),
    ...(braided ? [say('steps.why-braid')] : []),
    ...(atLeads.length === 0 ? [] : [say('steps.at-leads', { ends: named(atLeads) })]),
    ...(waiting.length === 0 ? [] : [say('steps.why-waits', { components: rowOf([...new Set(waiting)]) })]),
    ...early.map(({ lug }) => say('steps.why-test', { end: named([lug]), step: lastHeat(plan, lug) })),
    ...(surfaces.length === 0
      ? []
      : [say('steps.why-surface', { ends: named(surfaces.map(({ lug }) => lug)) })]),
  ];
}

const lastHeat = ({ steps }: Plan, lug: LugId): number =>
  Math.max(...steps.flatMap(({ number, heats }) => (heats.some((heat) => heat.lug === lug) ? [number] : [])));
