import { at } from '../common/geometry.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { monoFace } from './jack-face.ts';
import { definePart, type LugSpec, type PartBase, type Seen } from './kind.ts';
import { g, nameLines, type Outline, tagCentre, tagPorts, titleLabels, widestLine } from './outline.ts';
import type { Shape } from './shape.ts';

type Jack = PartBase<'jack'>;

const LUGS = [
  { name: 'tip', role: 'output' },
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
  outline: (part, _, language) => jackOutline(part, language),
  face: (_, seen) => jackFace(seen),
});

/** Room that a line of the name has before it is broken. */
const LINE = g(6);

/** Its two lugs on the left; its symbol under its name. */
function jackOutline(part: Jack, language: Language): Outline {
  const what = sayIn(language)('face.mono-jack');
  const names = nameLines(part.label, LINE);
  const columns = Math.max(7, Math.ceil((widestLine(names, what) + 28) / g(1)));
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
    labels: titleLabels(names, what, (line) => at(middle + 10, g(1 + line))),
  };
}

function jackFace({ outline }: Seen): readonly Shape[] {
  const height = ({ name }: { readonly name: string }): number => tagCentre(outline, name).y;
  return monoFace(outline.body, height(TIP), height(SLEEVE));
}
