import { around, type Point, type Rect } from '../../common/geometry.ts';
import { printQuantity } from '../../common/units.ts';
import type { PartOf } from '../../parts/index.ts';
import { g, type Outline, type Port, type Strap, TYPE, tagPorts } from './outline.ts';

/** Radius of the case. */
export const POT_RADIUS = g(3.5);
export const POT_CENTRE: Point = { x: g(4), y: g(4) };
const LUG_ROW = 8;

/** From the solder side, lugs down, the terminals read 3, 2, 1 from left to right. */
const COLUMNS = [
  ['3', 1],
  ['2', 4],
  ['1', 7],
] as const;

/** How far inside the case's edge a ground wire ends: on the bare rim, clear of the track seen through the case. */
const CASE_INSET = 7;

/** A way onto the case along a grid line: straight in until just inside the edge. */
function casePort(node: Point, inward: Point, price = 0): Port {
  const off = inward.x === 0 ? node.x - POT_CENTRE.x : node.y - POT_CENTRE.y;
  const reach = Math.sqrt(POT_RADIUS ** 2 - off ** 2) - CASE_INSET;
  const spot =
    inward.x === 0
      ? { x: node.x, y: POT_CENTRE.y - inward.y * reach }
      : { x: POT_CENTRE.x - inward.x * reach, y: node.y };
  return { node, inward, spot, price };
}

const caseTag: Rect = around(POT_CENTRE.x, POT_CENTRE.y, 2 * POT_RADIUS, 2 * POT_RADIUS);

/** Ground joints between the lugs are hard to get at with an iron: only where nothing else is left. */
const BETWEEN_LUGS = 500;

/** Spread round the rim so that no two solder joints touch, nor one a lug's stem or strap; between the lugs last. */
const casePorts: readonly Port[] = [
  ...[4, 2, 6, 3, 5].map((x) => casePort({ x: g(x), y: g(0) }, { x: 0, y: 1 })),
  ...[4, 3].map((y) => casePort({ x: g(0), y: g(y) }, { x: 1, y: 0 })),
  ...[4, 3].map((y) => casePort({ x: g(8), y: g(y) }, { x: -1, y: 0 })),
  ...[3, 5].map((x) => casePort({ x: g(x), y: g(LUG_ROW) }, { x: 0, y: -1 }, BETWEEN_LUGS)),
];

/** The strap of a lug bent over onto the case: from its tag straight to the rim. */
function strapOf(tag: Rect): Strap {
  const x = tag.x + tag.width / 2;
  const reach = Math.sqrt(POT_RADIUS ** 2 - (x - POT_CENTRE.x) ** 2);
  return { to: 'case', from: { x, y: tag.y + 1 }, end: { x, y: POT_CENTRE.y + reach - 9 } };
}

const TAPERS = { linear: 'lin', log: 'log', 'reverse-log': 'rev log' } as const;

/** Pot from the solder side: round case above, three lugs below. */
export function potOutline(part: PartOf<'pot'>): Outline {
  return {
    width: g(8),
    height: g(9),
    body: caseTag,
    blocked: [{ x: g(1), y: g(1), width: g(6), height: g(6) }],
    lugs: [
      ...COLUMNS.map(([lug, x]) => {
        const tag = around(g(x), g(LUG_ROW), 18, 20);
        return { lug, tag, ports: tagPorts(tag, x, LUG_ROW, ['down', 'left', 'right']), strap: strapOf(tag) };
      }),
      { lug: 'case', tag: caseTag, ports: casePorts },
    ],
    labels: [
      { text: part.label, centre: { x: POT_CENTRE.x, y: POT_CENTRE.y - 9 }, size: TYPE.name, weight: 'bold' },
      {
        text: `${printQuantity(part.value.value, 'ohm')} ${TAPERS[part.taper.value]}`,
        centre: { x: POT_CENTRE.x, y: POT_CENTRE.y + 8 },
        size: TYPE.value,
        weight: 'regular',
      },
    ],
  };
}
