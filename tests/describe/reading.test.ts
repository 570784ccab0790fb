import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import { failedScript, kitFromValue, readKit } from '../../src/describe/read.ts';
import { parseText } from '../../src/describe/source.ts';
import { elementsOf, type Kind, type LugName, lugsOf } from '../../src/parts/index.ts';
import { findErrors } from '../../src/solve/errors.ts';
import heronInTypeScript from './fixtures/heron-ss.ts';

const folder = new URL('../../samples/', import.meta.url);
const samples = readdirSync(folder).filter((file) => file.endsWith('.yaml'));
const textOf = (file: string): string => readFileSync(new URL(file, folder), 'utf8');

function kitOf(text: string, file: string): Kit {
  const { kit, problems } = readKit(text, file);
  expect(problems).toEqual([]);
  if (!kit) throw new Error(`${file} gave no kit`);
  return kit;
}

describe('samples', () => {
  test.each(samples)('%s has no error and is named after its kit', (file) => {
    const kit = kitOf(textOf(file), file);
    expect(findErrors(kit)).toEqual([]);
    expect(`${kit.id}.yaml`).toBe(file);
  });

  test('no lug but a pot’s case takes more than three joints', () => {
    for (const file of samples) {
      const ends = kitOf(textOf(file), file).joints.flatMap(({ from, to }) => [from, to]);
      const count = new Map<string, number>();
      for (const { part, lug } of ends)
        if (lug !== 'case') count.set(`${part}.${lug}`, (count.get(`${part}.${lug}`) ?? 0) + 1);
      for (const [lug, joints] of count) expect(joints, `${file} ${lug}`).toBeLessThanOrEqual(3);
    }
  });
});

describe('one kit, three languages', () => {
  const yaml = kitOf(textOf('heron-ss.yaml'), 'heron-ss.yaml');

  test.each(samples)('%s reads the same from JSON', (file) => {
    const { value } = parseText(textOf(file), file);
    expect(kitOf(JSON.stringify(value, null, 2), 'kit.json')).toEqual(kitOf(textOf(file), file));
    expect(kitOf(JSON.stringify(value, null, '\t'), 'kit.json')).toEqual(kitOf(textOf(file), file));
  });

  test('and from TypeScript', () => {
    const { kit, problems } = kitFromValue(heronInTypeScript, 'heron-ss.ts');
    expect(problems).toEqual([]);
    expect(kit).toEqual(yaml);
  });

  test('line ends of any kind give the same kit', () => {
    expect(kitOf(textOf('heron-ss.yaml').replaceAll('\n', '\r\n'), 'heron-ss.yaml')).toEqual(yaml);
  });
});

const BASE = `kit: robin
title: One coil
parts:
  neck: { kind: single-coil }
  volume: { kind: pot, value: 250k }
  output: { kind: jack }
joints:
  - bend: volume.1 > volume.case
  - neck.ground > volume.case
  - output.sleeve > volume.case
  - neck.hot > volume.3
  - volume.2 > output.tip
`;

describe('defaults', () => {
  test('what is not written is filled in and remembered as such', () => {
    const kit = kitOf(BASE, 'robin.yaml');
    expect(kit.arrangement).toBe('free-flow');
    // Common practice, no source: 3 m of 100 pF/m, 1 MΩ, 1 kHz.
    expect(kit.outputLoad).toEqual({
      cable: { value: 300e-12, from: 'default' },
      cableTolerance: { value: 0.2, from: 'default' },
      amplifier: { value: 1e6, from: 'default' },
      frequency: { value: 1000, from: 'default' },
    });
    expect(kit.parts.map((part) => part.label)).toEqual(['Neck', 'Volume', 'Output']);
  });

  test('tolerances that are not written are those of the README', () => {
    const value = { resistor: '1k', capacitor: '1n', pot: '1k', 'push-pull': '1k' } as const;
    const tolerance = (kind: string) => {
      const part = { kind, ...(kind in value ? { value: value[kind as keyof typeof value] } : {}) };
      const [read] =
        kitFromValue({ kit: 'a', title: 'a', parts: { part }, joints: [] }, 'a.ts').draft?.parts ?? [];
      const [element] = read ? elementsOf(read) : [];
      return element?.kind === 'coil'
        ? element.tolerances.map((one) => one.value)
        : element && 'tolerance' in element && [element.tolerance.value];
    };
    expect(tolerance('resistor')).toEqual([0.05]);
    expect(tolerance('capacitor')).toEqual([0.1]);
    expect(tolerance('pot')).toEqual([0.2]);
    expect(tolerance('push-pull')).toEqual([0.2]);
    for (const kind of ['single-coil', 'humbucker', 'four-lead-humbucker'])
      expect(tolerance(kind)).toEqual([0.1, 0.1, 0.2]);
  });

  test('what is written is remembered as given', () => {
    const kit = kitOf(`${BASE}output-load: { cable: 470p, frequency: 440 }\n`, 'robin.yaml');
    expect(kit.outputLoad.cable).toEqual({ value: 470e-12, from: 'given' });
    expect(kit.outputLoad.frequency).toEqual({ value: 440, from: 'given' });
    expect(kit.outputLoad.amplifier.from).toBe('default');
  });

  test('joints keep their order, kind, colour and length', () => {
    const text = BASE.replace(
      '- neck.hot > volume.3',
      '- { wire: neck.hot > volume.3, colour: RDBU, length: 18cm }',
    );
    const joint = kitOf(text, 'robin.yaml').joints[3];
    expect(joint).toEqual({
      kind: 'wire',
      from: { part: 'neck', lug: 'hot' },
      to: { part: 'volume', lug: '3' },
      colour: 'RDBU',
      length: 0.18,
      index: 3,
    });
  });
});

describe('values a script may export', () => {
  test.each([undefined, null, 5, 'kit', [], () => 1])('%s is not a kit', (value) => {
    const { kit, problems } = kitFromValue(value, 'kit.ts');
    expect(kit).toBeUndefined();
    expect(problems.map(({ code }) => code)).toEqual(['wrong-type']);
  });

  test('a compiler’s complaint is shortened to the line that helps', () => {
    const thrown = 'Transform failed with 1 error:\n/home/me/kit.ts:3:30: ERROR: Expected ";" but found "}"';
    const { problems, source } = failedScript(thrown, 'kit.ts');
    expect(problems).toMatchObject([
      { code: 'script-failed', detail: { reason: 'Expected ";" but found "}"' } },
    ]);
    expect(problems.map(source.placeOf)).toMatchObject([{ file: 'kit.ts', line: 3, column: 31 }]);
  });

  test.each(['', '\n'])('thrown %j still gets words', (thrown) => {
    const [found] = failedScript(thrown, 'kit.ts').problems;
    expect(found).toMatchObject({ code: 'script-failed', detail: { reason: expect.stringMatching(/\S/) } });
  });
});

test('the lugs the compiler knows are the lugs the kinds have', () => {
  const lever = { A0: 1, A1: 1, A2: 1, A3: 1, B0: 1, B1: 1, B2: 1, B3: 1 } as const;
  const twoGangs = { a1: 1, a2: 1, a3: 1, b1: 1, b2: 1, b3: 1, case: 1 } as const;
  const known: { readonly [K in Kind]: Readonly<Record<LugName<K>, 1>> } = {
    'single-coil': { hot: 1, ground: 1 },
    humbucker: { hot: 1, ground: 1 },
    'four-lead-humbucker': { 'a-start': 1, 'a-finish': 1, 'b-start': 1, 'b-finish': 1, shield: 1 },
    pot: { 1: 1, 2: 1, 3: 1, case: 1 },
    'lever-3': lever,
    'lever-5': lever,
    resistor: { 1: 1, 2: 1 },
    capacitor: { 1: 1, 2: 1 },
    jack: { tip: 1, sleeve: 1 },
    'ground-point': { 1: 1 },
    'stereo-jack': { tip: 1, ring: 1, sleeve: 1 },
    'push-pull': { 1: 1, 2: 1, 3: 1, case: 1, A0: 1, A1: 1, A2: 1, B0: 1, B1: 1, B2: 1 },
    'dual-pot': twoGangs,
    'stacked-pot': twoGangs,
    blend: twoGangs,
    'lever-4': { ...lever, A4: 1, B4: 1 },
    'lever-5-4p': {
      ...{ ...lever, A4: 1, B4: 1, A5: 1, B5: 1 },
      ...{ C0: 1, C1: 1, C2: 1, C3: 1, C4: 1, C5: 1, D0: 1, D1: 1, D2: 1, D3: 1, D4: 1, D5: 1 },
    },
    'toggle-3': { 1: 1, common: 1, 2: 1, frame: 1 },
    'mini-toggle': { A0: 1, A1: 1, A2: 1, B0: 1, B1: 1, B2: 1 },
    slide: { A0: 1, A1: 1, A2: 1, B0: 1, B1: 1, B2: 1 },
    'kill-button': { 1: 1, 2: 1 },
    // What the kit says; the compiler takes any.
    rotary: { A0: 1, A1: 1, A2: 1, A3: 1, A4: 1, A5: 1 },
    switch: { common: 1, up: 1 },
  };
  const fields: Partial<Record<Kind, object>> = {
    pot: { value: '1k' },
    'push-pull': { value: '1k' },
    'dual-pot': { value: '1k' },
    'stacked-pot': { a: { value: '1k' }, b: { value: '1k' } },
    blend: { value: '1k' },
    'mini-toggle': { action: 'on-on' },
    rotary: { throws: 5 },
    resistor: { value: '1k' },
    capacitor: { value: '1n' },
    switch: { lugs: { left: ['common', 'up'] }, positions: [[], [['common', 'up']]] },
  };
  for (const kind of Object.keys(known) as Kind[]) {
    const parts = { part: { kind, ...fields[kind] } };
    const [part] = kitFromValue({ kit: 'a', title: 'a', parts, joints: [] }, 'a.ts').draft?.parts ?? [];
    expect(part && lugsOf(part).map((lug) => lug.name), kind).toEqual(
      expect.arrayContaining(Object.keys(known[kind])),
    );
    expect(part && lugsOf(part).length, kind).toBe(Object.keys(known[kind]).length);
  }
});
