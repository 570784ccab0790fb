/** Where a text may stand: clear of other texts and lines, whole within what is its own, and covered by nothing. */
import { describe, expect, it } from 'vitest';
import { textFindings } from '../../src/inspect/rules/texts.ts';
import { box, component, disc, part, read, tag, words } from './small.ts';

const found = (markup: string) => textFindings(read(markup));
const said = (markup: string): readonly string[] =>
  found(markup).map(({ rule, message }) => `${rule}: ${message}`);
const rules = (markup: string): readonly string[] => found(markup).map(({ rule }) => rule);

/** The ink of a text of capitals, 10 units high: it stands 7.7 above its line and reaches 0.15 below. */
const [UP, DOWN] = [7.7, 0.15];
const HI = words(50, 50, 'HI');
const inkOf = (markup: string) => {
  const [text] = read(markup).texts;
  if (!text) throw new Error('no text');
  return text.box;
};
const { x: LEFT, width: WIDE } = inkOf(HI);
const RIGHT = LEFT + WIDE;

describe('two texts', () => {
  it('touch where the ink of two letters does, and are told once, the earlier first', () => {
    expect(said(HI + words(50, 50 - UP - DOWN, 'MO'))).toEqual([]);
    expect(said(HI + words(50, 50 - UP - DOWN + 0.1, 'MO'))).toEqual(['text-on-text: “HI” touches “MO”']);
    expect(rules(HI + words(RIGHT, 50, 'MO'))).toEqual([]);
    expect(rules(HI + words(RIGHT - 0.1, 50, 'MO'))).toEqual(['text-on-text']);
    expect(found(HI + words(RIGHT - 0.1, 50, 'MO'))[0]?.where?.x).toBeCloseTo((LEFT + RIGHT) / 2, 1);
    // Three in one place: each with each.
    expect(rules(HI + HI + HI)).toHaveLength(3);
  });
  it('do not where one stands in a blank of the other', () => {
    const gap = words(50, 50, 'A                    B');
    expect(rules(gap + words(70, 50, 'C'))).toEqual([]);
    expect(rules(gap + words(51, 50, 'C'))).toEqual(['text-on-text']);
  });
});

describe('a text and a line', () => {
  const line = (d: string, more = 'stroke-width="2"'): string =>
    `<path d="${d}" fill="none" stroke="#000000" ${more}></path>`;
  it('touch where the stroke reaches its ink', () => {
    expect(rules(HI + line(`M0 ${50 + DOWN + 1}L200 ${50 + DOWN + 1}`))).toEqual([]);
    expect(rules(HI + line(`M0 ${50 + DOWN + 0.9}L200 ${50 + DOWN + 0.9}`))).toEqual(['text-on-line']);
    expect(rules(HI + line(`M0 ${50 - UP - 1}L200 ${50 - UP - 1}`))).toEqual([]);
    expect(rules(HI + line(`M0 ${50 - UP - 0.9}L200 ${50 - UP - 0.9}`))).toEqual(['text-on-line']);
    expect(rules(HI + line(`M${RIGHT + 1.01} 0L${RIGHT + 1.01} 99`))).toEqual([]);
    expect(rules(HI + line(`M${RIGHT + 0.9} 0L${RIGHT + 0.9} 99`))).toEqual(['text-on-line']);
    // Its cap reaches as far as its half width, where it has one.
    expect(rules(HI + line(`M${RIGHT + 0.5} 46L200 46`))).toEqual([]);
    expect(rules(HI + line(`M${RIGHT + 0.5} 46L200 46`, 'stroke-width="2" stroke-linecap="square"'))).toEqual(
      ['text-on-line'],
    );
  });
  it('not in a blank of the text, nor when a ground lies between', () => {
    expect(rules(words(50, 50, 'A                    B') + line('M70 0L70 99'))).toEqual([]);
    const ground = '<rect x="0" y="0" width="200" height="99" fill="#ffffff"></rect>';
    const across = line('M0 46L200 46');
    expect(rules(across + ground + HI)).toEqual([]);
    expect(rules(ground + across + HI)).toEqual(['text-on-line']);
    expect(rules(ground + HI + across)).toEqual(['text-on-line']);
  });
  it('are told once for each text, by what the line is of', () => {
    const across = line('M0 46L200 46') + line('M0 44L200 44');
    expect(said(HI + across)).toEqual(['text-on-line: “HI” touches a line of k-drawing']);
    expect(said(`${HI}<g id="k-joint-7">${across}</g>`)).toEqual([
      'text-on-line: “HI” touches a wire (k-joint-7)',
    ]);
    expect(said(`${HI}<g id="k-key">${across}</g>`)).toEqual(['text-on-line: “HI” touches a line of k-key']);
  });
});

describe('a text and an area', () => {
  const area = (x: number, y: number, width: number, height: number, more = 'fill="#ffffff"'): string =>
    `<rect x="${x}" y="${y}" width="${width}" height="${height}" ${more}></rect>`;
  it('holds it whole or is not touched by it', () => {
    expect(rules(area(40, 30, 60, 30) + HI)).toEqual([]);
    expect(rules(area(RIGHT, 30, 60, 30) + HI)).toEqual([]);
    expect(said(area(RIGHT - 1, 30, 60, 30) + HI)).toEqual([
      'text-on-edge: “HI” extends beyond the edge of a shape of drawing',
    ]);
    expect(rules(area(0, 30, LEFT + 1, 30) + HI)).toEqual(['text-on-edge']);
    expect(rules(area(40, 47, 60, 30) + HI)).toEqual(['text-on-edge']);
  });
  it('its stroke counts, both ways', () => {
    const stroked = 'fill="#ffffff" stroke="#000000" stroke-width="4"';
    // Within, the ink must clear the inner half of the stroke; beside, the outer half.
    expect(rules(area(LEFT - 2, 30, 60, 30, stroked) + HI)).toEqual([]);
    expect(rules(area(LEFT - 1.9, 30, 60, 30, stroked) + HI)).toEqual(['text-on-edge']);
    expect(rules(area(RIGHT + 2.01, 30, 60, 30, stroked) + HI)).toEqual([]);
    expect(rules(area(RIGHT + 1.9, 30, 60, 30, stroked) + HI)).toEqual(['text-on-edge']);
  });
  it('that holds it belongs to the same group, painted before it; or lies under its ground', () => {
    const other = `<g id="k-key">${area(40, 30, 60, 30)}</g>`;
    expect(said(other + HI)).toEqual(['text-misplaced: “HI” is in a shape of key, where it does not belong']);
    expect(said(HI + area(40, 30, 60, 30))).toEqual(['text-covered: “HI” is covered by a shape of drawing']);
    expect(rules(HI + area(40, 30, 60, 30, 'fill="none"'))).toEqual([]);
    expect(rules(other + area(45, 35, 50, 20) + HI)).toEqual([]);
    expect(rules(area(45, 35, 50, 20) + other + HI)).toEqual(['text-misplaced']);
  });
  it('that is paper is no matter', () => {
    const paper = box('sl-paper', 0, 0, 400, 300);
    expect(rules(`<g id="k-sheet">${paper}</g>${HI}`)).toEqual([]);
    expect(rules(`<g id="k-sheet">${box('sl-plate', 0, 0, 400, 300)}</g>${HI}`)).toEqual(['text-misplaced']);
  });
  it('is told by its class and its group, in words', () => {
    const told = (is: string): string =>
      said(`<g id="k-part-tone">${box(is, 0, 40, LEFT + 1, 30)}</g>${HI}`)[0] ?? '';
    expect(told('sl-leg-end')).toContain('the edge of a leg end of part-tone');
    expect(told('sl-chip')).toContain('the edge of a chip of part-tone');
  });
});

describe('a part’s own words', () => {
  it('stand on its plates, its cases or its tags, if it has any', () => {
    const plate = (text: string): string => part('tone', box('sl-plate', 40, 30, 60, 30) + text);
    expect(rules(plate(HI))).toEqual([]);
    expect(said(plate(words(150, 50, 'HI')))).toEqual(['text-outside: “HI” is outside the part tone']);
    expect(rules(part('tone', disc('sl-case', 60, 50, 40) + HI))).toEqual([]);
    expect(rules(part('tone', disc('sl-case', 260, 50, 40) + HI))).toEqual(['text-outside']);
    expect(rules(part('tone', box('sl-plate', 200, 30, 60, 30) + tag(20, 30, '1')))).toEqual([]);
    const [{ where } = {}] = found(plate(words(150, 50, 'HI')));
    expect(where?.y).toBeCloseTo(50 - (UP - DOWN) / 2, 1);
  });
  it('a component’s stand beside it', () => {
    const beside = component('cap', 100, 100).replace('</g>', `${words(100, 150, '22 nF')}</g>`);
    expect(rules(beside)).toEqual([]);
    // One that has a plate as well, on that.
    expect(rules(beside.replace('</g>', `${box('sl-plate', 0, 0, 20, 20)}</g>`))).toEqual(['text-outside']);
  });
});

it('the words of a card stand on the card', () => {
  const card = (markup: string): string =>
    `<g id="k-position-1">${box('sl-card', 40, 30, 60, 30)}${markup}</g>`;
  expect(rules(card(HI))).toEqual([]);
  expect(said(card(words(150, 50, 'HI')))).toEqual(['text-outside: “HI” is outside its card']);
  // Those of the next card are none of its business, nor are those of a panel that is no card.
  expect(rules(card(HI) + words(150, 50, 'HI'))).toEqual([]);
  expect(rules(`<g id="k-key">${box('sl-chip', 40, 30, 60, 30)}${words(150, 50, 'HI')}</g>`)).toEqual([]);
});
