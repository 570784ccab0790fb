/** How far letters reach in Inter, by their sort. A test compares the reaches with the font's own outlines. */

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

/** What two lines, one below the other, must be apart from baseline to baseline so that their ink keeps apart, drawing units. */
export function leastBetween(upper: string, lower: string, size: number): number {
  const reach = (text: string, way: 'up' | 'down'): number =>
    Math.max(0, ...[...text].filter((one) => one.trim() !== '').map((one) => reachOf(one)[way]));
  return (reach(upper, 'down') + reach(lower, 'up')) * size + AIR;
}
/** Paper between them. */
const AIR = 0.5;
