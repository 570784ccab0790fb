/**
 * `npm run random-kits`: three thousand random kits, two at a time, a hundred of them with the usual care. It takes the better
 * part of an hour, so that `npm test` has seventy of them only.
 *
 * Arguments: how many kits (3000), the first seed (1).
 */
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { buildCircuit } from '../../src/solve/build.ts';
import { DEFAULT_EFFORT, drawingErrors, kitOfSeed, LOW, solvingErrors } from './proof.ts';

const [count = 3000, first = 1] = process.argv.slice(2, 4).map(Number);
/** Seeds of one process: what solves the circuits for comparison keeps its memory for as long as it runs. */
const CHUNK = 100;

/** One kit in thirty is searched with the usual effort. */
const CARE = 30;
/** Kits solved in one go. */
const BATCH = 10;

interface Tally {
  kits: number;
  drawings: number;
  refused: Record<string, number>;
  errors: string[];
}

async function prove(): Promise<Tally> {
  const tally: Tally = { kits: 0, drawings: 0, refused: {}, errors: [] };
  let waiting: ReturnType<typeof buildCircuit>[] = [];
  const solve = async () => {
    tally.errors.push(...(await solvingErrors(waiting)));
    waiting = [];
  };
  for (let seed = first; seed < first + count; seed++) {
    const kit = kitOfSeed(seed);
    if (!('parts' in kit)) {
      for (const code of kit) tally.refused[code] = (tally.refused[code] ?? 0) + 1;
      continue;
    }
    tally.kits++;
    tally.drawings += 6;
    try {
      tally.errors.push(...(await drawingErrors(kit, seed, seed % CARE === 0 ? DEFAULT_EFFORT : LOW)));
    } catch (thrown) {
      tally.errors.push(`random-${seed}: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
    }
    waiting.push(buildCircuit(kit));
    if (waiting.length === BATCH) await solve();
  }
  await solve();
  return tally;
}

function proveApart(from: number, seeds: number): Promise<Tally> {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', fileURLToPath(import.meta.url), String(seeds), String(from)],
    { stdio: ['ignore', 'pipe', 'inherit'], env: { ...process.env, SOLDERLEAF_CHUNK: '1' } },
  );
  return new Promise<Tally>((done, fail) => {
    let text = '';
    child.stdout.on('data', (bytes: Buffer) => {
      text += bytes.toString();
    });
    child.on('close', (code) =>
      code === 0
        ? done(JSON.parse(text) as Tally)
        : fail(new Error(`seeds from ${from} ended with ${code ?? 'a signal'}`)),
    );
  });
}

if (process.env.SOLDERLEAF_CHUNK) console.log(JSON.stringify(await prove()));
else {
  const tallies: Tally[] = [];
  const sum = (of: (tally: Tally) => number): number => tallies.reduce((all, tally) => all + of(tally), 0);
  const starts = Array.from({ length: Math.ceil(count / CHUNK) }, (_, i) => first + i * CHUNK).values();
  const work = async (): Promise<void> => {
    for (const from of starts) {
      tallies.push(await proveApart(from, Math.min(CHUNK, first + count - from)));
      process.stderr.write(
        `${sum(({ kits }) => kits)} kits drawn ${sum(({ drawings }) => drawings)} times, ${sum(({ errors }) => errors.length)} findings\n`,
      );
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  const refused: Record<string, number> = {};
  for (const tally of tallies)
    for (const [code, times] of Object.entries(tally.refused)) refused[code] = (refused[code] ?? 0) + times;
  const errors = tallies.flatMap((tally) => tally.errors);
  console.log(
    `${count} seeds from ${first}: ${sum(({ kits }) => kits)} kits without error, drawn ${sum(({ drawings }) => drawings)} times; refused: ${JSON.stringify(refused)}`,
  );
  console.log(errors.length === 0 ? 'nothing found' : `${errors.length} findings:\n${errors.join('\n')}`);
  process.exitCode = errors.length === 0 ? 0 : 1;
}
