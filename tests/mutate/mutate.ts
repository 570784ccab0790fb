/**
 * `npm run mutate`: small changes to `src/`, one at a time, each with the tests that are concerned. Pictures and `out/` are left
 * out of account: an assertion must notice. It takes about an hour, and is not part of `npm test`.
 *
 * Arguments: how many changes (320), the seed (60063), how many at a time (2), what an earlier run of the same source printed,
 * as a file (or '' for none): what it says was noticed is taken from there, so that only the rest is tried; and which files
 * to change, as a regular expression on the path below `src/` (all).
 */
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chooseMutants, type Mutant } from './mutants.ts';

const [count = 320, seed = 60063, workers = 2] = process.argv.slice(2, 5).map(Number);
const [earlierFile = '', files = ''] = process.argv.slice(5, 7);
const earlier = earlierFile === '' ? '' : readFileSync(earlierFile, 'utf8');
/** Milliseconds; a change that makes a test hang is noticed too. */
const LIMIT = 180_000;

/** Tests concerned by the room a file is in, run after one another until one notices, those first that take least time. */
const CONCERNED: readonly (readonly [RegExp, readonly string[]])[] = [
  [
    /^common\//,
    ['common reference/series', 'reference describe annotate', 'analyse report/loads', 'truth place'],
  ],
  [
    /^parts\//,
    [
      'parts/facts parts/faces parts/block-plate place/outlines describe',
      'circuit annotate analyse/loads',
      'truth place',
      'parts/composed inspect/rules',
      'oracle',
    ],
  ],
  [
    /^describe\//,
    [
      'describe/messages describe/yaml describe/lines describe/json describe/comma describe/places describe/hints',
      'describe/edit-flow describe/quantities describe/reading describe/schema broken',
      'describe/edit describe/robust',
      'publish/draw report/pad truth/parts',
    ],
  ],
  [/^circuit\//, ['circuit annotate broken', 'analyse describe', 'truth']],
  [/^solve\//, ['circuit reference annotate analyse/loads', 'oracle broken', 'files/files']],
  [/^analyse\/pad/, ['analyse/pad report/pad']],
  [/^analyse\//, ['annotate reference', 'analyse', 'report', 'response', 'oracle']],
  [/^annotate\/plot/, ['response']],
  [/^annotate\//, ['annotate report/loads', 'truth', 'response/plot inspect/rules']],
  [
    /^place\//,
    [
      'place/router place/search place/settled place/clearance place/wired place/outlines',
      'truth/parts truth/values place',
      'truth/lines random/ways',
      'inspect/rules',
      'inspect/tamperings',
      'random/seated',
    ],
  ],
  [/^draw\/plot/, ['draw/plot response/spread', 'response']],
  [/^draw\//, ['draw', 'truth', 'inspect/rules publish/draw', 'inspect/tamperings', 'random/seated']],
  [
    /^inspect\//,
    [
      'inspect/plane inspect/space inspect/path inspect/paint inspect/near inspect/picture inspect/drawing',
      'inspect/wire-rules inspect/small-rules inspect/text-rules inspect/contrast inspect/legs inspect/text-ink inspect/finding',
      'inspect/rules inspect/joint-rules inspect/reading',
      'inspect/tamperings',
      'inspect/samples truth/values',
    ],
  ],
  [/^report\//, ['report', 'response publish/commands']],
  [
    /^(publish|files)\//,
    [
      'files/foreign files/layouts files/find-kits files/writing publish/aspects publish/outcomes',
      'commands/commands publish/draw report/pad broken',
      'files/files publish/commands',
      'files/hostile',
    ],
  ],
  [
    /^(commands|cli)/,
    [
      'commands/commands commands/json',
      'publish/commands files/files',
      'inspect/command response/command',
      'files/hostile report/pad',
    ],
  ],
  [/^pipeline/, ['truth', 'publish/commands response']],
  [/^(checked|prepare)/, ['circuit broken', 'truth publish/draw', 'describe']],
];
/** Tests that run the built program; the others need no build. */
const BUILT = /publish\/commands|files\/(files|hostile)|\/command\b|response(?!\/)/;

interface Result {
  readonly mutant: Mutant;
  /** The test that noticed, or `undefined`. */
  readonly by?: string;
}

function workplace(): string {
  const folder = mkdtempSync(join(tmpdir(), 'mutate-'));
  for (const name of [
    'src',
    'tests',
    'samples',
    'layouts',
    'out',
    'package.json',
    'tsconfig.json',
    'vitest.config.ts',
    'README.md',
  ])
    cpSync(name, join(folder, name), { recursive: true });
  symlinkSync(resolve('node_modules'), join(folder, 'node_modules'));
  return folder;
}

/** Runs the tests concerned, in order, until one notices. */
async function noticed(folder: string, mutant: Mutant): Promise<string | undefined> {
  const groups = CONCERNED.find(([room]) => room.test(mutant.file))?.[1] ?? ['truth'];
  for (const group of groups) {
    const by = await failing(folder, group);
    if (by !== undefined) return by;
  }
  return undefined;
}

function failing(folder: string, group: string): Promise<string | undefined> {
  const tests = group.split(' ').map((name) => `tests/${name}`);
  const options = [
    '--bail=1',
    '--maxWorkers=1',
    '--no-isolate',
    '--pool=threads',
    '--exclude=tests/golden/**',
    '--reporter=json',
  ];
  return new Promise((settle) => {
    const child = spawn('node_modules/.bin/vitest', ['run', ...tests, ...options], {
      cwd: folder,
      detached: true,
      stdio: ['ignore', 'pipe', 'ignore'],
      env: {
        ...process.env,
        SOLDERLEAF_WITHOUT_OUT: '1',
        ...(BUILT.test(group) ? {} : { SOLDERLEAF_WITHOUT_BUILD: '1' }),
      },
    });
    let text = '';
    child.stdout.on('data', (bytes: Buffer) => {
      text += bytes.toString();
    });
    const limit = setTimeout(() => {
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
      settle('the limit of time');
    }, LIMIT);
    child.on('close', (code) => {
      clearTimeout(limit);
      settle(code === 0 ? undefined : failedIn(text));
    });
  });
}

function failedIn(text: string): string {
  try {
    const { testResults } = JSON.parse(text.slice(text.indexOf('{'))) as {
      readonly testResults: readonly {
        readonly name: string;
        readonly message: string;
        readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[];
      }[];
    };
    for (const { name, message, assertionResults } of testResults) {
      const failed = assertionResults.find(({ status }) => status === 'failed');
      if (failed) return failed.fullName;
      if (message !== '') return `${name}: ${message.split('\n', 1)[0]}`;
    }
  } catch {
    // It ended before it could say.
  }
  return 'a run that broke off';
}

const wordsOf = ({ file, line, what }: Mutant): string => `src/${file}:${line}  ${what}`;

const results: Result[] = [];
/** What an earlier run noticed, by the words of the change, and by what. */
const known = new Map(
  [...earlier.matchAll(/^noticed {3}(.*?) {2}\((.*)\)$/gm)].map(([, words = '', by = '']) => [words, by]),
);
const mutants = chooseMutants(count, seed, new RegExp(files));
const untried = mutants.filter((mutant) => {
  // Of changes that are called the same, which was noticed is not known.
  const alike = mutants.filter((other) => wordsOf(other) === wordsOf(mutant));
  const by = alike.length > 1 ? undefined : known.get(wordsOf(mutant));
  if (by !== undefined) results.push({ mutant, by });
  return by === undefined;
});
const queue = untried.entries();

async function work(): Promise<void> {
  const folder = workplace();
  for (const [, mutant] of queue) {
    const path = join(folder, 'src', mutant.file);
    const text = readFileSync(path, 'utf8');
    writeFileSync(path, text.slice(0, mutant.at) + mutant.to + text.slice(mutant.at + mutant.from.length));
    const by = await noticed(folder, mutant);
    writeFileSync(path, text);
    results.push({ mutant, ...(by === undefined ? {} : { by }) });
    const words = wordsOf(mutant);
    console.log(by === undefined ? `SURVIVED  ${words}` : `noticed   ${words}  (${by.slice(0, 90)})`);
  }
  rmSync(folder, { recursive: true, force: true });
}

await Promise.all(Array.from({ length: workers }, work));
const survivors = results.filter(({ by }) => by === undefined);
console.log(
  `\n${results.length} changes, ${results.length - survivors.length} noticed (${((1 - survivors.length / results.length) * 100).toFixed(1)} %)`,
);
for (const { mutant } of survivors) {
  const { from, to } = mutant;
  console.log(
    `${wordsOf(mutant)}\n    - ${from.replaceAll('\n', ' ').slice(0, 110)}\n    + ${to.replaceAll('\n', ' ').slice(0, 110)}`,
  );
}
process.exitCode = survivors.length <= results.length / 10 ? 0 : 1;
