/** The package as it is installed: packed from a copy, put into an empty folder; its command, its types and its entry for pages. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium as driver } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readKit } from '../../src/checked.ts';
import { draw, drawResponse } from '../../src/pipeline.ts';
import { chromiumShell } from '../tools/chromium.ts';

const root = mkdtempSync(join(tmpdir(), 'solderleaf-pack-'));
const [copy, home] = [join(root, 'copy'), join(root, 'home')];
afterAll(() => rmSync(root, { recursive: true, force: true }));

beforeAll(() => {
  mkdirSync(copy);
  mkdirSync(home);
  for (const name of ['src', 'layouts', 'samples', 'package.json', 'tsconfig.json', 'README.md', 'LICENSE'])
    cpSync(name, join(copy, name), { recursive: true });
  cpSync('tests/tools', join(copy, 'tests/tools'), { recursive: true });
  symlinkSync(resolve('node_modules'), join(copy, 'node_modules'));
  execFileSync('npm', ['pack', '--silent', '--pack-destination', root], { cwd: copy, stdio: 'pipe' });
  const [archive = ''] = readdirSync(root).filter((name) => name.endsWith('.tgz'));
  writeFileSync(join(home, 'package.json'), '{ "type": "module" }');
  execFileSync('npm', ['install', '--prefer-offline', '--no-audit', '--no-fund', join(root, archive)], {
    cwd: home,
    stdio: 'pipe',
  });
  cpSync('samples/wren-hs.yaml', join(home, 'kit.yaml'));
}, 240_000);

/** The README's examples of the library. The last is for a page. */
const examples = [...readFileSync('README.md', 'utf8').matchAll(/```ts\n([\s\S]*?)```/g)].map(
  ([, text = '']) => text,
);

const solderleaf = (...args: readonly string[]) =>
  spawnSync(join(home, 'node_modules/.bin/solderleaf'), args, { cwd: home, encoding: 'utf8' });

it.each(['static', 'inline', 'standalone'])(
  'draws in mode %s',
  (mode) => {
    const { status, stderr } = solderleaf(
      'draw',
      'kit.yaml',
      '--mode',
      mode,
      '--format',
      'svg,png',
      '--effort',
      '0',
    );
    expect([status, stderr]).toEqual([0, '']);
  },
  120_000,
);

it('checks, solves, advises, and plots', () => {
  for (const args of [
    ['check', 'kit.yaml'],
    ['loads', 'kit.yaml', '--json'],
    ['pad', 'kit.yaml'],
    ['response', 'kit.yaml', '--out', 'response.png'],
    ['schema'],
    ['--version'],
  ]) {
    const { status, stderr } = solderleaf(...args);
    expect([status, stderr], args.join(' ')).toEqual([0, '']);
  }
});

it('ships circuits, which a kit in any folder extends', () => {
  const list = solderleaf('circuits', '--json');
  expect([list.status, list.stderr]).toEqual([0, '']);
  const [circuit] = JSON.parse(list.stdout) as readonly { readonly extends: string; readonly file: string }[];
  expect(circuit?.file).toBe(
    join('node_modules/solderleaf/samples', `${circuit?.extends.replace('circuit', 'circuits')}.yaml`),
  );
  writeFileSync(join(home, 'mine.yaml'), `extends: ${circuit?.extends}\nkit: mine\n`);
  const { status, stdout } = solderleaf('check', 'mine.yaml');
  expect([status, stdout]).toEqual([0, expect.stringContaining('mine.yaml: no errors')]);
});

it('has types that hold in a strict program that checks its libraries too, and in the README’s examples', () => {
  writeFileSync(
    join(home, 'program.ts'),
    `import { readFileSync } from 'node:fs';
import { type BaseReader, buildCircuit, defineKit, draw, kitFromValue, formatDiagnostic, readBaseFile, readKit, solveLoads } from 'solderleaf';

const { kit } = readKit(readFileSync('kit.yaml', 'utf8'), 'kit.yaml');
if (!kit) throw new Error('not a kit');
const svg: string = await draw(kit, undefined, { effort: { steps: 0, seed: 1 } });
const loads = solveLoads(buildCircuit(kit));
const own = kitFromValue(defineKit({ kit: 'own', title: 'Own', parts: { a: { kind: 'single-coil' }, j: { kind: 'jack' } }, joints: ['a.hot > j.tip', 'a.ground > j.sleeve'] }), 'own.ts');
// @ts-expect-error a single coil has no such lug
defineKit({ kit: 'own', title: 'Own', parts: { a: { kind: 'single-coil' }, j: { kind: 'jack' } }, joints: ['a.hat > j.tip'] });
const wrong = kitFromValue({ kit: 'own', title: 'Own', parts: { a: { kind: 'single-coil' }, j: { kind: 'jack' } }, joints: ['a.hat > j.tip', 'a.ground > j.sleeve'] }, 'own.ts');
const given: BaseReader = (name, from) => (name === 'own' ? { file: name, value: own.kit && { parts: {}, joints: [] } } : readBaseFile(name, from));
const changed = kitFromValue(defineKit({ extends: './kit.yaml', kit: 'changed', parts: { volume: { value: '250k' } } }), 'changed.ts', given);
console.log(svg.startsWith('<svg'), loads.length, own.kit?.parts.length, changed.kit?.id, wrong.kit, wrong.diagnostics.map((one) => formatDiagnostic(one).split('\\n')[0]));
`,
  );
  expect(examples).toHaveLength(4);
  examples.forEach((text, i) => {
    writeFileSync(join(home, `example-${i}.ts`), text);
  });
  writeFileSync(
    join(home, 'tsconfig.json'),
    JSON.stringify({
      compilerOptions: {
        target: 'es2023',
        lib: ['es2023', 'dom'],
        module: 'nodenext',
        strict: true,
        exactOptionalPropertyTypes: true,
        noUncheckedIndexedAccess: true,
        skipLibCheck: false,
        types: ['node'],
        typeRoots: [resolve('node_modules/@types')],
        outDir: 'out',
      },
      files: ['program.ts', ...examples.map((_, i) => `example-${i}.ts`)],
    }),
  );
  const { status, stdout } = spawnSync(
    process.execPath,
    [resolve('node_modules/typescript/bin/tsc'), '-p', '.'],
    {
      cwd: home,
      encoding: 'utf8',
    },
  );
  expect([status, stdout]).toEqual([0, '']);
}, 120_000);

it('runs as a library', () => {
  const run = spawnSync(process.execPath, ['out/program.js'], { cwd: home, encoding: 'utf8' });
  expect([run.stdout, run.stderr]).toEqual([
    "true 3 2 changed undefined [ 'own.ts:1:1  error  unknown-lug' ]\n",
    '',
  ]);
});

it('does what the README’s examples of the library say', () => {
  // They draw at the usual effort: a kit of few parts.
  const here = join(home, 'examples');
  mkdirSync(here);
  cpSync('samples/circuits/s-volume.yaml', join(here, 'kit.yaml'));
  const [drawn, pages, solved] = [here, here, home].map((cwd, i) =>
    spawnSync(process.execPath, [join(home, `out/example-${i}.js`)], { cwd, encoding: 'utf8' }),
  );
  expect([drawn?.stdout, drawn?.stderr, pages?.stdout, pages?.stderr]).toEqual(['', '', '', '']);
  const written = readdirSync(here).filter((name) => name.endsWith('.svg'));
  const sizeOf = (name: string): string =>
    /^<svg[^>]* width="([^"]+)" height="[^"]+"/.exec(readFileSync(join(here, name), 'utf8'))?.[1] ?? name;
  expect(written).toContain('kit.svg');
  const others = written.filter((name) => name !== 'kit.svg').map(sizeOf);
  expect([...new Set(others)].sort()).toEqual([expect.stringMatching(/^(210|297)mm$/), '360']);
  expect(solved?.stdout).toContain('{ selector: 3 } neck 500000 250');
}, 120_000);

it('bundles for a page and draws there into the page’s own document, the same as in Node', async () => {
  const entry = join(home, 'page.js');
  writeFileSync(
    entry,
    `import { draw, drawResponse, readKit } from 'solderleaf/browser';
globalThis.drawn = async (text) => {
  const { kit } = readKit(text, 'kit.yaml');
  document.body.append(await draw(kit, undefined, { effort: { steps: 0, seed: 1 } }), drawResponse(kit));
};`,
  );
  const bundled = await build({
    root: home,
    logLevel: 'error',
    build: { write: false, lib: { entry, formats: ['iife'], name: 'page', fileName: 'page' } },
  });
  const [output] = [bundled].flat();
  if (!output || !('output' in output)) throw new Error('nothing was bundled');
  const text = readFileSync(join(home, 'kit.yaml'), 'utf8');
  const { kit } = readKit(text, 'kit.yaml');
  if (!kit) throw new Error('not a kit');
  const expected = [await draw(kit, undefined, { effort: { steps: 0, seed: 1 } }), drawResponse(kit)];
  const browser = await driver.launch({
    executablePath: chromiumShell(),
    args: ['--no-sandbox', '--disable-gpu'],
  });
  try {
    const page = await browser.newPage();
    const errors: string[] = [];
    page.on('pageerror', (error) => errors.push(error.message));
    page.on('console', (message) => errors.push(message.text()));
    await page.setContent('<!doctype html><body></body>');
    await page.addScriptTag({ content: output.output[0].code });
    const same = await page.evaluate(
      async ({ kitText, texts }) => {
        await (globalThis as unknown as { drawn: (kit: string) => Promise<void> }).drawn(kitText);
        const parser = new DOMParser();
        return [...document.querySelectorAll('body > svg')].map((element, i) => {
          const wanted = parser.parseFromString((texts[i] ?? '').trim(), 'image/svg+xml').documentElement;
          // A serialised element says of which namespace it is, which an element knows.
          for (const one of [wanted, element]) one.removeAttribute('xmlns');
          return wanted.isEqualNode(element);
        });
      },
      { kitText: text, texts: expected },
    );
    expect(errors).toEqual([]);
    expect(same).toEqual([true, true]);
  } finally {
    await browser.close();
  }
}, 120_000);

it('brings what it needs and nothing else', () => {
  const installed = join(home, 'node_modules/solderleaf');
  expect(readdirSync(installed).sort()).toEqual([
    'LICENSE',
    'README.md',
    'dist',
    'layouts',
    'package.json',
    'samples',
  ]);
  expect(readdirSync(join(installed, 'samples'))).toEqual(['circuits']);
  expect(readFileSync(join(installed, 'dist/types/index.d.ts'), 'utf8')).not.toContain(".ts'");
});
