/** The files of one kit for a shop page: pictures, data, and the fragments to paste. */

import { must, nth } from '../common/must.ts';
import { problem } from '../common/problem.ts';
import { formatDiagnostics, toDiagnostics } from '../describe/diagnostics.ts';
import type { Workshop } from '../describe/workshop.ts';
import { type Aspect, markOf, type Prepared } from '../draw/compose.ts';
import type { ThemeName } from '../draw/theme.ts';
import { DEFAULT_EFFORT } from '../place/improve.ts';
import { NoRouteError } from '../place/place.ts';
import type { PlacementStore } from '../place/stored.ts';
import { figureHtml } from '../shop/figure.ts';
import { figureFragment, imageFragment, inlineFragment, THEME } from '../shop/fragments.ts';
import { type KitData, kitDataOf } from '../shop/kit-data.ts';
import { type Narrow, narrowOf } from '../shop/narrow.ts';
import { type Drawer, drawPlan, type Outcome, type Plan, type PlanOptions, refused } from './draw-plan.ts';
import { type ShopContent, sharedFiles } from './embed-shared.ts';
import { sizeOfDrawing } from './gallery.ts';
import { svgToPng } from './png.ts';

export interface EmbedWanted {
  /** Address of the folder once it is uploaded, ending in a slash; without it, fragments are for pages that lie in it. */
  readonly base?: string;
  /** Of the pictures; a drawing that is part of a page takes the page's inks. */
  readonly theme?: ThemeName;
  readonly date?: string;
  /** Who the kit is from. */
  readonly workshop?: Workshop;
  /** Steps of the placement search. */
  readonly effort?: number;
}

/** What each file of a kit's folder is called behind the kit's id, or by itself. */
const ENDINGS = [
  '.svg',
  '.png',
  '@2x.png',
  '-drawing.svg',
  '-360-drawing.svg',
  '-360-key.svg',
  '-360-cards.svg',
  '.json',
] as const;
const FRAGMENTS = ['image.html', 'inline.html', 'figure.html'] as const;

/** Paths of a kit's files in the shop's folder, with slashes. */
export const embedPaths = (id: string): readonly string[] => [
  ...ENDINGS.map((ending) => `${id}/${id}${ending}`),
  ...FRAGMENTS.map((name) => `${id}/${name}`),
];

/** The file of a kit's data. */
export const dataPath = (id: string): string => `${id}/${id}.json`;

/** What was made of a kit, and what is to be said of it. */
interface Embedded {
  readonly files: readonly ShopContent[];
  readonly diagnostics: Outcome['diagnostics'];
}

const PLAIN: PlanOptions = { out: '', formats: ['svg'], mode: 'static' };

/** A drawing as a file of its own, at the size in CSS pixels that a page shows it at. */
interface Picture {
  readonly name: string;
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/**
 * Makes all files of a kit's folder; every drawing is read back first, and where one is not true to the kit nothing is made.
 *
 * @param plan its own drawings are left out of account
 * @param store where placements are kept
 */
export async function embedKit(
  plan: Plan,
  prepared: Prepared,
  wanted: EmbedWanted,
  drawer: Drawer,
  store?: PlacementStore,
): Promise<Embedded | Outcome> {
  const { id } = plan.kit;
  const dated: Aspect = wanted.date === undefined ? {} : { date: wanted.date };
  const themed: Aspect = { ...dated, ...(wanted.theme === undefined ? {} : { theme: wanted.theme }) };
  const narrow = await narrowed(plan, wanted, { ...dated, mark: markOf(prepared) }, drawer, store);
  if ('failed' in narrow) return narrow;
  const wide = [themed, { ...themed, only: ['drawing'] as const }];
  const slim = PIECES.map((piece): Aspect => ({ ...themed, only: [piece], width: narrow[piece].width }));
  const proofs = [proved(plan, prepared, wide, drawer), proved(plan, narrow.prepared, slim, drawer)];
  for (const proof of proofs) if ('failed' in proof) return proof;
  const picture = (name: string, of: Prepared, aspect: Aspect): Picture => {
    const { svg } = drawer.render(of, aspect);
    return { name, svg, ...must(sizeOfDrawing(svg), `size of ${name}`) };
  };
  const sheet = picture(`${id}.svg`, prepared, themed);
  const pictures: readonly Picture[] = [
    sheet,
    picture(`${id}-drawing.svg`, prepared, { ...themed, only: ['drawing'] }),
    ...PIECES.map((piece, i) => {
      const { width, height } = narrow[piece];
      return { ...picture(`${id}-360-${piece}.svg`, narrow.prepared, nth(slim, i)), width, height };
    }),
  ];
  const data = kitDataOf(prepared, {
    ...(wanted.workshop ? { workshop: wanted.workshop } : {}),
    pictures: pictures.map(({ name, width, height }) => ({ file: name, width, height })),
  });
  const file = (name: string, content: string | Uint8Array): ShopContent => ({
    path: `${id}/${name}`,
    content,
  });
  return {
    diagnostics: allOnce(proofs.flatMap(({ diagnostics }) => diagnostics)),
    files: [
      ...pictures.map(({ name, svg }) => file(name, svg)),
      file(`${id}.png`, await svgToPng(sheet.svg, Math.round(sheet.width))),
      file(`${id}@2x.png`, await svgToPng(sheet.svg, Math.round(2 * sheet.width))),
      file(`${id}.json`, `${JSON.stringify(data, null, 1)}\n`),
      ...fragmentsOf(data, prepared, narrow, dated, wanted, drawer).map(([name, text]) => file(name, text)),
    ],
  };
}

const PIECES = ['drawing', 'key', 'cards'] as const;

/** Reads the drawings of a kit back. */
const proved = (plan: Plan, prepared: Prepared, aspects: readonly Aspect[], drawer: Drawer) =>
  drawPlan(
    { ...plan, drawings: aspects.map((aspect) => ({ aspect, targets: [''] })) },
    prepared,
    PLAIN,
    drawer,
  );

/** The kit's own diagnostics are the same whichever of its drawings is read back. */
const allOnce = (diagnostics: Outcome['diagnostics']): Outcome['diagnostics'] => [
  ...new Map(diagnostics.map((one) => [formatDiagnostics([one]), one])).values(),
];

function fragmentsOf(
  data: KitData,
  prepared: Prepared,
  narrow: Narrow,
  dated: Aspect,
  { base = '' }: EmbedWanted,
  { renderInline }: Drawer,
): readonly (readonly [(typeof FRAGMENTS)[number], string])[] {
  const shared = { ...sharedFiles().version, base };
  const figure = figureHtml({
    data,
    drawing: renderInline(prepared, { ...dated, only: ['drawing'] }),
    narrow: narrow.drawing.inline,
    // Made for the narrow column too, yet with the revision mark that the figure bears.
    key: renderInline(prepared, { ...dated, only: ['key'], width: narrow.key.width }),
    styles: `${base}${THEME}?v=${shared.theme}`,
  });
  return [
    ['image.html', imageFragment(data, shared)],
    ['inline.html', inlineFragment(data, renderInline(prepared, dated), shared)],
    ['figure.html', figureFragment(data, figure, shared)],
  ];
}

/** The kit placed for a phone; or that there is no way for its wires there. */
async function narrowed(
  { file, loaded, kit }: Plan,
  { effort }: EmbedWanted,
  marked: Pick<Aspect, 'date'> & { readonly mark: string },
  { prepare }: Drawer,
  store: PlacementStore | undefined,
): Promise<Narrow | Outcome> {
  const options = {
    ...marked,
    ...(effort === undefined ? {} : { effort: { ...DEFAULT_EFFORT, steps: effort } }),
    ...(store ? { store } : {}),
  };
  try {
    return await narrowOf(kit, options, prepare);
  } catch (thrown) {
    if (!(thrown instanceof NoRouteError)) throw thrown;
    return refused(file, loaded, toDiagnostics([problem('no-route', ['kit'], {})], loaded.source));
  }
}
