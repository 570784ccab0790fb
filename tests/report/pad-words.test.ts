/** Each advice about a resistor in words, from figures written down: what is always said, and what only when there is cause. */
import { describe, expect, it } from 'vitest';
import type { Alternative, Effect, PadAdvice, PadOption, PadPlan } from '../../src/analyse/index.ts';
import { padData } from '../../src/report/pad-data.ts';
import { padReport } from '../../src/report/pad-report.ts';
import { alternativeText, verdictOf, worseLines } from '../../src/report/pad-words.ts';
import { makeCircuit, mixedSet } from '../analyse/kits.ts';

const circuit = makeCircuit({
  ...mixedSet,
  parts: { ...mixedSet.parts, pad: { kind: 'resistor', value: '330k', tolerance: '1%' } },
  joints: [...mixedSet.joints, 'pad.1 > selector.A1', 'pad.2 > volume.case'],
});
const lone = makeCircuit({
  parts: { only: { kind: 'single-coil' }, out: { kind: 'jack' } },
  joints: ['only.hot > out.tip', 'only.ground > out.sleeve'],
});

/** In a state of the kit, from one DC load to another; the signal load is half of it. */
const effect = (index: number, pickup: string, from: number, to: number, percent: number): Effect => ({
  index,
  state: circuit.states[index] ?? {
    positions: {},
    positionNames: {},
    closedContacts: [],
    sounding: [],
    shorted: false,
  },
  pickup,
  before: { dcLoad: from, signalLoad: from / 2 },
  after: { dcLoad: to, signalLoad: to / 2 },
  reference: { dcLoad: 250e3, signalLoad: 125e3 },
  percent,
});
const solved = { effects: [], worse: [] };
const option = (ohms: number, load: number, percent: number, effects: readonly Effect[] = []): PadOption => ({
  ohms,
  load,
  percent,
  effects,
});
const judged = { pickup: 'bridge', state: 0, load: 500e3, reference: 250e3, percent: 100 };
const SEES = '500 kΩ in position 1, reference 250 kΩ, +100.0 %';
const chosen = option(470e3, 242.27e3, -3.09);
type Pad = Extract<PadAdvice, { kind: 'pad' }>;
const pad = (more: Partial<Pad>): Pad => ({
  kind: 'pad',
  ...judged,
  part: 'pad-bridge',
  from: 'selector.A1',
  to: 'volume.case',
  sleeved: true,
  replaces: [],
  present: false,
  ideal: 500e3,
  chosen,
  worse: [],
  alternatives: [],
  ...more,
});

describe('the verdict', () => {
  it.each<[PadAdvice, string]>([
    [{ kind: 'silent', pickup: 'bridge' }, 'never selected; no resistor needed'],
    [
      { kind: 'too-heavy', ...judged, causes: [], alternatives: [] },
      `no resistor helps, its load is already too heavy: ${SEES}; another resistor to ground would make it heavier`,
    ],
    [
      { kind: 'no-stock', ...judged, ideal: 500e3, nearest: option(22e3, 21.07e3, -91.57) },
      `no available value helps: 22 kΩ would give 21.07 kΩ, −91.6 %; now ${SEES}; ideal 500 kΩ`,
    ],
    [
      {
        kind: 'no-stock',
        ...judged,
        ideal: 500e3,
        nearest: option(22e3, 21.07e3, -91.57),
        notInStock: 470e3,
      },
      `no available value helps: 22 kΩ would give 21.07 kΩ, −91.6 %; now ${SEES}; ideal 500 kΩ; 470 kΩ is not in stock`,
    ],
    [
      { kind: 'needless', ...judged, pads: ['one', 'two'], without: 600e3, alternatives: [] },
      `remove one and two: without it 600 kΩ, with it ${SEES}`,
    ],
    [
      { kind: 'shares', ...judged, pads: ['one'], owner: 'neck' },
      `shares one with neck, with which it is always in parallel: ${SEES}; one resistor cannot match both`,
    ],
    [
      { kind: 'no-tone', ...judged, others: true, alternatives: [] },
      `leave as it is: no tone control loads it, so its signal load is ${SEES}`,
    ],
    [
      { kind: 'no-tone', ...judged, others: false, alternatives: [] },
      `leave as it is: no tone control loads it, as this kit has none, so its signal load is ${SEES}`,
    ],
    [
      { kind: 'pair', ...judged, first: 'neck' },
      `in series with neck: one resistor loads both, see neck; ${SEES}`,
    ],
    [
      { kind: 'out-of-reach', ...judged },
      `a resistor to ground would not load it: neither of its leads is grounded: ${SEES}`,
    ],
    [pad({}), 'fit 470 kΩ from selector.A1 to volume.case: 500 kΩ (+100.0 %) → 242.3 kΩ (−3.1 %)'],
    [
      pad({ pair: ['neck', 'middle'] }),
      'fit 470 kΩ from selector.A1 to volume.case for it and neck and middle, in series: 500 kΩ (+100.0 %) → 242.3 kΩ (−3.1 %)',
    ],
    [pad({ part: 'pad', present: true }), 'keep pad, 470 kΩ, the nearest available: 242.3 kΩ, −3.1 %'],
    [pad({ part: 'pad', replaces: ['pad'] }), 'change pad from 330 kΩ to 470 kΩ: 242.3 kΩ, −3.1 %'],
    [
      pad({ part: 'pad', replaces: ['pad', 'r2', 'r3'], notInStock: 330e3, pair: ['neck'] }),
      'change pad from 330 kΩ to 470 kΩ, remove r2 and r3 for it and neck, in series: 242.3 kΩ, −3.1 %; 330 kΩ is not in stock',
    ],
  ])('%j', (advice, text) => expect(verdictOf(circuit, 'dc', advice)).toBe(text));

  it('of what fits names the load, and for DC how to judge the other', () => {
    const fits: PadAdvice = { kind: 'fits', ...judged };
    expect(verdictOf(circuit, 'dc', fits)).toBe(
      `OK: DC load ${SEES}; no resistor needed; --match signal judges it with the tone path`,
    );
    expect(verdictOf(circuit, 'signal', fits)).toBe(`OK: signal load ${SEES}; no resistor needed`);
  });
  it('without a switch has no position', () =>
    expect(verdictOf(lone, 'signal', { kind: 'fits', ...judged })).toBe(
      'OK: signal load 500 kΩ, reference 250 kΩ, +100.0 %; no resistor needed',
    ));
});

describe('another way', () => {
  const resistor = { part: 'r', ohms: 470e3, from: 'volume.3', to: 'volume.case' };
  it.each<[Alternative, string]>([
    [
      { kind: 'elsewhere', pad: resistor, ...solved },
      '470 kΩ from volume.3 to volume.case, in circuit in every position',
    ],
    [
      {
        kind: 'spare-pole',
        pad: { ...resistor, wires: [['selector.A1', 'selector.B0']] },
        states: [0, 2],
        ...solved,
      },
      'on a free pole, a wire from selector.A1 to selector.B0, 470 kΩ from volume.3 to volume.case: in circuit in positions 1 and 3 only',
    ],
    [
      { kind: 'pots', pots: { volume: 250e3, tone: 500e3 }, ...solved },
      'other pots and no padding resistor: volume 250 kΩ and tone 500 kΩ',
    ],
    [
      { kind: 'move', part: 'r', pads: [{ ...resistor, pickup: 'neck' }], ...solved },
      'move r to volume.3, where it loads neck',
    ],
    [
      {
        kind: 'move',
        part: 'r',
        pads: [
          { ...resistor, pickup: 'neck' },
          { ...resistor, ohms: 390e3, from: 'selector.A2', pickup: 'middle' },
        ],
        ...solved,
      },
      'move r to volume.3, where it loads neck; fit 390 kΩ from selector.A2 to volume.case for middle',
    ],
    [{ kind: 'remove', part: 'r', ...solved }, 'remove r'],
    [
      { kind: 'tone-jumper', from: 'selector.B1', to: 'selector.B2', tones: ['t1', 't2'], ...solved },
      'a jumper from selector.B1 to selector.B2, so that t1 and t2 works on this pickup too',
    ],
  ])('%j', (alternative, text) => expect(alternativeText(circuit, alternative)).toBe(text));
});

it('what gets worse, position by position, by the load that is matched', () => {
  const worse = [
    effect(1, 'neck', 500e3, 242e3, -51.5),
    effect(2, 'neck', 500e3, 400e3, -20),
    effect(1, 'bridge', 250e3, 200e3, -20),
  ];
  expect(worseLines(circuit, 'dc', worse)).toEqual([
    'worse in position 2: neck 500 kΩ → 242 kΩ, −51.5 %; bridge 250 kΩ → 200 kΩ, −20.0 %',
    'worse in position 3: neck 500 kΩ → 400 kΩ, −20.0 %',
  ]);
  expect(worseLines(circuit, 'signal', worse.slice(1, 2))).toEqual([
    'worse in position 3: neck 250 kΩ → 200 kΩ, −20.0 %',
  ]);
});

const plan = (advice: readonly PadAdvice[], more: Partial<PadPlan> = {}): PadPlan => ({
  match: 'dc',
  series: 'E12',
  advice,
  kit: circuit.kit,
  effects: [],
  ...more,
});

describe('the report', () => {
  const effects = [
    effect(0, 'bridge', 500e3, 242.3e3, -3.1),
    effect(1, 'bridge', 500e3, 242.3e3, -3.1),
    effect(1, 'neck', 500e3, 242.3e3, -51.5),
    effect(2, 'neck', 500e3, 500e3, 0),
  ];
  const full = pad({
    chosen: { ...chosen, effects },
    below: option(390e3, 219.1e3, -12.4),
    above: option(560e3, 264.2e3, 5.7),
    worse: effects.slice(2, 3),
    alternatives: [{ kind: 'remove', part: 'r', effects: effects.slice(2), worse: effects.slice(2, 3) }],
  });
  const other = plan([{ kind: 'fits', ...judged, pickup: 'bridge' }], { match: 'signal' });
  const lines = (advice: readonly PadAdvice[], all: boolean, more: Partial<PadPlan> = {}, beside = other) =>
    padReport(circuit, plan(advice, more), beside, all).split('\n');

  it('in short has what to do, then all resistors together, the positions of several pickups first', () =>
    expect(lines([{ kind: 'silent', pickup: 'neck' }, full], false, { effects }).slice(1)).toEqual([
      'Padding resistors for the DC load, from E12. Loads are calculated with all controls on 10.',
      '',
      'neck    never selected; no resistor needed',
      '',
      'bridge  fit 470 kΩ from selector.A1 to volume.case: 500 kΩ (+100.0 %) → 242.3 kΩ (−3.1 %)',
      '        worse in position 2: neck 500 kΩ → 242.3 kΩ, −51.5 %',
      '  resistor      470 kΩ, bands YE VT YE GD for ±5 % (IEC 60062), part pad-bridge',
      '  other values  ideal 500 kΩ; 390 kΩ gives 219.1 kΩ, −12.4 %; 560 kΩ gives 264.2 kΩ, +5.7 %',
      '  signal load   121.2 kΩ, reference 125 kΩ (−3.1 %); without the change 500 kΩ (+100.0 %)',
      '  alternative   remove r',
      '                worse in position 2: neck 500 kΩ → 242.3 kΩ, −51.5 %',
      '',
      'With all these resistors fitted',
      '  position    pickup            DC load        signal load  DC reference   off by',
      '  selector 2  bridge  500 kΩ → 242.3 kΩ  250 kΩ → 121.2 kΩ        250 kΩ   −3.1 %',
      '  selector 2  neck    500 kΩ → 242.3 kΩ  250 kΩ → 121.2 kΩ        250 kΩ  −51.5 %',
      '  selector 1  bridge  500 kΩ → 242.3 kΩ  250 kΩ → 121.2 kΩ        250 kΩ   −3.1 %',
      '  selector 3  neck               500 kΩ             250 kΩ        250 kΩ    0.0 %',
      '',
      'For all values and positions, add --all.',
    ]));

  it('with every table has the values beside the chosen one, and what it does elsewhere', () =>
    expect(lines([full], true).slice(3)).toEqual([
      'bridge  fit 470 kΩ from selector.A1 to volume.case: 500 kΩ (+100.0 %) → 242.3 kΩ (−3.1 %)',
      '        worse in position 2: neck 500 kΩ → 242.3 kΩ, −51.5 %',
      '  matched       in position 1, on its own; reference DC load 250 kΩ',
      '  resistor      470 kΩ, bands YE VT YE GD for ±5 % (IEC 60062), part pad-bridge',
      '  from, to      selector.A1, volume.case',
      '  ideal value   500 kΩ',
      '  both loads    DC 242.3 kΩ, reference 250 kΩ (−3.1 %); signal 121.2 kΩ, reference 125 kΩ (−3.1 %)',
      '  signal load   without the change 500 kΩ (+100.0 %)',
      '',
      '  available               DC load   off by',
      '  390 kΩ     next below  219.1 kΩ  −12.4 %',
      '  470 kΩ     chosen      242.3 kΩ   −3.1 %',
      '  560 kΩ     next above  264.2 kΩ   +5.7 %',
      '',
      '  Effect of 470 kΩ in the other positions, those of several pickups first',
      '  position    pickup            DC load        signal load  DC reference   off by',
      '  selector 2  bridge  500 kΩ → 242.3 kΩ  250 kΩ → 121.2 kΩ        250 kΩ   −3.1 %',
      '  selector 2  neck    500 kΩ → 242.3 kΩ  250 kΩ → 121.2 kΩ        250 kΩ  −51.5 %',
      '  selector 3  neck               500 kΩ             250 kΩ        250 kΩ    0.0 %',
      '',
      '  Alternative: remove r',
      '    position    pickup            DC load        signal load  DC reference   off by',
      '    selector 2  neck    500 kΩ → 242.3 kΩ  250 kΩ → 121.2 kΩ        250 kΩ  −51.5 %',
      '    selector 3  neck               500 kΩ             250 kΩ        250 kΩ    0.0 %',
      '',
      'With all these resistors fitted',
      '  none',
    ]));

  const text = (advice: readonly PadAdvice[], all: boolean, more: Partial<PadPlan> = {}, beside = other) =>
    lines(advice, all, more, beside).join('\n');

  it('names what is matched, and who else sounds where it is judged', () => {
    const signal = text([{ ...full, state: 1 }], true, { match: 'signal' }, plan([], { match: 'dc' }));
    expect(signal).toContain('Padding resistors for the signal load');
    expect(signal).toContain('in position 2, together with neck; reference signal load 250 kΩ');
    expect(signal).toContain('  signal reference  ');
    expect(signal).toContain('DC load       no resistor of these values can match it');
    // In the table it is the load that is matched which has its reference.
    expect(signal).toMatch(/selector 2 +neck .* 125 kΩ +−51\.5 %/);
  });

  it('gives the tolerance of a resistor that is there, five per cent of one that is not', () =>
    expect(text([pad({ part: 'pad', replaces: ['pad'] })], false)).toContain(
      '470 kΩ, bands YE VT YE BN for ±1 % (IEC 60062), part pad',
    ));

  it.each<[PadAdvice | undefined, string]>([
    [pad({}), 'the same value matches it best'],
    [
      pad({ chosen: option(220e3, 176e3, 41, [effect(0, 'bridge', 500e3, 176e3, -29.6)]) }),
      'to match it instead (--match signal), 220 kΩ: DC 176 kΩ, reference 250 kΩ (−29.6 %); signal 88 kΩ, reference 125 kΩ (−29.6 %)',
    ],
    [{ kind: 'fits', ...judged }, 'without the change 500 kΩ (+100.0 %)'],
    [{ kind: 'too-heavy', ...judged, causes: [], alternatives: [] }, 'too heavy already: 500 kΩ (+100.0 %)'],
    [{ kind: 'no-tone', ...judged, others: true, alternatives: [] }, 'no tone control loads it'],
    [{ kind: 'pair', ...judged, first: 'neck' }, 'no resistor of these values can match it'],
    [undefined, 'no resistor of these values can match it'],
  ])('of the other load says, for %j: %s', (beside, said) => {
    const report = text([full], false, {}, plan(beside ? [beside] : [], { match: 'signal' }));
    expect(report).toContain(`signal load   121.2 kΩ, reference 125 kΩ (−3.1 %); ${said}\n`);
  });

  it('says which neighbours cannot be had', () => {
    const one = (more: object) => text([pad({ ...more })], true);
    const [below, above] = [option(390e3, 219.1e3, -12.4), option(560e3, 264.2e3, 5.7)];
    expect(one({ below, above })).not.toContain('value available');
    expect(one({ below })).toContain('\n  no larger value available');
    expect(one({ above })).toContain('\n  no smaller value available');
    expect(one({})).toContain('\n  no smaller and no larger value available');
  });

  it('says what loads a pickup too much', () => {
    const heavy: PadAdvice = {
      kind: 'too-heavy',
      ...judged,
      causes: [
        { part: 'volume', without: Infinity },
        { part: 'r', without: 250e3 },
      ],
      alternatives: [],
    };
    expect(text([heavy], false)).toContain(
      '\n  loaded by     volume (open without it), r (250 kΩ without it)',
    );
    expect(text([heavy], true)).toContain(
      '\n  loaded by  DC load without it\n  volume                   open\n  r                      250 kΩ',
    );
  });

  it('offers a stand-in for a tone control where there is one', () => {
    const toneless = (standIn?: number): PadAdvice => ({
      kind: 'no-tone',
      ...judged,
      others: true,
      alternatives: [],
      ...(standIn === undefined ? {} : { standIn }),
    });
    expect(text([toneless(470e3)], false)).toContain(
      '\n  alternative   470 kΩ from its signal lead to ground would match its signal load',
    );
    expect(text([toneless()], false)).not.toContain('alternative');
  });

  it('ends with all resistors together only where one is to be fitted, and with --all only where that says more', () => {
    const fits: PadAdvice = { kind: 'fits', ...judged };
    const kept = pad({ part: 'pad', present: true, replaces: ['pad'], worse: effects });
    expect(text([fits, full], false)).toContain('With all these resistors fitted');
    expect(text([fits, kept], false)).not.toContain('With all these resistors fitted');
    // What is kept makes nothing worse than it is.
    expect(text([kept], false)).not.toContain('worse');
    const more = 'add --all.';
    expect([text([fits], false), text([fits], true), text([full], true)].join()).not.toContain(more);
    expect(text([fits, kept], false)).toContain(more);
    expect(
      text([{ kind: 'needless', ...judged, pads: ['pad'], without: 1, alternatives: [] }], false),
    ).not.toContain(more);
  });

  it('lists what the stock has not, and the stock', () => {
    const stocked = (stock: readonly number[]) =>
      text([{ kind: 'fits', ...judged }], false, { series: { stock } });
    expect(stocked([470e3, 1e6])).toContain('from the stock (470 kΩ, 1 MΩ). Loads');
    expect(stocked([470e3])).toContain('\n\nNot in stock: pad, 330 kΩ.');
    expect(stocked([330e3])).not.toContain('Not in stock');
    expect(text([{ kind: 'fits', ...judged }], false)).not.toContain('Not in stock');
  });
});

describe('as data', () => {
  it('every advice has its verdict and its switches, every effect what sounds', () => {
    const advice = pad({
      below: option(390e3, 219e3, -12),
      chosen: { ...chosen, effects: [effect(1, 'neck', 2, 1, -50)] },
    });
    const found = padData(circuit, plan([advice, { kind: 'silent', pickup: 'neck' }])) as Record<
      string,
      unknown
    >;
    expect(found).toMatchObject({
      kit: circuit.kit.id,
      match: 'dc',
      choice: 'E12',
      effects: [],
      pickups: {
        neck: { verdict: 'silent' },
        bridge: {
          verdict: 'pad',
          switches: { selector: 1 },
          below: { ohms: 390e3 },
          chosen: {
            effects: [
              { switches: { selector: 2 }, sounding: ['neck', 'bridge'], pickup: 'neck', percent: -50 },
            ],
          },
        },
      },
    });
    expect((found.pickups as Record<string, object>).bridge).not.toHaveProperty('above');
  });
  it('a free pole has the positions it is in circuit in', () => {
    const alternatives: readonly Alternative[] = [
      { kind: 'spare-pole', pad: { part: 'r', ohms: 1, from: 'a', to: 'b' }, states: [0, 2], ...solved },
      { kind: 'remove', part: 'r', ...solved },
    ];
    for (const advice of [
      pad({ alternatives }),
      { kind: 'too-heavy', ...judged, causes: [], alternatives },
      { kind: 'needless', ...judged, pads: [], without: 1, alternatives },
      { kind: 'no-tone', ...judged, others: true, alternatives },
    ] as const) {
      const { pickups } = padData(circuit, plan([advice])) as {
        pickups: { bridge: { alternatives: readonly object[] } };
      };
      expect(pickups.bridge.alternatives[0]).toMatchObject({ positions: [{ selector: 1 }, { selector: 3 }] });
      expect(pickups.bridge.alternatives[1]).toEqual({ kind: 'remove', part: 'r', effects: [], worse: [] });
    }
  });
});
