/** Tasks on worker threads: never more at work than there are threads, so that memory does not grow with the catalogue. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { nth } from '../../common/must.ts';
import type { Answer, Task } from './make.ts';

export interface Pool {
  /** Runs a task; one that ends in an exception is the exception of this task alone. */
  readonly run: (task: Task) => Promise<Answer>;
  readonly workers: number;
  readonly close: () => Promise<void>;
}

/** The worker's file: beside this one in the source, and in `dist/` under the name that the build gives it. */
function workerFile(): string {
  const built = fileURLToPath(new URL('./build-worker.js', import.meta.url));
  return existsSync(built) ? built : fileURLToPath(new URL('./worker.ts', import.meta.url));
}

/** A pool that starts its threads when there is something to do. */
export function poolOf(workers: number): Pool {
  let started: Promise<{ run: (task: Task) => Promise<Answer>; destroy: () => Promise<void> }> | undefined;
  const start = async () => {
    const { Tinypool } = await import('tinypool');
    return new Tinypool({
      filename: workerFile(),
      minThreads: 1,
      maxThreads: workers,
      // A thread that has drawn one kit draws the next one faster, so none is ended while there may be more to do.
      isolateWorkers: false,
      idleTimeout: 3_600_000,
    });
  };
  return {
    workers,
    run: async (task) => {
      started ??= start();
      return (await started).run(task);
    },
    close: async () => (await started)?.destroy(),
  };
}

/**
 * Hands out items to so many at once; what comes back comes in any order. Each begins in a stretch of its own: neighbours in a catalogue are
 * often placed alike, and two that are drawn at the same time would both be placed.
 */
export async function inParallel<T>(
  items: readonly T[],
  atOnce: number,
  work: (item: T) => Promise<void>,
): Promise<void> {
  const taken = new Set<number>();
  const runners = Math.min(atOnce, items.length);
  const runner = async (_: unknown, i: number): Promise<void> => {
    const first = Math.floor((i * items.length) / runners);
    for (const at of [...items.keys()].map((k) => (first + k) % items.length)) {
      if (taken.has(at)) continue;
      taken.add(at);
      await work(nth(items, at));
    }
  };
  await Promise.all(Array.from({ length: runners }, runner));
}
