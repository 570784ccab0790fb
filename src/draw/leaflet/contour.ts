/** The outline of a new joint, by which it stands out in black and white. */
import type { Line } from '../../annotate/lines.ts';

/** Beyond a new joint's own line: paper, then ink. Beside the rails of ground paper would look like more rails, beside a bare leg like its sleeving. */
const CONTOUR = { paper: 1.6, ink: 1.9 } as const;
export const paperBeside = ({ look }: Line): number =>
  look === 'ground' || look === 'leg' ? 0 : CONTOUR.paper;
/** A bare leg is as broad in ink as others are with their paper: one thick line. */
export const inkBeside = (line: Line): number =>
  CONTOUR.ink + (line.look === 'leg' ? CONTOUR.paper : paperBeside(line));
