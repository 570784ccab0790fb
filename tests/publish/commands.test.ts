/** The commands as a user runs them: what they print, write and answer. Uses the build that `npm test` makes first. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const run = (...args: string[]) =>
  spawnSync(process.execPath, ['dist/cli.js', ...args], { encoding: 'utf8' });

it('draws several kits, a bad one among them, and exits 1', { timeout: 30_000 }, () => {
  const bad = join(folder, 'bad.yaml');
  writeFileSync(bad, 'kit: ../evil\ntitle: x\nparts: {}\njoints: []\n');
  const out = join(folder, 'out');
  const { status, stderr } = run('draw', bad, 'samples/heron-ss.yaml', '--out', out, '--format', 'svg,png');
  expect(status).toBe(1);
  expect(stderr).toContain('bad.yaml:1:6  fault  bad-kit-id');
  expect(stderr).not.toMatch(/\n\s+at /);
  expect(readdirSync(out).sort()).toEqual(['heron-ss.png', 'heron-ss.svg']);
});

it('--check writes nothing, passes on what is drawn, and fails on what differs', { timeout: 30_000 }, () => {
  const out = join(folder, 'checked');
  expect(run('draw', 'samples/heron-ss.yaml', '--out', out, '--check').status).toBe(1);
  expect(() => readdirSync(out)).toThrow();
  expect(run('draw', 'samples/heron-ss.yaml', '--out', out).status).toBe(0);
  expect(run('draw', 'samples/heron-ss.yaml', '--out', out, '--check').status).toBe(0);
  const file = join(out, 'heron-ss.svg');
  writeFileSync(file, 'old');
  expect(run('draw', 'samples/heron-ss.yaml', '--out', out, '--check').status).toBe(1);
  expect(readFileSync(file, 'utf8')).toBe('old');
});

it('loads --json gives the figures unrounded, in ohms', () => {
  const { status, stdout } = run('loads', 'samples/kestrel-hss.yaml', '--json');
  expect(status).toBe(0);
  const { kit, states } = JSON.parse(stdout);
  expect(kit).toBe('kestrel-hss');
  expect(states[1].state).toEqual({ selector: 2 });
  expect(states[1].sounding).toEqual(['middle', 'bridge']);
  // The trade handbook's table, worked by hand: 500 k in parallel with 470 k.
  expect(states[1].pickups.middle.dcLoad).toBeCloseTo((500e3 * 470e3) / 970e3, 3);
});

it('answers 2 to wrong usage and 1 to a kit or an arrangement that is not there', { timeout: 30_000 }, () => {
  expect(run('solder').status).toBe(2);
  expect(run('draw', 'samples', '--format', 'bmp').status).toBe(2);
  expect(run('loads', 'nowhere.yaml').status).toBe(1);
  const { status, stderr } = run(
    'draw',
    'samples/heron-ss.yaml',
    '--out',
    folder,
    '--arrangement',
    'plate-rwo',
  );
  expect(status).toBe(1);
  expect(stderr).toContain('plate-row');
  const own = join(folder, 'own-layout.yaml');
  writeFileSync(own, 'arrangement: own\nseats: []\n');
  const wrong = run('draw', 'samples/heron-ss.yaml', '--out', folder, '--arrangement', own);
  expect(wrong.status).toBe(1);
  expect(wrong.stderr).toMatch(/bad-arrangement[\s\S]*own-layout\.yaml: about:/);
  expect(
    run('draw', 'samples/heron-ss.yaml', '--out', folder, '--arrangement', 'none.yaml').stderr,
  ).toContain('none.yaml: there is no such file');
  expect(run('--version').status).toBe(0);
  expect(run('--help').status).toBe(0);
});
