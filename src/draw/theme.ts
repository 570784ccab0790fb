/** Inks and line weights, in one place. Wire colours are the published Okabe–Ito palette, safe for colour-blind readers. */

export interface Theme {
  readonly paper: string;
  readonly ink: string;
  readonly quiet: string;
  readonly plate: string;
  readonly inside: string;
  readonly outline: string;
  readonly lug: string;
  readonly lugInk: string;
  readonly solder: string;
  readonly accent: string;
  readonly accentFill: string;
  readonly leg: string;
  readonly sleeve: string;
  /** By tint name; see `annotate/lines.ts`. */
  readonly tints: Readonly<Record<string, string>>;
}

export const LIGHT: Theme = {
  paper: '#ffffff',
  ink: '#1d2b36',
  quiet: '#56636d',
  plate: '#f6f3ea',
  inside: '#dcd4c0',
  outline: '#6b7780',
  lug: '#e8d9a8',
  lugInk: '#1d2b36',
  solder: '#aab4bb',
  accent: '#7a4300',
  accentFill: '#fdeecb',
  leg: '#6b7780',
  sleeve: '#e4edf2',
  tints: {
    ground: '#1d2b36',
    'pickup-1': '#0072b2',
    'pickup-2': '#009e73',
    'pickup-3': '#d55e00',
    'pickup-4': '#8a6d00',
    chosen: '#56b4e9',
    output: '#cc79a7',
    tone: '#e69f00',
    other: '#8a8f94',
  },
};

/** Line weights and radii, drawing units. */
export const LINE = {
  outline: 1.5,
  signal: 4,
  ground: 6,
  groundCore: 2.6,
  braid: 8,
  leg: 2,
  sleeve: 9,
  link: 3,
  bend: 6,
  bendRadius: 10,
  /** Half of the opening left in the wire that runs below at a crossing. */
  gap: 6,
} as const;

export const FONT = 'Inter, "Helvetica Neue", Arial, sans-serif';
