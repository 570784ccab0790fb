/** What a drawing is called, and what its name says that it shows: written and read in one place. */

import type { LineColour } from '../annotate/lines.ts';
import type { Setting } from '../circuit/circuit.ts';
import { settingName } from '../circuit/position.ts';
import { type Hand, hands, type Kit, type View, views } from '../describe/kit.ts';
import { inOrder, type Piece, pieces } from './pieces.ts';
import { type ThemeName, themes } from './theme.ts';

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
}

/** Of a circuit what its drawings are named by. */
interface Named {
  readonly kit: Pick<Kit, 'id' | 'view' | 'hand'>;
  readonly states: readonly Pick<Setting, 'positions'>[];
}

/**
 * The name of a drawing's file and the prefix of its ids: the kit's, then `-component-side-left-handed-position-2-1-step-3-signal-lines-drawing-key-360px-sheet-2-dark`,
 * each left out where it is the usual one. A position is named by the positions of all switches, as its card is.
 */
export const drawingName = (
  { kit, states }: Named,
  hand: Hand,
  { view, theme, state, step, lines, only = [], width, sheet = 1 }: Variant,
): string =>
  [
    kit.id,
    ...(view === undefined || view === kit.view ? [] : [view]),
    ...(hand === kit.hand ? [] : [`${hand}-handed`]),
    ...(state === undefined ? [] : [`position-${nameOfState(states, state)}`]),
    ...(step === undefined ? [] : [`step-${step}`]),
    ...(lines === undefined || lines === 'insulation' ? [] : [`${lines}-lines`]),
    ...inOrder(only),
    ...(width === undefined ? [] : [`${width}px`]),
    ...(sheet === 1 ? [] : [`sheet-${sheet}`]),
    ...(theme === undefined || theme === 'light' ? [] : [theme]),
  ].join('-');

/** One that the circuit has not goes by its number. */
const nameOfState = (states: Named['states'], state: number): string => {
  const setting = states[state];
  return setting ? settingName(setting) : String(state + 1);
};

/** What the name of one of the kit's drawings says; `undefined` for a name that none has. */
export function parseDrawingName(
  name: string,
  { kit, states }: Named,
): (Variant & { readonly view: View; readonly hand: Hand }) | undefined {
  if (!name.startsWith(kit.id)) return undefined;
  const found = PATTERN.exec(name.slice(kit.id.length));
  if (!found) return undefined;
  const [, view, hand, setting, step, lines] = found;
  const state = states.findIndex((one) => settingName(one) === setting);
  if (setting !== undefined && state === -1) return undefined;
  const [width, sheet, theme] = found.slice(-3);
  const only = pieces.filter((piece) => found.slice(6, -3).includes(piece));
  return {
    view: (view as View | undefined) ?? kit.view,
    hand: (hand as Hand | undefined) ?? kit.hand,
    ...(state === -1 ? {} : { state }),
    ...(step === undefined ? {} : { step: Number(step) }),
    ...(lines === undefined ? {} : { lines: lines as LineColour }),
    ...(only.length === 0 ? {} : { only }),
    ...(width === undefined ? {} : { width: Number(width) }),
    ...(sheet === undefined ? {} : { sheet: Number(sheet) }),
    ...(theme === undefined ? {} : { theme: theme as ThemeName }),
  };
}

const PATTERN = new RegExp(
  `^(?:-(${views.join('|')}))?(?:-(${hands.join('|')})-handed)?(?:-position-([1-9]\\d*(?:-[1-9]\\d*)*))?(?:-step-(\\d+))?(?:-(signal)-lines)?${pieces.map((piece) => `(?:-(${piece}))?`).join('')}(?:-([1-9]\\d*)px)?(?:-sheet-([2-9]|[1-9]\\d+))?(?:-(${Object.keys(themes).join('|')}))?$`,
);

/** Whether a drawing of that name shows the wiring. */
export const showsWiring = ({ only, sheet = 1 }: Variant): boolean =>
  sheet === 1 && (only === undefined || only.includes('drawing'));
