/** What an element paints, and where; and that whatever is not understood is said. Defaults are those of SVG 2 (from memory). */
import { describe, expect, it } from 'vitest';
import { type Mark, paint } from '../../src/inspect/paint.ts';
import { parseXml } from '../../src/inspect/xml.ts';

function painted(markup: string): { readonly marks: readonly Mark[]; readonly unread: readonly string[] } {
  const parsed = parseXml(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 99 99">${markup}</svg>`);
  if (!('root' in parsed)) throw new Error(parsed.error);
  const { marks, findings } = paint(parsed.root);
  return { marks, unread: findings.map(({ message }) => message.replace(' is not read by this check', '')) };
}
function only<Kind extends Mark['kind']>(kind: Kind, markup: string): Extract<Mark, { readonly kind: Kind }> {
  const { marks, unread } = painted(markup);
  expect(unread, markup).toEqual([]);
  const [mark, ...more] = marks;
  expect(more).toEqual([]);
  if (mark?.kind !== kind) throw new Error(`${markup} paints no ${kind}`);
  return mark as Extract<Mark, { readonly kind: Kind }>;
}

describe('a box', () => {
  it('lies where it says, and its stroke reaches half its width beyond', () => {
    const box = only(
      'area',
      '<rect x="3" y="5" width="20" height="10" rx="2" fill="#ABCDEF" stroke="#102030" stroke-width="6"></rect>',
    );
    expect(box.area).toEqual({ x: 3, y: 5, width: 20, height: 10, radius: 2 });
    expect(box.outer).toEqual({ x: 0, y: 2, width: 26, height: 16, radius: 5 });
    expect([box.fill, box.stroke, box.half]).toEqual(['#abcdef', '#102030', 3]);
  });
  it('without more words is black, without a stroke, sharp and at the corner of its group', () => {
    const box = only('area', '<rect width="20" height="10"></rect>');
    expect(box.area).toEqual({ x: 0, y: 0, width: 20, height: 10, radius: 0 });
    expect(box.outer).toEqual(box.area);
    expect([box.fill, box.stroke, box.half, box.is]).toEqual(['#000000', 'none', 0, []]);
  });
  it('a stroke without a width is one unit wide; a width without a stroke is nothing', () => {
    expect(only('area', '<rect width="9" height="9" stroke="#000000"></rect>').half).toBe(0.5);
    expect(only('area', '<rect width="9" height="9" stroke-width="8"></rect>').half).toBe(0);
  });
  it('has the classes it names, however they are spaced', () =>
    expect(only('area', '<rect width="9" height="9" class=" sl-tag  sl-mark "></rect>').is).toEqual([
      'sl-tag',
      'sl-mark',
    ]));
});

it('a circle is a box rounded altogether, about its middle', () => {
  const circle = only('area', '<circle cx="10" cy="20" r="4" stroke="#000000" stroke-width="2"></circle>');
  expect(circle.area).toEqual({ x: 6, y: 16, width: 8, height: 8, radius: 4 });
  expect(circle.outer).toEqual({ x: 5, y: 15, width: 10, height: 10, radius: 5 });
});

describe('groups', () => {
  it('move what is in them, one within the other, and hand down their inks until one has its own', () => {
    const { marks, unread } = painted(
      '<g id="a" transform="translate(10 20)" fill="#111111" stroke="#222222" stroke-width="4"><g id="b" transform="translate(-1,2)" fill="#333333">' +
        '<rect width="9" height="8"></rect><circle cx="1" cy="1" r="1" fill="none" stroke="none"></circle>' +
        '<path d="M0 0L5 0"></path><text x="1" y="2" font-size="10">I</text></g>' +
        '<rect width="9" height="8"></rect></g><rect width="9" height="8"></rect>',
    );
    expect(unread).toEqual([]);
    expect(marks.map(({ order }) => order)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(marks.map(({ groups }) => groups.join('/'))).toEqual(['a/b', 'a/b', 'a/b', 'a/b', 'a', '']);
    expect(marks.map(({ fill }) => fill)).toEqual([
      '#333333',
      'none',
      '#333333',
      '#333333',
      '#111111',
      '#000000',
    ]);
    expect(marks.map(({ stroke, half }) => `${stroke} ${half}`)).toEqual([
      '#222222 2',
      'none 0',
      '#222222 2',
      '#222222 2',
      '#222222 2',
      'none 0',
    ]);
    const [box, circle, path, text, next, last] = marks;
    expect(box?.kind === 'area' && [box.area.x, box.area.y]).toEqual([9, 22]);
    expect(circle?.kind === 'area' && [circle.area.x, circle.area.y]).toEqual([9, 22]);
    expect(path?.kind === 'line' && path.offset).toEqual({ x: 9, y: 22 });
    expect(path?.kind === 'line' && path.stretches).toEqual([{ a: { x: 9, y: 22 }, b: { x: 14, y: 22 } }]);
    expect(text?.kind === 'text' && text.box.x).toBeCloseTo(10);
    expect(text?.kind === 'text' && text.box.y + text.box.height).toBeCloseTo(24, 0);
    expect(next?.kind === 'area' && [next.area.x, next.area.y]).toEqual([10, 20]);
    expect(last?.kind === 'area' && [last.area.x, last.area.y]).toEqual([0, 0]);
  });
  it('only a group gives its name to what is in it, and an element may be moved by itself', () => {
    const box = only('area', '<rect id="own" transform="translate(3)" width="9" height="9"></rect>');
    expect(box.groups).toEqual([]);
    expect([box.area.x, box.area.y]).toEqual([3, 0]);
  });
  it('what is only spoken paints nothing and needs no reading', () => {
    const { marks, unread } = painted(
      '<title>A</title><desc>B</desc><g><title>C</title></g><rect width="9" height="9"><title>D</title></rect>',
    );
    expect(unread).toEqual([]);
    expect(marks).toHaveLength(1);
  });
});

describe('a path', () => {
  it('is its runs, in a box with its stroke', () => {
    const line = only('line', '<path d="M2 3L12 3M2 8L2 18" stroke="#000000" stroke-width="2"></path>');
    expect(line.stretches).toEqual([
      { a: { x: 2, y: 3 }, b: { x: 12, y: 3 } },
      { a: { x: 2, y: 8 }, b: { x: 2, y: 18 } },
    ]);
    expect(line.box).toMatchObject({ x: 1, y: 2, width: 12, height: 17 });
    expect([line.half, line.cap]).toEqual([1, 0]);
  });
  it('has its cap from its group, too, and none when that is cut', () => {
    const caps = ['round', 'square', 'butt'].map(
      (cap) =>
        only(
          'line',
          `<g stroke-linecap="${cap}"><path d="M0 0L9 0" stroke="#000000" stroke-width="6"></path></g>`,
        ).cap,
    );
    expect(caps).toEqual([3, 3, 0]);
  });
});

describe('a text', () => {
  const at = (attributes: string) =>
    only('text', `<text x="50" y="40" font-size="10" ${attributes}>Volume</text>`);
  it('runs from its start, or ends there, or lies about it', () => {
    const [start, middle, end] = ['start', 'middle', 'end'].map(
      (anchor) => at(`text-anchor="${anchor}"`).box,
    );
    expect(start?.x).toBe(50);
    expect(at('').box).toEqual(start);
    expect((middle?.x ?? 0) + (middle?.width ?? 0) / 2).toBeCloseTo(50);
    expect((end?.x ?? 0) + (end?.width ?? 0)).toBeCloseTo(50);
  });
  it('is wider in bold, by either name of it, and as wide as it is told', () => {
    const wide = (attributes: string): number => at(attributes).box.width;
    expect(wide('font-weight="400"')).toBe(wide(''));
    expect(wide('font-weight="normal"')).toBe(wide(''));
    expect(wide('font-weight="700"')).toBeGreaterThan(wide(''));
    expect(wide('font-weight="bold"')).toBe(wide('font-weight="700"'));
    expect(wide('textLength="77"')).toBeCloseTo(77);
  });
  it('says its words and its size; blanks alone paint nothing', () => {
    expect([at('').words, at('').size]).toEqual(['Volume', 10]);
    expect(painted('<text x="1" y="9" font-size="9"> </text>')).toEqual({ marks: [], unread: [] });
  });
});

describe('is said not to be read', () => {
  it.each([
    ['<rect width="9" height="9" opacity="0.5"></rect>', 'the attribute opacity of <rect>'],
    ['<g style="fill:red"></g>', 'the attribute style of <g>'],
    ['<rect width="wide" height="9"></rect>', 'width="wide"'],
    ['<rect width="" height="9"></rect>', 'width=""'],
    ['<rect width="1e999" height="9"></rect>', 'width="1e999"'],
    ['<rect x="?" width="9" height="9"></rect>', 'x="?"'],
    ['<circle cx="1" cy="1" r="much"></circle>', 'r="much"'],
    ['<rect width="9" height="9" fill="red"></rect>', 'the colour fill="red"'],
    ['<rect width="9" height="9" stroke="#12345"></rect>', 'the colour stroke="#12345"'],
    ['<rect width="9" height="9" stroke="#000000" stroke-width="thick"></rect>', 'stroke-width="thick"'],
    ['<path d="m0 0l9 9"></path>', 'the path “m0 0l9 9”'],
    ['<path></path>', 'the path “”'],
    ['<text x="1" y="9" font-size="9" font-weight="550">a</text>', 'font-weight="550"'],
    ['<text x="1" y="9">a</text>', 'a text without a type size'],
    ['<text x="1" y="9" font-size="0">a</text>', 'a text without a type size'],
    ['<g transform="rotate(4)"></g>', 'the transform “rotate(4)”'],
    ['<ellipse></ellipse>', '<ellipse>'],
    ['<text x="1" y="9" font-size="9">a<tspan>b</tspan></text>', '<tspan>'],
    ['<g>stray</g>', 'text outside a text element'],
    ['<rect width="9" height="9">stray</rect>', 'text outside a text element'],
    ['<style>rect{fill:red}</style>', 'text outside a text element', '<style>'],
  ])('%s', (markup, ...words) => expect(painted(markup).unread).toEqual(words));
  it('the place it is said of is that of its group', () => {
    const parsed = parseXml(
      '<svg><g transform="translate(7 8)"><ellipse></ellipse><g opacity="0"></g></g></svg>',
    );
    if (!('root' in parsed)) throw new Error(parsed.error);
    expect(paint(parsed.root).findings.map(({ where }) => where)).toEqual([
      { x: 7, y: 8 },
      { x: 7, y: 8 },
    ]);
  });
  it('not a font that is embedded', () =>
    expect(painted('<style>@font-face{font-family:Inter;src:url(data:a)}</style>').unread).toEqual([]));
});
