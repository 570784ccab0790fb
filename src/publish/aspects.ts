/** Which drawings of a kit were asked for, by what was written on the command line. */
import type { LineColour } from '../annotate/lines.ts';
import { stepsOf } from '../annotate/steps.ts';
import type { Circuit } from '../circuit/circuit.ts';
import type { View } from '../describe/kit.ts';
import type { Aspect } from '../draw/compose.ts';
import type { Page } from '../draw/head.ts';
import { missingPiece, type Piece } from '../draw/pieces.ts';
import type { ThemeName } from '../draw/theme.ts';

export interface Wanted {
  readonly view?: View;
  readonly theme?: ThemeName;
  readonly lines?: LineColour;
  /** `selector=2`, several with a comma between, or `all`. */
  readonly position?: string;
  /** A number from 1, or `all`. */
  readonly step?: string;
  /** These pieces alone. */
  readonly only?: readonly Piece[];
  /** Of a column of a web page, CSS pixels. */
  readonly width?: number;
}

/** The drawings wanted of a kit; in words what there is instead, when a position or step is named that it has not. */
export function aspectsOf(
  circuit: Circuit,
  wanted: Wanted,
  page: Page | undefined,
): readonly Aspect[] | string {
  const base: Aspect = {
    ...(wanted.view === undefined ? {} : { view: wanted.view }),
    ...(wanted.theme === undefined ? {} : { theme: wanted.theme }),
    ...(wanted.lines === undefined ? {} : { lines: wanted.lines }),
    ...(page === undefined ? {} : { page }),
    ...(wanted.only === undefined ? {} : { only: wanted.only }),
    ...(wanted.width === undefined ? {} : { width: wanted.width }),
  };
  const missing = missingPiece(wanted.only ?? [], wanted.step !== undefined);
  if (missing !== undefined) return missing;
  if (wanted.position !== undefined) {
    const states = statesOf(circuit, wanted.position);
    return typeof states === 'string' ? states : states.map((state) => ({ ...base, state }));
  }
  if (wanted.step !== undefined) {
    const steps = stepsOf(circuit);
    const numbers = steps.map(({ number }) => number);
    if (wanted.step === 'all') return numbers.map((step) => ({ ...base, step }));
    const step = Number(wanted.step);
    return numbers.includes(step)
      ? [{ ...base, step }]
      : `no step ${wanted.step}; allowed: 1 to ${numbers.length}, or all`;
  }
  return [base];
}

function statesOf({ states }: Circuit, written: string): readonly number[] | string {
  if (written === 'all') return states.map((_, i) => i);
  const settings = new Map(
    written.split(',').map((one) => {
      const [name = '', position = ''] = one.split('=').map((text) => text.trim());
      return [name, Number(position)] as const;
    }),
  );
  const found = states.flatMap((state, i) =>
    [...settings].every(([name, position]) => state.positions[name] === position) ? [i] : [],
  );
  if (found.length > 0) return found;
  const names = Object.keys(states[0]?.positions ?? {});
  const allowed = names.map((name) => {
    const positions = [...new Set(states.map((state) => state.positions[name] ?? 0))].sort((a, b) => a - b);
    return `${name}=${positions[0]} to ${name}=${positions[positions.length - 1]}`;
  });
  return allowed.length === 0
    ? `no position ${written}: the kit has no switch`
    : `no position ${written}; allowed: ${allowed.join(', ')}, or all`;
}
