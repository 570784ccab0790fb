/** The ink of a text, one box a character: across, the character's advance; up and down, as far as letters of its sort reach. */
import type { Rect } from '../common/geometry.ts';
import { reachOf } from '../common/reach.ts';
import { textWidth, type Weight } from '../common/text.ts';

interface TextPlace {
  readonly words: string;
  /** Of the baseline, where `anchor` says. */
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly weight: Weight;
  readonly anchor: string;
  /** Width it is set to, where that is given. */
  readonly length?: number;
}

/** One box for each character that leaves ink. */
export function inkOf(text: TextPlace): readonly Rect[] {
  const { words, size, weight } = text;
  const natural = textWidth(words, size, weight);
  const width = text.length ?? natural;
  const stretch = natural > 0 ? width / natural : 1;
  const left = text.x - (text.anchor === 'middle' ? width / 2 : text.anchor === 'end' ? width : 0);
  const boxes: Rect[] = [];
  let [before, x0, x1] = ['', 0, 0];
  for (const character of words) {
    // The pair's width and not the letter's, so that kerning counts.
    x0 = x1;
    x1 += textWidth(before + character, size, weight) - textWidth(before, size, weight);
    before = character;
    if (character.trim() === '') continue;
    const { up, down } = reachOf(character);
    boxes.push({
      x: left + x0 * stretch,
      y: text.y - up * size,
      width: (x1 - x0) * stretch,
      height: (up + down) * size,
    });
  }
  return boxes;
}
