/** IEC 60062 marking. Sources beside each check. */
import { describe, expect, it } from 'vitest';
import { capacitorCode, resistorBands } from '../../src/common/marking.ts';

// T. Kuphaldt, Lessons in Electric Circuits, volume V, chapter 2: worked examples of the colour code.
describe('bands of a resistor', () => {
  it.each([
    [47e3, 0.05, 'YE VT OG GD'],
    [5.2, 0.1, 'GN RD GD SR'],
    [97, 0.2, 'WH VT BK'],
    [1.58, 0.02, 'BN GN GY SR RD'],
    [6.15, 0.0025, 'BU BN GN SR BU'],
  ])('%d ohms at %d', (ohms, tolerance, bands) => {
    expect(resistorBands(ohms, tolerance).join(' ')).toBe(bands);
  });
  it('holds two figures in two digits where the book’s 3.3 kΩ has three (OG OG BK BN VT): both are right', () => {
    expect(resistorBands(3300, 0.001).join(' ')).toBe('OG OG RD VT');
  });
});

// Three-digit capacitor code: examples of the check values (IEC 60062 practice).
describe('code of a capacitor', () => {
  it.each([
    [10e-9, '103'],
    [100e-9, '104'],
    [22e-9, '223'],
    [47e-9, '473'],
    [22e-12, '220'],
    [4.7e-12, '4p7'],
    // What three digits do not hold is written out, with the prefix for the point.
    [1.234e-6, '1µ234'],
    [1.234e-9, '1n234'],
  ])('%d farads', (farads, code) => expect(capacitorCode(farads)).toBe(code));
});
