import { around, at, centreOf, type Rect } from '../common/geometry.ts';
import { nth } from '../common/must.ts';
import { definePart, type LugSpec, type PartBase, type Seen } from './kind.ts';
import { g, nameLabels, nameLines, type Outline, tagPorts, widestLine } from './outline.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

type GroundPoint = PartBase<'ground-point'>;

const LUGS = [{ name: '1', role: 'point' }] as const satisfies readonly LugSpec[];

/**
 * A place outside the harness that is grounded: strings, bridge, cavity shield, tag. An arrangement may turn it by quarters; no search does, as it
 * leaves out `turns`: over 26 kits, free to turn, crossings were 5.7 in the mean instead of 5.3, bends 1.58 a wire instead of 1.52.
 */
export const groundPoint = definePart({
  kind: 'ground-point',
  what: 'ground point',
  is: ['ground-point'],
  mirrors: true,
  fields: {},
  build: (base): GroundPoint => base,
  lugs: LUGS,
  elements: () => [],
  outline: (part) => groundPointOutline(part),
  face: (_, seen) => groundPointFace(seen),
});

/** Room that the name has before it is broken. */
const LINE = g(8);

function groundPointOutline({ label }: GroundPoint): Outline {
  const names = nameLines(label, LINE);
  return { ...lying(names), aside: upright(names) };
}

function lying(names: readonly string[]): Outline {
  // An even number of rows, so that the lug is in the middle and on the grid.
  const rows = 2 * Math.ceil((names.length + 1) / 2);
  const columns = Math.max(5, Math.ceil((widestLine(names) + 46) / g(1)));
  const middle = g(rows / 2);
  // The plate begins where its lug ends: with paper between them they would look apart.
  const body = { x: g(1) - 4, y: 0, width: g(columns) + 4, height: g(rows) };
  const line = (nth: number): number => middle + g(nth - (names.length - 1) / 2);
  return {
    width: g(columns + 1),
    height: g(rows),
    ...plateWithLug(body, rows / 2),
    labels: nameLabels(names, (nth) => at(body.x + 18 + (body.width - 18) / 2, line(nth))),
  };
}

/** Turned by a quarter, before it is turned: its words behind the symbol, across the plate, one line below the other once it is turned. */
function upright(names: readonly string[]): Outline {
  const row = Math.max(2, Math.ceil((widestLine(names) / 2 + 12) / g(1)));
  const more = names.length - 1;
  const body = { x: g(1) - 4, y: 0, width: g(4 + more) + 4, height: g(2 * row) };
  const centre = body.x + 47 + g(more / 2);
  return {
    width: g(5 + more),
    height: g(2 * row),
    ...plateWithLug(body, row),
    labels: nameLabels(names, (nth) => at(centre, g(row) + g(nth - more / 2))),
  };
}

function plateWithLug(body: Rect, row: number): Pick<Outline, 'body' | 'blocked' | 'lugs'> {
  const tag = around(g(0) + 2, g(row), 20, 20);
  return {
    body,
    blocked: [body],
    lugs: [{ lug: LUGS[0].name, tag, ports: tagPorts(tag, 0, row, ['left', 'up', 'down']) }],
  };
}

/** The ground symbol of IEC 60417 (5017). */
function groundPointFace({ outline: { body, lugs } }: Seen): readonly Shape[] {
  const x = body.x + 22;
  // In line with the lug, also where the box has grown to one side.
  const { y } = centreOf(nth(lugs, 0).tag);
  return [
    plate(body, 10),
    conductor(
      1.8,
      run(at(body.x, y), at(x - 4, y)),
      ...[8, 5, 2].map((half, i) => run(at(x - 4 + 4 * i, y - half), at(x - 4 + 4 * i, y + half))),
    ),
  ];
}
