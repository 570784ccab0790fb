/** `npm run setup`: what the tests need of the machine. Tests themselves install nothing. */
import { spawnSync } from 'node:child_process';
import { hasChromium } from './chromium.ts';

const install = (...args: readonly string[]): void => {
  console.log(`apt-get ${args.join(' ')}`);
  spawnSync('apt-get', args, {
    stdio: 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
};

if (!hasChromium() && process.getuid?.() === 0) {
  install('update', '-qq');
  install('install', '-y', '-qq', 'chromium');
}
if (hasChromium()) console.log('The tests have what they need.');
else {
  console.error(
    'The browser tests need Chromium: install Debian’s package chromium (as root, this script does so), or set CHROMIUM to its path.',
  );
  process.exitCode = 1;
}
