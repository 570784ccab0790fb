/** What is printed on components: the colour bands and letter codes of IEC 60062. */

const DIGITS = ['BK', 'BN', 'RD', 'OG', 'YE', 'GN', 'BU', 'VT', 'GY', 'WH'] as const;
const MULTIPLIERS: Readonly<Record<number, string>> = { [-1]: 'GD', [-2]: 'SR', [-3]: 'PK' };
const TOLERANCES: readonly (readonly [number, string])[] = [
  [0.001, 'VT'],
  [0.0025, 'BU'],
  [0.005, 'GN'],
  [0.01, 'BN'],
  [0.02, 'RD'],
  [0.05, 'GD'],
  [0.1, 'SR'],
];

/**
 * The colour bands of a resistor as IEC 60757 codes: two digits where they hold the value, else three; then the
 * multiplier; then the tolerance, for which 20 % has no band.
 *
 * @param ohms 0.01 Ω to 999 GΩ; rounded to three figures
 * @param tolerance a fraction; the next looser band is shown when it has none of its own
 */
export function resistorBands(ohms: number, tolerance: number): readonly string[] {
  const [mantissa = '0', exponent = '0'] = ohms.toExponential(2).split('e');
  const three = mantissa.replace('.', '');
  const digits = three.endsWith('0') ? three.slice(0, 2) : three;
  const power = Number(exponent) - digits.length + 1;
  const multiplier = power >= 0 ? DIGITS[power] : MULTIPLIERS[power];
  const band = TOLERANCES.find(([limit]) => tolerance <= limit * (1 + 1e-9))?.[1];
  return [
    ...[...digits].map((d) => DIGITS[Number(d)] ?? 'BK'),
    ...(multiplier === undefined ? [] : [multiplier]),
    ...(band === undefined ? [] : [band]),
  ];
}

/**
 * The three-digit code of a capacitor: two figures and the number of zeros in picofarads (223 is 22 nF). A value the
 * code cannot hold, below 10 pF or with a third figure, is written out with the prefix as the decimal point (4p7).
 */
export function capacitorCode(farads: number): string {
  const [mantissa = '0', exponent = '0'] = (farads * 1e12).toExponential(5).split('e');
  const zeros = Number(exponent) - 1;
  // As text, so that ten times 5.6 is 56 exactly.
  const figures = Number(`${mantissa}e1`);
  if (zeros >= 0 && zeros <= 7 && Number.isInteger(figures)) return `${figures}${zeros}`;
  const [prefix, scale] = farads >= 1e-6 ? ['µ', 1e6] : farads >= 1e-9 ? ['n', 1e9] : ['p', 1e12];
  const text = String(Number((farads * scale).toPrecision(4)));
  return text.includes('.') ? text.replace('.', prefix) : text + prefix;
}
