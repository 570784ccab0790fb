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
