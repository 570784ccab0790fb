/** How near wires may come to parts and to one another: at each limit, just inside it and just outside, from every side. */
import { describe, expect, it } from 'vitest';
import { wireFindings } from '../../src/inspect/rules/wires.ts';
import { box, component, disc, part, read, tag, wire } from './small.ts';

const found = (markup: string) => wireFindings(read(markup));
const rules = (markup: string): readonly string[] => found(markup).map(({ rule }) => rule);
const of = (rule: string, markup: string): number => rules(markup).filter((one) => one === rule).length;

/** Exchanges across and down. */
const turned = (d: string): string => d.replace(/(-?[\d.]+) (-?[\d.]+)/g, '$2 $1');

describe('two wires', () => {
  it.each(['level', 'upright'])('%s: side by side at 10 units or more, whatever is between', (way) => {
    const both = (gap: number, from = 10, to = 100): readonly string[] => {
      const [one, other] = ['M10 50L100 50', `M${from} ${50 + gap}L${to} ${50 + gap}`];
      const [a, b] = way === 'level' ? [one, other] : [turned(one), turned(other)];
      // In either order, and drawn from either end.
      const answers = [wire(1, a) + wire(2, b), wire(1, b) + wire(2, a)].map((markup) =>
        rules(markup).join(),
      );
      expect(answers[0]).toBe(answers[1]);
      return rules(wire(1, a) + wire(2, b));
    };
    expect(both(10)).toEqual([]);
    expect(both(-10)).toEqual([]);
    expect(both(9.9)).toEqual(['parallel-gap']);
    expect(both(-9.9)).toEqual(['parallel-gap']);
    expect(both(1)).toEqual(['parallel-gap']);
    expect(both(0.5)).toEqual(['parallel-gap']);
    expect(both(0.4)).toContain('wires-overlap');
    expect(both(0)).toContain('wires-overlap');
    // Where the one begins as the other ends they are not beside each other.
    expect(both(5, 100, 200)).toEqual([]);
    expect(both(5, 99.5, 200)).toEqual([]);
    expect(both(5, 99, 200)).toEqual(['parallel-gap']);
    expect(both(5, -90, 10.5)).toEqual([]);
    expect(both(5, -90, 11)).toEqual(['parallel-gap']);
  });
  it('so near are told with the gap that is, and the gap that should be', () => {
    const [one] = found(wire(1, 'M10 50L100 50') + wire(2, 'M10 57L100 57'));
    expect(one?.message).toContain('run 7 units apart; at least 10 is needed');
    expect(one?.where).toEqual({ x: 55, y: 50 });
  });
  describe.each([
    ['level', (d: string) => d],
    ['upright', turned],
  ] as const)('%s', (_, way) => {
    /** One with gaps at those places, from 10 to 200, and what crosses it there. */
    const gaps = (places: readonly number[], tail = ''): readonly string[] => {
      const course = `M10 50${places.map((x) => `L${x - 6} 50M${x + 6} 50`).join('')}L200 50${tail}`;
      const others = places.map((x, i) => wire(i + 2, way(`M${x} 0L${x} 100`)));
      return rules(wire(1, way(course)) + others.join('')).filter((rule) => /gap-at|stub/.test(rule));
    };
    it('sixteen units are seen between a gap and an end', () => {
      expect(gaps([32])).toEqual([]);
      expect(gaps([178])).toEqual([]);
      expect(gaps([31.9])).toEqual(['gap-at-end']);
      expect(gaps([178.1])).toEqual(['gap-at-end']);
    });
    it('twelve between a gap and a corner, before it and behind it', () => {
      expect(gaps([182], 'L200 150')).toEqual([]);
      expect(gaps([182.1], 'L200 150')).toEqual(['gap-at-corner']);
      const behind = (y: number): readonly string[] =>
        rules(
          wire(1, way(`M10 50L200 50L200 ${y - 6}M200 ${y + 6}L200 200`)) +
            wire(2, way(`M150 ${y}L250 ${y}`)),
        );
      expect(behind(68)).toEqual([]);
      expect(behind(67.9)).toEqual(['gap-at-corner']);
    });
    it('twelve between two gaps', () => {
      expect(gaps([100, 124])).toEqual([]);
      expect(gaps([100, 123.9])).toEqual(['short-stub']);
      expect(gaps([60, 83, 106])).toEqual(['short-stub', 'short-stub']);
    });
  });
  it('may cross where just one of them is open', () => {
    const through = 'M50 10L50 90';
    const open = 'M50 10L50 44M50 56L50 90';
    const [level, levelOpen] = ['M10 50L90 50', 'M10 50L44 50M56 50L90 50'];
    const both = (a: string, b: string): readonly string[] => rules(wire(1, a) + wire(2, b));
    expect(both(level, open)).toEqual([]);
    expect(both(open, level)).toEqual([]);
    expect(both(levelOpen, through)).toEqual([]);
    expect(both(level, through)).toEqual(['crossing']);
    expect(both(through, level)).toEqual(['crossing']);
    expect(both(levelOpen, open)).toEqual(['crossing']);
    const message = (a: string, b: string): string => found(wire(1, a) + wire(2, b))[0]?.message ?? '';
    expect(message(level, through)).toContain('but neither line is broken');
    expect(message(levelOpen, open)).toContain('and both lines are broken');
    expect(found(wire(1, level) + wire(2, through))[0]?.where).toEqual({ x: 50, y: 50 });
  });
  it('open beside the crossing by a unit or more are not open at it', () => {
    const open = (at: number): string => `M50 10L50 ${at - 6}M50 ${at + 6}L50 90`;
    const both = (at: number): readonly string[] => rules(wire(1, 'M10 50L90 50') + wire(2, open(at)));
    expect(both(50.4)).toEqual([]);
    expect(both(51)).toEqual(['crossing', 'unexpected-gap']);
    expect(both(49)).toEqual(['crossing', 'unexpected-gap']);
  });
  it('that pass each other at a distance do not cross', () => {
    for (const upright of ['M50 60L50 90', 'M50 10L50 40', 'M5 10L5 90', 'M95 10L95 90'])
      for (const [a, b] of [
        ['M10 50L90 50', upright],
        [upright, 'M10 50L90 50'],
      ] as const)
        expect(rules(wire(1, a) + wire(2, b)), `${a} ${b}`).toEqual([]);
  });
  it('touch where an end or a corner of one lies on the other, by half a unit', () => {
    const level = wire(1, 'M10 50L90 50');
    expect(rules(level + wire(2, 'M50 50L50 90'))).toEqual(['wire-on-wire']);
    expect(rules(level + wire(2, 'M50 50.4L50 90'))).toEqual(['wire-on-wire']);
    expect(rules(level + wire(2, 'M50 50.5L50 90'))).toEqual([]);
    expect(rules(level + wire(2, 'M30 90L30 50L60 50L60 90'))).toContain('wire-on-wire');
    expect(rules(wire(1, 'M50 50L50 90') + wire(2, 'M10 50L90 50'))).toEqual(['wire-on-wire']);
    expect(found(level + wire(2, 'M20 90L50 90L50 50'))[0]?.where).toEqual({ x: 50, y: 50 });
  });
  it('may begin and end on one lug, and only there', () => {
    const jack = part('jack', tag(40, 40, 'tip'));
    const [one, other] = ['M50 46L50 90', 'M50 46L90 46'];
    for (const a of [one, 'M50 90L50 46'])
      for (const b of [other, 'M90 46L50 46'])
        expect(rules(jack + wire(1, a) + wire(2, b)), `${a} ${b}`).toEqual([]);
    // The same without the lug.
    expect(rules(wire(1, one) + wire(2, other))).toEqual(['wire-on-wire', 'wire-on-wire']);
    // Both begin on the lug, and the second ends on the first further down.
    expect(rules(jack + wire(1, one) + wire(2, 'M50 46L80 46L80 70L50 70'))).toEqual(['wire-on-wire']);
  });
});

describe('one wire', () => {
  it('runs level and upright; each stretch that does not is told by its beginning', () => {
    const slanting = found(wire(1, 'M10 10L50 10L60 40L60 80L90 81'));
    expect(slanting.map(({ rule, where }) => [rule, where?.x, where?.y])).toEqual([
      ['diagonal-wire', 50, 10],
      ['diagonal-wire', 60, 80],
    ]);
    expect(rules(wire(1, 'M10 10L50 10L50 40'))).toEqual([]);
  });
  it('is open only where another runs, within half a unit', () => {
    const open = wire(1, 'M10 50L44 50M56 50L90 50');
    expect(rules(open)).toEqual(['unexpected-gap']);
    expect(found(open)[0]?.where).toEqual({ x: 50, y: 50 });
    expect(rules(open + wire(2, 'M50.4 10L50.4 90'))).toEqual([]);
    expect(rules(open + wire(2, 'M80 10L80 90'))).toContain('unexpected-gap');
    // Its own later course does not count as another.
    expect(of('unexpected-gap', wire(1, 'M10 50L44 50M56 50L90 50L90 90L50 90L50 20'))).toBe(1);
  });
});

describe('a lug that is not the wire’s own', () => {
  const jack = part('jack', tag(100, 100, 'tip'));
  it('is passed at 6 units, on each of its four sides', () => {
    for (const [at, near, far] of [
      [(by: number) => `M60 ${100 - by}L200 ${100 - by}`, 5.9, 6],
      [(by: number) => `M60 ${112 + by}L200 ${112 + by}`, 5.9, 6],
      [(by: number) => `M${100 - by} 60L${100 - by} 200`, 5.9, 6],
      [(by: number) => `M${120 + by} 60L${120 + by} 200`, 5.9, 6],
    ] as const) {
      expect(rules(jack + wire(1, at(near))), at(near)).toEqual(['lug-too-near']);
      expect(rules(jack + wire(1, at(far))), at(far)).toEqual([]);
      // However thin or thick: it is the middle of the wire that counts.
      expect(of('lug-too-near', jack + wire(1, at(far), 20)), at(far)).toBe(0);
    }
  });
  it('is told by its name, with the distance that is needed', () => {
    const [one] = found(jack + wire(1, 'M60 95L200 95'));
    expect(one?.message).toContain('passes within 6 units of jack.tip');
    expect(one?.where).toEqual({ x: 110, y: 106 });
  });
  it('does not matter where the wire ends on it, at either of its ends', () => {
    expect(rules(jack + wire(1, 'M110 106L110 200'))).toEqual([]);
    expect(rules(jack + wire(1, 'M110 200L110 106'))).toEqual([]);
  });
  it('each lug that is in the way is told once', () => {
    const two = part('jack', tag(100, 100, 'tip') + tag(160, 100, 'sleeve'));
    expect(rules(two + wire(1, 'M60 96L200 96L200 97'))).toEqual(['lug-too-near', 'lug-too-near']);
    expect(of('lug-too-near', two + wire(1, 'M60 96L130 96L130 20L140 20L140 96L155 96L155 20'))).toBe(2);
  });
});

describe('a body', () => {
  const plate = part('jack', box('sl-plate', 100, 100, 60, 60));
  it('is not run under, by any of the wire’s thickness, from any side', () => {
    for (const at of [
      (by: number) => `M60 ${100 - by}L200 ${100 - by}`,
      (by: number) => `M60 ${160 + by}L200 ${160 + by}`,
      (by: number) => `M${100 - by} 60L${100 - by} 200`,
      (by: number) => `M${160 + by} 60L${160 + by} 200`,
    ]) {
      expect(rules(plate + wire(1, at(1.9))), at(1.9)).toEqual(['under-part']);
      expect(rules(plate + wire(1, at(2))), at(2)).toEqual([]);
      expect(rules(plate + wire(1, at(9.9), 20)), at(9.9)).toEqual(['under-part']);
      expect(rules(plate + wire(1, at(10), 20)), at(10)).toEqual([]);
    }
  });
  it('is told once for each wire, by the first stretch of it that runs there', () => {
    const hits = found(plate + wire(1, 'M60 110L130 110L130 150L200 150'));
    expect(hits.map(({ rule, message, where }) => [rule, message, where])).toEqual([
      ['under-part', 'the wire from nowhere to nowhere runs under jack', { x: 95, y: 110 }],
    ]);
  });
  it('not so a case to which the wire is soldered, 12 units deep, with the stretch that ends there', () => {
    const pot = part('pot', disc('sl-case', 100, 100, 40));
    // To the rim and up to 12 units within, from either end of the wire.
    for (const d of ['M100 62L100 20', 'M100 20L100 62', 'M100 72L100 20', 'M100 20L100 72'])
      expect(rules(pot + wire(1, d)), d).toEqual([]);
    for (const d of ['M100 73L100 20', 'M100 20L100 73', 'M100 100L100 20', 'M100 20L100 100'])
      expect(rules(pot + wire(1, d)), d).toEqual(['under-part']);
    // A stretch before the one that ends there has no business on it.
    expect(rules(pot + wire(1, 'M20 80L70 80L70 85')), 'over the edge twice').toEqual(['under-part']);
    expect(rules(pot + wire(1, 'M70 85L70 80L20 80')), 'over the edge twice').toEqual(['under-part']);
    // Nor has one that ends on another part's lug.
    const other = part('other', disc('sl-case', 300, 100, 40));
    expect(of('under-part', pot + other + wire(1, 'M20 68L300 68'))).toBeGreaterThan(0);
  });
  it('nor is a square case soldered to over its edge as a round one is', () => {
    const block = part('block', box('sl-case', 100, 100, 60, 60));
    expect(rules(block + wire(1, 'M130 105L130 20'))).toEqual(['under-part']);
  });
  it('a component’s leg is no body of it', () => {
    expect(rules(component('cap', 50, 50) + wire(1, 'M50 50L50 200'))).toEqual([]);
    expect(rules(component('cap', 50, 50) + wire(1, 'M90 20L90 200'))).toContain('under-part');
  });
});

it('a highlight is not run over, by any of the wire’s thickness, and is told with its part', () => {
  const marked = part('volume', box('sl-highlight', 100, 100, 60, 60));
  const over = found(marked + box('sl-plate', 300, 300, 5, 5) + wire(1, 'M60 98.1L200 98.1L200 200'));
  expect(over.map(({ rule, message, where }) => [rule, message, where])).toEqual([
    [
      'under-part',
      'the wire from nowhere to nowhere runs under the highlight of k-part-volume',
      { x: 130, y: 98.1 },
    ],
  ]);
  expect(
    rules(
      part('p', box('sl-highlight', 100, 100, 60, 60) + box('sl-plate', 300, 200, 5, 5)) +
        wire(1, 'M60 98L200 98'),
    ),
  ).toEqual([]);
  // Once for each wire, however often it comes back.
  const twice = part('p', box('sl-highlight', 100, 100, 60, 60) + box('sl-plate', 300, 200, 5, 5));
  expect(rules(twice + wire(1, 'M60 110L200 110L200 150L60 150'))).toEqual(['under-part']);
});
