/**
 * PDF from a leaflet, set in the shipped font and no other, so that every machine makes the same bytes. Typst is behind these two
 * functions: nothing else knows of it but the templates.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { BOOKLET_TEMPLATE, sidesOf } from '../leaflet/booklet-template.ts';
import type { Leaflet } from '../leaflet/document.ts';
import { TEMPLATE } from '../leaflet/typst-template.ts';

const FONTS = ['400Regular/Inter_400Regular.ttf', '700Bold/Inter_700Bold.ttf'];
/** A folder that need not exist: nothing is read from it, as all that a leaflet shows comes with its data. */
const NOWHERE = '/solderleaf';
/** Accessible PDF, ISO 14289-1: tagged, with its language and title, and with an alternative text for every drawing. */
const ACCESSIBLE = 'ua-1';
/** Sheets of a booklet have their pages out of order, which no reader of tags can follow. */
const PRINTED = '1.7';

type Compiler = import('@myriaddreamin/typst-ts-node-compiler').NodeCompiler;
let kept: Promise<Compiler> | undefined;

/** Loaded only when asked for: it is a native module, and most runs make no leaflet. */
async function load(): Promise<Compiler> {
  const { NodeCompiler } = await import('@myriaddreamin/typst-ts-node-compiler');
  const require = createRequire(import.meta.url);
  const fontBlobs = FONTS.map((file) => readFileSync(require.resolve(`@expo-google-fonts/inter/${file}`)));
  return NodeCompiler.create({ workspace: NOWHERE, fontArgs: [{ fontBlobs }] });
}

/**
 * A leaflet as a tagged PDF/UA-1 file.
 *
 * @throws where the template does not compile, or where a letter is not in the font: the kit's are checked before
 */
export const leafletToPdf = async (leaflet: Leaflet): Promise<Uint8Array> =>
  (await compiled(TEMPLATE, { leaflet: JSON.stringify(leaflet) }, ACCESSIBLE)).pdf;

/** A leaflet as sheets of twice its paper's width, to be printed on both sides and folded in the middle. */
export async function leafletToBooklet(leaflet: Leaflet): Promise<Uint8Array> {
  const { pdf, pages } = await compiled(TEMPLATE, { leaflet: JSON.stringify(leaflet) }, PRINTED);
  const { title, generator, language, paper } = leaflet;
  const { width, height } = paper;
  const sides = sidesOf(pages);
  const compiler = await compilerOf();
  const file = join(NOWHERE, 'leaflet.pdf');
  compiler.mapShadow(file, Buffer.from(pdf));
  try {
    const booklet = JSON.stringify({ title, generator, language, width, height, sides, alt: title });
    return (await compiled(BOOKLET_TEMPLATE, { booklet }, PRINTED)).pdf;
  } finally {
    compiler.unmapShadow(file);
  }
}

function compilerOf(): Promise<Compiler> {
  kept ??= load();
  return kept;
}

async function compiled(mainFileContent: string, inputs: Record<string, string>, pdfStandard: string) {
  const compiler = await compilerOf();
  const done = compiler.compile({ mainFileContent, inputs });
  if (!done.result) {
    const diagnostics = done.takeDiagnostics();
    throw new Error(
      `a leaflet does not compile: ${JSON.stringify(diagnostics && compiler.fetchDiagnostics(diagnostics))}`,
    );
  }
  const pdf = compiler.pdf(done.result, { pdfStandard });
  const pages = done.result.numOfPages;
  // Nothing of one leaflet is of use to the next.
  compiler.evictCache(0);
  return { pdf, pages };
}
