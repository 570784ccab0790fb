/**
 * How time grows with the size of a kit: `check`, `draw` and `loads` of the built program on kits made here, far larger
 * than any guitar's. Each is also given as a ratio to an empty run of the program on this machine. Then how the time for what
 * sounds and for the loads grows with the number of settings of the switches, all else alike: it should double as they do. Last
 * what a shop page loads of the HSS kit: `size.ts page` prints that alone.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { solveLoads } from '../../src/analyse/index.ts';
import { kitFromValue } from '../../src/checked.ts';
import { seeded } from '../../src/common/random.ts';
import { inkStyles } from '../../src/draw/ink-roles.ts';
import { findArrangement } from '../../src/files/layouts.ts';
import { loadKit } from '../../src/files/load.ts';
import { prepare, render, renderInline } from '../../src/pipeline.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { manySettings } from './settings.ts';

interface Large {
  readonly parts: Record<string, object>;
  readonly joints: object[];
}

const start = (): Large => ({
  parts: { p1: { kind: 'single-coil' }, output: { kind: 'jack' } },
  joints: [{ wire: 'p1.ground > output.sleeve' }],
});

/** Resistors one after another to the jack, a capacitor to ground behind each. */
function ladder(count: number): Large {
  const kit = start();
  let before = 'p1.hot';
  for (let i = 1; Object.keys(kit.parts).length + 2 <= count; i++) {
    kit.parts[`r${i}`] = { kind: 'resistor', value: '100' };
    kit.parts[`c${i}`] = { kind: 'capacitor', value: '1p' };
    kit.joints.push(
      { wire: `${before} > r${i}.1` },
      { wire: `r${i}.2 > c${i}.1` },
      { wire: `c${i}.2 > ${i === 1 ? 'output.sleeve' : `c${i - 1}.2`}` },
    );
    before = `r${i}.2`;
  }
  kit.joints.push({ wire: `${before} > output.tip` });
  return kit;
}

/** Resistors, capacitors and pots between hot and ground, each at lugs drawn by chance where there is room. */
function tangle(count: number): Large {
  const random = seeded(count);
  const kit = start();
  kit.joints.push({ wire: 'p1.hot > output.tip' });
  const hot = ['p1.hot', 'output.tip'];
  const ground = ['p1.ground', 'output.sleeve'];
  const used = new Map<string, number>([...hot, ...ground].map((lug) => [lug, 1]));
  const join = (lug: string, to: string[]): void => {
    const free = to.filter((name) => (used.get(name) ?? 0) < 3);
    const other = free[Math.floor(random() * free.length)] ?? 'output.tip';
    for (const end of [lug, other]) used.set(end, (used.get(end) ?? 0) + 1);
    to.push(lug);
    kit.joints.push({ wire: `${lug} > ${other}` });
  };
  for (let i = 1; Object.keys(kit.parts).length < count; i++) {
    const draw = random();
    const name = `x${i}`;
    if (draw < 0.25) {
      kit.parts[name] = { kind: 'pot', value: '10M', taper: 'log' };
      join(`${name}.3`, hot);
      join(`${name}.1`, ground);
    } else {
      kit.parts[name] = draw < 0.6 ? { kind: 'resistor', value: '10M' } : { kind: 'capacitor', value: '1p' };
      join(`${name}.1`, hot);
      join(`${name}.2`, ground);
    }
  }
  return kit;
}

/** A pickup through four five-way levers, each of them one way to the next whatever its position. */
function levers(): Large {
  const kit = start();
  let before = 'p1.hot';
  for (let i = 1; i <= 4; i++) {
    kit.parts[`s${i}`] = { kind: 'lever-5' };
    kit.parts[`r${i}`] = { kind: 'resistor', value: `${i}k` };
    kit.joints.push(
      { wire: `${before} > s${i}.A0` },
      { wire: `s${i}.A1 > s${i}.A2` },
      { wire: `s${i}.A2 > s${i}.A3` },
      { wire: `s${i}.A3 > r${i}.1` },
      { wire: `r${i}.2 > s${i}.A1` },
    );
    before = `s${i}.A1`;
  }
  kit.joints.push({ wire: `${before} > output.tip` });
  return kit;
}

/** A row for each number of settings, with the time for one setting beside that of the row before. */
function growth(): void {
  console.log('settings      what sounds       one       ratio      loads       one       ratio');
  let before: readonly number[] | undefined;
  for (const throws of [6, 3, 6, 12]) {
    const { kit } = kitFromValue(manySettings(throws), 'settings');
    if (!kit) throw new Error('a kit of the table has an error');
    const [sounding, loads] = [0, 1].map((which) =>
      Math.min(
        ...[1, 2, 3, 4, 5].map(() => {
          const begun = performance.now();
          // A copy, as what was built once is kept.
          const circuit = buildCircuit({ ...kit });
          const built = performance.now();
          solveLoads(circuit);
          return which === 0 ? built - begun : performance.now() - built;
        }),
      ),
    );
    const count = buildCircuit(kit).states.length;
    const each = [sounding ?? 0, loads ?? 0].map((time) => time / count);
    // The first run only warms the program up.
    if (before)
      console.log(
        [
          String(count).padStart(8),
          ...[sounding ?? 0, loads ?? 0].map((time, i) =>
            [
              `${time.toFixed(1)} ms`.padStart(i === 0 ? 17 : 11),
              `${(each[i] ?? 0).toFixed(3)} ms`.padStart(10),
              `${before?.[i] === undefined ? '' : `× ${((each[i] ?? 0) / before[i]).toFixed(2)}`}`.padStart(
                12,
              ),
            ].join(''),
          ),
        ].join(''),
      );
    before = before ? each : [];
  }
}

/** Bytes of what a page loads, as it is and compressed. */
async function onPage(): Promise<void> {
  const { kit } = await loadKit('samples/kestrel-hss.yaml');
  const arrangement = findArrangement(kit?.arrangement ?? '');
  if (!kit || typeof arrangement === 'string') throw new Error('the HSS kit has an error');
  const one = await prepare(kit, arrangement);
  for (const [name, text] of [
    ['static, whole sheet', render(one).svg],
    ['inline, whole sheet', renderInline(one)],
    ['inline, wiring', renderInline(one, { only: ['drawing'] })],
    ['inks of theme.css', inkStyles()],
  ] as const)
    console.log(
      `${name.padEnd(24)}${`${text.length} bytes`.padStart(16)}${`${gzipSync(text, { level: 9 }).length} compressed`.padStart(22)}`,
    );
}

const folder = mkdtempSync(join(tmpdir(), 'size-'));
const run = (
  ...args: string[]
): { readonly time: number; readonly status: number | null; readonly said: string } => {
  const begun = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, ['dist/cli.js', ...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return { time: (performance.now() - begun) / 1000, status, said: `${stdout}${stderr}` };
};
try {
  const empty = Math.min(...[1, 2, 3].map(() => run('--version').time));
  const only = process.argv[2];
  for (const [name, kit, commands] of [
    ['ladder-150', ladder(150), ['check', 'draw']],
    ['tangle-150', tangle(150), ['check', 'draw']],
    ['ladder-400', ladder(400), ['check', 'draw']],
    ['tangle-400', tangle(400), ['check', 'draw']],
    ['states-625', levers(), ['check', 'loads']],
  ] as const) {
    if (only && only !== name) continue;
    const file = join(folder, `${name}.json`);
    writeFileSync(file, JSON.stringify({ kit: name, title: name, ...kit }));
    for (const command of commands) {
      const out = command === 'draw' ? ['--out', join(folder, 'out'), '--arrangement', 'free-flow'] : [];
      const { time, status, said } = run(command, file, ...out);
      console.log(
        `${name.padEnd(14)}${command.padEnd(8)}${`${time.toFixed(2)} s`.padStart(9)}${`${(time / empty).toFixed(0)} × an empty run`.padStart(22)}  exit ${status}`,
      );
      if (status !== 0) console.log(said.slice(0, 600));
    }
  }
  if (!only || only === 'settings') growth();
  if (!only || only === 'page') await onPage();
} finally {
  rmSync(folder, { recursive: true });
}
