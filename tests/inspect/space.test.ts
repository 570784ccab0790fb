/** What is painted and what touches, on drawings of a few shapes. Caps: SVG 2, 13.5.4, stroke-linecap; from memory. */
import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../src/inspect/drawing.ts';
import { finding, formatFinding } from '../../src/inspect/finding.ts';
import { paint } from '../../src/inspect/paint.ts';
import { pageFindings } from '../../src/inspect/rules/page.ts';
import { groundOf } from '../../src/inspect/rules/texts.ts';
import { wireFindings } from '../../src/inspect/rules/wires.ts';
import { boxOf, inArea, strokeHitsRect, touchesArea } from '../../src/inspect/space.ts';
import { parseXml } from '../../src/inspect/xml.ts';

const box = { x: 0, y: 0, width: 10, height: 10 };
const point = { a: { x: 5, y: 12 }, b: { x: 5, y: 12 } };

it('a stretch without length is painted by its caps alone', () => {
  expect(strokeHitsRect(point, 4, 0, box)).toBe(false);
  expect(strokeHitsRect(point, 4, 4, box)).toBe(true);
});
it('a stretch with length is painted as wide as the stroke', () => {
  const level = { a: { x: 2, y: 12 }, b: { x: 8, y: 12 } };
  expect(strokeHitsRect(level, 4, 0, box)).toBe(true);
  expect(strokeHitsRect(level, 1, 0, box)).toBe(false);
});

it('corners no rounder than the area is small: a pill and a circle are touched where they are', () => {
  const pill = { x: 0, y: 0, width: 40, height: 20, radius: 99 };
  const at = (x: number, y: number) => ({ x, y, width: 1, height: 1 });
  // The corner of its box lies outside its round end, the middle of its side does not.
  expect(touchesArea(pill, at(0.2, 0.2))).toBe(false);
  expect(touchesArea(pill, at(3, 3))).toBe(true);
  expect(touchesArea(pill, at(1.2, 1.2))).toBe(false);
  expect(touchesArea(pill, at(20, 0.2))).toBe(true);
  const upright = { x: 0, y: 0, width: 20, height: 40, radius: 99 };
  expect(touchesArea(upright, at(1.2, 1.2))).toBe(false);
  expect(touchesArea(upright, at(3, 3))).toBe(true);
});

describe('wires near one another', () => {
  const sheet = (first: string, second: string): string =>
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 400"><g id="k-drawing">${[first, second]
      .map(
        (d, i) =>
          `<g id="k-joint-${i + 1}"><path d="${d}" fill="none" stroke="#000000" stroke-width="4"></path></g>`,
      )
      .join('')}</g></svg>`;
  const rules = (first: string, second: string): readonly string[] => {
    const drawing = readDrawing(sheet(first, second));
    if ('rule' in drawing) throw new Error(drawing.message);
    return [...new Set(wireFindings(drawing).map(({ rule }) => rule))].filter(
      (rule) => rule !== 'end-not-on-lug',
    );
  };
  it.each([
    ['level', 'M10 100L200 100', 'M10 109L200 109', 'M10 120L200 120'],
    ['upright', 'M100 10L100 200', 'M109 10L109 200', 'M120 10L120 200'],
  ])('%s: too near by 9 units, and far enough by 20', (_, wire, near, far) => {
    expect(rules(wire, near)).toEqual(['parallel-gap']);
    expect(rules(wire, far)).toEqual([]);
    expect(rules(wire, wire)).toContain('wires-overlap');
    const drawing = readDrawing(sheet(wire, near));
    if ('rule' in drawing) throw new Error(drawing.message);
    const [found] = wireFindings(drawing).filter(({ rule }) => rule === 'parallel-gap');
    expect([found?.where?.x, found?.where?.y].sort()).toEqual([100, 105]);
  });
  it('a wire that ends on another is found, at whichever of its ends', () => {
    for (const wire of ['M50 50L50 100', 'M50 100L50 50', 'M50 100L50 150', 'M20 50L50 50L50 100'])
      expect(rules('M10 100L200 100', wire), wire).toEqual(['wire-on-wire']);
  });
});

it('what reaches over any edge of the page is off it, and what touches the edge is not', () => {
  const sheet = (box: string): readonly string[] => {
    const drawing = readDrawing(
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 300"><g id="k-drawing"><rect ${box} fill="#000000"></rect></g></svg>`,
    );
    if ('rule' in drawing) throw new Error(drawing.message);
    return pageFindings(drawing).map(({ rule }) => rule);
  };
  expect(sheet('x="0" y="0" width="400" height="300"')).toEqual([]);
  for (const box of [
    'x="-1" y="10" width="20" height="20"',
    'x="10" y="-1" width="20" height="20"',
    'x="381" y="10" width="20" height="20"',
    'x="10" y="281" width="20" height="20"',
  ])
    expect(sheet(box), box).toEqual(['off-page']);
});

it('a line without a cap ends where it ends', () => {
  const line = (attributes: string) => {
    const parsed = parseXml(
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M1 1L8 1" fill="none" stroke="#000000" stroke-width="2" ${attributes}></path></svg>`,
    );
    if (!('root' in parsed)) throw new Error('not read');
    return paint(parsed.root).marks.map((mark) => (mark.kind === 'line' ? mark.cap : undefined));
  };
  expect(line('')).toEqual([0]);
  expect(line('stroke-linecap="round"')).toEqual([1]);
  expect(line('stroke-linecap="square"')).toEqual([1]);
});

it('a point half a unit off an area is not in it, unless that much slack is given', () => {
  const area = { x: 10, y: 10, width: 20, height: 10, radius: 0 };
  expect(inArea(area, { x: 10, y: 15 })).toBe(true);
  expect(inArea(area, { x: 9.5, y: 15 })).toBe(false);
  expect(inArea(area, { x: 9.5, y: 15 }, 0.6)).toBe(true);
});

it('a finding says how many there are of what there should be one', () => {
  const body = (count: number) => formatFinding(finding('body', undefined, { part: 'volume', count }));
  expect(body(0)).toMatch(/volume has no body in the drawing$/);
  expect(body(2)).toMatch(/volume has 2 overlapping bodies in the drawing$/);
  const crossing = (open: number) =>
    formatFinding(finding('crossing', undefined, { wire: 'one', other: 'two', open }));
  expect(crossing(0)).toMatch(/one and two cross, but neither line is broken$/);
  expect(crossing(2)).toMatch(/one and two cross, and both lines are broken$/);
});

it('a text stands on an area only where the area holds all of its ink', () => {
  const area = { x: 0, y: 0, width: 40, height: 20, radius: 0 };
  const shape = {
    order: 1,
    fill: '#222222',
    area,
    outer: area,
    half: 0,
    is: [],
    groups: [],
    kind: 'area',
  } as never;
  const box = (x: number) => ({ x, y: 5, width: 10, height: 8 });
  const text = (...ink: readonly ReturnType<typeof box>[]) =>
    ({ order: 5, box: { x: 5, y: 5, width: 60, height: 8 }, ink, groups: [] }) as never;
  expect(groundOf(text(box(5), box(20)), [shape])).toBe(shape);
  expect(groundOf(text(box(5), box(50)), [shape])).toBeUndefined();
});

it('a group that is moved takes along what is in it, across and down', () => {
  const at = (transform: string) => {
    const parsed = parseXml(
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 99 99"><g transform="${transform}"><rect x="1" y="2" width="5" height="6" fill="#000000"></rect></g></svg>`,
    );
    if (!('root' in parsed)) throw new Error('not read');
    return paint(parsed.root).marks.map((mark) => (mark.kind === 'area' ? [mark.area.x, mark.area.y] : []));
  };
  expect(at('translate(10 20)')).toEqual([[11, 22]]);
  expect(at('translate(10)')).toEqual([[11, 2]]);
});

it('a finding is printed with its place, or with a dash where it concerns the whole', () => {
  const found = finding('diagonal-wire', { x: 12.5, y: 40 }, { wire: 'a wire' });
  expect(formatFinding(found)).toMatch(/^12\.5,40 {2}diagonal-wire {2}a wire/);
  expect(formatFinding(finding('diagonal-wire', undefined, { wire: 'a wire' }))).toMatch(
    /^- {2}diagonal-wire/,
  );
});

it('the box of a path with very many points', () => {
  const points = Array.from({ length: 300_000 }, (_, i) => ({ x: (i * 7) % 1000, y: (i * 3) % 500 }));
  expect(boxOf(points)).toEqual({ x: 0, y: 0, width: 999, height: 499 });
});
