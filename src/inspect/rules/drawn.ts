/** What must be right in any drawing, whatever it is of: every wire ends on a lug, every lug has a name, every part its body, in room of its own. */
import { centreOf, overlaps } from '../../common/geometry.ts';
import { type Drawing, type DrawnPart, wireText } from '../drawing.ts';
import { type Finding, finding } from '../finding.ts';
import { type Area, isRound, touchesArea } from '../space.ts';

export function drawnFindings({ wires, parts }: Drawing): readonly Finding[] {
  return [
    ...parts.flatMap((part, i) => parts.slice(i + 1).flatMap((other) => touching(part, other))),
    ...wires.flatMap((wire) =>
      wire.ends.flatMap((end, i) =>
        end
          ? []
          : [
              finding('end-not-on-lug', wire.points[i === 0 ? 0 : wire.points.length - 1], {
                wire: wireText(wire),
              }),
            ],
      ),
    ),
    ...parts.flatMap((part) => [
      ...lugFindings(part),
      ...(part.bodies.length > 0 && !isDoubled(part)
        ? []
        : [
            finding('body', part.lugs[0] && centreOf(part.lugs[0].area), {
              part: part.name,
              count: part.bodies.length,
            }),
          ]),
    ]),
  ];
}

/** Of a part made of two, such as a pot with a switch behind it, the bodies lie apart. */
const isDoubled = ({ bodies }: DrawnPart): boolean =>
  bodies.some(({ outer }, i) => bodies.slice(i + 1).some((other) => overlaps(outer, other.outer)));

const lugFindings = ({ name: part, lugs }: DrawnPart): readonly Finding[] =>
  lugs.flatMap(({ name, area }, i) => {
    const say = (what: string): readonly Finding[] => [finding('lug', centreOf(area), { part, what })];
    if (name === '') return say('has a tag without a name');
    return name !== undefined && lugs.slice(i + 1).some((other) => other.name === name)
      ? say(`has two lugs called ${name.slice(0, 40)}`)
      : [];
  });

/** Two parts with a tag, plate or body of the one over one of the other. */
function touching(part: DrawnPart, other: DrawnPart): readonly Finding[] {
  const areas = ({ lugs, bodies }: DrawnPart): readonly Area[] =>
    [...lugs, ...bodies].map(({ area }) => area);
  const hit = areas(part).find((a) =>
    areas(other).some((b) => (isRound(b) ? touchesArea(b, a) : touchesArea(a, b))),
  );
  return hit ? [finding('parts-touch', centreOf(hit), { part: part.name, other: other.name })] : [];
}
