/**
 * Inks and line weights, in one place. What a line is coloured by where the kit does not say which wire it is comes from the
 * published Okabe–Ito palette, safe for colour-blind readers.
 */
import { contrast } from '../common/contrast.ts';

export interface Theme {
  readonly paper: string;
  readonly ink: string;
  readonly quiet: string;
  readonly plate: string;
  readonly inside: string;
  /** A coil's; a pickup's own tint in its place where coils are tinted. */
  readonly coil: string;
  readonly outline: string;
  readonly lug: string;
  readonly lugInk: string;
  readonly solder: string;
  readonly jumper: string;
  readonly accent: string;
  readonly accentFill: string;
  /** Behind the joints of the step that is shown. */
  readonly mark: string;
  /** What does not count in the state that is shown. */
  readonly pale: string;
  readonly leg: string;
  readonly sleeving: string;
  readonly resistor: string;
  readonly capacitor: string;
  /** Ink of a capacitor's code. */
  readonly capacitorInk: string;
  /** By IEC 60757 code; a theme without colour leaves bands as outlines. */
  readonly bands: Readonly<Record<string, string>>;
  /** By tint name; see `annotate/lines.ts`. */
  readonly tints: Readonly<Record<string, string>>;
  /** Of a wire's insulation, by IEC 60757 code; a theme without colour has none. */
  readonly insulation: Readonly<Record<string, string>>;
  /** Of a ground wire of that colour what lies between its rails: paper or ink, whichever stands out from them. */
  readonly cores: Readonly<Record<string, string>>;
  /**
   * Black on white alone, as a copier leaves it: where another theme tells things apart by a fill, a tint or a grey, this one does by
   * their form, in lines no thinner than a copier keeps. Else a pickup's coils have its tint, as the bars of its loads do.
   */
  readonly monochrome: boolean;
}

/**
 * Insulation as it looks in daylight, whatever the paper: the customer looks for the line that is like the wire. White is that of a
 * wire beside paper, a little darker: hollow, it would be taken for the double line of ground.
 */
const INSULATION: Readonly<Record<string, string>> = {
  BK: '#1a1a1a',
  BN: '#7a4a21',
  RD: '#d1242b',
  OG: '#ef8a1c',
  YE: '#f7d117',
  GN: '#2f9e4f',
  BU: '#1f6fd6',
  VT: '#8041a8',
  GY: '#9aa0a6',
  WH: '#ebe7dc',
  PK: '#f29bb8',
  GD: '#c2992b',
  TQ: '#33b8ab',
  SR: '#cfd4d8',
};

/** Colours of the IEC 60062 bands as ink. */
const BANDS: Readonly<Record<string, string>> = {
  BK: '#1a1a1a',
  BN: '#7a4a21',
  RD: '#c8322b',
  OG: '#e8801a',
  YE: '#f2c60f',
  GN: '#2f8f46',
  BU: '#2a5db0',
  VT: '#7c3f98',
  GY: '#8a8f94',
  WH: '#ffffff',
  GD: '#b8963e',
  SR: '#c4c9cd',
  PK: '#f4a6b8',
};

const withCores = (theme: Omit<Theme, 'cores'>): Theme => ({
  ...theme,
  cores: Object.fromEntries(
    Object.entries(theme.insulation).map(([code, rail]) => [
      code,
      contrast(theme.paper, rail) < contrast(theme.ink, rail) ? theme.ink : theme.paper,
    ]),
  ),
});

const LIGHT = withCores({
  paper: '#ffffff',
  ink: '#1d2b36',
  quiet: '#56636d',
  plate: '#f6f3ea',
  inside: '#dcd4c0',
  coil: '#dcd4c0',
  outline: '#6b7780',
  lug: '#e8d9a8',
  lugInk: '#1d2b36',
  solder: '#aab4bb',
  jumper: '#8d979e',
  accent: '#7a4300',
  accentFill: '#fdeecb',
  mark: '#ffd75e',
  pale: '#cdd4d9',
  leg: '#6b7780',
  sleeving: '#e4edf2',
  resistor: '#f3e7cf',
  capacitor: '#d9e6ea',
  capacitorInk: '#1d2b36',
  bands: BANDS,
  tints: {
    ground: '#1d2b36',
    'pickup-1': '#0072b2',
    'pickup-2': '#009e73',
    'pickup-3': '#d55e00',
    'pickup-4': '#8a6d00',
    'switch-output': '#56b4e9',
    output: '#cc79a7',
    tone: '#e69f00',
    other: '#8a8f94',
  },
  insulation: INSULATION,
  monochrome: false,
});

const DARK = withCores({
  paper: '#12191f',
  ink: '#edf1f3',
  quiet: '#aab6be',
  plate: '#1f2a33',
  inside: '#41505b',
  coil: '#41505b',
  outline: '#8d9aa4',
  lug: '#5a4c20',
  lugInk: '#fbf3d9',
  solder: '#78858f',
  jumper: '#6f7c86',
  accent: '#f2c681',
  accentFill: '#33290f',
  mark: '#7a5f00',
  pale: '#3b4650',
  leg: '#9ca8b1',
  sleeving: '#2b3b47',
  resistor: '#d8c9a8',
  capacitor: '#27404b',
  capacitorInk: '#edf1f3',
  bands: BANDS,
  tints: {
    ground: '#edf1f3',
    'pickup-1': '#4aa6e0',
    'pickup-2': '#1fbf92',
    'pickup-3': '#f27d2e',
    'pickup-4': '#c9a63a',
    'switch-output': '#8fd0f5',
    output: '#dd96bd',
    tone: '#f0b429',
    other: '#a7b0b7',
  },
  insulation: INSULATION,
  monochrome: false,
});

/** For a printer without colour, and a copier after it: no fills, black alone; a plot's grid is grey, since nothing hangs on it. */
const PRINT = withCores({
  paper: '#ffffff',
  ink: '#000000',
  quiet: '#000000',
  plate: '#ffffff',
  inside: '#bbbbbb',
  coil: '#ffffff',
  outline: '#000000',
  lug: '#ffffff',
  lugInk: '#000000',
  solder: '#ffffff',
  jumper: '#ffffff',
  accent: '#000000',
  accentFill: '#ffffff',
  mark: '#000000',
  pale: '#000000',
  leg: '#000000',
  sleeving: '#ffffff',
  resistor: '#ffffff',
  capacitor: '#ffffff',
  capacitorInk: '#000000',
  bands: {},
  tints: {
    ground: '#000000',
    'pickup-1': '#000000',
    'pickup-2': '#000000',
    'pickup-3': '#000000',
    'pickup-4': '#000000',
    'switch-output': '#000000',
    output: '#000000',
    tone: '#000000',
    other: '#000000',
  },
  insulation: {},
  monochrome: true,
});

export const themes = { light: LIGHT, dark: DARK, print: PRINT } as const satisfies Readonly<
  Record<string, Theme>
>;
export type ThemeName = keyof typeof themes;

/** Line weights and radii, drawing units. */
export const LINE = {
  outline: 1.5,
  signal: 4,
  ground: 6,
  groundCore: 2.6,
  /** Narrower between coloured rails, so that their colour is seen. */
  insulatedCore: 1.6,
  /** In ink on either side of a coloured line, so that white, yellow and black hold on any paper. */
  edge: 0.8,
  /** Without colour: a signal wire, that a copy does not make it as thin as a leg; ground black, with a white line along it. */
  copiedSignal: 5,
  copiedGround: 7,
  copiedCore: 2,
  /** Of the second colour along a wire of two. */
  stripe: 7,
  braid: 8,
  mark: 16,
  /** Dots along both sides of it, where there is no grey: closed edges would be taken for sleeving. */
  dots: '2 4',
  leg: 2,
  sleeving: 9,
  jumper: 4,
  /** Its links and what lies between them, where there is no grey. */
  links: '6 4',
  /** As wide as a lug is, near enough: no wire is. */
  bend: 10,
  bendRadius: 10,
  /** The least that a copier keeps. */
  hairline: 1.5,
  /** What does not count, where there is no grey. */
  broken: '3 4',
} as const;

/** A line's width where nothing may be thinner than a copier keeps. */
export const kept = ({ monochrome }: Theme, width: number): number =>
  monochrome ? Math.max(width, LINE.hairline) : width;

/** A line that frames or divides. */
export const ruled = (theme: Theme) => ({
  stroke: theme.monochrome ? theme.ink : theme.inside,
  'stroke-width': kept(theme, 1),
});

export const FONT = 'Inter, "Helvetica Neue", Arial, sans-serif';
