/** Where a language is asked for: in a kit, in a catalogue, on the command line; and what hangs on it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { madeKey, Texts } from '../../src/catalogue/build/keys.ts';
import { readKit } from '../../src/checked.ts';
import { addDraw } from '../../src/commands/draw.ts';
import { addResponse } from '../../src/commands/response.ts';
import { formatDiagnostic } from '../../src/describe/diagnostics.ts';
import { inLanguage } from '../../src/describe/kit.ts';
import { markOf } from '../../src/draw/compose.ts';
import { formatFinding, inspect } from '../../src/inspect/index.ts';
import { languages } from '../../src/messages/language.ts';
import { prepare } from '../../src/pipeline.ts';
import { kitText, listed, workshop } from '../catalogue/folder.ts';
import { run } from '../commands/run.ts';
import { sample } from '../truth/draw.ts';
import { drawnIn, textsOf } from './drawn.ts';

const EFFORT = { steps: 0, seed: 1 };
const read = (line: string) => readKit(`${line}${kitText('robin')}`, 'robin.yaml');

describe('a kit', () => {
  it('says it, or is in English', () => {
    expect([read('').kit?.language, read('language: fr\n').kit?.language]).toEqual(['en', 'fr']);
  });
  it('is told at its place of a language that there is not, and of those there are', () => {
    const { kit, diagnostics } = read('language: dee\n');
    expect(kit).toBeUndefined();
    const [said = '', ...more] = diagnostics.map(formatDiagnostic);
    expect(more).toEqual([]);
    expect(said).toContain('robin.yaml:1:11');
    expect(said).toContain('en, de, fr, es');
    expect(said).toContain('Did you mean de?');
  });
  it('bears another mark in each language, the same each time', async () => {
    const marks = async () =>
      Promise.all(
        languages.map(async (language) =>
          markOf(await prepare(inLanguage(sample('wren-hs'), language), undefined, { effort: EFFORT })),
        ),
      );
    const first = await marks();
    expect(new Set(first).size).toBe(languages.length);
    expect(await marks()).toEqual(first);
  });
});

describe('a catalogue', () => {
  const files = { 'kits/a.yaml': kitText('a'), 'kits/b.yaml': kitText('b') };
  const languagesOf = async (text: string) => {
    const { catalogue, said } = await listed({ ...files, 'solderleaf.yaml': text });
    return { said, of: catalogue?.jobs.map(({ id, language }) => [id, language]) };
  };
  it('says it for all kits, and for those of one entry in place of that', async () => {
    expect(
      await languagesOf('language: de\nkits: [kits/a.yaml, { files: kits/b.yaml, language: es }]\n'),
    ).toEqual({
      said: [],
      of: [
        ['a', 'de'],
        ['b', 'es'],
      ],
    });
    expect((await languagesOf('kits: [kits/*.yaml]\n')).of).toEqual([
      ['a', undefined],
      ['b', undefined],
    ]);
  });
  it('is told of a wrong one at its place', async () => {
    const { said } = await languagesOf('kits: [{ files: kits/a.yaml, language: english }]\n');
    expect(said).toHaveLength(1);
    expect(said[0]).toContain('solderleaf.yaml:1:');
    expect(said[0]).toContain('en, de, fr, es');
  });
  it('makes a kit anew for another language', async () => {
    const { catalogue } = await listed({ ...files, 'solderleaf.yaml': 'kits: [kits/*.yaml]\n' });
    const [job] = catalogue?.jobs ?? [];
    if (!job) throw new Error('no job');
    const keys = languages.map((language) => new Texts('program').keyOf({ ...job, language }));
    expect(new Set(keys).size).toBe(languages.length);
    const made = languages.map((language) =>
      madeKey('program', inLanguage(sample('wren-hs'), language), job),
    );
    expect(new Set(made).size).toBe(languages.length);
  });
});

describe('the command line', () => {
  const drawn = async (text: string, ...more: readonly string[]) => {
    const folder = workshop({ 'robin.yaml': text });
    const out = join(folder, 'out');
    const ran = await run(
      addDraw,
      'draw',
      join(folder, 'robin.yaml'),
      '--effort',
      '0',
      '--out',
      out,
      ...more,
    );
    return { ...ran, out };
  };
  const langIn = (file: string): string | undefined =>
    /^<svg[^>]* lang="(..)"/.exec(readFileSync(file, 'utf8'))?.[1];

  it('draws a kit in its own language under its own name', async () => {
    const { out, status } = await drawn(`language: de\n${kitText('robin')}`);
    expect([status, readdirSync(out), langIn(join(out, 'robin.svg'))]).toEqual([0, ['robin.svg'], 'de']);
  });
  it('in another beside it', async () => {
    const { out, status } = await drawn(kitText('robin'), '--language', 'es');
    expect([status, readdirSync(out), langIn(join(out, 'robin-es.svg'))]).toEqual([
      0,
      ['robin-es.svg'],
      'es',
    ]);
    const back = await drawn(`language: de\n${kitText('robin')}`, '--language', 'en');
    expect([readdirSync(back.out), langIn(join(back.out, 'robin-en.svg'))]).toEqual([
      ['robin-en.svg'],
      undefined,
    ]);
  });
  it('names the languages where it is given none of them', async () => {
    const { stderr, status } = await drawn(kitText('robin'), '--language', 'nl');
    expect(status).toBe(2);
    expect(stderr).toMatch(/en, de, fr, es/);
  });
  it('plots in it as well', async () => {
    const folder = workshop({ 'robin.yaml': kitText('robin') });
    const plot = join(folder, 'plot.svg');
    await run(addResponse, 'response', join(folder, 'robin.yaml'), '--out', plot, '--language', 'fr');
    expect(langIn(plot)).toBe('fr');
    expect(readFileSync(plot, 'utf8')).toContain('Réponse');
  });
});

describe('what replaces what', () => {
  it('is told on the drawing with values as the language writes them', async () => {
    const stock = (code: string, fields: string): string => `  - { code: ${code}, ${fields} }\n`;
    const folder = workshop({
      'robin.yaml': kitText('robin').replace(
        'volume: { kind: pot, value: 250k, taper: log }',
        'volume: { kind: pot, code: P-1 }',
      ),
      'parts.yaml': `stock:\n${stock('P-1', 'kind: pot, value: 2.2k, taper: reverse-log, in-stock: 0, replaced-by: P-2')}${stock('P-2', 'kind: pot, value: 4.7k, taper: reverse-log')}`,
    });
    const out = join(folder, 'out');
    const said = async (language: string): Promise<string> => {
      const file = join(folder, 'robin.yaml');
      await run(addDraw, 'draw', file, '--effort', '0', '--out', out, '--language', language);
      const svg = readFileSync(join(out, language === 'en' ? 'robin.svg' : `robin-${language}.svg`), 'utf8');
      return textsOf(svg).find((text) => text.includes('P-2')) ?? '';
    };
    expect(await said('en')).toContain('2.2 kΩ rev log (P-1) is replaced by 4.7 kΩ rev log (P-2).');
    expect(await said('de')).toContain(
      '2,2\u00a0kΩ neg. log (P-1) ist durch 4,7\u00a0kΩ neg. log (P-2) ersetzt.',
    );
    expect(await said('es')).toContain(
      '2,2\u00a0kΩ log inverso (P-1) se sustituye por 4,7\u00a0kΩ log inverso (P-2).',
    );
  });
});

describe('the check of a drawing', () => {
  it('compares it with the kit in the language that it says it is in', async () => {
    const kit = sample('wren-hs');
    const { svgs } = await drawnIn(kit, 'de', [{}]);
    const [svg = ''] = svgs;
    const found = (text: string) => inspect(text, kit).map(formatFinding);
    expect(found(svg)).toEqual([]);
    // As a German drawing with one word of another language, and as one that says it is in another.
    expect(found(svg.replace('>Gleichstromlast<', '>DC load<')).join()).toContain('DC load');
    expect(found(svg.replace(' lang="de"', ' lang="fr"'))).not.toEqual([]);
    expect(found(svg.replace(' lang="de"', '').replace(' xml:lang="de"', ''))).not.toEqual([]);
    expect(found(svg.replace('>Spitze<', '>Schaft<')).join()).toContain('tip');
  });
});
