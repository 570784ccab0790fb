/**
 * A made-up catalogue by matrix from the samples: what a build costs when everything, nothing, one value or one arrangement changed.
 *
 *     npx tsx tests/bench/catalogue.ts [kits] [kits that are placed alike] [workers]
 *
 * 1,000 kits of which 25 each differ in values alone, unless told otherwise; with 1 in place of 25 every kit is placed for itself, which takes
 * half an hour on two cores. Prints ratios within one run.
 */
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { must } from '../../src/common/must.ts';
import { loadKit } from '../../src/files/load.ts';
import { prepare, render, renderInline, sheetsOf } from '../../src/pipeline.ts';
import { drawPlan, isPlan, planOf, preparePlan } from '../../src/publish/draw-plan.ts';

const [kits = 1000, alike = 25, workers = availableParallelism()] = process.argv.slice(2).map(Number);
const BASES = ['heron-ss.yaml', 'wren-hs.yaml', 'kestrel-hss.yaml', 'osprey-hsh.yaml'];
const made: string[] = [];

/** Every base in so many layouts, made different by where one more ground point is, each with so many values of the capacitor. */
function newCatalogue(count: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'solderleaf-bench-'));
  made.push(folder);
  for (const name of BASES) cpSync(join('samples', name), join(folder, 'kits', name));
  writeFileSync(join(folder, 'seats.yaml'), seats(0));
  const each = Math.ceil(count / BASES.length);
  const values = Math.min(alike, each);
  const layouts = Math.ceil(each / values);
  const axis = (n: number, one: (i: number) => string): string =>
    Array.from({ length: n }, (_, i) => `      ${i + 1}: ${one(i)}\n`).join('');
  const families = BASES.map((name) =>
    [
      `  - kit: ${name.replace('.yaml', '')}-{layout}-{value}`,
      `    title: ${name.replace('.yaml', '')} {layout} {value}`,
      `    extends: ./kits/${name}`,
      '    matrix:',
      `      layout:\n${axis(layouts, (i) => `{ parts: { point-${i}: { kind: ground-point, label: Tag } }, joints: [point-${i}.1 > output.sleeve] }`).replace(/^ {6}/gm, '        ')}`,
      `      value:\n${axis(values, (i) => `{ output-load: { cable: ${300 + i}p } }`).replace(/^ {6}/gm, '        ')}`,
    ].join('\n'),
  );
  writeFileSync(
    join(folder, 'solderleaf.yaml'),
    `outputs: [drawing]\narrangement: seats.yaml\nfamilies:\n${families.join('')}`,
  );
  return folder;
}

const seats = (at: number): string =>
  `arrangement: bench\nabout: The jack has a place.\nseats:\n  - { seat: jack, at: [${60 + at}, 40] }\n`;

interface Run {
  readonly seconds: number;
  /** Mebibytes, at the most. */
  readonly memory: number;
  readonly said: string;
}

/** Builds in a process of its own, and watches its memory (Linux). */
async function build(folder: string): Promise<Run> {
  const start = performance.now();
  const child = spawn(process.execPath, ['dist/cli.js', 'build', folder, '--workers', String(workers)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let [said, memory] = ['', 0];
  child.stdout.on('data', (text) => {
    said += text;
  });
  const watch = setInterval(() => {
    try {
      const [, kibibytes] = /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8')) ?? [];
      memory = Math.max(memory, Number(kibibytes ?? 0) / 1024);
    } catch {
      // It has just ended, or this is not Linux.
    }
  }, 50);
  await new Promise((end) => child.on('close', end));
  clearInterval(watch);
  return { seconds: (performance.now() - start) / 1000, memory, said: said.trim().split('\n').at(-1) ?? '' };
}

/** Seconds that a base takes to be read, placed and drawn, warm, on the average of the bases. */
async function warmDraw(folder: string): Promise<number> {
  const options = { out: '', formats: ['svg'] as const, mode: 'static' as const };
  const drawer = { prepare, render, renderInline, sheetsOf };
  let seconds = 0;
  for (const round of ['to warm up', 'to measure'])
    for (const name of BASES) {
      const start = performance.now();
      const plan = planOf(name, await loadKit(join(folder, 'kits', name)), {
        ...options,
        arrangement: join(folder, 'seats.yaml'),
      });
      if (!isPlan(plan)) throw new Error(name);
      const prepared = await preparePlan(plan, options, drawer);
      if ('failed' in prepared) throw new Error(name);
      const drawn = drawPlan(plan, prepared, options, drawer);
      if ('failed' in drawn) throw new Error(name);
      for (const { files } of drawn.drawings) for (const { content } of files) await content();
      if (round === 'to measure') seconds += (performance.now() - start) / 1000;
    }
  return seconds / BASES.length;
}

const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;
const say = (what: string, { seconds, said }: Run, full: number): void =>
  console.log(
    `${what.padEnd(34)} ${seconds.toFixed(1)} s, ${percent(seconds, full)} of the full build (${said})`,
  );

try {
  const folder = newCatalogue(kits);
  const full = await build(folder);
  const count = Number(/^\d+/.exec(full.said)?.[0]);
  const placed = readdirSync(join(folder, '.solderleaf/cache/placed')).length;
  console.log(`${full.said}; ${placed} layouts, ${workers} workers`);
  console.log(
    `full build                         ${full.seconds.toFixed(1)} s, ${full.memory.toFixed(0)} MiB`,
  );
  say('no change', await build(folder), full.seconds);
  // The resistance of a pickup is in every base, and in every kit then.
  for (const name of BASES) {
    const file = join(folder, 'kits', name);
    const text = readFileSync(file, 'utf8');
    const [found, digits] = must(/resistance: (\d+)/.exec(text) ?? undefined, `a resistance in ${name}`);
    writeFileSync(file, text.replace(found, `resistance: ${Number(digits) + 1}`));
  }
  say('one value, in every kit', await build(folder), full.seconds);
  writeFileSync(join(folder, 'seats.yaml'), seats(4));
  say('one arrangement, of every kit', await build(folder), full.seconds);
  const single = await warmDraw(folder);
  const perKit = full.seconds / count;
  console.log(
    `per kit ${perKit.toFixed(2)} s; a warm draw ${single.toFixed(2)} s, by ${workers} workers ${(single / workers).toFixed(2)} s: ratio ${(perKit / (single / workers)).toFixed(2)}`,
  );
  const tenth = await build(newCatalogue(kits / 10));
  console.log(
    `memory of ${count} kits against a tenth: ${full.memory.toFixed(0)} to ${tenth.memory.toFixed(0)} MiB, ratio ${(full.memory / tenth.memory).toFixed(2)}`,
  );
} finally {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
}
