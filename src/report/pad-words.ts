/** The padding choice in words: what to do about one pickup, and the other ways of doing it. */

import {
  type Alternative,
  type Effect,
  loadFor,
  type Match,
  type PadAdvice,
  type PadOption,
} from '../analyse/index.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { atPosition, whereText } from '../circuit/position.ts';
import { must } from '../common/must.ts';
import { andList } from '../common/quoting.ts';
import { findPart } from '../describe/kit.ts';
import { resistorOf } from '../parts/index.ts';
import { ohmsText, percentText } from './columns.ts';
import { ohmsInStock } from './stock-data.ts';

export type Advised<K extends PadAdvice['kind']> = Extract<PadAdvice, { readonly kind: K }>;

export const LOAD: Readonly<Record<Match, string>> = { dc: 'DC load', signal: 'signal load' };

/** ` in position 2`; nothing for a kit without a switch. */
export const inState = ({ states }: Circuit, index: number): string =>
  atPosition(must(states[index], `state ${index}`));

/** The resistance of a part of that name, where it is there. */
export function bodyOf({ kit }: Circuit, name: string) {
  const part = findPart(kit, name);
  return part && resistorOf(part);
}

const resultText = ({ load, percent }: Pick<PadOption, 'load' | 'percent'>): string =>
  `${ohmsText(load)}, ${percentText(percent)}`;

/** What to do about one pickup, on one line. */
export function verdictOf(circuit: Circuit, match: Match, advice: PadAdvice): string {
  if (advice.kind === 'silent') return 'never selected; no resistor needed';
  const sees = `${ohmsText(advice.load)}${inState(circuit, advice.state)}, reference ${ohmsText(advice.reference)}, ${percentText(advice.percent)}`;
  switch (advice.kind) {
    case 'fits':
      return `OK: ${LOAD[match]} ${sees}; no resistor needed${stockText(advice.notInStock)}${match === 'dc' ? '; --match signal judges it with the tone path' : ''}`;
    case 'pad':
      return padVerdict(circuit, advice);
    case 'too-heavy':
      return `no resistor helps, its load is already too heavy: ${sees}; another resistor to ground would make it heavier`;
    case 'no-stock':
      return `no available value helps: ${ohmsText(advice.nearest.ohms)} would give ${resultText(advice.nearest)}; now ${sees}; ideal ${ohmsText(advice.ideal)}${stockText(advice.notInStock)}`;
    case 'needless':
      return `remove ${andList(advice.pads)}: without it ${ohmsText(advice.without)}, with it ${sees}`;
    case 'shares':
      return `shares ${andList(advice.pads)} with ${advice.owner}, with which it is always in parallel: ${sees}; one resistor cannot match both`;
    case 'no-tone':
      return `leave as it is: no tone control loads it${advice.others ? '' : ', as this kit has none'}, so its signal load is ${sees}`;
    case 'pair':
      return `in series with ${advice.first}: one resistor loads both, see ${advice.first}; ${sees}`;
    case 'out-of-reach':
      return `a resistor to ground would not load it: neither of its leads is grounded: ${sees}`;
  }
}

const stockText = (ohms: number | undefined): string =>
  ohms === undefined ? '' : `; ${ohmsText(ohms)} is not in stock`;

function padVerdict(circuit: Circuit, advice: Advised<'pad'>): string {
  const { chosen, part, replaces, present, from, to, pair, notInStock } = advice;
  const value = ohmsInStock(circuit.kit, chosen.ohms);
  const result = resultText(chosen);
  if (present) return `keep ${part}, ${value}, the nearest available: ${result}`;
  const body = bodyOf(circuit, part);
  const [, ...others] = replaces;
  const out = others.length === 0 ? '' : `, remove ${andList(others)}`;
  const both = pair === undefined ? '' : ` for it and ${andList(pair)}, in series`;
  return body
    ? `change ${part} from ${ohmsText(body.ohms.value)} to ${value}${out}${both}: ${result}${stockText(notInStock)}`
    : `fit ${value} from ${from} to ${to}${both}: ${ohmsText(advice.load)} (${percentText(advice.percent)}) → ${ohmsText(chosen.load)} (${percentText(chosen.percent)})`;
}

/** One line for each switch position in which the resistor makes loads worse. */
export function worseLines(circuit: Circuit, match: Match, worse: readonly Effect[]): readonly string[] {
  return [...new Set(worse.map(({ index }) => index))].map((index) => {
    const some = worse.filter((effect) => effect.index === index);
    const each = some.map(
      (effect) =>
        `${effect.pickup} ${ohmsText(loadFor(match, effect.before))} → ${ohmsText(loadFor(match, effect.after))}, ${percentText(effect.percent)}`,
    );
    return `worse${inState(circuit, index)}: ${each.join('; ')}`;
  });
}

/** Another way, as an instruction. */
export function alternativeText(circuit: Circuit, alternative: Alternative): string {
  switch (alternative.kind) {
    case 'elsewhere': {
      const { ohms, from, to } = alternative.pad;
      return `${ohmsText(ohms)} from ${from} to ${to}, in circuit in every position`;
    }
    case 'spare-pole': {
      const { pad, states } = alternative;
      const wires = (pad.wires ?? []).map(([from, to]) => `a wire from ${from} to ${to}`).join(', ');
      const where = whereText(
        circuit,
        states.map((index) => must(circuit.states[index], `state ${index}`)),
      );
      return `on a free pole, ${wires}, ${ohmsText(pad.ohms)} from ${pad.from} to ${pad.to}: in circuit${where} only`;
    }
    case 'pots': {
      const pots = Object.entries(alternative.pots).map(([name, ohms]) => `${name} ${ohmsText(ohms)}`);
      return `other pots and no padding resistor: ${andList(pots)}`;
    }
    case 'move': {
      const [moved, ...added] = alternative.pads;
      const { pickup, from } = must(moved, 'resistor that is moved');
      const more = added.map(
        (pad) => `fit ${ohmsText(pad.ohms)} from ${pad.from} to ${pad.to} for ${pad.pickup}`,
      );
      return [`move ${alternative.part} to ${from}, where it loads ${pickup}`, ...more].join('; ');
    }
    case 'remove':
      return `remove ${alternative.part}`;
    case 'tone-jumper':
      return `a jumper from ${alternative.from} to ${alternative.to}, so that ${andList(alternative.tones)} works on this pickup too`;
  }
}
