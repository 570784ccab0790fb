/** States in words. */
import type { Circuit, State } from '../circuit/circuit.ts';

/** `selector at 2`; `the controls at full` for a kit without a switch. */
export const stateWords = (settings: Readonly<Record<string, number>>): string =>
  Object.entries(settings)
    .map(([name, position]) => `${name} at ${position}`)
    .join(', ') || 'the controls at full';

/** `in every state`, or which. */
export function statesWords(circuit: Circuit, some: readonly State[]): string {
  const states = [...new Set(some)];
  return states.length === circuit.states.length
    ? 'in every state'
    : `with ${states.map((state) => stateWords(state.settings)).join('; ')}`;
}
