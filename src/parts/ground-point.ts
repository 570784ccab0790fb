import { around, at } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import { definePart, type LugSpec, type PartBase, type Seen } from './kind.ts';
import { g, type Outline, TYPE, tagPorts } from './outline.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

type GroundPoint = PartBase<'ground-point'>;

const LUGS = [{ name: '1', role: 'point' }] as const satisfies readonly LugSpec[];

/** A place outside the harness that is grounded: strings, bridge, cavity shield, tag. */
export const groundPoint = definePart({
  kind: 'ground-point',
  what: 'ground point',
  is: ['ground-point'],
  mirrors: true,
  turns: 'quarter',
  fields: {},
  build: (base): GroundPoint => base,
  lugs: LUGS,
  elements: () => [],
  outline: (part) => groundPointOutline(part),
  face: (_, seen) => groundPointFace(seen),
});

function groundPointOutline({ label }: GroundPoint): Outline {
  const text = textWidth(label, TYPE.name, 'bold');
  return { ...lying(label, text), aside: upright(label, text) };
}

function lying(label: string, text: number): Outline {
  const columns = Math.max(5, Math.ceil((text + 46) / g(1)));
  // The plate begins where its lug ends: with paper between them they would look apart.
  const body = { x: g(1) - 4, y: 0, width: g(columns) + 4, height: g(2) };
  const tag = around(g(0) + 2, g(1), 20, 20);
  return {
    width: g(columns + 1),
    height: g(2),
    body,
    blocked: [body],
    lugs: [{ lug: LUGS[0].name, tag, ports: tagPorts(tag, 0, 1, ['left', 'up', 'down']) }],
    labels: [
      {
        text: label,
        centre: { x: body.x + 18 + (body.width - 18) / 2, y: g(1) },
        size: TYPE.name,
        weight: 'bold',
      },
    ],
  };
}

/** Turned by a quarter, before it is turned: its words behind the symbol, across the plate. */
function upright(label: string, text: number): Outline {
  const row = Math.max(2, Math.ceil((text / 2 + 12) / g(1)));
  const body = { x: g(1) - 4, y: 0, width: g(4) + 4, height: g(2 * row) };
  const tag = around(g(0) + 2, g(row), 20, 20);
  return {
    width: g(5),
    height: g(2 * row),
    body,
    blocked: [body],
    lugs: [{ lug: LUGS[0].name, tag, ports: tagPorts(tag, 0, row, ['left', 'up', 'down']) }],
    labels: [{ text: label, centre: { x: body.x + 47, y: g(row) }, size: TYPE.name, weight: 'bold' }],
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
