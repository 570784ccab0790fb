/** Kinds made of others and kinds made from data: a push-pull pot, and a switch that the kit describes. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { solveLoads } from '../../src/analyse/index.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { kitFromValue } from '../../src/checked.ts';
import { kitFromValue as read } from '../../src/describe/read.ts';
import { kinds } from '../../src/parts/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { findErrors } from '../../src/solve/errors.ts';
import { drawingErrors, LOW } from '../random/proof.ts';

type Value = Readonly<Record<string, unknown>>;

/** A single coil and a humbucker on a switch, one volume. */
const kitValue = (selector: Value, volume: Value = { kind: 'pot' }, more: readonly string[] = []): Value => ({
  kit: 'composed',
  title: 'HS on a switch',
  parts: {
    bridge: { kind: 'humbucker', label: 'Bridge' },
    neck: { kind: 'single-coil', label: 'Neck' },
    selector: { label: 'Selector', ...selector },
    volume: { label: 'Volume', value: '500k', ...volume },
    output: { kind: 'jack', label: 'Output' },
  },
  joints: [
    { bend: 'volume.1 > volume.case' },
    'output.sleeve > volume.case',
    'bridge.ground > volume.case',
    'bridge.hot > selector.A1',
    'neck.hot > selector.A3',
    ...(String(JSON.stringify(selector)).includes('A2') || selector.kind !== 'switch'
      ? [{ jumper: 'selector.A1 > selector.A2' }]
      : []),
    'selector.A0 > volume.3',
    'volume.2 > output.tip',
    ...(more.length > 0 ? more : ['neck.ground > volume.case']),
  ],
});

function kitOf(value: Value) {
  const { kit, diagnostics } = kitFromValue(value, 'x.ts');
  if (!kit) throw new Error(diagnostics.map(({ message }) => message).join('; '));
  return kit;
}

/** The five-way lever's table, in the kit's own words. */
const LEVER_5: Value = {
  kind: 'switch',
  lugs: { left: ['A1', 'A2', 'A3', 'A0'], right: ['B1', 'B2', 'B3', 'B0'] },
  positions: [[1], [1, 2], [2], [2, 3], [3]].map((throws) =>
    ['A', 'B'].map((pole) => [0, ...throws].map((n) => `${pole}${n}`)),
  ),
};

/** The three-way toggle in the kit's own words: the names of its positions, and the frame that ground is soldered to. */
const TOGGLE: Value = {
  kind: 'switch',
  lugs: { left: ['1', 'common', '2'], right: ['frame'] },
  positions: [['1'], ['1', '2'], ['2']].map((throws) => [['common', ...throws]]),
  called: ['up', 'in the middle', 'down'],
  frame: 'frame',
};
/** Two pickups on a toggle; without ground at its frame, where it is left out. */
const toggleKit = (selector: Value, frame: readonly string[]): Value => ({
  ...kitValue(selector),
  joints: [
    { bend: 'volume.1 > volume.case' },
    'output.sleeve > volume.case',
    'bridge.ground > volume.case',
    'neck.ground > volume.case',
    'bridge.hot > selector.1',
    'neck.hot > selector.2',
    'selector.common > volume.3',
    'volume.2 > output.tip',
    ...frame,
  ],
});

/** All that is found out about a kit before it is drawn. */
function foundOut(value: Value) {
  const { kit } = read(value, 'x.ts');
  if (!kit) throw new Error('not a kit');
  const circuit = buildCircuit(kit);
  const loads = solveLoads(circuit);
  return {
    // In any order: it follows that of the lugs in the description.
    nets: new Set(circuit.nets.map(({ role, lugs }) => `${role}: ${[...lugs].sort().join(' ')}`)),
    states: circuit.states,
    loads,
    errors: findErrors(kit),
    notes: notesOf(circuit, loads),
  };
}

describe('a switch that the kit describes', () => {
  it.each([
    ['lever-5, all joined', kitValue(LEVER_5), kitValue({ kind: 'lever-5' })],
    // A pickup that floats: an error, a warning, and notes on loads.
    [
      'lever-5, a pickup with its ground on the switch',
      kitValue(LEVER_5, { kind: 'pot' }, ['neck.ground > selector.B1', 'selector.B0 > volume.case']),
      kitValue({ kind: 'lever-5' }, { kind: 'pot' }, [
        'neck.ground > selector.B1',
        'selector.B0 > volume.case',
      ]),
    ],
    [
      'toggle-3',
      toggleKit(TOGGLE, ['selector.frame > volume.case']),
      toggleKit({ kind: 'toggle-3' }, ['selector.frame > volume.case']),
    ],
    // The frame is not grounded: a warning.
    ['toggle-3 without ground', toggleKit(TOGGLE, []), toggleKit({ kind: 'toggle-3' }, [])],
  ] as const)('with the table of %s has its nets, positions, loads and findings', (name, own, kind) => {
    const [one, other] = [foundOut(own), foundOut(kind)];
    expect(one).toEqual(other);
    expect(one.errors.length > 0).toBe(name.includes('ground on the switch'));
    expect(one.states).toHaveLength(name.startsWith('lever') ? 5 : 3);
    expect(one.notes.some(({ code }) => code === 'case-not-grounded')).toBe(
      name === 'toggle-3 without ground',
    );
  });

  it('with the five-way lever’s table is that lever in every figure', () => {
    const [own, lever] = [LEVER_5, { kind: 'lever-5' }].map((selector) =>
      solveLoads(buildCircuit(kitOf(kitValue(selector)))),
    );
    expect(own).toEqual(lever);
    expect(own).toHaveLength(5);
  });

  it('is drawn in every arrangement as it is described, with nothing found', {
    timeout: 120_000,
  }, async () => {
    expect(await drawingErrors(kitOf(kitValue(LEVER_5)), 1, LOW)).toEqual([]);
    const long = {
      kind: 'switch',
      label: 'A selector of its own',
      lugs: { left: ['A1', 'A0', 'A3', 'common', 'x'], right: ['on'] },
      positions: [
        [['A0', 'A1']],
        [
          ['A0', 'A3', 'on'],
          ['common', 'A1'],
        ],
        [['A0', 'A1', 'A3', 'x']],
      ],
    };
    for (const seed of [2, 3]) expect(await drawingErrors(kitOf(kitValue(long)), seed, LOW)).toEqual([]);
  });

  it('may have lugs with numbers for names, and positions in which nothing touches', () => {
    const circuit = buildCircuit(
      kitOf({
        kit: 'kill',
        title: 'Single coil with a switch in the signal',
        parts: {
          neck: { kind: 'single-coil' },
          off: {
            kind: 'switch',
            lugs: { left: [1, 2], right: ['to', 3] },
            positions: [[[1, 'to']], [['to', 3]]],
          },
          output: { kind: 'jack' },
        },
        joints: [
          'neck.hot > off.1',
          'off.to > output.tip',
          'neck.ground > output.sleeve',
          'neck.hot > off.3',
        ],
      }),
    );
    expect(circuit.states.map(({ closedContacts }) => closedContacts)).toEqual([
      [['off.1', 'off.to']],
      [['off.to', 'off.3']],
    ]);
  });

  it.each([
    [{ lugs: { left: ['A1', 'A0', 'A1'] } }, 'parts.selector.lugs', '“A1” is named twice'],
    [{ lugs: { left: ['A0'] }, positions: [[]] }, 'parts.selector.lugs', 'a switch needs at least two lugs'],
    [{ positions: [[['A0', 'A9']]] }, 'parts.selector.positions[0]', '“A9” is not a lug of this switch'],
    [
      {
        positions: [
          [],
          [
            ['A0', 'A1'],
            ['A1', 'A3'],
          ],
        ],
      },
      'parts.selector.positions[1]',
      '“A1” is named twice in one position',
    ],
    [
      { lugs: { left: ['A0', 'much too long'] } },
      'parts.selector.lugs.left[1]',
      'this is not a valid lug name',
    ],
    [{ called: ['up', 'down'] }, 'parts.selector.called', '2 names for 1 position'],
    [
      { positions: [[['A0', 'A1']], []], called: ['up', 'up'] },
      'parts.selector.called',
      'two positions are called “up”',
    ],
    [{ called: ['1st'] }, 'parts.selector.called[0]', 'this is not a valid name of a position'],
    [{ called: ['sixteen letters s'] }, 'parts.selector.called[0]', 'this is not a valid name of a position'],
    [{ called: [1] }, 'parts.selector.called[0]', 'what a position is called'],
    [{ frame: 'shell' }, 'parts.selector.frame', '“shell” is not a lug of this switch'],
    [{ frame: 'A1' }, 'parts.selector.frame', '“A1” is the frame, and also a lug that a position connects'],
    [{ positions: [] }, 'parts.selector.positions', '“positions” is empty'],
    [{ positions: [[['A0']]] }, 'parts.selector.positions[0][0]', 'item 1 is too short'],
  ])('refuses %j', (wrong, path, words) => {
    const written = { ...LEVER_5, lugs: { left: ['A1', 'A0', 'A3'] }, positions: [[['A0', 'A1']]], ...wrong };
    const { kit, diagnostics } = kitFromValue(kitValue(written), 'x.ts');
    expect(kit).toBeUndefined();
    const said = diagnostics.map(({ message }) => message);
    expect(said.join('\n')).toContain(path);
    expect(said.join('\n')).toContain(words);
  });

  it('names its own lugs where one is misspelt', () => {
    const value = kitValue({ ...LEVER_5, lugs: { left: ['A1', 'A0'] }, positions: [[['A0', 'A1']]] });
    const [report] = kitFromValue(value, 'x.ts').diagnostics;
    expect(report).toMatchObject({ code: 'unknown-lug' });
    expect(report?.message).toContain('A3');
    expect(report?.remedy).toContain('A1');
  });
});

describe('a push-pull pot', () => {
  const lever = { kind: 'lever-3' };

  it('has the lugs of the pot and of the switch, each once', () => {
    const names = kinds['push-pull'].lugs.map(({ name }) => name);
    expect(names).toEqual(['1', '2', '3', 'case', 'A1', 'A0', 'A2', 'B1', 'B0', 'B2']);
    expect(kinds['push-pull'].is).toEqual(['pot', 'switch']);
  });

  it('doubles the positions, and is a volume in each', () => {
    const kit = kitOf(kitValue(lever, { kind: 'push-pull' }, ['neck.ground > volume.case']));
    const loads = solveLoads(buildCircuit(kit));
    expect(loads.map(({ state }) => state.positions)).toEqual(
      [1, 2, 3].flatMap((selector) => [1, 2].map((volume) => ({ selector, volume }))),
    );
    // 500k across each, pushed in or pulled out.
    for (const { pickups: entries } of loads)
      for (const { dcLoad } of entries) expect(dcLoad / 500e3).toBeCloseTo(1, 9);
  });

  it('pushed in joins each common with throw 1, pulled out with throw 2', () => {
    // Pushed in the neck is grounded; pulled out it stands on top of the bridge, in series.
    const kit = kitOf(
      kitValue(lever, { kind: 'push-pull' }, [
        'neck.ground > volume.A0',
        'volume.A1 > volume.case',
        'volume.A2 > bridge.hot',
      ]),
    );
    const at = (selector: number, volume: number) =>
      buildCircuit(kit).states.find(
        ({ positions }) => positions.selector === selector && positions.volume === volume,
      )?.sounding;
    expect([at(3, 1), at(3, 2), at(1, 2)]).toEqual([['neck'], ['bridge', 'neck'], ['bridge']]);
  });

  it('is drawn in every arrangement as it is described, with nothing found', {
    timeout: 120_000,
  }, async () => {
    const kit = kitOf(
      kitValue(lever, { kind: 'push-pull' }, [
        'neck.ground > volume.B0',
        'volume.B1 > volume.case',
        'volume.B2 > volume.A0',
        'volume.A2 > volume.case',
      ]),
    );
    for (const seed of [1, 2]) expect(await drawingErrors(kit, seed, LOW)).toEqual([]);
  });
});
