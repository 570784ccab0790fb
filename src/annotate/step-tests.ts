/** The tests of the soldering in words: where the probes go, what is to be read, and what it means when something else is. */
import {
  type ExpectedReading,
  type MeterSetting,
  type Probes,
  readingKind,
  type StepReading,
  stepReadings,
  testCards,
} from '../analyse/index.ts';
import { type Circuit, endAt, type LugId, lugIdOf } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { inLanguage, labelOf } from '../describe/kit.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { controlsOf } from '../parts/index.ts';
import { isSurface, unsolderedEnds } from '../soldering/ends.ts';
import { planOf } from '../soldering/plan.ts';
import { endName, jointName, ohmsAtLeast, ohmsAtMost, ohmsIn, rowOf } from './step-words.ts';
import { settingText } from './words.ts';

interface StepTest extends Probes {
  /** Where the probes are held, as a customer reads it. */
  readonly fromName: string;
  readonly toName: string;
  /** How switches and controls stand; empty where that makes no difference. */
  readonly setting: string;
  /** What is to be read: `below 1 Ω`, or a value with the smallest and the largest. */
  readonly expected: string;
  /** Sentences: what another reading means. */
  readonly wrong: readonly string[];
  readonly reading: StepReading;
}

interface TestsOfStep {
  /** The step's number. */
  readonly step: number;
  /** At most three; none where no reading proves anything. */
  readonly tests: readonly StepTest[];
  /** One sentence that names the joints which conduct since this step and which no reading of this or a later step proves; absent where there is none. */
  readonly byEye?: string;
}

/** The tests after each step, in the order of the steps. */
export function stepTests(
  circuit: Circuit,
  language: Language = circuit.kit.language,
): readonly TestsOfStep[] {
  const { made, placed, steps } = planOf(circuit);
  const readings = stepReadings(circuit);
  const shown = (own: readonly StepReading[]): ReadonlySet<number> =>
    new Set(own.flatMap(({ proves, missing }) => [...proves, ...missing.flatMap(({ joints }) => joints)]));
  let cleared: Cleared = { joints: new Set(), pairs: new Set() };
  return steps.map(({ number, heats }, k): TestsOfStep => {
    const own = nth(readings, k);
    const proven = shown(readings.slice(k).flat());
    const unproven = made.flatMap((when, i) => (when === number && !proven.has(i) ? [i] : []));
    const ironed = new Set(heats.map(({ lug }) => lug).filter((lug) => !isSurface(circuit, lug)));
    // What was free of solder bridges may have one where the iron has been again.
    const pairs = [...cleared.pairs].filter((pair) => !pair.split(' ').some((lug) => ironed.has(lug)));
    const before = { ...cleared, pairs: new Set(pairs) };
    const wired = circuit.joints.flatMap(({ kind, from, to }, i) =>
      kind === 'bend' || nth(placed, i) > number ? [] : [from, to].map(lugIdOf),
    );
    const reached = new Set(wired.filter((lug) => !isSurface(circuit, lug)));
    cleared = {
      joints: new Set([...before.joints, ...shown(own)]),
      pairs: new Set([...pairs, ...own.flatMap(({ bridged }) => bridged.map(pairName))]),
    };
    return {
      step: number,
      tests: own.map((reading) => testOf(circuit, language, reading, { ...before, reached })),
      ...(unproven.length === 0
        ? {}
        : { byEye: sayIn(language)('test.by-eye', { joints: jointsText(circuit, language, unproven) }) }),
    };
  });
}

const jointsText = (circuit: Circuit, language: Language, joints: readonly number[]): string =>
  rowOf(joints.map((i) => jointName(circuit, language, nth(circuit.joints, i))));

/** What may be wrong, and what cannot. */
interface Suspects extends Cleared {
  /** Lugs other than surfaces that a wire or a leg has come to by then: without one there is nothing that could bridge. */
  readonly reached: ReadonlySet<LugId>;
}

/** What the readings of earlier steps have shown to be right: joints that conduct, and pairs of lugs, by their names, without solder between them. */
interface Cleared {
  readonly joints: ReadonlySet<number>;
  readonly pairs: ReadonlySet<string>;
}

const pairName = ([one, other]: readonly [LugId, LugId]): string => `${one} ${other}`;

function testOf(circuit: Circuit, language: Language, reading: StepReading, suspects: Suspects): StepTest {
  const { from, to, everywhere } = reading;
  return {
    from,
    to,
    fromName: probedName(circuit, language, from),
    toName: probedName(circuit, language, to),
    setting: everywhere ? '' : settingIn(circuit, language, reading),
    expected: expectedText(language, reading),
    wrong: wrongText(circuit, language, reading, suspects),
    reading,
  };
}

/** What a probe is held to: a lug, or the free end of the wire to a ground point, which is on the instrument. */
function probedName(circuit: Circuit, language: Language, lug: LugId): string {
  const name = endName(circuit, language, endAt(lug));
  const free = circuit.kit.joints.some((joint) => {
    const ends = unsolderedEnds(circuit.kit, joint);
    return (['from', 'to'] as const).some((end) => ends[end] === 'free' && lugIdOf(joint[end]) === lug);
  });
  return free ? sayIn(language)('test.free-end', { point: name }) : name;
}

/** How the switches stand; empty for a kit without any. */
const switchesIn = (circuit: Circuit, language: Language, state: number): string =>
  settingText({ ...circuit, kit: inLanguage(circuit.kit, language) }, nth(circuit.states, state));

/** How switches and controls stand: `Selector in position 2, all controls on 10`; empty for a kit with neither. */
function settingIn(circuit: Circuit, language: Language, { state, volume }: MeterSetting): string {
  const switches = switchesIn(circuit, language, state);
  if (circuit.kit.parts.flatMap(controlsOf).length === 0) return switches;
  return sayIn(language)('test.setting', {
    switched: switches === '' ? 'no' : 'yes',
    switches,
    volume: volume === 0 ? 'zero' : 'full',
  });
}

/** What is to be read, with the smallest and the largest of a value. */
function expectedText(language: Language, { kind, low, nominal, high }: ExpectedReading): string {
  const say = sayIn(language);
  if (kind === 'short') return say('test.short');
  if (kind === 'open') return ohmsIn(language, nominal);
  return say('test.value', {
    nominal: ohmsIn(language, nominal),
    low: ohmsAtLeast(language, low),
    high: ohmsAtMost(language, high),
  });
}

function wrongText(
  circuit: Circuit,
  language: Language,
  { kind: expected, missing, bridged, values }: StepReading,
  suspects: Suspects,
): readonly string[] {
  const say = sayIn(language);
  const lug = (id: LugId) => endName(circuit, language, endAt(id));
  const possible = bridged.filter((pair) => pair.some((id) => suspects.reached.has(id)));
  const unsure = possible.filter((pair) => !suspects.pairs.has(pairName(pair)));
  const suspectedPairs = unsure.length > 0 ? unsure : possible;
  return [
    ...missing.flatMap(({ ohms, joints }) => {
      const suspected = joints.filter((i) => !suspects.joints.has(i));
      const kind = readingKind(ohms);
      if (suspected.length === 0 && kind !== 'open') return [];
      return [
        say('test.missing', {
          reading: kind === 'short' ? say('test.short') : ohmsIn(language, ohms),
          near: kind === 'value' ? 'yes' : 'no',
          joints: jointsText(circuit, language, suspected.length > 0 ? suspected : joints),
        }),
      ];
    }),
    ...(expected === 'short'
      ? []
      : [
          suspectedPairs.length === 0
            ? say('test.touching')
            : say('test.bridged', {
                lugs: rowOf(
                  suspectedPairs.map(([one, other]) => say('test.lugs', { from: lug(one), to: lug(other) })),
                ),
              }),
        ]),
    ...(values.length === 0
      ? []
      : [
          say('test.values', {
            count: values.length,
            parts: rowOf(values.map((name) => labelOf(circuit.kit, name))),
          }),
        ]),
  ];
}

/** One line of a test at the jack. */
interface JackTest extends Probes {
  /** Index of the circuit's state, and its switches in words; empty for a kit without any. */
  readonly state: number;
  readonly position: string;
  readonly fromName: string;
  readonly toName: string;
  /** All controls on 10; the volume controls on 0. */
  readonly volumeFull: string;
  readonly volumeZero: string;
}

/** What a meter at the jack reads in every position: before the pickups are soldered, and when everything is. */
export function jackTests(
  circuit: Circuit,
  language: Language = circuit.kit.language,
): { readonly before: readonly JackTest[]; readonly finished: readonly JackTest[] } {
  const cards = testCards(circuit);
  const say = sayIn(language);
  const full = ({ volumeFull, hooked }: (typeof cards.before)[number]): string => {
    const expected = expectedText(language, volumeFull);
    if (!hooked) return expected;
    return hooked.between
      ? say('test.or-some-hooked', {
          expected,
          lowest: hooked.kind === 'short' ? say('test.short') : ohmsAtLeast(language, hooked.low),
        })
      : say('test.or-hooked', { expected, hooked: expectedText(language, hooked) });
  };
  // A pot leaves some ohms at the end of its track, so that a meter seldom shows as little as with its probes touching.
  const zero = ({ volumeZero }: (typeof cards.before)[number]): string =>
    volumeZero.kind === 'short' ? say('test.nearly-zero') : expectedText(language, volumeZero);
  const line = (row: (typeof cards.before)[number]): JackTest => ({
    state: row.state,
    position: switchesIn(circuit, language, row.state),
    from: row.from,
    to: row.to,
    fromName: endName(circuit, language, endAt(row.from)),
    toName: endName(circuit, language, endAt(row.to)),
    volumeFull: full(row),
    volumeZero: zero(row),
  });
  return { before: cards.before.map(line), finished: cards.finished.map(line) };
}

/** How a meter is set and held, what a short and an open circuit look like on it, and what is meant by a reading between those that a test names. */
export function meterHints(language: Language = DEFAULT_LANGUAGE): readonly string[] {
  const say = sayIn(language);
  return [
    say('test.meter-held'),
    say('test.short-looks'),
    say('test.open-looks'),
    say('test.cold-looks'),
    say('test.wiper-looks'),
    say('test.other-looks'),
  ];
}
