/** Labels that would not go into their part: set in more lines and smaller type until they do. */

import type { Rect } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import { textWidth } from '../common/text.ts';
import type { LabelSlot } from './outline.ts';

/** From the largest to the smallest tried; smaller would be hard to read. */
const SIZES = [14, 13, 12, 11, 10, 9, 8, 7] as const;
/** How far a line's ink may reach from the middle of its capitals: an accented capital above, a tail below; per size. */
const UP = 0.68;
const DOWN = 0.6;
const MOST_LINES = 4;
const MUCH_LONGER = 1.6;

/** The labels as they are if `fits` says yes to each one's box, else the largest setting of them that it does. */
export function fitLabels(labels: readonly LabelSlot[], fits: (box: Rect) => boolean): readonly LabelSlot[] {
  if (labels.every((label) => fits(boxOf(label)))) return labels;
  const heights = labels.map(({ centre }) => centre.y);
  const middle = (Math.min(...heights) + Math.max(...heights)) / 2;
  const set = (size: number, counts: readonly number[]): readonly LabelSlot[] =>
    stack(
      labels.flatMap((label, i) => broken({ ...label, size: Math.min(label.size, size) }, nth(counts, i))),
      middle,
    );
  // Words stay whole while their letters are not too small; then they may be cut.
  const words = labels.map(({ text }) => text.split(BETWEEN_WORDS).length);
  const all = linings(labels.length);
  const whole = all.filter((counts) => counts.every((count, i) => count <= nth(words, i)));
  for (const [sizes, ways] of [
    [SIZES.filter((size) => size >= LEAST_WHOLE), whole],
    [SIZES, all],
  ] as const)
    for (const size of sizes)
      for (const counts of ways) {
        const found = set(size, counts);
        if (found.every((label) => fits(boxOf(label)))) return found;
      }
  return labels;
}
/** Smaller than this a word is rather cut in two. */
const LEAST_WHOLE = 10;

const boxOf = ({ text, centre, size, weight }: LabelSlot): Rect => {
  const width = textWidth(text, size, weight);
  return { x: centre.x - width / 2, y: centre.y - UP * size, width, height: (UP + DOWN) * size };
};

/** Numbers of lines for each label, fewest in all first. */
function linings(labels: number): readonly (readonly number[])[] {
  let all: (readonly number[])[] = [[]];
  for (let i = 0; i < labels; i++)
    all = all.flatMap((before) => Array.from({ length: MOST_LINES }, (_, n) => [...before, n + 1]));
  const sum = (counts: readonly number[]): number => counts.reduce((a, b) => a + b, 0);
  return all.sort((a, b) => sum(a) - sum(b));
}

/** A blank where a line may end: not between a figure and its unit. */
const BETWEEN_WORDS = / (?!(?:[kM]?Ω|[µnp]?F)(?: |$))/;

/** A label in so many lines, broken between words so that the longest line is as short as can be; a long word anywhere. */
function broken(label: LabelSlot, lines: number): readonly LabelSlot[] {
  const words = label.text.split(BETWEEN_WORDS);
  if (lines === 1) return [label];
  if (words.length < lines) return inPieces(label, lines);
  const widest = (texts: readonly string[]): number =>
    Math.max(...texts.map((text) => textWidth(text, label.size, label.weight)));
  const ways = words.slice(1).map((_, i) => {
    const rest = broken({ ...label, text: words.slice(i + 1).join(' ') }, lines - 1);
    return [words.slice(0, i + 1).join(' '), ...rest.map(({ text }) => text)];
  });
  const best = ways.reduce((a, b) => (widest(b) < widest(a) ? b : a));
  const pieces = inPieces(label, lines);
  // A word much longer than the others would keep all of them small.
  return widest(best) > MUCH_LONGER * widest(pieces.map(({ text }) => text))
    ? pieces
    : best.map((text) => ({ ...label, text }));
}

/** A label cut into pieces of like length, at a blank where one is near. */
function inPieces(label: LabelSlot, lines: number): readonly LabelSlot[] {
  const letters = [...label.text];
  const each = Math.ceil(letters.length / lines);
  return Array.from({ length: lines }, (_, i) =>
    letters
      .slice(i * each, (i + 1) * each)
      .join('')
      .trim(),
  )
    .filter((text) => text !== '')
    .map((text) => ({ ...label, text }));
}

/** Lines one below the other about a height. */
function stack(lines: readonly LabelSlot[], middle: number): readonly LabelSlot[] {
  const height = lines.reduce((sum, { size }) => sum + (UP + DOWN) * size, 0);
  let top = middle - height / 2;
  return lines.map((line) => {
    const y = top + UP * line.size;
    top += (UP + DOWN) * line.size;
    return { ...line, centre: { x: line.centre.x, y } };
  });
}
