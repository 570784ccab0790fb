/** Fields of the description outside its parts: ids, names, colours, lengths, joints. */
import { z } from 'zod';
import { ID, NAME_LONGEST } from '../common/names.ts';

export const isName = (text: string): boolean => text.length <= NAME_LONGEST && ID.test(text);

/** IEC 60757 letter codes of one colour, in the order of its table, and green-and-yellow. */
export const colours = [
  'BK',
  'BN',
  'RD',
  'OG',
  'YE',
  'GN',
  'BU',
  'VT',
  'GY',
  'WH',
  'PK',
  'GD',
  'TQ',
  'SR',
  'GNYE',
] as const;

/** Colours that may be combined: green and yellow only with one another, as GNYE (IEC 60445). */
type Mixable = Exclude<(typeof colours)[number], 'GN' | 'YE' | 'GNYE'>;
const mixable = colours.filter((code): code is Mixable => code !== 'GN' && code !== 'YE' && code !== 'GNYE');

/** Every code that may be written: single colours, then two together in the order of the table. */
type Colour = (typeof colours)[number] | `${Mixable}${Mixable}`;
const everyColour: readonly Colour[] = [
  ...colours,
  ...mixable.flatMap((first, i) => mixable.slice(i + 1).map((second): Colour => `${first}${second}`)),
];

export const colourField = z
  .enum(everyColour)
  .describe(
    'Colour of the insulation, as its IEC 60757 code, such as BK or RDBU; green with yellow only as GNYE',
  );

/** Names of the IEC 60757 codes. */
export const colourNames: Readonly<Record<string, string>> = {
  BK: 'black',
  BN: 'brown',
  RD: 'red',
  OG: 'orange',
  YE: 'yellow',
  GN: 'green',
  BU: 'blue',
  VT: 'violet',
  GY: 'grey',
  WH: 'white',
  PK: 'pink',
  GD: 'gold',
  TQ: 'turquoise',
  SR: 'silver',
};

/** What people write for a colour's name. */
const OTHER_NAMES: Readonly<Record<string, string>> = { gray: 'GY', purple: 'VT', blk: 'BK', wht: 'WH' };

/** The code that was probably meant: small letters, the colour's name, or two of either in the wrong order. */
export function meantColour(text: string): string | undefined {
  const letters = text.toUpperCase().replace(/[^A-Z]/g, '');
  const pair = /^(..)(..)$/.exec(letters);
  const words = text
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word !== '' && word !== 'and');
  const codes = words.map(
    (word) =>
      OTHER_NAMES[word] ??
      colours.find((code) => colourNames[code] === word || code.toLowerCase() === word) ??
      '',
  );
  const candidates = [
    letters,
    ...(pair ? [`${pair[2]}${pair[1]}`] : []),
    ...(codes.includes('') || codes.length > 2 ? [] : [codes.join(''), [...codes].reverse().join('')]),
  ];
  return candidates.find((code) => (everyColour as readonly string[]).includes(code));
}

const METRES: Readonly<Record<string, number>> = { mm: -3, cm: -2, m: 0 };
const LENGTH_EXAMPLES = '180mm, 18cm, 0.18m or 7in';
/** Millimetres to the inch, exact since the agreement of 1959. */
const INCH = 25.4;
/** Metres; far longer than any lead in a guitar. */
const LENGTH_MOST = 10;

/** Metres from `180mm`; `undefined` when it is not a length. The exponent is appended, so 180mm is exactly 0.18. */
export function parseLength(text: string): number | undefined {
  const found = /^([+-]?(?:\d+\.?\d*|\.\d+))\s*(mm|cm|m|in|")$/.exec(text.trim());
  if (found && METRES[found[2] ?? ''] === undefined) return (Number(found[1]) * INCH) / 1000;
  return found ? Number(`${found[1]}e${METRES[found[2] ?? 'm'] ?? 0}`) : undefined;
}

export const lengthField = z
  .string({ error: `expected a length with its unit, such as ${LENGTH_EXAMPLES}` })
  .transform((written, ctx) => {
    const metres = parseLength(written);
    const why =
      metres === undefined
        ? 'not a length with its unit'
        : metres <= 0
          ? 'a length must be more than zero'
          : metres > LENGTH_MOST
            ? 'a length out of range'
            : undefined;
    if (metres === undefined || why !== undefined) {
      ctx.addIssue({
        code: 'custom',
        message: why ?? '',
        params: { quantity: 'length', examples: LENGTH_EXAMPLES },
      });
      return z.NEVER;
    }
    return metres;
  })
  .describe('Cut length with its unit, such as 180mm, 18cm, 0.18m or 7in');

/** The range of hearing: a load at any other frequency says nothing. */
const AUDIBLE: readonly [number, number] = [20, 20_000];

export const hertzField = z
  .union([z.string(), z.number()], { error: 'expected a frequency such as 1kHz, 440 or 2.5k' })
  .transform((written, ctx) => {
    const found = /^(\d+\.?\d*|\.\d+)\s*(k?)(?:Hz)?$/.exec(String(written).trim());
    const value = found ? Number(`${found[1]}e${found[2] === 'k' ? 3 : 0}`) : Number.NaN;
    if (!(value >= AUDIBLE[0] && value <= AUDIBLE[1])) {
      const message = 'not a frequency from 20 Hz to 20 kHz';
      ctx.addIssue({
        code: 'custom',
        message,
        params: { quantity: 'frequency', examples: '1kHz, 440 or 2.5k' },
      });
      return z.NEVER;
    }
    return value;
  })
  .describe('Frequency at which signal loads are taken; 1 kHz by default');

/** Two ends and the arrow between them. Wide on purpose: a misspelt name is not a malformed joint. */
export const JOINT = /^\s*([^\s.>]+)\s*\.\s*([^\s.>]+)\s*>\s*([^\s.>]+)\s*\.\s*([^\s.>]+)\s*$/;
