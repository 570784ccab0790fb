import { at } from '../../common/geometry.ts';
import { type Face, inner, labels, plate, tags } from './face.ts';

/** A jack: the spring that touches the plug's tip, and the bush that holds its sleeve. */
export const jackFace: Face = (pen, placed, look) => {
  const { theme } = look;
  const { body, lugs } = placed.outline;
  plate(pen, body, 12, theme);
  const height = (lug: string): number => {
    const tag = lugs.find((l) => l.lug === lug)?.tag;
    return tag ? tag.y + tag.height / 2 : 0;
  };
  const [tip, sleeve] = [height('tip'), height('sleeve')];
  const left = body.x + 34;
  const right = body.x + body.width - 14;
  const axis = sleeve + 2;
  pen.path(
    [
      [
        { to: at(body.x, tip) },
        { to: at(body.x + 18, tip) },
        { to: at(body.x + 18, axis - 14) },
        { to: at(left + 8, axis - 14) },
        { to: at(left + 16, axis - 6) },
        { to: at(left + 24, axis - 14) },
      ],
    ],
    inner(theme, 2),
  );
  pen.path([[{ to: at(body.x, sleeve) }, { to: at(right - 14, sleeve) }]], inner(theme, 2));
  pen.rect(
    { x: right - 16, y: axis - 16, width: 12, height: 32 },
    { rx: 2, fill: theme.inside, stroke: theme.outline, 'stroke-width': 1.5 },
  );
  labels(pen, placed, theme);
  tags(pen, placed, look);
};
