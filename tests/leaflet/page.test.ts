/** The leaflet as a page of the web, and as sheets to fold. */
import { createHash } from 'node:crypto';
import { DOMParser } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/annotate/steps.ts';
import { sidesOf } from '../../src/leaflet/booklet-template.ts';
import { leafletContent } from '../../src/publish/leaflet-plan.ts';
import { infoOf, runOn, squeezed } from '../tools/pdf-tools.ts';
import { htmlOf, PLAIN, pdfOf, placed, preparedOf, relabelled } from './make.ts';

/** Read as XML, which is stricter: what HTML leaves open or unclosed is closed for it. */
const readPage = (html: string) =>
  new DOMParser({
    onError: (level, message) => {
      if (level !== 'warning') throw new Error(message);
    },
  }).parseFromString(
    html.replace(/<(meta|br|img)([^>]*)>/g, '<$1$2/>').replace(/^<!doctype html>\s*/, ''),
    'text/xml',
  );

const textIn = (html: string): string =>
  squeezed(readPage(html).getElementsByTagName('body')[0]?.textContent ?? '');

describe('the page', () => {
  it('has each joint once, and says its language', async () => {
    const prepared = await preparedOf('samples/kestrel-hss.yaml', 'de');
    const html = await htmlOf(prepared);
    expect(html).toMatch(/^<!doctype html>\n<html lang="de">/);
    const text = textIn(html);
    for (const line of stepsOf(prepared.circuit).flatMap(({ lines }) => lines))
      expect(text).toContain(squeezed(line));
  });

  it('runs nothing and fetches nothing, and its policy says so', async () => {
    const html = await htmlOf(await preparedOf('samples/kestrel-hss.yaml'), { plot: true });
    expect(html).not.toMatch(/<script|<link|<iframe|\son\w+=|javascript:|@import/i);
    expect(
      [...html.matchAll(/(?:href|src)="([^"]*)"/g)].filter(([, to = '']) => !/^(#|data:)/.test(to)),
    ).toEqual([]);
    expect([...html.matchAll(/url\(([^)]*)\)/g)].filter(([, to = '']) => !/^(#|data:)/.test(to))).toEqual([]);
    const policy = /Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1] ?? '';
    const style = /<style>(.*?)<\/style>/s.exec(html)?.[1] ?? '';
    // CSP level 3, 2.3.1: the hash of the element's own text.
    expect(policy).toContain(`'sha256-${createHash('sha256').update(style).digest('base64')}'`);
    expect(policy).toContain("default-src 'none'");
    expect(html).not.toContain(' style="');
  });

  it('has every id once', async () => {
    const html = await htmlOf(await preparedOf('samples/kestrel-hss.yaml'), { plot: true });
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
    expect(ids.length).toBeGreaterThan(50);
  });

  it('takes words as words', async () => {
    const { circuit } = await preparedOf('samples/heron-ss.yaml');
    const words = '"><script>alert(1)</script>&amp;';
    const kit = relabelled(circuit.kit, words, (name) => `<b>${name.slice(0, 8)}`);
    const html = await htmlOf(await placed({ ...kit, about: words }));
    expect(html).not.toContain('<script');
    expect(html).not.toContain('<b>');
    expect(textIn(html)).toContain(words);
  });

  it('would be refused by this reader if an element were left open', () =>
    expect(() => readPage('<html><body><p>x</body></html>')).toThrow());
});

describe('a booklet', () => {
  it('lays four pages on each sheet so that they follow one another once it is folded', () => {
    // Two sheets one in the other, numbered by hand.
    expect(sidesOf(8)).toEqual([
      [8, 1],
      [2, 7],
      [6, 3],
      [4, 5],
    ]);
    expect(sidesOf(5)).toEqual([
      [null, 1],
      [2, null],
      [null, 3],
      [4, 5],
    ]);
  });

  it('has the pages of a leaflet of half the paper, two on each side', async () => {
    const prepared = await preparedOf('samples/wren-hs.yaml');
    const booklet = await leafletContent(prepared, 'booklet', { ...PLAIN, booklet: true });
    if (typeof booklet === 'string') throw new Error('a PDF is bytes');
    expect(runOn(booklet, 'qpdf', '--check', '{}')).toContain('No syntax or stream');
    const info = infoOf(booklet);
    // A4 across (ISO 216), points.
    expect(info.get('Page size')).toMatch(/^841\.89 x 595\.\d+ pts/);
    const sides = Number(info.get('Pages'));
    const all = new Set<number>();
    for (let side = 1; side <= sides; side++) {
      const text = squeezed(
        runOn(booklet, 'pdftotext', '-raw', '-f', String(side), '-l', String(side), '{}', '-'),
      );
      const numbers = [...text.matchAll(/(\d+) \/ (\d+)(?= |$)/g)].map(([, number]) => Number(number));
      for (const number of numbers) all.add(number);
      if (side === 1) expect(numbers).toContain(1);
      if (side === 2) expect(numbers).toContain(2);
    }
    const pages = Math.max(...all);
    expect(all.size).toBe(pages);
    expect(sides).toBe(Math.ceil(pages / 4) * 2);
  });

  it('gives the same bytes', async () => {
    const prepared = await preparedOf('samples/wren-hs.yaml');
    const made = async () =>
      Buffer.from(await leafletContent(prepared, 'booklet', { ...PLAIN, booklet: true }));
    expect((await made()).equals(await made())).toBe(true);
    expect((await pdfOf(prepared)).length).toBeGreaterThan(0);
  });
});
