/** Parts that are turned by quarters or halves, from either side: still what they are. Source: the handbook, “Parts”. */
import { describe, expect, it } from 'vitest';
import { prepare, render } from '../../src/pipeline.ts';
import { arrangementSchema } from '../../src/place/arrangement.ts';
import { sample } from './draw.ts';
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
