import { around, at } from '../common/geometry.ts';
import { definePart, type LugSpec, type PartBase, type Seen } from './kind.ts';
import { g, nameLabels, nameLines, type Outline, tagPorts, widestLine } from './outline.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

type GroundPoint = PartBase<'ground-point'>;

const LUGS = [{ name: '1', role: 'point' }] as const satisfies readonly LugSpec[];

/** A place outside the harness that is grounded: strings, bridge, cavity shield, tag. */
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

function groundPointOutline(part: GroundPoint): Outline {
  const names = nameLines(part.label, LINE);
  const columns = Math.max(5, Math.ceil((widestLine(names) + 46) / g(1)));
  // An even number, so that the lug is in the middle and on the grid.
  const rows = 2 * Math.ceil((names.length + 1) / 2);
  // The plate begins where its lug ends: with paper between them they would look apart.
  const body = { x: g(1) - 4, y: 0, width: g(columns) + 4, height: g(rows) };
  const middle = rows / 2;
  const tag = around(g(0) + 2, g(middle), 20, 20);
  return {
    width: g(columns + 1),
    height: g(rows),
    body,
    blocked: [body],
    lugs: [{ lug: LUGS[0].name, tag, ports: tagPorts(tag, 0, middle, ['left', 'up', 'down']) }],
    labels: nameLabels(names, (line) =>
      at(body.x + 18 + (body.width - 18) / 2, g(middle + line - (names.length - 1) / 2)),
    ),
  };
}

/** The ground symbol of IEC 60417 (5017). */
function groundPointFace({ outline: { body } }: Seen): readonly Shape[] {
  const x = body.x + 22;
  const y = body.y + body.height / 2;
  return [
    plate(body, 10),
    conductor(
      1.8,
      run(at(body.x, y), at(x - 4, y)),
      ...[8, 5, 2].map((half, i) => run(at(x - 4 + 4 * i, y - half), at(x - 4 + 4 * i, y + half))),
    ),
  ];
}
