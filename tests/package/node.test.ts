/** The built command on other versions of Node (the npm packages that hold them): the same bytes. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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

it.each(['22', '24'])('Node %s draws what this Node draws', { timeout: 240_000 }, (version) => {
  const home = mkdtempSync(join(folder, 'home-'));
  writeFileSync(join(home, 'package.json'), '{}');
  const name = `node-${process.platform}-${process.arch}`;
  execFileSync('npm', ['install', '--prefer-offline', '--no-audit', '--no-fund', `${name}@${version}`], {
    cwd: home,
    stdio: 'pipe',
  });
  const node = join(home, 'node_modules', name, 'bin/node');
  expect(execFileSync(node, ['--version'], { encoding: 'utf8' })).toMatch(new RegExp(`^v${version}\\.`));
  expect(drawnBy(node, version).equals(drawnBy(process.execPath, 'here'))).toBe(true);
});
