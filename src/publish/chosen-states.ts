/** Which switch positions `--position` asks for. */
import type { Circuit } from '../circuit/circuit.ts';
import { positionsOf } from '../circuit/position.ts';
import { closestName } from '../common/nearest.ts';

/** Indices of the states that are asked for; or in words all that is wrong with what was written, each with its column. */
type Chosen = { readonly states: readonly number[] } | { readonly wrong: readonly string[] };

/**
 * Reads `selector=2,phase=up`: switches and blends by their names, positions by their numbers or by their names, as `intended` takes
 * them in a kit. A switch that is named twice may be in either position; one that is not named, in any.
 *
 * @param written `all` for every state
 */
export function chosenStates(circuit: Circuit, written: string): Chosen {
  const { states } = circuit;
  if (written.trim() === 'all') return { states: states.map((_, i) => i) };
  const names = Object.keys(states[0]?.positions ?? {});
  if (names.length === 0) return { wrong: [`no position ${written}: the kit has no switch`] };
  const wanted = new Map<string, readonly number[]>();
  const wrong = piecesOf(written).flatMap(({ name, word, column }) => {
    const read = positionIn(circuit, names, name, word);
    if (typeof read === 'number') wanted.set(name, [...(wanted.get(name) ?? []), read]);
    return typeof read === 'number' ? [] : [`--position, column ${column}: ${read}`];
  });
  if (wrong.length > 0) return { wrong };
  return {
    states: states.flatMap(({ positions }, i) =>
      [...wanted].every(([name, some]) => some.some((one) => one === positions[name])) ? [i] : [],
    ),
  };
}

interface Piece {
  readonly name: string;
  /** Absent without an equals sign. */
  readonly word?: string;
  /** Of its first letter, from 1. */
  readonly column: number;
}

function piecesOf(written: string): readonly Piece[] {
  let before = 0;
  return written.split(',').map((piece): Piece => {
    const column = before + 1 + (piece.length - piece.trimStart().length);
    before += piece.length + 1;
    const [name = '', ...words] = piece.split('=').map((text) => text.trim());
    return { name, column, ...(words.length === 0 ? {} : { word: words.join('=') }) };
  });
}

/** The position by its number; or what is wrong, in words. */
function positionIn(
  circuit: Circuit,
  names: readonly string[],
  name: string,
  word: string | undefined,
): number | string {
  if (name === '' && word === undefined)
    return `a switch and its position are missing; write such as ${exampleOf(circuit, names[0] ?? '')}, or all`;
  if (!names.includes(name))
    return `no switch is called “${name}”; allowed: ${names.join(', ')}, or all${meant(name, names)}`;
  if (word === undefined || word === '')
    return `the position of ${name} is missing; write such as ${exampleOf(circuit, name)}`;
  const positions = positionsOf(circuit, name);
  const found = positions.find(({ words }) => words.includes(word));
  if (found) return found.position;
  const allowed = positions.map(({ words: [number = '', ...called] }) =>
    called.length === 0 ? number : `${number} (${called.join(', ')})`,
  );
  const all = positions.flatMap(({ words }) => words);
  return `${name} has no position “${word}”; allowed: ${allowed.join(', ')}${meant(word, all)}`;
}

const exampleOf = (circuit: Circuit, name: string): string =>
  `${name}=${positionsOf(circuit, name)[0]?.words.at(-1) ?? 1}`;

function meant(word: string, allowed: readonly string[]): string {
  const nearest = closestName(word, allowed);
  return nearest === undefined ? '' : `. Did you mean ${nearest}?`;
}
