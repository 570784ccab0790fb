/** Something drawn in several settings: once what is alike in all of them, and between, in groups, what is not. */
import { numbered } from './hooks.ts';
import type { Pen } from './pen.ts';

/** A thing to draw; two with one key look alike. */
interface Thing {
  readonly key: string;
  readonly draw: (pen: Pen) => void;
}

/** Things in the order they are painted, and the states that have them so, counted from 1. */
interface Version {
  readonly things: readonly Thing[];
  readonly states: readonly number[];
}

/**
 * Draws versions over one another in their order of painting. What is not in all of them stands in groups that say the states they
 * belong to; the groups of the first version are shown, the others are not displayed.
 */
export function drawVersions(pen: Pen, versions: readonly Version[]): void {
  const [first, ...others] = versions;
  if (!first) return;
  const shared = others.reduce<readonly string[]>(
    (common, { things }) =>
      inBoth(
        common,
        things.map(({ key }) => key),
      ),
    first.things.map(({ key }) => key),
  );
  const rest = versions.map(({ things, states }) => ({ things: [...things], states }));
  for (const key of [...shared, undefined]) {
    const groups = new Map<string, { readonly things: readonly Thing[]; readonly states: number[] }>();
    for (const { things, states } of rest) {
      const end = key === undefined ? things.length : things.findIndex((thing) => thing.key === key);
      const own = things.splice(0, end);
      const name = JSON.stringify(own.map((thing) => thing.key));
      const known = groups.get(name);
      if (known) known.states.push(...states);
      else groups.set(name, { things: own, states: [...states] });
    }
    for (const { things, states } of groups.values()) {
      if (things.length === 0) continue;
      const shown = states.some((state) => first.states.includes(state));
      const group = pen.group({
        'data-shown': numbered(states.sort((a, b) => a - b)),
        ...(shown ? {} : { display: 'none' }),
      });
      for (const thing of things) thing.draw(group);
    }
    const alike = rest.map(({ things }) => (key === undefined ? undefined : things.shift()));
    alike[0]?.draw(pen);
  }
}

/** The longest list whose members stand in both lists in its order. */
function inBoth(a: readonly string[], b: readonly string[]): readonly string[] {
  // How many are in both from there on.
  const counts = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0));
  const count = (i: number, j: number): number => counts[i]?.[j] ?? 0;
  for (let i = a.length - 1; i >= 0; i--)
    for (let j = b.length - 1; j >= 0; j--) {
      const row = counts[i];
      if (row) row[j] = a[i] === b[j] ? 1 + count(i + 1, j + 1) : Math.max(count(i + 1, j), count(i, j + 1));
    }
  const both: string[] = [];
  for (let i = 0, j = 0; i < a.length && j < b.length; ) {
    const own = a[i];
    if (own !== undefined && own === b[j]) {
      both.push(own);
      i++;
      j++;
    } else if (count(i + 1, j) >= count(i, j + 1)) i++;
    else j++;
  }
  return both;
}
