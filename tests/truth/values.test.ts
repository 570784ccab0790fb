/** What is written on parts and cards, and pictures of shapes that no sample has. Source: the handbook, “Parts” and “Shared positions”. */
import { describe, expect, it } from 'vitest';
import { themes } from '../../src/draw/theme.ts';
import { findPage } from '../../src/files/layouts.ts';
import { formatFinding, inspect } from '../../src/inspect/index.ts';
import { described, drawn, sample } from './draw.ts';
import { jointErrors } from './reader.ts';

const views = ['solder-side', 'component-side'] as const;

const KIT = {
  kit: 'values',
  title: 'HS, three-way lever, volume and tone',
  parts: {
    neck: { kind: 'humbucker' },
    bridge: { kind: 'single-coil', resistance: '5.7k' },
    selector: { kind: 'lever-3' },
    volume: { kind: 'pot', value: '500k' },
    tone: { kind: 'pot', value: '1M', taper: 'linear' },
    cap: { kind: 'capacitor', value: '22n' },
    pad: { kind: 'resistor', value: '4k7' },
    output: { kind: 'jack' },
    strings: { kind: 'ground-point' },
  },
  joints: [
    { wire: 'bridge.hot > selector.A1' },
    { wire: 'selector.A1 > selector.A2' },
    { wire: 'neck.hot > selector.B3' },
    { wire: 'selector.B3 > selector.B2' },
    { wire: 'selector.A0 > selector.B0' },
    { wire: 'selector.A0 > volume.3' },
    { wire: 'volume.2 > output.tip' },
    { bend: 'volume.1 > volume.case' },
    { leg: 'pad.1 > selector.A1' },
    { leg: 'pad.2 > volume.case' },
    { leg: 'cap.1 > volume.3' },
    { leg: 'cap.2 > tone.1' },
    { bend: 'tone.2 > tone.case' },
    { wire: 'tone.case > volume.case' },
    { wire: 'neck.ground > volume.case' },
    { wire: 'bridge.ground > volume.case' },
    { wire: 'output.sleeve > volume.case' },
    { wire: 'strings.1 > volume.case' },
  ],
} as const;

describe('every part says its value', () => {
  const values: Readonly<Record<string, string>> = {
    neck: 'humbucker, 8.2 kΩ assumed',
    bridge: 'single coil, 5.7 kΩ',
    selector: 'three-way',
    volume: '500 kΩ log',
    tone: '1 MΩ lin',
    cap: '22 nF',
    pad: '4.7 kΩ',
    output: 'mono jack',
  };
  it.each(Object.entries(values))('%s: %s', async (name, value) => {
    const { parts } = await drawn(described(KIT));
    const part = parts.find((one) => one.name === name);
    const words = part?.texts.map((text) => text.words).join(' ');
    expect(words).toContain(value);
  });
});

describe.each(views)('a pot’s track, from the %s', (view) => {
  it('goes over the top, its opening at the lugs', async () => {
    const { parts } = await drawn(described(KIT), { view });
    for (const part of parts.filter(({ pot }) => pot)) {
      const d = part.paths.find(({ curved }) => curved)?.d ?? '';
      const [, x0 = '', r = '', large = '', sweep = '', x1 = ''] =
        /^M(\S+) \S+?A(\S+) \S+ 0 (\d) (\d) (\S+)/.exec(d) ?? [];
      expect(large).toBe('1');
      // Clockwise on the sheet from left to right goes over the top, and so does the other way round.
      expect(sweep === '1').toBe(Number(x0) < Number(x1));
      expect(Number(r)).toBeLessThan(part.pot?.r ?? 0);
    }
  });
});

it.each(views)(
  'a middle lug bent back onto the case, from the %s: joints are those of the kit',
  async (view) => {
    const kit = described(KIT);
    const drawing = await drawn(kit, { view });
    expect(jointErrors(drawing, kit)).toEqual([]);
    expect(inspect(drawing.svg, kit).map(formatFinding)).toEqual([]);
  },
);

it('a card of two pickups says that they are in parallel, one of a single pickup does not', async () => {
  const { cards } = await drawn(described(KIT));
  const said = cards.map(({ texts }) => texts.some(({ words }) => words.includes('in parallel')));
  expect(said).toEqual([false, true, false]);
});

it.each([
  'A very very long name',
  'WWWWWWWWWWWWWWWWWWWWWWWW',
  'Über-Schalter für alles',
  'iiiii mmmmm WWWWW jjjjj',
])('a switch called %s keeps its name on its plate', async (label) => {
  const kit = described({ ...KIT, parts: { ...KIT.parts, selector: { kind: 'lever-3', label } } });
  const named = { ...kit, id: `values-${label.length}-${label.charCodeAt(0)}` };
  const { svg } = await drawn(named);
  expect(inspect(svg, named).map(formatFinding)).toEqual([]);
});

it.each(['a4', 'a5-landscape'])('a drawing of a step on %s is what its kit gives', async (name) => {
  const page = findPage(name);
  if (!page) throw new Error(`no page ${name}`);
  const kit = sample('wren-hs');
  for (const step of [1, 3]) {
    const { svg } = await drawn(kit, { step, page });
    expect(
      inspect(svg, kit)
        .filter(({ rule }) => rule !== 'small-type')
        .map(formatFinding),
    ).toEqual([]);
  }
});

it('a part’s name is in the ink of the drawing, its value quieter, and what the pad makes of the load in the accent', async () => {
  for (const theme of Object.keys(themes) as (keyof typeof themes)[]) {
    const { ink, quiet, accent } = themes[theme];
    const { parts } = await drawn(sample('kestrel-hss'), { theme });
    const inks = (name: string) => {
      const part = parts.find((one) => one.name === name);
      const tags = part?.tags.map((tag) => tag.name) ?? [];
      return part?.texts.filter(({ words }) => !tags.includes(words)).map(({ words, fill }) => [words, fill]);
    };
    expect(inks('neck')).toEqual([
      ['Neck', ink],
      ['single coil, 5.7 kΩ', quiet],
    ]);
    expect(inks('pad-neck')?.filter(([words]) => words !== '470')).toEqual([
      ['Neck pad', ink],
      ['470 kΩ', quiet],
      [expect.stringMatching(/^Neck alone: DC load 242/), accent],
    ]);
  }
});
