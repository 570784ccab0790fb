/** The load cards as text: what a card says of each pickup, and that it is as wide as its longest line needs. */
import { describe, expect, it } from 'vitest';
import { readOutputs, solveLoads } from '../../src/analyse/index.ts';
import { cardWidth } from '../../src/annotate/card-size.ts';
import { type Card, cardsOf, cardsSay } from '../../src/annotate/cards.ts';
import { textWidth } from '../../src/common/text.ts';
import { makeCircuit, makeKit } from '../analyse/kits.ts';

const drawnSmall = (kind: 'lever-5' | 'lever-5-4p' | 'toggle-3') => {
  const [part] = makeKit({ parts: { s: { kind } }, joints: [] }).parts;
  if (!part) throw new Error('no part');
  return { part, closed: [] };
};
const switchDrawn = drawnSmall('lever-5');
const card = (more: Partial<Card>): Card => ({
  language: 'en',
  states: [0],
  badge: '1',
  combinations: [['1']],
  title: 'Neck',
  rows: [],
  switches: [],
  meter: '6.00 kΩ',
  ...more,
});
const row = {
  pickup: 'n',
  label: 'Neck',
  dcLoad: '250 kΩ',
  signalLoad: '125 kΩ',
  ratio: 1,
  verdict: 'as designed',
};
const LONG = 'Neck, middle and bridge with a title of its own';

describe('a card', () => {
  it('has the least width whatever is short', () =>
    expect(cardWidth([card({}), card({ switches: [switchDrawn] })])).toBe(236));
  it('grows by a drawn switch for each', () => {
    const width = (switches: number): number =>
      cardWidth([card({ title: LONG, switches: Array.from({ length: switches }, () => switchDrawn) })]);
    expect(width(1) - width(0)).toBe(46);
    expect(width(2) - width(1)).toBe(46);
    expect(width(3) - width(2)).toBe(46);
  });
  it('grows more for a switch of four poles: each is drawn', () => {
    const width = (kind: Parameters<typeof drawnSmall>[0]): number =>
      cardWidth([card({ title: LONG, switches: [drawnSmall(kind)] })]);
    expect(width('lever-5-4p') - width('lever-5')).toBe(40);
    expect(width('toggle-3')).toBe(width('lever-5'));
  });
  it('leaves the same room between the two texts of either line of a row', () => {
    const width = (more: object): number => cardWidth([card({ rows: [{ ...row, ...more }] })]);
    const named = width({ label: LONG }) - textWidth(LONG, 13, 'bold') - textWidth(row.dcLoad, 13, 'bold');
    const judged = width({ verdict: LONG }) - textWidth(LONG, 12) - textWidth('DC load', 12);
    expect(named).toBeCloseTo(judged, 6);
    // A level stands between the name and the load, a little off the name.
    const level = '5.0 dB quieter';
    expect(width({ label: LONG, level }) - width({ label: LONG })).toBeCloseTo(8 + textWidth(level, 12), 6);
  });
  it('grows with its title, its badge, how pickups are joined, a row and the reading', () => {
    const least = 236;
    for (const more of [
      { title: LONG },
      { badge: '1·2·3·4·5·6·7·8·9·10·11·12·13·14·15' },
      { joined: `in parallel, out of phase, ${LONG}` },
      { rows: [{ ...row, label: LONG }] },
      { rows: [{ ...row, verdict: LONG }] },
      { meter: LONG },
    ])
      expect(cardWidth([card(more)])).toBeGreaterThan(least);
  });
});

describe('what the cards say once for all', () => {
  const said = (cards: readonly Card[], word: string): boolean =>
    cardsSay(cards, 1000, 'en', true).some((line) => line.startsWith(word));
  it('explains a level where one is given, and series where there is any', () => {
    expect([said([card({})], 'dB quieter'), said([card({})], 'In series')]).toEqual([false, false]);
    expect(said([card({}), card({ rows: [{ ...row, level: '5.0 dB quieter' }] })], 'dB quieter')).toBe(true);
    expect(said([card({ joined: 'in parallel, 5.0 dB quieter' })], 'dB quieter')).toBe(true);
    expect(said([card({ joined: 'in series' })], 'In series')).toBe(true);
    expect(said([card({ joined: 'in parallel' })], 'In series')).toBe(false);
  });
});

describe('a card of several positions', () => {
  const circuit = makeCircuit({
    parts: {
      neck: { kind: 'single-coil' },
      bridge: { kind: 'single-coil' },
      selector: { kind: 'lever-3', label: 'Selector' },
      mute: { kind: 'kill-button', label: 'Mute' },
      volume: { kind: 'pot', value: '250k' },
      output: { kind: 'jack' },
    },
    joints: [
      'bridge.hot > selector.A1',
      'neck.hot > selector.A3',
      'selector.A0 > volume.3',
      'volume.2 > output.tip',
      'mute.1 > output.tip',
      'mute.2 > output.sleeve',
      'volume.1 > output.sleeve',
      'neck.ground > output.sleeve',
      'bridge.ground > output.sleeve',
    ],
  });
  const cards = cardsOf(circuit, solveLoads(circuit), readOutputs(circuit));
  const LEFT_OUT =
    'A card of several positions shows only the switches that stay as they are in all of them.';
  it('shows no switch in one of its positions as if it were the only one, and says in words where it is so', () => {
    // Silent are the three positions of the pressed button, and position 2 of the lever, where nothing is soldered.
    const silent = cards.filter(({ title }) => title === 'No output');
    expect(silent.flatMap(({ states }) => states)).toEqual([1, 3, 5, 2]);
    for (const { switches, states } of silent)
      for (const { part } of switches)
        expect(new Set(states.map((state) => circuit.states[state]?.positions[part.name])).size).toBe(1);
    const pressed = silent.find(({ badge }) => badge.startsWith('1'));
    expect(pressed?.where).toBe('with Mute pressed');
    expect(pressed?.switches.map(({ part }) => part.name)).toEqual(['mute']);
    expect(cardsSay(cards, 1000, 'en', true)).toContain(LEFT_OUT);
  });
  it('and one of a single position shows all of them without a word', () => {
    const single = cards.filter(({ states }) => states.length === 1);
    expect(single.length).toBeGreaterThan(1);
    for (const { switches, where } of single) {
      expect(switches.map(({ part }) => part.name)).toEqual(['selector', 'mute']);
      expect(where).toBeUndefined();
    }
    expect(cardsSay(single, 1000, 'en', true)).not.toContain(LEFT_OUT);
  });
});
