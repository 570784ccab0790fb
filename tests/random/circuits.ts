/**
 * Random kits that a workshop might sell: two or three pickups into a lever or none, a volume, up to two tones, padding
 * resistors, treble bleeds, screens, colours, sleeves and bends. Each is a description as a person would write it, so
 * it goes through the reader and the error checks like any other.
 */
import fc from 'fast-check';

type Lever = 'lever-3' | 'lever-5';
type Written = Readonly<Record<string, unknown>>;
export interface Description extends Written {
  readonly kit: string;
  readonly title: string;
  readonly parts: Readonly<Record<string, Written>>;
  readonly joints: readonly Written[];
}

const NAMES = ['neck', 'middle', 'bridge'] as const;
const LABELS = [
  'Pickup',
  'Gj',
  'Bridge pickup (reversed)',
  'Äußerer Tonabnehmer',
  'Q, 2nd coil/top',
  'Nº 1',
  'Wide label for one part',
];
/** Single codes and pairs of IEC 60757. */
const COLOURS = ['BK', 'RD', 'OG', 'YE', 'GN', 'BU', 'VT', 'WH', 'GNYE', 'RDBU', 'BKWH', 'GYPK'];

const label = fc.option(fc.constantFrom(...LABELS), { nil: undefined, freq: 3 });
const pickup = fc.record({ kind: fc.constantFrom('single-coil', 'humbucker'), label });
const pot = fc.record({
  kind: fc.constant('pot'),
  value: fc.constantFrom('100k', '250k', '333k', '500k', '1M'),
  taper: fc.constantFrom('linear', 'log', 'reverse-log'),
  label,
});
const resistor = fc.record({
  kind: fc.constant('resistor'),
  value: fc.constantFrom('1k', '47k', '150k', '237k', '470k', '2.2M'),
  tolerance: fc.constantFrom('1%', '5%'),
  label,
});
const capacitor = fc.record({
  kind: fc.constant('capacitor'),
  value: fc.constantFrom('180p', '680p', '1.2n', '22n', '47n', '0.1u'),
  label,
});
const sleeving = fc.constantFrom(undefined, 1, 2, 'both');

const choices = fc.record({
  pickups: fc.array(pickup, { minLength: 2, maxLength: 3 }),
  selector: label,
  lever: fc.constantFrom<(Lever | undefined)[]>('lever-3', 'lever-5', undefined),
  volume: pot,
  tones: fc.array(fc.record({ pot, capacitor, sleeving }), { maxLength: 2 }),
  /** Tones from the switch's second pole, where there is one to spare. */
  switched: fc.boolean(),
  /** A pad for each pickup that has one. */
  pads: fc.tuple(
    ...NAMES.map(() => fc.option(fc.record({ resistor, sleeving }), { nil: undefined, freq: 2 })),
  ),
  bleed: fc.constantFrom('none', 'capacitor', 'parallel', 'series'),
  bleedParts: fc.record({ resistor, capacitor }),
  bent: fc.boolean(),
  braided: fc.boolean(),
  strings: fc.boolean(),
  colours: fc.array(fc.option(fc.constantFrom(...COLOURS), { nil: undefined, freq: 3 }), {
    minLength: 24,
    maxLength: 24,
  }),
  /** In which order the joints are written; it breaks ties in placing. */
  reversed: fc.boolean(),
});
type Choices = typeof choices extends fc.Arbitrary<infer T> ? T : never;

/** Lugs that hold together. */
type Net = string[];
/** How many joints a lug has room for: a tag has three sides, a pot's case a long rim. */
const TAG = 3;
const CASE = 8;

class Harness {
  readonly joints: Written[] = [];
  readonly #colours: readonly (string | undefined)[];
  readonly #taken = new Map<string, number>();

  constructor(colours: readonly (string | undefined)[]) {
    this.#colours = colours;
  }

  join(kind: string, from: string, to: string): void {
    const colour = this.#colours[this.joints.length % this.#colours.length];
    this.joints.push({
      [kind]: `${from} > ${to}`,
      ...(kind === 'wire' && colour !== undefined ? { colour } : {}),
    });
    for (const lug of [from, to]) this.#taken.set(lug, (this.#taken.get(lug) ?? 0) + 1);
  }

  /** Joins a lug to the first of a net that has room, and makes it one of them. */
  add(net: Net, lug: string, kind?: string): void {
    const room = (one: string): boolean => (this.#taken.get(one) ?? 0) < (one.endsWith('.case') ? CASE : TAG);
    const at = net.find(room);
    if (at === undefined) throw new Error(`no room left for ${lug}`);
    const own = at.split('.')[0] === lug.split('.')[0];
    this.join(kind ?? (own ? 'jumper' : 'wire'), lug, at);
    net.push(lug);
  }

  /** Links a lug to another of its part that is in the net already. */
  link(net: Net, lug: string, to: string): void {
    this.join('jumper', lug, to);
    net.push(lug);
  }

  /** Solders a component's leg to a net: one joint, and nothing more on it. */
  leg(net: Net, lug: string): void {
    this.add(net, lug, 'leg');
    net.pop();
  }
}

const given = (part: Written): Written =>
  Object.fromEntries(Object.entries(part).filter(([, v]) => v !== undefined));

function describeKit(choice: Choices): Description {
  const names = choice.pickups.length === 2 ? ['neck', 'bridge'] : [...NAMES];
  const parts: Record<string, Written> = {};
  names.forEach((name, i) => {
    parts[name] = given(choice.pickups[i] ?? {});
  });
  if (choice.lever) parts.selector = given({ kind: choice.lever, label: choice.selector });
  parts.volume = given(choice.volume);
  const harness = new Harness(choice.colours);
  const ground: Net = ['volume.case'];
  harness.join(choice.bent ? 'bend' : 'wire', 'volume.1', 'volume.case');
  names.forEach((name) => {
    harness.add(ground, `${name}.ground`, choice.braided ? 'braid' : 'wire');
  });
  const output: Net = ['volume.3'];
  const hots = names.map((name): Net => [`${name}.hot`]);
  const poles = choice.lever ? throwSwitch(harness, choice.lever, hots, output) : undefined;
  if (!choice.lever) for (const hot of hots) harness.add(output, hot[0] ?? '');

  choice.tones.forEach(({ pot: tone, capacitor: cap, sleeving }, i) => {
    const [name, capName] = [`tone-${i + 1}`, `cap-${i + 1}`];
    parts[name] = given(tone);
    parts[capName] = given({ ...cap, sleeving });
    harness.add(ground, `${name}.case`);
    harness.add((choice.switched && poles?.[i]) || output, `${name}.1`);
    harness.join('leg', `${capName}.1`, `${name}.2`);
    harness.join('leg', `${capName}.2`, `${name}.case`);
  });
  choice.pads.slice(0, names.length).forEach((pad, i) => {
    const name = `${names[i]}-pad`;
    if (!pad) return;
    parts[name] = given({ ...pad.resistor, sleeving: pad.sleeving });
    // Without a switch the pickups are one net.
    harness.leg((choice.lever && hots[i]) || output, `${name}.1`);
    harness.leg(ground, `${name}.2`);
  });
  const way: Net = ['volume.2'];
  parts.output = { kind: 'jack' };
  harness.add(way, 'output.tip');
  harness.add(ground, 'output.sleeve');
  bleed(harness, choice, parts, output, way);
  if (choice.strings) {
    parts.strings = { kind: 'ground-point', label: 'String ground' };
    harness.add(ground, 'strings.1');
  }
  const joints = choice.reversed ? [...harness.joints].reverse() : harness.joints;
  return { kit: 'random', title: `Random harness, ${names.length} pickups`, parts, joints };
}

/** Pickups on pole A, three-way two-pickup kits with the last on pole B; returns the nets of a spare pole B. */
function throwSwitch(
  harness: Harness,
  lever: Lever,
  hots: readonly Net[],
  output: Net,
): readonly Net[] | undefined {
  const [first, last] = [hots[0] ?? [], hots[hots.length - 1] ?? []];
  harness.add(output, 'selector.B0');
  harness.link(output, 'selector.A0', 'selector.B0');
  if (lever === 'lever-3' && hots.length === 2) {
    harness.add(first, 'selector.B3');
    harness.link(first, 'selector.B2', 'selector.B3');
    harness.add(last, 'selector.A1');
    harness.link(last, 'selector.A2', 'selector.A1');
    return undefined;
  }
  hots.forEach((hot, i) => {
    harness.add(hot, `selector.A${hots.length === 2 ? 3 - 2 * i : 3 - i}`);
  });
  if (hots.length === 2) harness.add(last, 'selector.A2');
  return [['selector.B3'], ['selector.B2']];
}

/** A treble bleed past the volume: a capacitor, with or without a resistor beside it or after it. */
function bleed(harness: Harness, choice: Choices, parts: Record<string, Written>, from: Net, to: Net): void {
  if (choice.bleed === 'none') return;
  const { resistor: r, capacitor: c } = choice.bleedParts;
  parts['bleed-cap'] = given(c);
  if (choice.bleed !== 'capacitor') parts['bleed-res'] = given(r);
  harness.leg(from, 'bleed-cap.1');
  if (choice.bleed === 'series') {
    harness.join('leg', 'bleed-cap.2', 'bleed-res.1');
    harness.leg(to, 'bleed-res.2');
    return;
  }
  harness.leg(to, 'bleed-cap.2');
  if (choice.bleed !== 'parallel') return;
  harness.leg(from, 'bleed-res.1');
  harness.leg(to, 'bleed-res.2');
}

export const circuits: fc.Arbitrary<Description> = choices.map(describeKit);
