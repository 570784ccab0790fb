/**
 * Builds `dist/`: the command line and the library, each with what they need in few files, so that a cold start
 * reads few of them. Native and lazily loaded packages stay outside.
 */
import { chmodSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, build, type OutputOptions } from 'rolldown';
import { inkStyles } from '../../src/draw/ink-roles.ts';
import { figureStyles } from '../../src/shop/figure-styles.ts';
import { differing, unsaid } from './messages.ts';

const commandsOutput: OutputOptions = {
  dir: 'dist',
  format: 'esm',
  cleanDir: true,
  chunkFileNames: '[name].js',
  minify: { mangle: false, compress: false, codegen: true },
};

const options: BuildOptions = {
  input: { cli: 'src/cli.ts', index: 'src/index.ts', 'build-worker': 'src/catalogue/build/worker.ts' },
  platform: 'node',
  external: [
    '@myriaddreamin/typst-ts-node-compiler',
    '@resvg/resvg-js',
    'subset-font',
    'tinypool',
    'chokidar',
    /^tsx/,
  ],
  plugins: [
    {
      // svgdom loads a whole font engine to measure text, which nothing here asks of it.
      name: 'no-font-engine',
      resolveId: (id) => (id === 'fontkit' ? { id: '\0no-font-engine' } : null),
      load: (id) =>
        id === '\0no-font-engine' ? 'export const openSync = undefined; export default {};' : null,
    },
  ],
  logLevel: 'warn',
  onLog: (level, log, handle) => {
    // svgdom works out :nth-child() with eval, where nothing here selects by it. A warning that nobody can act on hides
    // those that matter; any other eval is still told.
    if (log.code === 'EVAL' && /svgdom/.test(log.message)) return;
    handle(level, log);
  },
  output: commandsOutput,
};

/** For a page: everything in one file, so that any bundler takes it, and none. */
const page: BuildOptions = {
  input: { browser: 'src/browser.ts' },
  platform: 'browser',
  logLevel: 'warn',
  output: {
    dir: 'dist',
    format: 'esm',
    codeSplitting: false,
    minify: { mangle: false, compress: false, codegen: true },
  },
};

/** Scripts of shop pages, each by itself: classic ones, so that they also work from a disk, and as small as can be. */
const shopScripts = {
  'solderleaf-figure': 'src/shop/element/main.ts',
  'solderleaf-index': 'src/shop/index-script.ts',
};
const shopScript = (name: keyof typeof shopScripts): BuildOptions => ({
  input: { [name]: shopScripts[name] },
  platform: 'browser',
  logLevel: 'warn',
  output: { dir: 'dist', format: 'iife', codeSplitting: false, minify: true },
});

/** Builds the command line and the library alone, of the source that lies in another folder. */
export async function buildCommandsIn(folder: string): Promise<void> {
  await build({ ...options, cwd: folder, output: { ...commandsOutput, dir: join(folder, 'dist') } });
}

/** Builds; the test runner calls it before the first test. */
export async function setup(): Promise<void> {
  // A run of tests that need no built program may say so.
  if (process.env.SOLDERLEAF_WITHOUT_BUILD === '1') return;
  const wrong = [...differing(), ...unsaid().map((key) => `no one says the message ${key}`)];
  if (wrong.length > 0) throw new Error(wrong.join('\n'));
  await build(options);
  await build(page);
  await build(shopScript('solderleaf-figure'));
  await build(shopScript('solderleaf-index'));
  writeFileSync('dist/theme.css', inkStyles() + figureStyles);
  // Linked or run by npx, the file is executed itself; npm sets the bit only when it links.
  chmodSync('dist/cli.js', 0o755);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await setup();
