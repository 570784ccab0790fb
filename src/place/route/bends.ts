/** How many bends a wire must have. */
import { STEP_X, STEP_Y } from './grid.ts';

/** Bends that a way must have from leaving with one heading to arriving with another, so far across and down, with nothing in it. */
export function leastBends(leaving: number, arriving: number, dx: number, dy: number): number {
  const ahead = dx * (STEP_X[leaving] ?? 0) + dy * (STEP_Y[leaving] ?? 0);
  const right = (leaving + 1) & 3;
  const aside = dx * (STEP_X[right] ?? 0) + dy * (STEP_Y[right] ?? 0);
  switch ((arriving - leaving) & 3) {
    case 0:
      return ahead < 0 ? 4 : aside === 0 ? 0 : 2;
    case 2:
      return aside === 0 ? 4 : 2;
    case 1:
      return ahead >= 0 && aside >= 0 ? 1 : 3;
    default:
      return ahead >= 0 && aside <= 0 ? 1 : 3;
  }
}
