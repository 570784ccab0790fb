/** Bands and codes on components. Sources: IEC 60062 (colours, tolerances, codes) and IEC 60063 (series), from memory. */
import { describe, expect, it } from 'vitest';
import { bandsOf, meantBy, TOLERANCES } from './bands.ts';
import { described, drawn } from './draw.ts';

/** Resistors or capacitors end to end from tip to sleeve, so that one drawing shows many. */
function chain(id: string, kind: string, parts: readonly Readonly<Record<string, unknown>>[]) {
  const names = parts.map((_, i) => `x${i}`);
  const ends = ['output.tip', ...names.flatMap((name) => [`${name}.1`, `${name}.2`]), 'output.sleeve'];
  return described({
    kit: id,
    title: 'Components in a chain',
    parts: {
      pickup: { kind: 'single-coil' },
      output: { kind: 'jack' },
      ...Object.fromEntries(names.map((name, i) => [name, { kind, ...parts[i] }])),
    },
    joints: [
      { wire: 'pickup.hot > output.tip' },
      { wire: 'pickup.ground > output.sleeve' },
      ...Array.from({ length: names.length + 1 }, (_, i) => ({ leg: `${ends[2 * i]} > ${ends[2 * i + 1]}` })),
    ],
  });
}

/** IEC 60063: E96 is round(100 · 10^(i/96)); E24 and E12 are written out, as two of their values are not what a formula gives. */
const E96 = Array.from({ length: 96 }, (_, i) => Math.round(100 * 10 ** (i / 96)));
const E24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];
const E12 = [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82];

async function resistors(id: string, list: readonly { readonly ohms: number; readonly tolerance: string }[]) {
  const { parts } = await drawn(
    chain(
      id,
      'resistor',
      list.map(({ ohms, tolerance }) => ({ value: ohms, tolerance })),
    ),
  );
  list.forEach(({ ohms, tolerance }, i) => {
    const part = parts.find(({ name }) => name === `x${i}`);
    if (!part) throw new Error(`no x${i}`);
    const bands = bandsOf(part);
    expect(meantBy(bands), `${ohms} Ω, ${bands.join(' ')}`).toEqual({ ohms, tolerance });
  });
}

describe('a resistor’s bands', () => {
  it.each([0, 1, 2, 3])('of E96, 1 %%, part %i of 4', (part) =>
    resistors(
      `e96-${part}`,
      E96.slice(24 * part, 24 * part + 24).map((value, i) => ({
        ohms: value * 10 ** ((i + part) % 5),
        tolerance: '1%',
      })),
    ),
  );
  it('of E24, 5 %, over the decades', () =>
    resistors(
      'e24',
      E24.map((value, i) => ({ ohms: Number(`${value}e${(i % 7) - 1}`), tolerance: '5%' })),
    ));
  it.each(Object.keys(TOLERANCES))('of a tolerance of %s', (tolerance) =>
    resistors(`tolerance-${tolerance.replace(/\W/g, '')}`, [
      { ohms: 470e3, tolerance },
      { ohms: 1.5e6, tolerance },
    ]),
  );
});

it('a capacitor’s code: two figures and how many zeros follow, in picofarads (IEC 60062)', async () => {
  const list = E12.flatMap((value) => [`${value}0p`, `${value}n`]);
  const { parts } = await drawn(
    chain(
      'codes',
      'capacitor',
      list.map((value) => ({ value })),
    ),
  );
  list.forEach((value, i) => {
    const code = value.endsWith('n') ? `${value.slice(0, 2)}3` : `${value.slice(0, 2)}1`;
    expect(
      parts.find(({ name }) => name === `x${i}`)?.texts.map(({ words }) => words),
      value,
    ).toContain(code);
  });
});
