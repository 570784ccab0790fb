/** What a drawing's file is called, what its ids begin with, and what those say that it shows: written and read in one place. */

import type { LineColour } from '../annotate/lines.ts';
import type { Setting } from '../circuit/circuit.ts';
import { settingName } from '../circuit/position.ts';
import { type Hand, hands, type Kit, type View, views } from '../describe/kit.ts';
import { DEFAULT_LANGUAGE, languages } from '../messages/language.ts';
import { inOrder, type Piece, pieces } from './pieces.ts';
import { type ThemeName, themes } from './theme.ts';

/**
 * Three ways to hand out a drawing. **static**: presentation attributes alone, which every renderer and the strictest
 * page take. **inline**: besides, a class for each ink, by which the stylesheet of the page it stands in may set it, and data
 * attributes by which a script finds parts, lugs and joints. **standalone**: the attributes and the letters it needs as an embedded
 * font, so that it looks the same where Inter is not installed.
 */
export const modes = ['static', 'inline', 'standalone'] as const;
export type Mode = (typeof modes)[number];

/** Which of a kit's drawings is wanted: the whole, unless a state or a step is named. */
export interface Variant {
  readonly view?: View;
  readonly theme?: ThemeName;
  /** Index into the circuit's states. */
  readonly state?: number;
  /** Counted from 1. */
  readonly step?: number;
  /** What the lines' colours tell; that of the insulation where the kit gives it, unless it says otherwise. */
  readonly lines?: LineColour;
  /** These pieces alone, without title; all of them, unless some are named. */
  readonly only?: readonly Piece[];
  /** Composed for a column so many CSS pixels wide. */
  readonly width?: number;
  /** Which sheet of several that a page takes: the first, unless another is named. */
  readonly sheet?: number;
  /** How it is handed out; static, unless another is named. */
  readonly mode?: Mode;
}

/** Of a circuit what its drawings are named by. */
interface Named {
  readonly kit: Pick<Kit, 'id' | 'view' | 'hand' | 'language'>;
  readonly states: readonly Pick<Setting, 'positions'>[];
}

/**
 * The name of a drawing's file: the kit's, then `-component-side-left-handed-position-2-1-step-3-signal-lines-drawing-key-360px-sheet-2-dark`,
 * each left out where it is the usual one. A position is named by the positions of all switches, as its card is.
 */
export const drawingName = (named: Named, hand: Hand, variant: Variant): string =>
  [named.kit.id, ...wordsFor(named, hand, variant)].join('-');

/**
 * What all ids of a drawing begin with: as its name, with the kit's language, unless it is English, and its mode, unless it is static,
 * behind the kit. No two drawings that one page may hold have an id in common, whatever their kits are called.
 */
export const drawingId = (named: Named, hand: Hand, variant: Variant): string =>
  [
    idOfKit(named.kit.id),
    ...(named.kit.language === DEFAULT_LANGUAGE ? [] : [named.kit.language]),
    ...(variant.mode === undefined || variant.mode === 'static' ? [] : [variant.mode]),
    ...wordsFor(named, hand, variant),
  ].join('-');

const wordsFor = (
  { kit, states }: Named,
  hand: Hand,
  { view, theme, state, step, lines, only = [], width, sheet = 1 }: Variant,
): readonly string[] => [
  ...(view === undefined || view === kit.view ? [] : [view]),
  ...(hand === kit.hand ? [] : [`${hand}-handed`]),
  ...(state === undefined ? [] : [`position-${nameOfState(states, state)}`]),
  ...(step === undefined ? [] : [`step-${step}`]),
  ...(lines === undefined || lines === 'insulation' ? [] : [`${lines}-lines`]),
  ...inOrder(only),
  ...(width === undefined ? [] : [`${width}px`]),
  ...(sheet === 1 ? [] : [`sheet-${sheet}`]),
  ...(theme === undefined || theme === 'light' ? [] : [theme]),
];

const namedModes = modes.filter((mode) => mode !== 'static');

/** First words of all that may stand behind a kit in an id: of drawings, of the groups in them, and of a leaflet's figures. */
const AFTER_KIT = [
  ...languages,
  ...namedModes,
  ...[...views, ...hands].map((word) => word.replace(/-.*/, '')),
  ...pieces,
  ...Object.keys(themes),
  ...['position', 'step', 'signal', '\\d+px', 'sheet'],
  ...[
    'title',
    'desc',
    'head',
    'work',
    'caption',
    'revision',
    'loads',
    'marks',
    'part',
    'wires',
    'joint',
    'colours',
  ],
  ...['leaflet', 'response'],
].join('|');
const MISTAKEN = new RegExp(`-(?=(?:${AFTER_KIT})(?:-|$))`, 'g');

/**
 * A kit's id with a second hyphen before each word that might be taken for one of those: the kit `hs-drawing` is not the drawing
 * of the kit `hs`. No kit's own id has two hyphens together.
 */
export const idOfKit = (id: string): string => id.replace(MISTAKEN, '--');

/** One that the circuit has not goes by its number. */
const nameOfState = (states: Named['states'], state: number): string => {
  const setting = states[state];
  return setting ? settingName(setting) : String(state + 1);
};

/** What the id of one of the kit's drawings says; `undefined` for an id that none has. */
export function parseDrawingId(
  drawing: string,
  { kit, states }: Named,
): (Variant & { readonly view: View; readonly hand: Hand }) | undefined {
  const own = idOfKit(kit.id);
  if (!drawing.startsWith(own)) return undefined;
  const said = PATTERN.exec(drawing.slice(own.length))?.groups;
  if (!said) return undefined;
  const { mode, view, hand, setting, step, lines, only, width, sheet, theme } = said;
  const state = states.findIndex((one) => settingName(one) === setting);
  if (setting !== undefined && state === -1) return undefined;
  const named = inOrder((only ?? '').split('-') as Piece[]);
  return {
    view: (view as View | undefined) ?? kit.view,
    hand: (hand as Hand | undefined) ?? kit.hand,
    ...(state === -1 ? {} : { state }),
    ...(step === undefined ? {} : { step: Number(step) }),
    ...(lines === undefined ? {} : { lines: lines as LineColour }),
    ...(named.length === 0 ? {} : { only: named }),
    ...(width === undefined ? {} : { width: Number(width) }),
    ...(sheet === undefined ? {} : { sheet: Number(sheet) }),
    ...(theme === undefined ? {} : { theme: theme as ThemeName }),
    ...(mode === undefined ? {} : { mode: mode as Mode }),
  };
}

const PATTERN = new RegExp(
  [
    '^',
    `(?:-(?:${languages.join('|')}))?`,
    `(?:-(?<mode>${namedModes.join('|')}))?`,
    `(?:-(?<view>${views.join('|')}))?`,
    `(?:-(?<hand>${hands.join('|')})-handed)?`,
    '(?:-position-(?<setting>[1-9]\\d*(?:-[1-9]\\d*)*))?',
    '(?:-step-(?<step>\\d+))?',
    '(?:-(?<lines>signal)-lines)?',
    `(?<only>${pieces.map((piece) => `(?:-${piece})?`).join('')})`,
    '(?:-(?<width>[1-9]\\d*)px)?',
    '(?:-sheet-(?<sheet>[2-9]|[1-9]\\d+))?',
    `(?:-(?<theme>${Object.keys(themes).join('|')}))?`,
    '$',
  ].join(''),
);

/** Whether a drawing shows the wiring. */
export const showsWiring = ({ only, sheet = 1 }: Variant): boolean =>
  sheet === 1 && (only === undefined || only.includes('drawing'));
