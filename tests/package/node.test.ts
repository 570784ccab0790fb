/** The built command on other versions of Node (the npm packages that hold them): the same bytes. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, expect, it } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-node-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function drawnBy(node: string, out: string): Buffer {
  const { status, stderr } = spawnSync(
    node,
    ['dist/cli.js', 'draw', 'samples/wren-hs.yaml', '--out', join(folder, out), '--effort', '20'],
    { encoding: 'utf8' },
  );
  expect([status, stderr]).toEqual([0, '']);
  return readFileSync(join(folder, out, 'wren-hs.svg'));
}

/** What a program says of its version; empty where it is not there, or is not whole. */
const versionOf = (node: string): string => spawnSync(node, ['--version'], { encoding: 'utf8' }).stdout ?? '';

/** A version of Node, from one run to the next: unpacking its hundred megabytes takes as long as the rest of this file. */
function installed(version: string): string {
  const home = resolve('node_modules/.cache/solderleaf', `node-${version}`);
  const name = `node-${process.platform}-${process.arch}`;
  const node = join(home, 'node_modules', name, 'bin/node');
  if (versionOf(node).startsWith(`v${version}.`)) return node;
  rmSync(home, { recursive: true, force: true });
  mkdirSync(home, { recursive: true });
  writeFileSync(join(home, 'package.json'), '{}');
  execFileSync('npm', ['install', '--prefer-offline', '--no-audit', '--no-fund', `${name}@${version}`], {
    cwd: home,
    stdio: 'pipe',
  });
  return node;
}

it.each(['22', '24'])('Node %s draws what this Node draws', { timeout: 240_000 }, (version) => {
  const node = installed(version);
  expect(versionOf(node)).toMatch(new RegExp(`^v${version}\\.`));
  expect(drawnBy(node, version).equals(drawnBy(process.execPath, 'here'))).toBe(true);
});
