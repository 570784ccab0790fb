/** The pictures of the circuits in `out/` are what the program draws today. */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';

it.skipIf(process.env.SOLDERLEAF_WITHOUT_OUT === '1')(
  'out/circuits is up to date, with every circuit and nothing else',
  () => {
    const { status, stdout } = spawnSync(
      process.execPath,
      ['dist/cli.js', 'circuits', '--pictures', 'out/circuits', '--check'],
      { encoding: 'utf8' },
    );
    expect(stdout).not.toMatch(/^(?:differs|missing)/m);
    expect(status).toBe(0);
    const circuits = readdirSync('samples/circuits').map((name) => name.replace('.yaml', '.svg'));
    expect(readdirSync('out/circuits').sort()).toEqual([...circuits, 'index.css', 'index.html'].sort());
  },
  600_000,
);
