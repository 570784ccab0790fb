/** Texts in as many lines as a width asks for. */
import { textWidth, type Weight } from './text.ts';

/** Broken between words, and a word that is wider than a line anywhere. */
export function linesIn(
  text: string,
  size: number,
  width: number,
  weight: Weight = 'regular',
): readonly string[] {
  const fits = (line: string): boolean => textWidth(line, size, weight) <= width;
  const lines: string[] = [];
  for (const word of text.split(' ').flatMap((one) => (fits(one) ? [one] : cut(one, fits)))) {
    const longer = `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && fits(longer)) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** As many letters to a piece as fit, at least one. */
function cut(word: string, fits: (piece: string) => boolean): readonly string[] {
  const cuts: string[] = [];
  for (const letter of word) {
    const longer = `${cuts.at(-1) ?? ''}${letter}`;
    if (cuts.length > 0 && fits(longer)) cuts[cuts.length - 1] = longer;
    else cuts.push(letter);
  }
  return cuts;
}
