/** A finding's words: on one line, as long as can be read, with figures as they are measured. */
import { expect, it } from 'vitest';
import { finding, formatFinding } from '../../src/inspect/finding.ts';
import { parseXml } from '../../src/inspect/xml.ts';

const touching = (text: string): string => finding('text-on-text', undefined, { text, other: 'b' }).message;

it('quotes sixty characters of a text whole, and cuts a longer one there', () => {
  const sixty = 'x'.repeat(60);
  expect(touching(sixty)).toBe(`“${sixty}” touches “b”`);
  expect(touching(`${sixty}y`)).toBe(`“${sixty}…” touches “b”`);
  expect(touching('x'.repeat(500))).toBe(`“${sixty}…” touches “b”`);
  expect(touching('')).toBe('“” touches “b”');
});
it('quotes nothing that would break the line or that a terminal would obey', () =>
  expect(touching('a\nb\u001b[31mc\u2028d')).toBe('“a b [31mc d” touches “b”'));
it('cuts what differs after 120 characters', () => {
  const { message } = finding('differs-from-kit', undefined, {
    what: 'a',
    drawn: 'd'.repeat(200),
    described: 'k'.repeat(200),
  });
  expect(message).toBe(`“a”: the drawing has ${'d'.repeat(120)}, the kit gives ${'k'.repeat(120)}`);
});
it('gives measures and places to a hundredth', () => {
  const one = finding(
    'parallel-gap',
    { x: 1.2345, y: -5.678 },
    { wire: 'a', other: 'b', gap: 9.8765, least: 10 },
  );
  expect(formatFinding(one)).toBe(
    '1.23,-5.68  parallel-gap  a and b run 9.88 units apart; at least 10 is needed',
  );
  expect(finding('small-type', undefined, { text: 'a', size: 1.2345, least: 2 }).message).toContain(
    'is 1.23 mm high',
  );
  const contrast = { text: 'a', ink: '#777777', ground: '#ffffff', ratio: 4.4781, least: 4.5 };
  expect(finding('contrast', undefined, contrast).message).toContain('a contrast of 4.48:1; at least 4.5:1');
});
it('weighs what could mislead more than what is only not neat', () => {
  expect(finding('joint-missing', undefined, { joint: 'a > b' }).weight).toBe('misleading');
  expect(finding('diagonal-wire', undefined, { wire: 'a' }).weight).toBe('untidy');
});

it('elements may nest 32 deep, and not 33', () => {
  const nested = (depth: number): string => '<g>'.repeat(depth) + '</g>'.repeat(depth);
  expect(parseXml(nested(32))).toHaveProperty('root');
  expect(parseXml(nested(33))).toMatchObject({
    error: expect.stringContaining('elements nest too deep for a drawing'),
  });
  // Beside one another they may be as many as there are.
  expect(parseXml(`<g>${'<a></a>'.repeat(500)}</g>`)).toHaveProperty('root');
});
it('of several errors in XML the first is told, with its place', () =>
  expect(parseXml('<svg>\n<!DOCTYPE a>\n<![CDATA[x]]></svg>')).toMatchObject({
    error: expect.stringMatching(/, at line [12], column \d+$/),
  }));
