/** The load cards as text: what a card says of each pickup, and that it is as wide as its longest line needs. */
import { describe, expect, it } from 'vitest';
import { cardWidth } from '../../src/annotate/card-size.ts';
import { type Card, cardsSay } from '../../src/annotate/cards.ts';
import { textWidth } from '../../src/common/text.ts';
import { makeKit } from '../analyse/kits.ts';

const drawnSmall = (kind: 'lever-5' | 'lever-5-4p' | 'toggle-3') => {
  const [part] = makeKit({ parts: { s: { kind } }, joints: [] }).parts;
  if (!part) throw new Error('no part');
  return { part, closed: [] };
};
const switchDrawn = drawnSmall('lever-5');
const card = (more: Partial<Card>): Card => ({
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
    const level = '5.0 dB down';
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
    cardsSay(cards, 1000).some((line) => line.startsWith(word));
  it('explains a level where one is given, and series where there is any', () => {
    expect([said([card({})], 'dB down'), said([card({})], 'In series')]).toEqual([false, false]);
    expect(said([card({}), card({ rows: [{ ...row, level: '5.0 dB down' }] })], 'dB down')).toBe(true);
    expect(said([card({ joined: 'in parallel, 5.0 dB down' })], 'dB down')).toBe(true);
    expect(said([card({ joined: 'in series' })], 'In series')).toBe(true);
    expect(said([card({ joined: 'in parallel' })], 'In series')).toBe(false);
  });
});
