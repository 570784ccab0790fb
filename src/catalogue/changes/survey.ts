/** All kits of a catalogue as they are now, compared with what they were when they were built last. */
import { join, relative, sep } from 'node:path';
import { inLanguage, type Kit } from '../../describe/kit.ts';
import type { Prepared } from '../../draw/compose.ts';
import { findArrangement, findPage } from '../../files/layouts.ts';
import type { Loaded } from '../../files/load.ts';
import { isBytes, LARGEST_DRAWING, readBytes } from '../../files/read-file.ts';
import { prepare, render, sheetsOf } from '../../pipeline.ts';
import { NoRouteError } from '../../place/place.ts';
import type { PlacementStore } from '../../place/stored.ts';
import type { Catalogue, Job } from '../catalogue.ts';
import { loadJob } from '../load-job.ts';
import { compareKit, type KitChanges } from './compare.ts';
import { figuresOf, type KitFigures } from './figures.ts';
import { readFigures, storedKits } from './store.ts';

export interface Surveyed {
  readonly changes: KitChanges;
  /** Where it is described, from the workshop's folder; absent for one that is no longer in the catalogue. */
  readonly source?: string;
  /** What it is now. */
  readonly figures?: KitFigures;
  /** The drawings' SVG texts: as it was built, and as it would be; of several sheets the first, which shows the wiring. */
  readonly pictures?: { readonly before?: string; readonly after?: string };
}

interface SurveyOptions {
  /** Draw those that have changed, too: that takes as long as to build them. */
  readonly draw: boolean;
  /** Told of each kit before it is drawn. */
  readonly progress?: (kit: string) => void;
  /** Where builds keep placements: what only changed in values is not placed again. */
  readonly store?: PlacementStore;
}

/** One kit after another, in the order of the catalogue, then those that are no longer in it. */
export async function* survey(
  catalogue: Catalogue,
  { draw, progress, store }: SurveyOptions,
): AsyncGenerator<Surveyed> {
  const { folder, jobs } = catalogue;
  for (const job of jobs) {
    const loaded = withJob(await loadJob(job), job);
    const stored = readFigures(folder, job.id);
    const old = draw ? oldPicture(catalogue, job.id) : undefined;
    // What was kept without being drawn has no mark, but its drawing may.
    const before = stored && { ...stored, mark: stored.mark ?? markIn(old) };
    const unplaced = figuresOf(loaded, undefined, job.id);
    const source = relative(folder, job.file).split(sep).join('/');
    const changes = compareKit(before, unplaced);
    if (!draw || changes.became === 'same' || changes.became === 'failed' || !loaded.kit) {
      yield {
        changes,
        source,
        figures: unplaced,
        ...(old === undefined ? {} : { pictures: { before: old } }),
      };
      continue;
    }
    progress?.(job.id);
    const prepared = await placed(loaded.kit, store);
    const figures = prepared ? figuresOf(loaded, prepared, job.id) : unplaced;
    const pictures = {
      ...(old === undefined ? {} : { before: old }),
      ...(prepared ? { after: pictureOf(prepared, job.date) } : {}),
    };
    yield { changes: compareKit(before, figures), source, figures, pictures };
  }
  for (const id of storedKits(folder).filter((one) => !jobs.some((job) => job.id === one)))
    yield { changes: compareKit(readFigures(folder, id), undefined) };
}

/** The kit with what the catalogue says in its place. */
function withJob(loaded: Loaded, { arrangement, page, language }: Job): Loaded {
  const { kit } = loaded;
  if (!kit) return loaded;
  const own: Kit = {
    ...inLanguage(kit, language),
    arrangement: arrangement ?? kit.arrangement,
    ...(page === undefined ? {} : { page }),
  };
  return { ...loaded, kit: own };
}

/** Absent where the kit names an arrangement that there is not, or its wires find no way: building it tells why. */
async function placed(kit: Kit, store: PlacementStore | undefined): Promise<Prepared | undefined> {
  const arrangement = findArrangement(kit.arrangement);
  if (typeof arrangement === 'string') return undefined;
  try {
    return await prepare(kit, arrangement, store ? { store } : {});
  } catch (thrown) {
    if (thrown instanceof NoRouteError) return undefined;
    throw thrown;
  }
}

function pictureOf(prepared: Prepared, date: string | undefined): string {
  const { page: name } = prepared.circuit.kit;
  const page = name === undefined ? undefined : findPage(name);
  const [first = {}] = sheetsOf(prepared, { ...(page ? { page } : {}), ...(date ? { date } : {}) });
  return render(prepared, first).svg;
}

function oldPicture({ out }: Catalogue, id: string): string | undefined {
  const bytes = readBytes(join(out, `${id}.svg`), LARGEST_DRAWING);
  return isBytes(bytes) ? Buffer.from(bytes).toString('utf8') : undefined;
}

/** The mark that a drawing's root bears. */
const markIn = (svg: string | undefined): string | null =>
  / data-revision="([^"]{1,20})"/.exec(/<svg\b[^>]*>/.exec(svg ?? '')?.[0] ?? '')?.[1] ?? null;
