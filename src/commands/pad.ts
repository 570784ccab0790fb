/** `pad`: which resistor brings a pickup's load to its reference, and what else it changes. */
import { type Command, InvalidArgumentError, Option } from 'commander';
import { choosePads, type Match, toJson } from '../analyse/index.ts';
import { type AvailableValues, type SeriesName, seriesNames } from '../common/series.ts';
import { formatQuantity, parseQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';
import { writePads } from '../files/pad-write.ts';
import { ohmBounds } from '../parts/fields.ts';
import { padData } from '../report/pad-data.ts';
import { padReport } from '../report/pad-report.ts';
import { listsResistors, resistorsInStock } from '../report/stock-data.ts';
import { buildCircuit } from '../solve/build.ts';
import { circuitOr, fail, print, printError, printJson } from './console.ts';
import { oneKit, workshopKitIn } from './one-kit.ts';

interface PadFlags {
  readonly match: Match;
  readonly series?: SeriesName | 'stock';
  readonly stock?: readonly number[];
  readonly all: boolean;
  readonly write: boolean;
  readonly json: boolean;
}

const [LEAST, MOST] = ohmBounds;
const ALLOWED = `allowed: resistances from ${formatQuantity(LEAST, 'ohm')} to ${formatQuantity(MOST, 'ohm')} separated by commas, such as 220k,270k,470k`;

/** Every value of the list or none: one that cannot be read is a typing mistake, not a value fewer. */
export function stockList(written: string): readonly number[] {
  if (written.trim() === '') throw new InvalidArgumentError(`the stock is empty; ${ALLOWED}`);
  return written.split(',').map((item) => {
    const ohms = parseQuantity(item, 'ohm');
    if (item.trim() === '')
      throw new InvalidArgumentError(`a value is missing between two commas; ${ALLOWED}`);
    if (ohms === undefined)
      throw new InvalidArgumentError(`“${item.trim()}” is not a resistance; ${ALLOWED}`);
    if (!(ohms >= LEAST && ohms <= MOST))
      throw new InvalidArgumentError(`“${item.trim()}” is out of range for a resistor; ${ALLOWED}`);
    return ohms;
  });
}

export function addPad(program: Command): void {
  const command = program.command('pad');
  command
    .description(
      'padding resistors: which value, between which lugs, and its effect in every switch position',
    )
    .argument(
      '<kit>',
      'kit file, circuit/NAME for a circuit that ships, or WORKSHOP#ID for a kit of a workshop',
    )
    .addOption(
      new Option('--match <load>', 'the load that is matched to its reference')
        .choices(['dc', 'signal'])
        .default('dc'),
    )
    .addOption(
      new Option(
        '--series <name>',
        'values to choose from; by default the stock if the kit or a parts list names one, else E12',
      ).choices([...seriesNames, 'stock']),
    )
    .option(
      '--stock <list>',
      'resistors in stock, such as 220k,270k,470k; by default the kit’s own, or those that the parts list has in stock',
      stockList,
    )
    .option('--all', 'show all values, positions and alternatives', false)
    .option('--write', 'write the chosen resistors into the kit’s file', false)
    .option('--json', 'as JSON, in ohms, unrounded', false)
    .addHelpText('after', '\nexample: solderleaf pad my-kit.yaml --match signal --stock 220k,270k,470k')
    .action(async (path: string, flags: PadFlags) => {
      if (flags.stock && flags.series !== undefined && flags.series !== 'stock')
        command.error(`error: --series ${flags.series} and --stock contradict each other; give one of them`);
      if (flags.write && circuitOr(path, command) !== path)
        return command.error(
          `error: --write changes a kit’s file, and “${path}” is a circuit that ships: write it into a kit of your own that extends it`,
        );
      if (flags.write && workshopKitIn(path))
        return command.error(
          `error: --write changes a kit’s file, and “${path}” is named by its workshop: name its own file, or put the resistor into the family or its base`,
        );
      const kit = await oneKit(path, command);
      if (!kit) return;
      const series = choiceOf(kit, flags);
      if (series === undefined)
        return command.error(
          listsResistors(kit.list)
            ? `error: no resistor of ${kit.list?.file} is in stock: name a series, such as --series E12, or give --stock 220k,270k,470k`
            : 'error: --series stock needs values: give --stock 220k,270k,470k, or stock: [220k, 270k, 470k] in the kit',
        );
      advise(path, kit, series, flags);
    });
}

/** Resistors in stock by the workshop's list; nothing where it has no resistors at all. */
const listed = ({ list }: Kit): readonly number[] | undefined =>
  listsResistors(list) ? resistorsInStock(list).map(({ ohms }) => ohms) : undefined;

/** What pads are chosen from; `undefined` for a stock that nobody has given, or in which there is no resistor. */
export function choiceOf(
  kit: Kit,
  { series, stock = kit.stock ?? listed(kit) }: Pick<PadFlags, 'series' | 'stock'>,
): AvailableValues | undefined {
  if (series !== undefined && series !== 'stock') return series;
  if (stock !== undefined) return stock.length === 0 ? undefined : { stock };
  return series === 'stock' ? undefined : 'E12';
}

function advise(
  path: string,
  kit: Kit,
  series: AvailableValues,
  { match, all, write, json }: PadFlags,
): void {
  const circuit = buildCircuit(kit);
  const plan = choosePads(circuit, { match, series });
  const writing = write ? writePads(path, plan) : undefined;
  if (json) printJson(toJson({ ...padData(circuit, plan), ...(writing ? { write: writing.outcome } : {}) }));
  else
    print(
      padReport(circuit, plan, choosePads(circuit, { match: match === 'dc' ? 'signal' : 'dc', series }), all),
    );
  if (writing?.outcome === 'refused') {
    printError(writing.lines.join('\n'));
    fail();
  } else if (writing && !json) print(`\n${writing.lines.join('\n')}`);
}
