/** Crossings, bends and wire length: as elkjs lays the same graph out by itself, and ours before and after the search. */
import { readdirSync, readFileSync } from 'node:fs';
import ELKBundled from 'elkjs/lib/elk.bundled.js';
import { readKit } from '../../src/describe/read.ts';
import { findArrangement } from '../../src/files/layouts.ts';
import { prepare } from '../../src/pipeline.ts';
import { DEFAULT_EFFORT } from '../../src/place/improve.ts';
import { elkDrawing } from './elk-alone.ts';
import { type Measured, measure, type Spot } from './measure.ts';

const ELK = ELKBundled as unknown as typeof ELKBundled.default;
const cell = (m: Measured): string => `${m.crossings} / ${m.bends} / ${m.length}`.padEnd(16);

console.log('crossings / bends / wire length, drawing units');
console.log(
  `${'kit'.padEnd(14)}${'arrangement'.padEnd(16)}${'elkjs unsearched'.padEnd(18)}${'ours, first'.padEnd(18)}${'ours, searched'.padEnd(18)}fewer crossings than elkjs   time`,
);
for (const file of readdirSync('samples').filter((name) => name.endsWith('.yaml'))) {
  const { kit } = readKit(readFileSync(`samples/${file}`, 'utf8'), file);
  if (!kit) throw new Error(`${file} does not read`);
  const laid = await new ELK().layout(elkDrawing(kit));
  const theirs = measure(
    (laid.edges ?? []).flatMap(({ sections = [] }) =>
      sections.map(({ startPoint, bendPoints = [], endPoint }): Spot[] => [
        startPoint,
        ...bendPoints,
        endPoint,
      ]),
    ),
  );
  for (const name of new Set(['free-flow', kit.arrangement])) {
    const arrangement = findArrangement(name);
    if (typeof arrangement === 'string') throw new Error(arrangement);
    const laidOut = async (steps: number): Promise<Measured> => {
      const { placement } = await prepare(kit, arrangement, { effort: { ...DEFAULT_EFFORT, steps } });
      return measure(placement.wires.map(({ points }) => points));
    };
    const first = await laidOut(0);
    const start = performance.now();
    const searched = await laidOut(DEFAULT_EFFORT.steps);
    const time = performance.now() - start;
    const fewer = Math.round((1 - searched.crossings / theirs.crossings) * 100);
    console.log(
      `${kit.id.padEnd(14)}${name.padEnd(16)}${cell(theirs).padEnd(18)}${cell(first).padEnd(18)}${cell(searched).padEnd(18)}${`${fewer} %`.padStart(6)}${`${time.toFixed(0)} ms`.padStart(29)}`,
    );
  }
}
