/** Files that are not our drawings get a plain answer, and nothing makes the reading throw. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inspect } from '../../src/inspect/index.ts';
import { runsOf } from '../../src/inspect/path.ts';
import { parseXml } from '../../src/inspect/xml.ts';

const svg = readFileSync('out/heron-ss.svg', 'utf8');
const error = (text: string): string => {
  const parsed = parseXml(text);
  return 'error' in parsed ? parsed.error : 'none';
};

it.each([
  ['', 'it is empty'],
  ['  \n', 'it is empty'],
  ['\u0000\u0001PNG', 'it is not text'],
  ['plain words', 'it is not well-formed XML: '],
  ['<svg>\n<g></svg>', 'it is not well-formed XML: unexpected close tag., at line 2, column 9'],
  ['<svg><g>', 'it is not well-formed XML: unclosed tag: g'],
  ['<svg/><svg/>', 'it is not well-formed XML: '],
  ['<svg a="1" a="2"/>', 'it is not well-formed XML: duplicate attribute: a'],
  ['<svg a=1/>', 'it is not well-formed XML: '],
  ['<!DOCTYPE svg [<!ENTITY a "b">]><svg/>', 'it has a document type, at line 1'],
  ['<svg><![CDATA[a]]></svg>', 'it has CDATA, at line 1'],
  ['<svg><?run me?></svg>', 'it has a processing instruction, at line 1'],
  ['<?xml version="1.0" encoding="latin1"?><svg/>', 'its encoding is latin1'],
  ['<svg>&boom;</svg>', 'it is not well-formed XML: undefined entity'],
  ['<svg>a & b</svg>', 'it is not well-formed XML: '],
  ['<!-- nothing -->', 'it is not well-formed XML: '],
  ['<g>'.repeat(50), 'elements nest too deep'],
])('%j: %s', (text, words) => expect(error(text)).toContain(words));

it('reads what it may', () => {
  expect(
    parseXml(`\uFEFF<?xml version="1.0"?>\n<!-- a <b> --><a b='1 &gt; "0"'>x&#233;&#xe9;<c/>y</a>\n`),
  ).toEqual({
    root: {
      name: 'a',
      attributes: new Map([['b', '1 > "0"']]),
      children: [{ name: 'c', attributes: new Map(), children: [], text: '' }],
      text: 'xééy',
    },
  });
});

it.each([
  ['<html></html>', 'its root is <html>, not an SVG drawing'],
  ['<svg></svg>', 'its root is <svg>, not an SVG drawing'],
  ['<svg xmlns="http://www.w3.org/2000/svg"><rect/></svg>', 'it was not drawn by Solderleaf'],
  [svg.replace(/viewBox="[^"]*"/, 'viewBox="0 0 wide 3"'), 'its viewBox is not four numbers'],
  [svg.replace(/viewBox="[^"]*"/, ''), 'its viewBox is not four numbers'],
])('refuses what is not our drawing: %.40s', (text, words) => {
  const [only, ...others] = inspect(text);
  expect(others).toEqual([]);
  expect(only?.rule).toBe('unreadable');
  expect(only?.message).toContain(words);
});

describe('whatever it is given', () => {
  const sound = (text: string): boolean =>
    inspect(text).every(({ message }) => !/undefined|NaN/.test(message));
  it('any text gives findings in words and never throws', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 80 }),
        (text) => inspect(text).length > 0 && sound(text),
      ),
      { seed: 60757, numRuns: 300 },
    );
  });
  it('nor does a drawing that is cut, doubled or scrambled in places', () => {
    const place = fc.nat(svg.length);
    const mangled = fc.tuple(
      place,
      fc.nat(300),
      fc.constantFrom('', '"', '<', '0', '-', 'zz', '<g>', '</g>', '1e999', ' M'),
    );
    fc.assert(
      fc.property(mangled, ([at, length, by]) => sound(svg.slice(0, at) + by + svg.slice(at + length))),
      { seed: 60757, numRuns: 60 },
    );
  });
});

describe('paths', () => {
  it('of arcs stay on their circle, the long way round and the short', () => {
    for (const [large, sweep] of [
      [0, 0],
      [0, 1],
      [1, 0],
      [1, 1],
    ]) {
      const [run = []] = runsOf(`M10 0A10 10 0 ${large} ${sweep} 0 10`) ?? [];
      const { x = 0, y = 0 } = run[Math.floor(run.length / 2)] ?? {};
      // The two circles of radius 10 through both points: about (0, 0) and about (10, 10).
      const centre = large === sweep ? { x: 10, y: 10 } : { x: 0, y: 0 };
      const [c, far] = [large ? centre : { x: 10 - centre.x, y: 10 - centre.y }, large === 1];
      const on = [
        { x: 0, y: 0 },
        { x: 10, y: 10 },
      ].filter((o) => run.every((p) => Math.abs(Math.hypot(p.x - o.x, p.y - o.y) - 10) < 0.01));
      expect(on, `${large} ${sweep}`).toHaveLength(1);
      expect(Math.hypot(x - 5, y - 5) > 10, 'the long way goes far from the chord').toBe(far);
      expect(c).toBeDefined();
    }
  });
  it('of other commands are not guessed at', () => {
    for (const d of ['', 'L1 1', 'M0 0l1 1', 'M0 0L1', 'M0 0A4 5 0 0 0 9 9', 'M0 0T9 9', 'M0 0L1 1 2 2'])
      expect(runsOf(d), d).toBeUndefined();
  });
});
