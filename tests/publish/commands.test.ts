/** The commands as a user runs them: what they print, write and answer. Uses the build that `npm test` makes first. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { mixedSetText } from '../describe/fixtures/mixed-set.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const run = (...args: string[]) =>
  spawnSync(process.execPath, ['dist/cli.js', ...args], { encoding: 'utf8' });

/** Where it does not matter where the parts are. */
const AT_ONCE = ['--effort', '0'];

it('may be executed itself after any build, as npx and a link do', () => {
  expect(statSync('dist/cli.js').mode & 0o111).toBe(0o111);
  const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { readonly version: string };
  expect(version).toMatch(/^\d+\.\d+\.\d+/);
  expect(spawnSync('dist/cli.js', ['--version'], { encoding: 'utf8' }).stdout.trim()).toBe(version);
});

it('draws several kits, a bad one among them, and exits 1', () => {
  const bad = join(folder, 'bad.yaml');
  writeFileSync(bad, 'kit: ../evil\ntitle: x\nparts: {}\njoints: []\n');
  const out = join(folder, 'out');
  const { status, stderr } = run(
    'draw',
    bad,
    'samples/heron-ss.yaml',
    '--out',
    out,
    '--format',
    'svg,png',
    ...AT_ONCE,
  );
  expect(status).toBe(1);
  expect(stderr).toContain('bad.yaml:1:6  error  bad-kit-id');
  expect(stderr).not.toMatch(/\n\s+at /);
  expect(readdirSync(out).sort()).toEqual(['heron-ss.png', 'heron-ss.svg']);
});

it('--check writes nothing, passes on what is drawn, and fails on what differs', () => {
  const out = join(folder, 'checked');
  const draw = (...more: string[]) => run('draw', 'samples/heron-ss.yaml', '--out', out, ...AT_ONCE, ...more);
  expect(draw('--check').status).toBe(1);
  expect(() => readdirSync(out)).toThrow();
  expect(draw().status).toBe(0);
  expect(draw('--check').status).toBe(0);
  const file = join(out, 'heron-ss.svg');
  writeFileSync(file, 'old');
  expect(draw('--check').status).toBe(1);
  expect(readFileSync(file, 'utf8')).toBe('old');
});

it('loads --json gives the figures unrounded, in ohms', () => {
  const { status, stdout } = run('loads', 'samples/kestrel-hss.yaml', '--json');
  expect(status).toBe(0);
  const { kit, positions } = JSON.parse(stdout);
  expect(kit).toBe('kestrel-hss');
  expect(positions[1].switches).toEqual({ selector: 2 });
  expect(positions[1].sounding).toEqual(['middle', 'bridge']);
  // The trade handbook's table, worked by hand: 500 k in parallel with 470 k.
  expect(positions[1].pickups.middle.dcLoad).toBeCloseTo((500e3 * 470e3) / 970e3, 3);
});

it('pad --write puts the pad into the file, once', () => {
  const file = join(folder, 'mixed.yaml');
  writeFileSync(file, mixedSetText);
  const first = run('pad', file, '--match', 'signal', '--series', 'E24', '--write');
  expect(first.status).toBe(0);
  expect(first.stdout).toContain('fit 240 kΩ from selector.A1 to volume.case');
  expect(first.stdout).toContain('written');
  const once = readFileSync(file, 'utf8');
  const { status, stdout } = run('pad', file, '--match', 'signal', '--series', 'E24', '--write', '--json');
  expect(status).toBe(0);
  expect(JSON.parse(stdout)).toMatchObject({ match: 'signal', choice: 'E24', write: 'unchanged' });
  expect(readFileSync(file, 'utf8')).toBe(once);
});

it('answers 2 to values that cannot be, saying what is allowed', () => {
  for (const [args, allowed] of [
    [['pad', 'samples/wren-hs.yaml', '--stock', '470k,0'], 'allowed: resistances'],
    [['pad', 'samples/wren-hs.yaml', '--series', 'stock'], '--stock 220k,270k,470k'],
    [['pad', 'samples/wren-hs.yaml', '--series', 'E12', '--stock', '1k'], 'give one of them'],
    [['loads', 'samples/wren-hs.yaml', '--tolerance', '--seed', '-1'], 'a whole number from 0 to 4294967295'],
    [['loads', 'samples/wren-hs.yaml', '--seed', '1'], '--seed needs --tolerance'],
  ] as const) {
    const { status, stdout, stderr } = run(...args);
    expect([status, stdout], args.join(' ')).toEqual([2, '']);
    expect(stderr).toContain(allowed);
  }
});

it('answers 2 to wrong usage and 1 to a kit or an arrangement that is not there', () => {
  expect(run('solder').status).toBe(2);
  expect(run('draw', 'samples', '--format', 'bmp').status).toBe(2);
  expect(run('loads', 'nowhere.yaml').status).toBe(1);
  const { status, stderr } = run(
    'draw',
    'samples/heron-ss.yaml',
    '--out',
    folder,
    '--arrangement',
    'plate-rwo',
  );
  expect(status).toBe(1);
  expect(stderr).toContain('plate-row');
  const own = join(folder, 'own-layout.yaml');
  writeFileSync(own, 'arrangement: own\nseats: []\n');
  const wrong = run('draw', 'samples/heron-ss.yaml', '--out', folder, '--arrangement', own);
  expect(wrong.status).toBe(1);
  expect(wrong.stderr).toMatch(/bad-arrangement[\s\S]*own-layout\.yaml:1:1: the arrangement has no “about”/);
  expect(
    run('draw', 'samples/heron-ss.yaml', '--out', folder, '--arrangement', 'none.yaml').stderr,
  ).toContain('none.yaml: file not found');
  writeFileSync(own, 'arrangement: own\nabout: mine\nseats: []\nrows: 2\n');
  expect(run('draw', 'samples/heron-ss.yaml', '--out', folder, '--arrangement', own).stderr).toContain(
    'own-layout.yaml:4:1: unknown key “rows”',
  );
  writeFileSync(
    own,
    'arrangement: own\nabout: far off\nseats:\n  - seat: pot\n    at: [0, 0]\n    step: [1000000000, 0]\n',
  );
  expect(run('draw', 'samples/heron-ss.yaml', '--out', folder, '--arrangement', own).stderr).toMatch(
    /own-layout\.yaml:6:12: 1000000000 is too large\. Write at most 400/,
  );
  // No line of the kit is to blame for what the command line names.
  expect(wrong.stderr).not.toContain('heron-ss.yaml');
  const kit = run('draw', 'samples/heron-ss.yaml', '--out', folder, '--arrangement', 'samples/heron-ss.yaml');
  expect(kit.stderr).toContain('samples/heron-ss.yaml:3:1: it is a kit, not an arrangement');
  expect(run('--version').status).toBe(0);
  expect(run('--help').status).toBe(0);
});

it('every command’s help ends with an example of itself', () => {
  const [, listed = ''] = run('--help').stdout.split('Commands:');
  const commands = [...listed.matchAll(/^ {2}([a-z]+) /gm)].map((found) => found[1] ?? '');
  expect(commands).toEqual(expect.arrayContaining(['draw', 'loads', 'response', 'pad', 'check', 'schema']));
  for (const name of commands.filter((one) => one !== 'help'))
    expect(run(name, '--help').stdout).toMatch(new RegExp(`\\nexample: solderleaf ${name}\\b`));
});

it('loads prints limits when it is asked for, and else not', () => {
  const [plain, wide] = [[], ['--tolerance', '--samples', '50']].map((more) =>
    run('loads', 'samples/heron-ss.yaml', ...more),
  );
  expect([plain?.status, wide?.status]).toEqual([0, 0]);
  expect(plain?.stdout).not.toMatch(/seed|samples/);
  expect(wide?.stdout).toMatch(/50 samples/);
});

it('takes a page format in capitals too', () => {
  const out = join(folder, 'page');
  const drawn = run('draw', 'samples/heron-ss.yaml', '--out', out, '--page', 'A4', '--effort', '0');
  expect(drawn.status).toBe(0);
  // Of what so short a search leaves, such as bare legs that cross, there may be notes.
  expect(drawn.stderr).not.toMatch(/ {2}(error|warning) {2}|^error/m);
  expect(drawn.stdout).toContain('heron-ss-a4.svg');
});

it.each([
  [['--only', 'card'], '“card” is not a piece; allowed: drawing, key, cards, checklist'],
  [['--only', 'drawing,'], 'has an extra comma'],
  [['--width', '100'], '“100” is not a width in whole CSS pixels; allowed: 240 to 4000'],
  [['--width', '360.5'], 'is not a width in whole CSS pixels'],
  [['--width', '360', '--page', 'a4'], 'cannot be used with option'],
])('refuses %j in words', (options, words) => {
  const refused = run('draw', 'samples/heron-ss.yaml', '--out', join(folder, 'none'), ...options);
  expect(refused.status).toBe(2);
  expect(refused.stderr).toContain(words);
});
