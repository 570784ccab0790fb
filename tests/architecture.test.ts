/** Arrows between rooms run one way, and no file imports itself by a detour. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { parseAst } from 'rolldown/parseAst';
import { describe, expect, it } from 'vitest';

/** A room may import itself and any room before it. The pipeline is pure: it comes before what touches the machine. */
const ROOMS = [
  'common',
  'messages',
  'parts',
  'describe',
  'circuit',
  'solve',
  'soldering',
  'analyse',
  'annotate',
  'place',
  'draw',
  'inspect',
  'checked.ts',
  'prepare.ts',
  'pipeline.ts',
  'report',
  'leaflet',
  'shop',
  'files',
  'publish',
  'catalogue',
  'commands',
  'public-types.ts',
  'index.ts',
  'browser.ts',
  'cli.ts',
];

type Imports = ReadonlyMap<string, readonly string[]>;

const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.ts'),
);
const sources = new Map(files.map((file) => [file, readFileSync(join('src', file), 'utf8')]));
const namesIn = (text: string): readonly string[] =>
  [...text.matchAll(/(?:from|import)\s*\(?\s*['"`]([^'"`]+)['"`]/g)].map((found) => found[1] ?? '');
const imports: Imports = new Map(
  [...sources].map(([file, text]) => [
    file,
    namesIn(text)
      .filter((name) => name.startsWith('.'))
      .map((name) => normalize(join(dirname(file), name))),
  ]),
);

interface Statement {
  readonly type: string;
  readonly source?: { readonly value: string } | null;
  readonly specifiers?: readonly {
    readonly type: string;
    readonly imported?: Named;
    readonly local: Named;
    readonly exported?: Named;
  }[];
  readonly declaration?: {
    readonly id?: Named;
    readonly declarations?: readonly {
      readonly id: Named & {
        readonly elements?: readonly Named[];
        readonly properties?: readonly { readonly value: Named }[];
      };
    }[];
  } | null;
}
interface Named {
  readonly name: string;
}

/** What a module exports, and what it imports of which file. */
function namesOf(file: string, text: string) {
  const { body } = parseAst(text, { lang: 'ts' }) as unknown as { readonly body: readonly Statement[] };
  const [given, taken]: [string[], string[]] = [[], []];
  for (const { type, source, specifiers = [], declaration } of body) {
    const from = source?.value.startsWith('.') ? normalize(join(dirname(file), source.value)) : undefined;
    const exported = type === 'ExportNamedDeclaration';
    for (const one of specifiers) {
      if (exported) given.push(one.exported?.name ?? '');
      if (from !== undefined)
        taken.push(
          `${from}#${one.type === 'ImportNamespaceSpecifier' ? '*' : (one.imported ?? one.local).name}`,
        );
    }
    if (exported && declaration?.id) given.push(declaration.id.name);
    for (const { id } of (exported && declaration?.declarations) || [])
      given.push(
        ...(id.elements ?? id.properties?.map(({ value }) => value) ?? [id]).map(({ name }) => name),
      );
  }
  return { exports: given, imports: taken };
}

const modules = new Map(
  ['src', 'tests'].flatMap((root) =>
    readdirSync(root, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => join(root, name))
      .map((file) => [file, namesOf(file, readFileSync(file, 'utf8'))] as const),
  ),
);

const rank = (file: string): number => ROOMS.indexOf(file.split('/')[0] ?? '');

const forbidden = (graph: Imports): readonly string[] =>
  [...graph].flatMap(([file, names]) =>
    names.filter((name) => rank(name) < 0 || rank(name) > rank(file)).map((name) => `${file} → ${name}`),
  );

function cycles(graph: Imports): readonly string[] {
  const found: string[] = [];
  const done = new Set<string>();
  const visit = (file: string, path: readonly string[]): void => {
    if (path.includes(file)) found.push([...path.slice(path.indexOf(file)), file].join(' → '));
    else if (!done.has(file)) {
      for (const next of graph.get(file) ?? []) visit(next, [...path, file]);
      done.add(file);
    }
  };
  for (const file of graph.keys()) visit(file, []);
  return found;
}

const importersOf = (name: RegExp): readonly string[] =>
  [...sources].filter(([, text]) => namesIn(text).some((one) => name.test(one))).map(([file]) => file);

describe('the structure', () => {
  it('knows every file’s room', () => expect(files.filter((file) => rank(file) < 0)).toEqual([]));
  it('has no forbidden arrow', () => expect(forbidden(imports)).toEqual([]));
  it('has no import cycle', () => expect(cycles(imports)).toEqual([]));
  it('imports elkjs in one file', () => expect(importersOf(/^elkjs/)).toEqual(['place/elk.ts']));
  it('draws with svg.js in one room', () =>
    expect(importersOf(/^(@svgdotjs|svgdom)/).filter((file) => !file.startsWith('draw/'))).toEqual([]));
  it('reaches no svgdom and no machine from what a page is given', () => {
    const seen = new Set(['browser.ts']);
    for (const file of seen) for (const name of imports.get(file) ?? []) seen.add(name);
    expect(seen.size).toBeGreaterThan(50);
    expect(importersOf(/^(svgdom|node:)/).filter((file) => seen.has(file))).toEqual([]);
  });
  it('touches the machine only in files, publish, catalogue and the command line', () =>
    expect(
      importersOf(/^node:/).filter((file) => !/^(files|publish|catalogue|commands)\/|^cli\.ts$/.test(file)),
    ).toEqual([]));
  it('exports nothing that nobody imports', () => {
    const roots = /^src\/(index|browser|cli|public-types|shop\/element\/main|catalogue\/build\/worker)\.ts$/;
    const wanted = new Set([...modules.values()].flatMap(({ imports: taken }) => taken));
    const unused = [...modules].flatMap(([file, { exports: given }]) =>
      roots.test(file) || !file.startsWith('src/') || wanted.has(`${file}#*`)
        ? []
        : given.filter((name) => !wanted.has(`${file}#${name}`)).map((name) => `${file}#${name}`),
    );
    expect(unused).toEqual([]);
    expect(wanted.size).toBeGreaterThan(500);
    expect(
      namesOf(
        'a/b.ts',
        "export const c = 1;\nexport { d } from './e.ts';\nimport { f as g } from '../h.ts';",
      ),
    ).toEqual({
      exports: ['c', 'd'],
      imports: ['a/e.ts#d', 'h.ts#f'],
    });
  });
  it('keeps files small', () =>
    expect(
      [...sources]
        // A table of numbers, and one of messages for each language, are read by nobody from top to bottom.
        .filter(([file]) => !/^(common\/font-metrics|messages\/[a-z]{2})\.ts$/.test(file))
        .filter(([, text]) => text.split('\n').length > 320)
        .map(([f]) => f),
    ).toEqual([]));
  it('would find a forbidden arrow and a cycle', () => {
    expect(forbidden(new Map([['parts/a.ts', ['draw/b.ts']]]))).toHaveLength(1);
    expect(forbidden(new Map([['pipeline.ts', ['publish/b.ts']]]))).toHaveLength(1);
    expect(forbidden(new Map([['draw/a.ts', ['parts/b.ts', 'draw/c.ts']]]))).toHaveLength(0);
    expect(
      namesIn("import type { A } from './a.ts';\nexport * from './b.ts';\nawait import('./c.ts');"),
    ).toEqual(['./a.ts', './b.ts', './c.ts']);
    expect(
      cycles(
        new Map([
          ['a', ['b']],
          ['b', ['a']],
        ]),
      ),
    ).toHaveLength(1);
  });
});
