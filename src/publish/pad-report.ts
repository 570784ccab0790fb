/** The padding choice as a text that a workshop owner reads: one verdict a pickup, then its grounds and its price. */
import type { Alternative, Effect, Match, Option, PadAdvice, PadPlan } from '../analyse/index.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { positionCell, positionWords } from '../circuit/position.ts';
import { resistorBands } from '../common/marking.ts';
import type { Choice } from '../common/series.ts';
import { resistorOf } from '../parts/index.ts';
import { columns, ohmsText, percentText } from './columns.ts';

type Advised<K extends PadAdvice['kind']> = Extract<PadAdvice, { readonly kind: K }>;

const LOAD: Readonly<Record<Match, string>> = { dc: 'DC load', signal: 'signal load' };

/** @param other the same choice with the other load matched, so that the price of each can be seen */
export function padReport(circuit: Circuit, plan: PadPlan, other: PadPlan): string {
  const head = `${circuit.kit.title}\nPadding resistors for the ${LOAD[plan.match]}, from ${choiceText(plan.series)}. Loads are solved with all controls on 10.`;
  const width = Math.max(...plan.advice.map(({ pickup }) => pickup.length));
  const each = plan.advice.map((advice) => {
    const rest = detailsOf(circuit, plan, other, advice);
    return [`${advice.pickup.padEnd(width)}  ${verdictOf(circuit, plan.match, advice)}`, ...rest].join('\n');
  });
  const chosen = plan.advice.filter((advice) => advice.kind === 'pad' && !advice.present);
  const together =
    chosen.length < 2
      ? []
      : [`All padding resistors together\n${effectTable(inOrder(plan.effects), plan.match)}`];
  return [head, ...each, ...together].join('\n\n');
}

/** `E12`, or the stock value by value. */
const choiceText = (choice: Choice): string =>
  typeof choice === 'string' ? choice : `the stock (${choice.stock.map(ohmsText).join(', ')})`;

const stateOf = (circuit: Circuit, index: number): string =>
  positionWords(circuit.states[index]?.settings ?? {});

/** ` with selector in position 2`; nothing for a kit without a switch. */
const inState = ({ states }: Circuit, index: number): string => {
  const settings = states[index]?.settings ?? {};
  return Object.keys(settings).length === 0 ? '' : ` with ${positionWords(settings)}`;
};

/** What to do about one pickup, on one line. */
function verdictOf(circuit: Circuit, match: Match, advice: PadAdvice): string {
  if (advice.kind === 'silent') return 'never selected: no resistor to choose';
  const off = percentText(advice.percent);
  const sees = `${ohmsText(advice.load)}${inState(circuit, advice.state)}, reference ${ohmsText(advice.reference)}, ${off}`;
  switch (advice.kind) {
    case 'fits':
      return `fits: ${LOAD[match]} ${sees}${match === 'dc' ? '; --match signal judges it with the tone path' : ''}`;
    case 'pad':
      return padVerdict(circuit, advice);
    case 'too-heavy':
      return `no resistor helps, its load is already too heavy: ${sees}; a resistor to ground would make it heavier`;
    case 'no-stock': {
      const { ohms, load, percent } = advice.nearest;
      return `no available value helps: ${ohmsText(ohms)} would give ${ohmsText(load)} (${percentText(percent)}); now ${sees}; ideal ${ohmsText(advice.ideal)}`;
    }
    case 'needless':
      return `remove ${advice.pads.join(' and ')}: without it ${ohmsText(advice.without)}, with it ${sees}`;
    case 'shares':
      return `shares ${advice.pads.join(' and ')} with ${advice.owner}, to which it is connected in every position: ${sees}; one resistor cannot suit both`;
    case 'out-of-reach':
      return `no resistor to ground helps, its other lead is not at ground: ${sees}`;
  }
}

function padVerdict(circuit: Circuit, advice: Advised<'pad'>): string {
  const { chosen, part, replaces, present, from, to } = advice;
  const value = ohmsText(chosen.ohms);
  const result = `${ohmsText(chosen.load)}, ${percentText(chosen.percent)}`;
  if (present) return `keep ${part}, ${value}, the nearest available: ${result}`;
  const body = bodyOf(circuit, part);
  const [, ...others] = replaces;
  const out = others.length === 0 ? '' : `, remove ${others.join(' and ')}`;
  return body
    ? `change ${part} from ${ohmsText(body.ohms.value)} to ${value}${out}: ${result}`
    : `fit ${value} from ${from} to ${to}: ${result} in place of ${ohmsText(advice.load)}, ${percentText(advice.percent)}`;
}

function detailsOf(circuit: Circuit, plan: PadPlan, other: PadPlan, advice: PadAdvice): readonly string[] {
  switch (advice.kind) {
    case 'pad':
      return padDetails(circuit, plan, other, advice);
    case 'too-heavy': {
      const causes = advice.causes.map(({ part, without }) => [part, ohmsText(without)]);
      return [
        `\n${columns(['loaded by', `${LOAD[plan.match]} without it`], causes, 1, '  ')}`,
        ...instead(circuit, plan.match, advice.alternatives),
      ];
    }
    default:
      return [];
  }
}

function padDetails(
  circuit: Circuit,
  plan: PadPlan,
  other: PadPlan,
  advice: Advised<'pad'>,
): readonly string[] {
  const { pickup, state, chosen } = advice;
  const lines = [
    ['judged', judgedText(circuit, plan.match, advice)],
    ['resistor', resistorText(circuit, advice)],
    ['from, to', `${advice.from}, ${advice.to}`],
    ['ideal value', ohmsText(advice.ideal)],
    ['both loads', bothLoads(chosen, state, pickup)],
    [`${LOAD[other.match]}`, otherText(other, pickup)],
  ];
  return [
    ...lines.map(([name = '', text]) => `  ${name.padEnd(12)}  ${text}`),
    `\n${neighbours(plan.match, advice)}`,
    `\n  What ${ohmsText(chosen.ohms)} does in every other position, shared positions first\n${effectTable(elsewhereFirst(chosen.effects, state, pickup), plan.match)}`,
    ...instead(circuit, plan.match, advice.alternatives, advice.replaces),
    ...poleLine(circuit, advice),
  ];
}

function judgedText(circuit: Circuit, match: Match, { state, pickup, reference }: Advised<'pad'>): string {
  const others = (circuit.states[state]?.sounding ?? []).filter((name) => name !== pickup);
  const with_ = others.length === 0 ? 'where it sounds alone' : `where it sounds with ${others.join(', ')}`;
  return `${inState(circuit, state).trimStart()}${inState(circuit, state) === '' ? '' : ', '}${with_}; reference ${LOAD[match]} ${ohmsText(reference)}`;
}

/** The resistance of a part of that name, where it is there. */
function bodyOf({ kit }: Circuit, name: string) {
  const part = kit.parts.find((one) => one.name === name);
  return part && resistorOf(part);
}

function resistorText(circuit: Circuit, { part, chosen }: Advised<'pad'>): string {
  // A new one is an ordinary resistor of 5 % (common practice, no source).
  const tolerance = bodyOf(circuit, part)?.tolerance.value ?? 0.05;
  const bands = resistorBands(chosen.ohms, tolerance).join(' ');
  return `${ohmsText(chosen.ohms)}, bands ${bands} for ±${Number((tolerance * 100).toPrecision(3))} % (IEC 60062), part ${part}`;
}

function bothLoads({ effects }: Option, state: number, pickup: string): string {
  const own = effects.find((effect) => effect.index === state && effect.pickup === pickup);
  if (!own) return 'not known';
  const one = (load: number, reference: number) =>
    `${ohmsText(load)} of ${ohmsText(reference)} (${percentText((load / reference - 1) * 100)})`;
  return `DC ${one(own.after.dcLoad, own.reference.dcLoad)}; signal ${one(own.after.signalLoad, own.reference.signalLoad)}`;
}

/** What matching the other load would take. */
function otherText(other: PadPlan, pickup: string): string {
  const advice = other.advice.find((one) => one.pickup === pickup);
  switch (advice?.kind) {
    case 'pad':
      return `to match it instead (--match ${other.match}), ${ohmsText(advice.chosen.ohms)}: ${bothLoads(advice.chosen, advice.state, pickup)}`;
    case 'fits':
      return `meets its reference as it is: ${ohmsText(advice.load)} of ${ohmsText(advice.reference)} (${percentText(advice.percent)})`;
    case 'too-heavy':
      return `is too heavy already: ${ohmsText(advice.load)} of ${ohmsText(advice.reference)} (${percentText(advice.percent)})`;
    default:
      return 'no pad of these values can match it';
  }
}

function neighbours(match: Match, { below, chosen, above }: Advised<'pad'>): string {
  const row = (option: Option | undefined, which: string) =>
    option ? [[ohmsText(option.ohms), which, ohmsText(option.load), percentText(option.percent)]] : [];
  const rows = [...row(below, 'next below'), ...row(chosen, 'chosen'), ...row(above, 'next above')];
  const none = [below ? '' : 'smaller', above ? '' : 'larger'].filter((word) => word !== '');
  const note = none.length === 0 ? '' : `\n  none ${none.join(' and none ')} in stock`;
  return columns(['available', '', LOAD[match], 'off by'], rows, 2, '  ') + note;
}

const shared = (effect: Effect): boolean => effect.state.sounding.length > 1;
const inOrder = (effects: readonly Effect[]): readonly Effect[] => [
  ...effects.filter(shared),
  ...effects.filter((effect) => !shared(effect)),
];
const elsewhereFirst = (effects: readonly Effect[], state: number, pickup: string): readonly Effect[] =>
  inOrder(effects.filter((effect) => effect.index !== state || effect.pickup !== pickup));

function effectTable(effects: readonly Effect[], match: Match, indent = '  '): string {
  const key = match === 'dc' ? 'dcLoad' : 'signalLoad';
  const change = (before: number, after: number) =>
    ohmsText(before) === ohmsText(after) ? ohmsText(after) : `${ohmsText(before)} → ${ohmsText(after)}`;
  const rows = effects.map((effect) => [
    positionCell(effect.state.settings),
    effect.pickup,
    change(effect.before.dcLoad, effect.after.dcLoad),
    change(effect.before.signalLoad, effect.after.signalLoad),
    ohmsText(effect.reference[key]),
    percentText(effect.percent),
  ]);
  const heads = [
    'position',
    'pickup',
    'DC load',
    'signal load',
    `${match === 'dc' ? 'DC' : 'signal'} reference`,
    'off by',
  ];
  return rows.length === 0 ? `${indent}none` : columns(heads, rows, 2, indent);
}

/**
 * The other ways, each with its figures in every state.
 *
 * @param gone pads the pickup has now, which the other ways do without
 */
function instead(
  circuit: Circuit,
  match: Match,
  alternatives: readonly Alternative[],
  gone: readonly string[] = [],
): readonly string[] {
  const without = gone.length === 0 ? '' : ` (without ${gone.join(', ')} before and after)`;
  return alternatives.map(
    (one) =>
      `\n  Instead: ${alternativeText(circuit, one)}${without}\n${effectTable(inOrder(one.effects), match, '    ')}`,
  );
}

/** Why no pad on a spare pole is offered, in a kit that has a switch. */
function poleLine(circuit: Circuit, { alternatives, state }: Advised<'pad'>): readonly string[] {
  if (alternatives.some((one) => one.kind === 'spare-pole')) return [];
  const settings = circuit.states[state]?.settings ?? {};
  if (Object.keys(settings).length === 0) return [];
  return [
    `\n  No switch pole is free with ${positionWords(settings)}, so this resistor is in circuit in every position of its lug.`,
  ];
}

function alternativeText(circuit: Circuit, alternative: Alternative): string {
  switch (alternative.kind) {
    case 'elsewhere': {
      const { ohms, from, to } = alternative.pad;
      return `${ohmsText(ohms)} from ${from} to ${to}, in circuit in every position`;
    }
    case 'spare-pole': {
      const { pad, states } = alternative;
      const wires = (pad.wires ?? []).map(([from, to]) => `a wire from ${from} to ${to}`).join(', ');
      const where = states.map((index) => stateOf(circuit, index)).join('; ');
      return `on a free pole, ${wires}, ${ohmsText(pad.ohms)} from ${pad.from} to ${pad.to}: in circuit with ${where} only`;
    }
    case 'pots': {
      const pots = Object.entries(alternative.pots).map(([name, ohms]) => `${name} ${ohmsText(ohms)}`);
      return `other pots and no pad: ${pots.join(', ')}`;
    }
  }
}
