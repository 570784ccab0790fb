/**
 * A second way from a kit to a network, written apart from the program's: by kind of part instead of by element, with
 * a merging of its own. A mistake in `analyse/netlist.ts` would have to be made twice to go unseen.
 */
import type { State } from '../../src/circuit/circuit.ts';
import type { Kit } from '../../src/describe/kit.ts';

export type Line =
  | {
      readonly kind: 'R' | 'C';
      readonly a: string;
      readonly b: string;
      readonly value: number;
      readonly pickup?: string;
    }
  | {
      readonly kind: 'coil';
      readonly a: string;
      readonly b: string;
      readonly ohms: number;
      readonly henries: number;
      readonly pickup: string;
      /** Of a pickup with several, and its share of the pickup's volt. */
      readonly coil?: string;
      readonly volts?: number;
      /** Coupling to the other coil with the same `pickup`. */
      readonly coupling?: number;
    };

export interface OwnNetlist {
  readonly lines: readonly Line[];
  /** Name of the merged node of a lug. */
  readonly node: (lug: string) => string;
}

/** Resistances below and above the wiper. */
function track(ohms: number, taper: string, midpoint: number, x: number): readonly [number, number] {
  const b = (1 / midpoint - 1) ** 2;
  const log = (y: number) => (midpoint === 0.5 ? y : (b ** y - 1) / (b - 1));
  const low = taper === 'linear' ? x : taper === 'log' ? log(x) : 1 - log(1 - x);
  if (x === 0) return [0, ohms];
  return x === 1 ? [ohms, 0] : [low * ohms, (1 - low) * ohms];
}

export function ownNetlist(kit: Kit, state: State, rotations: Readonly<Record<string, number>>): OwnNetlist {
  const name = new Map<string, string>();
  const node = (lug: string) => name.get(lug) ?? lug;
  const merge = (a: string, b: string) => {
    const [to, from] = [node(a), node(b)];
    if (to === from) return;
    for (const [lug, of] of name) if (of === from) name.set(lug, to);
    name.set(from, to);
    name.set(b, to);
    if (!name.has(a)) name.set(a, to);
  };
  for (const { from, to } of kit.joints) merge(`${from.part}.${from.lug}`, `${to.part}.${to.lug}`);
  for (const group of state.closedContacts) for (const lug of group) merge(group[0] ?? lug, lug);

  const raw: Line[] = [];
  const R = (a: string, b: string, value: number, pickup?: string) =>
    value === 0
      ? merge(a, b)
      : raw.push({ kind: 'R', a, b, value, ...(pickup === undefined ? {} : { pickup }) });
  for (const part of kit.parts) {
    const lug = (which: string) => `${part.name}.${which}`;
    switch (part.kind) {
      case 'pot':
      case 'push-pull': {
        const { value, taper, midpoint } = part.kind === 'pot' ? part : part.first;
        const [low, high] = track(value.value, taper.value, midpoint.value, rotations[part.name] ?? 1);
        R(lug('1'), lug('2'), low);
        R(lug('2'), lug('3'), high);
        break;
      }
      case 'resistor':
        R(lug('1'), lug('2'), part.value.value);
        break;
      case 'capacitor':
        raw.push({ kind: 'C', a: lug('1'), b: lug('2'), value: part.value.value });
        break;
      case 'four-lead-humbucker': {
        // The halves of a whole that has L = La + Lb + 2M, the finishes joined: from a-start on to b-start.
        const [k, pickup] = [part.coupling.value, part.name];
        const henries = part.inductance.value / (2 + 2 * k);
        for (const [coil, a, b] of [
          ['a', lug('a-start'), lug('a-finish')],
          ['b', lug('b-finish'), lug('b-start')],
        ] as const) {
          const ohms = part.resistance.value / 2;
          raw.push({ kind: 'coil', a, b, ohms, henries, pickup, coil, volts: 0.5, coupling: k });
          raw.push({ kind: 'C', a, b, value: part.capacitance.value * 2, pickup });
          if (part.coreLoss) R(a, b, part.coreLoss.value / 2, pickup);
        }
        break;
      }
      case 'single-coil':
      case 'humbucker': {
        const [a, b, pickup] = [lug('hot'), lug('ground'), part.name];
        raw.push({ kind: 'coil', a, b, ohms: part.resistance.value, henries: part.inductance.value, pickup });
        raw.push({ kind: 'C', a, b, value: part.capacitance.value, pickup });
        if (part.coreLoss) R(a, b, part.coreLoss.value, pickup);
        break;
      }
    }
  }
  const lines = raw.map((line) => ({ ...line, a: node(line.a), b: node(line.b) }));
  // A shorted coil still takes from the one it is coupled to.
  const kept = (line: Line): boolean =>
    line.a !== line.b || (line.kind === 'coil' && line.coupling !== undefined);
  return { lines: lines.filter(kept), node };
}
