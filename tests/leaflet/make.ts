/** Leaflets of kits, placed without a search: what stands in them does not depend on where parts are. */
import { inLanguage, type Kit } from '../../src/describe/kit.ts';
import type { Prepared } from '../../src/draw/compose.ts';
import { findArrangement } from '../../src/files/layouts.ts';
import { loadKit } from '../../src/files/load.ts';
import type { Language } from '../../src/messages/language.ts';
import { prepare } from '../../src/pipeline.ts';
import { DEFAULT_EFFORT } from '../../src/place/improve.ts';
import { type LeafletWanted, leafletContent } from '../../src/publish/leaflet-plan.ts';
import { placedOnce } from '../tools/placements.ts';

const known = new Map<string, Promise<Prepared>>();

/** A kit's file, placed once. */
export function preparedOf(file: string, language: Language = 'en'): Promise<Prepared> {
  const key = `${language} ${file}`;
  const before = known.get(key);
  if (before) return before;
  const made = loadKit(file).then(({ kit, diagnostics }) => {
    if (!kit) throw new Error(`${file}: ${diagnostics.map(({ message }) => message).join('; ')}`);
    return placed(inLanguage(kit, language));
  });
  known.set(key, made);
  return made;
}

export async function placed(kit: Kit): Promise<Prepared> {
  const arrangement = findArrangement(kit.arrangement);
  if (typeof arrangement === 'string') throw new Error(arrangement);
  return prepare(kit, arrangement, { effort: { ...DEFAULT_EFFORT, steps: 0 }, ...placedOnce });
}

export const PLAIN: LeafletWanted = { formats: ['pdf'] };

const pdfs = new WeakMap<Prepared, Map<string, Promise<Uint8Array>>>();

/** A leaflet's file, made once for all that asks for the same one. */
export function pdfOf(prepared: Prepared, wanted: Partial<LeafletWanted> = {}): Promise<Uint8Array> {
  const ofKit = pdfs.get(prepared) ?? new Map<string, Promise<Uint8Array>>();
  pdfs.set(prepared, ofKit);
  const key = JSON.stringify(wanted);
  const now = ofKit.get(key) ?? pdfAnew(prepared, wanted);
  ofKit.set(key, now);
  return now;
}

async function pdfAnew(prepared: Prepared, wanted: Partial<LeafletWanted>): Promise<Uint8Array> {
  const made = await leafletContent(prepared, 'pdf', { ...PLAIN, ...wanted });
  if (typeof made === 'string') throw new Error('a PDF is bytes');
  return made;
}

export async function htmlOf(prepared: Prepared, wanted: Partial<LeafletWanted> = {}): Promise<string> {
  const made = await leafletContent(prepared, 'html', { ...PLAIN, ...wanted });
  if (typeof made !== 'string') throw new Error('a page is text');
  return made;
}

/** A kit whose title and every label are changed. */
export const relabelled = (kit: Kit, title: string, label: (name: string) => string): Kit => ({
  ...kit,
  title,
  parts: kit.parts.map((part) => ({ ...part, label: label(part.name) })),
});
