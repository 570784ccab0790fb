/** Kits for tests: from a compact form, or from the samples' text, without going through the reader's checks. */
import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { z } from 'zod';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { given, type Sourced } from '../../src/common/units.ts';
import type { End, Joint, Kit } from '../../src/describe/kit.ts';
import { type Kind, kinds, type Part } from '../../src/parts/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';

export interface Compact {
  readonly kit?: string;
  readonly parts: Readonly<Record<string, Readonly<Record<string, unknown>> & { readonly kind: string }>>;
  /** `a.1 > b.2`, or a mapping whose first value is that. */
  readonly joints: readonly (string | Readonly<Record<string, unknown>>)[];
}

interface AnyKind {
  readonly fields: z.ZodRawShape;
  readonly build: (base: object, written: object) => Part;
}

function makePart(name: string, { kind, label, ...written }: Compact['parts'][string]): Part {
  const known = kinds[kind as Kind] as unknown as AnyKind;
  return known.build({ kind, name, label: label ?? name }, z.strictObject(known.fields).parse(written));
}

const end = (id = ''): End => {
  const [part = '', lug = ''] = id.trim().split('.');
  return { part, lug };
};

export function makeKit({ kit = 'test', parts, joints }: Compact): Kit {
  return {
    id: kit,
    title: kit,
    arrangement: 'free-flow',
    view: 'solder-side',
    hand: 'right',
    language: 'en',
    parts: Object.entries(parts).map(([name, written]) => makePart(name, written)),
    joints: joints.map((joint, index): Joint => {
      const text = typeof joint === 'string' ? joint : String(Object.values(joint)[0]);
      const [from, to] = text.split('>');
      return { kind: 'wire', from: end(from), to: end(to), index };
    }),
    // Common practice, no source: 3 m of 100 pF/m into 1 MΩ.
    outputLoad: {
      cable: given(300e-12),
      cableTolerance: given(0.2),
      amplifier: given(1e6),
      frequency: given(1000),
    },
  };
}

export const makeCircuit = (compact: Compact): Circuit => buildCircuit(makeKit(compact));

const SAMPLES = new URL('../../samples/', import.meta.url);

/** Names of all samples that are kits. */
export const sampleNames = (): readonly string[] =>
  readdirSync(SAMPLES)
    .filter(
      (file) => file.endsWith('.yaml') && /^joints:/m.test(readFileSync(new URL(file, SAMPLES), 'utf8')),
    )
    .map((file) => file.slice(0, -'.yaml'.length))
    .sort();

export const sampleCircuit = (name: string): Circuit =>
  makeCircuit(parse(readFileSync(new URL(`${name}.yaml`, SAMPLES), 'utf8')) as Compact);

/** Humbucker at the neck, single coil at the bridge, three-way lever, no pads unless joined by the caller. */
export const mixedSet: Compact = {
  parts: {
    neck: { kind: 'humbucker' },
    bridge: { kind: 'single-coil' },
    selector: { kind: 'lever-3' },
    volume: { kind: 'pot', value: '500k' },
    tone: { kind: 'pot', value: '500k' },
    cap: { kind: 'capacitor', value: '22n' },
    output: { kind: 'jack' },
  },
  joints: [
    'volume.1 > volume.case',
    'tone.case > volume.case',
    'output.sleeve > volume.case',
    'neck.ground > volume.case',
    'bridge.ground > volume.case',
    'bridge.hot > selector.A1',
    'selector.A1 > selector.A2',
    'neck.hot > selector.B3',
    'selector.B3 > selector.B2',
    'selector.A0 > selector.B0',
    'selector.B0 > volume.3',
    'volume.2 > output.tip',
    'tone.2 > volume.3',
    'tone.1 > cap.1',
    'cap.2 > tone.case',
  ],
};

/** Copper at 10 °C and at 30 °C beside its resistance at 20 °C (IEC 60028). */
const WARM = 0.0393;

interface Spread {
  readonly value: Sourced;
  readonly tolerance: Sourced;
}

/** The kit with every resistance at one end of its tolerance: −1 low, 1 high. */
export function atEnd(kit: Kit, end: -1 | 1): Kit {
  const factor = ({ value }: Sourced): number => 1 + end * value;
  const moved = <T extends Spread>(of: T): T => ({
    ...of,
    value: given(of.value.value * factor(of.tolerance)),
  });
  const parts = kit.parts.map((part): Part => {
    if ('resistance' in part) {
      const ohms = part.resistance.value * factor(part.tolerance) * (1 + end * WARM);
      return { ...part, resistance: given(ohms) };
    }
    switch (part.kind) {
      case 'pot':
      case 'resistor':
        return moved(part);
      case 'push-pull':
        return { ...part, first: moved(part.first) };
      case 'dual-pot':
      case 'stacked-pot':
      case 'blend':
        return { ...part, a: moved(part.a), b: moved(part.b) };
      default:
        return part;
    }
  });
  return { ...kit, parts };
}
