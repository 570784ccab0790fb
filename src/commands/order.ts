/** `order`: the parts and the wire that so many of these and those kits take. */
import { type Command, InvalidArgumentError } from 'commander';
import type { Job } from '../catalogue/catalogue.ts';
import { isPattern, matcher } from '../catalogue/glob.ts';
import { loadJob } from '../catalogue/load-job.ts';
import { countOrder, type Wanted } from '../catalogue/order/count.ts';
import { orderCsv, orderText, shortLines } from '../catalogue/order/words.ts';
import { readCatalogue } from '../catalogue/read-catalogue.ts';
import { closestName } from '../common/nearest.ts';
import { isForeign } from '../files/foreign.ts';
import { writeAtomically } from '../files/write.ts';
import { fail, print, printDiagnostics, printError, printJson } from './console.ts';

interface Options {
  readonly csv: boolean;
  readonly json: boolean;
  readonly decimalComma: boolean;
  readonly out?: string;
}

/** Kits of one order. */
const MOST = 1_000_000;

function outFile(written: string): string {
  if (!/\.csv$/i.test(written))
    throw new InvalidArgumentError(`“${written}” is not a table; it must end in .csv`);
  return written;
}

export function addOrder(program: Command): void {
  program
    .command('order')
    .description('parts, cost and wire for a number of kits, and what of it is short')
    .argument('<dir>', 'workshop’s folder, or its solderleaf.yaml')
    .argument(
      '<kit=number...>',
      'ids of kits, each with how many of them, such as my-hss=20; * and ? stand for any characters, as in “hss-*=2”',
    )
    .option('--csv', 'as a table for a spreadsheet, to --out FILE.csv or to the terminal', false)
    .option('--decimal-comma', 'the table with decimal commas and with semicolons between its cells', false)
    .option('--json', 'as JSON', false)
    .option('--out <file>', 'write the table into this file (.csv)', outFile)
    .addHelpText('after', '\nexample: solderleaf order my-workshop hss=20 hh=5 --out order.csv')
    .action(async (dir: string, asked: readonly string[], options: Options, command: Command) => {
      const table = options.csv || options.out !== undefined;
      if (options.json && table) command.error('error: --json goes neither with --csv nor with --out');
      if (options.decimalComma && !table) command.error('error: --decimal-comma goes with --csv or --out');
      const lines = asked.map((written) => lineOf(written, command));
      const { catalogue, diagnostics } = await readCatalogue(dir);
      printDiagnostics(diagnostics);
      if (!catalogue) return fail();
      const quantities = quantitiesOf(lines, catalogue.jobs, command);
      const wanted: Wanted[] = [];
      for (const [job, quantity] of quantities) {
        const { kit, diagnostics: found } = await loadJob(job);
        printDiagnostics(found);
        if (kit) wanted.push({ kit, quantity });
      }
      if (wanted.length < quantities.size) {
        printError('no order: of a kit with errors nobody knows what it takes');
        return fail();
      }
      const order = countOrder(wanted, catalogue.currency);
      const { out, decimalComma } = options;
      if (out !== undefined) {
        if (write(out, orderCsv(order, decimalComma, true)))
          for (const line of shortLines(order)) print(`short     ${line}`);
        return;
      }
      if (options.json) printJson(JSON.stringify(order, null, 2));
      else print(table ? orderCsv(order, decimalComma, false).trimEnd() : orderText(order));
    });
}

/** One argument: an id or a pattern of ids, and how many of each. */
interface Line {
  readonly ids: string;
  readonly quantity: number;
}

function lineOf(written: string, command: Command): Line {
  const [, ids, digits] = /^([^=]+)=(\d+)$/.exec(written) ?? [];
  const quantity = Number(digits);
  if (ids === undefined || !(quantity >= 1 && quantity <= MOST))
    return command.error(
      `error: “${written}”: write a kit’s id and how many, from 1 to ${MOST}, such as my-hss=20`,
    );
  return { ids, quantity };
}

function quantitiesOf(
  lines: readonly Line[],
  jobs: readonly Job[],
  command: Command,
): ReadonlyMap<Job, number> {
  const quantities = new Map<Job, number>();
  for (const { ids, quantity } of lines)
    for (const job of jobsOf(jobs, ids, command)) {
      if (quantities.has(job)) return command.error(`error: “${job.id}” is given twice; give it once`);
      quantities.set(job, quantity);
    }
  return quantities;
}

function jobsOf(jobs: readonly Job[], ids: string, command: Command): readonly Job[] {
  const isAsked = isPattern(ids) ? matcher(ids) : (id: string): boolean => id === ids;
  const found = jobs.filter(({ id }) => isAsked(id));
  if (found.length > 0) return found;
  const near = closestName(
    ids,
    jobs.map(({ id }) => id),
  );
  return command.error(
    `error: the catalogue has no kit “${ids}”${near === undefined ? '' : `: did you mean ${near}?`}`,
  );
}

function write(out: string, table: string): boolean {
  if (isForeign(out, table)) {
    printError(
      `not written ${out}: it already exists and is not an order; move it, or give another name to --out`,
    );
    fail();
    return false;
  }
  print(`${writeAtomically(out, table) ? 'written  ' : 'unchanged'} ${out}`);
  return true;
}
