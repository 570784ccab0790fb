/** Each rule can fail: a good drawing is tampered with, one thing at a time, and the rule says so. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Point } from '../../src/common/geometry.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { type Drawing, type DrawnWire, readDrawing } from '../../src/inspect/drawing.ts';
import type { Rule } from '../../src/inspect/finding.ts';
import { inspect } from '../../src/inspect/index.ts';
import { drawnIn, sampleKits } from './variants.ts';

const ID = 'kestrel-hss';
let svg = '';
let kit: Kit;
let drawing: Drawing;

beforeAll(async () => {
  const found = sampleKits().find(({ id }) => id === ID);
  if (!found) throw new Error('the sample is gone');
  kit = found;
  svg = await drawnIn(kit, 'plate-row');
  const read = readDrawing(svg);
  if ('rule' in read) throw new Error(read.message);
  drawing = read;
}, 120_000);

const rules = (text: string): readonly Rule[] => [...new Set(inspect(text, kit).map(({ rule }) => rule))];

/** Replaces the first match, and sees to it that there was one. */
function change(pattern: RegExp | string, by: string | ((...found: string[]) => string), text = svg): string {
  const changed = typeof by === 'string' ? text.replace(pattern, by) : text.replace(pattern, by);
  expect(changed, `${pattern} is in the drawing`).not.toBe(text);
  return changed;
}
/** Puts something on top of everything, in the units of the page. */
const onTop = (markup: string): string => change(/<\/svg>\s*$/, `${markup}</svg>`);
const wireOf = (...points: Point[]): string =>
  onTop(
    `<g id="${ID}-joint-999"><path d="${points.map((p, i) => `${i ? 'L' : 'M'}${p.x} ${p.y}`).join('')}" fill="none" stroke="#000000" stroke-width="4"></path></g>`,
  );
const textAt = (x: number, y: number, words = 'stray'): string =>
  onTop(`<text x="${x}" y="${y}" font-size="12" fill="#000000">${words}</text>`);

const must = <T>(value: T | undefined): T => {
  if (value === undefined) throw new Error('nothing to tamper with');
  return value;
};
const part = (name: string) => must(drawing.parts.find((one) => one.name === name));
const lug = (name: string, of: string) => must(part(of).lugs.find((one) => one.name === name)).area;
const text = (words: string) => must(drawing.texts.find((one) => one.words === words));
const lengthOf = (wire: DrawnWire, i: number): number => {
  const line = must(wire.stretches[i]);
  return Math.abs(line.a.x - line.b.x) + Math.abs(line.a.y - line.b.y);
};
/** The longest stretch of any wire that lies level. */
const longest = () =>
  must(
    drawing.wires
      .flatMap((wire) => wire.stretches.map((line, i) => ({ line, length: lengthOf(wire, i) })))
      .filter(({ line }) => line.a.y === line.b.y)
      .sort((a, b) => b.length - a.length)[0],
  ).line;
const shifted = ({ a, b }: { a: Point; b: Point }, by: number): [Point, Point] => [
  { x: a.x, y: a.y + by },
  { x: b.x, y: b.y + by },
];
/** Changes every opening of every wire; a part's own lines have gaps too, and stand before the wires. */
const openings = (by: string | ((...found: string[]) => string)): string => {
  const at = svg.indexOf(`<g id="${ID}-wires">`);
  return svg.slice(0, at) + change(/L([-\d.]+) ([-\d.]+)M([-\d.]+) ([-\d.]+)/g, by, svg.slice(at));
};

/** A wire of several pieces above the drawing: each from one place to another across, or at one place from one depth to another. */
const gapped = (...pieces: readonly (readonly number[])[]): string => {
  const [x, y] = [60, 120];
  const d = pieces
    .map(([a = 0, b = 0, c, e]) =>
      c === undefined
        ? `M${x + a} ${y}L${x + b} ${y}`
        : e === undefined
          ? `L${x + b} ${y + c}`
          : `M${x + b} ${y + c}L${x + b} ${y + e}`,
    )
    .join('');
  return onTop(
    `<g id="${ID}-joint-999"><path d="${d}" fill="none" stroke="#000000" stroke-width="4"></path></g>`,
  );
};

/** A tampering for every rule; a rule without one does not compile. */
const tamperings: Readonly<Record<Rule, () => string>> = {
  unreadable: () => svg.slice(0, svg.length / 2),
  'not-read': () => onTop('<ellipse cx="9" cy="9" rx="4" ry="2"></ellipse>'),
  'text-on-text': () => textAt(text(kit.title).box.x, text(kit.title).box.y + 14),
  'text-on-line': () => textAt(longest().a.x + 20, longest().a.y + 4),
  'text-on-edge': () =>
    change(/(<text x=")([\d.]+)("[^>]*>Volume<)/, (_, a, x, b) => `${a}${Number(x) + 40}${b}`),
  'text-misplaced': () => {
    const { x, y, width, height } = must(part('selector').bodies[0]).area;
    return textAt(x + width / 2 - 4, y + height - 10, 'x');
  },
  'text-outside': () => change(/(<text x=")([\d.]+)(" y=")([\d.]+)("[^>]*>Volume<)/, '$19$3-300$5'),
  'text-covered': () =>
    change(new RegExp(`(<g id="${ID}-part-volume">(<circle[^>]*></circle>).*?)(</g>)`, 's'), '$1$2$3'),
  'small-type': () => change(/ width="\d+" height="\d+"/, ' width="120mm" height="100mm"'),
  contrast: () => change(/(fill=")#[\da-f]{6}("[^>]*>Volume<)/, '$1#9aa4ab$2'),
  'chip-place': () => change(`<g id="${ID}-colours">`, `<g id="${ID}-colours" transform="translate(0 9)">`),
  'off-page': () => onTop('<rect x="-5" y="5" width="20" height="20" fill="#000000"></rect>'),
  'lug-too-near': () => {
    const { x, y, height } = lug('B1', 'selector');
    return wireOf({ x: x - 40, y: y + height + 5 }, { x: x + 60, y: y + height + 5 });
  },
  'under-part': () => {
    const { x, y, width, height } = must(part('bridge').bodies[0]).area;
    return wireOf({ x: x - 20, y: y + height / 2 }, { x: x + width + 20, y: y + height / 2 });
  },
  'wires-overlap': () => wireOf(...shifted(longest(), 0)),
  'parallel-gap': () => wireOf(...shifted(longest(), 9)),
  'diagonal-wire': () => wireOf(longest().a, { x: longest().b.x, y: longest().b.y + 5 }),
  revision: () => change(/ data-revision="[^"]*"/, ' data-revision="2222-2222"'),
  crossing: () => openings(''),
  'unexpected-gap': () => {
    const { a, b } = longest();
    const [x, y] = [(a.x + b.x) / 2, a.y - 8];
    return onTop(
      `<g id="${ID}-joint-999"><path d="M${x - 30} ${y}L${x - 6} ${y}M${x + 6} ${y}L${x + 30} ${y}" fill="none" stroke="#000000"></path></g>`,
    );
  },
  'gap-at-end': () => gapped([0, 9], [21, 200]),
  'gap-at-corner': () => gapped([0, 200], [200, 200, 9], [200, 200, 21, 90]),
  'short-stub': () => gapped([0, 60], [72, 83], [95, 200]),
  'wire-on-wire': () => {
    const { a, b } = longest();
    const x = (a.x + b.x) / 2;
    return wireOf({ x: x - 30, y: a.y - 30 }, { x, y: a.y - 30 }, { x, y: a.y });
  },
  broken: () => openings((_, a, b, c, d) => `L${a} ${b}M${Number(c) + 2} ${Number(d) + 2}`),
  'end-not-on-lug': () =>
    change(/(-joint-\d+"[^>]*><path d="M)(\S+) /, (_, head, x) => `${head}${Number(x) + 40} `),
  lug: () => change('>sleeve</text>', '>tip</text>'),
  body: () => change(/ class="sl-body"/, ''),
  'parts-touch': () =>
    change(`<g id="${ID}-part-neck"`, `<g transform="translate(0 70)" id="${ID}-part-neck"`),
  'other-kit': () => svg.replaceAll(`"${ID}-`, '"wren-hs-'),
  part: () => change('>tip</text>', '>top</text>'),
  'unknown-aspect': () => svg.replaceAll(`"${ID}-`, `"${ID}-sideways-`),
  'differs-from-kit': () => change(/( d="M[^"]*" stroke=")#[\da-f]{6}(" stroke-width="4")/, '$1#ffffff$2'),
  'joint-missing': () => change(new RegExp(`<g id="${ID}-joint-3".*?</g>`, 's'), ''),
  'joint-extra': () =>
    change(
      new RegExp(`<g id="${ID}-joint-3"(.*?</g>)`, 's'),
      (all) => all + all.replace('-joint-3', '-joint-99'),
    ),
  colour: () => change(/(-colours">.*?class="sl-chip"[^>]*><\/rect><text[^>]*>)[A-Z]+</s, '$1PK<'),
};

describe('a good drawing', () => {
  it('gives no finding', () => expect(inspect(svg, kit)).toEqual([]));
  it('is good without its description, and moved as a whole', () => {
    expect(inspect(svg)).toEqual([]);
    const moved = change(
      /(-drawing" transform="translate\()([\d.]+) ([\d.]+)/,
      (_, a, x, y) => `${a}${Number(x) + 1} ${Number(y) - 1}`,
    );
    expect(inspect(moved, kit)).toEqual([]);
  });
  it('is good on a page of its own', async () =>
    expect(rules(await drawnIn(kit, 'plate-row', { page: { width: 297, height: 420, margin: 10 } }))).toEqual(
      [],
    ));
});

it.each(Object.entries(tamperings))('%s can fail', (rule, tampered) => {
  const found = inspect(tampered(), kit).filter((finding) => finding.rule === rule);
  expect(found.length).toBeGreaterThan(0);
  for (const { message } of found) expect(message).not.toMatch(/undefined|NaN|\[object/);
});

describe('finer points', () => {
  it('a wire under any part, in any lug’s way, is found', () => {
    for (const { name, bodies } of drawing.parts)
      for (const { area } of bodies) {
        const y = area.y + Math.min(14, area.height / 2);
        const found = inspect(wireOf({ x: area.x - 9, y }, { x: area.x + area.width + 9, y }));
        expect(
          found.map(({ rule }) => rule),
          name,
        ).toContain('under-part');
      }
    for (const { lugs } of drawing.parts)
      for (const { area } of lugs) {
        const x = area.x - 5;
        expect(rules(wireOf({ x, y: area.y - 9 }, { x, y: area.y + area.height + 9 }))).toContain(
          'lug-too-near',
        );
      }
  });
  it('a value other than the kit’s is found', () => {
    const found = inspect(change('250 kΩ log', '500 kΩ log'), kit);
    expect(found.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([
      'part: “tone-1” has “Tone 1 500 kΩ log”; described is “Tone 1 250 kΩ log”',
      'differs-from-kit: “part-tone-1”: the drawing has “500 kΩ log”, the kit gives “250 kΩ log”',
    ]);
  });
  it('the limits themselves: text at 4.4:1 is found and at 4.6:1 is not; a wire 5.5 from a lug is found, 6.5 is not', () => {
    // #787878 and #757575 on white, by the formula of WCAG 2.2 (from memory): 4.42 and 4.61.
    const inked = (ink: string) =>
      rules(onTop(`<text x="700" y="30" font-size="12" fill="${ink}">grey</text>`));
    expect(inked('#787878')).toContain('contrast');
    expect(inked('#757575')).not.toContain('contrast');
    const { x, y, width, height } = lug('3', 'volume');
    const below = (by: number) =>
      inspect(wireOf({ x: x - 4, y: y + height + by }, { x: x + width / 2, y: y + height + by })).filter(
        ({ rule, message }) => rule === 'lug-too-near' && message.includes('volume.3'),
      );
    expect(below(5.5)).toHaveLength(1);
    expect(below(6.5)).toHaveLength(0);
  });
  it('a wire far from everything is let be', () => {
    const y = drawing.page.height - 3;
    const found = inspect(wireOf({ x: 40, y }, { x: 200, y }));
    expect(found.map(({ rule }) => rule)).toEqual(['end-not-on-lug', 'end-not-on-lug']);
  });
  it('a bar beside a text, in the text’s own ink, takes nothing from its contrast', () => {
    const { box, order } = text('five-way');
    expect(order).toBeGreaterThan(0);
    const y = box.y - drawing.offset.y + box.height + 2;
    const [left, right] = [box.x - drawing.offset.x, box.x - drawing.offset.x + box.width];
    const line = `<path d="M${left} ${y}L${right} ${y}L${right} ${y + 2}L${left} ${y + 2}Z" fill="#56636d"></path>`;
    const before = change(/<text[^>]*>five-way</, (all) => line + all);
    expect(rules(before)).not.toContain('contrast');
  });

  it('a corner on the stretch of a wire that begins at the same lug is found all the same', () => {
    const wire = must(drawing.wires.find(({ ends, points }) => ends[0]?.is === 'tag' && points.length > 3));
    const start = must(wire.ends[0]).area;
    const [a, b] = [must(wire.points[wire.points.length - 2]), must(wire.points[wire.points.length - 1])];
    const corner = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    const from = { x: start.x + start.width / 2, y: start.y + start.height / 2 };
    const found = inspect(wireOf(from, { x: from.x, y: from.y - 3 }, corner, { x: 2, y: 2 }), kit);
    expect(found.map(({ rule }) => rule)).toContain('wire-on-wire');
  });

  it('contrast is taken from what really lies below: over two inks, both must do', () => {
    const { x, y, width, height } = text(kit.title).box;
    const half = `<rect x="${x - 2}" y="${y - 2}" width="${width / 2}" height="${height + 4}" fill="#1d2b36"></rect>`;
    expect(rules(change(`<g id="${ID}-head">`, (all) => half + all))).toContain('contrast');
    const dark = `<rect x="${x - 2}" y="${y - 2}" width="${width + 4}" height="${height + 4}" fill="#1d2b36"></rect>`;
    expect(rules(change(`<g id="${ID}-head">`, (all) => dark + all))).toContain('contrast');
    const pale = dark.replace('#1d2b36', '#fefefe');
    expect(rules(change(`<g id="${ID}-head">`, (all) => dark + pale + all))).not.toContain('contrast');
  });
  it('a part moved on its own no longer meets its wires', () => {
    const moved = change(
      `<g id="${ID}-part-output"`,
      `<g transform="translate(0 300)" id="${ID}-part-output"`,
    );
    expect(rules(moved)).toContain('joint-missing');
    expect(rules(moved)).toContain('end-not-on-lug');
  });
  it('what could hide part of the drawing is not passed over', () => {
    for (const attribute of ['opacity="0.2"', 'style="fill:red"', 'transform="rotate(4)"'])
      expect(rules(change(`<g id="${ID}-head">`, `<g ${attribute} id="${ID}-head">`)), attribute).toContain(
        'not-read',
      );
    for (const ink of ['var(--ink)', 'red', '#12', 'url(#a)'])
      expect(rules(change(/fill="#[\da-f]{6}"([^>]*>Volume<)/, `fill="${ink}"$1`)), ink).toContain(
        'not-read',
      );
    for (const markup of [
      '<use href="#x"></use>',
      '<style>*{fill:red}</style>',
      '<image></image>',
      '<text x="1" y="9" font-size="9">a<tspan>b</tspan></text>',
      '<path d="m0 0l9 9"></path>',
    ])
      expect(rules(onTop(markup)), markup).toContain('not-read');
  });
});

it('a colour code on the highlight of a part is found', () => {
  const box = must(drawing.shapes.find(({ is }) => is.includes('sl-highlight'))).area;
  const code = must(drawing.chips[0]).shape.area;
  const [dx, dy] = [box.x - code.x, box.y - code.y];
  const moved = change(`<g id="${ID}-colours">`, `<g id="${ID}-colours" transform="translate(${dx} ${dy})">`);
  const found = inspect(moved, kit).filter(({ rule }) => rule === 'chip-place');
  expect(found.map(({ message }) => message)).toContainEqual(expect.stringContaining('touches a highlight'));
});
