/** Where the tests' Chromium is. */
import { existsSync } from 'node:fs';

const PATH = process.env.CHROMIUM ?? '/usr/bin/chromium';

export const hasChromium = (): boolean => existsSync(PATH);

/** @throws Error when it is missing, which says what to do */
export function chromium(): string {
  if (!hasChromium())
    throw new Error('the browser tests need Chromium: run “npm run setup”, or set CHROMIUM to its path');
  return PATH;
}

/** Debian's Chromium without windows: the same engine, which opens a page in half of the time. */
const SHELL = '/usr/bin/chromium-headless-shell';
export const hasShell = (): boolean => existsSync(SHELL);

/** For tests that open many pages and look at what is in them; Chromium itself where it is not there. @throws Error when neither is */
export const chromiumShell = (): string =>
  process.env.CHROMIUM === undefined && hasShell() ? SHELL : chromium();
