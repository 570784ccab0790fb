/** The pages of six leaflets in two languages, on every size of paper, as poppler draws them, against pictures that were looked at. */
import { expect, it } from 'vitest';
import { languages } from '../../src/messages/language.ts';
import { pdfOf, preparedOf } from '../leaflet/make.ts';
import { infoOf, pageAsPng } from '../tools/pdf-tools.ts';
import { expectNoPageBehind, expectPng } from './picture.ts';

/** Dots to an inch: enough to see that a page is arranged as it was, and little to keep. */
const DPI = 36;
const [ENGLISH, GERMAN] = languages;

it.each([
  ['kestrel-hss', ENGLISH, 'a4'],
  ['wren-sh', GERMAN, 'a5'],
  ['heron-ss', GERMAN, 'a4'],
  ['osprey-hsh', ENGLISH, 'a5'],
  ['plover-sss', GERMAN, 'letter'],
  ['wren-hs', ENGLISH, 'letter'],
] as const)('%s in %s on %s looks as it did when it was looked at', async (kit, language, page) => {
  const pdf = await pdfOf(await preparedOf(`samples/${kit}.yaml`, language), { page });
  const pages = Number(infoOf(pdf).get('Pages'));
  expect(pages).toBeGreaterThan(10);
  for (let number = 1; number <= pages; number++)
    expectPng(`leaflet/${kit}-${language}-${page}-${number}`, pageAsPng(pdf, number, DPI));
  expectNoPageBehind(`leaflet/${kit}-${language}-${page}`, pages);
});
