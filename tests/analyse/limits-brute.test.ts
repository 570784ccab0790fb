/**
 * No value that the tolerances allow lies outside the printed limits: harnesses tried by the thousand on three kits, their loads and
 * readings by the tests' own solver (`own-loads.ts`), and compared with the very figures of the printed tables.
 */
import { describe, expect, it } from 'vitest';
import { solveLimits, solveLoads } from '../../src/analyse/index.ts';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { seeded } from '../../src/common/random.ts';
import { parseQuantity } from '../../src/common/units.ts';
import { limitTables } from '../../src/report/meter-table.ts';
import { type Line, ownNetlist } from '../oracle/own-netlist.ts';
import { type Compact, makeCircuit, sampleCircuit } from './kits.ts';
import { conductance } from './own-loads.ts';

/** A series pair with a resistor and a capacitor across one coil, a second pickup beside it: nothing here need be monotone. */
const tangled: Compact = {
  parts: {
    top: { kind: 'single-coil', 'inductance-tolerance': '30%' },
    bottom: { kind: 'single-coil' },
    beside: { kind: 'humbucker', 'core-loss': '200k' },
    across: { kind: 'capacitor', value: '10n', tolerance: '50%' },
    damp: { kind: 'resistor', value: '10k' },
    volume: { kind: 'pot', value: '250k' },
    output: { kind: 'jack' },
  },
  joints: [
    'bottom.ground > output.sleeve',
    'bottom.hot > top.ground',
    'top.hot > volume.3',
    'beside.hot > volume.3',
    'beside.ground > output.sleeve',
    'across.1 > bottom.hot',
    'across.2 > damp.1',
    'damp.2 > output.sleeve',
    'volume.1 > output.sleeve',
    'volume.2 > output.tip',
  ],
};

const circuits: Readonly<Record<string, Circuit>> = {
  'kestrel-hss': sampleCircuit('kestrel-hss'),
  'wren-hs': sampleCircuit('wren-hs'),
  tangled: makeCircuit(tangled),
};

/** Factors on the values of a network of lines: each element's own, at an end or anywhere between. IEC 60028 for copper. */
function varied(
  circuit: Circuit,
  lines: readonly Line[],
  pick: (low: number, high: number) => number,
): readonly Line[] {
  const tolerances = circuit.kit.parts.flatMap((part) => ('tolerance' in part ? [part] : []));
  const factors = new Map<string, number>();
  const factor = (name: string, tolerance: number, warm = 0): number => {
    const known = factors.get(name);
    if (known !== undefined) return known;
    const [low, high] = [(1 - tolerance) * (1 - warm * 10), (1 + tolerance) * (1 + warm * 10)];
    const chosen = pick(low, high);
    factors.set(name, chosen);
    return chosen;
  };
  return lines.map((line): Line => {
    const part = tolerances.find(({ name }) => name === (line.pickup ?? ownerOf(circuit, line)));
    if (line.kind === 'coil' && part && 'inductanceTolerance' in part)
      return {
        ...line,
        ohms: line.ohms * factor(`${part.name} R`, part.tolerance.value, 0.00393),
        henries: line.henries * factor(`${part.name} L`, part.inductanceTolerance.value),
      };
    if (line.kind === 'C' && part && 'capacitanceTolerance' in part)
      return { ...line, value: line.value * factor(`${part.name} C`, part.capacitanceTolerance.value) };
    if (line.kind === 'C' && line.value === circuit.kit.outputLoad.cable.value)
      return { ...line, value: line.value * factor('cable', circuit.kit.outputLoad.cableTolerance.value) };
    // A core loss is taken as it is given.
    if (line.kind === 'coil' || line.pickup !== undefined || !part) return line;
    return { ...line, value: line.value * factor(part.name, part.tolerance.value) };
  });
}

/** The part a line of a value came from: values are made to differ for this. */
const ownerOf = ({ kit }: Circuit, line: Line): string | undefined =>
  line.kind === 'coil'
    ? undefined
    : kit.parts.find((part) => 'value' in part && part.value.value === line.value)?.name;

/** The circuit with no two values alike, so that a line tells its part; a part in a million changes no figure printed. */
const distinct = (circuit: Circuit): Circuit => ({
  ...circuit,
  kit: {
    ...circuit.kit,
    parts: circuit.kit.parts.map((part, i) =>
      'value' in part
        ? ({
            ...part,
            value: { ...part.value, value: part.value.value * (1 + 1e-9 * (i + 1)) },
          } as typeof part)
        : part,
    ),
  },
});

/** Cable and amplifier. */
const outsideOf = ({ kit }: Circuit, node: (lug: string) => string): readonly Line[] => {
  const [a, b] = [node('output.tip'), node('output.sleeve')];
  return [
    { kind: 'C', a, b, value: kit.outputLoad.cable.value },
    { kind: 'R', a, b, value: kit.outputLoad.amplifier.value },
  ];
};

const TRIES = 600;

/** What a printed range allows, ohms. */
function printed(range: string): readonly [number, number] {
  if (range === 'open') return [Infinity, Infinity];
  const [from = '', to = from] = range.split('–');
  const unit = /[a-zµMk]*Ω$/.exec(to)?.[0] ?? '';
  const ohms = (text: string): number =>
    text === 'open' ? Infinity : (parseQuantity(text.includes('Ω') ? text : `${text} ${unit}`, 'ohm') ?? NaN);
  return [ohms(from), ohms(to)];
}

describe.each(Object.entries(circuits))('%s', (_, circuit) => {
  const limits = solveLimits(circuit, { samples: 1 });
  const table = limitTables(circuit, limits).split('\n');
  const rows = table.slice(2).map((line) => line.split(/ {2,}/));

  it('holds every load that chance and corners reach', () => {
    const random = seeded(11);
    const corner = (low: number, high: number): number => (random() < 0.5 ? low : high);
    const between = (low: number, high: number): number => low + (high - low) * random();
    let compared = 0;
    const apart = distinct(circuit);
    for (const [index, { state, pickups }] of limits.states.entries()) {
      const own = ownNetlist(apart, state, {});
      for (const one of pickups) {
        const chain = ownChain(circuit, one.pickup);
        const port = [own.node(`${one.pickup}.hot`), own.node(`${one.pickup}.ground`)] as const;
        const lines = own.lines.filter((line) => line.pickup === undefined || chain.includes(line.pickup));
        const played = [
          ...own.lines.filter(
            ({ pickup }) =>
              pickup === undefined || (pickup !== one.pickup && state.sounding.includes(pickup)),
          ),
          ...outsideOf(apart, own.node),
        ];
        for (let i = 0; i < TRIES; i++) {
          const now = varied(apart, lines, i % 2 ? corner : between);
          const dc = 1 / conductance(directOnly(now), ...port, 0);
          const signal = 1 / conductance(now, ...port, 1000);
          const total = 1 / conductance(varied(apart, played, i % 2 ? corner : between), ...port, 1000);
          for (const [load, range] of [
            [dc, one.dcLoad],
            [signal, one.signalLoad],
            [total, one.total.signalLoad],
          ] as const) {
            if (!(load >= range.low * (1 - 1e-7) && load <= range.high * (1 + 1e-7)))
              expect(load, `${one.pickup} in ${index}`).toBe(`${range.low} to ${range.high}`);
            compared++;
          }
        }
      }
    }
    expect(compared).toBeGreaterThan(TRIES);
  });

  it('prints limits rounded outwards', () => {
    const cells = rows.flat().filter((cell) => /Ω|open/.test(cell) && !/volume/.test(cell));
    const ranges = limits.states.flatMap(({ pickups, jack, lugs }) => [
      ...pickups.flatMap(({ dcLoad, signalLoad, total }) => [dcLoad, signalLoad, total.signalLoad]),
      ...(jack ? [jack.volumeFull.disconnected, jack.volumeFull.connected] : []),
      ...lugs.flatMap(({ disconnected, connected }) => [disconnected, connected]),
    ]);
    const texts = cells.map(printed);
    for (const { low, high } of ranges)
      expect(
        texts.some(([from, to]) => {
          const fits = from <= low * (1 + 1e-9) && to >= high * (1 - 1e-9);
          return fits && (low === Infinity || (from > low * 0.98 && (to < high * 1.02 || high === Infinity)));
        }),
        `${low} to ${high}`,
      ).toBe(true);
  });
});

const directOnly = (lines: readonly Line[]): readonly Line[] =>
  lines.flatMap((line): readonly Line[] =>
    line.kind === 'coil'
      ? [{ kind: 'R', a: line.a, b: line.b, value: line.ohms }]
      : line.kind === 'R'
        ? [line]
        : [],
  );

/** Who is in series with whom: in these kits only the two of the tangled one. */
const ownChain = (circuit: Circuit, pickup: string): readonly string[] => {
  const pair = ['top', 'bottom'];
  return pair.includes(pickup) && circuit.kit.parts.some(({ name }) => name === 'top')
    ? pair.filter((name) => name !== pickup)
    : [];
};

it('limits of signal loads are for the frequency asked for, as the loads are', () => {
  const circuit = makeCircuit(tangled);
  const nominal = (options: { readonly frequency?: number }): readonly (readonly [number, number])[] =>
    solveLimits(circuit, { ...options, samples: 1 }).states.flatMap(({ pickups }, s) =>
      pickups.map((pickup, p): readonly [number, number] => [
        pickup.signalLoad.nominal,
        solveLoads(circuit, options)[s]?.pickups[p]?.signalLoad ?? Number.NaN,
      ]),
    );
  for (const options of [{}, { frequency: 200 }, { frequency: 3000 }])
    for (const [limit, load] of nominal(options)) expect(limit / load).toBeCloseTo(1, 9);
  expect(nominal({ frequency: 200 })).not.toEqual(nominal({}));
});
