/** `response` as a user runs it. Uses the build that `npm test` makes first. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { decibels, knobSettings, solveKnobSettings, solveResponse } from '../../src/analyse/index.ts';
import { loadKit } from '../../src/files/load.ts';
import { drawResponse } from '../../src/pipeline.ts';
import { buildCircuit } from '../../src/solve/build.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const SAMPLE = 'samples/kestrel-hss.yaml';
const run = (...args: string[]) =>
  spawnSync(process.execPath, ['dist/cli.js', 'response', ...args], { encoding: 'utf8' });
const kitOf = async (file: string) => {
  const { kit } = await loadKit(file);
  if (!kit) throw new Error(`${file} has errors`);
  return kit;
};

it('prints a line for each sounding pickup and one for several together', async () => {
  const { status, stdout } = run(SAMPLE);
  expect(status).toBe(0);
  const circuit = buildCircuit(await kitOf(SAMPLE));
  const { states } = solveResponse(circuit, { points: 1 });
  const lines = stdout.trimEnd().split('\n').slice(4);
  const wanted = states.flatMap(({ pickups, together }) => [
    ...pickups.map((one) => [one.pickup, one.shape, one.difference] as const),
    ...(pickups.length > 1 && together ? [['together', together.shape, {}] as const] : []),
  ]);
  expect(lines).toHaveLength(wanted.length);
  wanted.forEach(([name, shape, difference], i) => {
    const line = (lines[i] ?? '').replaceAll('−', '-');
    expect(line).toContain(`${name} `);
    expect(line).toContain(` ${shape.resonance?.frequency.toFixed(0)} Hz`);
    expect(line).toContain(` +${shape.resonance?.height.toFixed(1)} dB`);
    expect(line).toContain(` ${shape.cutoff?.toFixed(0)} Hz`);
    if ('percent' in difference && difference.percent !== undefined)
      expect(Number(/(\S+) %/.exec(line)?.[1])).toBeCloseTo(difference.percent, 0);
  });
});

it('--steps has every setting of the knobs in every state', async () => {
  const { status, stdout } = run(SAMPLE, '--steps');
  expect(status).toBe(0);
  const circuit = buildCircuit(await kitOf(SAMPLE));
  const entries = solveKnobSettings(circuit);
  expect(entries).toHaveLength(circuit.states.length * knobSettings.length);
  const lines = stdout.trimEnd().split('\n').slice(4);
  expect(lines).toHaveLength(
    entries.reduce((sum, { pickups }) => sum + pickups.length + (pickups.length > 1 ? 1 : 0), 0),
  );
  expect(lines.filter((line) => line.includes('no output')).length).toBeGreaterThan(0);
});

describe('--csv', () => {
  it('has a column a state, one for each of several pickups alone, and one a reference', async () => {
    const { status, stdout } = run(SAMPLE, '--csv', '--tone', '7');
    expect(status).toBe(0);
    const [head = '', ...rows] = stdout.trimEnd().split('\n');
    const heads = [...head.matchAll(/"([^"]*)"|([^,]+)/g)].map((found) => found[1] ?? found[2]);
    const circuit = buildCircuit(await kitOf(SAMPLE));
    const { frequencies, states } = solveResponse(circuit, { knobs: { volume: 10, tone: 7 } });
    // Five states, two of them of two pickups, three references and the frequency.
    expect(heads).toHaveLength(1 + 5 + 4 + 3);
    expect(heads[2]).toBe('selector 2: Middle + Bridge, dB');
    expect(heads.at(-1)).toBe('reference: Bridge, dB');
    expect(rows).toHaveLength(frequencies.length);
    const columns = [
      ...states.flatMap(({ pickups, together }) => [
        ...(together ? [together] : []),
        ...(pickups.length > 1 ? pickups : []),
      ]),
      ...['neck', 'middle', 'bridge'].flatMap(
        (name) => states.flatMap((one) => one.pickups).find((one) => one.pickup === name)?.reference ?? [],
      ),
    ];
    for (const i of [0, 100, 250, 399]) {
      const cells = (rows[i] ?? '').split(',').map(Number);
      expect(cells).toHaveLength(heads.length);
      expect(cells[0]).toBeCloseTo(frequencies[i] ?? 0, 1);
      columns.forEach(({ gain }, c) => {
        expect(cells[c + 1]).toBeCloseTo(decibels(gain[i] ?? 0), 2);
      });
    }
  });

  it('goes to a file just as to the terminal', () => {
    const out = join(folder, 'deep', 'values.csv');
    expect(run(SAMPLE, '--csv', '--out', out).status).toBe(0);
    expect(readFileSync(out, 'utf8')).toBe(run(SAMPLE, '--csv').stdout);
  });
});

it('writes the plot, whole, as SVG and PNG, at the setting asked for', async () => {
  const out = join(folder, 'plot.svg');
  const first = run(SAMPLE, '--out', out, '--volume', '7', '--tone', '5');
  expect([first.status, first.stdout]).toEqual([0, `written   ${out}\n`]);
  expect(readFileSync(out, 'utf8')).toBe(drawResponse(await kitOf(SAMPLE), { volume: 7, tone: 5 }));
  expect(run(SAMPLE, '--out', out, '--volume', '7', '--tone', '5').stdout).toBe(`unchanged ${out}\n`);
  const png = join(folder, 'plot.png');
  expect(run(SAMPLE, '--out', png).status).toBe(0);
  expect(readFileSync(png).subarray(1, 4).toString()).toBe('PNG');
  expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
});

it.each([
  [['--out', 'plot.bmp'], '.svg, .png, .csv'],
  [['--out', 'plot'], '.svg, .png, .csv'],
  [['--csv', '--out', 'plot.svg'], '.csv'],
  [['--volume', '11'], '0 to 10'],
  [['--tone', 'x'], '0 to 10'],
  [['--tone', '-1'], '0 to 10'],
  [['--volume', ''], '0 to 10'],
  [['--steps', '--csv'], '--volume'],
  [['--steps', '--out', 'plot.svg'], '--volume'],
  [['--steps', '--volume', '5'], '--volume'],
  [[], 'kit'],
])('answers 2 to %j and says what is allowed', (args, allowed) => {
  const { status, stdout, stderr } = run(...(args.length > 0 ? [SAMPLE, ...args] : []));
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).toContain(allowed);
  expect(stderr).not.toMatch(/\n\s+at /);
  expect(['plot', 'plot.bmp', 'plot.svg'].filter((name) => existsSync(name))).toEqual([]);
});

it('answers 1 to a kit with errors, and writes nothing', () => {
  const bad = join(folder, 'bad.yaml');
  writeFileSync(bad, 'kit: ../evil\ntitle: x\nparts: {}\njoints: []\n');
  const out = join(folder, 'never.svg');
  const { status, stderr } = run(bad, '--out', out);
  expect(status).toBe(1);
  expect(stderr).toContain('bad-kit-id');
  expect(existsSync(out)).toBe(false);
});

it.each([
  ['notes.csv', 'date,hours\n', 'a table'],
  ['logo.svg', '<svg xmlns="http://www.w3.org/2000/svg"/>', 'a plot'],
])('leaves %s alone, which somebody else wrote', (name, text, what) => {
  const file = join(folder, name);
  writeFileSync(file, text);
  const { status, stdout, stderr } = run(SAMPLE, '--out', file);
  expect([status, stdout]).toEqual([1, '']);
  expect(stderr).toContain(`not written ${file}: it already exists and is not ${what} of this kit`);
  expect(readFileSync(file, 'utf8')).toBe(text);
});

it.each(['again.csv', 'again.svg'])('puts %s in the place of its own earlier version', (name) => {
  const file = join(folder, name);
  expect(run(SAMPLE, '--out', file, '--tone', '5').status).toBe(0);
  const before = readFileSync(file, 'utf8');
  expect(run(SAMPLE, '--out', file).stdout).toBe(`written   ${file}\n`);
  expect(readFileSync(file, 'utf8')).not.toBe(before);
});
