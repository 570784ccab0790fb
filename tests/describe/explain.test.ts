/** Where each value of a part was written, along a chain of kits. */
import { expect, it } from 'vitest';
import { explainPart } from '../../src/describe/explain.ts';
import { findPart } from '../../src/describe/kit.ts';
import { kitFromValue, readKit } from '../../src/describe/read.ts';
import { explainTable } from '../../src/report/explain-table.ts';

const BASE = `kit: base
title: S, one volume
parts:
  neck: { kind: single-coil, resistance: 5.7k }
  volume: { kind: pot, value: 250k, taper: linear, midpoint: 10% }
  output: { kind: jack }
joints:
  - neck.ground > output.sleeve
  - { wire: neck.hot > volume.3, colour: BU }
  - volume.1 > output.sleeve
  - volume.2 > output.tip
`;
const MIDDLE = 'extends: base.yaml\nkit: middle\nparts:\n  volume: { value: 300k }\n';
const TOP =
  'extends: middle.yaml\nkit: top\nremove: { keys: [volume.taper] }\nparts:\n  volume:\n    value: 500k\n    label: Loud\njoints:\n  - neck.hot > volume.3\n';
const texts: Readonly<Record<string, string>> = { 'base.yaml': BASE, 'middle.yaml': MIDDLE };
const bases = (file: string) => ({ file, text: texts[file] ?? '' });

function tableOf(reading: ReturnType<typeof readKit>, name: string): string {
  const found = explainPart(reading.layers ?? [], name, reading.kit && findPart(reading.kit, name));
  return 'code' in found ? found.code : explainTable(found);
}

it('names the line of each value, what it replaces, and the defaults', () => {
  expect(tableOf(readKit(TOP, 'top.yaml', bases), 'volume')).toBe(
    `volume in top.yaml, which extends middle.yaml, which extends base.yaml

field      value  written in   replaces
kind       pot    base.yaml:5
label      Loud   top.yaml:7
value      500k   top.yaml:6   300k (middle.yaml:4), 250k (base.yaml:5)
taper      log    default
tolerance  0.2    default
midpoint   10%    base.yaml:5

joint                     written in
neck.hot > volume.3       top.yaml:9
volume.1 > output.sleeve  base.yaml:10
volume.2 > output.tip     base.yaml:11`,
  );
});

it('keeps nothing of a part that was of another kind', () => {
  const text = 'extends: base.yaml\nkit: top\nparts:\n  neck: { kind: humbucker }\n';
  const table = tableOf(readKit(text, 'top.yaml', bases), 'neck');
  expect(table).toMatch(/^kind +humbucker +top\.yaml:4$/m);
  expect(table).toMatch(/^reference +\{ volume: 500000, tone: 500000 \} +default$/m);
  expect(table).not.toContain('5.7k');
  expect(table).not.toContain('replaces');
});

it('explains a kit by itself, a faulty one, and one from a script', () => {
  expect(tableOf(readKit(BASE, 'base.yaml'), 'neck')).toMatch(
    /^neck in base\.yaml\n[\s\S]*resistance +5\.7k +base\.yaml:4$/m,
  );
  const faulty = tableOf(readKit(BASE.replace('250k', 'loud'), 'base.yaml'), 'volume');
  expect(faulty).toMatch(/^value +loud +base\.yaml:5$/m);
  expect(faulty).not.toContain('default');
  const script = kitFromValue(
    { extends: 'base.yaml', kit: 'mine', parts: { volume: { value: 500e3 } } },
    'mine.ts',
    bases,
  );
  expect(tableOf(script, 'volume')).toMatch(/^value +500000 +mine\.ts +250k \(base\.yaml:5\)$/m);
});

it('suggests the nearest part', () => {
  const { layers = [] } = readKit(TOP, 'top.yaml', bases);
  expect(explainPart(layers, 'volum', undefined)).toMatchObject({
    code: 'unknown-part',
    detail: { nearest: 'volume', allowed: ['neck', 'volume', 'output'] },
  });
});
