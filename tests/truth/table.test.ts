/** A kit with forty switch positions: its loads stand in a table that says of every position what solving says, once. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveLoads, solveResponse } from '../../src/analyse/index.ts';
import { combinationsOf } from '../../src/annotate/combinations.ts';
import { plotOf } from '../../src/annotate/plot.ts';
import { formatFigure } from '../../src/common/units.ts';
import { readKit } from '../../src/describe/read.ts';
import { findPage } from '../../src/files/layouts.ts';
import { inspect } from '../../src/inspect/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { drawn, drawnSheets, sample } from './draw.ts';

const { kit } = readKit(readFileSync('tests/truth/forty.yaml', 'utf8'), 'forty.yaml');
if (!kit) throw new Error('forty.yaml does not read');
const circuit = buildCircuit(kit);
const loads = solveLoads(circuit);

/** Faces of the kit's switches, by hand: levers are counted, a push-pull says in or out. */
const FACES = [
  ['1', '2', '3', '4', '5'],
  ['in', 'out'],
  ['in', 'out'],
  ['1', '2'],
] as const;

interface Row {
  /** By line, the words of each switch. */
  readonly positions: readonly (readonly string[])[];
  readonly figures: readonly string[];
}

type Drawn = Awaited<ReturnType<typeof drawn>>;

function rowsOf({ cards }: Pick<Drawn, 'cards'>): readonly Row[] {
  return cards.map(({ texts }) => {
    const lines = new Map<number, typeof texts>();
    // Small and large type of a line have their feet a little apart.
    for (const text of texts) {
      const line = [...lines.keys()].find((y) => Math.abs(y - text.y) < 4) ?? text.y;
      lines.set(line, [...(lines.get(line) ?? []), text]);
    }
    const sorted = [...lines]
      .sort(([a], [b]) => a - b)
      .map(([, line]) => [...line].sort((a, b) => a.x - b.x));
    const isFace = (words: string): boolean => /^(?:\d|in|out)(?:\/(?:\d|in|out))*$/.test(words);
    return {
      positions: sorted
        .map((line) => line.map(({ words }) => words).filter(isFace))
        .filter((line) => line.length > 0),
      figures: sorted.map((line) =>
        line
          .map(({ words }) => words)
          .filter((words) => !isFace(words))
          .join(' '),
      ),
    };
  });
}

const covers = ({ positions }: Row, state: readonly string[]): boolean =>
  positions.some((line) => line.every((words, i) => words.split('/').includes(state[i] ?? '')));

describe('forty positions', () => {
  const states = circuit.states.map(({ positions }) =>
    Object.values(positions).map((n, i) => FACES[i]?.[n - 1] ?? '?'),
  );

  it('each is in just one row, with what sounds in it and its loads', async () => {
    const rows = rowsOf(await drawn(kit));
    expect(states).toHaveLength(40);
    expect(rows.length).toBeLessThan(40);
    for (const [n, state] of states.entries()) {
      const own = rows.filter((row) => covers(row, state));
      expect(own, state.join()).toHaveLength(1);
      const solved = (loads[n]?.pickups ?? []).map(({ pickup, dcLoad, signalLoad }) =>
        [
          pickup.replace(/^./, (c) => c.toUpperCase()),
          formatFigure(dcLoad, 'ohm'),
          formatFigure(signalLoad, 'ohm'),
        ].join(' '),
      );
      const told = own[0]?.figures ?? [];
      expect(solved.length).toBeGreaterThan(0);
      for (const [i, words] of solved.entries()) expect(told[i], state.join()).toContain(words);
    }
  });

  it('rows of the same pickups stand next to each other', async () => {
    const names = rowsOf(await drawn(kit)).map(({ figures }) =>
      figures.flatMap((line) => /^(?:Neck|Middle|Bridge)/.exec(line)?.[0] ?? []).join('+'),
    );
    const runs = names.filter((name, i) => name !== names[i - 1]);
    expect(new Set(runs).size).toBe(runs.length);
  });

  it('columns are named as the switches are', async () => {
    const heads = (await drawn(kit)).texts.filter(({ group }) => group.endsWith('-loads-1'));
    const words = heads.map((text) => text.words).join(' ');
    for (const label of [
      'Selector',
      'Volume (pull',
      'Tone (pull',
      'Load',
      'DC load',
      'signal load',
      'multimeter',
    ])
      expect(words).toContain(label);
  });

  it.each(['a4', 'a5', 'letter-landscape'])(
    'on %s all rows are on its sheets, none twice, and no check objects',
    async (name) => {
      const page = findPage(name);
      if (!page) throw new Error(name);
      const sheets = await drawnSheets(kit, { page });
      const rows = sheets.flatMap(rowsOf);
      for (const state of states) expect(rows.filter((row) => covers(row, state))).toHaveLength(1);
      for (const { svg } of sheets)
        expect(inspect(svg, kit).filter(({ rule }) => rule !== 'small-type')).toEqual([]);
    },
  );

  it.each(['light', 'print'] as const)(
    'in the theme %s, alone, narrow and as usual, no check objects',
    async (theme) => {
      for (const aspect of [{}, { only: ['cards'] as const }, { width: 700 }])
        expect(inspect((await drawn(kit, { ...aspect, theme })).svg, kit)).toEqual([]);
    },
  );

  it('a kit with few positions keeps its cards', async () => {
    const { texts } = await drawn(sample('kestrel-hss'));
    expect(texts.filter(({ group }) => group.endsWith('-loads-1'))).toEqual([]);
  });
});

it('plots are of each position once, those alike together', () => {
  const response = solveResponse(circuit);
  const { states } = plotOf(circuit, response, { volume: 10, tone: 10 });
  const named = states.flatMap(({ badge }) =>
    badge.split(', ').flatMap((one) =>
      one
        .split('·')
        .map((part) => part.split('/'))
        .reduce<readonly string[]>((all, part) => all.flatMap((a) => part.map((b) => `${a}${b}`)), ['']),
    ),
  );
  expect([...named].sort()).toEqual(
    circuit.states.map(({ positions }) => Object.values(positions).join('')).sort(),
  );
  expect(states.length).toBeLessThan(20);
  // What the load toggle does is heard, so its two positions are never one.
  for (const { badge } of states) expect(badge).not.toMatch(/1\/2(?:,|$)/);
});

describe('combinations', () => {
  const settings = (...all: readonly (readonly number[])[]) =>
    all.map((positions) => ({ positions: Object.fromEntries(positions.map((n, i) => [`s${i}`, n])) }));
  it('are as few as differ in more than one switch', () => {
    expect(combinationsOf(settings([1, 1], [1, 2], [2, 1], [2, 2]))).toEqual([
      [
        [1, 2],
        [1, 2],
      ],
    ]);
    expect(combinationsOf(settings([3, 2], [4, 1], [4, 2]))).toEqual([
      [[3], [2]],
      [[4], [1, 2]],
    ]);
    expect(combinationsOf(settings([1, 2], [2, 1]))).toEqual([
      [[1], [2]],
      [[2], [1]],
    ]);
    expect(combinationsOf(settings([]))).toEqual([[]]);
  });
});
