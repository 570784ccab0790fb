/** Builds by the program as it is shipped: several at once, in other surroundings, killed, and where the disk is full. */
import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { killOnce, leftIn } from './kill.ts';
import {
  buildByCli,
  buildHere,
  clearWorkshops,
  copyOf,
  newFolder,
  newWorkshop,
  outOf,
  putKit,
  smallKit,
  start,
} from './workshop.ts';

afterAll(clearWorkshops);

const ids = ['robin', 'siskin', 'finch', 'linnet'];
const folder = newWorkshop(
  Object.fromEntries(ids.map((id, i) => [id, smallKit(id, `${i + 1}00k`)])),
  'outputs: [drawing, png, positions, steps, inline, response, loads]\n',
);
let clean: Readonly<Record<string, string>> = {};
beforeAll(async () => {
  expect(await buildByCli(folder, ['--workers', '1'])).toMatchObject({ code: 0, error: '' });
  clean = outOf(folder);
  expect(Object.keys(clean).length).toBeGreaterThan(ids.length * 7);
});

describe('the same bytes', () => {
  it('by two workers, and in another time zone and language', async () => {
    const copy = copyOf(folder);
    const env = { TZ: 'Pacific/Kiritimati', LC_ALL: 'tr_TR.UTF-8', LANG: 'ar_EG.UTF-8' };
    expect(await buildByCli(copy, ['--workers', '2'], env)).toMatchObject({ code: 0 });
    expect(outOf(copy)).toEqual(clean);
  });
  it('from a warm cache, by one process or by one in this one', async () => {
    const copy = copyOf(folder);
    const cache = join(folder, '.solderleaf', 'cache');
    const built = await buildByCli(copy, [], { SOLDERLEAF_CACHE: cache });
    expect(built.out).toMatch(/\n4 kits: 4 from the cache\n$/);
    expect(outOf(copy)).toEqual(clean);
    // Built from the source the program is another one, which the cache tells apart; what it draws is the same.
    const here = copyOf(folder);
    expect(await buildHere(here, { cache })).toMatchObject({ made: 4, found: 0 });
    for (const [name, hash] of Object.entries(clean))
      if (name !== 'solderleaf-manifest.json') expect(outOf(here)[name], name).toBe(hash);
  });
  it('by five shares as five processes over one cache, in one folder or in five, joined at the end', async () => {
    const cache = newFolder();
    const [shared, ...checkouts] = [0, 1, 2, 3, 4, 5].map(() => copyOf(folder));
    const shares = [1, 2, 3, 4, 5];
    // As a batch job on one disk.
    const ended = await Promise.all(
      shares.map((i) => buildByCli(shared ?? '', ['--workers', '1', '--cache', cache, '--shard', `${i}/5`])),
    );
    expect(ended.map(({ code, error }) => [code, error])).toEqual(shares.map(() => [0, '']));
    const records = Object.keys(outOf(shared ?? '')).filter((name) => /manifest/.test(name));
    expect(records).toEqual(shares.map((i) => `solderleaf-manifest-${i}-of-5.json`));
    const kits = records.flatMap((name) => [
      ...new Set(
        Object.values(
          JSON.parse(readFileSync(join(shared ?? '', 'out', name), 'utf8')).outputs as Record<
            string,
            { readonly kit: string }
          >,
        ).map(({ kit }) => kit),
      ),
    ]);
    expect(kits.sort()).toEqual([...ids].sort());
    expect((await buildByCli(shared ?? '', ['--cache', cache])).out).toBe('4 kits: 4 up to date\n');
    expect(outOf(shared ?? '')).toEqual(clean);
    // As a CI's matrix: checkouts that have but the cache in common.
    await Promise.all(
      checkouts.map((one, i) =>
        buildByCli(one, ['--workers', '1', '--cache', cache], { SOLDERLEAF_SHARD: `${i + 1}/5` }),
      ),
    );
    const last = copyOf(folder);
    expect((await buildByCli(last, ['--cache', cache])).out).toMatch(/\n4 kits: 4 from the cache\n$/);
    expect(outOf(last)).toEqual(clean);
  });
});

describe('a build that is killed', () => {
  // Fifty more by `npm run kills`.
  it.each([
    ['SIGKILL', 1500, false],
    ['SIGKILL', 600, true],
    ['SIGINT', 700, true],
  ] as const)(
    'by %s after %d ms leaves nothing that the next one does not put right',
    async (signal, after, warm) => {
      const copy = copyOf(folder, warm);
      const { code, out, left } = await killOnce(copy, after, signal, warm);
      expect([code, left]).toEqual([0, []]);
      expect(out).toEqual(clean);
    },
  );
  it('by a signal that it hears gives its lock back, and says by its exit code what ended it', async () => {
    const copy = copyOf(folder);
    const { child, ended } = start([copy, '--workers', '1']);
    const lock = join(copy, '.solderleaf', 'lock');
    while (!existsSync(lock)) await new Promise((next) => setTimeout(next, 5));
    const second = await buildByCli(copy);
    expect(second.code).toBe(1);
    expect(second.error).toContain(`not built: another build is at work here: process ${child.pid} on `);
    child.kill('SIGTERM');
    expect((await ended).code).toBe(143);
    expect(existsSync(lock)).toBe(false);
  });
});

describe('where nothing can be written', () => {
  const isRoot = process.getuid?.() === 0;
  const canMount = isRoot && process.platform === 'linux' && mounts();

  function mounts(): boolean {
    const place = newFolder();
    try {
      execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=16k', 'tmpfs', place], { stdio: 'ignore' });
      execFileSync('umount', [place]);
      return true;
    } catch {
      return false;
    }
  }

  // A small disk has to be mounted, which takes root.
  it.skipIf(!canMount)('a full disk is told by each kit, and nothing there is cut short', async () => {
    const copy = copyOf(folder, true);
    const out = join(copy, 'out');
    mkdirSync(out);
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=400k', 'tmpfs', out]);
    try {
      const { code, error } = await buildByCli(copy);
      expect(code).toBe(1);
      expect(error).toMatch(/not written .*: the disk is full/);
      const there = outOf(copy);
      expect(Object.keys(there).length).toBeGreaterThan(0);
      for (const [name, hash] of Object.entries(there))
        if (!/manifest/.test(name)) expect([name, hash]).toEqual([name, clean[name]]);
      execFileSync('mount', ['-o', 'remount,size=40m', out]);
      expect(await buildByCli(copy)).toMatchObject({ code: 0, error: '' });
      expect(outOf(copy)).toEqual(clean);
    } finally {
      execFileSync('umount', [out]);
    }
  });
  // Root may write to a folder whose rights say otherwise, but not to a disk that is mounted read-only.
  it.skipIf(isRoot && !canMount)('a read-only folder is told, and what is in it stays', async () => {
    const copy = copyOf(folder);
    const out = join(copy, 'out');
    mkdirSync(out);
    if (isRoot) execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=40m', 'tmpfs', out]);
    try {
      await buildByCli(copy);
      putKit(copy, 'robin', smallKit('robin', '510k'));
      if (isRoot) execFileSync('mount', ['-o', 'remount,ro', out]);
      else chmodSync(out, 0o500);
      const { code, error } = await buildByCli(copy);
      expect([code, error]).toEqual([
        1,
        expect.stringMatching(/not written .*robin.*: (permission denied|the disk is read-only)/),
      ]);
      expect(outOf(copy)).toEqual(clean);
      if (isRoot) execFileSync('mount', ['-o', 'remount,rw', out]);
      else chmodSync(out, 0o700);
      expect(await buildByCli(copy)).toMatchObject({ code: 0, error: '' });
      expect(outOf(copy)['robin.svg']).not.toBe(clean['robin.svg']);
      expect(outOf(copy)['siskin.svg']).toBe(clean['siskin.svg']);
    } finally {
      if (isRoot) execFileSync('umount', [out]);
    }
  });
  it('a file in the folder’s place is told', async () => {
    const copy = copyOf(folder, true);
    writeFileSync(join(copy, 'out'), 'mine');
    const { code, error } = await buildByCli(copy);
    expect(code).toBe(1);
    expect(error).toMatch(/there is a file where the folder should be/);
    expect(readFileSync(join(copy, 'out'), 'utf8')).toBe('mine');
  });
});

describe('watching', () => {
  it('builds what is saved, and survives an error', async () => {
    const copy = newWorkshop({ robin: smallKit('robin') }, 'outputs: [drawing]\n');
    const { child, ended } = start([copy, '--watch', '--workers', '1']);
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => (said += text));
    const until = async (words: RegExp): Promise<void> => {
      const end = Date.now() + 60_000;
      while (!words.test(said)) {
        if (Date.now() > end) throw new Error(`never said ${words}: ${said}`);
        await new Promise((next) => setTimeout(next, 10));
      }
      said = '';
    };
    await until(/watching/);
    const svg = join(copy, 'out', 'robin.svg');
    const before = readFileSync(svg, 'utf8');
    putKit(copy, 'robin', smallKit('robin', '510k'));
    await until(/1 kit: 1 made/);
    expect(readFileSync(svg, 'utf8')).not.toBe(before);
    putKit(copy, 'robin', 'kit: robin\n');
    await until(/1 kit: 1 with problems/);
    writeFileSync(join(copy, 'solderleaf.yaml'), 'kits: [');
    await until(/bad-syntax/);
    writeFileSync(join(copy, 'solderleaf.yaml'), 'kits: [kits/*.yaml]\noutputs: [drawing]\n');
    putKit(copy, 'robin', smallKit('robin'));
    await until(/1 kit: 1 (from the cache|up to date)/);
    expect(readFileSync(svg, 'utf8')).toBe(before);
    child.kill('SIGINT');
    expect((await ended).code).toBe(130);
    expect(leftIn(join(copy, '.solderleaf'))).toEqual([]);
  });
});

describe('wrong use', () => {
  it('exits with 2', async () => {
    for (const args of [
      ['--shard', '6/5'],
      ['--workers', '0'],
      ['--watch', '--check'],
    ])
      expect(await buildByCli(folder, args), args.join(' ')).toMatchObject({ code: 2 });
    expect(await buildByCli(folder, [], { SOLDERLEAF_SHARD: 'two' })).toMatchObject({
      code: 2,
      error: expect.stringContaining('SOLDERLEAF_SHARD: “two” is not a share'),
    });
  });
  it('a check exits with 1 where anything is out of date', async () => {
    const copy = copyOf(folder);
    expect(await buildByCli(copy, ['--check'])).toMatchObject({
      code: 1,
      out: expect.stringMatching(/4 out of date/),
    });
    rmSync(join(copy, 'out'), { recursive: true, force: true });
    expect(await buildByCli(folder, ['--check'])).toMatchObject({ code: 0, out: '4 kits: 4 up to date\n' });
  });
});
