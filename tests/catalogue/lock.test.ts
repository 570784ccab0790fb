/** Who may build, and which locks are of builds that are gone. */
import { readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type Holder, type Machine, takeLock, thisMachine } from '../../src/catalogue/build/lock.ts';
import { clearWorkshops, newFolder } from './workshop.ts';

afterAll(clearWorkshops);

const machine: Machine = {
  pid: 100,
  host: 'bench',
  boot: 'monday',
  begunOf: (pid) => `begun-${pid}`,
  isAlive: () => true,
};
const another: Machine = { ...machine, pid: 200 };

const take = (folder: string, ...rest: [index?: number, by?: Machine]) => {
  const [index, by = machine] = rest;
  return takeLock(folder, index === undefined ? undefined : { index, count: 5 }, by);
};
const refusedIn = (taken: ReturnType<typeof takeLock>): string => ('refused' in taken ? taken.refused : '');

describe('a lock', () => {
  it('is had by one at a time, says who has it, and is given back', () => {
    const folder = newFolder();
    const first = take(folder);
    expect(refusedIn(first)).toBe('');
    const second = refusedIn(take(folder, undefined, another));
    expect(second).toMatch(
      /^another build is at work here: process 100 on bench, since \d{4}-\d\d-\d\dT\S+; wait until/,
    );
    expect(second).toContain(join(folder, 'lock'));
    expect(readdirSync(folder)).toEqual(['lock']);
    if ('release' in first) first.release();
    expect(readdirSync(folder)).toEqual([]);
    expect(refusedIn(take(folder, undefined, another))).toBe('');
  });
  it('of a shard leaves the other shards theirs, and excludes the whole', () => {
    const folder = newFolder();
    expect(refusedIn(take(folder, 1))).toBe('');
    expect(refusedIn(take(folder, 2, another))).toBe('');
    expect(refusedIn(take(folder, 1, another))).toContain('process 100');
    expect(refusedIn(take(folder, undefined, { ...machine, pid: 300 }))).toMatch(/process [12]00 on bench/);
    // Whoever was refused leaves nothing behind.
    expect(readdirSync(folder).sort()).toEqual(['lock-1-of-5', 'lock-2-of-5']);
    const whole = newFolder();
    expect(refusedIn(take(whole))).toBe('');
    expect(refusedIn(take(whole, 3, another))).toContain('process 100');
    expect(readdirSync(whole)).toEqual(['lock']);
  });
  it('that is taken away and had by another is not given back', () => {
    const folder = newFolder();
    const first = take(folder);
    writeFileSync(join(folder, 'lock'), 'of another');
    if ('release' in first) first.release();
    expect(readFileSync(join(folder, 'lock'), 'utf8')).toBe('of another');
  });
  it('is of this machine and process where nobody says otherwise', () => {
    const folder = newFolder();
    expect(refusedIn(takeLock(folder, undefined))).toBe('');
    const held = JSON.parse(readFileSync(join(folder, 'lock'), 'utf8')) as Holder;
    expect(held.pid).toBe(process.pid);
    expect(held.begun).toBe(thisMachine.begunOf(process.pid));
    // Linux has both; elsewhere they are empty, and the process alone decides.
    if (process.platform === 'linux') expect(held.boot.length * held.begun.length).toBeGreaterThan(0);
    expect(refusedIn(takeLock(folder, undefined))).toContain(`process ${process.pid}`);
  });
});

describe('a lock whose holder is gone is taken over', () => {
  const old = (folder: string, minutes: number): void => {
    const then = new Date(Date.now() - minutes * 60_000);
    utimesSync(join(folder, 'lock'), then, then);
  };
  const heldThen = (by: Machine, minutes = 0): string => {
    const folder = newFolder();
    take(folder);
    old(folder, minutes);
    return refusedIn(take(folder, undefined, by));
  };
  it('when its process has ended', () => {
    expect(heldThen({ ...another, isAlive: (pid) => pid !== 100 })).toBe('');
  });
  it('when its number is another process’s by now', () => {
    expect(heldThen({ ...another, begunOf: () => 'begun later' })).toBe('');
  });
  it('when the machine was started anew, though the number is in use again', () => {
    expect(heldThen({ ...another, boot: 'tuesday' })).toBe('');
  });
  it('on another machine, when it was not touched for minutes, and not before', () => {
    const elsewhere = { ...another, host: 'office', boot: 'sunday', isAlive: () => false };
    expect(heldThen(elsewhere)).toContain('process 100 on bench');
    expect(heldThen(elsewhere, 4)).toContain('process 100 on bench');
    expect(heldThen(elsewhere, 6)).toBe('');
    // On the same machine a process that is alive keeps it, however long it was asleep.
    expect(heldThen(another, 600)).toContain('process 100 on bench');
  });
  it('and one that says nothing, when it is old', () => {
    const folder = newFolder();
    writeFileSync(join(folder, 'lock'), '{ cut sho');
    expect(refusedIn(take(folder))).toMatch(/^another build holds the lock/);
    old(folder, 6);
    expect(refusedIn(take(folder))).toBe('');
    expect(readdirSync(folder)).toEqual(['lock']);
  });
});
