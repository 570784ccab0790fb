/**
 * How drawings are laid out, kit by kit: crossings, bends a wire, drawn length beside the straight way and the worst of a wire, the longest
 * wire, the longest leg in pots, empty paper (squares of 40 units that nothing is in), processor time.
 *
 * Arguments: part of the files' names, steps of the search, arrangement; all kits and circuits that ship, the usual steps, free flow.
 */
import { readdirSync } from 'node:fs';
import { findArrangement } from '../../src/files/layouts.ts';
import { loadKit } from '../../src/files/load.ts';
import { prepare } from '../../src/pipeline.ts';
import { extent } from '../../src/place/frame.ts';
import { DEFAULT_EFFORT } from '../../src/place/improve.ts';
import type { Placement } from '../../src/place/placement.ts';
import { measure, type Spot } from './measure.ts';

const lengthOf = (points: readonly Spot[]): number =>
  points
    .slice(1)
    .reduce(
      (sum, b, i) => sum + Math.abs(b.x - (points[i]?.x ?? 0)) + Math.abs(b.y - (points[i]?.y ?? 0)),
      0,
    );

/** Diameter of a pot, drawing units. */
const POT = 112;

function row({ wires, parts, width, height }: Placement) {
  const lines = wires.map(({ points }) => points);
  const { crossings, bends, length } = measure(lines);
  const detours = lines.map((points) => {
    const [a, b] = [points[0], points.at(-1)];
    const direct = a && b ? Math.abs(a.x - b.x) + Math.abs(a.y - b.y) : 0;
    return direct < 1 ? 1 : lengthOf(points) / direct;
  });
  // A short wire round a corner of its own part is no detour.
  const long = detours.filter((_, i) => lengthOf(lines[i] ?? []) > 150);
  const direct = lines.reduce((sum, p) => {
    const [a, b] = [p[0], p.at(-1)];
    return sum + (a && b ? Math.abs(a.x - b.x) + Math.abs(a.y - b.y) : 0);
  }, 0);
  const leg = Math.max(
    0,
    ...wires.filter(({ joint }) => joint.kind === 'leg').map(({ points }) => lengthOf(points)),
  );
  const cells = new Set<string>();
  const fill = (x0: number, y0: number, x1: number, y1: number): void => {
    for (let x = Math.floor(x0 / 40); x <= Math.floor(x1 / 40); x++)
      for (let y = Math.floor(y0 / 40); y <= Math.floor(y1 / 40); y++) cells.add(`${x} ${y}`);
  };
  for (const { frame } of parts) {
    const size = extent(frame);
    fill(frame.x, frame.y, frame.x + size.width, frame.y + size.height);
  }
  for (const points of lines)
    points.slice(1).forEach((b, i) => {
      const a = points[i] ?? b;
      fill(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y));
    });
  const all = Math.ceil(width / 40) * Math.ceil(height / 40);
  return {
    crossings,
    bends: bends / lines.length,
    detour: length / direct,
    worst: Math.max(1, ...long),
    longest: Math.max(...lines.map(lengthOf)),
    leg: leg / POT,
    empty: Math.max(0, 1 - cells.size / all),
  };
}

const files = ['samples', 'samples/circuits', 'tests/bench/kits', 'tests/bench/large']
  .flatMap((folder) => readdirSync(folder).map((name) => `${folder}/${name}`))
  .filter((name) => name.endsWith('.yaml') && name.includes(process.argv[2] ?? ''));
const steps = Number(process.argv[3] ?? DEFAULT_EFFORT.steps);
const arrangementName = process.argv[4] ?? 'free-flow';
const arrangement = findArrangement(arrangementName);
if (typeof arrangement === 'string') throw new Error(arrangement);
const total = { crossings: 0, bends: 0, detour: 0, worst: 0, longest: 0, leg: 0, empty: 0, ms: 0 };
console.log(`${'kit'.padEnd(26)}cross  bends  detour  worst  longest  leg/pot  empty     ms`);
const show = (name: string, r: typeof total): void =>
  console.log(
    `${name.padEnd(26)}${r.crossings.toFixed(r.crossings % 1 ? 1 : 0).padStart(5)}${r.bends.toFixed(2).padStart(7)}${r.detour.toFixed(2).padStart(8)}${r.worst.toFixed(1).padStart(7)}${r.longest.toFixed(0).padStart(9)}${r.leg.toFixed(1).padStart(9)}${(100 * r.empty).toFixed(0).padStart(5)} %${r.ms.toFixed(0).padStart(7)}`,
  );
for (const file of files) {
  const { kit } = await loadKit(file);
  if (!kit) throw new Error(`${file} does not read`);
  const start = process.cpuUsage().user;
  const { placement } = await prepare(kit, arrangement, { effort: { ...DEFAULT_EFFORT, steps } });
  const r = { ...row(placement), ms: (process.cpuUsage().user - start) / 1000 };
  show(kit.id, r);
  for (const key of Object.keys(total) as (keyof typeof total)[]) total[key] += r[key] / files.length;
}
show('mean', total);
