/**
 * `npm run fuzz`: twenty thousand spoilt descriptions, as many at a time as there are processors; `npm test` takes a thousand.
 *
 * Arguments: how many (20000), the first seed (1).
 */
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { prove } from './prove.ts';
import { sumUp, type Tally, tallyOf } from './tally.ts';

const [count = 20_000, first = 1] = process.argv.slice(2, 4).map(Number);
/** Seeds of one process. */
const CHUNK = 500;

function proveApart(from: number, seeds: number): Promise<Tally> {
  const child = spawn(
    process.execPath,
    ['--import', 'tsx', fileURLToPath(import.meta.url), String(seeds), String(from)],
    { stdio: ['ignore', 'pipe', 'inherit'], env: { ...process.env, SOLDERLEAF_CHUNK: '1' } },
  );
  return new Promise<Tally>((done) => {
    let text = '';
    child.stdout.on('data', (bytes: Buffer) => {
      text += bytes.toString();
    });
    child.on('close', (code) => {
      const died = {
        refused: 0,
        drawn: 0,
        slowest: 0,
        errors: [`seeds from ${from} ended with ${code ?? 'a signal'}`],
      };
      done(code === 0 ? (JSON.parse(text) as Tally) : died);
    });
  });
}

if (process.env.SOLDERLEAF_CHUNK) console.log(JSON.stringify(await tallyOf(first, count, prove)));
else {
  const tallies: Tally[] = [];
  const starts = Array.from({ length: Math.ceil(count / CHUNK) }, (_, i) => first + i * CHUNK).values();
  const work = async (): Promise<void> => {
    for (const from of starts) {
      tallies.push(await proveApart(from, Math.min(CHUNK, first + count - from)));
      const { refused, drawn, errors } = sumUp(tallies);
      process.stderr.write(`${refused} refused, ${drawn} drawn, ${errors.length} findings\n`);
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  const { refused, drawn, slowest, errors } = sumUp(tallies);
  console.log(
    `${count} seeds from ${first}: ${refused} refused with a place and words, ${drawn} drawn; the slowest took ${slowest.toFixed(1)} s`,
  );
  console.log(errors.length === 0 ? 'nothing found' : `${errors.length} findings:\n${errors.join('\n')}`);
  process.exitCode = errors.length === 0 ? 0 : 1;
}
