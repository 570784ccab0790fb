/** Other people's readers of PDF, by which leaflets are checked: poppler's tools and qpdf, from Debian. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const TOOLS = ['pdftotext', 'pdfinfo', 'pdffonts', 'pdftoppm', 'qpdf'] as const;
type Tool = (typeof TOOLS)[number];

/** Whether all of them can be run. */
export const hasPdfTools = (): boolean => TOOLS.every((tool) => !spawnSync(tool, ['--version']).error);

/** Runs a tool on a PDF: `{}` among the arguments stands for its file. What the tool says to its stream of complaints is left out. */
export function runOn(pdf: Uint8Array, tool: Tool, ...args: readonly string[]): string {
  const folder = mkdtempSync(join(tmpdir(), 'leaflet-'));
  try {
    const file = join(folder, 'leaflet.pdf');
    writeFileSync(file, pdf);
    return execFileSync(
      tool,
      args.map((arg) => (arg === '{}' ? file : arg)),
      { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'], maxBuffer: 1e8 },
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The text of a PDF in the order in which it was set, so that a table's cell is not mixed with its neighbour's. */
export const textOfPdf = (pdf: Uint8Array): string => squeezed(runOn(pdf, 'pdftotext', '-raw', '{}', '-'));

/** Any blanks, also those that do not break, as one; hyphens that do not break as plain ones. */
export const squeezed = (text: string): string =>
  text
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .replaceAll('\u2011', '-')
    .replaceAll('\u200b', '')
    .trim();

/** What `pdfinfo` says, by its heads. */
export const infoOf = (pdf: Uint8Array): ReadonlyMap<string, string> =>
  new Map(
    runOn(pdf, 'pdfinfo', '{}')
      .split('\n')
      .map((line) => {
        const at = line.indexOf(':');
        return [line.slice(0, at), line.slice(at + 1).trim()] as const;
      }),
  );

/** By font its columns `emb` and `sub`. */
export const fontsOf = (pdf: Uint8Array): readonly { readonly name: string; readonly embedded: boolean }[] =>
  runOn(pdf, 'pdffonts', '{}')
    .trim()
    .split('\n')
    .slice(2)
    .map((line) => {
      const [name = '', ...words] = line.split(/\s+/);
      return { name, embedded: words.slice(-5)[0] === 'yes' };
    });

/** A page as a picture. @param dpi dots to an inch */
export function pageAsPng(pdf: Uint8Array, page: number, dpi: number): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), 'leaflet-page-'));
  try {
    const out = join(folder, 'page');
    runOn(
      pdf,
      'pdftoppm',
      '-png',
      '-singlefile',
      '-r',
      String(dpi),
      '-f',
      String(page),
      '-l',
      String(page),
      '{}',
      out,
    );
    return readFileSync(`${out}.png`);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
