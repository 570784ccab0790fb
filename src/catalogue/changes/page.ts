/**
 * What has changed as one HTML page, old and new drawings side by side. It is complete in itself, runs no script and fetches nothing, and
 * says so in its content security policy; drawings stand in it as images, in which nothing runs either, whoever drew them.
 */
import { createHash } from 'node:crypto';
import type { KitChanges } from './compare.ts';
import { HEARD_WORDS, linesOf, sumText, TABLE_HEADS, tableRows } from './report.ts';
import type { Surveyed } from './survey.ts';

const escaped = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    // Control characters are no text of a page.
    .replace(/[^\P{C}\n]/gu, '\uFFFD');

/** Without a colour of its own for what has changed: words say it. */
const STYLE = `
body { margin: 0 auto; max-width: 90rem; padding: 1rem; font-family: Inter, system-ui, sans-serif; line-height: 1.5; color: #1a1a1a; background: #fff; }
article { margin-block: 3rem; border-top: 1px solid #767676; }
.pictures { display: grid; grid-template-columns: repeat(auto-fit, minmax(20rem, 1fr)); gap: 1rem; }
figure { margin: 0; }
img { max-width: 100%; height: auto; border: 1px solid #767676; }
.table { overflow-x: auto; }
table { border-collapse: collapse; margin-block: 1rem; }
th, td { text-align: left; padding: 0.1rem 0.75rem 0.1rem 0; border-bottom: 1px solid #c8c8c8; vertical-align: top; }
td.number, th.number { text-align: right; }
`;

const STYLE_HASH = createHash('sha256').update(STYLE).digest('base64');
const POLICY = `default-src 'none'; img-src data:; style-src 'sha256-${STYLE_HASH}'; base-uri 'none'; form-action 'none'`;

/** The page; what is unchanged is only counted. */
export function changesPage(all: readonly Surveyed[]): string {
  const told = all.filter(({ changes }) => changes.became !== 'same');
  const contents = told.map(
    ({ changes: { kit, title } }) =>
      `    <li><a href="#${escaped(kit)}">${escaped(kit)}</a>: ${escaped(title)}</li>\n`,
  );
  return `<!doctype html>
<html lang="en">
<head>
  <meta charset="utf-8">
  <meta http-equiv="Content-Security-Policy" content="${POLICY}">
  <meta name="viewport" content="width=device-width, initial-scale=1">
  <meta name="generator" content="${GENERATOR}">
  <title>Changes of the catalogue</title>
  <style>${STYLE}</style>
</head>
<body>
<main>
  <h1>Changes of the catalogue</h1>
  <p>${escaped(sumText(all.map(({ changes }) => changes)))}.</p>
  <p>${escaped(HEARD_WORDS)}</p>
${contents.length === 0 ? '' : `  <ul>\n${contents.join('')}  </ul>\n`}${told.map(articleOf).join('')}</main>
</body>
</html>
`;
}

/** By these words a file is known to be an earlier version of the page, and may be written over. */
const GENERATOR = 'Solderleaf changes';
export const isChangesPage = (text: string): boolean => text.includes(GENERATOR);

const HEADINGS: Readonly<Record<KitChanges['became'], string>> = {
  new: 'new',
  removed: 'no longer in the catalogue',
  changed: 'changed',
  failed: 'with errors',
  same: 'unchanged',
};

function articleOf({ changes, pictures }: Surveyed): string {
  const id = escaped(changes.kit);
  const lines = linesOf(changes).map((line) => `      <li>${escaped(line)}</li>\n`);
  return `  <article id="${id}" aria-labelledby="${id}-heading">
    <h2 id="${id}-heading">${escaped(changes.title)} <small>(${id}, ${HEADINGS[changes.became]})</small></h2>
${lines.length === 0 ? '' : `    <ul>\n${lines.join('')}    </ul>\n`}${picturesOf(changes, pictures)}${tableOf(changes)}  </article>
`;
}

function tableOf(changes: KitChanges): string {
  const rows = tableRows(changes.figures);
  if (rows.length === 0) return '';
  const cells = (row: readonly string[], tag: 'td' | 'th'): string =>
    row
      .map((cell, i) => `<${tag}${i === 2 || i === 3 ? ' class="number"' : ''}>${escaped(cell)}</${tag}>`)
      .join('');
  const body = rows.map((row) => `      <tr>${cells(row, 'td')}</tr>\n`);
  return `    <div class="table"><table>
      <thead><tr>${cells(TABLE_HEADS, 'th')}</tr></thead>
      <tbody>
${body.join('')}      </tbody>
    </table></div>
`;
}

function picturesOf({ title }: KitChanges, pictures: Surveyed['pictures']): string {
  if (!pictures) return '';
  const figure = (svg: string | undefined, when: string, none: string): string =>
    svg === undefined
      ? `      <p>${none}</p>\n`
      : `      <figure><figcaption>${when}</figcaption><img src="data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}" alt="${when}: wiring diagram, ${escaped(title)}"></figure>\n`;
  return `    <div class="pictures">
${figure(pictures.before, 'Before', 'No drawing of it was built before.')}${figure(pictures.after, 'Now', 'It cannot be drawn now.')}    </div>
`;
}
