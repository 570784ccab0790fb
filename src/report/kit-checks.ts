/** What `check` says of many kits: what several of them have in common is said once. */
import type { Diagnostic } from '../common/problem.ts';
import type { Severity } from '../common/quoting.ts';
import { formatDiagnostics } from '../describe/diagnostics.ts';

/** What was found in one kit. */
export interface KitCheck {
  /** As its own line names it. */
  readonly named: string;
  /** As it is named beside others that have the same problem. */
  readonly id: string;
  readonly diagnostics: readonly Diagnostic[];
}

/** A diagnostic of one kit, and the others that have the very same. */
interface Shared {
  readonly first: Diagnostic;
  readonly also: string[];
}

/** Says each diagnostic once, and the advice of a warning or a note only where it comes first in a run. */
export class Teller {
  readonly #advised = new Set<string>();

  /** Lines for kits that are checked together: new diagnostics of each, then how many it has. */
  tell(checks: readonly KitCheck[]): readonly string[] {
    const shared = new Map<string, Shared>();
    return checks
      .map((check) => this.#newIn(check, shared))
      .flatMap((those, i) => {
        const { named, diagnostics } = checks[i] ?? { named: '', diagnostics: [] };
        const told = formatDiagnostics(those.map((one) => this.#worded(one)));
        return [...(told === '' ? [] : [`${told}\n`]), `${named}: ${countsOf(diagnostics)}`];
      });
  }

  #newIn({ id, diagnostics }: KitCheck, shared: Map<string, Shared>): readonly Shared[] {
    const times = new Map<string, number>();
    return diagnostics.flatMap((one) => {
      const { file, line, column } = one.place;
      const words = [one.code, one.message, adviceOf(one)];
      // An error has to be corrected at each of its places.
      const same = JSON.stringify(one.severity === 'error' ? [...words, file, line, column] : words);
      // What a kit has twice, it has in two places.
      const time = (times.get(same) ?? 0) + 1;
      times.set(same, time);
      const key = `${time} ${same}`;
      const before = shared.get(key);
      if (!before) {
        const first: Shared = { first: one, also: [] };
        shared.set(key, first);
        return [first];
      }
      const at = before.first.place;
      const here = at.file === file && at.line === line;
      before.also.push(here ? id : file === id ? `${file}:${line}` : `${id} (${file}:${line})`);
      return [];
    });
  }

  #worded({ first, also }: Shared): Diagnostic {
    const advice = adviceOf(first);
    const known = first.severity !== 'error' && this.#advised.has(advice);
    this.#advised.add(advice);
    const remedy = known ? (first.whose ?? '') : first.remedy;
    const others = also.length === 0 ? '' : `also: ${also.join(', ')}`;
    return { ...first, remedy: [remedy, others].filter((text) => text !== '').join('\n    ') };
  }
}

/** What is to be done, without the kit in which to do it. */
const adviceOf = ({ remedy, whose = '' }: Diagnostic): string =>
  remedy.slice(0, remedy.length - whose.length).trimEnd();

export const countOf = (all: readonly Diagnostic[], severity: Severity): number =>
  all.filter((one) => one.severity === severity).length;

/** `no errors, 1 warning, 2 notes`. */
export const countsOf = (all: readonly Diagnostic[]): string =>
  (['error', 'warning', 'note'] as const).map((one) => counted(countOf(all, one), one)).join(', ');

export const counted = (n: number, what: string): string =>
  `${n === 0 ? 'no' : n} ${what}${n === 1 ? '' : 's'}`;
