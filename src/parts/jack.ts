import { at } from '../common/geometry.ts';
import { textWidth } from '../common/text.ts';
import { definePart, type LugSpec, type PartBase, type Seen } from './kind.ts';
import { g, type Outline, TYPE, tagCentre, tagPorts } from './outline.ts';
import { conductor, plate, run, type Shape } from './shape.ts';

type Jack = PartBase<'jack'>;

const LUGS = [
  { name: 'tip', role: 'tip' },
  { name: 'sleeve', role: 'sleeve' },
] as const satisfies readonly LugSpec[];
const [TIP, SLEEVE] = LUGS;

/** Mono output jack: tip carries the signal, sleeve is the harness's ground. */
export const jack = definePart({
  kind: 'jack',
  what: 'mono output jack',
  is: ['jack'],
  mirrors: true,
  turns: 'halves',
  fields: {},
  build: (base): Jack => base,
  lugs: LUGS,
  elements: () => [],
  outline: (part) => jackOutline(part),
  face: (_, seen) => jackFace(seen),
});

/** Its two lugs on the left; its symbol under its name. */
function jackOutline(part: Jack): Outline {
  const text = Math.max(textWidth(part.label, TYPE.name, 'bold'), textWidth('mono jack', TYPE.value));
  const columns = Math.max(7, Math.ceil((text + 28) / g(1)));
  const body = { x: g(2), y: 0, width: g(columns), height: g(6) };
  const middle = body.x + body.width / 2;
  return {
    width: g(columns + 2),
    height: g(6),
    body,
    blocked: [body],
    lugs: LUGS.map(({ name: lug }, i) => {
      const y = 1 + 3 * i;
      const tag = { x: g(0) - 8, y: g(y) - 10, width: 56, height: 20 };
      return { lug, tag, ports: tagPorts(tag, 0, y, ['left', 'up', 'down']) };
    }),
    labels: [
      { text: part.label, centre: { x: middle + 10, y: g(1) }, size: TYPE.name, weight: 'bold' },
      { text: 'mono jack', centre: { x: middle + 10, y: g(2) }, size: TYPE.value, weight: 'regular' },
    ],
  };
}

/** The spring that touches the plug's tip, and the bush that holds its sleeve. */
function jackFace({ outline }: Seen): readonly Shape[] {
  const { body } = outline;
  const [tip, sleeve] = [tagCentre(outline, TIP.name).y, tagCentre(outline, SLEEVE.name).y];
  const left = body.x + 34;
  const right = body.x + body.width - 14;
  const axis = sleeve + 2;
  return [
    plate(body, 12),
    conductor(
      2,
      run(
        at(body.x, tip),
        at(body.x + 18, tip),
        at(body.x + 18, axis - 14),
        at(left + 8, axis - 14),
        at(left + 16, axis - 6),
        at(left + 24, axis - 14),
      ),
    ),
    conductor(2, run(at(body.x, sleeve), at(right - 14, sleeve))),
    {
      shape: 'rect',
      role: 'bush',
      rect: { x: right - 16, y: axis - 16, width: 12, height: 32 },
      radius: 2,
    },
  ];
}
