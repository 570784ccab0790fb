/** What the lever switches of this folder share: poles side by side, each with its throws and its common, and the look. */
import { around, at } from '../common/geometry.ts';
import type { Contact, LugSpec, PartBase, Seen } from './kind.ts';
import { g, nameLines, type Outline, tagCentre, tagPorts, titleLabels, widestLine } from './outline.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

/** How many throws a lever's poles have, and how the poles stand: a pair to a row, the first of a pair on the left. */
export interface LeverPoles<P extends string = string, N extends number = number> {
  readonly pairs: readonly (readonly [P, P])[];
  readonly throws: readonly N[];
}

/** The common lever: two poles, three throws. */
const TWO_BY_THREE = { pairs: [['A', 'B']], throws: [1, 2, 3] } as const satisfies LeverPoles;

/** Pole letter, then throw number; 0 is the common. */
export const lugsOfLever = <P extends string, N extends number>({
  pairs,
  throws,
}: LeverPoles<P, N>): readonly LugSpec<`${P}${0 | N}`>[] =>
  pairs.flat().flatMap((pole) =>
    ([0, ...throws] as const).map(
      (n): LugSpec<`${P}${0 | N}`> => ({
        name: `${pole}${n}`,
        role: n === 0 ? 'common' : 'throw',
        pole,
      }),
    ),
  );

export const leverLugs = lugsOfLever(TWO_BY_THREE);

/** Contacts from the throws each stop touches, the same on every pole; position 1 first. */
export const leverContacts = (
  throws: readonly (readonly number[])[],
  { pairs }: LeverPoles = TWO_BY_THREE,
): readonly Contact[] =>
  throws.map((touched, i) => ({
    position: i + 1,
    joins: pairs.flat().map((pole) => [0, ...touched].map((n) => `${pole}${n}`)),
  }));

/** Between one lug of a column and the next, grid units; the first stands as far below the plate's edge as one name and one word need. */
const ROW = 3;
/** Column of each pair's lugs. */
const COLUMN = 1;

/** Least width of the plate, grid units, and the room that a line of the name leaves free at its edges. */
const LEAST = 6;
const MARGIN = 10;
/** How far inside the plate the throws' contacts and the common's rail lie. */
const CONTACT = 15;
const RAIL = 31;
/** How far the rail reaches past the first throw. */
const RAIL_RISE = 8;

/** Lugs of a pole from the top down: the common stands last. */
const downwards = ({ throws }: LeverPoles): readonly number[] => [...throws, 0];

/** Grid row of a lug of a pair, the first row of lugs being 1 above a name of one line. */
const rowOf = (poles: LeverPoles, pair: number, n: number): number => {
  const column = downwards(poles);
  return ROW * (1 + pair * column.length + column.indexOf(n));
};

/**
 * Lever switch: of each pair of poles the first has its lugs on the left, the second on the right; a second pair stands below. A long
 * name makes the plate longer, a long word wider.
 *
 * @param what the line below the name: `five-way`
 * @param contacts what each position touches: its number stands between the poles, level with its throws
 */
export function leverOutline(
  part: PartBase,
  what: string,
  contacts: readonly Contact[],
  poles: LeverPoles = TWO_BY_THREE,
): Outline {
  const { pairs, throws } = poles;
  const names = nameLines(part.label, g(LEAST) - MARGIN);
  const across = Math.max(LEAST, Math.ceil((widestLine(names, what) + MARGIN) / g(1)));
  const labels = titleLabels(names, what, (line) => at(g(2 + across / 2), g(0.85 + line)));
  const more = labels.length - 2;
  const height = g(ROW * pairs.length * (throws.length + 1) + 1 + more);
  const body = { x: g(2), y: g(0), width: g(across), height };
  return {
    width: g(across + 4),
    height,
    body,
    blocked: [body],
    lugs: pairs.flatMap((pair, i) =>
      pair.flatMap((pole, second) =>
        downwards(poles).map((n) => {
          const left = second === 0;
          const [x, y] = [left ? COLUMN : across + 4 - COLUMN, rowOf(poles, i, n) + more];
          const tag = around(g(x) + (left ? 4 : -4), g(y), 26, 20);
          return {
            lug: `${pole}${n}`,
            tag,
            ports: tagPorts(tag, x, y, [left ? 'left' : 'right', 'up', 'down']),
          };
        }),
      ),
    ),
    labels,
    marks: pairs.flatMap(([pole], i) =>
      contacts.map(({ position, joins }) => {
        const touched = joins.flat();
        const rows = throws.filter((n) => touched.includes(`${pole}${n}`)).map((n) => rowOf(poles, i, n));
        const row = more + rows.reduce((sum, one) => sum + one, 0) / rows.length;
        return {
          positions: [position],
          text: String(position),
          centre: at(g(2 + across / 2), g(row)),
        };
      }),
    ),
  };
}

/** Each pole's rail runs from its common past its throws; a bridge closes the contacts of the position drawn. */
export function leverFace(
  { outline, closed }: Seen,
  { pairs, throws }: LeverPoles = TWO_BY_THREE,
): readonly Shape[] {
  const { body } = outline;
  const touching = closed.flat();
  const columns = pairs.flatMap((pair) =>
    pair.map((pole, second) => ({ pole, inward: second === 0 ? 1 : -1 })),
  );
  const poles = columns.flatMap(({ pole, inward }): readonly Shape[] => {
    const edge = inward > 0 ? body.x : body.x + body.width;
    const [contact, rail] = [edge + inward * CONTACT, edge + inward * RAIL];
    const height = (n: number): number => tagCentre(outline, `${pole}${n}`).y;
    const common = height(0);
    const first = Math.min(...throws.map(height));
    const bridged = touching.flatMap((lug) => throws.filter((n) => lug === `${pole}${n}`));
    return [
      conductor(
        2,
        run(at(edge, common), at(rail, common), at(rail, first - RAIL_RISE)),
        ...throws.map((n) => run(at(edge, height(n)), at(contact, height(n)))),
      ),
      ...throws.map(
        (n): Shape => ({ shape: 'circle', role: 'contact', centre: at(contact, height(n)), radius: 4 }),
      ),
      ...bridged.map(
        (n): Shape => ({
          shape: 'path',
          role: 'bridge',
          runs: [run(at(contact, height(n)), at(rail, height(n)))],
          width: 7,
        }),
      ),
    ];
  });
  return [plate(body, 12), ...poles];
}
