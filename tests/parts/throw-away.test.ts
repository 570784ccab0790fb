/**
 * A kind is one file and one line: a three-way leaf switch, which the program does not have, is added to a copy of the source in just
 * that way, and a kit with it is checked by the compiler, read, solved, drawn and inspected. Its contacts are those of the handbook
 * (common practice, no source).
 */
import { execFileSync } from 'node:child_process';
import {
  appendFileSync,
  copyFileSync,
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { buildCommandsIn } from '../tools/build.ts';

const KIT = {
  kit: 'thrown',
  title: 'HH, three-way leaf switch, one volume',
  parts: {
    neck: { kind: 'humbucker' },
    bridge: { kind: 'humbucker' },
    selector: { kind: 'leaf-switch' },
    volume: { kind: 'pot', value: '500k' },
    output: { kind: 'jack' },
  },
  joints: [
    'bridge.hot > selector.1',
    'neck.hot > selector.2',
    'selector.common > volume.3',
    'volume.2 > output.tip',
    { bend: 'volume.1 > volume.case' },
    'bridge.ground > volume.case',
    'neck.ground > volume.case',
    'selector.frame > volume.case',
    'volume.case > output.sleeve',
  ],
};

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'throw-away-'));
  for (const name of ['src', 'layouts', 'package.json', 'tsconfig.json'])
    cpSync(name, join(folder, name), { recursive: true });
  symlinkSync(resolve('node_modules'), join(folder, 'node_modules'));
  copyFileSync('tests/parts/leaf-switch.txt', join(folder, 'src/parts/leaf-switch.ts'));
  appendFileSync(join(folder, 'src/parts/kinds.ts'), "export { leafSwitch } from './leaf-switch.ts';\n");
  writeFileSync(join(folder, 'kit.json'), JSON.stringify(KIT));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: readonly string[]): string =>
  execFileSync(process.execPath, args, { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
const solderleaf = (...args: readonly string[]): string => run('dist/cli.js', ...args);

it('touches its own file and one line', () => {
  const list = (root: string) =>
    readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.ts'));
  const here = new Set(list('src'));
  const differs = list(join(folder, 'src')).filter((file) => {
    const mine = here.has(file) ? readFileSync(join('src', file), 'utf8') : undefined;
    return mine !== readFileSync(join(folder, 'src', file), 'utf8');
  });
  expect(differs.sort()).toEqual(['parts/kinds.ts', 'parts/leaf-switch.ts']);
});

it('the compiler knows its lugs', () => {
  const ends = (lug: string) =>
    `import { defineKit } from './index.ts';\nexport default defineKit({ kit: 'a', title: 'a', parts: { s: { kind: 'leaf-switch' }, j: { kind: 'jack' } }, joints: ['s.${lug} > j.tip'] });\n`;
  writeFileSync(join(folder, 'src/right.ts'), ends('frame'));
  writeFileSync(join(folder, 'src/wrong.ts'), ends('A0'));
  writeFileSync(
    join(folder, 'tsconfig.json'),
    readFileSync('tsconfig.json', 'utf8').replace(/"include".*/, '"include": ["src"]'),
  );
  let said = '';
  try {
    run('node_modules/typescript/bin/tsc', '-p', '.');
  } catch (thrown) {
    said = (thrown as { stdout: string }).stdout;
  }
  rmSync(join(folder, 'src/right.ts'));
  rmSync(join(folder, 'src/wrong.ts'));
  const files = [...said.matchAll(/^(\S+?)\(/gm)].map(([, file]) => file);
  expect([...new Set(files)]).toEqual(['src/wrong.ts']);
});

it('reads, solves, draws and inspects a kit with it', async () => {
  await buildCommandsIn(folder);
  solderleaf('check', 'kit.json');
  const { positions } = JSON.parse(solderleaf('loads', 'kit.json', '--json')) as {
    positions: readonly { readonly pickups: Readonly<Record<string, { readonly dcLoad: number }>> }[];
  };
  expect(
    positions.map(({ pickups }) =>
      Object.entries(pickups).map(([name, { dcLoad }]) => [name, Math.round(dcLoad)]),
    ),
  ).toEqual([
    [['bridge', 500e3]],
    [
      ['neck', 500e3],
      ['bridge', 500e3],
    ],
    [['neck', 500e3]],
  ]);
  for (const arrangement of ['free-flow', 'plate-row'])
    solderleaf('draw', 'kit.json', '--out', '.', '--arrangement', arrangement, '--effort', '0');
  const drawings = readdirSync(folder).filter((file) => file.endsWith('.svg'));
  expect(drawings).toHaveLength(2);
  for (const drawing of drawings) {
    solderleaf('check', 'kit.json', '--drawing', drawing);
    expect(readFileSync(join(folder, drawing), 'utf8')).toContain('>frame</text>');
  }
  expect(solderleaf('schema')).toContain('three-way leaf switch; lugs 1, common, 2, frame');
});
