/** What a build is told, what it tells while it is at work, and what came of it. */
import type { Shard } from './shard.ts';

export interface BuildOptions {
  /** The cache's folder. */
  readonly cache: string;
  readonly program: string;
  readonly shard?: Shard;
  /** Delete outputs of kits that are gone. */
  readonly prune: boolean;
  /** Write nothing; tell what is out of date. */
  readonly check: boolean;
}

/** Told of what happens while it happens. */
export interface Listener {
  readonly line: (text: string) => void;
  readonly errorLine: (text: string) => void;
  /** How many kits of all that are out of date are done, and which was the last. */
  readonly progress: (done: number, all: number, id: string) => void;
}

export interface Summary {
  readonly kits: number;
  /** Drawn anew; taken from the cache; as they were; with problems. */
  readonly made: number;
  readonly found: number;
  readonly fresh: number;
  readonly failed: number;
  /** Files of kits that are gone, or that are no longer asked for. */
  readonly leftOver: number;
  readonly stale: number;
  /** What all kits share on shop pages is out of date though they are not; told by a check. */
  readonly shopStale: boolean;
  /** Ids of the kits that have warnings, in the order of the catalogue. */
  readonly warned: readonly string[];
}
