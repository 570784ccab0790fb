/**
 * `circuits` as a user runs it, and its page under a strict content security policy. What is listed and drawn comes from the build that
 * `npm test` makes first; options that are refused, and drawings that are made again to be compared, from the source.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { chromium as driver } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { addCircuits } from '../../src/commands/circuits.ts';
import { readKit } from '../../src/describe/read.ts';
import { galleryPage, isGallery, sizeOfDrawing } from '../../src/publish/gallery.ts';
import { run as runWithin } from '../commands/run.ts';
import { chromiumShell } from '../tools/chromium.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-circuits-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const run = (...args: string[]) =>
  spawnSync(process.execPath, ['dist/cli.js', 'circuits', ...args], { encoding: 'utf8' });

/** The files themselves, read without the program. */
const names = readdirSync('samples/circuits')
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.slice(0, -'.yaml'.length))
  .sort((a, b) => (a < b ? -1 : 1));
const written: readonly { readonly kit: string; readonly title?: string; readonly about?: string }[] =
  names.map((name) => parse(readFileSync(`samples/circuits/${name}.yaml`, 'utf8')));

describe('the list', () => {
  it('has every circuit with its name, its title and what it is for', () => {
    const { status, stdout, stderr } = run();
    expect([status, stderr]).toEqual([0, '']);
    const words = stdout.replace(/\s+/g, ' ');
    for (const [i, name] of names.entries()) {
      expect(stdout).toMatch(new RegExp(`^circuit/${name}$`, 'm'));
      if (written[i]?.title) expect(words).toContain(written[i].title);
      if (written[i]?.about) expect(words).toContain(written[i].about);
    }
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThan(110);
  });

  it('--json gives the same as data, by which a kit can be made', () => {
    const { status, stdout } = run('--json');
    expect(status).toBe(0);
    const list: readonly Record<string, string>[] = JSON.parse(stdout);
    expect(list.map(({ name }) => name)).toEqual(names);
    for (const [i, { name, extends: extended, file, title, about }] of list.entries()) {
      expect(extended).toBe(`circuit/${name}`);
      expect(file).toBe(join('samples/circuits', `${name}.yaml`));
      if (written[i]?.title) expect(title).toBe(written[i].title);
      expect(about).toBe(written[i]?.about);
    }
  });

  it('refuses options that do not go together', async () => {
    expect(run('--check').status).toBe(2);
    for (const args of [
      ['--check'],
      ['--effort', '0'],
      ['--language', 'de'],
      ['--pictures', folder, '--language', 'it'],
      ['--json', '--pictures', folder],
    ]) {
      const { status, stderr } = await runWithin(addCircuits, 'circuits', ...args);
      expect(status, args.join(' ')).toBe(2);
      expect(stderr).toContain('error: ');
    }
  });
});

describe('the pictures', () => {
  const out = join(folder, 'pictures');
  beforeAll(() => {
    const { status, stderr } = run('--pictures', out, '--effort', '0');
    expect(stderr).not.toMatch(/ {2}error {2}/);
    expect(status).toBe(0);
  }, 240_000);

  it('are one for each circuit, and a page with its style', () => {
    const expected = [...written.map(({ kit }) => `${kit}.svg`), 'index.css', 'index.html'];
    expect(readdirSync(out).sort()).toEqual(expected.sort());
    const page = readFileSync(join(out, 'index.html'), 'utf8');
    for (const { kit } of written) expect(page).toContain(`<img src="${kit}.svg" alt="Wiring diagram: `);
    expect(page).not.toMatch(/<script|<style|\sstyle=|\son\w+=|https?:/);
  });

  it('load on a page that allows no more than its own images and styles, and say what they are', async () => {
    const types: Readonly<Record<string, string>> = {
      '.html': 'text/html',
      '.css': 'text/css',
      '.svg': 'image/svg+xml',
    };
    const server = createServer((request, response) => {
      const name = (request.url ?? '/').slice(1) || 'index.html';
      if (!readdirSync(out).includes(name)) return void response.writeHead(404).end();
      response.writeHead(200, {
        'content-type': types[extname(name)] ?? 'text/plain',
        'content-security-policy': "default-src 'none'; img-src 'self'; style-src 'self'",
      });
      response.end(readFileSync(join(out, name)));
    });
    await new Promise<void>((done) => void server.listen(0, '127.0.0.1', done));
    const browser = await driver.launch({
      executablePath: chromiumShell(),
      args: ['--no-sandbox', '--disable-gpu'],
    });
    try {
      const page = await browser.newPage({ viewport: { width: 360, height: 800 } });
      const heard: string[] = [];
      // A browser asks for an icon by itself, which the page neither has nor names.
      page.on('console', (message) => {
        if (!/favicon/.test(message.location().url)) heard.push(message.text());
      });
      page.on('pageerror', (error) => heard.push(error.message));
      await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
      const seen = await page.evaluate(async () => {
        for (const image of document.images) image.loading = 'eager';
        await Promise.all([...document.images].map((image) => image.decode()));
        return {
          images: [...document.images].map(({ alt, naturalWidth }) => ({ alt, isShown: naturalWidth > 0 })),
          headings: document.querySelectorAll('h1, h2').length,
          links: [...document.querySelectorAll<HTMLAnchorElement>('nav a')].map(
            ({ hash }) => document.getElementById(hash.slice(1)) !== null,
          ),
          styled: getComputedStyle(document.body).maxWidth,
          overflows: document.documentElement.scrollWidth > window.innerWidth,
          lang: document.documentElement.lang,
        };
      });
      expect(heard).toEqual([]);
      expect(seen.images.map(({ isShown }) => isShown)).toEqual(names.map(() => true));
      expect(new Set(seen.images.map(({ alt }) => alt)).size).toBe(names.length);
      expect(seen).toMatchObject({ headings: names.length + 1, overflows: false, lang: 'en' });
      expect(seen.styled).not.toBe('none');
      expect(seen.links).toEqual(names.map(() => true));
    } finally {
      await browser.close();
      server.close();
    }
  });

  it('--check passes what is drawn, and fails for the one file that differs, without writing', async () => {
    const page = join(out, 'index.html');
    const text = readFileSync(page, 'utf8').replace('<h1>', '<h1>Old: ');
    writeFileSync(page, text);
    const args = ['--pictures', out, '--effort', '0', '--check'];
    const { status, stdout } = await runWithin(addCircuits, 'circuits', ...args);
    expect(status).toBe(1);
    const said = stdout.split('\n').filter((line) => /^(differs|missing|unchanged|written)/.test(line));
    expect(said).toHaveLength(names.length + 2);
    expect(said.filter((line) => !line.startsWith('unchanged'))).toEqual([`differs   ${page}`]);
    expect(readFileSync(page, 'utf8')).toBe(text);
  });
});

describe('the page', () => {
  const { kit } = readKit(
    'kit: k\ntitle: "<b> & \\"c\\""\nabout: "1 < 2"\nparts: {}\njoints: []\n',
    'k.yaml',
  );
  const page = galleryPage(
    kit ? [{ kit, extended: 'circuit/k', picture: { file: 'k.svg', width: 1440, height: 1001 } }] : [],
    'en',
  );

  it('shows words as they are, and gives each drawing its shape', () => {
    expect(page).toContain('<h2 id="k-heading">&lt;b&gt; &amp; &quot;c&quot;</h2>');
    expect(page).toContain('alt="Wiring diagram: &lt;b&gt; &amp; &quot;c&quot;" width="720" height="501"');
    expect(page).toContain('<p>1 &lt; 2</p>');
  });

  it('speaks another language, and says of a kit’s own words which they are in', () => {
    const entry = kit && { kit, extended: 'circuit/k', picture: { file: 'k-de.svg', width: 2, height: 1 } };
    const german = galleryPage(entry ? [entry] : [], 'de');
    expect(german).toContain('<html lang="de">');
    expect(german).toContain('<h2 id="k-heading" lang="en">');
    expect(german).toContain('alt="Verdrahtungsplan: &lt;b&gt;');
    expect(german).not.toMatch(/Letters name|In a kit|Wiring diagram/);
    expect(page).not.toMatch(/<h2[^>]* lang=/);
  });

  it('knows itself, and the size of a drawing', () => {
    expect(isGallery(page)).toBe(true);
    expect(isGallery('<!doctype html><title>My page</title>')).toBe(false);
    expect(sizeOfDrawing(readFileSync('out/heron-ss.svg', 'utf8'))?.width).toBeGreaterThan(100);
    expect(sizeOfDrawing('<svg viewBox="0 0 20 10"></svg>')).toEqual({ width: 20, height: 10 });
    for (const none of ['', '<svg></svg>', '<svg viewBox="0 0 0 1">'])
      expect(sizeOfDrawing(none)).toBeUndefined();
  });
});

it('leaves a page alone that is somebody’s own, and draws nothing beside it', () => {
  const out = mkdtempSync(join(folder, 'own-'));
  const page = join(out, 'index.html');
  writeFileSync(page, '<!doctype html><title>My page</title>\n');
  const { status, stderr } = run('--pictures', out, '--effort', '0');
  expect(status).toBe(1);
  expect(stderr).toContain(`not written ${page}: it already exists and is not a page of circuits`);
  expect(readFileSync(page, 'utf8')).toContain('My page');
  expect(readdirSync(out)).toEqual(['index.html']);
});
