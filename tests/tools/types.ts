/**
 * Emits `dist/types/`: what TypeScript knows of the library, for those who install it. Sources import one another as `.ts`,
 * which a program that uses the package may not; declarations name each other as `.js`. Whether the types are right is not checked
 * again, which would take twice as long: `npm run lint` does so.
 */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-types-'));
execFileSync(
  process.execPath,
  [
    'node_modules/typescript/bin/tsc',
    '-p',
    '.',
    '--noEmit',
    'false',
    '--declaration',
    '--emitDeclarationOnly',
    '--noCheck',
    '--outDir',
    folder,
  ],
  { stdio: 'inherit' },
);
const types = join(folder, 'src');
for (const name of readdirSync(types, { recursive: true, encoding: 'utf8' }).filter((n) =>
  n.endsWith('.d.ts'),
)) {
  const file = join(types, name);
  writeFileSync(
    file,
    readFileSync(file, 'utf8').replace(/((?:from|import\()\s*['"]\.{1,2}\/[^'"]*)\.ts(['"])/g, '$1.js$2'),
  );
}
cpSync(types, 'dist/types', { recursive: true });
rmSync(folder, { recursive: true });
