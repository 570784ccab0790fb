import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import {
  formatKitJsonSchema,
  formatListJsonSchema,
  kitJsonSchema,
  listJsonSchema,
} from '../../src/describe/json-schema.ts';
import { readKit } from '../../src/describe/read.ts';
import { kitSchema } from '../../src/describe/schema.ts';
import { parseText } from '../../src/describe/source.ts';
import { kinds } from '../../src/parts/index.ts';

const folder = new URL('../../samples/', import.meta.url);
const textOf = (file: string): string => readFileSync(new URL(file, folder), 'utf8');
const yamlIn = (sub: string): readonly string[] =>
  readdirSync(new URL(sub, folder))
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => `${sub}${file}`);

test('samples/kit.schema.json is what the program prints', () => {
  expect(textOf('kit.schema.json')).toBe(formatKitJsonSchema());
});

test('samples/parts.schema.json is what the program prints, and takes the workshop’s list', () => {
  expect(textOf('parts.schema.json')).toBe(formatListJsonSchema());
  const editor = z.fromJSONSchema(JSON.parse(JSON.stringify(listJsonSchema())));
  const { value } = parseText(textOf('workshop/parts.yaml'), 'parts.yaml');
  expect(editor.safeParse(value).success).toBe(true);
  const wrong = (item: object) => editor.safeParse({ stock: [item] }).success;
  expect(wrong({ code: 'R', kind: 'resistor', value: '1k' })).toBe(true);
  expect(wrong({ code: 'R', kind: 'resistor', value: '1k', label: 'Pad' })).toBe(false);
  expect(wrong({ kind: 'resistor', value: '1k' })).toBe(false);
});

test('a part told by its code needs no value in an editor', () => {
  const editor = z.fromJSONSchema(JSON.parse(JSON.stringify(kitJsonSchema())));
  const kit = (part: object) =>
    editor.safeParse({ kit: 'a', title: 'A', parts: { pad: part }, joints: [] }).success;
  expect(kit({ kind: 'resistor', code: 'R-470K', label: 'Pad' })).toBe(true);
  expect(kit({ kind: 'resistor', label: 'Pad' })).toBe(false);
  expect(kit({ kind: 'resister', code: 'R-470K' })).toBe(false);
});

test('every sample names the schema on its first line', () => {
  for (const file of yamlIn('./'))
    expect(textOf(file).split('\n')[0]).toBe('# yaml-language-server: $schema=./kit.schema.json');
});

describe('the JSON Schema', () => {
  const schema = JSON.parse(JSON.stringify(kitJsonSchema()));

  test('is draft 2020-12 and has a title', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.title).not.toBe('');
  });

  test('offers every kind with its fields', () => {
    const offered = schema.$defs.part.oneOf.map((part: { properties: { kind: { const: string } } }) => [
      part.properties.kind.const,
      Object.keys(part.properties),
    ]);
    expect(offered).toEqual(
      Object.values(kinds).map((kind) => [kind.kind, ['kind', 'code', 'label', ...Object.keys(kind.fields)]]),
    );
  });

  test('says something about every key', () => {
    const silent: string[] = [];
    const visit = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return;
      const { properties = {}, ...rest } = node as { properties?: Record<string, { description?: string }> };
      for (const [key, value] of Object.entries(properties)) {
        if (!value.description) silent.push(`${path}.${key}`);
        visit(value, `${path}.${key}`);
      }
      for (const [key, value] of Object.entries(rest)) visit(value, `${path}.${key}`);
    };
    visit(schema, '');
    expect(silent).toEqual([]);
  });

  test('accepts the samples and refuses what is shaped wrongly', () => {
    const editor = z.fromJSONSchema(schema);
    for (const file of [...yamlIn('./'), 'broken/extends-circuit.yaml'])
      expect(editor.safeParse(parseText(textOf(file), file).value).success, file).toBe(true);
    for (const file of [
      'bad-colour',
      'unknown-key',
      'unknown-kind',
      'joint-syntax',
      'joint-kinds',
      'missing-value',
      'kit-id-path',
      'extends-shape',
    ])
      expect(editor.safeParse(parseText(textOf(`broken/${file}.yaml`), file).value).success, file).toBe(
        false,
      );
  });
});

test('the schema and the reader refuse the same descriptions', () => {
  for (const file of [...yamlIn('./'), ...yamlIn('broken/')]) {
    const text = textOf(file);
    const { value, problems } = parseText(text, file);
    // The schema library passes over a key named __proto__; the reader does not.
    if (problems.length > 0 || text.includes('__proto__')) continue;
    // What is wrong with a kit that extends another lies most often in what its base has.
    if (/^extends:/m.test(text)) continue;
    expect(kitSchema.safeParse(value).success, file).toBe(readKit(text, file).problems.length === 0);
  }
});
