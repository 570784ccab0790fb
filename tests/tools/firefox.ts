/** Where the tests' Firefox is. */
import { existsSync } from 'node:fs';

const PATH = process.env.FIREFOX ?? '/usr/bin/firefox-esr';

export const hasFirefox = (): boolean => existsSync(PATH);

/** @throws Error when it is missing, which says what to do */
export function firefox(): string {
  if (!hasFirefox())
    throw new Error('the browser tests need Firefox: run “npm run setup”, or set FIREFOX to its path');
  return PATH;
}
