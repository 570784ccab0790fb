/** Two pictures compared, element by element: nothing is said of pictures alike, and of others what differs, where and how. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { readDrawing } from '../../src/inspect/drawing.ts';
import { pictureFindings } from '../../src/inspect/picture.ts';
import { parseXml } from '../../src/inspect/xml.ts';
import { sheet } from './small.ts';

const kit = { id: 'k', parts: [{ name: 'volume' }, { name: 'tone' }] };
const circuit = { kit, states: [{ positions: {} }] } as unknown as Circuit;
const SIZED = 'viewBox="0 0 400 300" width="400" height="300"';

function compare(drawn: string, wanted: string) {
  const drawing = readDrawing(drawn);
  if ('rule' in drawing) throw new Error(drawing.message);
  const parsed = parseXml(wanted);
  if (!('root' in parsed)) throw new Error(parsed.error);
  return pictureFindings(drawing, parsed.root, circuit);
}
const said = (drawn: string, wanted: string): readonly string[] =>
  compare(sheet(drawn, SIZED), sheet(wanted, SIZED)).map(
    ({ finding: { where, message } }) => `${where ? `${where.x},${where.y} ` : ''}${message}`,
  );

const rect = (x: number, more = ''): string =>
  `<rect x="${x}" y="5" width="9" height="9" fill="#000000"${more}></rect>`;
const text = (words: string, x = 1): string => `<text x="${x}" y="2" font-size="9">${words}</text>`;
const volume = (markup: string): string => `<g id="k-part-volume">${markup}</g>`;

describe('pictures alike', () => {
  it('give no finding, in whatever order the attributes and whichever case the inks are written', () => {
    const markup = volume(rect(1) + text('Volume')) + rect(50);
    expect(said(markup, markup)).toEqual([]);
    expect(
      said(
        '<rect width="9" x="1" height="9" y="5" fill="#ABCDEF"></rect>',
        rect(1).replace('#000000', '#abcdef'),
      ),
    ).toEqual([]);
  });
  it('may lie elsewhere as a whole, and be on another size of sheet and of paper', () => {
    const moved = (by: string): string =>
      sheet(rect(1), SIZED).replace('<g ', `<g transform="translate(${by})" `);
    expect(compare(moved('5 6'), moved('0 0'))).toEqual([]);
    const paper = (size: number): string =>
      rect(1, ' class="sl-paper"').replace('width="9"', `width="${size}"`);
    expect(said(paper(400), paper(500))).toEqual([]);
    const other = 'viewBox="0 0 500 200" width="500" height="200"';
    expect(compare(sheet(rect(1), SIZED), sheet(rect(1), other))).toEqual([]);
    expect(
      compare(sheet(rect(1), 'viewBox="0 0 400 300" width="100mm" height="75mm"'), sheet(rect(1), other)),
    ).toEqual([]);
  });
  it('a style is not a thing painted', () => expect(said(`<style>a</style>${rect(1)}`, rect(1))).toEqual([]));
});

describe('one that differs', () => {
  it('in a text is told by both texts, at the place of the one drawn', () =>
    expect(said(volume(text('500 kΩ')), volume(text('250 kΩ')))).toEqual([
      '1,2 “part-volume”: the drawing has “500 kΩ”, the kit gives “250 kΩ”',
    ]));
  it('in an attribute is told by that, as it is on either side', () => {
    expect(said(rect(1), rect(7))).toEqual([
      '1,5 “drawing”: the drawing has rect with x 1, the kit gives rect with x 7',
    ]);
    expect(said(text('a', 1), text('a', 3))).toEqual([
      '1,2 “drawing”: the drawing has text with x 1, the kit gives text with x 3',
    ]);
    expect(said(rect(1, ' rx="3"'), rect(1))).toEqual([
      '1,5 “drawing”: the drawing has rect with rx 3, the kit gives a rect',
    ]);
  });
  it('in kind is told by both kinds', () =>
    expect(said('<circle cx="4" cy="6" r="2"></circle>', rect(1))).toEqual([
      '4,6 “drawing”: the drawing has a circle, the kit gives a rect',
    ]));
  it('in what its group hands down, is one all the same', () => {
    const inked = (ink: string): string => `<g fill="${ink}">${text('a')}</g>`;
    expect(said(inked('#111111'), inked('#222222'))).toHaveLength(1);
    expect(said(`<g transform="translate(1 0)">${rect(1)}</g>`, rect(1))).toHaveLength(1);
  });
  it('in a text inside it, as in what a screen reader says of it', () => {
    const spoken = (words: string): string => `<rect width="9" height="9"><title>${words}</title></rect>`;
    expect(said(spoken('a'), spoken('a'))).toEqual([]);
    expect(said(spoken('a'), spoken('b'))).toHaveLength(1);
    expect(said('<title>a</title>', '<title>b</title>')).toEqual([
      '0,0 “drawing”: the drawing has “a”, the kit gives “b”',
    ]);
  });
  it('is placed where it lies on the sheet: moved with its groups, from its corner, its middle or its beginning', () => {
    const at = (markup: string): string =>
      said(
        `<g id="k-a" transform="translate(100 50)"><g id="k-b" transform="translate(1 -2)">${markup}</g></g>`,
        '',
      )[0]?.split(' ')[0] ?? '';
    expect(at(rect(3))).toBe('104,53');
    expect(at('<circle cx="7" cy="8" r="1"></circle>')).toBe('108,56');
    expect(at('<path d="M-3 4.5L9 9"></path>')).toBe('98,52.5');
    expect(at('<path d="L9 9"></path>')).toBe('101,48');
  });
});

describe('one more or one less', () => {
  it('is told as nothing on the other side, with no word of what is alike before and after it', () => {
    const three = rect(1) + rect(20) + rect(40);
    expect(said(rect(1) + rect(40), three)).toEqual([
      '20,5 “drawing”: the drawing has nothing, the kit gives a rect',
    ]);
    expect(said(three, rect(1) + rect(40))).toEqual([
      '20,5 “drawing”: the drawing has a rect, the kit gives nothing',
    ]);
    expect(said(three, rect(20) + rect(40))).toEqual([
      '1,5 “drawing”: the drawing has a rect, the kit gives nothing',
    ]);
    expect(said(three, rect(1) + rect(20))).toEqual([
      '40,5 “drawing”: the drawing has a rect, the kit gives nothing',
    ]);
    expect(said('', rect(1))).toEqual(['1,5 “drawing”: the drawing has nothing, the kit gives a rect']);
    expect(said(rect(1), '')).toEqual(['1,5 “drawing”: the drawing has a rect, the kit gives nothing']);
    // Twice the same: it is one too many, and told once.
    expect(said(rect(1) + rect(1), rect(1))).toHaveLength(1);
    expect(said(rect(1) + rect(1) + rect(1), rect(1))).toHaveLength(2);
  });
  it('of several that differ between, each is told beside its fellow', () =>
    expect(
      said(rect(1) + text('a') + text('b') + rect(9), rect(1) + text('c') + text('d') + text('e') + rect(9)),
    ).toEqual([
      '1,2 “drawing”: the drawing has “a”, the kit gives “c”',
      '1,2 “drawing”: the drawing has “b”, the kit gives “d”',
      '1,2 “drawing”: the drawing has nothing, the kit gives “e”',
    ]));
});

describe('by groups', () => {
  it('each is compared with its fellow, and says which part it is of', () => {
    const drawn = sheet(
      `${volume(text('a'))}<g id="k-part-tone">${text('b')}</g><g id="k-key">${text('c')}</g>`,
      SIZED,
    );
    const wanted = sheet(
      `${volume(text('x'))}<g id="k-part-tone">${text('y')}</g><g id="k-key">${text('z')}</g>`,
      SIZED,
    );
    expect(compare(drawn, wanted).map(({ part, finding }) => [part, finding.message])).toEqual([
      ['volume', '“part-volume”: the drawing has “a”, the kit gives “x”'],
      ['tone', '“part-tone”: the drawing has “b”, the kit gives “y”'],
      [undefined, '“key”: the drawing has “c”, the kit gives “z”'],
    ]);
  });
  it('what lies in no group is of the sheet', () => {
    const svg = sheet('', SIZED);
    const more = svg.replace('</svg>', `${rect(2)}</svg>`);
    expect(compare(more, svg).map(({ finding }) => finding.message)).toEqual([
      '“the sheet”: the drawing has a rect, the kit gives nothing',
    ]);
  });
  it('a group without a name is part of the one about it', () =>
    expect(said(volume(`<g>${text('a')}</g>`), volume(`<g>${text('b')}</g>`))).toEqual([
      '1,2 “part-volume”: the drawing has “a”, the kit gives “b”',
    ]));
  it('painted in another order they are another picture, where only the words spoken come earlier they are not', () => {
    const [a, b] = [volume(rect(1)), `<g id="k-part-tone">${rect(50)}</g>`];
    expect(said(a + b, b + a)).toEqual([
      '“the order of painting”: the drawing has changed, the kit gives as given',
    ]);
    expect(said(a + b + a, a + a + b)).toHaveLength(1);
    expect(said(`<title>t</title>${a}${b}`, `${a}<title>t</title>${b}`)).toEqual([]);
    // Where something else differs, that is what counts.
    expect(said(a + b, b + a + rect(90))).toHaveLength(1);
  });
  it('the colour codes of a drawing of a step are not compared, as the whole has others; elsewhere they are', () => {
    const codes = (id: string, words: string): string =>
      sheet(`<g id="${id}-colours">${text(words)}</g>`, SIZED, id);
    expect(compare(codes('k-step-2', 'RD'), codes('k-step-2', 'BU'))).toEqual([]);
    expect(compare(codes('k', 'RD'), codes('k', 'BU'))).toHaveLength(1);
    const key = (words: string): string =>
      sheet(`<g id="k-step-2-key">${text(words)}</g>`, SIZED, 'k-step-2');
    expect(compare(key('RD'), key('BU'))).toHaveLength(1);
  });
});

describe('the sheet as a whole', () => {
  const whole = (drawn: string, wanted: string): readonly string[] =>
    compare(drawn, wanted).map(({ finding }) => finding.message);
  const plain = sheet(rect(1), SIZED);
  it('has the inks, the type and the words for a screen reader that it is given', () => {
    const rooted = (more: string): string => sheet(rect(1), `${SIZED} ${more}`);
    expect(whole(rooted('font-size="9"'), plain)[0]).toContain(
      '“the whole sheet”: the drawing has font-size="9"',
    );
    expect(whole(plain, rooted('role="img"'))).toHaveLength(1);
    const grouped = plain.replace('<g ', '<g stroke="#111111" ');
    expect(whole(grouped, plain)[0]).toContain(
      '“the whole drawing”: the drawing has id="k-drawing" stroke="#111111"',
    );
    expect(whole(plain, plain.replace('k-drawing', 'k-other'))).toEqual(
      expect.arrayContaining([expect.stringContaining('the kit gives nothing')]),
    );
  });
  it('is as large as its view box, unless it has a size in millimetres', () => {
    const sized = (size: string): readonly string[] =>
      whole(sheet(rect(1), `viewBox="0 0 400 300" ${size}`), plain);
    expect(sized('width="400" height="300"')).toEqual([]);
    expect(sized('width="401" height="300"')).toEqual([
      '“the size of the sheet”: the drawing has 401 by 300, the kit gives 400 by 300',
    ]);
    expect(sized('width="400" height="299"')).toHaveLength(1);
    expect(sized('')).toEqual([
      '“the size of the sheet”: the drawing has nothing by nothing, the kit gives 400 by 300',
    ]);
    expect(sized('width="200mm" height="150mm"')).toEqual([]);
  });
});
