/** How a leaflet fills its pages: contents that are right, the key beside the drawing, steps that are whole, no page for nothing. Read by poppler's tools. */
import { beforeAll, describe, expect, it } from 'vitest';
import { stepTests } from '../../src/annotate/step-tests.ts';
import { stepsOf } from '../../src/annotate/steps.ts';
import type { Language } from '../../src/messages/language.ts';
import { sayIn } from '../../src/messages/say.ts';
import type { LeafletWanted } from '../../src/publish/leaflet-plan.ts';
import { runOn, squeezed } from '../tools/pdf-tools.ts';
import { htmlOf, pdfOf, preparedOf } from './make.ts';

/** The text of each page, without its running title and its number. */
const pagesOf = (pdf: Uint8Array): readonly string[] =>
  runOn(pdf, 'pdftotext', '-raw', '{}', '-')
    .split('\f')
    .slice(0, -1)
    .map((page) => squeezed(page));

interface Line {
  readonly page: number;
  readonly top: number;
  readonly bottom: number;
  readonly words: string;
}

/** Every line of text with its place, points from the page's upper edge, in the order in which they were set. */
function linesOf(pdf: Uint8Array): readonly Line[] {
  let page = 0;
  return runOn(pdf, 'pdftotext', '-bbox-layout', '{}', '-')
    .split('\n')
    .reduce<Line[]>((lines, row) => {
      if (/<page /.test(row)) page += 1;
      const [, top, bottom] = /<line .*yMin="([\d.]+)" .*yMax="([\d.]+)"/.exec(row) ?? [];
      if (top !== undefined && bottom !== undefined)
        lines.push({ page, top: Number(top), bottom: Number(bottom), words: '' });
      const [, word] = /<word [^>]*>([^<]*)</.exec(row) ?? [];
      const last = lines.at(-1);
      if (word !== undefined && last)
        lines[lines.length - 1] = { ...last, words: squeezed(`${last.words} ${word}`) };
      return lines;
    }, []);
}

/** Papers and languages by turns: each leaflet takes seconds. The other language is that of the page of the web. */
const told: readonly (readonly [string, Language, Partial<LeafletWanted>])[] = [
  ['kestrel-hss.yaml', 'en', { page: 'a5' }],
  ['osprey-hsh.yaml', 'de', { page: 'a4' }],
  ['plover-sss.yaml', 'es', { page: 'a5' }],
];
/** Of A4 and A5 (ISO 216) inside the margins, points. */
const INNER = { a4: ((297 - 2 * 16) / 25.4) * 72, a5: ((210 - 2 * 12) / 25.4) * 72 };

/** A picture may reach so far below the last of the words beside it, points. */
const BESIDE = 52;

/** Of the height of pages, the share that words reach down to, on average. */
const FILLED = 0.81;

/** Tests that a page has no room for below their step; of A5 they are most. */
const AWAY: Readonly<Record<string, number>> = {
  'kestrel-hss.yaml': 5,
  'osprey-hsh.yaml': 3,
  'plover-sss.yaml': 8,
};

describe.each(told)('%s in %s on $page', (name, language: Language, wanted) => {
  const say = sayIn(language);
  let pdf: Uint8Array;
  let pages: readonly string[];
  let headings: readonly string[];
  let steps: ReturnType<typeof stepsOf>;
  beforeAll(async () => {
    const prepared = await preparedOf(`samples/${name}`, language);
    steps = stepsOf(prepared.circuit);
    headings = steps.map(({ number, title }) => squeezed(say('leaflet.step', { number, title })));
    pdf = await pdfOf(prepared, wanted);
    pages = pagesOf(pdf);
  });
  /** Of a heading, from 1: the last page that has it, as the contents stand in front. */
  const pageOf = (heading: string): number =>
    pages.findLastIndex((text) => text.includes(squeezed(heading))) + 1;

  it('lists every step, and all else, in the contents with its page', () => {
    // The contents begin on the first page and may run on.
    const contents = squeezed(pages.slice(0, 2).join(' ')).replace(/[\s.\u2060]+/g, ' ');
    for (const heading of [
      ...headings,
      ...(['tools', 'steps', 'faults', 'notes'] as const).map((key) => say(`leaflet.${key}`)),
    ]) {
      // A word of a heading may stand in its text too, on a later page.
      const page = linesOf(pdf).findLast(({ words }) => words === squeezed(heading))?.page ?? pageOf(heading);
      expect(page).toBeGreaterThan(1);
      expect(contents).toContain(`${squeezed(heading)} ${page}`);
    }
  });

  it('has the key once, on the page of the drawing or the next', () => {
    const key = squeezed(say('lines.crossing'));
    const on = pages.flatMap((text, i) => (text.includes(key) ? [i + 1] : []));
    const drawing =
      pages.findIndex((text, i) => i > 0 && text.includes(squeezed(say('leaflet.drawing')))) + 1;
    expect(drawing).toBeGreaterThan(1);
    expect(on).toHaveLength(1);
    expect([drawing, drawing + 1]).toContain(on[0]);
  });

  it('divides no step that one page has room for, and keeps what no test proves with its last test', async () => {
    const lines = linesOf(pdf);
    const inner = INNER[wanted.page === 'a5' ? 'a5' : 'a4'];
    const begins = headings.map((heading) => lines.findLastIndex(({ words }) => words === heading));
    expect(begins.every((at) => at > 0)).toBe(true);
    const { circuit } = await preparedOf(`samples/${name}`, language);
    stepTests(circuit).forEach(({ tests, byEye }, i) => {
      const last = [byEye, tests.at(-1)?.wrong.at(-1)].find((words) => words !== undefined);
      if (last === undefined) return;
      const begin = pageOf(headings[i] ?? '');
      const ends = pages.flatMap((text, k) => (text.includes(squeezed(last)) ? [k + 1] : []));
      const end = ends.find((page) => page >= begin) ?? 0;
      expect(end).toBeGreaterThanOrEqual(begin);
      if (end > begin) {
        // From the heading to the foot of its page, and from the head of the next one to the last word: more than a page.
        const top = lines[begins[i] ?? 0]?.top ?? 0;
        const end0 = lines.filter(({ page, words }) => page === end && squeezed(last).endsWith(words)).at(-1);
        const foot = lines.filter(
          ({ page, words }) => page === end && words !== '' && !/^\d+ \/ \d+$/.test(words),
        );
        const bottom = end0?.bottom ?? foot.at(-1)?.bottom ?? 0;
        const height = wanted.page === 'a5' ? 595.28 : 841.89;
        const margin = (height - inner) / 2;
        expect([headings[i], height - margin - top + bottom - margin + (end - begin - 1) * inner]).toEqual([
          headings[i],
          expect.toSatisfy((sum: number) => sum + BESIDE > inner),
        ]);
      }
      const reading = tests.at(-1)?.expected;
      if (byEye === undefined || reading === undefined) return;
      const both = pages.filter((text) => text.includes(squeezed(byEye)));
      expect(both).toHaveLength(1);
      expect(both[0]).toContain(squeezed(say('leaflet.reads', { reading })));
    });
  });

  it('says above tests whose step they are where they are not on its page', async () => {
    const { circuit } = await preparedOf(`samples/${name}`, language);
    const all = stepTests(circuit).flatMap(({ step, tests }) =>
      tests.map(({ fromName, toName }, i) => ({
        step,
        fromName,
        toName,
        number: `${step}.${i + 1}`,
        count: tests.length,
      })),
    );
    expect(all.length).toBeGreaterThan(5);
    const away = all.filter(({ step, number, fromName, toName, count }) => {
      const probes = say('leaflet.probes-at', { from: fromName, to: toName });
      const words = squeezed(say('leaflet.test-number', { number, probes }));
      const on = pages.flatMap((text, i) => (text.includes(words) ? [i + 1] : []));
      expect([number, on]).toEqual([number, [expect.any(Number)]]);
      if (on[0] === pageOf(headings[step - 1] ?? '')) return false;
      const named = squeezed(say('leaflet.tests-after', { number: step, count }));
      expect([number, pages[(on[0] ?? 0) - 1]]).toEqual([number, expect.stringContaining(named)]);
      return true;
    });
    expect(away.length).toBeLessThanOrEqual(AWAY[name] ?? 0);
  });

  it('leaves little of its pages empty', () => {
    const lines = linesOf(pdf);
    const inner = INNER[wanted.page === 'a5' ? 'a5' : 'a4'];
    const margin = ((wanted.page === 'a5' ? 595.28 : 841.89) - inner) / 2;
    // Without the page of the drawing, which may be turned, and that of the notes, which has lines.
    const drawing = pages.findIndex((text, i) => i > 0 && text.includes(squeezed(say('leaflet.drawing'))));
    const filled = pages.flatMap((_, i) => {
      if (i === drawing || i + 1 === pages.length) return [];
      const own = lines.filter(({ page, words }) => page === i + 1 && !/^\d+ \/ \d+$/.test(words));
      return [(Math.max(...own.map(({ bottom }) => bottom)) - margin) / inner];
    });
    const mean = filled.reduce((sum, share) => sum + share, 0) / filled.length;
    expect(mean).toBeGreaterThan(FILLED);
  });

  it('says no caution twice, and has no page with next to nothing on it', () => {
    const all = pages.join(' ');
    expect(all.split(squeezed(say('caution.rules')))).toHaveLength(2);
    pages.forEach((text, i) => {
      // The running title, the revision and the number come to less; the page of notes has lines to write on.
      if (i + 1 !== pageOf(say('leaflet.notes')))
        expect([i + 1, text.length]).toEqual([i + 1, expect.toSatisfy((n: number) => n > 100)]);
    });
  });

  it('takes no more pages than steps and what comes before and after them need', () => {
    const around = wanted.page === 'a5' ? 16 : 10;
    expect(pages.length).toBeLessThanOrEqual(steps.length + around);
  });
});

describe('other shapes of paper', () => {
  it.each([{ page: 'a5', landscape: true }])('$page, landscape: no page is left empty', async (wanted) => {
    const pages = pagesOf(await pdfOf(await preparedOf('samples/wren-hs.yaml', 'fr'), wanted));
    pages.forEach((text, i) => {
      if (i + 1 < pages.length)
        expect([i + 1, text.length]).toEqual([i + 1, expect.toSatisfy((n: number) => n > 100)]);
    });
  });
});

describe('the page of the web', () => {
  it.each(['fr'] as const)('lists every step in its contents, in %s', async (language) => {
    const prepared = await preparedOf('samples/heron-ss.yaml', language);
    const html = await htmlOf(prepared);
    const [contents = ''] = /<nav class="contents">.*?<\/nav>/s.exec(html) ?? [];
    const links = new Map(
      [...contents.matchAll(/<a href="#([^"]*)">([^<]*)<\/a>/g)].map(([, to = '', text = '']) => [
        squeezed(text),
        to,
      ]),
    );
    const say = sayIn(language);
    for (const { number, title } of stepsOf(prepared.circuit)) {
      const to = links.get(squeezed(say('leaflet.step', { number, title })));
      expect(html).toContain(`<h3 id="${to}">`);
    }
    // Below the heading that the steps stand under, one list within the other.
    const soldering = contents.indexOf(`>${say('leaflet.steps')}</a>`);
    expect(contents.slice(soldering)).toMatch(/^[^<]*<\/a>\n<ul>/);
    expect(links.size).toBeGreaterThan(10);
  });
});
