/**
 * The plate of a switch that a kit describes: with the lever's lugs it is the lever, and with any lugs each is where a person
 * would look for it.
 */
import { describe, expect, it } from 'vitest';
import { PITCH, type Rect } from '../../src/common/geometry.ts';
import { seeded } from '../../src/common/random.ts';
import { textWidth } from '../../src/common/text.ts';
import { blockFace, blockOutline, type Columns } from '../../src/parts/block.ts';
import type { Contact } from '../../src/parts/kind.ts';
import { leverContacts, leverFace, leverOutline } from '../../src/parts/lever.ts';
import type { Outline } from '../../src/parts/outline.ts';
import type { Shape } from '../../src/parts/shape.ts';

/** The lever's lugs in the order it has them, under names as short as the lever's tags are narrow. */
const SHORT = new Map(['A1', 'A2', 'A3', 'A0', 'B1', 'B2', 'B3', 'B0'].map((lug, i) => [lug, `${i + 1}`]));
const short = (lug: string): string => SHORT.get(lug) ?? lug;
const LEVER: Columns = { left: ['1', '2', '3', '4'], right: ['5', '6', '7', '8'] };
const CONTACTS = leverContacts([[1], [1, 2], [2], [2, 3], [3]]);
const SHORT_CONTACTS = CONTACTS.map((one) => ({ ...one, joins: one.joins.map((group) => group.map(short)) }));
const lever = (label: string): Outline =>
  leverOutline({ kind: 'lever-5', name: 'x', label }, 'five-way', CONTACTS);
const block = (
  label: string,
  columns: Columns = LEVER,
  contacts: readonly Contact[] = SHORT_CONTACTS,
): Outline => blockOutline(label, 'five-way', columns, contacts, 'en');

/** Everything in a value that has a height, a grid step lower; a direction has none. */
const down = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map(down)
    : value === null || typeof value !== 'object'
      ? value
      : Object.fromEntries(
          Object.entries(value).map(([key, one]) => [
            key,
            key === 'y' ? one + PITCH : key === 'inward' ? one : down(one),
          ]),
        );

const middleOf = ({ x, y, width, height }: Rect) => ({ x: x + width / 2, y: y + height / 2 });
const pathsOf = (shapes: readonly Shape[], role: string) =>
  shapes.flatMap((shape) => (shape.shape === 'path' && shape.role === role ? [shape] : []));
const circlesOf = (shapes: readonly Shape[]) =>
  shapes.flatMap((shape) => (shape.shape === 'circle' ? [shape] : []));

describe('with the lugs of a lever', () => {
  it.each(['Selector', 'Tone', 'Selector of the three pickups', 'M'.repeat(24)])(
    '“%s” is as large as the lever and a step for its marks, its lugs and its words are where the lever has them',
    (label) => {
      const { lugs, marks: _, body, ...rest } = lever(label);
      const plate = { ...body, height: body.height + PITCH };
      const renamed = lugs.map((one) => ({ ...(down(one) as typeof one), lug: short(one.lug) }));
      const { marks, ...own } = block(label);
      expect(own).toEqual({
        ...rest,
        height: rest.height + PITCH,
        body: plate,
        blocked: [plate],
        lugs: renamed,
      });
      expect(marks).toHaveLength(6);
    },
  );

  it('its plate, its contacts and what closes them look as the lever’s do', () => {
    for (const { joins } of CONTACTS) {
      const outline = block('Selector');
      const own = blockFace(LEVER, { outline, closed: joins.map((group) => group.map(short)) });
      const other = leverFace({ outline: lever('Selector'), closed: joins });
      expect(own[0]).toEqual({ ...other[0], rect: { ...outline.body } });
      // The lever's common has no contact: it is the rail itself.
      const commons = new Set(
        outline.lugs.filter(({ lug }) => lug === short('A0')).map(({ tag }) => middleOf(tag).y),
      );
      const byPlace = (a: Shape, b: Shape): number => JSON.stringify(a).localeCompare(JSON.stringify(b));
      expect(
        circlesOf(own)
          .filter(({ centre }) => !commons.has(centre.y))
          .sort(byPlace),
      ).toEqual(
        circlesOf(other)
          .map((circle) => down(circle) as typeof circle)
          .sort(byPlace),
      );
      const [conductor] = pathsOf(own, 'conductor');
      expect(conductor?.width).toBe(pathsOf(other, 'conductor')[0]?.width);
      const throws = (shapes: readonly Shape[]) => pathsOf(shapes, 'bridge')[0]?.width;
      expect(throws(own)).toBe(throws(other));
      // The first way from contact to contact runs where the lever has its rail.
      const rail = Math.max(
        ...(pathsOf(other, 'bridge')[0]
          ?.runs.flat()
          .map(({ to }) => to.x) ?? []),
      );
      const [lane] = pathsOf(own, 'bridge')[0]?.runs ?? [];
      expect(lane?.map(({ to }) => to.x)).toEqual([rail, rail]);
    }
  });
});

const random = seeded(60511);
const upTo = (most: number): number => Math.floor(random() * (most + 1));

/** Lugs with names of one to six letters, in up to eight rows, and groups of them that touch. */
function anySwitch() {
  const names = Array.from({ length: 2 + upTo(12) }, (_, i) => `${'MiWajx'.slice(0, upTo(5))}${i}`);
  const left = names.slice(0, 1 + upTo(names.length - 1));
  const columns: Columns = { left, right: names.slice(left.length) };
  const shuffled = [...names].map((name) => ({ name, key: random() })).sort((a, b) => a.key - b.key);
  const closed: string[][] = [];
  for (let rest = shuffled.map(({ name }) => name); rest.length > 1; ) {
    const size = 2 + upTo(2);
    if (random() < 0.8 && rest.length >= size) closed.push(rest.slice(0, size));
    rest = rest.slice(size);
  }
  return { columns, closed };
}
const SWITCHES = Array.from({ length: 60 }, anySwitch);

describe('with any lugs', () => {
  it('each column stands at its edge, a lug every three grid steps, wide enough for every name of it', () => {
    for (const { columns, closed } of SWITCHES) {
      const outline = block('S', columns, [{ position: 1, joins: closed }]);
      const { body, lugs } = outline;
      expect(lugs.map(({ lug }) => lug)).toEqual([...columns.left, ...columns.right]);
      for (const [side, names] of Object.entries(columns)) {
        const tags = lugs.filter(({ lug }) => names.includes(lug)).map(({ tag }) => tag);
        const widest = Math.max(0, ...names.map((name: string) => textWidth(name, 12, 'bold')));
        tags.forEach((tag, i) => {
          // One unit under the plate's edge, so that no gap shows; all of a column alike, as narrow as the grid lets them be.
          expect(side === 'left' ? tag.x + tag.width - body.x : body.x + body.width - tag.x).toBe(1);
          expect(tag.width).toBe(tags[0]?.width);
          expect(tag.width).toBeGreaterThanOrEqual(Math.max(26, widest + 10));
          expect(tag.width).toBeLessThan(Math.max(26 + 1e-9, widest + 10 + PITCH));
          expect(tag.height).toBe(20);
          expect(middleOf(tag).y).toBe((4 + 3 * i) * PITCH);
        });
        // The plate stands in by as much as the lugs stick out, and no further than the grid asks.
        const inset = side === 'left' ? body.x : outline.width - body.x - body.width;
        const out = tags[0] === undefined ? 0 : tags[0].width - 1;
        expect(inset % PITCH).toBe(0);
        expect(inset).toBeGreaterThan(out);
        expect(inset).toBeLessThanOrEqual(out + 6 + PITCH);
      }
      expect(outline.height).toBe(
        (5 + 3 * (Math.max(columns.left.length, columns.right.length) - 1)) * PITCH,
      );
      expect([body.y, body.height, outline.blocked]).toEqual([0, outline.height, [body]]);
      // Six grid steps are enough for three ways across; each further one takes a step more.
      expect(body.width).toBe(Math.max(6, 3 + closed.length) * PITCH);
      for (const { centre } of outline.labels) expect(centre.x).toBe(body.x + body.width / 2);
    }
  });

  it('a wire arrives from the side, from above or from below, at the grid line of its lug', () => {
    for (const { columns, closed } of SWITCHES) {
      const { lugs } = block('S', columns, [{ position: 1, joins: closed }]);
      for (const { lug, tag, ports } of lugs) {
        const out = columns.left.includes(lug) ? -1 : 1;
        expect(ports.map(({ inward }) => inward)).toEqual([
          { x: -out, y: 0 },
          { x: 0, y: 1 },
          { x: 0, y: -1 },
        ]);
        // The column is on the tag, near its outer end, so that a wire from above does not pass along the plate.
        const column = ports[1]?.node.x ?? Number.NaN;
        const outer = out < 0 ? tag.x : tag.x + tag.width;
        expect((outer - column) * out).toBeGreaterThanOrEqual(0);
        expect((outer - column) * out).toBeLessThan(PITCH);
        expect(ports[0]?.node).toEqual({ x: column + out * PITCH, y: middleOf(tag).y });
      }
    }
  });
});

/** Straight pieces of runs, each with its smaller end first. */
interface Piece {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}
const piecesOf = (
  runs: readonly (readonly { readonly to: { x: number; y: number } }[])[],
): readonly Piece[] =>
  runs.flatMap((run) =>
    run.slice(1).map(({ to }, i): Piece => {
      const from = run[i]?.to ?? to;
      return {
        x0: Math.min(from.x, to.x),
        y0: Math.min(from.y, to.y),
        x1: Math.max(from.x, to.x),
        y1: Math.max(from.y, to.y),
      };
    }),
  );
const meet = (a: Piece, b: Piece): boolean => a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1;
/** Along one line, for more than a point. */
const overlap = (a: Piece, b: Piece): boolean =>
  meet(a, b) &&
  Math.max(Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0), Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0)) > 0
    ? (a.x0 === a.x1) === (b.x0 === b.x1)
    : false;

describe('what is closed', () => {
  it('a contact across from one of another group is reached from just below it', () => {
    const columns: Columns = { left: ['a', 'b'], right: ['c', 'd'] };
    for (const [closed, dips] of [
      [
        [
          ['c', 'd'],
          ['a', 'b'],
        ],
        true,
      ],
      [
        [
          ['a', 'b'],
          ['c', 'd'],
        ],
        false,
      ],
      [
        [
          ['a', 'c'],
          ['b', 'd'],
        ],
        false,
      ],
    ] as const) {
      const outline = block('S', columns, [{ position: 1, joins: closed }]);
      const face = blockFace(columns, { outline, closed });
      const [at] = circlesOf(face).slice(2);
      const ways = pathsOf(face, 'bridge').flatMap(({ runs }) => runs);
      const way = ways.find(([from]) => from?.to.x === at?.centre.x && from?.to.y === at?.centre.y) ?? [];
      const { x = 0, y = 0 } = at?.centre ?? {};
      expect(way.some((step) => step.to.y === y + PITCH)).toBe(dips);
      expect(way.some((step) => step.to.x === x - 10)).toBe(dips);
      if (!dips) expect(way.every((step) => step.to.y === y)).toBe(true);
    }
  });

  it('is drawn from contact to contact of its group, in one piece, and lies along no other group', () => {
    for (const { columns, closed } of SWITCHES) {
      const outline = block('S', columns, [{ position: 1, joins: closed }]);
      const { body } = outline;
      const face = blockFace(columns, { outline, closed });
      const contacts = circlesOf(face);
      const all = [...columns.left, ...columns.right];
      expect(contacts).toHaveLength(all.length);
      all.forEach((lug, i) => {
        const tag = outline.lugs.find((one) => one.lug === lug)?.tag;
        const x = columns.left.includes(lug) ? body.x + 15 : body.x + body.width - 15;
        expect(contacts[i]?.centre).toEqual({ x, y: tag && middleOf(tag).y });
      });
      const bridges = pathsOf(face, 'bridge');
      expect(bridges).toHaveLength(closed.length);
      bridges.forEach(({ runs, width }, i) => {
        const pieces = piecesOf(runs);
        const reached = all.filter((_, k) => {
          const at = contacts[k]?.centre ?? { x: -1, y: -1 };
          return runs.flat().some(({ to }) => to.x === at.x && to.y === at.y);
        });
        expect(reached).toEqual(all.filter((lug) => closed[i]?.includes(lug)));
        // In one piece: from the first, everything is reached.
        const found = new Set(pieces.slice(0, 1));
        for (let before = 0; before !== found.size; ) {
          before = found.size;
          for (const piece of pieces) if ([...found].some((one) => meet(one, piece))) found.add(piece);
        }
        expect(found.size).toBe(pieces.length);
        for (const { x0, x1, y0, y1 } of pieces) {
          expect(x0).toBeGreaterThanOrEqual(body.x + 15);
          expect(x1).toBeLessThanOrEqual(body.x + body.width - 15);
          expect(y1).toBeLessThanOrEqual(outline.height);
          expect(y0 === y1 || x0 === x1).toBe(true);
        }
        bridges.slice(i + 1).forEach((other) => {
          for (const a of pieces)
            for (const b of piecesOf(other.runs)) expect(overlap(a, b), JSON.stringify([a, b])).toBe(false);
        });
        // Over what lies below there is room on either side of it; nothing lies below the first.
        const clearance = face[face.indexOf(bridges[i] as Shape) - 1];
        if (i === 0) expect(clearance).toMatchObject({ role: 'plate' });
        else expect(clearance).toEqual({ shape: 'path', role: 'clearance', runs, width: width + 6 });
      });
      // The contacts lie over all of it, each joined to its edge of the plate.
      expect(face.slice(-contacts.length - 1)).toEqual([...pathsOf(face, 'conductor'), ...contacts]);
      expect(pathsOf(face, 'conductor')[0]?.runs).toEqual(
        contacts.map(({ centre: to }) => [
          { to: { x: to.x === body.x + 15 ? body.x : body.x + body.width, y: to.y } },
          { to },
        ]),
      );
    }
  });
});
