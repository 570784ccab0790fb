/**
 * Placing at the usual effort takes seconds, and many tests look at the samples where that puts their parts. They share what the first
 * of them places; a test that asks how parts are placed uses `placedAnew`, which takes nothing and compares.
 */
import { Cache, placementsIn } from '../../src/catalogue/build/cache.ts';
import type { PlacementStore } from '../../src/place/stored.ts';
import { PLACEMENTS } from './placements-folder.ts';

const folder = process.env[PLACEMENTS];
const shared = folder === undefined ? undefined : placementsIn(new Cache(folder), 'tests');

/** Options for placing: what another test of this run placed is taken again. None outside of a run. */
export const placedOnce: { readonly store?: PlacementStore } = shared ? { store: shared } : {};

/** Takes nothing of what is kept, keeps what is placed, and throws where that is another placement than the one that is kept. */
export const anewBeside = (kept: PlacementStore): PlacementStore => ({
  find: () => undefined,
  keep: (asked, placement) => {
    const before = kept.find(asked);
    if (before !== undefined && JSON.stringify(before) !== JSON.stringify(placement))
      throw new Error(`placed otherwise than before: ${asked.slice(0, 200)}`);
    kept.keep(asked, placement);
  },
});

/** The same for what must be placed anew; an error where another test placed the same kit otherwise. */
export const placedAnew: { readonly store?: PlacementStore } = shared ? { store: anewBeside(shared) } : {};
