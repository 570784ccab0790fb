/**
 * Kills a build at random moments, and compares what the next one leaves with a clean build: `npm run kills [number] [seed]`, fifty
 * unless told otherwise. Half of the builds are cold, and most of their time is drawing; half have a warm cache, and mostly write.
 */
import { performance } from 'node:perf_hooks';
import { seeded } from '../../src/common/random.ts';
import { killOnce } from './kill.ts';
import { buildByCli, clearWorkshops, copyOf, newWorkshop, outOf, smallKit } from './workshop.ts';

const [count = 50, seed = 1] = process.argv.slice(2).map(Number);
const kits = Array.from({ length: 12 }, (_, i) => [`kit-${i}`, smallKit(`kit-${i}`, `${i + 1}0k`)]);
const folder = newWorkshop(Object.fromEntries(kits), 'outputs: [drawing, png, steps, loads]\n');
const random = seeded(seed);

async function timed(): Promise<number> {
  const start = performance.now();
  await buildByCli(folder, ['--workers', '2']);
  return performance.now() - start;
}
const cold = await timed();
const clean = JSON.stringify(outOf(folder));
const warm = await timed();
let [killed, wrong] = [0, 0];
const work = copyOf(folder);
await buildByCli(work);
for (let i = 0; i < count; i++) {
  const isWarm = i % 2 === 1;
  const after = Math.round(random() * (isWarm ? 2 * warm : cold));
  const end = await killOnce(work, after, 'SIGKILL', isWarm);
  const right = end.code === 0 && JSON.stringify(end.out) === clean && end.left.length === 0;
  if (end.killed) killed++;
  if (!right) wrong++;
  const how = end.killed ? 'killed' : 'had ended';
  console.log(
    `${i + 1}: ${isWarm ? 'warm' : 'cold'}, ${how} after ${after} ms: ${right ? 'as a clean build' : 'WRONG'}`,
  );
}
clearWorkshops();
console.log(`${count} builds, ${killed} killed while at work, ${wrong} not put right by the next`);
process.exitCode = wrong === 0 ? 0 : 1;
