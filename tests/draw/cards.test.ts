/** What stands on a load card and where, and the small switch on it; each part's face in the inks of the theme. */
import { describe, expect, it } from 'vitest';
import { cardWidth } from '../../src/annotate/card-size.ts';
import type { Card, CardRow } from '../../src/annotate/cards.ts';
import { cardHeight, drawCard } from '../../src/draw/cards.ts';
import { paintShape } from '../../src/draw/paint.ts';
import { drawPart, type Look, tagLook } from '../../src/draw/part.ts';
import { themes } from '../../src/draw/theme.ts';
import { contactsOf, type Kind, kinds, outlineOf, type Part } from '../../src/parts/index.ts';
import type { Shape } from '../../src/parts/shape.ts';
import type { PlacedPart } from '../../src/place/placement.ts';
import { makeKit } from '../analyse/kits.ts';
import type { Text } from '../truth/reader.ts';
import { sketch } from './sketch.ts';

const theme = themes.light;
const FIELDS: Partial<Record<Kind, object>> = {
  pot: { value: '250k' },
  'push-pull': { value: '500k' },
  'mini-toggle': { action: 'on-on' },
  rotary: { throws: 5 },
  'dual-pot': { value: '250k' },
  'stacked-pot': { a: { value: '500k' }, b: { value: '250k' } },
  blend: { value: '250k' },
  resistor: { value: '470k' },
  capacitor: { value: '22n' },
  switch: { lugs: { left: ['A1', 'A0', 'loop'], right: ['on'] }, positions: [[['A0', 'A1']]] },
};
const partOf = (kind: Kind, written: object = {}): Part => {
  const [part] = makeKit({
    parts: { x: { kind, label: 'Name', ...FIELDS[kind], ...written } },
    joints: [],
  }).parts;
  if (!part) throw new Error('no part');
  return part;
};

const row = (more: Partial<CardRow> = {}): CardRow => ({
  pickup: 'neck',
  label: 'Neck',
  dcLoad: '250 kΩ',
  signalLoad: '125 kΩ',
  ratio: 1,
  verdict: 'as designed',
  ...more,
});
const card = (more: Partial<Card> = {}): Card => ({
  language: 'en',
  states: [1],
  badge: '2',
  combinations: [['2']],
  title: 'Neck and bridge',
  rows: [row()],
  switches: [],
  meter: '3.84 kΩ',
  ...more,
});
const BOX = { x: 100, y: 50, width: 380, height: 300 };
const TINTS = new Map([
  ['neck', 'pickup-1'],
  ['bridge', 'pickup-3'],
]);
const drawn = (one: Card, shown?: boolean) => {
  const height = cardHeight(one);
  return sketch((pen) => drawCard(pen, one, { ...BOX, height }, TINTS, theme, shown));
};
const textOf = ({ texts }: { readonly texts: readonly Text[] }, words: string): Text => {
  const [found, ...more] = texts.filter((text) => text.words === words);
  if (!found || more.length > 0) throw new Error(`${words}: ${more.length + (found ? 1 : 0)} times`);
  return found;
};
const right = BOX.x + BOX.width;

describe('a card', () => {
  it('has its badge, its title, what the pickups do together, and the reading at its foot', () => {
    const drawing = drawn(card({ joined: 'in parallel' }));
    const [ground, badge] = drawing.rects;
    expect(ground).toMatchObject({ x: BOX.x, y: BOX.y, w: BOX.width, fill: theme.plate });
    expect(drawing.svg).toContain('class="sl-card"');
    const number = textOf(drawing, '2');
    expect(number.fill).toBe(theme.paper);
    expect(badge).toMatchObject({ fill: theme.ink, h: 26 });
    expect(number.middle).toBeCloseTo((badge?.x ?? 0) + (badge?.w ?? 0) / 2, 1);
    const [title, joined] = [textOf(drawing, 'Neck and bridge'), textOf(drawing, 'in parallel')];
    expect(title.x).toBe(joined.x);
    expect(title.x).toBeGreaterThan((badge?.x ?? 0) + (badge?.w ?? 0));
    expect(joined.y).toBeGreaterThan(title.y + 12);
    // With nothing below it, the title is level with the badge.
    expect(textOf(drawn(card()), 'Neck and bridge').y).toBeCloseTo(number.y, 6);
    expect(drawn(card()).texts.length).toBe(drawing.texts.length - 1);
    const [says, meter] = [drawing.texts.at(-2), textOf(drawing, '3.84 kΩ')];
    expect(says?.words).toMatch(/meter/i);
    expect(says?.x).toBe(BOX.x + 14);
    expect(meter.middle + meter.wide / 2).toBeCloseTo(right - 14, 1);
    // Below a line across the card.
    const foot = drawing.paths.find(
      ({ pieces }) => pieces[0]?.[0]?.x === BOX.x + 14 && pieces[0][1]?.x === right - 14,
    );
    expect(foot?.pieces[0]?.[0]?.y).toBe(BOX.y + cardHeight(card()) - 30);
    expect(meter.y).toBeGreaterThan(foot?.pieces[0]?.[0]?.y ?? 9999);
  });

  it('has each switch’s name below it, clear of its neighbour’s and of the rows', () => {
    const named = (label: string) => ({ part: partOf('lever-3', { label }), closed: [['A0', 'A1']] });
    const labels = ['Selector', 'Tone', 'Neck series or parallel'];
    const drawing = drawn(card({ switches: labels.map(named) }));
    const first = ['Selector', 'Tone', 'Neck'].map((word) =>
      drawing.texts.filter(({ words, size }) => words.startsWith(word) && size === 12),
    );
    expect(first.map(({ length }) => length)).toEqual([1, 1, 1]);
    const [selector, tone, neck] = first.flat();
    if (!selector || !tone || !neck) throw new Error('a name is missing');
    for (const [one, next] of [
      [selector, tone],
      [tone, neck],
    ] as const)
      expect(next.middle - next.wide / 2 - (one.middle + one.wide / 2)).toBeGreaterThan(8);
    const dots = drawing.circles.filter(({ r }) => r <= 2.8);
    for (const name of [selector, tone, neck]) {
      const own = dots.filter(({ x }) => Math.abs(x - name.middle) < 20);
      expect(own).toHaveLength(6);
      for (const { y, r } of own) expect(name.y - 6).toBeGreaterThan(y + r);
    }
    // The longest in lines, and below them the rows.
    const lines = drawing.texts.filter(
      ({ words }) => /^(Neck|series|or|parallel)/.test(words) && words !== 'Neck and bridge',
    );
    expect(lines.filter(({ size }) => size === 12).length).toBeGreaterThan(1);
    const lowest = Math.max(...lines.filter(({ size }) => size === 12).map(({ y }) => y));
    expect(textOf(drawing, '250 kΩ').y - lowest).toBeGreaterThan(11);
  });

  it('of a kit without a switch has no badge, and its title where the rows begin', () => {
    const drawing = drawn(card({ badge: '' }));
    expect(drawing.rects.filter(({ h }) => h === 26)).toEqual([]);
    expect(drawing.texts.filter(({ words }) => words.trim() === '')).toEqual([]);
    expect(textOf(drawing, 'Neck and bridge').x).toBe(textOf(drawing, 'Neck').x);
  });

  it('of the state that is drawn has an edge in ink, any other a quiet one', () => {
    expect(drawn(card(), true).rects[0]).toMatchObject({ stroke: theme.ink, width: 2.5 });
    for (const shown of [false, undefined])
      expect(drawn(card(), shown).rects[0]).toMatchObject({ stroke: theme.inside, width: 1 });
  });

  it('has a row a pickup, one below the other, each figure over the word that says what it is', () => {
    const rows = [
      row(),
      row({
        pickup: 'bridge',
        label: 'Bridge',
        dcLoad: '1 MΩ',
        signalLoad: '2 MΩ',
        verdict: 'bright',
        level: '5.0 dB quieter',
      }),
    ];
    const drawing = drawn(card({ rows }));
    for (const { label, dcLoad, signalLoad, verdict } of rows) {
      const [name, dc, signal, says] = [label, dcLoad, signalLoad, verdict].map((words) =>
        textOf(drawing, words),
      );
      if (!name || !dc || !signal || !says) throw new Error('words are missing');
      expect([dc.y, signal.y]).toEqual([name.y, name.y]);
      for (const [figure, words] of [
        [dc, 'DC load'],
        [signal, 'signal load'],
      ] as const) {
        const below = drawing.texts.filter(
          (text) => text.words === words && text.y > figure.y && text.y < figure.y + 20,
        );
        expect(below).toHaveLength(1);
        expect(below[0]?.x).toBe(figure.x);
      }
      expect(signal.middle + signal.wide / 2).toBeCloseTo(right - 14, 1);
      expect(says.x).toBe(name.x);
      expect(says.y).toBeGreaterThan(name.y);
    }
    expect(textOf(drawing, 'Bridge').y - textOf(drawing, 'Neck').y).toBeCloseTo(62, 6);
    // How much quieter it is stands behind its name, where it is.
    const [level, name] = [textOf(drawing, '5.0 dB quieter'), textOf(drawing, 'Bridge')];
    expect(level.y).toBeCloseTo(name.y, 0);
    expect(level.x).toBeGreaterThan(name.x + name.wide);
  });

  it.each([
    [1, 0.5],
    [0.5, 0.25],
    [2, 1],
    [7, 1],
    [0, 7 / 352],
    [0.001, 7 / 352],
  ])(
    'a load of %d times the reference has a bar of %d of its length, the tick in the middle',
    (ratio, share) => {
      const { rects, paths } = drawn(card({ rows: [row({ ratio, pickup: 'bridge' })] }));
      const [whole, bar] = rects.filter(({ h }) => h === 7);
      expect([whole?.fill, bar?.fill]).toEqual([theme.inside, theme.tints['pickup-3']]);
      expect(whole?.w).toBe(352);
      expect((bar?.w ?? 0) / 352).toBeCloseTo(share, 4);
      expect([bar?.x, bar?.y]).toEqual([whole?.x, whole?.y]);
      const tick = paths.find(({ pieces }) => pieces[0]?.[0]?.x === pieces[0]?.[1]?.x);
      expect(tick?.pieces[0]?.[0]?.x).toBe((whole?.x ?? 0) + 176);
      expect(tick?.pieces[0]?.[0]?.y).toBeLessThan(whole?.y ?? 0);
      expect(tick?.pieces[0]?.[1]?.y).toBeGreaterThan((whole?.y ?? 0) + 7);
    },
  );
});

describe('the small switch on a card', () => {
  it.each(['lever-5', 'lever-3', 'push-pull', 'switch'] as const)(
    '%s: a dot a throw, those closed filled and joined to the rail',
    (kind) => {
      const part = partOf(kind);
      for (const { joins } of contactsOf(part)) {
        const { circles, paths } = drawn(card({ rows: [], switches: [{ part, closed: joins }] }));
        const lugs =
          kinds[kind].lugs.length > 0 ? kinds[kind].lugs : [{ name: 'A1', role: 'throw', pole: 'A' }];
        const throws = lugs.filter((lug) => lug.role === 'throw' && 'pole' in lug);
        expect(circles).toHaveLength(throws.length);
        const closed = throws.map(({ name }) =>
          joins.some((group) => (group as readonly string[]).includes(name)),
        );
        expect(circles.map(({ fill }) => fill === theme.ink)).toEqual(closed);
        for (const { fill, stroke } of circles)
          expect([[theme.ink, theme.paper].includes(fill), stroke]).toEqual([true, theme.outline]);
        const rails = paths.filter(
          ({ pieces, width }) => width === 2.5 && pieces[0]?.[0]?.x === pieces[0]?.[1]?.x,
        );
        expect(rails).toHaveLength(new Set(throws.map((lug) => 'pole' in lug && lug.pole)).size);
        const bridges = paths.filter(({ width }) => width === 4);
        expect(bridges).toHaveLength(closed.filter(Boolean).length);
        circles.forEach((dot, i) => {
          const own = bridges.filter(
            ({ pieces }) => pieces[0]?.[0]?.x === dot.x && pieces[0][0]?.y === dot.y,
          );
          expect(own).toHaveLength(closed[i] ? 1 : 0);
          const to = own[0]?.pieces[0]?.[1];
          if (to) expect(rails.some(({ pieces }) => pieces[0]?.[0]?.x === to.x && to.y === dot.y)).toBe(true);
          // Dots from the top of the rail to its bottom.
          const [top, bottom] = [rails[0]?.pieces[0]?.[0]?.y ?? 0, rails[0]?.pieces[0]?.[1]?.y ?? 0];
          expect(dot.y).toBeGreaterThanOrEqual(top);
          expect(dot.y).toBeLessThanOrEqual(bottom);
        });
        for (const pole of new Set(throws.map((lug) => ('pole' in lug ? lug.pole : '')))) {
          const own = circles.filter((_, i) => (throws[i] as { pole?: string }).pole === pole);
          expect(new Set(own.map(({ x }) => x)).size).toBe(1);
          expect(new Set(own.map(({ y }) => y)).size).toBe(own.length);
        }
      }
    },
  );

  it('several stand side by side, the last at the right edge', () => {
    const part = partOf('lever-3');
    const rails = (count: number): readonly number[] =>
      drawn(card({ rows: [], switches: Array.from({ length: count }, () => ({ part, closed: [] })) }))
        .paths.filter(({ width }) => width === 2.5)
        .map(({ pieces }) => pieces[0]?.[0]?.x ?? 0);
    const [one, two] = [rails(1), rails(2)];
    expect(one).toHaveLength(2);
    expect(two.slice(2)).toEqual(one);
    expect((two[2] ?? 0) - (two[0] ?? 0)).toBe(46);
    for (const x of [...one, ...two]) expect(x < right && x > BOX.x).toBe(true);
  });
});

describe('the inks of a face', () => {
  const at = { x: 0, y: 0 };
  const rect = { x: 0, y: 0, width: 8, height: 8 };
  const painted = (shape: Shape, inks: (typeof themes)[keyof typeof themes] = theme) =>
    sketch((pen) => paintShape(pen, shape, inks));

  it.each([
    ['plate', theme.plate, 'sl-plate'],
    ['coil', theme.inside, undefined],
    // Only the lines of the turns: between them the coil is seen.
    ['turn', 'none', undefined],
    ['bush', theme.inside, undefined],
    ['resistor-body', theme.resistor, 'sl-body'],
    ['capacitor-body', theme.capacitor, 'sl-body'],
  ] as const)('%s', (role, fill, name) => {
    const { rects, svg } = painted({ shape: 'rect', role, rect, radius: 3 });
    expect(rects).toMatchObject([{ fill, stroke: theme.outline }]);
    expect(svg).toContain('rx="3"');
    expect(/class="([\w-]+)"/.exec(svg)?.[1]).toBe(name);
  });

  it('a band in its colour with an edge, hollow in a theme without colours', () => {
    const band = { shape: 'rect', role: 'band', rect, code: 'OG' } as const;
    expect(painted(band).rects).toMatchObject([{ fill: theme.bands.OG, stroke: theme.ink }]);
    expect(painted(band, themes.print).rects).toMatchObject([{ fill: 'none', stroke: themes.print.ink }]);
  });

  it('circles, paths and print', () => {
    for (const [role, fill, name] of [
      ['case', theme.plate, 'sl-case'],
      ['contact', theme.plate, undefined],
      ['dot', theme.outline, undefined],
    ] as const) {
      const { circles, svg } = painted({ shape: 'circle', role, centre: at, radius: 5 });
      expect(circles).toMatchObject([{ fill, r: 5, stroke: role === 'dot' ? 'none' : theme.outline }]);
      expect(/class="([\w-]+)"/.exec(svg)?.[1]).toBe(name);
    }
    for (const [role, stroke] of [
      ['track', theme.inside],
      ['conductor', theme.outline],
      ['clearance', theme.plate],
      ['bridge', theme.ink],
    ] as const) {
      const { paths } = painted({
        shape: 'path',
        role,
        width: 4,
        runs: [[{ to: at }, { to: { x: 9, y: 0 } }]],
      });
      expect(paths).toMatchObject([{ stroke, width: 4, fill: 'none' }]);
    }
    const { texts } = painted({ shape: 'text', role: 'print', text: '223', centre: at, size: 13 });
    expect(texts).toMatchObject([{ words: '223', fill: theme.capacitorInk, size: 13 }]);
  });
});

describe('a part', () => {
  const placedOf = (part: Part): PlacedPart => {
    const outline = outlineOf(
      part,
      kinds[part.kind].is.includes('component' as never) ? 'load 250 kΩ' : undefined,
    );
    return {
      part,
      outline,
      frame: { x: 0, y: 0, width: outline.width, height: outline.height, turn: 0, mirror: false },
    };
  };
  const lookOf = (more: Partial<Look> = {}): Look => ({
    theme,
    language: 'en',
    closed: new Map(),
    joined: new Set(),
    meeting: new Set(),
    highlighted: new Set(),
    tints: new Map(),
    ...more,
  });
  const seen = (part: Part, look: Look) => sketch((pen) => drawPart(pen, placedOf(part), look));

  it.each((Object.keys(kinds) as Kind[]).filter((kind) => !kinds[kind].is.includes('component' as never)))(
    '%s: a tag a lug with its name, full where something is joined to it, else hollow with a broken edge',
    (kind) => {
      const part = partOf(kind);
      const { outline } = placedOf(part);
      const lugs = outline.lugs.filter(({ surface }) => !surface);
      const [first] = lugs;
      const { rects, texts, svg } = seen(part, lookOf({ joined: new Set([`x.${first?.lug}`, 'other.1']) }));
      const names = texts.slice(-lugs.length);
      expect(names.map(({ words }) => words)).toEqual(lugs.map(({ lug }) => lug));
      const tags = rects.slice(-lugs.length);
      tags.forEach((tag, i) => {
        const used = i === 0;
        expect(tag).toMatchObject({ fill: used ? theme.lug : theme.paper, stroke: theme.outline });
        expect(tag.dash === '').toBe(used);
        expect(names[i]?.fill).toBe(used ? theme.lugInk : theme.quiet);
        expect(names[i]?.middle).toBeCloseTo(tag.x + tag.w / 2, 1);
        // A letter with a tail is a little higher, clear of the solder below it.
        const lift = /[gjpqy]/.test(names[i]?.words ?? '') ? 1 : 0;
        expect(tag.y + tag.h / 2 + 12 * 0.3637 - (names[i]?.y ?? 0)).toBeCloseTo(lift, 1);
      });
      expect(svg.match(/class="sl-tag"/g)).toHaveLength(lugs.length);
      expect(svg).not.toContain('sl-leg-end');
    },
  );

  it.each(['resistor', 'capacitor'] as const)(
    '%s: legs and no tags, from its body to where wires meet, the whole leg where several do',
    (kind) => {
      const part = partOf(kind);
      const { outline } = placedOf(part);
      for (const meeting of [[], ['x.1'], ['x.1', 'x.2']]) {
        const { paths, circles, svg, rects } = seen(
          part,
          lookOf({ meeting: new Set(meeting), joined: new Set(['x.1', 'x.2']) }),
        );
        expect(svg).not.toContain('sl-tag');
        const leg = paths[0]?.pieces[0] ?? [];
        const y = outline.body.y + outline.body.height / 2;
        const ends = outline.lugs.map(({ lug, tag, ports }) => ({
          x: meeting.includes(`x.${lug}`) ? (ports[0]?.via?.x ?? Number.NaN) : tag.x + tag.width / 2,
          y,
        }));
        expect(leg).toEqual(ends);
        expect(paths[0]).toMatchObject({ stroke: theme.leg, width: 2 });
        expect(circles.slice(0, 2)).toMatchObject(ends.map((end) => ({ ...end, r: 1, fill: theme.leg })));
        // The body lies over its legs.
        expect(rects[0]?.order).toBeGreaterThan(paths[0]?.order ?? 99);
      }
    },
  );

  it('its name is in ink, its value quiet, and what the pad does in the accent', () => {
    for (const kind of ['resistor', 'capacitor'] as const) {
      const { texts } = seen(partOf(kind), lookOf());
      const fills = new Map(texts.map(({ words, fill }) => [words, fill]));
      expect(fills.get('Name')).toBe(theme.ink);
      expect(fills.get(kind === 'resistor' ? '470 kΩ' : '22 nF')).toBe(theme.quiet);
      expect(fills.get('load 250 kΩ')).toBe(theme.accent);
    }
    const { texts } = seen(partOf('pot'), lookOf());
    expect(texts.slice(0, 2).map(({ fill }) => fill)).toEqual([theme.ink, theme.quiet]);
  });

  it('has a pale box behind all of it where it is highlighted, and only there', () => {
    const part = partOf('resistor');
    const [plain, boxed] = [seen(part, lookOf()), seen(part, lookOf({ highlighted: new Set(['x']) }))];
    expect(plain.svg).not.toContain('sl-highlight');
    expect(boxed.rects.length).toBe(plain.rects.length + 1);
    expect(boxed.rects[0]).toMatchObject({ fill: theme.accentFill, stroke: theme.accent });
    const { outline } = placedOf(part);
    const [box] = boxed.rects;
    for (const { centre } of outline.labels)
      expect(centre.y > (box?.y ?? 0) && centre.y < (box?.y ?? 0) + (box?.h ?? 0)).toBe(true);
    // The wires that come to its legs from either side stay outside it.
    expect([box?.x, (box?.x ?? 0) + (box?.w ?? 0)]).toEqual([16, outline.width - 16]);
  });

  it('shows the contacts that are closed', () => {
    const part = partOf('lever-5');
    const bridges = (closed: readonly (readonly string[])[]) =>
      seen(part, lookOf({ closed: new Map([['x', closed]]) })).paths.filter(({ width }) => width === 7)
        .length;
    expect([
      bridges([]),
      bridges([['A0', 'A1']]),
      bridges([
        ['A0', 'A1', 'A2'],
        ['B0', 'B1', 'B2'],
      ]),
    ]).toEqual([0, 1, 4]);
  });

  it('an unused tag is hollow', () => {
    expect(tagLook(theme, true)).not.toHaveProperty('stroke-dasharray');
    expect(tagLook(theme, false)).toHaveProperty('stroke-dasharray');
  });
});

it('long words on how pickups are joined take a second line, and make the card higher by it and no wider', () => {
  const joined = 'in parallel, coils of Bridge in parallel, hum-cancelling';
  const long = card({ joined });
  const small = drawn(long).texts.filter(({ words }) => joined.includes(words) && words.length > 10);
  expect(small.map(({ words }) => words).join(' ')).toBe(joined);
  expect(new Set(small.map(({ y }) => y)).size).toBe(2);
  expect(cardHeight(long) - cardHeight(card({ joined: 'in parallel' }))).toBe(15);
  const rowY = (one: Card): number => textOf(drawn(one), '125 kΩ').y;
  expect(rowY(long) - rowY(card())).toBe(15);
  expect(cardWidth([long])).toBeLessThan(360);
});
