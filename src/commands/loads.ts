/** `loads`: what each pickup works into, what comes of it, and what a meter shows. */
import { type Command, InvalidArgumentError } from 'commander';
import {
  DEFAULT_DRAWS,
  DEFAULT_SEED,
  MOST_DRAWS,
  MOST_SEED,
  solveResponse,
  solveSpread,
  toJson,
} from '../analyse/index.ts';
import { printQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';
import { analyse } from '../pipeline.ts';
import { type Figures, loadsData } from '../publish/loads-data.ts';
import { meterTable, spreadTables } from '../publish/meter-table.ts';
import { responseTable } from '../publish/response-table.ts';
import { assumptions, loadsTable, togetherTable } from '../publish/table.ts';
import { oneKit, say, sayJson } from './console.ts';

interface LoadsFlags {
  readonly json: boolean;
  readonly spread: boolean;
  readonly seed?: number;
  readonly draws?: number;
}

/** A whole number as it is written: no sign, no point, no exponent. */
export const wholeNumber =
  (least: number, most: number) =>
  (written: string): number => {
    const value = /^\d+$/.test(written.trim()) ? Number(written) : Number.NaN;
    if (!(value >= least && value <= most))
      throw new InvalidArgumentError(`allowed: a whole number from ${least} to ${most}`);
    return value;
  };

export function addLoads(program: Command): void {
  const command = program.command('loads');
  command
    .description('what each pickup works into in every state, its resonance, and meter readings')
    .argument('<kit>', 'kit file')
    .option('--spread', 'smallest and largest of every figure under part tolerances; takes seconds', false)
    .option(
      '--seed <number>',
      `with --spread: seed of its draws (default: ${DEFAULT_SEED})`,
      wholeNumber(0, MOST_SEED),
    )
    .option(
      '--draws <number>',
      `with --spread: how many harnesses are drawn (default: ${DEFAULT_DRAWS})`,
      wholeNumber(1, MOST_DRAWS),
    )
    .option('--json', 'as JSON, in ohms, hertz and decibels, unrounded', false)
    .addHelpText('after', '\nexample: solderleaf loads my-kit.yaml --spread --seed 7')
    .action(async (path: string, flags: LoadsFlags) => {
      for (const name of ['seed', 'draws'] as const)
        if (flags[name] !== undefined && !flags.spread)
          command.error(`error: --${name} says how --spread draws; give --spread as well`);
      const kit = await oneKit(path, command);
      if (!kit) return;
      const figures = figuresOf(kit, flags);
      if (flags.json) sayJson(toJson(loadsData(figures)));
      else say(textOf(figures));
    });
}

function figuresOf(kit: Kit, { spread, seed, draws }: LoadsFlags): Figures {
  const analysed = analyse(kit);
  const options = { ...(seed === undefined ? {} : { seed }), ...(draws === undefined ? {} : { draws }) };
  return {
    ...analysed,
    // The shapes alone are asked for; of the curve one point is the least there is.
    response: solveResponse(analysed.circuit, { points: 1 }).states,
    ...(spread ? { spread: solveSpread(analysed.circuit, options) } : {}),
  };
}

function textOf({ circuit, loads, response, readings, spread }: Figures): string {
  const { kit } = circuit;
  const { frequency, cable, amplifier } = kit.surroundings;
  const into = `${printQuantity(cable.value, 'farad')} of cable and ${printQuantity(amplifier.value, 'ohm')}`;
  const together = togetherTable(loads);
  return [
    kit.title,
    `Loads at DC and at ${frequency.value} Hz, controls at full; total: with cable, amplifier and the other pickups\n${loadsTable(loads)}`,
    ...(together === ''
      ? []
      : [`Sounding together, levels at 1 kHz for the same voltage in each coil\n${together}`]),
    `Response into ${into}, controls at full; reference: in the harness the pickup was made for\n${responseTable(response)}`,
    `Meter readings, nothing plugged in; bare: before the pickups are fitted\n${meterTable(kit, readings)}`,
    ...(spread ? [spreadTables(circuit, spread)] : []),
    assumptions(kit),
  ].join('\n\n');
}
