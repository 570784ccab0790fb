/** Files and folders as users have them: folders that cannot be written, disks that fill up, files that are not kits. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { kitFiles } from '../../src/files/find-kits.ts';
import { arrangementErrors } from '../../src/files/layouts.ts';
import { loadKit } from '../../src/files/load.ts';
import { WriteError, writeAtomically } from '../../src/files/write.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const cli = resolve('dist/cli.js');
const run = (...args: string[]) =>
  spawnSync(process.execPath, [cli, ...args], { encoding: 'utf8', timeout: 120_000 });
const shell = (command: string, cwd = '.') =>
  spawnSync('bash', ['-c', command], { encoding: 'utf8', timeout: 120_000, cwd });

/** The smallest kit there is, which is drawn at once. */
const text = (id: string): string =>
  `kit: ${id}\ntitle: S\narrangement: free-flow\nparts:\n  neck: { kind: single-coil }\n  output: { kind: jack }\njoints:\n  - neck.hot > output.tip\n  - neck.ground > output.sleeve\n`;
const small = join(folder, 'small.yaml');
writeFileSync(small, text('small'));
const fresh = (name: string): string => {
  const made = join(folder, name);
  mkdirSync(made);
  return made;
};

describe('a file is written whole or not at all', () => {
  it('one whose writing breaks off midway is as it was, with nothing left beside it', () => {
    const out = fresh('midway');
    const old = join(out, 'small.svg');
    const before = '<svg aria-labelledby="small-title small-desc">the old drawing</svg>';
    writeFileSync(old, before);
    // The system lets no file grow beyond 2 KiB here, as a full disk would not.
    const { status, stderr } = shell(
      `ulimit -f 2; exec "${process.execPath}" dist/cli.js draw "${small}" --out "${out}"`,
    );
    expect(status).toBe(1);
    expect(stderr).toContain(`cannot write to ${out}: the file is larger than the system allows`);
    expect(readFileSync(old, 'utf8')).toBe(before);
    expect(readdirSync(out)).toEqual(['small.svg']);
  });

  it.each([
    ['there is a file where the folder should be', 'taken', 'taken/a.svg', 'file'],
    ['there is a folder where the file should be', 'b.svg', 'b.svg', 'folder'],
  ] as const)('%s', (reason, there, target, kind) => {
    const out = fresh(kind);
    if (kind === 'file') writeFileSync(join(out, there), '');
    else mkdirSync(join(out, there));
    const file = join(out, target);
    expect(() => writeAtomically(file, 'x')).toThrow(WriteError);
    expect(() => writeAtomically(file, 'x')).toThrow(`cannot write ${file}: ${reason}`);
    expect(readdirSync(out)).toEqual([there]);
  });

  it('folders are made where they are missing', () => {
    const file = join(folder, 'a/b/c/d.svg');
    expect(writeAtomically(file, 'x')).toBe(true);
    expect(writeAtomically(file, 'x')).toBe(false);
    expect(readFileSync(file, 'utf8')).toBe('x');
  });
});

describe('draw', () => {
  it('ends where no folder can be made, and says what to do', () => {
    // Told to make this in one go, Node never comes back.
    const { status, stderr, signal } = run('draw', small, '--out', '/proc/nope');
    expect(signal).toBe(null);
    expect(status).toBe(1);
    expect(stderr).toMatch(/^cannot write to \/proc\/nope: .*; choose another with --out$/m);
  });

  it('goes on with the next kit when one cannot be written', () => {
    const kits = fresh('two');
    for (const id of ['one', 'two']) writeFileSync(join(kits, `${id}.yaml`), text(id));
    const out = fresh('out');
    mkdirSync(join(out, 'one.svg'));
    const { status, stdout, stderr } = run('draw', kits, '--out', out);
    expect(status).toBe(1);
    expect(stderr).toContain('there is a folder where the file should be');
    expect(stdout).toContain(`written   ${join(out, 'two.svg')}`);
  });

  it('--check tells a drawing that is missing from one that differs', () => {
    const out = fresh('checked');
    const check = () => run('draw', small, '--out', out, '--check').stdout;
    expect(check()).toMatch(/^missing {3}/);
    writeFileSync(join(out, 'small.svg'), 'old');
    expect(check()).toMatch(/^differs {3}/);
  });

  it('explains a space after the comma of --format', () => {
    const { status, stderr } = run('draw', small, '--format', 'svg,', 'png');
    expect(status).toBe(2);
    expect(stderr).toContain('write svg,png without a space');
  });
});

it('what cannot be put anywhere ends with one line and exit code 1', () => {
  const where = 'there is a file where the folder should be';
  const draw = run('draw', 'samples/wren-hs.yaml', '--out', '/dev/null/x', '--effort', '0');
  const target = '/dev/null/x/wren-hs.svg';
  expect([draw.status, draw.stderr]).toEqual([
    1,
    `cannot write to /dev/null/x: ${where} (${target}); choose another with --out\n`,
  ]);
  const plot = run('response', 'samples/wren-hs.yaml', '--out', '/dev/null/x.csv');
  expect([plot.status, plot.stderr]).toEqual([1, `solderleaf: cannot write /dev/null/x.csv: ${where}\n`]);
});

describe('what is not a kit', () => {
  it('is passed over in a folder, with a line, and a misspelt kit is not', () => {
    const kits = fresh('mixed');
    const files: Readonly<Record<string, string>> = {
      'package.json': '{ "name": "x", "bin": {} }',
      'tsconfig.json': '{\n  // a comment\n  "compilerOptions": {}\n}\n',
      'vite.config.ts': 'throw new Error("this was run");\n',
      'broken.yaml': text('broken').replace('joints:', 'joints: ]'),
      'misspelt.yaml': text('misspelt').replace('kit:', 'kti:'),
      'sound.yaml': text('sound'),
      'kit.ts': 'export default { kit: "a" };\n',
    };
    for (const [name, content] of Object.entries(files)) writeFileSync(join(kits, name), content);
    const { files: found, passed, scripts } = kitFiles([kits]);
    expect(passed.map((file) => file.slice(kits.length + 1))).toEqual([
      'package.json',
      'tsconfig.json',
      'vite.config.ts',
    ]);
    expect(found.map((file) => file.slice(kits.length + 1))).toEqual([
      'broken.yaml',
      'misspelt.yaml',
      'sound.yaml',
    ]);
    // A script is code: one that lies in a folder is not run.
    expect(scripts).toEqual([join(kits, 'kit.ts')]);
    const { stdout } = run('check', kits);
    expect(stdout).toContain(`not run   ${join(kits, 'kit.ts')}: `);
    expect(stdout).toContain(`not a kit ${join(kits, 'package.json')}\n`);
  });

  it('leaves nothing to do in a folder without a kit, which is said', () => {
    const none = fresh('none');
    const { status, stderr } = run('check', none);
    expect([status, stderr]).toEqual([1, `no kit found in ${none}: a kit is a .yaml, .json or .ts file\n`]);
  });

  it('is one problem when it is named', async () => {
    const { diagnostics, kit } = await loadKit('package.json');
    expect(kit).toBeUndefined();
    expect(diagnostics.map((one) => one.code)).toEqual(['not-a-kit']);
  });

  it('an option that is given twice with two values, in either order; the same value twice is no error', () => {
    for (const [a, b] of [
      ['right', 'left'],
      ['left', 'right'],
    ] as const) {
      const { status, stderr } = run(
        'draw',
        'samples/heron-ss.yaml',
        '--hand',
        a,
        '--out',
        folder,
        '--hand',
        b,
      );
      expect(status).toBe(2);
      expect(stderr).toContain(`--hand is given twice: ${a} and ${b}; give it once`);
    }
    expect(
      run('pad', 'samples/heron-ss.yaml', '--match', 'dc', '--match=dc', '--json', '--json').status,
    ).toBe(0);
    expect(run('pad', 'samples/heron-ss.yaml', '--match', 'dc', '--match=signal').status).toBe(2);
  });

  it('a folder where one kit is wanted', () => {
    for (const command of ['loads', 'pad', 'response']) {
      const { status, stderr } = run(command, 'samples');
      expect(status).toBe(2);
      expect(stderr).toContain(`${command} takes one kit file, and “samples” is a folder`);
    }
  });
});

it('check finds an arrangement that is not there, at its line', () => {
  const file = join(folder, 'lost.yaml');
  writeFileSync(file, text('lost').replace(/^arrangement: .*/m, 'arrangement: plate-rwo'));
  const line = readFileSync(file, 'utf8').split('\n').indexOf('arrangement: plate-rwo') + 1;
  const { status, stdout } = run('check', file);
  expect(status).toBe(1);
  expect(stdout).toContain(`lost.yaml:${line}:14  error  unknown-arrangement`);
  expect(arrangementErrors('plate-row')).toEqual([]);
});

it('says nothing when whoever reads stops early', () => {
  // The reader is gone before a word is written.
  const { stderr } = shell(
    `{ sleep 1; "${process.execPath}" dist/cli.js check samples/broken samples/broken; } | true`,
  );
  expect(stderr).toBe('');
});
