/**
 * The ink of a text, one box a character: across, the character's advance; up and down, as far as letters of its sort
 * reach in Inter. A test compares the reaches with the font's own outlines.
 */
import type { Rect } from '../common/geometry.ts';
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

interface Reach {
  readonly up: number;
  readonly down: number;
}

/** Above the baseline and below it, as shares of the type size. */
export function reachOf(character: string): Reach {
  const [letter = '', ...marks] = character.normalize('NFD');
  const { up, down } = plainReach(letter);
  if (marks.length === 0) return { up, down };
  // Cedilla, ogonek and comma below hang under the letter; every other mark stands on it.
  const hangs = marks.some((mark) => /[\u0323-\u0328]/.test(mark));
  const low = marks.length === 1 && /[acegijmnorsu-z]/.test(letter);
  return { up: low ? 0.84 : 1, down: hangs ? 0.25 : down };
}

function plainReach(character: string): Reach {
  if (/[acemnorsuvwxz]/.test(character)) return { up: 0.57, down: 0.015 };
  if (/[gpqyµ]/.test(character)) return { up: 0.57, down: 0.22 };
  if (/[A-PR-Z0-9bdfhikltΩ.:!?'"’‘“”%&#°•·…*]/.test(character)) return { up: 0.77, down: 0.015 };
  if (/[ºª²³¹]/.test(character)) return { up: 0.85, down: 0.015 };
  if (/[-+=<>~×÷±→–—−]/.test(character)) return { up: 0.68, down: 0.04 };
  if (/[jQ,;()[\]{}/\\@_]/.test(character)) return { up: 0.775, down: 0.21 };
  return { up: 1, down: 0.25 };
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
