/** What is read of a drawing: its page, parts with their lugs, wires with their ends, colour codes with their wires. */
import { describe, expect, it } from 'vitest';
import { lugText, readDrawing, wireText } from '../../src/inspect/drawing.ts';
import { box, component, disc, part, read, sheet, tag, wire, words } from './small.ts';

const refused = (svg: string): string => {
  const drawing = readDrawing(svg);
  return 'rule' in drawing ? drawing.message : 'read';
};

describe('the page', () => {
  it('is the view box, wherever that begins and however it is spaced', () => {
    expect(read('', 'viewBox="0 0 400 300"').page).toEqual({ x: 0, y: 0, width: 400, height: 300 });
    expect(read('', 'viewBox=" -10,-20  40.5, 30 "').page).toEqual({
      x: -10,
      y: -20,
      width: 40.5,
      height: 30,
    });
  });
  it.each([
    '',
    '0 0 400',
    '0 0 wide 300',
    '0 0 0 300',
    '0 0 400 0',
    '0 0 -400 300',
    '0 0 400 -300',
    'a 0 9 9',
    '0 b 9 9',
    '0 0 9 1e999',
  ])('of %j is none', (viewBox) =>
    expect(refused(sheet('', `viewBox="${viewBox}"`))).toContain('its viewBox is not four numbers'),
  );
  it('needs the element, its namespace, and a drawing in it', () => {
    expect(refused(sheet(''))).toBe('read');
    expect(refused(sheet('').replace(/<(\/?)svg/g, '<$1svgs'))).toContain('its root is <svgs>');
    expect(refused(sheet('').replace('2000', '2001'))).toContain('not an SVG drawing');
    expect(refused(sheet('').replace('k-drawing', 'drawing'))).toContain('not drawn by Solderleaf');
  });
  it('of a size in millimetres has the smaller of the two scales, as the picture is fitted in whole', () => {
    const scale = (size: string): number | undefined => read('', `viewBox="0 0 400 300" ${size}`).scale;
    expect(scale('width="200mm" height="300mm"')).toBe(0.5);
    expect(scale('width="400mm" height="75mm"')).toBe(0.25);
    expect(read('', 'viewBox="0 0 400 300" width="200mm" height="150mm"').millimetres).toEqual({
      width: 200,
      height: 150,
    });
    expect(scale('width="400" height="300"')).toBeUndefined();
    expect(scale('')).toBeUndefined();
    expect(scale('width="0mm" height="0mm"')).toBeUndefined();
    expect(read('', 'viewBox="0 0 400 300" width="400" height="300"').millimetres).toBeUndefined();
  });
  it('says how far the drawn area is moved on it', () => {
    const moved = (transform: string) => {
      const drawing = readDrawing(sheet('').replace('<g ', `<g transform="${transform}" `));
      return 'rule' in drawing ? undefined : drawing.offset;
    };
    expect(moved('translate(12.5 -8)')).toEqual({ x: 12.5, y: -8 });
    expect(read('').offset).toEqual({ x: 0, y: 0 });
  });
  it('a drawing after another group on the sheet is found by its id', () => {
    const svg = sheet('').replace(
      '<g ',
      '<g id="k-head" transform="translate(1 1)"></g><g transform="translate(5 6)" ',
    );
    const drawing = readDrawing(svg);
    expect('rule' in drawing ? drawing.message : [drawing.id, drawing.offset]).toEqual(['k', { x: 5, y: 6 }]);
  });
});

describe('parts', () => {
  const drawing = read(
    part('pot', disc('sl-case', 50, 50, 30) + tag(20, 90, '1') + tag(50, 90, '2') + words(50, 50, 'Tone')) +
      component('cap', 200, 50) +
      part('jack', box('sl-plate', 200, 100, 60, 60) + tag(210, 110, 'tip')) +
      words(5, 290, 'of no part'),
  );
  it('each has the lugs that are drawn in it: tags by the words in them, cases, and ends of legs', () => {
    expect(drawing.parts.map(({ name }) => name)).toEqual(['pot', 'cap', 'jack']);
    expect(
      drawing.parts.map(({ lugs }) => lugs.map((lug) => `${lug.is} ${lug.name ?? '-'} ${lug.part}`)),
    ).toEqual([['surface - pot', 'tag 1 pot', 'tag 2 pot'], ['leg - cap', 'leg - cap'], ['tag tip jack']]);
    expect(drawing.parts[2]?.lugs[0]?.area).toMatchObject({ x: 210, y: 110, width: 20, height: 12 });
  });
  it('its bodies are its plates, cases and component bodies; its texts are those within its group', () => {
    expect(drawing.parts.map(({ bodies }) => bodies.map(({ is }) => is.join()))).toEqual([
      ['sl-case'],
      ['sl-body'],
      ['sl-plate'],
    ]);
    expect(drawing.parts.map(({ texts }) => texts.map((text) => text.words))).toEqual([
      ['1', '2', 'Tone'],
      [],
      ['tip'],
    ]);
    expect(drawing.texts).toHaveLength(5);
    expect(drawing.marks).toHaveLength(drawing.shapes.length + drawing.texts.length);
  });
  it('a tag with two words in it says both, one with none is named by nothing', () => {
    const { parts } = read(
      part(
        'a',
        `${box('sl-tag', 0, 0, 90, 20)}${words(5, 14, 'north')}${words(50, 14, 'start')}${box('sl-tag', 0, 50, 20, 20)}`,
      ),
    );
    expect(parts[0]?.lugs.map(({ name }) => name)).toEqual(['north start', '']);
  });
});

describe('wires', () => {
  it('end on the lug they lie on, in whichever order, or on none', () => {
    const { wires } = read(
      part('jack', tag(0, 0, 'tip') + tag(100, 0, 'sleeve')) +
        wire(1, 'M10 6L110 6') +
        wire(2, 'M110 6L10 6') +
        wire(3, 'M10 6L10 40') +
        wire(4, 'M20 6L100 6') +
        wire(5, 'M20.02 6L99.98 6'),
    );
    expect(wires.map(wireText)).toEqual([
      'the wire from jack.tip to jack.sleeve',
      'the wire from jack.sleeve to jack.tip',
      'the wire from jack.tip to nowhere',
      'the wire from jack.tip to jack.sleeve',
      'the wire from nowhere to nowhere',
    ]);
    expect(wires.map(({ id }) => id)).toEqual([1, 2, 3, 4, 5].map((n) => `k-joint-${n}`));
  });
  it('on a tag by a case end on the tag; on two tags at once they end on neither', () => {
    const pot = part('pot', disc('sl-case', 50, 50, 40) + tag(40, 80, '2') + tag(55, 80, '3'));
    const ends = (d: string): string =>
      wireText(read(pot + wire(1, d)).wires[0] ?? { ends: [undefined, undefined] });
    expect(ends('M45 85L45 200')).toContain('from pot.2 ');
    expect(ends('M50 60L45 200')).toContain('from pot.case ');
    expect(ends('M57 85L57 200')).toContain('from nowhere ');
  });
  it('a leg is called a leg, having no name', () => {
    const { wires } = read(component('cap', 50, 50) + wire(1, 'M50 50L50 90L130 90L130 50'));
    expect(wires.map(wireText)).toEqual(['the wire from cap.leg to cap.leg']);
    expect(lugText(undefined)).toBe('nowhere');
  });
  it('drawn with several strokes is as thick as the thickest, and moved as its group is', () => {
    const strokes = [8, 4, 2]
      .map((width) => `<path d="M1 2L9 2" fill="none" stroke="#000000" stroke-width="${width}"></path>`)
      .join('');
    const { wires, findings } = read(`<g transform="translate(100 50)"><g id="k-joint-1">${strokes}</g></g>`);
    expect(findings).toEqual([]);
    expect(wires).toHaveLength(1);
    expect(wires[0]).toMatchObject({
      half: 4,
      points: [
        { x: 101, y: 52 },
        { x: 109, y: 52 },
      ],
      stretches: [{ a: { x: 101, y: 52 }, b: { x: 109, y: 52 } }],
    });
  });
  it('whose openings are moved with it', () =>
    expect(
      read(`<g transform="translate(100 50)">${wire(1, 'M0 0L20 0M32 0L90 0')}</g>`).wires[0]?.openings,
    ).toEqual([{ x: 126, y: 50 }]));
  it('is broken when its strokes are not one on another, or it is not made as wires are', () => {
    const broken = (markup: string): readonly string[] => read(markup).findings.map(({ rule }) => rule);
    const two = (second: string): string =>
      `<g id="k-joint-1"><path d="M1 2L90 2" stroke="#000000"></path><path ${second} stroke="#000000"></path></g>`;
    expect(broken(two('d="M1 2L90 2"'))).toEqual([]);
    expect(broken(two('d="M1 2L91 2"'))).toEqual(['broken']);
    expect(broken(two('d="M1 2L90 2" transform="translate(1 0)"'))).toEqual(['broken']);
    expect(broken(two('d="M1 2L90 2" transform="translate(0 1)"'))).toEqual(['broken']);
    expect(broken(wire(1, 'M1 2L90 2'))).toEqual([]);
    expect(broken(wire(1, 'M1 2H90'))).toEqual(['broken']);
  });
  it('lines elsewhere are none', () => {
    const { wires, lines } = read('<g id="k-key"><path d="M1 2L90 2" stroke="#000000"></path></g>');
    expect([wires.length, lines.length]).toEqual([0, 1]);
  });
});

describe('colour codes', () => {
  const chip = (x: number, y: number, code: string): string =>
    `${box('sl-chip', x, y, 20, 10)}${words(x + 2, y + 8, code)}`;
  const inColours = (markup: string): string => `<g id="k-colours">${markup}</g>`;
  it('are the chips among the colours, each with its words; the key’s own chips are not', () => {
    const { chips } = read(`${inColours(chip(50, 50, 'RD'))}<g id="k-key">${chip(200, 50, 'BU')}</g>`);
    expect(chips.map(({ code, at }) => ({ code, at }))).toEqual([{ code: 'RD', at: { x: 60, y: 55 } }]);
  });
  it('one with a leader speaks of where the leader begins, not of where it lies; one further off has none', () => {
    const leader = (x: number, y: number): string => `<path d="M60 90L${x} ${y}" stroke="#000000"></path>`;
    const at = (markup: string) => read(inColours(markup)).chips[0]?.at;
    expect(at(leader(60, 55) + chip(50, 50, 'RD'))).toEqual({ x: 60, y: 90 });
    expect(at(leader(60.5, 55.5) + chip(50, 50, 'RD'))).toEqual({ x: 60, y: 90 });
    expect(at(leader(61.5, 55) + chip(50, 50, 'RD'))).toEqual({ x: 60, y: 55 });
    expect(at(leader(60, 56.5) + chip(50, 50, 'RD'))).toEqual({ x: 60, y: 55 });
    // A line of another group that happens to end there is no leader.
    const stray = `<g id="k-key">${leader(60, 55)}</g>`;
    expect(read(stray + inColours(chip(50, 50, 'RD'))).chips[0]?.at).toEqual({ x: 60, y: 55 });
  });
});
