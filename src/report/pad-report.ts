/**
 * The padding choice as a text that a workshop owner reads: a verdict for each pickup, then what it costs. In short, or with every
 * table.
 */
import {
  type Alternative,
  differenceOf,
  type Effect,
  loadFor,
  type Match,
  type PadAdvice,
  type PadOption,
  type PadPlan,
} from '../analyse/index.ts';
import { substitutionLines } from '../annotate/stock-notes.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { positionCell } from '../circuit/position.ts';
import { resistorBands } from '../common/marking.ts';
import type { AvailableValues } from '../common/series.ts';
import type { Kit } from '../describe/kit.ts';
import { RESISTOR_TOLERANCE, resistorOf } from '../parts/index.ts';
import { columns, ohmsText, percentText } from './columns.ts';
import { type Advised, alternativeText, bodyOf, inState, LOAD, verdictOf, worseLines } from './pad-words.ts';
import { itemOfOhms, ohmsInStock } from './stock-data.ts';

interface Report {
  readonly circuit: Circuit;
  readonly plan: PadPlan;
  /** The same choice with the other load matched, so that the price of each can be seen. */
  readonly other: PadPlan;
  readonly all: boolean;
}

/** @param all every table; else what to do, in a screenful */
export function padReport(circuit: Circuit, plan: PadPlan, other: PadPlan, all = false): string {
  const head = `${circuit.kit.title}\nPadding resistors for the ${LOAD[plan.match]}, from ${choiceText(circuit.kit, plan.series)}. Loads are calculated with all controls on 10.`;
  const width = Math.max(...plan.advice.map(({ pickup }) => pickup.length));
  const each = plan.advice.map((advice) => {
    const [first, ...more] = [
      `${advice.pickup.padEnd(width)}  ${verdictOf(circuit, plan.match, advice)}`,
      ...warningsOf(circuit, plan.match, advice).map((line) => `${' '.repeat(width)}  ${line}`),
    ];
    return [first, ...more, ...detailsOf({ circuit, plan, other, all }, advice)].join('\n');
  });
  const fitted = plan.advice.some((advice) => advice.kind === 'pad' && !advice.present);
  const together = fitted
    ? [`With all these resistors fitted\n${effectTable(inOrder(plan.effects), plan.match)}`]
    : [];
  const missing = missingText(circuit, plan.series);
  const replaced = substitutionLines(circuit.kit);
  const hidden =
    !all && plan.advice.some((advice) => detailsOf({ circuit, plan, other, all: true }, advice).length > 0);
  return [
    head,
    ...(replaced.length === 0 ? [] : [replaced.join('\n')]),
    ...each,
    ...together,
    ...missing,
    ...(hidden ? ['For all values and positions, add --all.'] : []),
  ].join('\n\n');
}

/** `E12`, or the stock value by value. */
const choiceText = (kit: Kit, choice: AvailableValues): string =>
  typeof choice === 'string'
    ? choice
    : // What has commas of its own is parted by semicolons.
      `the stock (${choice.stock.map((ohms) => ohmsInStock(kit, ohms)).join(kit.list ? '; ' : ', ')})`;

/** Resistors of the kit that the stock has not, whatever they are for. */
function missingText({ kit }: Circuit, series: AvailableValues): readonly string[] {
  if (typeof series === 'string') return [];
  const missing = kit.parts.flatMap((part) => {
    const ohms = resistorOf(part)?.ohms.value;
    return ohms === undefined || series.stock.includes(ohms) ? [] : [`${part.name}, ${ohmsText(ohms)}`];
  });
  return missing.length === 0 ? [] : [`Not in stock: ${missing.join('; ')}.`];
}

const warningsOf = (circuit: Circuit, match: Match, advice: PadAdvice): readonly string[] =>
  advice.kind === 'pad' && !advice.present ? worseLines(circuit, match, advice.worse) : [];

function detailsOf(report: Report, advice: PadAdvice): readonly string[] {
  switch (advice.kind) {
    case 'pad':
      return report.all ? padTables(report, advice) : padLines(report, advice);
    case 'too-heavy':
      return [...causeLines(report, advice), ...insteadOf(report, advice.alternatives)];
    case 'needless':
      return insteadOf(report, advice.alternatives);
    case 'no-tone': {
      const standIn =
        advice.standIn === undefined
          ? []
          : [
              [
                'alternative',
                `${ohmsText(advice.standIn)} from its signal lead to ground would match its signal load`,
              ] as const,
            ];
      return [...listed(standIn), ...insteadOf(report, advice.alternatives)];
    }
    default:
      return [];
  }
}

const listed = (lines: readonly (readonly [string, string])[]): readonly string[] =>
  lines.map(([name, text]) => `  ${name.padEnd(12)}  ${text}`);

function padLines({ circuit, plan, other, all }: Report, advice: Advised<'pad'>): readonly string[] {
  const near = [advice.below, advice.above].flatMap((option) =>
    option
      ? [
          `${ohmsInStock(circuit.kit, option.ohms)} gives ${ohmsText(option.load)}, ${percentText(option.percent)}`,
        ]
      : [],
  );
  const lines: readonly (readonly [string, string])[] = [
    ['resistor', resistorText(circuit, advice)],
    ['other values', [`ideal ${ohmsText(advice.ideal)}`, ...near].join('; ')],
    [LOAD[other.match], `${loadText(other.match, advice)}; ${otherText(other, advice)}`],
  ];
  return [...listed(lines), ...insteadOf({ circuit, plan, other, all }, advice.alternatives)];
}

function padTables(report: Report, advice: Advised<'pad'>): readonly string[] {
  const { circuit, plan, other } = report;
  const { pickup, state, chosen } = advice;
  const lines: readonly (readonly [string, string])[] = [
    ['matched', judgedText(circuit, plan.match, advice)],
    ['resistor', resistorText(circuit, advice)],
    ['from, to', `${advice.from}, ${advice.to}`],
    ['ideal value', ohmsText(advice.ideal)],
    ['both loads', `DC ${loadText('dc', advice)}; signal ${loadText('signal', advice)}`],
    [LOAD[other.match], otherText(other, advice)],
  ];
  return [
    ...listed(lines),
    `\n${neighbours(plan.match, advice)}`,
    `\n  Effect of ${ohmsText(chosen.ohms)} in the other positions, those of several pickups first\n${effectTable(elsewhereFirst(chosen.effects, state, pickup), plan.match)}`,
    ...insteadOf(report, advice.alternatives),
  ];
}

/** What loads a pickup, heaviest first. */
function causeLines({ plan, all }: Report, { causes }: Advised<'too-heavy'>): readonly string[] {
  if (all)
    return [
      `\n${columns(
        ['loaded by', `${LOAD[plan.match]} without it`],
        causes.map(({ part, without }) => [part, ohmsText(without)]),
        1,
        '  ',
      )}`,
    ];
  return listed([
    ['loaded by', causes.map(({ part, without }) => `${part} (${ohmsText(without)} without it)`).join(', ')],
  ]);
}

function judgedText(circuit: Circuit, match: Match, { state, pickup, reference }: Advised<'pad'>): string {
  const others = (circuit.states[state]?.sounding ?? []).filter((name) => name !== pickup);
  const with_ = others.length === 0 ? 'on its own' : `together with ${others.join(', ')}`;
  const where = inState(circuit, state).trimStart();
  return `${where}${where === '' ? '' : ', '}${with_}; reference ${LOAD[match]} ${ohmsText(reference)}`;
}

function resistorText(circuit: Circuit, { part, chosen }: Advised<'pad'>): string {
  const item = itemOfOhms(circuit.kit, chosen.ohms);
  // A new one that no list tells of is an ordinary resistor of 5 % (common practice, no source).
  const tolerance =
    (item ? resistorOf(item.part) : bodyOf(circuit, part))?.tolerance.value ?? RESISTOR_TOLERANCE;
  const bands = resistorBands(chosen.ohms, tolerance).join(' ');
  return `${ohmsInStock(circuit.kit, chosen.ohms)}, bands ${bands} for ±${Number((tolerance * 100).toPrecision(3))} % (IEC 60062), part ${part}`;
}

/** `163.2 kΩ of 125.1 kΩ (+30.5 %)`: one load with the chosen value, where it is judged. */
function loadText(
  match: Match,
  { chosen, state, pickup }: Pick<Advised<'pad'>, 'chosen' | 'state' | 'pickup'>,
): string {
  const own = chosen.effects.find((effect) => effect.index === state && effect.pickup === pickup);
  if (!own) return 'not known';
  const [load, reference] = [loadFor(match, own.after), loadFor(match, own.reference)];
  return `${ohmsText(load)}, reference ${ohmsText(reference)} (${percentText(differenceOf(load, reference).percent)})`;
}

/** What matching the other load would take. */
function otherText(other: PadPlan, { pickup, chosen: { ohms } }: Advised<'pad'>): string {
  const advice = other.advice.find((one) => one.pickup === pickup);
  switch (advice?.kind) {
    case 'pad':
      return ohms === advice.chosen.ohms
        ? 'the same value matches it best'
        : `to match it instead (--match ${other.match}), ${ohmsText(advice.chosen.ohms)}: DC ${loadText('dc', advice)}; signal ${loadText('signal', advice)}`;
    case 'fits':
      return `without the change ${ohmsText(advice.load)} (${percentText(advice.percent)})`;
    case 'too-heavy':
      return `too heavy already: ${ohmsText(advice.load)} (${percentText(advice.percent)})`;
    case 'no-tone':
      return 'no tone control loads it';
    default:
      return 'no resistor of these values can match it';
  }
}

function neighbours(match: Match, { below, chosen, above }: Advised<'pad'>): string {
  const row = (option: PadOption | undefined, which: string) =>
    option ? [[ohmsText(option.ohms), which, ohmsText(option.load), percentText(option.percent)]] : [];
  const rows = [...row(below, 'next below'), ...row(chosen, 'chosen'), ...row(above, 'next above')];
  const none = [below ? '' : 'smaller', above ? '' : 'larger'].filter((word) => word !== '');
  const note = none.length === 0 ? '' : `\n  no ${none.join(' and no ')} value available`;
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
  const change = (before: number, after: number) =>
    ohmsText(before) === ohmsText(after) ? ohmsText(after) : `${ohmsText(before)} → ${ohmsText(after)}`;
  const rows = effects.map((effect) => [
    positionCell(effect.state),
    effect.pickup,
    change(effect.before.dcLoad, effect.after.dcLoad),
    change(effect.before.signalLoad, effect.after.signalLoad),
    ohmsText(loadFor(match, effect.reference)),
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

/** The other ways, each better than what is there: a line, and with `--all` their figures in every position. */
function insteadOf({ circuit, plan, all }: Report, alternatives: readonly Alternative[]): readonly string[] {
  return alternatives.flatMap((one) => {
    const text = alternativeText(circuit, one);
    const but = worseLines(circuit, plan.match, one.worse);
    return all
      ? [`\n  Alternative: ${text}\n${effectTable(inOrder(one.effects), plan.match, '    ')}`]
      : listed([['alternative', text], ...but.map((line) => ['', line] as const)]);
  });
}
