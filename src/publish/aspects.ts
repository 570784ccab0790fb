/** Which drawings of a kit were asked for, by what was written on the command line. */
import type { LineColour } from '../annotate/lines.ts';
import { stepsOf } from '../annotate/steps.ts';
import type { Circuit } from '../circuit/circuit.ts';
import type { View } from '../describe/kit.ts';
import type { Aspect } from '../draw/compose.ts';
import type { Page } from '../draw/head.ts';
import { missingPiece, type Piece } from '../draw/pieces.ts';
import type { ThemeName } from '../draw/theme.ts';
import { chosenStates } from './chosen-states.ts';

export interface Wanted {
  readonly view?: View;
  readonly theme?: ThemeName;
  readonly lines?: LineColour;
  /** `selector=2` or `phase=up`, several with a comma between, or `all`. */
  readonly position?: string;
  /** A number from 1, or `all`. */
  readonly step?: string;
  /** These pieces alone. */
  readonly only?: readonly Piece[];
  /** Of a column of a web page, CSS pixels. */
  readonly width?: number;
  /** Printed beside the revision mark: `2026-11-30`. */
  readonly date?: string;
}

/** What is wrong with what is asked for, in words: a position, a step or a piece that there is not, and what there is. */
interface Refused {
  readonly wrong: readonly string[];
}

/** The drawings wanted of a kit, or why there are none. */
export function aspectsOf(
  circuit: Circuit,
  wanted: Wanted,
  page: Page | undefined,
): readonly Aspect[] | Refused {
  const base: Aspect = {
    ...(wanted.view === undefined ? {} : { view: wanted.view }),
    ...(wanted.theme === undefined ? {} : { theme: wanted.theme }),
    ...(wanted.lines === undefined ? {} : { lines: wanted.lines }),
    ...(page === undefined ? {} : { page }),
    ...(wanted.only === undefined ? {} : { only: wanted.only }),
    ...(wanted.width === undefined ? {} : { width: wanted.width }),
    ...(wanted.date === undefined ? {} : { date: wanted.date }),
  };
  const missing = missingPiece(wanted.only ?? [], wanted.step !== undefined);
  if (missing !== undefined) return { wrong: [missing] };
  if (wanted.position !== undefined) {
    const chosen = chosenStates(circuit, wanted.position);
    return 'wrong' in chosen ? chosen : chosen.states.map((state) => ({ ...base, state }));
  }
  if (wanted.step !== undefined) {
    const steps = stepsOf(circuit);
    const numbers = steps.map(({ number }) => number);
    if (wanted.step === 'all') return numbers.map((step) => ({ ...base, step }));
    const step = Number(wanted.step);
    return numbers.includes(step)
      ? [{ ...base, step }]
      : { wrong: [`no step ${wanted.step}; allowed: 1 to ${numbers.length}, or all`] };
  }
  return [base];
}
