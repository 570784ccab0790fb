import { at } from '../common/geometry.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { axisAt, monoFace } from './jack-face.ts';
import { definePart, type LugSpec, type PartBase, type Seen } from './kind.ts';
import { g, nameLines, type Outline, tagCentre, tagPorts, titleLabels, widestLine } from './outline.ts';
import { conductor, run, type Shape } from './shape.ts';

type StereoJack = PartBase<'stereo-jack'>;

const LUGS = [
  { name: 'tip', role: 'output' },
  { name: 'ring', role: 'output' },
  { name: 'sleeve', role: 'sleeve' },
] as const satisfies readonly LugSpec[];
const [TIP, RING, SLEEVE] = LUGS;

/** Stereo output jack: tip and ring carry a signal each, sleeve is the harness's ground. */
export const stereoJack = definePart({
  kind: 'stereo-jack',
  what: 'stereo output jack',
  is: ['jack'],
  mirrors: false,
  turns: 'halves',
  fields: {},
  build: (base): StereoJack => base,
  lugs: LUGS,
  elements: () => [],
  outline: (part, _, language) => stereoOutline(part, language),
  face: (_, seen) => stereoFace(seen),
});

/** Room that a line of the name has before it is broken. */
const LINE = g(7);

/** Tip and sleeve on the left as on a mono jack, the ring on the right, so that no spring crosses another. */
function stereoOutline(part: StereoJack, language: Language): Outline {
  const what = sayIn(language)('face.stereo-jack');
  const names = nameLines(part.label, LINE);
  const columns = Math.max(8, Math.ceil((widestLine(names, what) + 28) / g(1)));
  const rows = 7 + names.length;
  const body = { x: g(2), y: 0, width: g(columns), height: g(rows) };
  const width = g(columns + 4);
  const left = (lug: string, y: number) => {
    const tag = { x: g(0) - 8, y: g(y) - 10, width: 56, height: 20 };
    return { lug, tag, ports: tagPorts(tag, 0, y, ['left', 'up', 'down']) };
  };
  const ring = { x: width - 48, y: g(rows - 4) - 10, width: 56, height: 20 };
  return {
    width,
    height: g(rows),
    body,
    blocked: [body],
    lugs: [
      left(TIP.name, 1),
      { lug: RING.name, tag: ring, ports: tagPorts(ring, columns + 4, rows - 4, ['right', 'up', 'down']) },
      left(SLEEVE.name, rows - 2),
    ],
    labels: titleLabels(names, what, (line) => at(body.x + body.width / 2 + 10, g(1 + line))),
  };
}

/** As a mono jack, and the spring that touches the plug's ring: between the tip's and the bush. */
function stereoFace({ outline }: Seen): readonly Shape[] {
  const { body } = outline;
  const height = ({ name }: { readonly name: string }): number => tagCentre(outline, name).y;
  const [ring, sleeve] = [height(RING), height(SLEEVE)];
  const right = body.x + body.width;
  const spring = axisAt(sleeve) - 14;
  return [
    ...monoFace(body, height(TIP), sleeve),
    conductor(
      2,
      run(
        at(right, ring),
        at(right - 36, ring),
        at(right - 36, spring),
        at(right - 44, spring + 8),
        at(right - 52, spring),
      ),
    ),
  ];
}
