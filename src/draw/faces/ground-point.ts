import { at } from '../../common/geometry.ts';
import { type Face, inner, labels, plate, tags } from './face.ts';

/** A grounded point, marked with the ground symbol of IEC 60417 (5017). */
export const groundPointFace: Face = (pen, placed, look) => {
  const { theme } = look;
  const { body } = placed.outline;
  plate(pen, body, 10, theme);
  const x = body.x + 22;
  const y = body.y + body.height / 2;
  pen.path(
    [
      [{ to: at(body.x, y) }, { to: at(x - 4, y) }],
      ...[8, 5, 2].map((half, i) => [
        { to: at(x - 4 + 4 * i, y - half) },
        { to: at(x - 4 + 4 * i, y + half) },
      ]),
    ],
    inner(theme, 1.8),
  );
  labels(pen, placed, theme);
  tags(pen, placed, look);
};
