/** The circuits that ship: complete kits in `samples/circuits/`, to be extended by name. */
import { existsSync, readdirSync } from 'node:fs';
import { isAbsolute, join, relative } from 'node:path';
import { packageRoot } from './layouts.ts';

/** What stands before a circuit's name in `extends`. */
const PREFIX = 'circuit/';
const ENDING = '.yaml';

/** The name of a circuit that ships, where `extends` names one. */
export const circuitNameIn = (named: string): string | undefined =>
  named.startsWith(PREFIX) && !/\.(ya?ml|json|ts)$/i.test(named) ? named.slice(PREFIX.length) : undefined;

/** What a kit writes to extend a circuit. */
export const extendedAs = (name: string): string => `${PREFIX}${name}`;

/** Where the circuits lie, as short as it can be said from the current folder. */
export function circuitFolder(): string {
  const folder = join(packageRoot(), 'samples', 'circuits');
  const near = relative(process.cwd(), folder);
  return near.startsWith('..') || isAbsolute(near) ? folder : near;
}

export const circuitFile = (name: string): string => join(circuitFolder(), `${name}${ENDING}`);

/** Names of the circuits that ship. */
export function circuitNames(): readonly string[] {
  const folder = circuitFolder();
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => name.endsWith(ENDING))
    .map((name) => name.slice(0, -ENDING.length))
    .sort((a, b) => (a < b ? -1 : 1));
}
