/**
 * A second way from a kit to a network, written apart from the program's: by kind of part instead of by element, with
 * a merging of its own. A mistake in `analyse/netlist.ts` would have to be made twice to go unseen.
 */
import type { Circuit, FullAt, State } from '../../src/circuit/circuit.ts';

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

/** Rotations for control settings: from the end that is not full to the one that is, and of a blend as the state has it. */
function rotationsFor(
  { fullAt }: Circuit,
  { turned = {} }: State,
  settings: Readonly<Record<string, number>>,
): Readonly<Record<string, number>> {
  const at = (id: string, full: FullAt): number => {
    const setting = settings[id] ?? turned[id] ?? (full === 'middle' ? 0.5 : 1);
    return full === 'anticlockwise' ? 1 - setting : setting;
  };
  return Object.fromEntries([...(fullAt ?? [])].map(([id, full]) => [id, at(id, full)]));
}

export function ownNetlist(
  circuit: Circuit,
  state: State,
  settings: Readonly<Record<string, number>>,
): OwnNetlist {
  const { kit } = circuit;
  const rotations = rotationsFor(circuit, state, settings);
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
        const { value, taper, midpoint, noLoad } = part.kind === 'pot' ? part : part.first;
        const x = rotations[part.name] ?? 1;
        const [low, high] = track(value.value, taper.value, midpoint.value, x);
        // Of a no-load pot at its open end the wiper touches nothing.
        if (isOff(noLoad, x)) {
          R(lug('1'), lug('3'), value.value);
          break;
        }
        R(lug('1'), lug('2'), low);
        R(lug('2'), lug('3'), high);
        break;
      }
      case 'blend': {
        // Gang a has its resistance in the anticlockwise half, gang b in the clockwise one.
        const x = rotations[part.name] ?? 0.5;
        const low = part.a.taper.value === 'lower-half' ? Math.min(1, 2 * x) : undefined;
        const [a, b] = [part.a, part.b].map(({ value, taper, midpoint }, i): readonly [number, number] => {
          if (low === undefined) return track(value.value, taper.value, midpoint.value, x);
          const below = i === 0 ? low : Math.max(0, 2 * x - 1);
          return [below * value.value, (1 - below) * value.value];
        });
        R(lug('a1'), lug('a2'), a?.[0] ?? 0);
        R(lug('a2'), lug('a3'), a?.[1] ?? 0);
        R(lug('b1'), lug('b2'), b?.[0] ?? 0);
        R(lug('b2'), lug('b3'), b?.[1] ?? 0);
        break;
      }
      case 'dual-pot':
      case 'stacked-pot':
        for (const gang of ['a', 'b'] as const) {
          const { value, taper, midpoint, noLoad } = part[gang];
          const x = rotations[part.kind === 'stacked-pot' ? `${part.name}.${gang}` : part.name] ?? 1;
          const [low, high] = track(value.value, taper.value, midpoint.value, x);
          if (isOff(noLoad, x)) R(lug(`${gang}1`), lug(`${gang}3`), value.value);
          else {
            R(lug(`${gang}1`), lug(`${gang}2`), low);
            R(lug(`${gang}2`), lug(`${gang}3`), high);
          }
        }
        break;
      case 'resistor':
        R(lug('1'), lug('2'), part.value.value);
        break;
      case 'capacitor':
        raw.push({ kind: 'C', a: lug('1'), b: lug('2'), value: part.value.value });
        break;
      case 'four-lead-humbucker': {
        // The halves of a whole that has L = La + Lb + 2M, the finishes joined: from a-start on to b-start.
        // The field of one coil comes back through the other, so that coils wound alike oppose each other.
        const k = part.windsOpposite ? part.coupling.value : -part.coupling.value;
        const pickup = part.name;
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

/** Whether a wiper is at the end where it leaves its track. */
const isOff = (open: string | undefined, x: number): boolean =>
  open !== undefined && x === (open === 'clockwise' ? 1 : 0);
