/** Words that stand inside a round face: the name in the size of names, the value below it, in the lines that fit there. */

import type { Point, Rect } from '../common/geometry.ts';
import { leastBetween } from '../common/reach.ts';
import { textWidth } from '../common/text.ts';
import { type LabelSlot, nameWays, TYPE } from './outline.ts';

/** How far ink may reach from the middle of the capitals, per size: a plain letter, an accented capital; a tail. */
const PLAIN = 0.42;
const ACCENTED = 0.68;
const TAIL = 0.6;

/** From one line's middle to the next one's: within the name, from the name to the value, within the value. */
const NAME_LINE = 15;
const VALUE = 17;
const VALUE_LINE = 13;

type Line = Omit<LabelSlot, 'centre'>;

/** A blank where a line of a value may end: not between a figure and its unit. */
const IN_VALUE = / (?!(?:[kM]?Ω|[µnp]?F)(?: |$))/;

/** The ways to set a name and a value in lines, the fewest lines first; after a comma a value goes on in a line of its own. */
export function settingsOf(name: string, value: string): readonly (readonly Line[])[] {
  const [first = value, ...phrases] = value.split(', ');
  const [figure = first, ...taper] = first.split(IN_VALUE);
  const values = [
    [first],
    ...(taper.length === 0
      ? []
      : [
          [figure, taper.join(' ')],
          [figure, ...taper],
        ]),
  ].map((lines) => [...lines, ...phrases]);
  return nameWays(name)
    .flatMap((lines) =>
      values.map((below): readonly Line[] => [
        ...lines.map((text): Line => ({ text, size: TYPE.name, weight: 'bold' })),
        ...below.map((text): Line => ({ text, size: TYPE.value, weight: 'regular' })),
      ]),
    )
    .sort((a, b) => a.length - b.length);
}

/** The lines one below the other, all of them about a point. */
function stacked(lines: readonly Line[], { x, y }: Point): readonly LabelSlot[] {
  const heights: number[] = [];
  lines.forEach((line, i) => {
    const before = lines[i - 1];
    const step =
      before === undefined
        ? 0
        : line.weight === 'bold'
          ? Math.max(NAME_LINE, leastBetween(before.text, line.text, TYPE.name))
          : before.weight === 'bold'
            ? VALUE
            : VALUE_LINE;
    heights.push((heights.at(-1) ?? 0) + step);
  });
  const top = y - (heights.at(-1) ?? 0) / 2;
  return lines.map((line, i) => ({ ...line, centre: { x, y: top + (heights[i] ?? 0) } }));
}

/** The first of some middles about which all lines fit. */
export function firstFit(
  lines: readonly Line[],
  middles: readonly Point[],
  fits: (box: Rect) => boolean,
): readonly LabelSlot[] | undefined {
  return middles
    .map((middle) => stacked(lines, middle))
    .find((labels) => labels.every((label) => fits(inkBox(label))));
}

/** The room that a line's ink takes. */
function inkBox({ text, centre, size, weight }: LabelSlot): Rect {
  const width = textWidth(text, size, weight);
  const up = (/^[\x20-\x7eΩµ]*$/.test(text) ? PLAIN : ACCENTED) * size;
  const down = (/[^A-IK-PR-Za-fh-ik-or-xz0-9 .Ω-]/.test(text) ? TAIL : PLAIN) * size;
  return { x: centre.x - width / 2, y: centre.y - up, width, height: up + down };
}
