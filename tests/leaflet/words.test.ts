/** What a leaflet says besides steps and readings: how to tell lugs and positions, what the kit's own parts ask for, and which tone control acts where. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/annotate/steps.ts';
import { inLanguage, type Kit } from '../../src/describe/kit.ts';
import type { Prepared } from '../../src/draw/compose.ts';
import { loadKit } from '../../src/files/load.ts';
import { Cuts } from '../../src/leaflet/cuts.ts';
import type { Block, Table } from '../../src/leaflet/document.ts';
import { faultsTable } from '../../src/leaflet/faults.ts';
import { fittingSection } from '../../src/leaflet/fitting.ts';
import { leafletOf } from '../../src/leaflet/leaflet.ts';
import { orientationSection } from '../../src/leaflet/orientation.ts';
import { caseWords, holdWords, partsTable, tools } from '../../src/leaflet/parts.ts';
import { loadsSection, positionsTable } from '../../src/leaflet/sound.ts';
import { unbroken } from '../../src/leaflet/unbroken.ts';
import { type Language, languages } from '../../src/messages/language.ts';
import { sayIn } from '../../src/messages/say.ts';
import { type Arrangement, arrangementSchema } from '../../src/place/arrangement.ts';
import { DEFAULT_EFFORT } from '../../src/place/improve.ts';
import { longSpans } from '../../src/place/leg-spans.ts';
import { type Analysed, analyse, prepare } from '../../src/prepare.ts';
import { type Compact, makeKit } from '../analyse/kits.ts';
import { squeezed } from '../tools/pdf-tools.ts';
import { placed, preparedOf } from './make.ts';

const say = sayIn('en');
const circuit = (name: string): Promise<Prepared> => preparedOf(`samples/circuits/${name}.yaml`);
/** Solved only: where parts stand makes no difference to most words. */
const solved = async (file: string, language: Language = 'en') => {
  const { kit, diagnostics } = await loadKit(file);
  if (!kit) throw new Error(diagnostics.map(({ message }) => message).join('; '));
  return analyse(inLanguage(kit, language));
};
const cellsOf = (table: Block): readonly (readonly string[])[] =>
  table.is === 'table'
    ? table.rows.map((row) => row.map((cell) => (cell.is === 'text' ? cell.text : cell.is)))
    : [];
const itemsOf = (blocks: readonly Block[]): readonly string[] =>
  blocks.flatMap((block) =>
    block.is === 'list' ? block.items : block.is === 'together' ? itemsOf(block.blocks) : [],
  );
/** Of the table of positions the column of tone controls, beside the positions. */
const tonesOf = async (name: string): Promise<readonly (readonly [string, string])[]> => {
  const table: Table = positionsTable(await solved(`samples/circuits/${name}.yaml`), say);
  return cellsOf(table).map((row) => [row[0] ?? '', row.at(-1) ?? ''] as const);
};

describe('which tone control acts in which position', () => {
  // Handbook, circuits 10 and 11: two tones on the second pole, the bridge without one; the same with a bridge tone jumper.
  it.each([
    ['sss-lever-5-1v2t', ['none', 'Tone 2', 'Tone 2', 'Tone 1; Tone 2', 'Tone 1']],
    ['sss-lever-5-1v2t-bridge-tone', ['Tone 2', 'Tone 2', 'Tone 2', 'Tone 1; Tone 2', 'Tone 1']],
    // Turned up it is not in the circuit at all, and yet it is a tone control when it is turned down.
    ['ss-lever-3-1v1t-no-load-tone', ['Tone', 'Tone', 'Tone']],
    // Position 1 has no capacitor.
    ['h-1v1t-rotary-caps', ['none', 'Tone', 'Tone', 'Tone', 'Tone', 'Tone']],
    // Nothing sounds while the button is pressed.
    ['h-1v1t-kill', ['Tone', '']],
    // Two outputs that share nothing: each control on its own pickup only.
    ['bass-ss-2v2t-stereo', ['Neck tone: Neck; Bridge tone: Bridge']],
  ])('%s', async (name, expected) => expect((await tonesOf(name)).map(([, tone]) => tone)).toEqual(expected));

  it('is no column of a kit without a tone control', async () => {
    const prepared = await solved('samples/circuits/s-volume.yaml');
    expect(positionsTable(prepared, say).columns.map(({ head }) => head)).not.toContain('Tone control');
    for (const language of languages) {
      const words = JSON.stringify([loadsSection(prepared, sayIn(language))]);
      expect(words).not.toMatch(/tone|Ton(?!abnehmer)|tonalité|tono/);
    }
  });
});

describe('the loads', () => {
  it('stand beside those that each pickup is designed for', async () => {
    const words = JSON.stringify(loadsSection(await solved('samples/wren-hs.yaml'), say));
    // Handbook: single coil 250 k volume and 250 k tone (250 k, 125 k); humbucker 500 k and 500 k (500 k, 250 k).
    expect(words).toContain('Neck: 500 kΩ, 250 kΩ; Bridge: 250 kΩ, 125 kΩ.');
  });
});

/** A pot as a volume control, and whatever else is given. */
const volume = (
  hand: 'right' | 'left',
  [high, low]: readonly [string, string],
  more: Partial<Compact> = {},
): Kit => ({
  ...makeKit({
    parts: {
      pickup: { kind: 'single-coil', label: 'Pickup' },
      volume: { kind: 'pot', value: '250k', label: 'Volume' },
      output: { kind: 'jack', label: 'Output' },
      ...more.parts,
    },
    joints: [
      `pickup.hot > volume.${high}`,
      'pickup.ground > output.sleeve',
      'volume.2 > output.tip',
      `volume.${low} > output.sleeve`,
      ...(more.joints ?? []),
    ],
  }),
  hand,
});
const linesFor = async (kit: Kit): Promise<readonly string[]> =>
  itemsOf(orientationSection(analyse(kit), sayIn(kit.language)));

describe('on 10', () => {
  // Handbook: louder clockwise is signal at 3, ground at 1; a left-handed build swaps them.
  it.each([
    ['right', '3', '1', 'clockwise'],
    ['left', '1', '3', 'anticlockwise'],
    // Wired for the other hand: the sentence goes by the circuit.
    ['right', '1', '3', 'anticlockwise'],
  ] as const)(
    'of a %s-handed build with the signal at lug %s and ground at %s: fully %s',
    async (hand, high, low, end) => {
      const lines = await linesFor(volume(hand, [high, low]));
      expect(lines).toContain(
        `Volume: on 10 when turned fully ${end}, seen from the shaft; on 0 at the other end.`,
      );
    },
  );
});

describe('how to tell lugs and positions', () => {
  const selector = (part: Compact['parts'][string], joints: readonly string[]): Kit =>
    volume('right', ['3', '1'], { parts: { sw: { label: 'Way', ...part } }, joints });

  it('counts a lever from the bridge, a rotary clockwise, and names two lugs that touch in the first and the last position', async () => {
    // Handbook, table of parts: five-way 1: 0–1, 5: 0–3; rotary: position n joins X0 to Xn.
    const lever = (await linesFor(selector({ kind: 'lever-5' }, ['sw.A0 > volume.3']))).join(' ');
    expect(lever).toContain(
      'Way: position 1 is the end of the lever’s travel next to the bridge, position 5',
    );
    expect(lever).toContain(
      'in position 1, below 1 Ω between A0 and A1, B0 and B1; in position 5, below 1 Ω between A0 and A3, B0 and B3.',
    );
    const rotary = (await linesFor(selector({ kind: 'rotary', throws: 7 }, ['sw.A0 > volume.3']))).join(' ');
    expect(rotary).toContain('fully anticlockwise');
    expect(rotary).toContain('in position 7, below 1 Ω between A0 and A7.');
  });

  it('says of a toggle which lug is above, and nothing of a position in which nothing touches', async () => {
    const toggle = (
      await linesFor(selector({ kind: 'mini-toggle', action: 'on-off-on' }, ['sw.A0 > volume.3']))
    ).join(' ');
    expect(toggle).toContain('with lug A1 above lug A2');
    expect(toggle).toContain(
      'down, below 1 Ω between A0 and A1, B0 and B1; up, below 1 Ω between A0 and A2, B0 and B2.',
    );
    expect(toggle).not.toContain('centre');
    const button = (await linesFor(selector({ kind: 'kill-button' }, ['sw.1 > volume.3']))).at(-1);
    expect(button).toBe('Check with the meter before you solder to Way: pressed, below 1 Ω between 1 and 2.');
  });

  it('says from which side the drawing is seen', async () => {
    const [front] = await linesFor({ ...volume('right', ['3', '1']), view: 'component-side' });
    const [back] = await linesFor(volume('right', ['3', '1']));
    expect(front).toContain('from the side of the shaft or lever');
    expect(back).toContain('with its lugs towards you');
  });

  it('is left out where there is neither a pot nor a switch', async () => {
    const plain = makeKit({
      parts: { pickup: { kind: 'single-coil' }, output: { kind: 'jack' } },
      joints: ['pickup.hot > output.tip', 'pickup.ground > output.sleeve'],
    });
    expect(orientationSection(analyse(plain), say)).toEqual([]);
  });
});

describe('the parts list', () => {
  const rowsOf = (prepared: Prepared) => {
    const { kit } = prepared.circuit;
    const cuts = new Cuts(prepared, stepsOf(prepared.circuit), say, 'en');
    return cellsOf(partsTable(kit, say, () => ({ svg: '', width: 1, height: 1, alt: '' }), cuts));
  };
  const recognise = (rows: ReturnType<typeof rowsOf>, label: string) =>
    rows.find((row) => row[3]?.startsWith(`${label}:`))?.at(-1);

  it('counts no case as a lug, and says what tip and sleeve are', async () => {
    const rows = rowsOf(await placed(volume('right', ['3', '1'])));
    expect(recognise(rows, 'Volume')).toBe('3 lugs: 1, 2, 3, and the metal case');
    expect(recognise(rows, 'Output')).toMatch(/^2 lugs: tip, sleeve\. Tip: .* Sleeve: .*threaded body$/);
    expect(recognise(rows, 'Output')).not.toContain('Ring');
    const stereo = rowsOf(await circuit('bass-ss-2v2t-stereo'));
    expect(stereo.some((row) => /Tip: .* Ring: .* Sleeve: /.test(row.at(-1) ?? ''))).toBe(true);
  });

  it('has a ground point as a place on the instrument, with nothing to tick off', async () => {
    const rows = rowsOf(await preparedOf('samples/kestrel-hss.yaml'));
    const [point, ...more] = rows.filter((row) => row[3]?.includes('ground point'));
    expect(more).toEqual([]);
    expect([point?.[0], point?.[3], point?.[4]]).toEqual([
      '',
      'String ground: ground point',
      'not in the kit',
    ]);
    expect(JSON.stringify(rowsOf(await placed(volume('right', ['3', '1']))))).not.toContain('not in the kit');
  });
});

describe('what is measured, held and cut before the first joint', () => {
  it('a resistor is measured, within its tolerance', async () => {
    const rows = cellsOf(
      partsTable(
        (await preparedOf('samples/kestrel-hss.yaml')).circuit.kit,
        say,
        () => ({ svg: '', width: 1, height: 1, alt: '' }),
        new Cuts(await preparedOf('samples/kestrel-hss.yaml'), [], say, 'en'),
      ),
    );
    // 470 kΩ ± 5 %: 446.5 to 493.5 kΩ, rounded outwards.
    expect(rows.find((row) => row[3]?.startsWith('Neck pad'))?.at(-1)).toBe(
      'Bands: yellow, violet, yellow, gold. Before soldering it, measure it: from 446 kΩ to 494 kΩ',
    );
  });

  it('wire and sleeving have a tenth to spare, and sleeving is cut too', async () => {
    const prepared = await preparedOf('samples/kestrel-hss.yaml');
    const cuts = new Cuts(prepared, stepsOf(prepared.circuit), say, 'en');
    // As described: 250 + 140 + 60 + 60 = 510 mm of black wire, and 561 mm with the spare tenth, rounded up to 5 mm.
    expect(cuts.stock().find(({ name }) => name === 'Wire, black')?.amount).toMatch(/^565\u00a0mm /);
    expect(JSON.stringify(cuts.list())).toContain('"Sleeving"');
    expect(JSON.stringify(cuts.spare())).toContain('10\u00a0%');
  });

  it('pots and switches are held, above all where a component joins two of them', async () => {
    const kestrel = await solved('samples/kestrel-hss.yaml');
    expect(holdWords(kestrel.circuit, say).join()).toContain('join two parts: Neck pad, Middle pad.');
    expect(holdWords(analyse(volume('right', ['3', '1'])).circuit, say)).toEqual([]);
  });

  it('no line of a leaflet ends between a number and its unit', () => {
    const text = (words: string) => unbroken([{ is: 'paragraph', text: words }]);
    expect(text('below 1 Ω, 242 kΩ, 5.0 dB, 30 %')).toEqual(
      text('below 1\u00a0Ω, 242\u00a0kΩ, 5.0\u00a0dB, 30\u00a0%'),
    );
    expect(text('2 Volumes, 1 of 2')).toEqual([{ is: 'paragraph', text: '2 Volumes, 1 of 2' }]);
  });

  it('the fault of two pickups out of phase names all that sound together', async () => {
    const rows = cellsOf(faultsTable(await preparedOf('samples/kestrel-hss.yaml'), say));
    const [thin = ''] = rows.map(([seen]) => seen).filter((seen) => seen?.startsWith('Thin'));
    expect(thin).toContain('Middle + Bridge');
    expect(thin).toContain('Neck + Middle');
  });
});

describe('what only some kits have', () => {
  it('a case is made ready where a joint is soldered to one', async () => {
    const bare = analyse(volume('right', ['3', '1']));
    const cased = analyse(volume('right', ['3', '1'], { joints: ['volume.case > output.sleeve'] }));
    expect(caseWords(bare.circuit, say)).toEqual([]);
    expect(caseWords(cased.circuit, say)).toEqual([expect.stringContaining('metal case (Volume)')]);
    expect(tools(cased.circuit, say).length).toBe(tools(bare.circuit, say).length + 1);
  });

  it('fitting tells of a ground point, and of a plug, where there is one', async () => {
    const told = (prepared: Analysed) => itemsOf(fittingSection(prepared, say)).join(' ');
    const whole = told(await solved('samples/kestrel-hss.yaml'));
    expect(whole).toContain('String ground: take the free end of this wire');
    expect(whole).toContain('licensed electrician');
    const plain = told(analyse(volume('right', ['3', '1'])));
    expect(plain).not.toContain('take the free end');
    expect(plain).toContain('screwdriver');
    // What no meter proves is heard: only where there is a tone control.
    expect(whole).toContain(
      'in which it acts (Tone 1, Tone 2): the treble must disappear. This proves the soldering of Tone cap.',
    );
    expect(plain).not.toContain('treble');
  });

  it('all of it stands in the leaflet', async () => {
    // One language: what is made for each takes seconds.
    for (const language of ['fr'] as const) {
      const prepared = await preparedOf('samples/heron-ss.yaml', language);
      const spoken = sayIn(language);
      const paper = { width: 210, height: 297, margin: 16 };
      const { blocks } = leafletOf(prepared, { paper });
      const text = squeezed(JSON.stringify(blocks));
      for (const words of [
        ...itemsOf(orientationSection(prepared, spoken)),
        ...itemsOf(fittingSection(prepared, spoken)),
        ...caseWords(prepared.circuit, spoken),
        spoken('leaflet.ground-point'),
      ])
        expect(text).toContain(squeezed(JSON.stringify(words).slice(1, -1)));
    }
  });
});

describe('legs that do not reach', () => {
  /** Two pots so many grid units apart in a row, a resistor between the same lug of each. */
  const apart = async (units: number, millimetres: number | undefined, hand: Kit['hand'] = 'right') => {
    const arrangement: Arrangement = arrangementSchema.parse({
      arrangement: 'apart',
      about: 'Two pots in a row',
      ...(millimetres === undefined ? {} : { millimetres }),
      seats: [{ seat: 'pot', at: [0, 0], step: [units, 0], turn: 0 }],
    });
    const kit = volume(hand, ['3', '1'], {
      parts: { second: { kind: 'pot', value: '250k' }, pad: { kind: 'resistor', value: '470k' } },
      joints: ['second.1 > output.sleeve', 'pad.1 > volume.1', 'pad.2 > second.1'],
    });
    const joints = kit.joints.map((joint) =>
      joint.from.part === 'pad' ? { ...joint, kind: 'leg' as const } : joint,
    );
    const effort = { ...DEFAULT_EFFORT, steps: 0 };
    const prepared = await prepare({ ...kit, joints }, arrangement, { effort });
    return longSpans(prepared.circuit, prepared.placement, prepared.hand, arrangement);
  };
  // By hand: the distance of the seats is that of two equal lugs; a component reaches 50 mm (see the source).
  it.each([
    [24, 2, []],
    [26, 2, [{ component: 'pad', metres: 0.052 }]],
    [40, 2, [{ component: 'pad', metres: 0.08 }]],
    [40, 1.2, []],
    [40, undefined, []],
  ])('%s units of %s mm apart', async (units, millimetres, expected) => {
    for (const hand of ['right', 'left'] as const) {
      const found = await apart(units, millimetres, hand);
      expect(
        found.map(({ component, metres }) => ({ component, metres: Number(metres.toFixed(6)) })),
      ).toEqual(expected);
    }
  });

  it('are named with how far they have to reach', async () => {
    const prepared = await circuit('hss-lever-5-4p-1v1t-auto-split');
    const words = JSON.stringify(new Cuts(prepared, [], say, 'en').list());
    const { label = '' } = prepared.circuit.kit.parts.find(({ name }) => name === 'pad') ?? {};
    expect(words).toMatch(new RegExp(`${label} \\(about \\d+[05]\\u00a0mm\\)`));
    expect(
      JSON.stringify(new Cuts(await preparedOf('samples/wren-hs.yaml'), [], say, 'en').list()),
    ).not.toContain('Extend');
  });
});

it('every circuit that ships can be told of', async () => {
  const names = readdirSync('samples/circuits').filter((name) => name.endsWith('.yaml'));
  for (const [i, name] of names.entries()) {
    const language = languages[i % languages.length] ?? 'en';
    const prepared = await solved(`samples/circuits/${name}`, language);
    const spoken = sayIn(language);
    const words = JSON.stringify([
      orientationSection(prepared, spoken),
      fittingSection(prepared, spoken),
      positionsTable(prepared, spoken),
    ]);
    expect(words).not.toMatch(/undefined|NaN|\{\w+\}| {2}|\bbetween {1,2}and\b/);
  }
});
