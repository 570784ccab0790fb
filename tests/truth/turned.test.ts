/** Parts that are turned by quarters or halves, from either side: still what they are. Source: the handbook, “Parts”. */
import { describe, expect, it } from 'vitest';
import { inspect } from '../../src/inspect/index.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { arrangementSchema } from '../../src/place/arrangement.ts';
import { described, sample } from './draw.ts';
import { jointErrors, type Part, type Point, read } from './reader.ts';

const views = ['solder-side', 'component-side'] as const;

/** All pots and pickups turned so, as an arrangement may have them, and as a search may turn them. */
const turnedBy = (turn: number, mirror: boolean) =>
  arrangementSchema.parse({
    arrangement: 'turned',
    about: 'Pots and pickups turned.',
    seats: [
      { seat: 'pot', at: [70, 0], step: [0, 24], turn },
      { seat: 'pickup', at: [0, 0], step: [0, 16], turn: turn - (turn % 2), mirror },
      { seat: 'jack', at: [110, 0], turn: turn - (turn % 2), mirror },
    ],
  });

/** A point about a middle, turned back by so many quarters. */
function back({ x, y }: Point, middle: Point, quarters: number): Point {
  let [dx, dy] = [x - middle.x, y - middle.y];
  for (let i = 0; i < (quarters + 4) % 4; i++) [dx, dy] = [dy, -dx];
  return { x: dx, y: dy };
}
const middleOf = ({ x, y, w, h }: Part['tags'][number]['box']): Point => ({ x: x + w / 2, y: y + h / 2 });
/** The words of a part that are no lug's, from top to bottom. */
const labelsOf = ({ texts, tags }: Part) =>
  texts.filter(({ words }) => !tags.some(({ name }) => name === words)).sort((a, b) => a.y - b.y);

describe.each(views)('from the %s', (view) => {
  describe.each([0, 1, 2, 3])('by %i quarters', (turn) => {
    it.each([false, true])(
      'mirror %s: lugs in their order, words upright and in theirs, the same joints',
      async (mirror) => {
        const kit = sample('kestrel-hss');
        const prepared = await prepare(kit, turnedBy(turn, mirror), { effort: { steps: 0, seed: 1 } });
        const drawing = read(render(prepared, { view }).svg);
        expect(jointErrors(drawing, kit)).toEqual([]);
        const pots = drawing.parts.filter(({ pot }) => pot !== undefined);
        expect(pots).toHaveLength(3);
        for (const part of pots) {
          const { pot } = part;
          if (!pot) continue;
          // Seen from behind a quarter turn goes the other way.
          const quarters = view === 'solder-side' ? turn : -turn;
          const lugs = part.tags
            .map(({ name, box }) => ({ name, at: back(middleOf(box), pot, quarters) }))
            .sort((a, b) => a.at.x - b.at.x);
          expect(lugs.map(({ name }) => name)).toEqual(
            view === 'solder-side' ? ['3', '2', '1'] : ['1', '2', '3'],
          );
          for (const { at } of lugs) expect(at.y).toBeGreaterThan(pot.r);
          // The wiper stands at full, towards lug 3: the tip of its arm is a dot inside the case.
          const three = lugs.find(({ name }) => name === '3')?.at;
          const tip = part.circles.find(({ r }) => r === 3);
          if (!tip || !three) throw new Error('no wiper');
          expect(Math.sign(back(tip, pot, quarters).x)).toBe(Math.sign(three.x));
          expect(back(tip, pot, quarters).y).toBeGreaterThan(0);
          const label = kit.parts.find(({ name }) => name === part.name)?.label ?? '';
          const words = labelsOf(part);
          const said = words.map((text) => text.words).join(' ');
          expect(said).toMatch(new RegExp(`^${label} \\d+ kΩ log$`));
          // Inside the track, and clear of the arm.
          for (const text of words) {
            const half = text.wide / 2;
            for (const x of [text.middle - half, text.middle + half])
              for (const y of [text.y, text.y - 0.72 * text.size])
                expect(Math.hypot(x - pot.x, y - pot.y), text.words).toBeLessThan(36.5);
          }
        }
        for (const name of ['neck', 'middle', 'bridge', 'output']) {
          const part = drawing.parts.find((one) => one.name === name);
          if (!part) throw new Error(name);
          const [first, second] = labelsOf(part);
          expect(first?.words).toBe(kit.parts.find((one) => one.name === name)?.label);
          expect(second?.words).toMatch(/, |jack/);
          const [one, other] = part.tags.map(({ box }) => middleOf(box));
          // Half a turn exchanges above and below, and so does nothing else.
          const upper = part.tags.find(({ box }) => middleOf(box).y === Math.min(one?.y ?? 0, other?.y ?? 0));
          const usual = name === 'output' ? 'tip' : 'hot';
          expect(upper?.name === usual).toBe(turn < 2);
        }
      },
    );
  });
});

/** A resistor of 470 kΩ ±5 %, a capacitor of 22 nF and a ground point. */
const small = described({
  kit: 'small-parts',
  title: 'Small parts, turned',
  parts: {
    neck: { kind: 'single-coil' },
    volume: { kind: 'pot', value: '250k', taper: 'log' },
    pad: { kind: 'resistor', value: '470k', label: 'Long pad resistor' },
    bleed: { kind: 'capacitor', value: '22n', label: 'Cap' },
    output: { kind: 'jack' },
    strings: { kind: 'ground-point', label: 'String ground' },
  },
  joints: [
    { wire: 'neck.hot > volume.3' },
    { wire: 'neck.ground > volume.case' },
    { leg: 'pad.1 > volume.3' },
    { leg: 'pad.2 > volume.2' },
    { leg: 'bleed.1 > volume.2' },
    { leg: 'bleed.2 > volume.case' },
    { wire: 'volume.2 > output.tip' },
    { wire: 'output.sleeve > volume.case' },
    { wire: 'strings.1 > volume.case' },
    { bend: 'volume.1 > volume.case' },
  ],
});

const smallTurned = (turn: number, mirror: boolean) =>
  arrangementSchema.parse({
    arrangement: 'turned',
    about: 'Components and ground points turned.',
    seats: [
      { seat: 'component', at: [0, 0], step: [0, 16], turn, mirror },
      { seat: 'ground-point', at: [0, 40], turn, mirror },
    ],
  });

const boxOfText = ({ middle, wide, y, size }: Part['texts'][number]) => ({
  left: middle - wide / 2,
  right: middle + wide / 2,
  top: y - 0.72 * size,
  bottom: y,
});

describe.each(views)('small parts from the %s', (view) => {
  describe.each([0, 1, 2, 3])('by %i quarters', (turn) => {
    it.each([false, true])(
      'mirror %s: bands from left or top, words upright and in order',
      async (mirror) => {
        const prepared = await prepare(small, smallTurned(turn, mirror), { effort: { steps: 0, seed: 1 } });
        const { svg } = render(prepared, { view });
        expect(inspect(svg, small)).toEqual([]);
        const drawing = read(svg);
        expect(jointErrors(drawing, small)).toEqual([]);
        const isUpright = turn % 2 === 1;
        for (const name of ['pad', 'bleed']) {
          const part = drawing.parts.find((one) => one.name === name);
          if (!part) throw new Error(name);
          const [a, b] = part.legs;
          expect(a && b && (isUpright ? a.x === b.x : a.y === b.y), name).toBe(true);
          const body = part.rects.reduce((most, one) => (one.w * one.h > most.w * most.h ? one : most));
          expect(body.h > body.w, name).toBe(isUpright);
          const words = part.texts
            .filter(({ words }) => words !== '223')
            .sort((one, other) => one.y - other.y);
          expect(words.map((one) => one.words)).toEqual(
            name === 'pad' ? ['Long pad resistor', '470 kΩ'] : ['Cap', '22 nF'],
          );
          const [first, second] = words.map(boxOfText);
          if (!first || !second) throw new Error('no words');
          expect(first.bottom).toBeLessThan(second.top);
          if (isUpright) {
            // All on one side of the body, between its legs' ends.
            const sides = [first, second].map(({ left, right }) =>
              left > body.x + body.w ? 'right' : right < body.x ? 'left' : 'over',
            );
            expect(sides).toEqual(
              (turn === 1) === (view === 'solder-side') ? ['right', 'right'] : ['left', 'left'],
            );
          } else {
            expect(first.bottom).toBeLessThan(body.y);
            expect(second.top).toBeGreaterThan(body.y + body.h);
          }
          const along = ({ x, y }: Point): number => (isUpright ? y : x);
          const bands = part.rects
            .filter(({ w, h }) => Math.min(w, h) < 8 && Math.max(w, h) > 10)
            .sort((one, other) => along(one) - along(other));
          if (name === 'bleed') continue;
          const [yellow, violet, again, gold] = bands.map(({ fill }) => fill);
          expect(bands).toHaveLength(4);
          expect(yellow).toBe(again);
          expect(new Set([yellow, violet, gold]).size).toBe(3);
          const at = bands.map(along);
          expect((at[3] ?? 0) - (at[2] ?? 0)).toBeGreaterThan((at[1] ?? 0) - (at[0] ?? 0) + 2);
        }
        const print = drawing.parts
          .find((one) => one.name === 'bleed')
          ?.texts.find(({ words }) => words === '223');
        expect(print).toBeDefined();
        const point = drawing.parts.find(({ name }) => name === 'strings');
        const tag = point?.tags[0]?.box;
        const word = point?.texts.find(({ words }) => words === 'String ground');
        if (!tag || !word) throw new Error('no ground point');
        // Its lug on the left, or where that comes to: mirrored, turned, and seen from behind.
        let [x, y] = [mirror ? 1 : -1, 0];
        for (let i = 0; i < turn; i++) [x, y] = [-y, x];
        if (view === 'component-side') x = -x;
        const off = { x: middleOf(tag).x - word.middle, y: middleOf(tag).y - (word.y - 0.36 * word.size) };
        const signs = [off.x, off.y].map((by) => Math.sign(Math.round(by)));
        expect(Math.abs((signs[0] ?? 9) - x) + Math.abs((signs[1] ?? 9) - y)).toBe(0);
      },
    );
  });
});

it('a padding resistor has its caption clear of it however it is turned, in a drawing without a finding', async () => {
  const kit = sample('wren-sh');
  for (const turn of [0, 1, 2, 3])
    for (const view of views) {
      const prepared = await prepare(kit, smallTurned(turn, false), { effort: { steps: 0, seed: 1 } });
      expect(inspect(render(prepared, { view }).svg, kit)).toEqual([]);
    }
});
