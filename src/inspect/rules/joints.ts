/** The drawing against its description: the same parts, every lug and name once, the same joints, the same colours. */

import { padCaptions } from '../../annotate/pads.ts';
import { stepsOf } from '../../annotate/steps.ts';
import { lugIdOf } from '../../circuit/circuit.ts';
import { centreOf } from '../../common/geometry.ts';
import type { Kit } from '../../describe/kit.ts';
import { parseDrawingId } from '../../draw/drawing-name.ts';
import type { Language } from '../../messages/language.ts';
import { componentOf, lugsOf, lugsWith, outlineOf, type Part } from '../../parts/index.ts';
import { type Drawing, type DrawnLug, type DrawnPart, wireText } from '../drawing.ts';
import { type Finding, finding } from '../finding.ts';
import type { Solved } from '../solved.ts';
import { inArea } from '../space.ts';
import { wireOf } from './chips.ts';
import { type NamedWire, nameWires, type Pair, pair, pairKey } from './legs.ts';

export function jointFindings(drawing: Drawing, solved: Solved): readonly Finding[] {
  const { kit } = solved.circuit;
  const namesOf = (name: string, of: (part: Part) => readonly string[]): readonly string[] =>
    kit.parts.filter((part) => part.name === name).flatMap(of);
  const legs = new Map(
    drawing.parts.flatMap(({ name, lugs }) => {
      const ends = lugs.filter((lug) => lug.is === 'leg');
      return ends.length > 0
        ? [[name, { ends, names: namesOf(name, (part) => lugsWith(part, 'leg')) }] as const]
        : [];
    }),
  );
  const surfaces = new Map(
    drawing.parts.flatMap(({ name, lugs }) =>
      lugs
        .filter((lug) => lug.is === 'surface')
        .map((lug, i) => [lug, namesOf(name, surfacesOf)[i] ?? `case ${i + 1}`] as const),
    ),
  );
  const described = shownJoints(drawing.id, solved).map(({ from, to }) => pair(lugIdOf(from), lugIdOf(to)));
  const found = nameWires(drawing.wires, legs, surfaces, described);
  return [
    ...partFindings(drawing, solved),
    ...differences(found, described),
    ...colourFindings(drawing, found, kit),
  ];
}

/** A drawing of a step shows the joints made up to then, any other all of them. */
function shownJoints(id: string, { circuit }: Solved): Kit['joints'] {
  const step = parseDrawingId(id, circuit)?.step;
  if (step === undefined) return circuit.joints;
  const made = new Set(stepsOf(circuit).flatMap(({ number, joints }) => (number <= step ? joints : [])));
  return circuit.joints.filter((_, i) => made.has(i));
}

function partFindings({ parts }: Drawing, { circuit, loads }: Solved): readonly Finding[] {
  const { kit } = circuit;
  const captions = padCaptions(circuit, loads);
  return [
    ...parts
      .filter(({ name }) => !kit.parts.some((part) => part.name === name))
      .map(({ name }) => finding('part', undefined, { part: name, what: 'is drawn and not described' })),
    ...kit.parts.flatMap((part) => {
      const drawn = parts.find(({ name }) => name === part.name);
      return drawn
        ? compare(part, drawn, captions.get(part.name), kit.language)
        : [finding('part', undefined, { part: part.name, what: 'is described and not drawn' })];
    }),
  ];
}

/** A part's own lugs, each once, and its label. */
function compare(
  part: Part,
  { lugs, texts }: DrawnPart,
  caption: string | undefined,
  language: Language,
): readonly Finding[] {
  const where = lugs[0] && centreOf(lugs[0].area);
  const say = (what: string): Finding => finding('part', where, { part: part.name, what });
  const wanted = lugsOf(part);
  const { labels: lines, marks = [] } = outlineOf(part, caption, language);
  const labels = [...lines, ...marks].map(({ text }) => text);
  const printed = componentOf(part)?.print;
  const code = printed === undefined ? [] : [printed];
  const cases = surfacesOf(part);
  const legs = wanted.filter(({ role }) => role === 'leg').length;
  const named = wanted
    .filter(({ role, name }) => role !== 'leg' && !cases.includes(name))
    .map(({ name }) => name);
  const drawn = (is: DrawnLug['is']) => lugs.filter((lug) => lug.is === is);
  const ends = drawn('leg').length;
  const surfaces = drawn('surface').length;
  const tags = drawn('tag').map(({ area }) => area);
  const own = texts
    .filter(({ box }) => !tags.some((area) => inArea(area, centreOf(box))))
    // What is printed on the body is painted before the name.
    .sort((a, b) => Number(code.includes(a.words)) - Number(code.includes(b.words)))
    .map(({ words }) => words)
    .join(' ');
  return [
    ...cases.slice(surfaces).map((name) => say(`shows no lug ${name}`)),
    ...(surfaces > cases.length ? [say('shows a case that it has not')] : []),
    ...named
      .filter((name) => !lugs.some((lug) => lug.name === name))
      .map((name) => say(`shows no lug ${name}`)),
    ...lugs
      .flatMap(({ name }) => (name === undefined || named.includes(name) ? [] : [name]))
      .map((name) => say(`shows a lug ${name.slice(0, 40)} that it has not`)),
    ...(ends === legs ? [] : [say(`shows ${ends} legs in place of ${legs}`)]),
    // A long name may stand in several lines, and a long word in several pieces; nothing else may be written.
    ...(packed(own) === packed([...labels, ...code].join(''))
      ? []
      : [say(`has “${own.slice(0, 80)}”; described is “${[...labels, ...code].join(' ').slice(0, 80)}”`)]),
  ];
}

/** Names of lugs that are drawn as a surface, without a name. */
const surfacesOf = (part: Part): readonly string[] =>
  outlineOf(part).lugs.flatMap(({ lug, surface }) => (surface ? [lug] : []));

const packed = (text: string): string => text.replaceAll(' ', '');

/** Joints on one side only. Compared as they are counted: one drawn twice is one too many. */
function differences(named: readonly NamedWire[], described: readonly Pair[]): readonly Finding[] {
  const left = described.map(pairKey);
  const extra = named.filter((one) => {
    const at = left.indexOf(pairKey(one.pair));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  return [
    ...left.map((joint) => finding('joint-missing', undefined, { joint })),
    ...extra.map(({ wire, pair: one }) => finding('joint-extra', wire.points[0], { joint: pairKey(one) })),
  ];
}

/** A colour code on a wire is the one described for that joint. A wire too short for its code has none. */
function colourFindings(
  { chips, wires }: Drawing,
  named: readonly NamedWire[],
  kit: Kit,
): readonly Finding[] {
  return chips.flatMap((chip) => {
    const wire = wireOf(chip, wires);
    const key = named.find((one) => one.wire === wire)?.pair;
    if (!wire || !key) return [];
    const colours = kit.joints
      .filter(({ from, to }) => pairKey(pair(lugIdOf(from), lugIdOf(to))) === pairKey(key))
      .map(({ colour }) => colour);
    if (colours.length === 0 || colours.includes(chip.code)) return [];
    const detail = { joint: wireText(wire), drawn: chip.code, described: colours[0] ?? 'none' };
    return [finding('colour', centreOf(chip.shape.area), detail)];
  });
}
