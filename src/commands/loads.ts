/** `loads`: what each pickup works into, what comes of it, and what a meter shows. */
import { type Command, InvalidArgumentError } from 'commander';
import { DEFAULT_SAMPLES, DEFAULT_SEED, MOST_SAMPLES, MOST_SEED, toJson } from '../analyse/index.ts';
import { substitutionLines } from '../annotate/stock-notes.ts';
import { formatQuantity } from '../common/units.ts';
import { type FigureOptions, figuresOf } from '../report/figures.ts';
import { type Figures, loadsData } from '../report/loads-data.ts';
import { limitTables, meterTable } from '../report/meter-table.ts';
import { responseTable } from '../report/response-table.ts';
import { assumptions, loadsTable, togetherTable } from '../report/table.ts';
import { print, printJson } from './console.ts';
import { oneKit } from './one-kit.ts';

interface LoadsFlags extends FigureOptions {
  readonly json: boolean;
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
    .description('load and resonance of each pickup in every switch position, and multimeter readings')
    .argument(
      '<kit>',
      'kit file, circuit/NAME for a circuit that ships, or WORKSHOP#ID for a kit of a workshop',
    )
    .option('--tolerance', 'add worst-case limits from part tolerances; takes a few seconds', false)
    .option(
      '--seed <number>',
      `with --tolerance: seed of the random samples (default: ${DEFAULT_SEED})`,
      wholeNumber(0, MOST_SEED),
    )
    .option(
      '--samples <number>',
      `with --tolerance: number of random samples (default: ${DEFAULT_SAMPLES})`,
      wholeNumber(1, MOST_SAMPLES),
    )
    .option('--json', 'as JSON, in ohms, hertz and decibels, unrounded', false)
    .addHelpText('after', '\nexample: solderleaf loads my-kit.yaml --tolerance --seed 7')
    .action(async (path: string, flags: LoadsFlags) => {
      for (const name of ['seed', 'samples'] as const)
        if (flags[name] !== undefined && !flags.tolerance)
          command.error(`error: --${name} needs --tolerance`);
      const kit = await oneKit(path, command);
      if (!kit) return;
      const figures = figuresOf(kit, flags);
      if (flags.json) printJson(toJson(loadsData(figures)));
      else print(textOf(figures));
    });
}

function textOf({ circuit, loads, response, readings, limits }: Figures): string {
  const { kit } = circuit;
  const { frequency, cable, amplifier } = kit.outputLoad;
  const into = `${formatQuantity(cable.value, 'farad')} of cable and ${formatQuantity(amplifier.value, 'ohm')}`;
  const together = togetherTable(loads);
  const replaced = substitutionLines(kit);
  return [
    kit.title,
    ...(replaced.length === 0 ? [] : [replaced.join('\n')]),
    `Loads at DC and at ${frequency.value} Hz, all controls on 10; total: with cable, amplifier and the other pickups\n${loadsTable(loads)}`,
    ...(together === ''
      ? []
      : [`Pickups selected together; levels at 1 kHz for equal voltage in each coil\n${together}`]),
    `Response with ${into}, all controls on 10; reference: the same pickup in its reference harness\n${responseTable(response)}`,
    `Multimeter readings, no cable or amplifier connected: “no pickups”, before they are soldered, with what is soldered by then, and finished\n${meterTable(kit, readings)}`,
    ...(limits ? [limitTables(circuit, limits)] : []),
    assumptions(kit),
  ].join('\n\n');
}
