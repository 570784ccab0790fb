/** Speed as ratios within one run: the pipeline against elkjs alone, cold and warm. `npm run bench` runs it, and the sweep. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readKit } from '../../src/describe/read.ts';
import { findArrangement } from '../../src/files/layouts.ts';
import { proofread } from '../../src/inspect/index.ts';
import { draw, prepare, render } from '../../src/pipeline.ts';
import { layOut } from '../../src/place/elk.ts';
import { DEFAULT_EFFORT } from '../../src/place/improve.ts';
import { elkDrawing, elkPlaces } from './elk-alone.ts';

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[numbers.length >> 1] ?? 0;
const file = 'samples/kestrel-hss.yaml';
const text = readFileSync(file, 'utf8');
const read = readKit(text, file).kit;
if (!read) throw new Error(`${file} does not read`);
const kit = read;
const found = findArrangement(kit.arrangement);
if (typeof found === 'string') throw new Error(found);
const arrangement = found;

async function timed(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

const out = mkdtempSync(join(tmpdir(), 'solderleaf-'));
const cold: [number, number][] = [];
const coldSearched: [number, number][] = [];
for (let i = 0; i < 7; i++) {
  const drawing = (...options: string[]) =>
    timed(() => {
      rmSync(join(out, `${kit.id}.svg`), { force: true });
      spawnSync(process.execPath, ['dist/cli.js', 'draw', file, '--out', out, ...options]);
    });
  const ours = await drawing('--effort', '0');
  const searched = await drawing();
  const elk = await timed(() =>
    spawnSync(process.execPath, ['tests/bench/cold-elk.mjs'], { input: JSON.stringify(elkDrawing(kit)) }),
  );
  cold.push([ours, elk]);
  coldSearched.push([searched, elk]);
}
rmSync(out, { recursive: true, force: true });

async function warmed(
  steps: number,
  rounds: number,
  yardstick: typeof elkDrawing,
): Promise<readonly [number, number][]> {
  const pairs: [number, number][] = [];
  for (let i = 0; i < rounds * 1.5; i++) {
    const ours = await timed(async () => {
      const again = readKit(text, file).kit;
      if (again) await draw(again, arrangement, { effort: { ...DEFAULT_EFFORT, steps } });
    });
    const elk = await timed(() => layOut(yardstick(kit)));
    if (i >= rounds / 2) pairs.push([ours, elk]);
  }
  return pairs;
}
const warm = await warmed(0, 40, elkDrawing);
const warmPlaces = await warmed(0, 40, elkPlaces);
const warmSearched = await warmed(DEFAULT_EFFORT.steps, 6, elkDrawing);

const row = (name: string, pairs: readonly (readonly [number, number])[], target?: number): string => {
  const [ours, elk] = [median(pairs.map((p) => p[0])), median(pairs.map((p) => p[1]))];
  const ratio = median(pairs.map((p) => p[0] / p[1])).toFixed(2);
  return `${name.padEnd(46)}ours ${ours.toFixed(0)} ms  elkjs alone ${elk.toFixed(0)} ms  ratio ${ratio}${target === undefined ? '' : `  (target ${target})`}`;
};
/** Reading a drawing back before it is written, beside making it as by default. */
async function proved(rounds: number): Promise<readonly number[]> {
  const shares: number[] = [];
  for (let i = 0; i < rounds * 2; i++) {
    let prepared: Awaited<ReturnType<typeof prepare>> | undefined;
    let svg = '';
    const making = await timed(async () => {
      prepared = await prepare(kit, arrangement);
      svg = render(prepared).svg;
    });
    const reading = await timed(() => prepared && proofread(svg, prepared));
    if (i >= rounds) shares.push(reading / making);
  }
  return shares;
}
const shares = await proved(8);

console.log(row('draw one kit, cold, placement not searched', cold, 1.5));
console.log(row('draw one kit, cold, as by default', coldSearched));
console.log(row('whole pipeline, warm, placement not searched', warm, 1.3));
console.log(row('the same against elkjs asked for places alone', warmPlaces));
console.log(row('whole pipeline, warm, as by default', warmSearched));
console.log(
  `${'reading a drawing back, share of making it'.padEnd(46)}${(median(shares) * 100).toFixed(1)} %  (target 15 %)`,
);
