/** Kits with one mistake at a bench: a joint forgotten, or one end of it on the lug beside the right one. */
import { readMeter, type StateReadings, solveLoads } from '../../src/analyse/index.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { type Circuit, lugId } from '../../src/circuit/circuit.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { type End, type Joint, type Kit, partNamed } from '../../src/describe/kit.ts';
import { valueSource } from '../../src/describe/source.ts';
import { elementsLike, elementsOf, lugsOf, terminalsOf } from '../../src/parts/index.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { findErrors } from '../../src/solve/errors.ts';

export interface Mistake {
  readonly what: string;
  readonly kit: Kit;
}

const words = ({ from, to }: Pick<Joint, 'from' | 'to'>): string =>
  `${lugId(from.part, from.lug)} > ${lugId(to.part, to.lug)}`;

/** Lugs before and after one, in the order in which the part has them. */
function neighbours(kit: Kit, { part, lug }: End): readonly End[] {
  const names = lugsOf(partNamed(kit, part)).map(({ name }) => name);
  const at = names.indexOf(lug);
  return [names[at - 1], names[at + 1]].flatMap((name) => (name === undefined ? [] : [{ part, lug: name }]));
}

/** Every mistake of the two kinds, one at a time. */
export const mistakes = (kit: Kit): readonly Mistake[] =>
  kit.joints.flatMap((joint, i) => [
    { what: `without ${words(joint)}`, kit: { ...kit, joints: kit.joints.filter((one) => one !== joint) } },
    ...(['from', 'to'] as const).flatMap((end) =>
      neighbours(kit, joint[end]).map((lug) => {
        const moved = { ...joint, [end]: lug };
        return {
          what: `${words(joint)} as ${words(moved)}`,
          kit: { ...kit, joints: kit.joints.map((one, k) => (k === i ? moved : one)) },
        };
      }),
    ),
  ]);

/** What the program says of a kit: its errors, or its warnings with all that it solves. */
interface Told {
  readonly errors: number;
  /** From what is found fastest to what takes longest; absent of a kit with an error. */
  readonly solved: readonly (() => string)[];
  /** From each joined lug to ground, volume on 10 and on 0, pickups disconnected and connected. */
  readonly lugs: () => ReadonlyMap<string, string>;
}

export function tell(kit: Kit): Told {
  const errors = findErrors(kit).length;
  const circuit = (): Circuit => buildCircuit(kit);
  return {
    errors,
    solved:
      errors > 0
        ? []
        : [
            () =>
              JSON.stringify(
                circuit().states.map(({ sounding, coils, shorted }) => [sounding, coils, shorted]),
              ),
            () =>
              figures(
                readMeter(circuit()).map(({ volumeFull, volumeZero }) => [volumeFull.jack, volumeZero.jack]),
              ),
            () =>
              figures(
                solveLoads(circuit()).map(({ output, silentTogether, pickups }) => [
                  output,
                  silentTogether,
                  pickups.map(({ dcLoad, signalLoad, total, level, series, outOfPhase }) => [
                    dcLoad,
                    signalLoad,
                    total,
                    level,
                    series,
                    outOfPhase,
                  ]),
                ]),
              ),
            () => warnings(circuit()),
          ],
    lugs: () => lugReadings(errors > 0 ? [] : readMeter(circuit())),
  };
}

function lugReadings(states: readonly StateReadings[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { index, volumeFull, volumeZero } of states)
    for (const [volume, { lugs }] of Object.entries({ volumeFull, volumeZero }))
      for (const { lugs: names, disconnected, connected } of lugs)
        for (const name of names) found.set(`${index} ${volume} ${name}`, figures([disconnected, connected]));
  return found;
}

/** Six digits: what a change of the order of nodes leaves of a figure is less. */
const figures = (value: unknown): string =>
  JSON.stringify(value, (_, one: unknown) =>
    typeof one === 'number' ? Number(one.toPrecision(6)) || 0 : one,
  );

const warnings = (circuit: Circuit): string =>
  JSON.stringify(
    toDiagnostics(notesOf(circuit, solveLoads(circuit)), valueSource('kit'))
      .filter(({ severity }) => severity !== 'note')
      .map(({ code, message }) => [code, message]),
  );

/** Whether the program notices: an error, or anything else than of the right kit. */
export function notices(mistake: Kit, right: Told): boolean {
  const { errors, solved, lugs } = tell(mistake);
  if (errors > right.errors || solved.some((say, i) => say() !== right.solved[i]?.())) return true;
  // A lug that has lost its only joint has no reading: that alone is not counted as noticed.
  const wanted = right.lugs();
  return [...lugs()].some(([lug, reading]) => wanted.has(lug) && wanted.get(lug) !== reading);
}

/**
 * What a kit is electrically, said without solving: in every setting, which ends of elements, lugs of the jack, cases and grounded
 * metal hold together. Two kits of the same words are one circuit, and no meter tells them apart.
 *
 * @param at10 with all controls on 10, where the wiper of each pot is at its clockwise end
 */
export function electrically(kit: Kit, at10 = false): string {
  const circuit = buildCircuit(kit);
  const ends = kit.parts.flatMap((part) => [
    ...elementsOf(part).flatMap((element) => terminalsOf(element).map((name) => lugId(part.name, name))),
    ...lugsOf(part).flatMap(({ name, role }) =>
      ['output', 'sleeve', 'case', 'point'].includes(role) ? [lugId(part.name, name)] : [],
    ),
  ]);
  return circuit.settings
    .map(({ closedContacts }) => {
      const group = new Map<string, string>();
      const of = (id: string): string => group.get(id) ?? id;
      const join = (a: string, b: string): void => {
        const [kept, gone] = [of(a), of(b)];
        if (kept === gone) return;
        for (const [id, root] of group) if (root === gone) group.set(id, kept);
        group.set(gone, kept).set(b, kept);
      };
      for (const { from, to } of kit.joints) join(lugId(from.part, from.lug), lugId(to.part, to.lug));
      for (const [first, ...others] of closedContacts)
        for (const other of others) join(first ?? other, other);
      for (const part of at10 ? kit.parts : [])
        for (const { wiper, clockwise } of elementsLike(part, 'track'))
          join(lugId(part.name, wiper), lugId(part.name, clockwise));
      const names = new Map<string, number>();
      return ends
        .map((id) => {
          const number = names.get(of(id)) ?? names.size;
          names.set(of(id), number);
          return number;
        })
        .join(' ');
    })
    .join('; ');
}
