/** Words for the two ends of a track that are to be exchanged. */
import { quote } from './quoting.ts';

/** The two ends of a track, and which of them have joints. */
export interface LugExchange {
  readonly used: readonly string[];
  readonly ends: readonly string[];
}

/** `At “volume” exchange what is on lugs 1 and 3`, of each track that has joints at either. */
export function exchangeText(part: string, { used, ends }: LugExchange): string {
  const tracks = ends.flatMap((one, i) => (i % 2 === 0 ? [[one, ends[i + 1] ?? one] as const] : []));
  const moves = tracks.flatMap(([one, other]) => {
    const [first, second] = [one, other].filter((lug) => used.includes(lug));
    if (first === undefined) return [];
    return second === undefined
      ? [`move what is on lug ${first} to lug ${first === one ? other : one}`]
      : [`exchange what is on lugs ${one} and ${other}`];
  });
  return `At ${quote(part)} ${moves.join(', and ')}`;
}
