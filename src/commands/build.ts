/** `build`: everything of a catalogue that is out of date. */
import { type Command, InvalidArgumentError } from 'commander';
import type { Listener, Summary } from '../catalogue/build/options.ts';
import { poolOf } from '../catalogue/build/pool.ts';
import { type Shard, shardFrom, shardOf } from '../catalogue/build/shard.ts';
import { watchWorkshop } from '../catalogue/build/watch.ts';
import { usualWorkers, Workshop } from '../catalogue/build/workshop.ts';
import { FileHashes } from '../catalogue/build/write-out.ts';
import { readCatalogue } from '../catalogue/read-catalogue.ts';
import { whyNotWritten } from '../files/reason.ts';
import { fail, print, printDiagnostics, printError, shown } from './console.ts';
import { wholeNumber } from './loads.ts';

interface Flags {
  readonly workers?: number;
  readonly shard?: Shard;
  readonly cache?: string;
  readonly prune: boolean;
  readonly check: boolean;
  readonly watch: boolean;
}

const MOST_WORKERS = 256;

function shard(written: string): Shard {
  const read = shardOf(written);
  if ('wrong' in read) throw new InvalidArgumentError(read.wrong);
  return read;
}

export function addBuild(program: Command): void {
  program
    .command('build')
    .description('make everything of a workshop’s catalogue that is out of date')
    .argument('[dir]', 'the workshop’s folder, with its solderleaf.yaml', '.')
    .option(
      '--workers <number>',
      'kits drawn at the same time (default: as many as there are processors)',
      wholeNumber(1, MOST_WORKERS),
    )
    .option(
      '--shard <i/n>',
      'only the i-th of n shares of the kits, such as 2/5; also from the environment, as SOLDERLEAF_SHARD=2/5',
      shard,
    )
    .option(
      '--cache <dir>',
      'folder of what was made before, which several machines may share; also from the environment, as SOLDERLEAF_CACHE (default: .solderleaf/cache in the workshop)',
    )
    .option('--prune', 'delete outputs of kits that are no longer in the catalogue', false)
    .option('--check', 'write nothing; list what is out of date, and exit 1 if anything is', false)
    .option('--watch', 'go on, and build whenever a file is saved', false)
    .addHelpText('after', '\nexample: solderleaf build my-workshop')
    .action(async (path: string, flags: Flags, command: Command) => {
      if (flags.watch && flags.check)
        command.error('error: --watch builds, and --check writes nothing; choose one');
      const named = flags.shard ?? shardFrom(process.env);
      if (named && 'wrong' in named) return command.error(`error: ${named.wrong}`);
      // A share of one is the whole.
      const share = named && named.count > 1 ? named : undefined;
      const cache = namedCache(flags.cache);
      const { prune, check, watch } = flags;
      const options = {
        prune,
        check,
        ...(share ? { shard: share } : {}),
        ...(cache === undefined ? {} : { cache }),
      };
      const pool = poolOf(flags.workers ?? usualWorkers());
      const workshop = new Workshop(pool, options, watch ? new FileHashes(true) : undefined);
      if (share) print(`share ${share.index} of ${share.count}${'by' in share ? `, by ${share.by}` : ''}`);
      endWith(workshop);
      try {
        const once = () => buildOnce(path, workshop, check);
        await once();
        if (!watch) return;
        await watchWorkshop(path, once);
        print('watching for changes; Ctrl+C ends it');
        // Until the process is told to end.
        await new Promise(() => undefined);
      } finally {
        await pool.close();
      }
    });
}

/** The cache's folder, as an option or the environment names it. */
export const namedCache = (flag?: string): string | undefined =>
  flag ?? (process.env.SOLDERLEAF_CACHE || undefined);

/** Told to end, a build records what it has done and gives its lock back; killed outright, it leaves that to the next one. */
function endWith(workshop: Workshop): void {
  for (const [signal, number] of [
    ['SIGINT', 2],
    ['SIGTERM', 15],
    ['SIGHUP', 1],
  ] as const)
    process.once(signal, () => {
      workshop.interrupt();
      process.exit(128 + number);
    });
}

async function buildOnce(path: string, workshop: Workshop, check: boolean): Promise<void> {
  try {
    const { catalogue, diagnostics } = await readCatalogue(path);
    printDiagnostics(diagnostics);
    if (!catalogue) return fail();
    const { listener, clear } = listenerOf();
    const summary = await workshop.build(catalogue, listener);
    clear();
    if ('refused' in summary) {
      printError(`not built: ${summary.refused}`);
      return fail();
    }
    print(`${summaryOf(summary, check)}${warnedWords(summary.warned, path)}`);
    if (summary.failed > 0 || (check && (summary.shopStale || summary.stale + summary.leftOver > 0))) fail();
  } catch (thrown) {
    printError(`solderleaf: ${whyNotWritten(thrown)}`);
    fail();
  }
}

/** On a terminal a line that says how far it is, below what was said before; plain lines elsewhere. */
function listenerOf(): { readonly listener: Listener; readonly clear: () => void } {
  const { stderr } = process;
  const clear = (): void => {
    if (stderr.isTTY) stderr.write('\r\u001b[K');
  };
  const listener: Listener = {
    line: (text) => {
      clear();
      print(text);
    },
    errorLine: (text) => {
      clear();
      printError(text);
    },
    progress: (done, all, id) => {
      if (!stderr.isTTY) return;
      const text = shown(`${done} of ${all}, ${id}`.replace(/\n/g, ' '));
      stderr.write(`\r\u001b[K${text.slice(0, Math.max(1, (stderr.columns ?? 80) - 1))}`);
    },
  };
  return { listener, clear };
}

/** Kits that are named; more would bury the summary. */
const MOST_NAMED = 5;

/** `; warnings for my-sh, hss: run solderleaf check DIR`. */
function warnedWords(warned: readonly string[], path: string): string {
  if (warned.length === 0) return '';
  const more = warned.length - MOST_NAMED;
  const names = warned.slice(0, MOST_NAMED).join(', ');
  return `; warnings for ${names}${more > 0 ? ` and ${more} more` : ''}: run solderleaf check ${path}`;
}

function summaryOf(summary: Summary, check: boolean): string {
  const { kits, made, found, fresh, failed, leftOver, stale, shopStale } = summary;
  const parts: readonly (readonly [number, string])[] = [
    ...(check
      ? [[stale, 'out of date'] as const]
      : ([
          [made, 'made'],
          [found, 'from the cache'],
        ] as const)),
    [fresh, 'up to date'],
    [failed, 'with problems'],
  ];
  const files = leftOver === 0 ? '' : `; ${leftOver} ${leftOver === 1 ? 'file' : 'files'} left over`;
  const shop = shopStale ? '; index of the shop pages out of date' : '';
  const said = parts.flatMap(([count, what]) => (count === 0 ? [] : [`${count} ${what}`]));
  return `${kits} ${kits === 1 ? 'kit' : 'kits'}${said.length === 0 ? '' : `: ${said.join(', ')}`}${shop}${files}`;
}
