/** What every command needs: speaking, complaining, failing, and finding files. */
import type { Command } from 'commander';
import type { Problem, Report } from '../common/problem.ts';
import type { Kit } from '../describe/kit.ts';
import { printReports, report } from '../describe/report.ts';
import { valueSource } from '../describe/source.ts';
import { isFolder, kitFiles } from '../publish/find-kits.ts';
import { loadKit } from '../publish/load.ts';

export const say = (text: string): void => void process.stdout.write(`${text}\n`);

export const complain = (reports: readonly Report[]): void => {
  if (reports.length > 0) process.stderr.write(`${printReports(reports)}\n\n`);
};

export const complainOf = (trouble: string): void => void process.stderr.write(`${trouble}\n`);

/** The input has problems: exit 1 when everything is done. */
export const fail = (): void => {
  process.exitCode = 1;
};

/** Complains of what options name, which no line of a kit is to blame for. */
export function refuse(problems: readonly Problem[]): void {
  for (const one of problems) {
    const option = `--${one.path[0]}`;
    const [said] = report([one], { ...valueSource(option), exact: true });
    if (said) complainOf(`${option}  fault  ${said.code}\n    ${said.message}\n\n    ${said.remedy}\n`);
  }
  fail();
}

/** Files to work on; says what it passes over, and fails when there are none. */
export function filesOf(paths: readonly string[]): readonly string[] {
  const { files, passed } = kitFiles(paths);
  for (const file of passed) say(`no kit    ${file}`);
  if (files.length === 0) {
    complainOf(`no kit found in ${paths.join(', ')}: a kit is a .yaml, .json or .ts file`);
    fail();
  }
  return files;
}

/** The one kit that a command works on; complains and fails where there is none. */
export async function oneKit(path: string, command: Command): Promise<Kit | undefined> {
  if (isFolder(path))
    return command.error(`error: ${command.name()} takes one kit file, and “${path}” is a folder`);
  const { kit, reports } = await loadKit(path);
  complain(reports);
  if (!kit) fail();
  return kit;
}
