import { around, at } from '../../common/geometry.ts';
import { type Face, inner, labels, plate, tags } from './face.ts';

const COIL = { width: 20, height: 56, turns: 3 } as const;

/** A pickup: one winding or two, seen from above as the racetracks they are, and the two leads leaving them. */
export const pickupFace: Face = (pen, placed, look) => {
  const { theme } = look;
  const { body, lugs } = placed.outline;
  const two = placed.part.kind === 'humbucker';
  plate(pen, body, two ? 14 : 34, theme);
  const middle = body.y + body.height / 2;
  const centres = two ? [18, 41] : [30];
  for (const x of centres)
    for (let turn = 0; turn < COIL.turns; turn++)
      pen.rect(around(body.x + x, middle, COIL.width - 6 * turn, COIL.height - 6 * turn), {
        rx: (COIL.width - 6 * turn) / 2,
        fill: turn === 0 ? theme.inside : 'none',
        stroke: theme.outline,
        'stroke-width': 1,
      });
  const right = body.x + (centres[centres.length - 1] ?? 0);
  const lead = (lug: string, y: number) => {
    const tag = lugs.find((l) => l.lug === lug)?.tag;
    return tag
      ? [
          { to: at(right, y) },
          { to: at(right, tag.y + tag.height / 2) },
          { to: at(tag.x, tag.y + tag.height / 2) },
        ]
      : [];
  };
  pen.path([lead('hot', middle - COIL.height / 2), lead('ground', middle + COIL.height / 2)], inner(theme));
  labels(pen, placed, theme);
  tags(pen, placed, look);
};
