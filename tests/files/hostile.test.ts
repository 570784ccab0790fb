/** Runs that are killed, disks that are full, pipes that close, folders and scripts that are not what they seem. */
import { type SpawnSyncReturns, spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { seeded } from '../../src/common/random.ts';
import { tempFileName, writeAtomically } from '../../src/files/write.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
afterAll(() => {
  // A disk that was mounted here goes first; where none was, that is refused and no matter.
  spawnSync('umount', [join(folder, 'disk')]);
  rmSync(folder, { recursive: true, force: true });
});
const fresh = (name: string): string => {
  const made = join(folder, name);
  mkdirSync(made, { recursive: true });
  return made;
};

const cli = resolve('dist/cli.js');
const run = (...args: string[]) =>
  spawnSync(process.execPath, [cli, ...args], { encoding: 'utf8', timeout: 120_000 });
const shell = (command: string) => spawnSync('bash', ['-c', command], { encoding: 'utf8', timeout: 120_000 });

/** Without a search for places, which is not what is tried here. */
const AT_ONCE = ['--effort', '0'];

/** What must hold of any run: no stack trace, and nothing that a terminal would obey. */
function civil({ stdout, stderr }: Pick<SpawnSyncReturns<string>, 'stdout' | 'stderr'>): void {
  expect(stdout + stderr).not.toMatch(/^\s+at .+:\d+:\d+/m);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there
  expect(stdout + stderr).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/);
}

/** The smallest kit there is, which is drawn at once. */
const text = (id: string, title = 'S'): string =>
  `kit: ${id}\ntitle: ${title}\nparts:\n  neck: { kind: single-coil }\n  output: { kind: jack }\njoints:\n  - neck.hot > output.tip\n  - neck.ground > output.sleeve\n`;

describe('a run that is killed', () => {
  it('leaves every file whole, twenty-eight times, and the next run leaves nothing behind', async () => {
    const random = seeded(99);
    const kits = ['old', 'new'].map((age) => {
      const made = fresh(`kits-${age}`);
      for (const id of ['a', 'b', 'c']) writeFileSync(join(made, `${id}.yaml`), text(id, age));
      return made;
    });
    const [was = '', is = ''] = kits;
    const drawings = (out: string): Readonly<Record<string, string>> =>
      Object.fromEntries(
        readdirSync(out)
          .filter((name) => name.endsWith('.svg'))
          .map((name) => [name, readFileSync(join(out, name), 'utf8')]),
      );
    const draw = (from: string, out: string): string[] => ['draw', from, '--out', out, ...AT_ONCE];
    const [before, after] = [was, is].map((from, i) => {
      const out = fresh(`whole-${i}`);
      const started = Date.now();
      expect(run(...draw(from, out)).status).toBe(0);
      return { files: drawings(out), took: Date.now() - started };
    });
    if (!before || !after) throw new Error('nothing was drawn');
    const outs = [0, 1, 2, 3].map((i) => fresh(`killed-${i}`));
    let torn = 0;
    let midway = 0;
    const idsIn = (out: string): string =>
      Object.keys(before.files)
        .map((name) => statSync(join(out, name), { throwIfNoEntry: false })?.ino)
        .join();
    /** @param delay milliseconds; where there is none, as soon as the first file is another one, however slow the machine */
    const killOnce = (out: string, delay: number | undefined) =>
      new Promise<void>((done) => {
        for (const [name, svg] of Object.entries(before.files)) writeFileSync(join(out, name), svg);
        const old = idsIn(out);
        const child = spawn(process.execPath, [cli, ...draw(is, out)], { stdio: 'ignore' });
        const kill = (): boolean => child.kill('SIGKILL');
        const timer =
          delay === undefined ? setInterval(() => idsIn(out) !== old && kill(), 3) : setTimeout(kill, delay);
        child.on('close', () => {
          clearInterval(timer);
          const found = drawings(out);
          const changed = Object.keys(before.files).filter((name) => found[name] === after.files[name]);
          if (changed.length > 0 && changed.length < 3) midway++;
          for (const [name, svg] of Object.entries(before.files))
            if (found[name] !== svg && found[name] !== after.files[name]) torn++;
          done();
        });
      });
    // From the middle of a run on, where files are written; four at a time.
    for (let i = 0; i < 7; i++)
      await Promise.all(
        outs.map((out, k) => killOnce(out, k === 0 ? undefined : after.took * (0.5 + random()))),
      );
    expect(torn).toBe(0);
    expect(midway).toBeGreaterThan(0);
    for (const out of outs) {
      writeFileSync(join(out, 'a.svg'), before.files['a.svg'] ?? '');
      expect(run(...draw(is, out)).status).toBe(0);
      expect(readdirSync(out).sort()).toEqual(['a.svg', 'b.svg', 'c.svg']);
      expect(drawings(out)).toEqual(after.files);
    }
  }, 180_000);

  it('what it left half written is taken away; what another run writes, or a person keeps, is not', () => {
    const out = fresh('left');
    const dead = spawnSync('true').pid;
    const [left, live] = [tempFileName(dead), tempFileName(process.pid)];
    for (const name of [left, live, '.solderleaf-note.part']) writeFileSync(join(out, name), 'mine');
    expect(writeAtomically(join(out, 'one.svg'), 'x')).toBe(true);
    expect(readdirSync(out).sort()).toEqual([live, '.solderleaf-note.part', 'one.svg'].sort());
  });
});

it('two runs at once into one folder: every file whole, nothing left', async () => {
  const kits = fresh('both');
  for (const id of ['a', 'b', 'c', 'd']) writeFileSync(join(kits, `${id}.yaml`), text(id));
  const out = fresh('both-out');
  const codes = await Promise.all(
    [0, 1].map(
      () =>
        new Promise<number | null>((done) =>
          spawn(process.execPath, [cli, 'draw', kits, '--out', out, ...AT_ONCE], { stdio: 'ignore' }).on(
            'close',
            done,
          ),
        ),
    ),
  );
  expect(codes).toEqual([0, 0]);
  expect(readdirSync(out).sort()).toEqual(['a.svg', 'b.svg', 'c.svg', 'd.svg']);
  expect(run('draw', kits, '--out', out, ...AT_ONCE, '--check').status).toBe(0);
});

describe('a disk that is full', () => {
  const disk = fresh('disk');
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=8k', 'tmpfs', disk]).status === 0;
  it.skipIf(!mounted)(
    'is one line and exit 1; the old drawing is whole, and nothing is left beside it',
    () => {
      const before = '<svg aria-labelledby="full-title full-desc">the old drawing</svg>';
      writeFileSync(join(disk, 'full.svg'), before);
      writeFileSync(join(folder, 'full.yaml'), text('full'));
      const done = run('draw', join(folder, 'full.yaml'), '--out', disk);
      expect(done.status).toBe(1);
      expect(done.stderr).toContain('the disk is full');
      civil(done);
      expect(readFileSync(join(disk, 'full.svg'), 'utf8')).toBe(before);
      expect(readdirSync(disk)).toEqual(['full.svg']);
    },
  );
  it.skipIf(!mounted)('leaves the advice of pad to be read, and what to make these changes by hand', () => {
    rmSync(join(disk, 'full.svg'));
    const kit = join(disk, 'kit.yaml');
    const bare = readFileSync('samples/kestrel-hss.yaml', 'utf8');
    writeFileSync(kit, bare);
    // What is left of the disk: a page.
    writeFileSync(join(disk, 'filler'), Buffer.alloc(4096));
    const done = run('pad', kit, '--write', '--match', 'signal');
    expect([done.status, done.stderr]).toEqual([
      1,
      expect.stringContaining('the disk is full; make these changes by hand:'),
    ]);
    expect(done.stdout.length).toBeGreaterThan(200);
    expect(readFileSync(kit, 'utf8')).toBe(bare);
  });
});

describe('pipes that close', () => {
  const kits = fresh('piped');
  for (const id of ['a', 'b', 'c']) writeFileSync(join(kits, `${id}.yaml`), text(id));
  writeFileSync(join(kits, 'broken.yaml'), 'kit: broken\n');
  const node = `"${process.execPath}" "${cli}"`;
  it.each([
    ['| true', 'draw'],
    ['| head -c 1 >/dev/null', 'draw'],
    ['2>&1 | true', 'draw'],
    ['>&-', 'draw'],
    ['>&- 2>&-', 'draw'],
    ['>/dev/full', 'draw'],
    ['| true', 'check'],
  ])('%s: the work is done and the exit code is right (%s)', (to, command) => {
    const out = join(folder, `out-${to.replace(/\W+/g, '_')}-${command}`);
    const { stdout, stderr } = shell(
      `${node} ${command} "${kits}" ${command === 'draw' ? `--out "${out}" ${AT_ONCE.join(' ')}` : ''} ${to}; code=\${PIPESTATUS[0]}; echo "$code" > "${out}.code"`,
    );
    expect(readFileSync(`${out}.code`, 'utf8').trim()).toBe('1');
    civil({ stdout, stderr });
    if (command === 'draw') expect(readdirSync(out).sort()).toEqual(['a.svg', 'b.svg', 'c.svg']);
  });
});

describe('a hostile folder', () => {
  const kits = fresh('hostile');
  const put = (name: string, content: string | Uint8Array) => writeFileSync(join(kits, name), content);
  put('good.yaml', text('good'));
  put('utf16.yaml', Buffer.from(`\uFEFF${text('utf16')}`, 'utf16le'));
  put('latin1.yaml', Buffer.from(text('latin', 'Gitarre für Äußerste'), 'latin1'));
  put('nul.yaml', `${text('nul')}\0`);
  put('large.yaml', `${text('large')}# ${'x'.repeat(1_100_000)}\n`);
  put('script.ts', `throw new Error('this was run');\nexport default { kit: 'script' };\n`);
  symlinkSync('loop-b.yaml', join(kits, 'loop-a.yaml'));
  symlinkSync('loop-a.yaml', join(kits, 'loop-b.yaml'));
  symlinkSync('/nowhere/at/all', join(kits, 'dangling.yaml'));
  symlinkSync('/dev/zero', join(kits, 'zero.yaml'));
  spawnSync('mkfifo', [join(kits, 'pipe.yaml')]);
  mkdirSync(join(kits, 'folder.yaml'));
  put('\u001b[31mred.yaml', text('red').replace('kit: red', 'kit: \u009b31mred'));
  const figures = run('loads', join(kits, 'good.yaml'), '--json').stdout;
  put('figures.json', figures);
  put('pads.json', run('pad', join(kits, 'good.yaml'), '--json').stdout);
  put('broken.json', '{ "kit": "broken", "parts": 5 }');
  put('package.json', '{ "name": "x" }');

  const out = join(folder, 'hostile-out');
  const done = run('draw', kits, '--out', out, ...AT_ONCE);

  it('ends, with an error for each that cannot be read and a drawing of the one that can', () => {
    expect(done.signal).toBe(null);
    expect(done.status).toBe(1);
    civil(done);
    expect(readdirSync(out)).toEqual(['good.svg']);
  });
  it.each([
    ['utf16.yaml', 'not-text'],
    ['latin1.yaml', 'not-text'],
    ['nul.yaml', 'not-text'],
    ['large.yaml', 'file-too-large'],
    ['loop-a.yaml', 'file-unreadable'],
    ['dangling.yaml', 'file-unreadable'],
    ['zero.yaml', 'file-unreadable'],
    ['pipe.yaml', 'file-unreadable'],
    ['broken.json', 'wrong-type'],
  ])('%s: %s', (name, code) => {
    expect(done.stderr).toMatch(new RegExp(`${name}:\\d+:\\d+ {2}error {2}${code}$`, 'm'));
  });
  it('passes over figures it printed itself, and a script that nobody named', () => {
    for (const name of ['figures.json', 'pads.json', 'package.json'])
      expect(done.stdout).toContain(`not a kit ${join(kits, name)}`);
    expect(done.stdout).toContain(`not run   ${join(kits, 'script.ts')}`);
    expect(done.stdout + done.stderr).not.toContain('this was run');
  });
  it('a file that is named is treated alike, and a name that is too long is an error of its own', () => {
    const long = `${'x'.repeat(300)}.yaml`;
    const named = run(
      'check',
      join(kits, 'pipe.yaml'),
      long,
      join(kits, 'good.yaml'),
      '--drawing',
      join(kits, 'zero.yaml'),
      join(kits, 'pipe.yaml'),
    );
    civil(named);
    expect(named.status).toBe(1);
    expect(named.stdout).toContain('the name is too long');
    expect(named.stdout.match(/it is a pipe, a socket or a device, not a file/g)).toHaveLength(3);
  });
  it.skipIf(process.getuid?.() === 0)('a folder that may not be read', () => {
    const closed = fresh('closed');
    spawnSync('chmod', ['000', closed]);
    const refused = run('check', closed, join(kits, 'good.yaml'));
    expect(refused.status).toBe(1);
    expect(refused.stderr).toContain('the folder cannot be read: permission denied');
  });
});

describe('links in the way of what is written', () => {
  it('a link in a drawing’s place is replaced; what it leads to is left alone', () => {
    const out = fresh('linked');
    const precious = join(folder, 'precious.txt');
    writeFileSync(precious, 'precious');
    symlinkSync(precious, join(out, 'linked.svg'));
    writeFileSync(join(folder, 'linked.yaml'), text('linked'));
    expect(run('draw', join(folder, 'linked.yaml'), '--out', out, ...AT_ONCE).status).toBe(0);
    expect(readFileSync(precious, 'utf8')).toBe('precious');
    expect(readFileSync(join(out, 'linked.svg'), 'utf8')).toContain('<svg');
  });
});

describe('a hostile script', () => {
  const tail = `;\nexport default { kit: 'script', title: 'S', parts: { neck: { kind: 'single-coil' }, output: { kind: 'jack' } }, joints: ['neck.hot > output.tip', 'neck.ground > output.sleeve'] };\n`;
  const good = join(folder, 'beside.yaml');
  writeFileSync(good, text('beside'));
  it.each([
    ['exit', 'process.exit(0)', 'exit code 0'],
    ['hang', 'while (true) {}', 'did not finish within 10 seconds'],
    ['nothing', 'throw undefined', 'undefined'],
    ['signal', "process.kill(process.pid, 'SIGTERM')", 'SIGTERM'],
    ['large', "export const x = 1; process.stdout.write('x'.repeat(5e6))", undefined],
    ['rejection', "Promise.reject(new Error('late'))", undefined],
    ['timer', 'setInterval(() => {}, 1000)', undefined],
    ['print', "console.log('PRINTED'); console.error('PRINTED')", undefined],
    ['cwd', "process.chdir('/')", undefined],
    ['exit code', 'process.exitCode = 7', undefined],
  ])('%s changes nothing for the others', (name, code, reason) => {
    const script = join(folder, `${name.replace(' ', '-')}.ts`);
    writeFileSync(script, `${code}${tail}`);
    const out = join(folder, `script-${name.replace(' ', '-')}`);
    const done = run('draw', script, good, '--out', out, ...AT_ONCE);
    civil(done);
    expect(done.stdout + done.stderr).not.toContain('PRINTED');
    expect(readdirSync(out)).toContain('beside.svg');
    expect(existsSync(join(out, 'script.svg'))).toBe(reason === undefined);
    expect(done.status).toBe(reason === undefined ? 0 : 1);
    if (reason !== undefined) {
      expect(done.stderr).toMatch(/\.ts:\d+:\d+ {2}error {2}script-failed$/m);
      expect(done.stderr).toContain(reason);
    }
  });
});

it('control characters of an option do not reach the terminal', () => {
  civil(run('draw', 'samples/wren-sh.yaml', '--arrangement', '\u001b[31mred', '--out', fresh('option')));
  civil(run('draw', 'samples/wren-sh.yaml', '--format', '\u001b[31mred'));
  civil(run('\u001b[31mred'));
  civil(run('check', `${folder}/\u001b[31mred.yaml`));
});

it('exit 0 only where something was compared or done', () => {
  const empty = fresh('empty');
  for (const args of [
    ['draw', empty, '--check'],
    ['check', empty],
    ['check', 'samples/wren-sh.yaml', '--drawing', 'out/wren-hs.svg'],
    ['draw', 'samples/wren-sh.yaml', '--check', '--out', empty, ...AT_ONCE],
  ])
    expect(run(...args).status, args.join(' ')).toBe(1);
  expect(run('check', 'samples/wren-sh.yaml', '--drawing', 'out/wren-sh.svg').status).not.toBe(2);
});
