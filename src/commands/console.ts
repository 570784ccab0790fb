/** What every command needs: speaking, complaining, failing, and finding files. */
import { existsSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { closestName } from '../common/nearest.ts';
import type { Diagnostic, Problem } from '../common/problem.ts';
import { formatDiagnostics, toDiagnostics } from '../describe/diagnostics.ts';
import { valueSource } from '../describe/source.ts';
import { circuitFile, circuitNameIn, circuitNames, extendedAs } from '../files/circuits.ts';
import { kitFiles } from '../files/find-kits.ts';
import { languages } from '../messages/language.ts';

/** Printed text: a file's name, a label or another program's message may hold what a terminal would obey. */
export const shown = (text: string): string => text.replace(/[^\P{C}\n\t]/gu, '\uFFFD');

export const print = (text: string): void => void process.stdout.write(`${shown(text)}\n`);

/** JSON, with everything escaped that a terminal would not show as a plain letter. */
export const printJson = (text: string): void =>
  void process.stdout.write(
    `${text.replace(/[^\P{C}\n]|[\p{Zl}\p{Zp}]/gu, (found) =>
      [...Array(found.length).keys()]
        .map((i) => `\\u${found.charCodeAt(i).toString(16).padStart(4, '0')}`)
        .join(''),
    )}\n`,
  );

export const printDiagnostics = (diagnostics: readonly Diagnostic[]): void => {
  if (diagnostics.length > 0) printError(`${formatDiagnostics(diagnostics)}\n`);
};

export const printError = (text: string): void => void process.stderr.write(`${shown(text)}\n`);

/** `--language`, of every command that makes something for customers. */
export const languageOption = (): Option =>
  new Option('--language <code>', 'language of what is made for customers; overrides the kit file').choices(
    languages,
  );

/** The input has problems: exit 1 when everything is done. */
export const fail = (): void => {
  process.exitCode = 1;
};

/** An option given twice with two values is a mistake: the first would be passed over without a word. */
export function refuseTwice(command: Command): void {
  for (const option of command.options) {
    if (option.variadic) continue;
    const given = new Set<string>();
    command.on(`option:${option.name()}`, (value: string | null | undefined) => {
      given.add(String(value));
      if (given.size > 1)
        command.error(`error: --${option.name()} is given twice: ${[...given].join(' and ')}; give it once`);
    });
  }
}

/** Complains of what options name, which no line of a kit is to blame for. */
export function refuse(problems: readonly Problem[]): void {
  for (const one of problems) {
    const option = `--${one.path[0]}`;
    const [said] = toDiagnostics([one], { ...valueSource(option), exact: true });
    if (said) printError(`${option}  error  ${said.code}\n    ${said.message}\n\n    ${said.remedy}\n`);
  }
  fail();
}

/** Files to work on; says what it passes over, and fails when there are none. */
export function filesOf(paths: readonly string[]): readonly string[] {
  const { files, passed, scripts, closed } = kitFiles(paths);
  for (const file of passed) print(`not a kit ${file}`);
  for (const file of scripts) print(`not run   ${file}: a TypeScript kit is code; name it to have it run`);
  for (const { folder, reason } of closed) {
    printError(`${folder}:1:1  error  file-unreadable\n    the folder cannot be read: ${reason}\n`);
    fail();
  }
  if (files.length === 0) {
    printError(`no kit found in ${paths.join(', ')}: a kit is a .yaml, .json or .ts file`);
    fail();
  }
  return files;
}

/** The file of a circuit that ships where `circuit/NAME` is given and no file of that name lies here; any other path as it is. */
export function circuitOr(path: string, command: Command): string {
  const name = existsSync(path) ? undefined : circuitNameIn(path);
  if (name === undefined) return path;
  const names = circuitNames();
  if (names.includes(name)) return circuitFile(name);
  const near = closestName(name, names);
  const meant = near === undefined ? '' : `did you mean ${extendedAs(near)}? `;
  return command.error(`error: no circuit “${name}” ships: ${meant}“solderleaf circuits” lists them`);
}
