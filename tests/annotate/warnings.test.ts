/** Warnings that a workshop needs, from the solved circuit; facts of the trade are common practice, no source. */
import { describe, expect, it } from 'vitest';
import { solveLoads } from '../../src/analyse/index.ts';
import { joiningText } from '../../src/annotate/joining.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { valueSource } from '../../src/describe/source.ts';
import { type Compact, makeCircuit, mixedSet, sampleCircuit, sampleNames } from '../analyse/kits.ts';

const said = (kit: Compact): readonly string[] => {
  const circuit = makeCircuit(kit);
  return toDiagnostics(notesOf(circuit, solveLoads(circuit)), { ...valueSource('a'), exact: true })
    .filter(({ severity }) => severity !== 'note')
    .map(({ severity, code, message }) => `${severity} ${code}: ${message}`);
};
const loadsOf = (kit: Compact) => solveLoads(makeCircuit(kit));
const joined = (kit: Compact): readonly (string | undefined)[] =>
  loadsOf(kit).map((entry) => joiningText(entry, (name) => name));

const coil = { kind: 'single-coil' };
const volume = { kind: 'pot', value: '250k' };
const parts = { neck: coil, bridge: coil, volume, out: { kind: 'jack' } };
const harness = ['volume.2 > out.tip', 'volume.1 > out.sleeve', 'volume.case > out.sleeve'];
const inSeries = [
  'neck.hot > volume.3',
  'neck.ground > bridge.hot',
  'bridge.ground > out.sleeve',
  ...harness,
];

describe('two single coils in series, one volume of 250 kΩ', () => {
  const [state] = loadsOf({ parts, joints: inSeries });
  it('see the volume and the other’s winding: 250 kΩ + 6 kΩ, by hand 256 kΩ', () => {
    for (const { dcLoad } of state?.pickups ?? []) expect(dcLoad).toBeCloseTo(256e3, 6);
    expect(state?.pickups.length).toBe(2);
  });
  it('at 1 kHz the other’s inductance too: by hand (R² + X²)/R of 256 kΩ with 2.4 H, its 110 pF left out', () => {
    const x = 2 * Math.PI * 1000 * 2.4;
    const byHand = (256e3 ** 2 + x ** 2) / 256e3;
    expect(state?.pickups[0]?.signalLoad).toBeCloseTo(byHand, -3);
  });
  it('are said to be in series, in phase, as loud as each other', () => {
    expect(joined({ parts, joints: inSeries })).toEqual(['in series']);
    expect(said({ parts, joints: inSeries })).toEqual([]);
    expect(state?.pickups.map(({ level }) => level)).toEqual([0, 0]);
  });
  it('a pad across one of them does not hide the chain', () => {
    const padded = { ...parts, pad: { kind: 'resistor', value: '470k' } };
    const joints = [...inSeries, 'pad.1 > bridge.hot', 'pad.2 > out.sleeve'];
    expect(joined({ parts: padded, joints })).toEqual(['in series']);
    // The neck sees the volume and the bridge's 6 kΩ beside its pad; by hand 250 k + 6 k ∥ 470 k.
    expect(loadsOf({ parts: padded, joints })[0]?.pickups[0]?.dcLoad).toBeCloseTo(
      250e3 + (6e3 * 470e3) / 476e3,
      3,
    );
  });
  it('with one’s leads exchanged are out of phase, and no ground is missed', () => {
    const joints = [
      'neck.hot > volume.3',
      'neck.ground > bridge.ground',
      'bridge.hot > out.sleeve',
      ...harness,
    ];
    expect(joined({ parts, joints })).toEqual(['in series, out of phase: they cancel, no output']);
    expect(said({ parts, joints })).toEqual([
      'warning out-of-phase: “bridge” is out of phase with “neck”: together they have no output',
    ]);
  });
});

describe('three pickups, two of them in series', () => {
  const three = { ...parts, middle: coil };
  it('the chain beside the third', () => {
    const joints = [...inSeries, 'middle.hot > volume.3', 'middle.ground > out.sleeve'];
    expect(joined({ parts: three, joints })).toEqual(['neck + bridge in series, in parallel with middle']);
    // The one in parallel is taken out, the one in the chain stays.
    const dc = loadsOf({ parts: three, joints })[0]?.pickups.map(({ dcLoad }) => Math.round(dcLoad));
    expect(dc).toEqual([256e3, 256e3, 250e3]);
  });
  it('a pair side by side, in series with the third', () => {
    const joints = [...inSeries, 'middle.hot > bridge.hot', 'middle.ground > out.sleeve'];
    expect(joined({ parts: three, joints })).toEqual(['in series and in parallel']);
    const dc = loadsOf({ parts: three, joints })[0]?.pickups.map(({ dcLoad }) => dcLoad) ?? [];
    // The third sees the pair's windings side by side, each of the pair sees the third's.
    expect(dc[0]).toBeCloseTo(253e3, 6);
    expect(dc[1]).toBeCloseTo(256e3, 6);
  });
});

describe('exchanged leads', () => {
  it.each(['neck', 'middle', 'bridge'])('of the %s in an SSS five-way', (name) => {
    const circuit = sampleCircuit('plover-sss');
    const swap = (end: { part: string; lug: string }) =>
      end.part === name ? { part: name, lug: end.lug === 'hot' ? 'ground' : 'hot' } : end;
    const joints = circuit.kit.joints.map(
      ({ from, to }) => `${swap(from).part}.${swap(from).lug} > ${swap(to).part}.${swap(to).lug}`,
    );
    const compact = Object.fromEntries(
      circuit.kit.parts.map(({ kind, name: own, ...rest }) => [
        own,
        { kind, ...('value' in rest && rest.value ? { value: rest.value.value } : {}) },
      ]),
    );
    const found = said({ parts: compact, joints }).filter((text) => text.includes('out-of-phase'));
    expect(found.map((text) => text.split('”')[0])).toEqual([`warning out-of-phase: “${name}`]);
  });
  it('no sample has any', () => {
    for (const sample of sampleNames()) {
      const circuit = sampleCircuit(sample);
      expect(notesOf(circuit, solveLoads(circuit)).map(({ code }) => code)).not.toContain('out-of-phase');
    }
  });
  it('of all pickups at once are in phase with each other', () => {
    const joints = ['neck', 'bridge'].flatMap((one) => [
      `${one}.ground > volume.3`,
      `${one}.hot > out.sleeve`,
    ]);
    expect(joined({ parts, joints: [...joints, ...harness] })).toEqual(['in parallel']);
  });
});

describe('a pickup behind a part', () => {
  const one = { neck: coil, volume, x: { kind: 'resistor', value: '470k' }, out: { kind: 'jack' } };
  it('sounds, and its level is given below its reference harness', () => {
    const joints = ['neck.hot > x.1', 'x.2 > volume.3', 'neck.ground > out.sleeve', ...harness];
    const [state] = loadsOf({ parts: one, joints });
    // By hand: 250 k ∥ 1 M = 200 k of 676 k at the jack; the harness it was made for gives about half a decibel less than all.
    expect(state?.pickups[0]?.level).toBeCloseTo(20 * Math.log10(200 / 676) + 0.47, 0);
  });
  it('that feeds through a resistor from another’s lug is in the list and in the total load', () => {
    const joints = [
      'bridge.hot > volume.3',
      'neck.hot > x.1',
      'x.2 > bridge.hot',
      'neck.ground > out.sleeve',
      'bridge.ground > out.sleeve',
      ...harness,
    ];
    const [state] = loadsOf({ parts: { ...one, bridge: coil }, joints });
    expect(state?.state.sounding).toEqual(['neck', 'bridge']);
    const bridge = state?.pickups.find(({ pickup }) => pickup === 'bridge');
    const [bare, load] = [200e3, 476e3];
    expect(bridge?.total.dcLoad).toBeCloseTo((bare * load) / (bare + load), 3);
  });
});

it('of pickups out of phase, those positions are named in which they cancel, where they do not in all', () => {
  // Three in series; the push-pull takes the middle one out, and then the two that are left cancel.
  const all = {
    top: coil,
    middle: coil,
    bottom: coil,
    knob: { kind: 'push-pull', value: '250k' },
    out: { kind: 'jack' },
  };
  const joints = [
    'bottom.ground > out.sleeve',
    'bottom.hot > middle.ground',
    'middle.hot > top.hot',
    'top.ground > knob.3',
    'bottom.hot > knob.A0',
    'knob.A2 > middle.hot',
    'knob.2 > out.tip',
    'knob.1 > out.sleeve',
    'knob.case > out.sleeve',
  ];
  const told = said({ parts: all, joints }).find((one) => one.includes('out-of-phase'));
  expect(told).toMatch(
    /“top” is out of phase with “middle” and “bottom” in every position; they cancel with knob pulled out: no output$/,
  );
});

describe('what is heard nowhere', () => {
  const lever = { kind: 'lever-3' };
  const base = ['neck.ground > out.sleeve', 'bridge.ground > out.sleeve', 's.A0 > volume.3', ...harness];
  it('a pickup that is never selected', () => {
    const joints = [...base, 'bridge.hot > s.A1', 's.A1 > s.A2', 's.A2 > s.A3', 'neck.hot > s.B1'];
    expect(said({ parts: { ...parts, s: lever }, joints })).toEqual([
      'warning switch-no-effect: “s” has no effect: all its positions sound the same',
      'warning never-selected: “neck” is never selected: it has no output in any switch position',
    ]);
  });
  it('a blend hides none; one that is said to be a volume control does', () => {
    const joints = [
      'neck.hot > volume.1',
      'bridge.hot > volume.3',
      'volume.2 > out.tip',
      'neck.ground > out.sleeve',
      'bridge.ground > out.sleeve',
      'volume.case > out.sleeve',
    ];
    expect(said({ parts, joints })).toEqual([]);
    expect(said({ parts: { ...parts, volume: { ...parts.volume, role: 'volume' } }, joints })).toEqual([
      expect.stringMatching(
        /^warning role-contradicts: “volume” is described as a volume control, but .* a blend/,
      ),
      'warning hidden-by-pot: “neck” has almost no output with “volume” on 10; it is heard only with that pot turned down',
    ]);
  });
  it('position 1 without the bridge pickup', () => {
    const joints = [...base, 'neck.hot > s.A1', 'neck.hot > s.A2', 'bridge.hot > s.A3'];
    expect(said({ parts: { ...parts, s: lever }, joints })).toEqual([
      'warning first-not-bridge: position 1 of “s” selects neck, not “bridge”',
    ]);
    const twice = [...base, 'neck.hot > s.A1', 'bridge.hot > s.A2', 'bridge.hot > s.A3'];
    expect(said({ parts: { ...parts, s: lever }, joints: twice })).toEqual([
      'warning first-not-bridge: position 1 of “s” selects neck, not “bridge”',
    ]);
    const right = [...base, 'bridge.hot > s.A1', 'bridge.hot > s.A2', 'neck.hot > s.A3'];
    expect(said({ parts: { ...parts, s: lever }, joints: right })).toEqual([]);
    const adding = [...base, 'neck.hot > s.A0', 'bridge.hot > s.A2', 'bridge.hot > s.A3'];
    const added = said({ parts: { ...parts, s: lever }, joints: adding });
    expect(added.filter((one) => one.includes('first-not-bridge'))).toEqual([]);
    // Of two that sound in position 1 it is enough that one gives way to the bridge pickup.
    const middle = ['middle.ground > out.sleeve', 'middle.hot > s.A0'];
    const three = { ...parts, middle: coil, s: lever };
    const replacing = [...base, ...middle, 'neck.hot > s.A1', 'bridge.hot > s.A2', 'bridge.hot > s.A3'];
    expect(said({ parts: three, joints: replacing })).toEqual([
      'warning first-not-bridge: position 1 of “s” selects neck, middle, not “bridge”',
    ]);
    // A toggle has an up and a down, and no position that is nearest the bridge.
    const up = [...base, 'neck.hot > s.1', 'bridge.hot > s.2', 's.frame > out.sleeve'];
    const toggled = up.map((one) => one.replace('s.A0', 's.common'));
    expect(said({ parts: { ...parts, s: { kind: 'toggle-3' } }, joints: toggled })).toEqual([]);
  });
});

it('a capacitor straight across the signal in every position is an error', () => {
  const joints = ['neck.hot > volume.3', 'neck.ground > out.sleeve', 'c.1 > volume.3', 'c.2 > out.sleeve'];
  const one = { neck: coil, volume, c: { kind: 'capacitor', value: '22n' }, out: { kind: 'jack' } };
  expect(said({ parts: one, joints: [...joints, ...harness] }).map((text) => text.split(':')[0])).toEqual([
    'error capacitor-across-always',
  ]);
});

it('two parts of one label cannot be told apart', () => {
  const labelled = { ...parts, neck: { ...coil, label: 'Pickup' }, bridge: { ...coil, label: 'pickup ' } };
  expect(said({ parts: labelled, joints: inSeries })).toEqual([
    'warning same-label: “pickup ” is also the label of “neck”',
  ]);
  // A drawing shows two blanks as one.
  const blanks = {
    ...parts,
    neck: { ...coil, label: 'My pickup' },
    bridge: { ...coil, label: 'My  pickup' },
  };
  expect(said({ parts: blanks, joints: inSeries })).toEqual([
    'warning same-label: “My  pickup” is also the label of “neck”',
  ]);
});

it('a capacitor that leads to ground only through another pickup is not across the signal: half out of phase', () => {
  const joints = [
    'neck.hot > volume.3',
    'neck.ground > out.sleeve',
    'bridge.hot > out.sleeve',
    'bridge.ground > c.1',
    'c.2 > volume.3',
    ...harness,
  ];
  const half = { ...parts, c: { kind: 'capacitor', value: '10n' } };
  expect(said({ parts: half, joints }).map((text) => text.split(':')[0])).toEqual(['warning out-of-phase']);
  expect(joined({ parts: half, joints })[0]).toContain('in parallel, out of phase');
  // In a series chain the others of the chain stay: without them nothing would sound, and nothing be lost.
  const across = [...inSeries, 'c.1 > volume.3', 'c.2 > out.sleeve'];
  expect(said({ parts: half, joints: across }).map((text) => text.split(':')[0])).toEqual([
    'error capacitor-across-always',
  ]);
});

describe('parts that do nothing', () => {
  const lever = { kind: 'lever-3' };
  const pad = { kind: 'resistor', value: '470k' };
  const all = { ...parts, s: lever, pad };
  const selected = [
    'neck.hot > s.A3',
    'bridge.hot > s.A1',
    's.A2 > s.A3',
    's.A0 > volume.3',
    'neck.ground > out.sleeve',
    'bridge.ground > out.sleeve',
    ...harness,
  ];
  const idle = (more: readonly string[], given: Compact['parts'] = all): readonly string[] =>
    said({ parts: given, joints: [...selected, ...more] }).filter((text) => text.includes('-no-effect'));
  it('a pad to a throw whose common is free, one that hangs by a leg, and one shorted by its own net', () => {
    const told = [
      'warning component-no-effect: “pad” is never in circuit: no signal flows through this resistor in any switch position',
    ];
    expect(idle(['pad.1 > s.B1', 'pad.2 > out.sleeve'])).toEqual(told);
    expect(idle(['pad.1 > s.B1', 'pad.2 > s.B2'])).toEqual(told);
    expect(idle(['pad.1 > s.A2', 'pad.2 > s.A3'])).toEqual(told);
  });
  it('not a pad that one position selects, nor what works only with a control turned down', () => {
    expect(idle(['pad.1 > s.A1', 'pad.2 > out.sleeve'])).toEqual([]);
    // A treble bleed: at full the wiper shorts it.
    expect(idle(['pad.1 > volume.3', 'pad.2 > volume.2'])).toEqual([]);
    expect(idle(['pad.1 > s.B1', 'pad.2 > out.sleeve', 's.B0 > volume.3'])).toEqual([]);
  });
  it('a switch that changes nothing, and not one that does', () => {
    const { pad: _, ...without } = all;
    const joints = ['neck.hot > volume.3', 'bridge.hot > volume.3', 'neck.ground > out.sleeve', ...harness];
    const told = said({ parts: without, joints: [...joints, 'bridge.ground > out.sleeve', 's.A0 > s.A1'] });
    expect(told).toEqual(['warning switch-no-effect: “s” has no effect: all its positions sound the same']);
    expect(idle([], without)).toEqual([]);
  });
});

describe('a capacitor in the path of one of two pickups in parallel, which cuts its bass', () => {
  // Its resonance with the windings turns the sign of one for a few hundred hertz; the leads are right all the same.
  it.each(['1n', '2.2n', '4.7n', '10n', '22n', '47n'])(
    '%s: in parallel, in phase, no lead to be exchanged',
    (value) => {
      const joints = [
        'neck.hot > c.1',
        'c.2 > volume.3',
        'bridge.hot > volume.3',
        'neck.ground > out.sleeve',
        'bridge.ground > out.sleeve',
        ...harness,
      ];
      const cut = { ...parts, c: { kind: 'capacitor', value } };
      expect(said({ parts: cut, joints })).toEqual([]);
      expect(joined({ parts: cut, joints })[0]).not.toMatch(/series|out of phase/);
      const [first, , third, fourth, ...rest] = joints;
      const exchanged = [first, fourth, third, ...rest, 'c.2 > volume.3'].map((joint) =>
        (joint ?? '')
          .replace('neck.hot', 'NECK')
          .replace('neck.ground', 'neck.hot')
          .replace('NECK', 'neck.ground'),
      );
      expect(said({ parts: cut, joints: exchanged }).map((text) => text.split(':')[0])).toEqual([
        'warning out-of-phase',
      ]);
    },
  );
});

it('a case on the signal is not told to be grounded as it is', () => {
  const tone = { kind: 'pot', value: '250k' };
  const all = { ...parts, tone, c: { kind: 'capacitor', value: '22n' } };
  const joints = [
    'neck.hot > volume.3',
    'neck.ground > out.sleeve',
    'bridge.hot > volume.3',
    'bridge.ground > out.sleeve',
    'tone.1 > tone.case',
    'tone.1 > volume.3',
    'tone.2 > c.1',
    'c.2 > out.sleeve',
    ...harness,
  ];
  const circuit = makeCircuit({ parts: all, joints });
  const found = toDiagnostics(notesOf(circuit, solveLoads(circuit)), {
    ...valueSource('a'),
    exact: true,
  }).filter(({ code }) => code.startsWith('case-'));
  expect(found.map(({ code, message, remedy }) => [code, message, remedy.split(';')[0]])).toEqual([
    [
      'case-on-signal',
      'the case of “tone” carries the signal: it is connected to neck.hot, bridge.hot, volume.3',
      'First disconnect tone.1 from the case',
    ],
  ]);
});

it('a case on a switch’s throw is on the signal, and not told to be joined to ground: that would short it', () => {
  const all = { ...parts, selector: { kind: 'lever-3' }, tone: { kind: 'pot', value: '250k' } };
  const joints = [
    'neck.hot > selector.A1',
    'neck.ground > out.sleeve',
    'bridge.hot > selector.A2',
    'bridge.hot > selector.A3',
    'bridge.ground > out.sleeve',
    'selector.A0 > volume.3',
    'selector.A0 > selector.B0',
    'selector.B2 > tone.case',
    ...harness,
  ];
  const circuit = makeCircuit({ parts: all, joints });
  const found = notesOf(circuit, solveLoads(circuit)).map(({ code }) => code);
  expect(found).toContain('case-on-signal');
  expect(found).not.toContain('case-not-grounded');
});

describe('what is wired so on purpose, and what is not', () => {
  const capacitor = { kind: 'capacitor', value: '22n' };
  it('a capacitor across one coil of a series pair is a warning that names it, not an error', () => {
    const joints = [...inSeries, 'c.1 > bridge.hot', 'c.2 > out.sleeve'];
    const [across] = said({ parts: { ...parts, c: capacitor }, joints });
    expect(across).toMatch(/^warning capacitor-across: “c” is connected straight across “bridge”: /);
    const whole = [...inSeries, 'c.1 > neck.hot', 'c.2 > out.sleeve'];
    const [error] = said({ parts: { ...parts, c: capacitor }, joints: whole });
    expect(error).toMatch(/^error capacitor-across-always: “c” is connected straight across the signal/);
  });
  it('a tone without its capacitor silences', () => {
    const tone = { kind: 'pot', value: '250k' };
    const hots = ['neck.hot > volume.3', 'neck.ground > out.sleeve', 'tone.case > out.sleeve', ...harness];
    const one = { neck: coil, volume, tone, out: { kind: 'jack' } };
    const bare = said({ parts: one, joints: [...hots, 'tone.1 > volume.3', 'tone.2 > tone.case'] });
    expect(bare).toEqual([expect.stringMatching(/^warning shunt-control: “tone” works as a volume control/)]);
    const bridged = said({
      parts: { neck: coil, volume, out: { kind: 'jack' } },
      joints: ['neck.hot > volume.3', 'neck.ground > out.sleeve', ...harness, 'volume.3 > volume.2'],
    });
    expect(bridged).toEqual([
      expect.stringMatching(
        /^warning shunt-control: lugs 2 and 3 of “volume” are connected: it only shorts the signal/,
      ),
    ]);
    const ganged = {
      neck: coil,
      both: { kind: 'dual-pot', value: '250k' },
      c: capacitor,
      out: { kind: 'jack' },
    };
    // One gang is the volume, all three lugs of it; the other is a tone, whose third lug is free.
    const volumeAndTone = [
      'neck.hot > both.a3',
      'both.a2 > out.tip',
      'both.a1 > both.case',
      'both.b1 > both.a3',
      'both.b2 > c.1',
      'c.2 > both.case',
      'neck.ground > both.case',
      'out.sleeve > both.case',
    ];
    expect(said({ parts: ganged, joints: volumeAndTone })).toEqual([]);
    const right = ['tone.1 > volume.3', 'tone.2 > c.1', 'c.2 > tone.case'];
    expect(said({ parts: { ...one, c: capacitor }, joints: [...hots, ...right] })).toEqual([]);
  });
  it('a tone with a large capacitor and a large winding, which together silence 1 kHz, does not', () => {
    const [tone, large] = [
      { kind: 'pot', value: '250k' },
      { kind: 'humbucker', inductance: 6 },
    ];
    const kit = { neck: large, volume, tone, c: { ...capacitor, value: '47n' }, out: { kind: 'jack' } };
    const hots = ['neck.hot > volume.3', 'neck.ground > out.sleeve', 'tone.case > out.sleeve', ...harness];
    const joints = [...hots, 'tone.2 > volume.3', 'tone.1 > c.1', 'c.2 > tone.case'];
    expect(said({ parts: kit, joints })).toEqual([]);
  });
  it('a pot across one of two pickups in series silences that one alone, as is meant', () => {
    const pot = { ...parts, w: { kind: 'pot', value: '500k' } };
    const joints = [...inSeries, 'w.1 > bridge.hot', 'w.2 > out.sleeve', 'w.case > out.sleeve'];
    expect(said({ parts: pot, joints })).toEqual([]);
  });
  it('no signal need pass what stands between the strings and ground', () => {
    const network = { g: { kind: 'ground-point' }, r: { kind: 'resistor', value: '220k' }, c: capacitor };
    const joints = [...inSeries, 'g.1 > r.1', 'r.1 > c.1', 'r.2 > volume.case', 'c.2 > volume.case'];
    expect(said({ parts: { ...parts, ...network }, joints })).toEqual([]);
    const idle = [...inSeries, 'g.1 > volume.case', 'r.1 > volume.case', 'r.2 > c.1', 'c.2 > volume.case'];
    expect(said({ parts: { ...parts, ...network }, joints: idle })).toHaveLength(2);
  });
});

it('a capacitor on a case that has lost its ground is not said to be useless: the case is what to fix', () => {
  const joints = mixedSet.joints.filter((joint) => joint !== 'tone.case > volume.case');
  const codes = notesOf(
    makeCircuit({ ...mixedSet, joints }),
    solveLoads(makeCircuit({ ...mixedSet, joints })),
  ).map(({ code }) => code);
  expect(codes).toContain('case-not-grounded');
  expect(codes).not.toContain('component-no-effect');
});

describe('the two coils of one pickup', () => {
  const SHIELD = 'bridge.shield > out.sleeve';
  const kit = (joints: readonly string[], more: object = {}): Compact => ({
    parts: {
      bridge: { kind: 'four-lead-humbucker', inductance: '4.4H', ...more },
      volume: { kind: 'pot', value: '500k' },
      out: { kind: 'jack' },
    },
    joints: [...joints, ...(joints.some((one) => one.includes('shield')) ? [] : [SHIELD]), ...harness],
  });
  const series = [
    'bridge.a-start > volume.3',
    'bridge.a-finish > bridge.b-finish',
    'bridge.b-start > out.sleeve',
  ];
  it('in series by their finishes are right; start to finish they cancel', () => {
    expect(said(kit(series))).toEqual([]);
    expect(
      said(
        kit([
          'bridge.a-start > volume.3',
          'bridge.a-finish > bridge.b-start',
          'bridge.b-finish > out.sleeve',
        ]),
      ),
    ).toEqual([
      'warning coils-out-of-phase: the two coils of “bridge” are out of phase: they cancel most of the signal',
    ]);
  });
  it('made with the same pole up they cancel, too', () => {
    expect(said(kit(series, { polarity: { a: 'north', b: 'north' } }))).toEqual([
      'warning coils-out-of-phase: the two coils of “bridge” are out of phase: they cancel most of the signal',
    ]);
  });
  it('what to do about it hangs on whether the leads or the magnets are to blame', () => {
    const remedy = (joints: readonly string[], more: object = {}) => {
      const circuit = makeCircuit(kit(joints, more));
      return toDiagnostics(notesOf(circuit, solveLoads(circuit)), { ...valueSource('a'), exact: true })
        .filter(({ code }) => code === 'coils-out-of-phase')
        .map((one) => one.remedy);
    };
    const crossed = [
      'bridge.a-start > volume.3',
      'bridge.a-finish > bridge.b-start',
      'bridge.b-finish > out.sleeve',
    ];
    expect(remedy(crossed)).toEqual([
      expect.stringMatching(/^Exchange the leads of one coil: in series, a-finish/),
    ]);
    for (const more of [
      { polarity: { a: 'north', b: 'north' } },
      { wind: { a: 'clockwise', b: 'clockwise' } },
    ])
      expect(remedy(series, more)).toEqual([
        expect.stringMatching(
          /soldered as usual, but by its “wind” and “polarity”.*exchange the two leads of one coil/,
        ),
      ]);
  });
  it('have a shield that is grounded, and not left free', () => {
    expect(said(kit([...series, SHIELD]))).toEqual([]);
    const { parts: only } = kit(series);
    expect(said({ parts: only, joints: [...series, ...harness] })).toEqual([
      'warning case-not-grounded: the shield of “bridge” is not connected to ground',
    ]);
    expect(said(kit([...series, 'bridge.shield > volume.3']))).toEqual([
      expect.stringMatching(/^warning case-on-signal: the shield of “bridge” carries the signal/),
    ]);
  });
});
