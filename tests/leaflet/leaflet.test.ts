/** Leaflets as their readers have them: PDF read by poppler's tools and qpdf, which know nothing of this program. */
import { readdirSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { jackTests, stepTests } from '../../src/annotate/step-tests.ts';
import { stepsOf } from '../../src/annotate/steps.ts';
import type { Prepared } from '../../src/draw/compose.ts';
import { markOf } from '../../src/draw/compose.ts';
import { cautions } from '../../src/leaflet/parts.ts';
import { languages } from '../../src/messages/language.ts';
import { sayIn } from '../../src/messages/say.ts';
import { is } from '../../src/parts/index.ts';
import { fontsOf, infoOf, runOn, squeezed, textOfPdf } from '../tools/pdf-tools.ts';
import { pdfOf, placed, preparedOf, relabelled } from './make.ts';

const samples = readdirSync('samples').filter((name) => name.endsWith('.yaml'));
const count = (text: string, words: string): number => text.split(words).length - 1;
/** Points of A4, A5 and Letter (ISO 216, ANSI Y14.1), as pdfinfo rounds them. */
const SIZES = { a4: [595, 842], a5: [420, 595], letter: [612, 792] } as const;

describe.each(samples)('%s', (name) => {
  let prepared: Prepared;
  let pdf: Uint8Array;
  let text: string;
  beforeAll(async () => {
    prepared = await preparedOf(`samples/${name}`);
    pdf = await pdfOf(prepared);
    text = textOfPdf(pdf);
  });

  it('is a sound file', () => expect(runOn(pdf, 'qpdf', '--check', '{}')).toContain('No syntax or stream'));

  it('is tagged, with its title and its language', () => {
    const info = infoOf(pdf);
    expect(info.get('Tagged')).toBe('yes');
    expect(info.get('Title')).toBe(`${prepared.circuit.kit.title}: assembly instructions`);
    const catalog = runOn(pdf, 'qpdf', '--qdf', '--object-streams=disable', '{}', '-');
    expect(catalog).toContain('/Lang (en)');
    // What PDF/UA-1 says of itself (ISO 14289-1, 5).
    expect(catalog).toContain('<pdfuaid:part>1</pdfuaid:part>');
    expect(info.has('CreationDate')).toBe(false);
  });

  it('has its fonts in it, and no other than Inter', () => {
    const fonts = fontsOf(pdf);
    expect(fonts.length).toBeGreaterThan(1);
    for (const { name: font, embedded } of fonts)
      expect([font, embedded]).toEqual([expect.stringMatching(/\+Inter-/), true]);
  });

  it('has every part, each joint once, every caution, and the mark', () => {
    const { circuit } = prepared;
    for (const part of circuit.kit.parts) if (!is(part, 'ground-point')) expect(text).toContain(part.label);
    const lines = stepsOf(circuit).flatMap(({ lines }) => lines.map(squeezed));
    expect(lines).toHaveLength(circuit.joints.length);
    const sure = lines.map((line) => [
      line,
      count(text, line),
      lines.filter((one) => one.includes(line)).length,
    ]);
    for (const [line, found, wanted] of sure) expect([line, found]).toEqual([line, wanted]);
    for (const caution of cautions(sayIn('en'))) expect(text).toContain(squeezed(caution));
    expect(text).toContain(markOf(prepared));
  });

  it('has every reading after a step, and those at the jack before the pickups and at the end', () => {
    const { circuit } = prepared;
    const tests = stepTests(circuit).flatMap((step) => step.tests);
    expect(tests.length).toBeGreaterThan(3);
    for (const { expected, wrong } of tests) {
      expect(text).toContain(`The meter shows: ${squeezed(expected)}`);
      for (const words of wrong) expect(text).toContain(squeezed(words));
    }
    const { before, finished } = jackTests(circuit);
    expect(before.length).toBe(circuit.states.length);
    const [first, second] = ['Test before the pickups are fitted', 'Test when everything is soldered'].map(
      (heading) => text.lastIndexOf(heading),
    );
    for (const [tests, from, to] of [
      [before, first, second],
      [finished, second, text.length],
    ] as const)
      for (const { position, volumeFull, volumeZero } of tests)
        expect(text.slice(from, to)).toContain(squeezed(`${position} ${volumeFull} ${volumeZero}`));
  });

  it('has cautions before the first step', () =>
    expect(text.indexOf(squeezed(sayIn('en')('caution.hot')))).toBeLessThan(text.indexOf('Step 1:')));

  it('has a sane number of pages, each with its number', () => {
    const pages = Number(infoOf(pdf).get('Pages'));
    const steps = stepsOf(prepared.circuit).length;
    expect(pages).toBeGreaterThan(steps + 3);
    expect(pages).toBeLessThan(2 * steps + 14);
    for (let page = 1; page <= pages; page++) expect(text).toContain(`${page} / ${pages}`);
  });
});

describe('paper', () => {
  it.each(Object.entries(SIZES))('%s', async (page, [width, height]) => {
    const prepared = await preparedOf('samples/wren-hs.yaml');
    const upright = infoOf(await pdfOf(prepared, { page })).get('Page size');
    expect(
      upright
        ?.match(/[\d.]+/g)
        ?.slice(0, 2)
        .map(Number)
        .map(Math.round),
    ).toEqual([width, height]);
    const aside = infoOf(await pdfOf(prepared, { page, landscape: true })).get('Page size');
    expect(
      aside
        ?.match(/[\d.]+/g)
        ?.slice(0, 2)
        .map(Number)
        .map(Math.round),
    ).toEqual([height, width]);
  });
});

describe('the same kit', () => {
  it('gives the same bytes, whatever the time zone and the locale', async () => {
    const prepared = await preparedOf('samples/heron-ss.yaml');
    const first = Buffer.from(await pdfOf(prepared));
    const { TZ, LC_ALL } = process.env;
    process.env.TZ = 'Pacific/Kiritimati';
    process.env.LC_ALL = 'ar_EG.UTF-8';
    try {
      // Of the same kit as another object nothing is kept.
      expect(Buffer.from(await pdfOf({ ...prepared })).equals(first)).toBe(true);
    } finally {
      if (TZ === undefined) delete process.env.TZ;
      else process.env.TZ = TZ;
      if (LC_ALL === undefined) delete process.env.LC_ALL;
      else process.env.LC_ALL = LC_ALL;
    }
  });

  it.each(languages)('speaks %s', async (language) => {
    const prepared = await preparedOf('samples/heron-ss.yaml', language);
    const pdf = await pdfOf(prepared);
    const say = sayIn(language);
    const text = textOfPdf(pdf);
    for (const line of stepsOf(prepared.circuit).flatMap(({ lines }) => lines))
      expect(text).toContain(squeezed(line));
    for (const caution of cautions(say)) expect(text).toContain(squeezed(caution));
    expect(runOn(pdf, 'qpdf', '--qdf', '--object-streams=disable', '{}', '-')).toContain(
      `/Lang (${language})`,
    );
  });
});

describe('what somebody writes is no markup', () => {
  const HOSTILE = [
    '#panic("x")',
    '$x^2$ *b* _i_',
    '<script>alert(1)</script>',
    '"q" \'r\' `c`',
    '@ref <lab> #{1}',
    '\\u{41} // c /* d */',
  ];
  it.each(HOSTILE)('%s', async (words) => {
    const { circuit } = await preparedOf('samples/heron-ss.yaml');
    const kit = relabelled(circuit.kit, `${words} kit`, (name) => `${words.slice(0, 20)}${name.slice(0, 8)}`);
    const pdf = await pdfOf(await placed({ ...kit, about: `${words} ${'long '.repeat(60)}` }));
    const text = textOfPdf(pdf);
    expect(text).toContain(squeezed(`${words} kit`));
    expect(text).toContain(squeezed(words));
  });

  it.each([...HOSTILE, 'N'.repeat(300), '"Bramble" & <Finch> ’s #set page(width: 1pt)'])(
    'a workshop called %s',
    async (name) => {
      const prepared = await preparedOf('samples/heron-ss.yaml');
      const workshop = { name, address: `${name.slice(0, 200)}\nsecond line`, closing: name };
      const pdf = await pdfOf(prepared, { workshop });
      const found = textOfPdf(pdf).replaceAll(' ', '');
      expect(count(found, name.replaceAll(' ', ''))).toBeGreaterThanOrEqual(2);
      expect(found).toContain('secondline');
      expect(infoOf(pdf).get('Pages')).toBe(infoOf(await pdfOf(prepared)).get('Pages'));
    },
  );

  it('a title of 300 letters in one word', async () => {
    const { circuit } = await preparedOf('samples/heron-ss.yaml');
    const pdf = await pdfOf(await placed({ ...circuit.kit, title: 'W'.repeat(300) }));
    expect(textOfPdf(pdf).replaceAll(' ', '')).toContain('W'.repeat(300));
  });
});
