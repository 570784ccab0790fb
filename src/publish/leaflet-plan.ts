/** What leaflets are made of one kit: on which paper, in which formats, and named how. */
import { join } from 'node:path';
import { must } from '../common/must.ts';
import type { Kit } from '../describe/kit.ts';
import type { Workshop } from '../describe/workshop.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Page } from '../draw/head.ts';
import { findPage } from '../files/layouts.ts';
import type { Paper } from '../leaflet/document.ts';
import { leafletToHtml } from '../leaflet/html.ts';
import { leafletOf } from '../leaflet/leaflet.ts';
import type { Language } from '../messages/language.ts';
import { fontFaces } from './modes.ts';
import { leafletToBooklet, leafletToPdf } from './pdf.ts';

export const leafletFormats = ['pdf', 'html'] as const;
export type LeafletFormat = (typeof leafletFormats)[number];

export interface LeafletWanted {
  readonly formats: readonly LeafletFormat[];
  /** A page format of `layouts/pages/` in place of the kit's. */
  readonly page?: string;
  readonly landscape?: boolean;
  /** Folded sheets, each of two pages; with PDF only. */
  readonly booklet?: boolean;
  readonly plot?: boolean;
  /** In place of the kit's. */
  readonly language?: Language;
  readonly date?: string;
  /** Who it is from. */
  readonly workshop?: Workshop;
}

/** Of a kit that names no page. */
const USUAL_PAGE = 'a4';
/** Millimetres; less paper has less of it to leave blank. */
const MARGINS = [
  { below: 120, margin: 9 },
  { below: 170, margin: 12 },
  { below: Number.POSITIVE_INFINITY, margin: 16 },
] as const;
const marginOn = (short: number): number =>
  must(
    MARGINS.find(({ below }) => short < below),
    'margin',
  ).margin;

/** The paper of a leaflet; of a booklet that of one page, half of the sheet. */
function paperOf({ width, height }: Page, { landscape = false, booklet = false }: LeafletWanted): Paper {
  const [long, short] = [Math.max(width, height), Math.min(width, height)];
  const turned = landscape || width > height;
  const [across, down] = booklet ? [long / 2, short] : turned ? [long, short] : [short, long];
  return { width: across, height: down, margin: marginOn(Math.min(across, down)) };
}

/** A file of a leaflet. */
interface LeafletFile {
  readonly target: string;
  readonly as: LeafletFormat | 'booklet';
}

/** The files of a kit's leaflet; what is not the kit's usual, as it is written, is named so. */
export function leafletFiles(kit: Kit, out: string, wanted: LeafletWanted): readonly LeafletFile[] {
  const { formats, page, landscape = false, booklet = false, language } = wanted;
  const unusual = [
    ...(page === undefined || page === (kit.page ?? USUAL_PAGE) ? [] : [page]),
    ...(landscape ? ['landscape'] : []),
    ...(language === undefined || language === kit.language ? [] : [language]),
  ].map((word) => `-${word}`);
  const file = (as: LeafletFile['as'], what: string, ending: string): LeafletFile => ({
    target: join(out, `${kit.id}-${what}${unusual.join('')}.${ending}`),
    as,
  });
  return [
    ...formats.map((format) => file(format, 'leaflet', format)),
    ...(booklet ? [file('booklet', 'booklet', 'pdf')] : []),
  ];
}

/** What a file of a kit's leaflet holds. */
export async function leafletContent(
  prepared: Prepared,
  as: LeafletFile['as'],
  wanted: LeafletWanted,
): Promise<string | Uint8Array> {
  const booklet = as === 'booklet';
  const page = must(findPage(wanted.page ?? prepared.circuit.kit.page ?? USUAL_PAGE), 'page');
  const paper = paperOf(page, { ...wanted, booklet });
  const leaflet = leafletOf(prepared, { ...wanted, paper, bound: booklet });
  if (booklet) return leafletToBooklet(leaflet);
  if (as === 'pdf') return leafletToPdf(leaflet);
  // The page is made once to know its letters.
  return leafletToHtml(leaflet, await fontFaces([...new Set(leafletToHtml(leaflet))].join('')));
}
