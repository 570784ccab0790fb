/** How a sheet's room is divided: nothing over the edge, no card on another, as few rows as the width allows. */
import { describe, expect, it } from 'vitest';
import { cardWidth } from '../../src/annotate/card-size.ts';
import type { Card } from '../../src/annotate/cards.ts';
import type { Line } from '../../src/annotate/lines.ts';
import { seeded } from '../../src/common/random.ts';
import { textWidth } from '../../src/common/text.ts';
import { captionOf, headBlock, NO_CONTENTS } from '../../src/draw/blocks.ts';
import { CARD_GAP, cardHeight } from '../../src/draw/cards.ts';
import { chipWidth } from '../../src/draw/chips.ts';
import { EDGE, openSheet } from '../../src/draw/head.ts';
import { drawKey, type KeyEntry, keyOf, keyRows } from '../../src/draw/key.ts';
import { layOutSheet } from '../../src/draw/layout.ts';
import { writeLines } from '../../src/draw/lines.ts';
import { themes } from '../../src/draw/theme.ts';
import { drawWork, workWidth } from '../../src/draw/work.ts';
import { sketch } from './sketch.ts';

const theme = themes.light;
const random = seeded(60821);
const upTo = (most: number): number => Math.floor(random() * (most + 1));
const words = (most: number): string =>
  'Neck and bridge in parallel, out of phase, with the tone control and its capacitor'.slice(
    0,
    1 + upTo(most),
  );

const anyCard = (): Card => ({
  language: 'en',
  states: [0],
  badge: '1',
  combinations: [['1']],
  title: words(70),
  rows: Array.from({ length: upTo(3) }, () => ({
    pickup: 'neck',
    label: 'Neck',
    dcLoad: '250 kΩ',
    signalLoad: '125 kΩ',
    ratio: 1,
    verdict: 'as designed',
  })),
  switches: [],
  meter: '7.68 kΩ',
});
const LEGEND = ['DC load: resistance across the leads.', 'Bar: signal load.', 'Tick: reference.'];
const KEY: readonly KeyEntry[] = Array.from({ length: 9 }, () => ({ words: words(30) }));
const anyRoom = (cards: number) => ({
  language: 'en' as const,
  title: words(80),
  views: Array.from({ length: 1 + upTo(2) }, () => words(80)),
  key: KEY.slice(0, upTo(9)),
  drawing: { width: 200 + upTo(1200), height: 150 + upTo(800), type: 12 },
  cards: Array.from({ length: cards }, anyCard),
  legend: LEGEND,
  work: [] as string[],
});
type Room = ReturnType<typeof anyRoom>;

const textNeeds = ({ title, views, work, cards, legend }: Room): number =>
  Math.max(
    textWidth(title, 22, 'bold'),
    ...views.map((line) => textWidth(line, 12)),
    ...work.map((line) => 22 + textWidth(line, 13)),
    ...(cards.length === 0 ? [] : legend.map((line) => textWidth(line, 12))),
  );
const cardsNeed = ({ cards }: Room, abreast: number): number =>
  cards.length === 0 ? 0 : abreast * (Math.ceil(cardWidth(cards)) + CARD_GAP) - CARD_GAP;

/** How many stand in the first row. */
const abreastIn = ({ cards }: ReturnType<typeof layOutSheet>): number =>
  Math.max(1, cards.filter(({ y }) => y === cards[0]?.y).length);
const rowHeight = (cards: readonly Card[], abreast: number, row: number): number =>
  Math.max(...cards.slice(row * abreast, (row + 1) * abreast).map(cardHeight));
const footHeight = (
  cards: readonly Card[],
  abreast: number,
  legend: readonly string[],
  inner: number,
): number => {
  const rows = Array.from({ length: Math.ceil(cards.length / abreast) }, (_, row) =>
    rowHeight(cards, abreast, row),
  );
  return (
    rows.reduce((sum, one) => sum + one + CARD_GAP, 0) -
    CARD_GAP +
    26 +
    18 * (captionOf(legend, inner).length - 1)
  );
};

const innerOf = (room: Room): number =>
  Math.max(room.drawing.width, textNeeds(room), cardsNeed(room, Math.min(3, room.cards.length)));

function check(room: Room, layout: ReturnType<typeof layOutSheet>): void {
  const { cards, drawing, views, work, legend } = room;
  const { width, height, scale, box, drawing: place } = layout;
  if (typeof width !== 'number') throw new Error('no width');
  const inner = innerOf(room);
  const perRow = abreastIn(layout);
  expect(width).toBe(Math.ceil(inner + 2 * EDGE));
  expect({ scale, box }).toEqual({ scale: 1, box: { x: 0, y: 0, width, height } });
  // The drawing in the middle, below the head and the key.
  expect(Math.abs(2 * (place.x - EDGE) + drawing.width - inner)).toBeLessThanOrEqual(1);
  const keyTop = EDGE + 48 + 18 * views.length;
  const rowsOfKey = layout.key.rows;
  if (room.key.length > 0) expect(layout.key.at).toEqual({ x: EDGE, y: keyTop });
  expect(rowsOfKey.flat()).toEqual(room.key);
  // A sheet without a key has no room for one.
  const drawingTop = room.key.length > 0 ? keyTop + 22 * rowsOfKey.length + 8 : keyTop + 2;
  expect(place.y).toBe(drawingTop);
  const footTop = drawingTop + drawing.height + 8;
  const rows = Math.ceil(cards.length / perRow);
  const foot = cards.length === 0 ? 24 * work.length : footHeight(cards, perRow, legend, inner);
  expect(height).toBe(Math.ceil((foot === 0 ? footTop - 8 : footTop + foot) + EDGE));
  if (cards.length === 0) return;
  const least = Math.ceil(cardWidth(cards));
  const [first] = layout.cards;
  if (!first) throw new Error('no card');
  // Each as high as it needs, those of a row level at their tops, the next row below the highest.
  layout.cards.forEach((box, i) => {
    const row = Math.floor(i / perRow);
    const above = Array.from({ length: row }, (_, r) => rowHeight(cards, perRow, r) + CARD_GAP);
    expect(box).toEqual({
      x: EDGE + (i % perRow) * (first.width + CARD_GAP),
      y: footTop + above.reduce((sum, one) => sum + one, 0),
      width: first.width,
      height: 74 + 62 * Math.max(1, cards[i]?.rows.length ?? 0),
    });
  });
  expect(first.width).toBeGreaterThanOrEqual(least);
  expect(first.width).toBeLessThanOrEqual(Math.max(390, least));
  const taken = perRow * (first.width + CARD_GAP) - CARD_GAP;
  expect(taken).toBeLessThanOrEqual(inner);
  // As wide as there is room for, and reads well.
  if (first.width < Math.max(390, least)) expect(taken + perRow).toBeGreaterThan(inner);
  // The rows are as even as they can be.
  expect(perRow).toBe(Math.ceil(cards.length / rows));
}

describe('a sheet', () => {
  it('by itself is as wide as its widest, and has room for three cards abreast', () => {
    for (let i = 0; i < 150; i++) {
      const room = anyRoom(i % 8);
      const layout = layOutSheet(room);
      check(room, layout);
      // No fewer rows would do.
      const rows = Math.ceil(room.cards.length / abreastIn(layout));
      if (rows > 1) {
        const abreast = Math.ceil(room.cards.length / (rows - 1));
        expect(cardsNeed(room, abreast)).toBeGreaterThan(innerOf(room));
      }
    }
  });

  it('of a step has its work where the cards would be, and no room for what cards say', () => {
    for (let i = 0; i < 40; i++) {
      const room = {
        ...anyRoom(0),
        work: Array.from({ length: upTo(6) }, () => words(80)),
        legend: [words(80)],
      };
      check(room, layOutSheet(room));
    }
  });

  it('has cards as high as their rows, with a row of room on an empty one', () => {
    const [none, one, two] = [0, 1, 2].map((count) => ({
      ...anyCard(),
      rows: Array(count).fill(anyCard().rows[0]),
    }));
    if (!none || !one || !two) throw new Error('no cards');
    expect([none, one, two].map(cardHeight)).toEqual([136, 136, 198]);
  });
});

it('what cards say takes as few lines as the width allows, every sentence in its order', () => {
  for (let i = 0; i < 100; i++) {
    const legend = Array.from({ length: upTo(6) }, () => words(60));
    const inner = 100 + upTo(600);
    const whole = Math.max(inner, ...legend.map((line) => textWidth(line, 12)));
    const lines = captionOf(legend, whole);
    expect(lines.join(' ')).toBe(legend.join(' '));
    let next = 0;
    lines.forEach((line) => {
      let taken = legend[next++] ?? '';
      while (taken.length < line.length) taken += ` ${legend[next++]}`;
      expect(line).toBe(taken);
      if (!legend.includes(line)) expect(textWidth(line, 12)).toBeLessThanOrEqual(whole);
      const longer = `${line} ${legend[next]}`;
      if (legend[next] !== undefined) expect(textWidth(longer, 12)).toBeGreaterThan(whole);
    });
  }
});

describe('the key', () => {
  const line = (look: Line['look'], tint = 'ground'): Line => ({ look, tint });
  const PICKUPS = new Map([
    ['pickup-1', 'Neck, hot'],
    ['pickup-3', 'Bridge, hot'],
  ]);
  const said = (
    lines: readonly Line[],
    codes: readonly string[] = [],
    empty = false,
    inks = theme,
  ): readonly string[] =>
    keyOf(lines, PICKUPS, codes, empty, false, [], inks, 'en')
      .map((entry) => entry.words)
      .filter((words) => words !== 'solder joint');

  it('has each look that occurs once, in one order, and none that does not', () => {
    expect(said([])).toEqual([]);
    expect(
      said([
        line('braid'),
        line('bend'),
        line('leg'),
        line('ground'),
        line('sleeved'),
        line('jumper'),
        line('ground'),
        line('signal', 'tone'),
        line('signal', 'output'),
        line('signal', 'pickup-3'),
        line('signal', 'switch-output'),
        line('signal', 'other'),
        line('signal', 'pickup-1'),
      ]),
    ).toEqual([
      'Neck, hot',
      'Bridge, hot',
      'switch output',
      'to the output jack',
      'tone control',
      'other signal wire',
      'ground (double line)',
      'bare component leg',
      'sleeved leg',
      'bare jumper',
      'lug bent back and soldered to the case',
      'bare shield braid: keep clear of signal lugs',
    ]);
    expect(said([line('signal', 'pickup-3')])).toEqual(['signal']);
    // A tint says what a signal wire carries; on another look it says nothing.
    expect(said([line('leg', 'tone'), line('signal', 'output'), line('signal', 'other')])).toEqual([
      'to the output jack',
      'other signal wire',
      'bare component leg',
    ]);
  });

  it('has a wire of each colour once, ground by itself, and letters alone only for what no line shows', () => {
    const wire = (look: 'signal' | 'ground', colour: string): Line => ({ look, tint: 'tone', colour });
    const lines = [
      wire('signal', 'RD'),
      wire('ground', 'BK'),
      wire('signal', 'RD'),
      line('signal', 'tone'),
      line('signal', 'output'),
      wire('ground', 'WH'),
      wire('signal', 'BKRD'),
      line('ground'),
    ];
    const entries = keyOf(lines, PICKUPS, ['RD', 'BK', 'WH', 'BKRD', 'GN'], false, true, [], theme, 'en');
    expect(entries.map(({ words, code, line: of }) => [words, code ?? '', of?.look ?? ''])).toEqual([
      ['red', 'RD', 'signal'],
      ['black and red, striped', 'BKRD', 'signal'],
      ['ground (double line), black', 'BK', 'ground'],
      ['ground (double line), white', 'WH', 'ground'],
      ['to the output jack', '', 'signal'],
      ['tone control', '', 'signal'],
      ['ground (double line)', '', 'ground'],
      ['solder joint; on a pot’s round body: to its case', '', ''],
      ['green', 'GN', ''],
    ]);
    // Without colour the lines are told apart by their letters alone.
    expect(said(lines, ['RD', 'GN'], false, themes.print)).toEqual([
      'signal',
      'ground (double line)',
      'red',
      'green',
    ]);
  });

  it('names each colour once, and unused lugs where there are any', () => {
    expect(said([line('ground')], ['RD', 'BK', 'RD'], true)).toEqual([
      'ground (double line)',
      'unused lug',
      'red',
      'black',
    ]);
  });

  it('says signal once where all signal wires look alike', () => {
    const lines = [line('signal', 'tone'), line('signal', 'output'), line('ground')];
    expect(said(lines, [], false, themes.print)).toEqual(['signal', 'ground (double line)']);
    expect(said(lines)).toEqual(['to the output jack', 'tone control', 'ground (double line)']);
  });

  it('is set in rows that fit, each as full as it can be', () => {
    const entries: readonly KeyEntry[] = Array.from({ length: 14 }, (_, i) =>
      i % 4 === 0 ? { code: i % 8 === 0 ? 'RD' : 'GNYE', words: words(25) } : { words: words(25) },
    );
    const wide = (entry: KeyEntry): number =>
      Math.max(30, entry.line || entry.code === undefined ? 0 : chipWidth(entry.code)) +
      30 +
      textWidth(entry.words, 12);
    for (const width of [120, 300, 500, 5000]) {
      const rows = keyRows(entries, width);
      expect(rows.flat()).toEqual(entries);
      rows.forEach((row, i) => {
        const sum = row.reduce((total, entry) => total + wide(entry), 0);
        expect(row.length).toBeGreaterThan(0);
        if (row.length > 1) expect(sum).toBeLessThanOrEqual(width);
        const next = rows[i + 1]?.[0];
        if (next) expect(sum + wide(next)).toBeGreaterThan(width);
      });
      // Drawn as it is set: a sample and its words after one another, row below row.
      const { texts, rects, paths } = sketch((pen) => drawKey(pen, rows, 10, 40, theme));
      let [n, sampled] = [0, 0];
      rows.forEach((row, r) => {
        let left = 10;
        for (const entry of row) {
          const own = texts.filter(({ words: text }) => text === entry.words && !/^(RD|GNYE)$/.test(text));
          const sample = wide(entry) - 30 - textWidth(entry.words, 12);
          expect(
            own.some(
              ({ x, y }) => Math.abs(x - left - sample - 8) < 0.01 && Math.abs(y - 40 - 22 * r - 4.4) < 0.1,
            ),
          ).toBe(true);
          sampled += rects.filter(
            (rect) =>
              Math.abs(rect.x + rect.w / 2 - left - sample / 2) < 0.01 &&
              Math.abs(rect.y + rect.h / 2 - 40 - 22 * r) < 0.01,
          ).length;
          left += wide(entry);
          n++;
        }
      });
      expect([n, sampled, paths.length]).toEqual([14, 14, 0]);
    }
  });

  it('shows a line by all its strokes, and an unused lug hollow', () => {
    const { paths, rects } = sketch((pen) =>
      drawKey(pen, [[{ line: line('braid'), words: 'braid' }, { words: 'unused lug' }]], 10, 40, theme),
    );
    expect(paths.map(({ width }) => width)).toEqual([8, 5, 5]);
    for (const { pieces } of paths)
      expect(pieces).toEqual([
        [
          { x: 10, y: 40 },
          { x: 40, y: 40 },
        ],
      ]);
    expect(rects).toHaveLength(1);
    expect(rects[0]).toMatchObject({ fill: theme.paper, stroke: theme.outline });
  });
});

it('a box to tick stands before each line of work, and the line is as wide as it says', () => {
  const lines = ['Solder neck.hot to selector.A1', 'Bend volume.1 to the case'];
  const { rects, texts } = sketch((pen) =>
    drawWork(
      pen,
      lines.map((line) => [line]),
      24,
      100,
      theme,
    ),
  );
  expect(rects).toHaveLength(2);
  expect(texts.map(({ words: text }) => text)).toEqual(lines);
  texts.forEach((text, i) => {
    const box = rects[i];
    if (!box) throw new Error('no box');
    expect(box).toMatchObject({ x: 24, fill: 'none', stroke: theme.ink });
    expect(box.y + box.h / 2).toBe(100 + 24 * i + 12);
    expect(text.y - (box.y + box.h / 2)).toBeCloseTo(13 * 0.364, 1);
    expect(text.x + text.wide - box.x).toBeCloseTo(workWidth(lines[i] ?? ''), 1);
  });
});

describe('the head', () => {
  const [title, lines, width, height] = ['A kit', ['From behind', 'On 1'], 800, 600] as const;

  it('names the drawing for those who cannot see it, and writes its title and lines on its paper', () => {
    const opened = sketch((pen) => {
      const box = { x: -4, y: -2, width, height };
      const head = {
        id: 'k',
        language: 'en' as const,
        title,
        description: 'What it is',
        box,
        width: '200mm',
        height: '150mm',
      };
      const rest = openSheet(pen.into, head, theme);
      const written = headBlock({ ...NO_CONTENTS, title, views: lines }, 700).put(EDGE, EDGE).head ?? [];
      writeLines(rest.group({ id: 'k-head' }), written, theme);
    });
    const { rects, texts, description, svg } = opened;
    expect(svg).toMatch(/ viewBox="-4 -2 800 600" width="200mm" height="150mm"/);
    expect(svg).toContain('role="img"');
    expect(svg).toContain('aria-labelledby="k-title k-desc"');
    expect(svg).toContain('<title id="k-title">');
    expect(svg).toContain('<desc id="k-desc">');
    expect([opened.title, description]).toEqual(['A kit', 'What it is']);
    expect(rects).toMatchObject([{ x: -4, y: -2, w: 800, h: 600, fill: theme.paper }]);
    expect(texts.map(({ words: text, group }) => [text, group])).toEqual([
      ['A kit', 'k-head'],
      ['From behind', 'k-head'],
      ['On 1', 'k-head'],
    ]);
    // One below the other, from the left edge.
    expect(texts.map(({ x }) => x)).toEqual([EDGE, EDGE, EDGE]);
    expect((texts[2]?.y ?? 0) - (texts[1]?.y ?? 0)).toBe(18);
    expect(texts[1]?.y).toBeGreaterThan(texts[0]?.y ?? 0);
  });
});
