/** Whether a meter at the jack finds a way from an output to the sleeve, through what is soldered by then. */
import { type Graph, lugId, lugIdOf } from '../circuit/circuit.ts';
import { DisjointSet } from '../circuit/disjoint-set.ts';
import { elementsOf, isPickup, lugsWith, type Part, terminalsOf } from '../parts/index.ts';

/**
 * For every setting of the switches and every output: whether direct current can flow from the output to the sleeve, over the
 * joints given, closed contacts, resistors and tracks; through no capacitor and no pickup. Empty for a kit without a jack.
 */
export function outputReached({ kit, joints, settings }: Graph): readonly boolean[] {
  const parts = kit.parts.filter((part) => !isPickup(part));
  const ends = parts.flatMap(outputsOf);
  return settings.flatMap(({ closedContacts }) => {
    const joined = new DisjointSet();
    for (const { from, to } of joints) joined.join(lugIdOf(from), lugIdOf(to));
    for (const [first, ...others] of closedContacts)
      for (const other of others) joined.join(first ?? other, other);
    for (const part of parts) joinThrough(joined, part);
    return ends.map(([output, sleeve]) => joined.same(output, sleeve));
  });
}

const outputsOf = (part: Part): readonly (readonly [string, string])[] =>
  lugsWith(part, 'sleeve').flatMap((sleeve) =>
    lugsWith(part, 'output').map((output) => [lugId(part.name, output), lugId(part.name, sleeve)] as const),
  );

function joinThrough(joined: DisjointSet, part: Part): void {
  for (const element of elementsOf(part)) {
    if (element.kind === 'capacitance') continue;
    const [first, ...others] = terminalsOf(element).map((name) => lugId(part.name, name));
    for (const other of others) joined.join(first ?? other, other);
  }
}
