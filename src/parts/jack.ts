import { at } from '../common/geometry.ts';
import { definePart, type LugSpec, type PartBase, type Seen } from './kind.ts';
import { g, nameLines, type Outline, tagCentre, tagPorts, titleLabels, widestLine } from './outline.ts';
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

const WHAT = 'mono jack';
/** Room that a line of the name has before it is broken. */
const LINE = g(6);

/** Its two lugs on the left; its symbol under its name. */
function jackOutline(part: Jack): Outline {
  const names = nameLines(part.label, LINE);
  const columns = Math.max(7, Math.ceil((widestLine(names, WHAT) + 28) / g(1)));
  const rows = 5 + names.length;
  const body = { x: g(2), y: 0, width: g(columns), height: g(rows) };
  const middle = body.x + body.width / 2;
  return {
    width: g(columns + 2),
    height: g(rows),
    body,
    blocked: [body],
    lugs: LUGS.map(({ name: lug }, i) => {
      const y = i === 0 ? 1 : rows - 2;
      const tag = { x: g(0) - 8, y: g(y) - 10, width: 56, height: 20 };
      return { lug, tag, ports: tagPorts(tag, 0, y, ['left', 'up', 'down']) };
    }),
    labels: titleLabels(names, WHAT, (line) => at(middle + 10, g(1 + line))),
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
