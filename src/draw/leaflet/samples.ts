/** Pieces of a kit's step drawings that show what each mark looks like: the clearest of each kind, as large as it is printed in its step. */
import { around, centreOf, inside, overlaps, type Point, type Rect, round2 } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { runsOf } from './beads.ts';
import type { Box, Frame } from './figure.ts';
import { dotAt, type Harness } from './harness.ts';
import { endNames } from './joint-ends.ts';
import type { Marks } from './marks.ts';

/** What a sample shows: a new line beside an earlier one, a number aside with its leader, one of an end that is soldered, and of one that is only hooked, and an end that was hooked before and is soldered now. */
export type SampleName = 'lines' | 'aside' | 'soldered' | 'hooked' | 'gathered';

/** A step as it is drawn. */
interface Drawn {
  readonly harness: Harness;
  readonly marks: Marks;
}

interface Sample extends Drawn {
  readonly name: SampleName;
  readonly crop: Rect;
}

/** Of an earlier line, drawing units. */
const WIDE = 6;

/**
 * The samples that there are.
 *
 * @param box of each, millimetres
 */
export function samplesOf(
  drawn: readonly Drawn[],
  { crop: whole, scale }: Frame,
  box: Box,
): readonly Sample[] {
  const [width, height] = [box.width / scale, box.height / scale];
  /** About a point, moved so that nothing of it lies outside of the drawing. */
  const cropAt = ({ x, y }: Point): Rect => {
    const within = (at: number, size: number, from: number, room: number): number =>
      round2(
        room < size ? from + (room - size) / 2 : Math.min(Math.max(at - size / 2, from), from + room - size),
      );
    return {
      x: within(x, width, whole.x, whole.width),
      y: within(y, height, whole.y, whole.height),
      width: round2(width),
      height: round2(height),
    };
  };
  const all = drawn.flatMap(({ harness, marks }) => {
    const lines = harness.paths.flatMap((path, joint) =>
      harness.made[joint] === 'before' ? [runsOf(path, WIDE)] : [],
    );
    const numbers = marks.numbers.map(({ of, spot }) => {
      const middle = centreOf({
        x: Math.min(of.tip.x, spot.centre.x),
        y: Math.min(of.tip.y, spot.centre.y),
        width: Math.abs(of.tip.x - spot.centre.x),
        height: Math.abs(of.tip.y - spot.centre.y),
      });
      const name: SampleName = of.hooked ? 'hooked' : spot.leader ? 'aside' : 'soldered';
      return { name, room: spot.room, crop: cropAt(middle), harness, marks };
    });
    const codes = marks.codes.map(({ spot }) => {
      const crop = cropAt(spot.centre);
      return { name: 'lines' as const, room: spot.room, crop, harness, marks };
    });
    const gathered = harness.made.flatMap((made, joint) =>
      endNames.flatMap((end) => {
        if (made !== 'before' || harness.before?.(joint, end) !== 'gathered') return [];
        const { x, y, radius } = dotAt(harness, joint, end);
        const room = around(x, y, 2 * radius, 2 * radius);
        return { name: 'gathered' as const, room, crop: cropAt({ x, y }), harness, marks };
      }),
    );
    return [...numbers, ...codes, ...gathered].map((one) => {
      const beside = lines.filter((runs) => runs.some((run) => overlaps(run, one.crop))).length;
      const others = [...marks.numbers, ...marks.codes].filter(
        ({ spot }) => spot.room !== one.room && overlaps(spot.room, one.crop),
      ).length;
      // Of a line an earlier one is to be seen; all else is clearer by itself.
      const unclear = others + (one.name === 'lines' ? (beside === 0 ? 10 : 0) : beside / 10);
      return { ...one, unclear };
    });
  });
  return (['lines', 'aside', 'soldered', 'hooked', 'gathered'] as const).flatMap(
    (name): readonly Sample[] => {
      const these = all.filter((one) => one.name === name && inside(one.room, one.crop));
      const [best] = [...these.keys()].sort((a, b) => nth(these, a).unclear - nth(these, b).unclear || a - b);
      if (best === undefined) return [];
      const { crop, harness, marks } = nth(these, best);
      return [{ name, crop, harness, marks }];
    },
  );
}
