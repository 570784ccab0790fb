/** What the lever switches of this folder share: two poles, three throws, lugs A0–A3 and B0–B3, and the look. */
import { around, at } from '../common/geometry.ts';
import type { Contact, LugSpec, PartBase, Seen } from './kind.ts';
import { g, nameLines, type Outline, tagCentre, tagPorts, titleLabels, widestLine } from './outline.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

const POLES = ['A', 'B'] as const;
const THROWS = [1, 2, 3] as const;
type LeverLug = `${(typeof POLES)[number]}${0 | (typeof THROWS)[number]}`;

/** Pole letter, then throw number; 0 is the common. */
export const leverLugs: readonly LugSpec<LeverLug>[] = POLES.flatMap((pole) =>
  ([0, ...THROWS] as const).map(
    (n): LugSpec<LeverLug> => ({ name: `${pole}${n}`, role: n === 0 ? 'common' : 'throw', pole }),
  ),
);

/** Contacts from the throws each stop touches, the same on both poles; position 1 first. */
export const leverContacts = (throws: readonly (readonly number[])[]): readonly Contact[] =>
  throws.map((touched, i) => ({
    position: i + 1,
    joins: POLES.map((pole) => [0, ...touched].map((n) => `${pole}${n}`)),
  }));

/** Row of each lug by throw number, grid units; the common stands apart, below. */
const ROWS = { 1: 3, 2: 6, 3: 9, 0: 12 } as const;
/** Column of each pole's lugs. */
const COLUMN_A = 1;

/** Least width of the plate, grid units, and the room that a line of the name leaves free at its edges. */
const LEAST = 6;
const MARGIN = 10;
/** How far inside the plate the throws' contacts and the common's rail lie. */
const CONTACT = 15;
const RAIL = 31;
/** How far the rail reaches past the first throw. */
const RAIL_RISE = 8;

/**
 * Lever switch with two poles: pole A's lugs on the left, pole B's on the right. A long name makes the plate longer, a long word wider.
 *
 * @param what the line below the name: `five-way`
 * @param contacts what each position touches: its number stands between the poles, level with its throws
 */
export function leverOutline(part: PartBase, what: string, contacts: readonly Contact[]): Outline {
  const names = nameLines(part.label, g(LEAST) - MARGIN);
  const across = Math.max(LEAST, Math.ceil((widestLine(names, what) + MARGIN) / g(1)));
  const labels = titleLabels(names, what, (line) => at(g(2 + across / 2), g(0.85 + line)));
  const more = labels.length - 2;
  const height = g(13 + more);
  const body = { x: g(2), y: g(0), width: g(across), height };
  return {
    width: g(across + 4),
    height,
    body,
    blocked: [body],
    lugs: POLES.flatMap((pole) =>
      ([...THROWS, 0] as const).map((n) => {
        const left = pole === 'A';
        const [x, y] = [left ? COLUMN_A : across + 4 - COLUMN_A, ROWS[n] + more];
        const tag = around(g(x) + (left ? 4 : -4), g(y), 26, 20);
        return {
          lug: `${pole}${n}`,
          tag,
          ports: tagPorts(tag, x, y, [left ? 'left' : 'right', 'up', 'down']),
        };
      }),
    ),
    labels,
    marks: contacts.map(({ position, joins }) => {
      const rows = THROWS.filter((n) => joins.flat().includes(`A${n}`)).map((n) => ROWS[n] + more);
      const row = rows.reduce((sum, one) => sum + one, 0) / rows.length;
      return {
        positions: [position],
        text: String(position),
        centre: at(g(2 + across / 2), g(row)),
      };
    }),
  };
}

/** Each pole's rail runs from its common past its throws; a bridge closes the contacts of the position drawn. */
export function leverFace({ outline, closed }: Seen): readonly Shape[] {
  const { body } = outline;
  const touching = closed.flat();
  const poles = POLES.flatMap((pole): readonly Shape[] => {
    const inward = pole === 'A' ? 1 : -1;
    const edge = pole === 'A' ? body.x : body.x + body.width;
    const [contact, rail] = [edge + inward * CONTACT, edge + inward * RAIL];
    const height = (n: keyof typeof ROWS): number => tagCentre(outline, `${pole}${n}`).y;
    const common = height(0);
    const bridged = touching.flatMap((lug) => THROWS.filter((n) => lug === `${pole}${n}`));
    return [
      conductor(
        2,
        run(at(edge, common), at(rail, common), at(rail, height(1) - RAIL_RISE)),
        ...THROWS.map((n) => run(at(edge, height(n)), at(contact, height(n)))),
      ),
      ...THROWS.map(
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
