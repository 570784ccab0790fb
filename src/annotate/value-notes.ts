/** Values that no passive guitar has, values that do not belong together, and values that are not in stock or not made as standard. */
import { type Problem, problem } from '../common/problem.ts';
import { nearestAvailable } from '../common/series.ts';
import { formatQuantity, writeQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';
import { controlsOf, elementsOf, is, isPickup, resistorOf, usualValuesOf } from '../parts/index.ts';
import type { TrackLaw, UsualValue } from '../parts/kind.ts';

export const valueNotes = (kit: Kit): readonly Problem[] => [
  ...assumedNotes(kit),
  ...stockWarnings(kit),
  ...inductanceWarnings(kit),
  ...seriesNotes(kit),
  ...kit.parts.flatMap((part) =>
    usualValuesOf(part).flatMap((usual) => unlikely(['parts', part.name, ...usual.field.split('.')], usual)),
  ),
];

/** The fields of a pickup that figures hang on. */
const WINDING = ['resistance', 'inductance', 'capacitance'] as const;

/** One note on all values that are not written and that a figure of the kit hangs on. A tolerance is no such value: it widens limits. */
function assumedNotes({ parts }: Kit): readonly Problem[] {
  const groups = new Map<string, { fields: readonly string[]; parts: string[] }>();
  const add = (name: string, fields: readonly string[]): void => {
    if (fields.length === 0) return;
    const group = groups.get(fields.join()) ?? { fields, parts: [] };
    if (!group.parts.includes(name)) group.parts.push(name);
    groups.set(fields.join(), group);
  };
  for (const part of parts) {
    if (isPickup(part))
      add(
        part.name,
        WINDING.filter((field) => part[field].from === 'default'),
      );
    // The halves of a blend are what the kind is, and not an assumption.
    for (const { id, tracks } of controlsOf(part))
      if (tracks.some(({ taper }) => taper.from === 'default' && isTaper(taper.value))) add(id, ['taper']);
  }
  return groups.size === 0
    ? []
    : [problem('values-assumed', ['parts'], { groups: [...groups.values()] }, 'key')];
}

const isTaper = (law: TrackLaw): boolean => law !== 'lower-half' && law !== 'upper-half';

/** A winding whose resistance is this much off the usual one hardly has the usual inductance (common practice, no source). */
const WINDING_OFF = 0.3;

/**
 * Pickups of which the resistance is given and the inductance is not, where the two do not belong together. With the same wire
 * resistance goes with the turns and inductance with their square (Kuphaldt, Lessons in Electric Circuits I, ch. 12 and 15).
 */
const inductanceWarnings = ({ parts }: Kit): readonly Problem[] =>
  parts.filter(isPickup).flatMap(({ name, resistance, inductance, usualResistance }) => {
    const share = resistance.value / usualResistance;
    if (resistance.from !== 'given' || inductance.from !== 'default' || Math.abs(share - 1) <= WINDING_OFF)
      return [];
    return [
      problem('inductance-assumed', ['parts', name, 'resistance'], {
        part: name,
        resistance: formatQuantity(resistance.value, 'ohm'),
        inductance: formatQuantity(inductance.value, 'henry'),
        usual: formatQuantity(usualResistance, 'ohm'),
        scaled: formatQuantity(inductance.value * share ** 2, 'henry', 2),
      }),
    ];
  });

/** Resistors of a value that the kit's own stock has not. */
const stockWarnings = ({ parts, stock }: Kit): readonly Problem[] =>
  parts.flatMap((part) => {
    const ohms = resistorOf(part)?.ohms.value;
    if (stock === undefined || ohms === undefined || stock.includes(ohms)) return [];
    return [
      problem('not-in-stock', ['parts', part.name, 'value'], {
        part: part.name,
        got: writeQuantity(ohms, 'ohm'),
        stock: [...stock].sort((a, b) => a - b).map((value) => writeQuantity(value, 'ohm')),
      }),
    ];
  });

/** Resistors and capacitors of a value that is not made as standard: in neither E24 nor E96 (IEC 60063), nor in stock. */
const seriesNotes = ({ parts, stock = [] }: Kit): readonly Problem[] =>
  parts.flatMap((part) => {
    const [element, ...more] = is(part, 'component') ? elementsOf(part) : [];
    // What the parts list has is made by somebody.
    if (part.code !== undefined) return [];
    if (more.length > 0 || (element?.kind !== 'resistance' && element?.kind !== 'capacitance')) return [];
    const [value, unit] =
      element.kind === 'resistance'
        ? ([element.ohms.value, 'ohm'] as const)
        : ([element.farads.value, 'farad'] as const);
    const near = nearestAvailable(value, 'E24')?.value ?? value;
    const fine = nearestAvailable(value, 'E96')?.value ?? value;
    const isMade = [near, fine, ...stock].some((one) => Math.abs(one / value - 1) < SAME);
    return isMade
      ? []
      : [
          problem('not-preferred', ['parts', part.name, 'value'], {
            part: part.name,
            got: writeQuantity(value, unit),
            nearest: writeQuantity(near, unit),
          }),
        ];
  });

/** What rounding leaves of a written value. */
const SAME = 1e-9;

function unlikely(
  path: readonly string[],
  { what, value, unit, least, most }: UsualValue,
): readonly Problem[] {
  if (value >= least && value <= most) return [];
  // A prefix forgotten, or one too many.
  const likely = [1e3, 1e6, 1e-3, 1e-6].map((f) => value * f).find((v) => v >= least && v <= most);
  return [
    problem('unusual-value', path, {
      what,
      got: formatQuantity(value, unit),
      least: formatQuantity(least, unit),
      most: formatQuantity(most, unit),
      unit,
      ...(likely === undefined ? {} : { likely: writeQuantity(Number(likely.toPrecision(12)), unit) }),
    }),
  ];
}
