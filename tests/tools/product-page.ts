/**
 * `npm run samples`: puts the product page of the samples into the folder that `embed` wrote, with the fragments pasted that its
 * comments name, as a web person would paste them.
 */
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const FROM = 'samples/shop';

/** The page with each fragment in the place of its comment. @param read a fragment by its path in the folder */
export const pasted = (page: string, read: (path: string) => string): string =>
  page.replace(/<!-- paste (\S+) -->/g, (_, path: string) => read(path).trim());

/** @throws Error of the system where the folder lacks a fragment */
export function putProductPage(folder: string): void {
  const page = readFileSync(join(FROM, 'product.html'), 'utf8');
  writeFileSync(
    join(folder, 'product.html'),
    pasted(page, (path) => readFileSync(join(folder, path), 'utf8')),
  );
  copyFileSync(join(FROM, 'product.css'), join(folder, 'product.css'));
  copyFileSync('samples/workshop/logo.svg', join(folder, 'logo.svg'));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) putProductPage(process.argv[2] ?? 'out/shop');
