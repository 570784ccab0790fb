/** Counts of spoilt descriptions, over seeds and over processes. */
import type { Proof } from './prove.ts';

export interface Tally {
  readonly refused: number;
  readonly drawn: number;
  /** Seconds of the processor's time. */
  readonly slowest: number;
  readonly errors: readonly string[];
}

export async function tallyOf(
  first: number,
  count: number,
  prove: (seed: number) => Promise<Proof>,
): Promise<Tally> {
  const proofs: Proof[] = [];
  for (let seed = first; seed < first + count; seed++) proofs.push(await prove(seed));
  return {
    refused: proofs.filter(({ outcome }) => outcome === 'refused').length,
    drawn: proofs.filter(({ outcome }) => outcome === 'drawn').length,
    slowest: proofs.reduce((most, { seconds }) => Math.max(most, seconds), 0),
    errors: proofs.flatMap(({ errors }) => errors),
  };
}

export const sumUp = (tallies: readonly Tally[]): Tally => ({
  refused: tallies.reduce((sum, { refused }) => sum + refused, 0),
  drawn: tallies.reduce((sum, { drawn }) => sum + drawn, 0),
  slowest: tallies.reduce((most, { slowest }) => Math.max(most, slowest), 0),
  errors: tallies.flatMap(({ errors }) => errors),
});
