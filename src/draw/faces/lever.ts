import { at, type Rect } from '../../common/geometry.ts';
import { type Face, inner, labels, plate, tags } from './face.ts';
import { fitLabels } from './fit.ts';

/** How far inside the plate the throws' contacts and the common's rail lie. */
const CONTACT = 15;
const RAIL = 31;
/** How far the rail reaches past the first throw. */
const RAIL_RISE = 8;

/** A lever switch: each pole's rail runs from its common past its throws; a bridge closes the contacts of the position drawn. */
export const leverFace: Face = (pen, placed, look) => {
  const { theme, closed } = look;
  const { body, lugs } = placed.outline;
  plate(pen, body, 12, theme);
  const joined = closed.get(placed.part.name) ?? [];
  for (const pole of ['A', 'B']) {
    const own = lugs.filter((lug) => lug.lug.startsWith(pole));
    const inward = pole === 'A' ? 1 : -1;
    const edge = pole === 'A' ? body.x : body.x + body.width;
    const [contact, rail] = [edge + inward * CONTACT, edge + inward * RAIL];
    const height = (name: string): number => {
      const tag = own.find((lug) => lug.lug === name)?.tag;
      return tag ? tag.y + tag.height / 2 : 0;
    };
    const [first, common] = [height(`${pole}1`), height(`${pole}0`)];
    pen.path(
      [
        [{ to: at(edge, common) }, { to: at(rail, common) }, { to: at(rail, first - RAIL_RISE) }],
        ...['1', '2', '3'].map((n) => [
          { to: at(edge, height(pole + n)) },
          { to: at(contact, height(pole + n)) },
        ]),
      ],
      inner(theme, 2),
    );
    for (const n of ['1', '2', '3'])
      pen.circle(at(contact, height(pole + n)), 4, {
        fill: theme.plate,
        stroke: theme.outline,
        'stroke-width': 1.5,
      });
    for (const name of joined.flat().filter((lug) => lug.startsWith(pole) && lug !== `${pole}0`))
      pen.path([[{ to: at(contact, height(name)) }, { to: at(rail, height(name)) }]], {
        stroke: theme.ink,
        'stroke-width': 7,
        'stroke-linecap': 'round',
      });
  }
  const first = lugs.find((lug) => lug.lug === 'A1')?.tag;
  const railTop = first ? first.y + first.height / 2 - RAIL_RISE : body.y + body.height;
  const fits = ({ x, y, width, height }: Rect): boolean =>
    x >= body.x + 3 && x + width <= body.x + body.width - 3 && y >= body.y + 1 && y + height <= railTop - 1;
  labels(pen, placed, theme, undefined, fitLabels(placed.outline.labels, fits));
  tags(pen, placed, look);
};
