/** A leaflet's time as a ratio to drawing the kit, cold as a command and warm within one process. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findArrangement } from '../../src/files/layouts.ts';
import { loadKit } from '../../src/files/load.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { DEFAULT_EFFORT } from '../../src/place/improve.ts';
import { leafletContent } from '../../src/publish/leaflet-plan.ts';

const ROUNDS = 5;
const FILES = ['samples/heron-ss.yaml', 'samples/kestrel-hss.yaml', 'samples/osprey-hsh.yaml'];

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[numbers.length >> 1] ?? 0;

async function timed(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

const out = mkdtempSync(join(tmpdir(), 'solderleaf-'));
const command = (name: string, file: string): Promise<number> =>
  timed(() => {
    rmSync(out, { recursive: true, force: true });
    spawnSync(process.execPath, ['dist/cli.js', name, file, '--out', out]);
  });

const row = (what: string, pairs: readonly (readonly [number, number])[]): string => {
  const [leaflet, drawing] = [median(pairs.map(([one]) => one)), median(pairs.map(([, one]) => one))];
  const ratio = median(pairs.map(([one, other]) => one / other)).toFixed(2);
  return `${what.padEnd(46)}leaflet ${leaflet.toFixed(0)} ms  drawing ${drawing.toFixed(0)} ms  ratio ${ratio}`;
};

for (const file of FILES) {
  const { kit } = await loadKit(file);
  if (!kit) throw new Error(`${file} does not read`);
  const arrangement = findArrangement(kit.arrangement);
  if (typeof arrangement === 'string') throw new Error(arrangement);
  const cold: [number, number][] = [];
  const warm: [number, number][] = [];
  for (let i = 0; i < ROUNDS; i++) {
    cold.push([await command('leaflet', file), await command('draw', file)]);
    // Placed anew each time, as what is worked out of a placement is remembered.
    const prepared = () => prepare(kit, arrangement, { effort: { ...DEFAULT_EFFORT, steps: 0 } });
    const [one, other] = [await prepared(), await prepared()];
    const made = await timed(() => leafletContent(one, 'pdf', { formats: ['pdf'] }));
    const drawn = await timed(() => render(other));
    if (i > 0) warm.push([made, drawn]);
  }
  console.log(row(`${kit.id}, cold, as commands`, cold));
  console.log(row(`${kit.id}, warm, from one placement each`, warm));
}
rmSync(out, { recursive: true, force: true });
