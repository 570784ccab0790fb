/** `npm run setup`: what the tests need of the machine. Tests themselves install nothing. */
import { spawnSync } from 'node:child_process';
import { hasChromium, hasShell } from './chromium.ts';
import { hasFirefox } from './firefox.ts';
import { hasPdfTools } from './pdf-tools.ts';

const install = (...args: readonly string[]): void => {
  console.log(`apt-get ${args.join(' ')}`);
  spawnSync('apt-get', args, {
    stdio: 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
};

/** Debian's packages, by what is missing where they are not installed. */
const NEEDED = [
  { packages: ['chromium'], there: hasChromium, otherwise: 'Chromium, or CHROMIUM set to its path' },
  { packages: ['firefox-esr'], there: hasFirefox, otherwise: 'Firefox, or FIREFOX set to its path' },
  {
    packages: ['poppler-utils', 'qpdf'],
    there: hasPdfTools,
    otherwise: 'pdftotext, pdfinfo, pdffonts, pdftoppm and qpdf',
  },
] as const;

const missing = NEEDED.filter(({ there }) => !there());
if (missing.length > 0 && process.getuid?.() === 0) {
  install('update', '-qq');
  install('install', '-y', '-qq', ...missing.flatMap(({ packages }) => packages));
}
// Not needed, but faster: where Debian does not have it, or not of Chromium’s own version, the tests go without.
if (!hasShell() && process.getuid?.() === 0)
  install('install', '-y', '-qq', '--no-remove', 'chromium-headless-shell');
const left = NEEDED.filter(({ there }) => !there());
if (left.length === 0) console.log('The tests have what they need.');
for (const { packages, otherwise } of left) {
  console.error(
    `The tests need ${otherwise}: install Debian’s ${packages.join(' and ')} (as root, this script does so).`,
  );
  process.exitCode = 1;
}
