/** What all kits of a shop's folder share, but for the list of them: stylesheets, scripts and the form of the data. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inkStyles } from '../draw/ink-roles.ts';
import { packageRoot } from '../files/layouts.ts';
import { figureStyles } from '../shop/figure-styles.ts';
import { SCRIPT, type Shared, THEME } from '../shop/fragments.ts';
import { SHOP } from '../shop/html.ts';
import { indexStyle } from '../shop/index-page.ts';
import { formatShopJsonSchema } from '../shop/kit-data.ts';

/** A file of the folder by its path in it, with slashes. */
export interface ShopContent {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** Digits of a hash in an address: enough that no two versions have the same. */
const VERSION = 8;

export const sha256Of = (content: string | Uint8Array): string =>
  createHash('sha256').update(content).digest('hex');
/** As the integrity attribute of a page has it. */
export const integrityOf = (content: string | Uint8Array): string =>
  `sha384-${createHash('sha384').update(content).digest('base64')}`;
export const versionOf = (content: string | Uint8Array): string => sha256Of(content).slice(0, VERSION);

/** A script for a browser, which lies built in `dist/`; its first line says what it is, as that of every file of the folder does. */
const script = (name: string, what: string): string =>
  `/* ${SHOP} ${what} */\n${readFileSync(join(packageRoot(), 'dist', name), 'utf8')}`;

let known: { readonly files: readonly ShopContent[]; readonly version: Omit<Shared, 'base'> } | undefined;

/** The shared files, which are the same for every kit. */
export function sharedFiles(): NonNullable<typeof known> {
  if (known) return known;
  const theme = `/* ${SHOP} theme */\n${inkStyles()}${figureStyles}`;
  const element = script('solderleaf-figure.js', 'element');
  known = {
    files: [
      { path: THEME, content: theme },
      { path: SCRIPT, content: element },
      { path: 'index.js', content: script('solderleaf-index.js', 'index') },
      { path: 'index.css', content: indexStyle },
      { path: 'kit.schema.json', content: formatShopJsonSchema() },
    ],
    version: { theme: versionOf(theme), script: versionOf(element), integrity: integrityOf(element) },
  };
  return known;
}
