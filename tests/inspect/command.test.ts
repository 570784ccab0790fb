/** `check --drawing` as a user runs it. Uses the build that `npm test` makes first. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const run = (...args: string[]) =>
  spawnSync(process.execPath, ['dist/cli.js', 'check', ...args], { encoding: 'utf8' });
const written = (name: string, content: string | Uint8Array): string => {
  const file = join(folder, name);
  writeFileSync(file, content);
  return file;
};
const good = 'out/heron-ss.svg';
const svg = readFileSync(good, 'utf8');

it('passes good drawings, and says what each was compared with', () => {
  const compared = run('samples', '--drawing', good, 'out/wren-hs.svg');
  expect(compared.status).toBe(0);
  expect(compared.stdout).toContain(
    'out/heron-ss.svg: no findings, joints and values compared with samples/heron-ss.yaml',
  );
  expect(compared.stdout).toContain(
    'out/wren-hs.svg: no findings, joints and values compared with samples/wren-hs.yaml',
  );
  const alone = run('--drawing', good);
  expect(alone.status).toBe(0);
  expect(alone.stdout).toBe('out/heron-ss.svg: no findings, not compared with a kit\n');
});

it('gives each finding a line with its place, and exits 1', () => {
  const file = written('moved.svg', svg.replace(/(<text x=")\d+("[^>]*>Volume<)/, '$1750$2'));
  const { status, stdout } = run('samples/heron-ss.yaml', '--drawing', file);
  expect(status).toBe(1);
  expect(stdout).toMatch(/moved\.svg:\d[\d.]*,\d[\d.]* {2}text-on-edge {2}“Volume” extends beyond the edge/);
  expect(stdout).toMatch(/moved\.svg: \d+ findings, joints and values compared with samples\/heron-ss\.yaml/);
});

it('fails a drawing of another kit, what is not a drawing, and what is not there', {
  timeout: 120_000,
}, () => {
  const other = run('samples/wren-hs.yaml', '--drawing', good);
  expect(other.status).toBe(1);
  expect(other.stdout).toContain('the drawing shows kit “heron-ss”, but the kits given are: “wren-hs”');
  const files = [
    written('page.html', '<html></html>'),
    written('noise.svg', new Uint8Array([0xff, 0, 7])),
    join(folder, 'none.svg'),
  ];
  const { status, stdout, stderr } = run('--drawing', ...files);
  expect(status).toBe(1);
  expect(stdout).toContain('its root is <html>, not an SVG drawing');
  expect(stdout).toContain('noise.svg: not an SVG drawing: it is not text in UTF-8');
  expect(stdout).toContain('none.svg: file not found');
  expect(stderr).toBe('');
});

it('answers 2 when told nothing to check', () => {
  const { status, stderr } = run();
  expect(status).toBe(2);
  expect(stderr).toContain('name a kit, or a drawing with --drawing');
});

it('takes kits and drawings in any order', () => {
  const said = 'out/heron-ss.svg: no findings, joints and values compared with samples/heron-ss.yaml';
  for (const args of [
    ['--drawing', good, 'samples/heron-ss.yaml'],
    ['samples/heron-ss.yaml', good],
    [good, 'samples/heron-ss.yaml'],
  ]) {
    const { status, stdout } = run(...args);
    expect(status, args.join(' ')).toBe(0);
    expect(stdout).toContain(said);
  }
});
