/** Switch positions in words: the one place where they are worded. */
import type { Circuit, State } from './circuit.ts';

type Settings = Readonly<Record<string, number>>;

/** `selector in position 2`; several switches with a comma between; empty for a kit without a switch. */
export const positionWords = (settings: Settings): string =>
  Object.entries(settings)
    .map(([name, position]) => `${name} in position ${position}`)
    .join(', ');

/** For a table: `selector 2`; `always` for a kit without a switch. */
export const positionCell = (settings: Settings): string =>
  Object.entries(settings)
    .map(([name, position]) => `${name} ${position}`)
    .join(', ') || 'always';

/**
 * Where something holds, to be put behind a clause: ` in every position`, ` with selector in positions 2 and 4`; empty for a kit
 * without a switch.
 */
export function whereWords({ states }: Pick<Circuit, 'states'>, some: readonly State[]): string {
  const found = [...new Set(some)];
  const [first] = found;
  const switches = Object.keys(first?.settings ?? {});
  if (!first || switches.length === 0) return '';
  if (found.length === states.length) return ' in every position';
  const [only, ...more] = switches;
  if (only !== undefined && more.length === 0) {
    const positions = found.map(({ settings }) => `${settings[only]}`);
    return ` with ${only} in ${positions.length === 1 ? 'position' : 'positions'} ${andWords(positions)}`;
  }
  return ` with ${found.map(({ settings }) => positionWords(settings)).join('; ')}`;
}

/** `2, 3 and 4`. */
export const andWords = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
