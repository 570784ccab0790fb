/**
 * A leaflet as one HTML page. It is complete in itself, runs no script and fetches nothing, and says so in its content security
 * policy; printed, each step stands on one page.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import type { Block, Cell, Leaflet, Picture, Shown, Table } from './document.ts';

const escaped = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    // Control characters are no text of a page.
    .replace(/[^\P{C}\n]/gu, '\uFFFD');

const style = ({ paper, sender }: Leaflet): string => `
:root { --ink: #1d2b36; --quiet: #52606b; --rule: #c3cad0; --tint: ${sender?.colour ?? '#1d2b36'}; }
body { margin: 0 auto; max-width: 60rem; padding: 1rem; font-family: Inter, system-ui, sans-serif; font-size: 1rem; line-height: 1.5; color: var(--ink); background: #fff; }
h1, h2 { line-height: 1.25; color: var(--tint); break-after: avoid; }
h2 { margin-top: 2.5rem; }
h3 { margin-top: 2rem; break-after: avoid; }
.kind, .small, .sender { color: var(--quiet); font-size: 0.875rem; }
.kind { font-weight: 700; margin-bottom: 0; }
h1 { margin-top: 0; }
.sender { display: flex; justify-content: space-between; align-items: center; border-bottom: 1px solid var(--rule); }
.cover svg { max-height: 20rem; }
.contents > ul { columns: 2 18rem; }
figure { margin: 1rem 0; }
figure svg, .sheet svg { display: block; width: 100%; height: auto; }
td svg { display: block; max-width: 100%; height: auto; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; padding: 0.35rem 0.75rem 0.35rem 0; border-bottom: 1px solid var(--rule); vertical-align: top; }
th { color: var(--quiet); font-size: 0.875rem; border-bottom: 2px solid var(--ink); }
.right { text-align: right; font-variant-numeric: tabular-nums; }
.tick { display: inline-block; width: 0.9em; height: 0.9em; border: 1.5px solid var(--ink); border-radius: 2px; vertical-align: -0.1em; }
ul.ticks { list-style: none; padding: 0; }
ul.ticks .tick { margin-right: 0.6em; }
.box { border: 1px solid var(--rule); border-left: 4px solid var(--tint); padding: 0 1rem; margin: 1.5rem 0; break-inside: avoid; }
.caution { border: 2px solid var(--ink); }
.beside { display: grid; grid-template-columns: minmax(8rem, 22rem) 1fr; gap: 1.5rem; align-items: center; margin: 1.5rem 0; }
.beside svg { display: block; max-width: 100%; height: auto; }
@media (max-width: 40rem) { .beside { grid-template-columns: 1fr; } }
.beside, .together, tr { break-inside: avoid; }
.lines { height: 60vh; background: repeating-linear-gradient(#0000 0 calc(9mm - 1px), #c3cad0 calc(9mm - 1px) 9mm); }
@page { size: ${paper.width}mm ${paper.height}mm; margin: ${paper.margin}mm; }
@media print {
  body { max-width: none; padding: 0; font-size: 10pt; }
  .sheet { break-before: page; break-after: page; }
  .contents a { color: inherit; text-decoration: none; }
  thead { display: table-header-group; }
}
`;

/**
 * The page.
 *
 * @param faces the font's rules, with the letters that the page needs; without them it is set in what the reader has
 */
export function leafletToHtml(leaflet: Leaflet, faces = ''): string {
  const css = `${faces}${style(leaflet)}`;
  const hash = btoa(String.fromCharCode(...sha256(utf8ToBytes(css))));
  const policy = `default-src 'none'; img-src data:; font-src data:; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="${leaflet.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="generator" content="${escaped(leaflet.generator)}">
<title>${escaped(leaflet.title)}</title>
<style>${css}</style>
</head>
<body>
<main>
${headOf(leaflet)}${leaflet.blocks.map((block) => blockOf(block, leaflet)).join('')}</main>
</body>
</html>
`;
}

function headOf({ sender, kind, heading, lines, cover }: Leaflet): string {
  const from = sender
    ? `<header class="sender"><p><strong>${escaped(sender.name)}</strong>${sender.address === undefined ? '' : `<br>${lined(sender.address)}`}</p>${sender.logo ? imageOf(sender.logo) : ''}</header>\n`
    : '';
  return `${from}<p class="kind">${escaped(kind)}</p>\n<h1>${escaped(heading)}</h1>\n${lines.map((line) => `<p>${escaped(line)}</p>\n`).join('')}<figure class="cover">${drawingOf(cover)}</figure>\n`;
}

const lined = (text: string): string => escaped(text).replaceAll('\n', '<br>');

/** Another's picture: as an image, in which nothing runs. */
const imageOf = ({ svg, alt, width }: Picture): string =>
  `<img alt="${escaped(alt)}" width="${Math.round((width / 25.4) * 96)}" src="data:image/svg+xml;base64,${btoa(String.fromCharCode(...utf8ToBytes(svg)))}">`;

const anchorOf = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-');

function blockOf(block: Block, leaflet: Leaflet): string {
  switch (block.is) {
    case 'heading': {
      const tag = block.level === 1 ? 'h2' : 'h3';
      return `<${tag} id="${escaped(anchorOf(block.text))}">${escaped(block.text)}</${tag}>\n`;
    }
    case 'paragraph':
      return paragraphOf(block);
    case 'list': {
      const tick = block.tick ? '<span class="tick"></span>' : '';
      return `<ul${block.tick ? ' class="ticks"' : ''}>\n${block.items.map((item) => `<li>${tick}${escaped(item)}</li>\n`).join('')}</ul>\n`;
    }
    case 'table':
      return tableOf(block);
    case 'figure':
      return `<figure>${drawingOf(block.picture)}</figure>\n`;
    case 'sheet':
      return `<section class="sheet">\n<h2 id="${escaped(anchorOf(block.heading))}">${escaped(block.heading)}</h2>\n${block.caption === undefined ? '' : `<p class="small">${escaped(block.caption)}</p>\n`}${drawingOf(block.picture)}${block.key ? drawingOf(block.key) : ''}</section>\n`;
    case 'box':
      return `<section class="box ${block.role}">\n${block.blocks.map((one) => blockOf(one, leaflet)).join('')}</section>\n`;
    case 'beside':
      return besideOf(block, leaflet);
    case 'pairs':
      return block.items.map((item) => besideOf(item, leaflet)).join('');
    case 'step':
      return `<div class="together">\n${[
        ...block.blocks.map((one) => blockOf(one, leaflet)),
        ...block.tests.map((test) => besideOf(test, leaflet)),
        ...block.closing.map((one) => blockOf(one, leaflet)),
      ].join('')}</div>\n`;
    case 'steps':
      return block.blocks.map((one) => blockOf(one, leaflet)).join('');
    case 'together':
      return `<div class="together">\n${block.blocks.map((one) => blockOf(one, leaflet)).join('')}</div>\n`;
    case 'contents':
      return `<nav class="contents">\n<h2>${escaped(block.heading)}</h2>\n${contentsOf(leaflet)}</nav>\n`;
    case 'lines':
      return `<div class="lines"></div>\n${block.closing === undefined ? '' : `<p>${escaped(block.closing)}</p>\n`}`;
  }
}

const besideOf = ({ picture, blocks }: Shown, leaflet: Leaflet): string =>
  `<div class="beside">\n<div>${drawingOf(picture)}</div>\n<div>\n${blocks.map((one) => blockOf(one, leaflet)).join('')}</div>\n</div>\n`;

function paragraphOf({ text, small, strong, tick }: Extract<Block, { readonly is: 'paragraph' }>): string {
  const words = strong ? `<strong>${escaped(text)}</strong>` : escaped(text);
  return `<p${small ? ' class="small"' : ''}>${tick ? '<span class="tick"></span> ' : ''}${words}</p>\n`;
}

interface Heading {
  readonly level: 1 | 2;
  readonly text: string;
}

const headingsIn = (blocks: readonly Block[]): readonly Heading[] =>
  blocks.flatMap((block) => {
    if (block.is === 'heading') return [block];
    if (block.is === 'sheet') return [{ level: 1, text: block.heading }];
    return 'blocks' in block ? headingsIn(block.blocks) : [];
  });

/** Links to all headings, those of the second level in a list below the one that they stand under. */
function contentsOf({ blocks }: Leaflet): string {
  const link = ({ text }: Heading): string => `<a href="#${escaped(anchorOf(text))}">${escaped(text)}</a>`;
  const headings = headingsIn(blocks);
  const items = headings.flatMap((heading, i) => {
    if (heading.level === 2) return [];
    const next = headings.findIndex(({ level }, k) => k > i && level === 1);
    const below = headings.slice(i + 1, next === -1 ? undefined : next);
    const inner = below.map((one) => `<li>${link(one)}</li>\n`).join('');
    return [`<li>${link(heading)}${inner === '' ? '' : `\n<ul>\n${inner}</ul>\n`}</li>\n`];
  });
  return `<ul>\n${items.join('')}</ul>\n`;
}

/** A drawing stands in the page itself, so that its words can be found and read aloud. */
const drawingOf = ({ svg }: Picture): string => svg.replace(/^<\?xml[^>]*>\s*/, '');

function tableOf({ columns, rows }: Table): string {
  const sides = columns.map(({ align }) => (align === 'right' ? ' class="right"' : ''));
  const head = columns.map((column, i) => `<th scope="col"${sides[i]}>${escaped(column.head)}</th>`).join('');
  const body = rows.map(
    (row) => `<tr>${row.map((cell, i) => `<td${sides[i] ?? ''}>${cellOf(cell)}</td>`).join('')}</tr>\n`,
  );
  return `<div class="scroll">\n<table>\n<thead><tr>${head}</tr></thead>\n<tbody>\n${body.join('')}</tbody>\n</table>\n</div>\n`;
}

function cellOf(cell: Cell): string {
  switch (cell.is) {
    case 'text':
      return cell.strong ? `<strong>${lined(cell.text)}</strong>` : lined(cell.text);
    case 'said':
      return `<strong>${lined(cell.name)}</strong><br>${lined(cell.text)}`;
    case 'tick':
      return '<span class="tick"></span>';
    case 'picture':
      return drawingOf(cell.picture);
  }
}
