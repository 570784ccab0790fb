/** Cards, steps and the words for those who cannot see the picture: each says what the picture says, and what is so. */
import { describe, expect, it } from 'vitest';
import { drawn, sample, samples } from './draw.ts';
import { type Drawing, jointErrors } from './reader.ts';

/** Ohms that a figure stands for: `242 kΩ`. */
function ohmsOf(text: string): number {
  const [, figure, prefix = ''] = /^([\d.]+) ([kM]?)Ω$/.exec(text) ?? [];
  return Number(figure) * { '': 1, k: 1e3, M: 1e6 }[prefix as '' | 'k' | 'M'];
}

/** The handbook, “What is computed”: 250 kΩ ∥ 250 kΩ for a single coil, 500 kΩ ∥ 500 kΩ for a humbucker; the reference loads. */
const REFERENCE = { 'single-coil': 125e3, humbucker: 250e3 } as const;

describe('a card’s bars', () => {
  it.each(samples)(
    '%s: are as long as the signal load is beside the reference, which the tick stands for',
    async (name) => {
      const kit = sample(name);
      const { cards, key } = await drawn(kit, { lines: 'signal' });
      const { cards: others, parts } = await drawn(kit);
      const said = (all: typeof cards) =>
        all.map(({ rows: own }) => own.map(({ label, signal, tint }) => [label, signal, tint]));
      expect(said(others)).toEqual(said(cards));
      const rows = cards.flatMap((card) => card.rows);
      expect(rows.length).toBeGreaterThan(2);
      for (const row of rows) {
        const part = kit.parts.find(({ label }) => label === row.label);
        if (part?.kind !== 'single-coil' && part?.kind !== 'humbucker') throw new Error(row.label);
        expect(row.tick).toBeCloseTo(0.5, 6);
        const share = Math.min(1, ohmsOf(row.signal) / REFERENCE[part.kind] / 2);
        expect(Math.abs(row.bar / share - 1), `${row.label} ${row.signal}`).toBeLessThan(0.01);
        // The bar has the colour of that pickup’s hot lead where lines tell the signal, and of its coils everywhere.
        expect(key.find(({ words }) => words === `${row.label}, hot`)?.strokes[1]?.stroke).toBe(row.tint);
        const drawnPart = parts.find((one) => one.name === part.name);
        expect(drawnPart?.rects.some(({ fill }) => fill === row.tint)).toBe(true);
      }
    },
  );
});

/** HSS, five-way, padded; worked by hand in the handbook, “What is computed”. */
it('the figures of the padded HSS kit are the handbook’s, to a per cent', async () => {
  const { cards } = await drawn(sample('kestrel-hss'));
  const wanted: readonly (readonly [string, number, number])[][] = [
    [['Bridge', 500e3, 250e3]],
    [
      ['Middle', 242.3e3, 163.2e3],
      ['Bridge', 242.3e3, 163.2e3],
    ],
    [['Middle', 242.3e3, 163.2e3]],
    [
      ['Neck', 159.9e3, 81.6e3],
      ['Middle', 159.9e3, 81.6e3],
    ],
    [['Neck', 242.3e3, 123e3]],
  ];
  expect(cards.map(({ badge }) => badge)).toEqual(['1', '2', '3', '4', '5']);
  cards.forEach(({ rows }, i) => {
    expect(rows.map(({ label }) => label)).toEqual(wanted[i]?.map(([label]) => label));
    rows.forEach(({ dc, signal }, k) => {
      const [, direct = 0, heard = 0] = wanted[i]?.[k] ?? [];
      expect(Math.abs(ohmsOf(dc) / direct - 1)).toBeLessThan(0.01);
      expect(Math.abs(ohmsOf(signal) / heard - 1)).toBeLessThan(0.01);
    });
  });
});

const joints = ({ wires }: Drawing): readonly string[] => wires.map(({ ends }) => ends.join(' > ')).sort();

describe('steps', () => {
  it.each(samples)(
    '%s: each shows the joints made by then, marks its own, and the last shows all',
    async (name) => {
      const kit = sample(name);
      const whole = joints(await drawn(kit));
      let before: readonly string[] = [];
      for (let step = 1; before.length < whole.length; step++) {
        const drawing = await drawn(kit, { step });
        const now = joints(drawing);
        const own = now.filter((joint) => !before.includes(joint));
        expect(before.filter((joint) => !now.includes(joint))).toEqual([]);
        expect(own.length, `step ${step}`).toBeGreaterThan(0);
        // A broad line lies under each new joint, and under no other.
        const marks = drawing.marked.map(({ pieces }) => pieces.flat()).map((way) => [way[0], way.at(-1)]);
        const marked = drawing.wires.filter(({ pieces }) => {
          const way = pieces.flat();
          return marks.some(
            ([a, b]) =>
              a?.x === way[0]?.x && a?.y === way[0]?.y && b?.x === way.at(-1)?.x && b?.y === way.at(-1)?.y,
          );
        });
        expect(marked.map(({ ends }) => ends.join(' > ')).sort()).toEqual([...own].sort());
        expect(drawing.marked).toHaveLength(own.length);
        expect(drawing.head.join(' ')).toContain(`Step ${step} of `);
        // The key explains the colours of wires that are there, and no others.
        const coloured = kit.joints.flatMap(({ from, to, colour }) => {
          const ends = [from, to].map(({ part, lug }) => `${part}.${lug}`);
          const here = now.some(
            (joint) => joint === ends.join(' > ') || joint === [...ends].reverse().join(' > '),
          );
          return colour !== undefined && here ? [colour] : [];
        });
        const explained = drawing.key.flatMap(({ code }) => code ?? []);
        for (const colour of coloured) expect(explained, `step ${step}`).toContain(colour);
        const ever = kit.joints.flatMap(({ colour }) => colour ?? []);
        expect(explained.filter((code) => !ever.includes(code))).toEqual([]);
        before = now;
      }
      expect(before).toEqual(whole);
      expect(jointErrors(await drawn(kit), kit)).toEqual([]);
    },
  );
});

describe('the words for those who cannot see the picture', () => {
  it.each(samples)('%s: every card and every joint, and no figure exchanged', async (name) => {
    const kit = sample(name);
    const { description, title, cards } = await drawn(kit);
    expect(title).toBe(kit.title);
    for (const { badge, rows } of cards) {
      const [, words = ''] =
        new RegExp(`Position ${badge}: (.*?)\\. (?=Position|Joints)`).exec(description) ?? [];
      for (const { label, dc, signal } of rows)
        expect(words).toContain(`${label}: DC load ${dc}, signal load ${signal}`);
      expect(words.match(/: DC load /g)).toHaveLength(rows.length);
    }
    const [, list = ''] = /Joints: (.*)\.$/.exec(description) ?? [];
    const label = new Map(kit.parts.map((part) => [part.name, part.label]));
    // A number alone would be heard as part of the name: “Volume 1”.
    const spoken = (lug: string): string => (/^\d+$/.test(lug) ? `lug ${lug}` : lug);
    expect(list.split('; ').sort()).toEqual(
      kit.joints
        .map(
          ({ kind, from, to }) =>
            `${kind} from ${label.get(from.part)} ${spoken(from.lug)} to ${label.get(to.part)} ${spoken(to.lug)}`,
        )
        .sort(),
    );
  });
});

it.each(samples)('%s: names of parts are bold, values are not', async (name) => {
  const kit = sample(name);
  const { svg } = await drawn(kit);
  const set = (words: string): readonly boolean[] =>
    [...svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)]
      .filter(([, , text]) => text === words)
      .map(([, attributes = '']) => attributes.includes('font-weight="700"'));
  for (const { label, kind } of kit.parts) if (kind === 'pot') expect(set(label), label).toContain(true);
  expect(set('five-way').concat(set('three-way'))).toEqual([false]);
  expect(set('mono jack')).toEqual([false]);
});

it('the key shows the unused lug as it is drawn: hollow, with a broken edge', async () => {
  const { key, svg } = await drawn(sample('heron-ss'));
  expect(key.map(({ words }) => words)).toContain('unused lug');
  const [, group = ''] = /<g id="heron-ss-key"[^>]*>(.*?)<\/g>/s.exec(svg) ?? [];
  expect(group.match(/<rect[^>]*stroke-dasharray="3 2"[^>]*>/g)).toHaveLength(1);
});
