/**
 * One build at a time in a workshop, or one of each shard. The lock is a file that says who holds it; one whose holder is gone is
 * recognised and taken over: its process has ended, its machine was started anew, or, on another machine, it has not been touched
 * for minutes.
 */
import {
  closeSync,
  fsyncSync,
  linkSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import { whyNotWritten } from '../../files/reason.ts';
import { isAlive, tempFileName } from '../../files/write.ts';
import { type Shard, shardName } from './shard.ts';

const holderSchema = z.object({
  pid: z.int().positive(),
  host: z.string(),
  /** Changes whenever the machine is started; empty where it does not tell. */
  boot: z.string(),
  /** When the process was started, in the system's own count: another process may get its number later. */
  begun: z.string(),
  /** ISO 8601, for people. */
  since: z.string(),
});
export type Holder = z.output<typeof holderSchema>;

/** Who asks, and how it is found out whether another is still there; for tests these are others than the machine's own. */
export interface Machine {
  readonly pid: number;
  readonly host: string;
  readonly boot: string;
  readonly begunOf: (pid: number) => string;
  readonly isAlive: (pid: number) => boolean;
}

const read = (file: string): string => {
  try {
    return readFileSync(file, 'utf8').trim();
  } catch {
    // Not every system has it.
    return '';
  }
};

export const thisMachine: Machine = {
  pid: process.pid,
  host: hostname(),
  boot: read('/proc/sys/kernel/random/boot_id'),
  // The 22nd field; the second, in brackets, may have blanks in it.
  begunOf: (pid) =>
    read(`/proc/${pid}/stat`)
      .replace(/^.*\) /s, '')
      .split(' ')[19] ?? '',
  isAlive,
};

/** How often a lock is touched, and after how long without that its holder on another machine is taken for gone; milliseconds. */
const BEAT = 20_000;
const GONE = 5 * 60_000;

interface Held {
  readonly release: () => void;
}
/** Why the lock could not be had, in words. */
interface Refused {
  readonly refused: string;
}

const LOCK = /^lock(-\d+-of-\d+)?$/;

/** Takes the lock of a workshop, or of a shard: the whole and a shard exclude each other, two different shards do not. */
export function takeLock(
  folder: string,
  shard: Shard | undefined,
  machine: Machine = thisMachine,
): Held | Refused {
  const name = shard ? `lock-${shardName(shard)}` : 'lock';
  const file = join(folder, name);
  const temp = join(folder, tempFileName(machine.pid));
  const holder: Holder = {
    pid: machine.pid,
    host: machine.host,
    boot: machine.boot,
    begun: machine.begunOf(machine.pid),
    since: new Date().toISOString(),
  };
  try {
    mkdirSync(folder, { recursive: true });
    const open = openSync(temp, 'wx');
    try {
      writeFileSync(open, JSON.stringify(holder));
      fsyncSync(open);
    } finally {
      closeSync(open);
    }
    // The clock of whoever keeps the files: that of another machine may be wrong.
    const now = statSync(temp).mtimeMs;
    for (let attempt = 0; ; attempt++) {
      try {
        // Whole or not at all, and only where there is none: a name that is taken is never replaced.
        linkSync(temp, file);
        break;
      } catch (thrown) {
        if (!(thrown instanceof Error && 'code' in thrown && thrown.code === 'EEXIST') || attempt > 3)
          throw thrown;
        const why = heldBy(file, now, machine);
        if (why !== undefined) return { refused: why };
        takeAway(file, now, machine);
      }
    }
    // Seen only now, so that of two that come at once at least one sees the other.
    for (const other of readdirSync(folder).filter((one) => LOCK.test(one) && one !== name)) {
      if (shard && other !== 'lock') continue;
      const why = heldBy(join(folder, other), now, machine);
      if (why === undefined) takeAway(join(folder, other), now, machine);
      else {
        rmSync(file, { force: true });
        return { refused: why };
      }
    }
  } catch (thrown) {
    return { refused: `the lock ${file} cannot be written: ${whyNotWritten(thrown)}` };
  } finally {
    rmSync(temp, { force: true });
  }
  const beat = setInterval(() => touch(file), BEAT);
  beat.unref();
  return {
    release: () => {
      clearInterval(beat);
      if (read(file) === JSON.stringify(holder)) rmSync(file, { force: true });
    },
  };
}

function touch(file: string): void {
  try {
    const now = new Date();
    utimesSync(file, now, now);
  } catch {
    // It was taken away; the build goes on, as every file is written whole.
  }
}

/** Moves a lock aside that nobody holds any more; if it turns out to be another one than was looked at, it is put back. */
function takeAway(file: string, now: number, machine: Machine): void {
  const aside = `${file}-${tempFileName(machine.pid).slice(-17)}`;
  try {
    renameSync(file, aside);
    if (heldBy(aside, now, machine) !== undefined) linkSync(aside, file);
  } catch {
    // Another has taken it away, or holds it again: that is seen at the next attempt.
  } finally {
    rmSync(aside, { force: true });
  }
}

/** Who holds a lock, in words; absent when its holder is gone, or there is no such lock. */
function heldBy(file: string, now: number, machine: Machine): string | undefined {
  const found = statSync(file, { throwIfNoEntry: false });
  if (!found) return undefined;
  const holder = holderIn(file);
  const remedy = `wait until it has finished; if there is no such build, delete ${file}`;
  // Written in one step, a lock that cannot be read was spoilt by something else: it counts until it is old.
  if (!holder)
    return now - found.mtimeMs > GONE ? undefined : `another build holds the lock ${file}: ${remedy}`;
  if (isGone(holder, now - found.mtimeMs, machine)) return undefined;
  const { pid, host, since } = holder;
  return `another build is at work here: process ${pid} on ${host}, since ${since}; ${remedy}`;
}

function holderIn(file: string): Holder | undefined {
  try {
    return holderSchema.safeParse(JSON.parse(readFileSync(file, 'utf8'))).data;
  } catch {
    return undefined;
  }
}

function isGone(holder: Holder, untouched: number, machine: Machine): boolean {
  if (holder.host !== machine.host) return untouched > GONE;
  if (holder.boot !== machine.boot) return true;
  return !machine.isAlive(holder.pid) || machine.begunOf(holder.pid) !== holder.begun;
}
