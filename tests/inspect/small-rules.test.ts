/** The rules of parts, colour codes, the page and the contrast, each at its limit, on drawings of a few shapes. */
import { describe, expect, it } from 'vitest';
import { contrast } from '../../src/common/contrast.ts';
import { chipFindings } from '../../src/inspect/rules/chips.ts';
import { contrastFindings } from '../../src/inspect/rules/contrast.ts';
import { drawnFindings } from '../../src/inspect/rules/drawn.ts';
import { pageFindings } from '../../src/inspect/rules/page.ts';
import { box, component, disc, part, read, tag, wire, words } from './small.ts';

describe('parts and their lugs', () => {
  const said = (markup: string): readonly string[] =>
    drawnFindings(read(markup)).map(({ rule, message }) => `${rule}: ${message}`);
  const jack = part(
    'jack',
    box('sl-plate', 100, 100, 60, 60) + tag(105, 105, 'tip') + tag(135, 105, 'sleeve'),
  );

  it('every end of every wire lies on a lug', () => {
    const ends = (d: string) =>
      drawnFindings(read(jack + wire(1, d))).map(({ rule, where }) => [rule, where]);
    expect(ends('M110 110L110 200L140 200L140 110')).toEqual([]);
    expect(ends('M20 110L110 110')).toEqual([['end-not-on-lug', { x: 20, y: 110 }]]);
    expect(ends('M110 110L20 110')).toEqual([['end-not-on-lug', { x: 20, y: 110 }]]);
    expect(ends('M10 10L20 10L20 30')).toEqual([
      ['end-not-on-lug', { x: 10, y: 10 }],
      ['end-not-on-lug', { x: 20, y: 30 }],
    ]);
  });
  it('every tag has a name, and no other tag of its part has the same', () => {
    expect(said(jack)).toEqual([]);
    expect(said(jack.replace('>tip<', '> <'))).toEqual(['lug: jack has a tag without a name']);
    expect(said(jack.replace('>tip<', '>sleeve<'))).toEqual(['lug: jack has two lugs called sleeve']);
    // Of two parts each may have its own; legs and cases have none.
    const other = part('other', box('sl-plate', 200, 100, 60, 60) + tag(205, 105, 'tip'));
    expect(said(jack + other + component('cap', 100, 250))).toEqual([]);
    const [{ where } = {}] = drawnFindings(read(jack.replace('>tip<', '>sleeve<')));
    expect(where).toEqual({ x: 115, y: 111 });
  });
  it('a part has a body; of two the one may not lie over the other', () => {
    expect(said(part('jack', tag(105, 105, 'tip')))).toEqual(['body: jack has no body in the drawing']);
    const two = (x: number): string =>
      part('pot', box('sl-plate', 100, 100, 60, 60) + box('sl-body', x, 100, 60, 60));
    expect(said(two(160))).toEqual([]);
    expect(said(two(159))).toEqual(['body: pot has 2 overlapping bodies in the drawing']);
    expect(said(two(101))).toHaveLength(1);
    const three = part(
      'pot',
      box('sl-plate', 0, 0, 9, 9) + box('sl-body', 20, 0, 9, 9) + box('sl-body', 25, 0, 9, 9),
    );
    expect(said(three)).toEqual(['body: pot has 3 overlapping bodies in the drawing']);
  });
  it('no part touches another, with its lugs or with its bodies, round or not', () => {
    const plate = (name: string, x: number): string => part(name, box('sl-plate', x, 100, 60, 60));
    expect(said(plate('a', 100) + plate('b', 160))).toEqual([]);
    expect(said(plate('a', 100) + plate('b', 159))).toEqual(['parts-touch: a and b overlap']);
    expect(said(plate('b', 159) + plate('a', 100))).toEqual(['parts-touch: b and a overlap']);
    expect(said(plate('a', 100) + plate('b', 300) + plate('c', 159))).toEqual([
      'parts-touch: a and c overlap',
    ]);
    // In the corner of a circle's box there is room, on whichever side the circle stands in the drawing.
    const pot = part('pot', disc('sl-case', 100, 100, 40));
    const small = (x: number): string => part('small', box('sl-plate', x, x, 10, 10));
    for (const [x, touch] of [
      [60, false],
      [63, true],
    ] as const)
      for (const markup of [pot + small(x), small(x) + pot])
        expect(
          said(markup).some((one) => one.startsWith('parts-touch')),
          `${x}`,
        ).toBe(touch);
    const [{ where } = {}] = drawnFindings(read(plate('a', 100) + plate('b', 159)));
    expect(where).toEqual({ x: 130, y: 130 });
    expect(said(plate('a', 100) + part('b', box('sl-plate', 170, 100, 60, 60) + tag(155, 120, '1')))).toEqual(
      ['parts-touch: a and b overlap'],
    );
  });
});

describe('colour codes', () => {
  const chip = (x: number, y: number): string =>
    `<g id="k-colours">${box('sl-chip', x, y, 20, 10)}${words(x + 2, y + 8, 'RD')}</g>`;
  const said = (markup: string): readonly string[] =>
    chipFindings(read(markup)).map(({ message }) => message.replace('the colour code “RD” ', ''));
  const level = wire(1, 'M10 50L300 50');

  it('lie with their middle on a wire, within a unit, and on one only', () => {
    expect(said(level + chip(100, 45))).toEqual([]);
    expect(said(level + chip(100, 46))).toEqual([]);
    expect(said(level + chip(100, 44))).toEqual([]);
    expect(said(level + chip(100, 46.1))).toEqual(['lies on no wire, or on several']);
    expect(said(level + chip(100, 43.9))).toEqual(['lies on no wire, or on several']);
    expect(said(chip(100, 45))).toEqual(['lies on no wire, or on several']);
    expect(said(level + wire(2, 'M110 20L110 90') + chip(100, 45))).toEqual([
      'lies on no wire, or on several',
    ]);
  });
  it('touch no other wire, by any of its thickness', () => {
    // The chip is 10 high about 50; a wire of 4 reaches 2 to either side.
    expect(said(level + wire(2, 'M10 57L300 57') + chip(100, 45))).toEqual([]);
    expect(said(level + wire(2, 'M10 56.9L300 56.9') + chip(100, 45))).toEqual(['touches another wire']);
    expect(said(level + wire(2, 'M10 65L300 65', 20) + chip(100, 45))).toEqual([]);
    expect(said(level + wire(2, 'M10 64.9L300 64.9', 20) + chip(100, 45))).toEqual(['touches another wire']);
    expect(said(level + wire(2, 'M10 20L10 56L300 56') + chip(100, 45))).toEqual(['touches another wire']);
  });
  it('touch no part, neither a lug nor a body, no highlight, and no other code', () => {
    const jack = (x: number): string => part('jack', box('sl-plate', 300, 200, 60, 60) + tag(x, 45, 'tip'));
    expect(said(level + jack(120) + chip(100, 45))).toEqual([]);
    expect(said(level + jack(119) + chip(100, 45))).toEqual(['touches a part']);
    const body = (x: number): string => part('p', box('sl-plate', x, 40, 60, 60));
    expect(said(level + body(120) + chip(100, 45))).toEqual([]);
    expect(said(level + body(119) + chip(100, 45))).toEqual(['touches a part']);
    const highlight = (x: number): string => box('sl-highlight', x, 40, 60, 60);
    expect(said(level + highlight(120) + chip(100, 45))).toEqual([]);
    expect(said(level + highlight(119) + chip(100, 45))).toEqual(['touches a highlight']);
    expect(said(level + chip(100, 45) + chip(120, 45))).toEqual([]);
    expect(said(level + chip(100, 45) + chip(119, 45))).toEqual(['touches another']);
    const [{ where } = {}] = chipFindings(read(chip(100, 45)));
    expect(where).toEqual({ x: 110, y: 50 });
  });
});

describe('the page', () => {
  const off = (markup: string) =>
    pageFindings(read(markup)).map(({ rule, message, where }) => [rule, message, where]);
  it('holds each mark with its stroke', () => {
    expect(
      off('<rect x="1" y="1" width="398" height="298" stroke="#000000" stroke-width="2"></rect>'),
    ).toEqual([]);
    expect(
      off('<rect x="1" y="9" width="9" height="9" stroke="#000000" stroke-width="3"></rect>'),
    ).toHaveLength(1);
    expect(off(wire(1, 'M2 50L100 50'))).toEqual([]);
    expect(off(wire(1, 'M50 1.9L100 1.9'))).toEqual([
      ['off-page', 'a shape of k-joint-1 extends beyond the edge of the page', { x: 75, y: 1.9 }],
    ]);
    expect(off(words(390, 50, 'Volume'))[0]?.[1]).toBe('“Volume” extends beyond the edge of the page');
    expect(off('<rect x="-9" width="9" height="9"></rect>')[0]?.[1]).toContain('a shape of');
  });
  it('lets pass what is rounded away, on each side', () => {
    for (const [x, y] of [
      [-1, 0],
      [1, 0],
      [0, -1],
      [0, 1],
    ] as const)
      for (const [by, count] of [
        [0.01, 0],
        [0.04, 1],
      ] as const) {
        const [left, top] = [x < 0 ? 0 : 390, y < 0 ? 0 : 290];
        const markup = `<rect x="${left + x * by}" y="${top + y * by}" width="10" height="10"></rect>`;
        expect(off(markup), markup).toHaveLength(count);
      }
  });
  it('in millimetres has no type below 2 mm; without them, any', () => {
    const small = (size: number, root: string) =>
      pageFindings(read(`<text x="50" y="50" font-size="${size}">Tone</text>`, root)).map(
        ({ message }) => message,
      );
    const half = 'viewBox="0 0 400 300" width="200mm" height="150mm"';
    expect(small(4, half)).toEqual([]);
    expect(small(3.9, half)).toEqual(['“Tone” is 1.95 mm high on the page; at least 2 mm is needed']);
    expect(small(1, 'viewBox="0 0 400 300" width="400" height="300"')).toEqual([]);
  });
});

describe('contrast', () => {
  it('is that of WCAG’s formula for any two inks, also the darkest, where the scale is a straight line', () => {
    // Luminances by hand: a channel of 10 lies on the line, 11 already on the curve; red, green and blue weigh 21, 72 and 7 in 100.
    const line = 10 / 255 / 12.92;
    const curve = ((11 / 255 + 0.055) / 1.055) ** 2.4;
    expect(contrast('#0a0a0a', '#000000')).toBeCloseTo((line + 0.05) / 0.05, 9);
    expect(contrast('#0b0b0b', '#000000')).toBeCloseTo((curve + 0.05) / 0.05, 9);
    expect(contrast('#ff0000', '#000000')).toBeCloseTo((0.2126 + 0.05) / 0.05, 9);
    expect(contrast('#00ff00', '#000000')).toBeCloseTo((0.7152 + 0.05) / 0.05, 9);
    expect(contrast('#0000ff', '#000000')).toBeCloseTo((0.0722 + 0.05) / 0.05, 9);
    expect(contrast('none', '#000000')).toBe(1);
  });
  const grey = (ink: string): string => words(50, 50, 'Volume', `fill="${ink}"`);
  const said = (markup: string): readonly string[] =>
    contrastFindings(read(markup)).map(({ message }) => message);
  const ground = (fill: string, x = 0, y = 0, width = 400, height = 300): string =>
    `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}"></rect>`;
  it('is against white paper where nothing is painted, else against what is', () => {
    expect(said(grey('#767676'))).toEqual([]);
    expect(said(grey('#777777'))[0]).toBe(
      '“Volume” has #777777 on #ffffff, a contrast of 4.48:1; at least 4.5:1 is needed',
    );
    expect(said(ground('#000000') + grey('#777777'))).toEqual([]);
    expect(said(ground('#000000') + grey('#333333'))).toHaveLength(1);
    expect(said(grey('none'))[0]).toContain('a contrast of 1:1');
    // What is painted afterwards, or without a fill, is no ground.
    expect(said(grey('#767676') + ground('#767676'))).toEqual([]);
    expect(said(ground('none') + grey('#767676'))).toEqual([]);
    // The topmost ground counts, not what it covers.
    expect(said(ground('#000000') + ground('#ffffff') + grey('#000000'))).toEqual([]);
    expect(said(ground('#ffffff') + ground('#000000') + grey('#000000'))).toHaveLength(1);
  });
  it('counts also against what only part of the text lies on, and not against what lies beside it', () => {
    expect(said(ground('#000000', 0, 0, 60, 300) + grey('#000000'))[0]).toContain('#000000 on #000000');
    expect(said(ground('#000000', 0, 0, 50, 300) + grey('#000000'))).toEqual([]);
    expect(said(ground('#000000', 0, 0, 60, 300) + ground('#ffffff') + grey('#000000'))).toEqual([]);
    const filled = (right: number): string =>
      `<path d="M0 0L${right} 0L${right} 300L0 300Z" fill="#000000"></path>`;
    expect(said(filled(60) + grey('#000000'))[0]).toContain('#000000 on #000000');
    expect(said(filled(50) + grey('#000000'))).toEqual([]);
    expect(said(filled(60) + ground('#ffffff') + grey('#000000'))).toEqual([]);
    expect(said(grey('#000000') + filled(60))).toEqual([]);
    expect(said(filled(60).replace('#000000', 'none') + grey('#000000'))).toEqual([]);
    // Of several the worst is told.
    expect(
      said(ground('#333333', 0, 0, 60, 300) + ground('#111111', 60, 0, 60, 300) + grey('#000000'))[0],
    ).toContain('on #111111');
    expect(
      said(ground('#111111', 0, 0, 60, 300) + ground('#333333', 60, 0, 60, 300) + grey('#000000'))[0],
    ).toContain('on #111111');
  });
});
