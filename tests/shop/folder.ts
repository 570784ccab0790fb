/** Stand-in */
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inkStyles } from '../../src/draw/ink-roles.ts';
import { themes } from '../../src/draw/theme.ts';
import { loadKit } from '../../src/files/load.ts';
import { prepare, render, renderInline } from '../../src/pipeline.ts';
import { figureHtml } from '../../src/shop/figure.ts';
import { figureStyles } from '../../src/shop/figure-styles.ts';
import { kitDataOf } from '../../src/shop/kit-data.ts';
import { madeOnce } from '../tools/made-once.ts';
import { putProductPage } from '../tools/product-page.ts';

export const WAYS = ['image', 'inline', 'figure'] as const;
export type Way = (typeof WAYS)[number];

const FILES = [
  ...['kestrel-hss', 'wren-hs', 'osprey-hsh', 'plover-sss', 'heron-ss', 'wren-sh'].map(
    (id) => `samples/${id}.yaml`,
  ),
  ...['hh-toggle-3-1v1t-split', 'h-1v1t-rotary-caps', 'bass-ss-blend-1v1t', 'bass-ss-2v2t-stereo'].map(
    (id) => `samples/circuits/${id}.yaml`,
  ),
];
export const tenKits: readonly string[] = FILES.map((file) => file.replace(/^.*\/|\.yaml$/g, ''));

export const shopFolder = (): Promise<string> =>
  madeOnce('shop', async (folder) => {
    writeFileSync(join(folder, 'theme.css'), inkStyles(themes.light, themes.dark) + figureStyles);
    copyFileSync('dist/solderleaf-figure.js', join(folder, 'solderleaf-figure.js'));
    const all: string[] = [];
    for (const file of FILES) {
      const { kit } = await loadKit(file);
      if (!kit) throw new Error(file);
      const prepared = await prepare(kit, undefined, { effort: { steps: 0, seed: 1 } });
      mkdirSync(join(folder, kit.id));
      const put = (name: string, text: string) => writeFileSync(join(folder, kit.id, name), text);
      put(`${kit.id}.svg`, render(prepared).svg);
      put(
        'image.html',
        `<figure><img src="${kit.id}/${kit.id}.svg" alt="x" width="800" height="600"></figure>`,
      );
      put(
        'inline.html',
        `<link rel="stylesheet" href="theme.css">${renderInline(prepared, { only: ['drawing'] })}`,
      );
      put(
        'figure.html',
        `<link rel="stylesheet" href="theme.css">${figureHtml({ data: kitDataOf(prepared), drawing: renderInline(prepared, { only: ['drawing'] }), key: renderInline(prepared, { only: ['key'] }), styles: 'theme.css' })}<script src="solderleaf-figure.js" defer></script>`,
      );
      put(`${kit.id}-drawing.svg`, render(prepared, { only: ['drawing'] }).svg);
      all.push(`<li><a href="${kit.id}/${kit.id}.svg">${kit.id}</a></li>`);
    }
    writeFileSync(join(folder, 'index.html'), pageWith(`<ul>${all.join('')}</ul>`));
    putProductPage(folder);
  });

const pageWith = (body: string): string => `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Kits</title></head>
<body><main><h1>Kits</h1>
${body}
</main></body>
</html>
`;

/** A page with fragments of some kits pasted, each in some ways. */
export const pageOf = (folder: string, kits: readonly string[], ways: readonly Way[]): string =>
  pageWith(
    kits.flatMap((id) => ways.map((way) => readFileSync(join(folder, id, `${way}.html`), 'utf8'))).join('\n'),
  );
export const hostileFolder = async () => ({ folder: await shopFolder(), ids: [] as readonly string[] });
