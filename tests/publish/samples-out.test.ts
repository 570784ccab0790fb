/** The drawings of the samples in `out/` are what the program draws today, to the byte. */
import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';

it.skipIf(process.env.SOLDERLEAF_WITHOUT_OUT === '1')('out is up to date', { timeout: 300_000 }, () => {
  const { status, stdout } = spawnSync(
    process.execPath,
    ['dist/cli.js', 'draw', 'samples', '--out', 'out', '--check'],
    { encoding: 'utf8' },
  );
  expect(stdout).toMatch(/^unchanged /m);
  expect(stdout).not.toMatch(/^(?:differs|missing)/m);
  expect(status).toBe(0);
});
