/** What every command needs: speaking, complaining, failing, and finding files. */

import type { Report } from '../common/problem.ts';
import { printReports } from '../describe/report.ts';
import { kitFiles } from '../publish/load.ts';

export const say = (text: string): void => void process.stdout.write(`${text}\n`);

export const complain = (reports: readonly Report[]): void => {
  if (reports.length > 0) process.stderr.write(`${printReports(reports)}\n\n`);
};

/** The input has problems: exit 1 when everything is done. */
export const fail = (): void => {
  process.exitCode = 1;
};

/** Files to work on; says so and fails when there are none. */
export function filesOf(paths: readonly string[]): readonly string[] {
  const files = kitFiles(paths);
  if (files.length === 0) {
    process.stderr.write(`no kit found in ${paths.join(', ')}: a kit is a .yaml, .json or .ts file\n`);
    fail();
  }
  return files;
}
