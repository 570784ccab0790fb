/** A workshop's folder as a build sees it: locked while it is at work, and where nothing else says so, with the cache in it. */
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import type { Catalogue } from '../catalogue.ts';
import { Build } from './build.ts';
import { programKey } from './keys.ts';
import { takeLock } from './lock.ts';
import type { BuildOptions, Listener, Summary } from './options.ts';
import type { Pool } from './pool.ts';
import type { Shard } from './shard.ts';
import type { FileHashes } from './write-out.ts';

/** What the program keeps in a workshop for itself. */
export const OWN_FOLDER = '.solderleaf';

/** The folder of the cache where none is named. */
export const usualCache = (folder: string): string => join(folder, OWN_FOLDER, 'cache');

export const usualWorkers = (): number => availableParallelism();

export interface WorkshopOptions {
  readonly cache?: string;
  readonly shard?: Shard;
  readonly prune: boolean;
  readonly check: boolean;
}

/** Why nothing was built, in words. */
interface NotBuilt {
  readonly refused: string;
}

export class Workshop {
  readonly #pool: Pool;
  readonly #options: WorkshopOptions;
  readonly #hashes: FileHashes | undefined;
  #program: string | undefined;
  #atWork: { readonly build: Build; readonly release: () => void } | undefined;

  constructor(pool: Pool, options: WorkshopOptions, hashes?: FileHashes) {
    this.#pool = pool;
    this.#options = options;
    this.#hashes = hashes;
  }

  /** Builds under the lock; a check writes nothing, and needs none. */
  async build(catalogue: Catalogue, tell: Listener): Promise<Summary | NotBuilt> {
    const { cache, shard, prune, check } = this.#options;
    const own = join(catalogue.folder, OWN_FOLDER);
    const lock = check ? { release: () => undefined } : takeLock(own, shard);
    if ('refused' in lock) return lock;
    try {
      this.#program ??= programKey();
      const options: BuildOptions = {
        cache: cache ?? usualCache(catalogue.folder),
        program: this.#program,
        prune,
        check,
        ...(shard ? { shard } : {}),
      };
      const build = new Build(catalogue, options, tell, this.#hashes);
      this.#atWork = { build, release: lock.release };
      return await build.run(this.#pool);
    } finally {
      this.#atWork = undefined;
      lock.release();
    }
  }

  /** Records what was done and gives the lock back, where the process is told to end. */
  interrupt(): void {
    this.#atWork?.build.interrupt();
    this.#atWork?.release();
  }
}
