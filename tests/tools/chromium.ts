/** Finds Debian's Chromium, and installs it where the tests may; else says what to install. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const PATH = process.env.CHROMIUM ?? '/usr/bin/chromium';

export function chromium(): string {
  if (existsSync(PATH)) return PATH;
  const run = (...args: string[]) =>
    spawnSync('apt-get', args, {
      stdio: 'inherit',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  if (process.getuid?.() === 0) {
    run('update', '-qq');
    run('install', '-y', '-qq', 'chromium');
  }
  if (!existsSync(PATH))
    throw new Error(
      'the browser tests need Chromium: install Debian’s package chromium, or set CHROMIUM to its path',
    );
  return PATH;
}
