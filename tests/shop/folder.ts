/** Folders as `embed` writes them, for the browsers: of ten kits, and of kits whose words are hostile. */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { prepare, render, renderInline, sheetsOf } from '../../src/pipeline.ts';
import { embedKits } from '../../src/publish/embed.ts';
import { type KitData, kitDataSchema } from '../../src/shop/kit-data.ts';
import { madeOnce } from '../tools/made-once.ts';
import { placedOnce } from '../tools/placements.ts';
import { putProductPage } from '../tools/product-page.ts';
import { hostileKits } from './hostile.ts';

/** The fragments to paste, by their files' names. */
export const WAYS = ['image', 'inline', 'figure'] as const;
export type Way = (typeof WAYS)[number];

/** The kit of the product page, placed as usual, as pictures of it are kept; and nine more of other switches and controls, placed quickly. */
const SHOWN = ['samples/kestrel-hss.yaml'];
const MORE = [
  ...['wren-hs', 'osprey-hsh', 'plover-sss', 'heron-ss', 'wren-sh'].map((id) => `samples/${id}.yaml`),
  ...['hh-toggle-3-1v1t-split', 'h-1v1t-rotary-caps', 'bass-ss-blend-1v1t', 'bass-ss-2v2t-stereo'].map(
    (id) => `samples/circuits/${id}.yaml`,
  ),
];
export const tenKits: readonly string[] = [...SHOWN, ...MORE].map((file) =>
  file.replace(/^.*\/|\.yaml$/g, ''),
);

const drawer = {
  prepare: ((kit, arrangement, options) =>
    prepare(kit, arrangement, { ...options, ...placedOnce })) as typeof prepare,
  sheetsOf,
  render,
  renderInline,
};

async function embed(files: readonly string[], out: string, effort?: number): Promise<void> {
  const options = { out, ...(effort === undefined ? {} : { effort }) };
  for await (const { failed, errorLines, diagnostics } of embedKits(files, options, drawer))
    if (failed) throw new Error([...errorLines, ...diagnostics.map((one) => JSON.stringify(one))].join('\n'));
}

/** The folder of the ten kits, with the product page in it. */
export const shopFolder = (): Promise<string> =>
  madeOnce('shop', async (folder) => {
    await embed(SHOWN, folder);
    await embed(MORE, folder, 0);
    putProductPage(folder);
  });

/** The folder of the hostile kits, which are written to files first. */
export const hostileFolder = (): Promise<string> =>
  madeOnce('hostile', async (folder) => {
    const sources = join(folder, 'sources');
    mkdirSync(sources);
    const files = [...hostileKits].map(([id, kit]) => {
      const file = join(sources, `${id}.json`);
      writeFileSync(file, JSON.stringify(kit));
      return file;
    });
    await embed(files, folder, 0);
    rmSync(sources, { recursive: true });
  });

/** What a shop's script reads of a kit. */
export const kitData = (folder: string, id: string): KitData =>
  kitDataSchema.parse(JSON.parse(readFileSync(join(folder, id, `${id}.json`), 'utf8')));

/** A page with the fragments of some kits pasted, each kit in some ways. */
export const pageOf = (
  folder: string,
  kits: readonly string[],
  ways: readonly Way[],
): string => `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Kits</title></head>
<body><main><h1>Kits</h1>
${kits.flatMap((id) => ways.map((way) => readFileSync(join(folder, id, `${way}.html`), 'utf8'))).join('\n')}
</main></body>
</html>
`;
