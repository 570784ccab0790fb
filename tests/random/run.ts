/**
 * `npm run random-kits`: three thousand random kits, two at a time, a hundred of them with the usual care. It takes the better
 * part of an hour, so that `npm test` has a hundred and fifty of them only.
 *
 * Arguments: how many kits (3000), the first seed (1).
 */
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { buildCircuit } from '../../src/solve/build.ts';
import { DEFAULT_EFFORT, drawingFaults, kitOfSeed, LOW, solvingFaults } from './proof.ts';

const [count = 3000, first = 1] = process.argv.slice(2, 4).map(Number);
const share = process.env.SOLDERLEAF_SHARE?.split('/').map(Number);

/** One kit in thirty is searched with the usual effort. */
const CARE = 30;
/** Kits solved in one go. */
const BATCH = 10;

interface Tally {
  kits: number;
  drawings: number;
  refused: Record<string, number>;
  faults: string[];
}

async function prove([part = 0, of = 1]: readonly number[]): Promise<Tally> {
  const tally: Tally = { kits: 0, drawings: 0, refused: {}, faults: [] };
  let waiting: ReturnType<typeof buildCircuit>[] = [];
  const solve = async () => {
    tally.faults.push(...(await solvingFaults(waiting)));
    waiting = [];
  };
  for (let seed = first + part; seed < first + count; seed += of) {
    const kit = kitOfSeed(seed);
    if (!('parts' in kit)) {
      for (const code of kit) tally.refused[code] = (tally.refused[code] ?? 0) + 1;
      continue;
    }
    tally.kits++;
    tally.drawings += 6;
    try {
      tally.faults.push(...(await drawingFaults(kit, seed, seed % CARE === 0 ? DEFAULT_EFFORT : LOW)));
    } catch (thrown) {
      tally.faults.push(`random-${seed}: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
    }
    waiting.push(buildCircuit(kit));
    if (waiting.length === BATCH) await solve();
    if ((seed - first) % 100 < of)
      process.stderr.write(`${seed - first + 1} of ${count}, ${tally.faults.length} findings\n`);
  }
  await solve();
  return tally;
}

if (share) console.log(JSON.stringify(await prove(share)));
else {
  const shares = availableParallelism();
  const tallies = await Promise.all(
    Array.from({ length: shares }, (_, i) => {
      const child = spawn(
        process.execPath,
        ['--import', 'tsx', fileURLToPath(import.meta.url), String(count), String(first)],
        { stdio: ['ignore', 'pipe', 'inherit'], env: { ...process.env, SOLDERLEAF_SHARE: `${i}/${shares}` } },
      );
      return new Promise<Tally>((done, fail) => {
        let text = '';
        child.stdout.on('data', (bytes: Buffer) => {
          text += bytes.toString();
        });
        child.on('close', (code) =>
          code === 0 ? done(JSON.parse(text) as Tally) : fail(new Error(`exit ${code}`)),
        );
      });
    }),
  );
  const sum = (of: (tally: Tally) => number): number => tallies.reduce((all, tally) => all + of(tally), 0);
  const refused: Record<string, number> = {};
  for (const tally of tallies)
    for (const [code, times] of Object.entries(tally.refused)) refused[code] = (refused[code] ?? 0) + times;
  const faults = tallies.flatMap((tally) => tally.faults);
  console.log(
    `${count} seeds from ${first}: ${sum(({ kits }) => kits)} kits without fault, drawn ${sum(({ drawings }) => drawings)} times; refused: ${JSON.stringify(refused)}`,
  );
  console.log(faults.length === 0 ? 'nothing found' : `${faults.length} findings:\n${faults.join('\n')}`);
  process.exitCode = faults.length === 0 ? 0 : 1;
}
