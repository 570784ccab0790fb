/** The parts to tick off, and the tools that this kit takes. */
import { ohmsAtLeast, ohmsAtMost } from '../annotate/step-words.ts';
import { type Circuit, lugIdOf } from '../circuit/circuit.ts';
import type { Kit } from '../describe/kit.ts';
import { figuresIn } from '../messages/figures.ts';
import type { Language } from '../messages/language.ts';
import type { Say } from '../messages/say.ts';
import { apartIn, colourName, lugWords } from '../messages/words.ts';
import { separateCoils } from '../parts/coils.ts';
import {
  componentOf,
  is,
  isPickup,
  lugsOf,
  lugsWith,
  type Part,
  type Pickup,
  resistorOf,
} from '../parts/index.ts';
import { valueWords } from '../parts/value-words.ts';
import { isSurface } from '../soldering/ends.ts';
import type { Cuts } from './cuts.ts';
import { type Block, type Cell, type Picture, strong, TICK, text } from './document.ts';
import { kindIn } from './words.ts';

interface Row {
  readonly tick: Cell;
  readonly quantity: string;
  readonly picture: Cell;
  readonly name: string;
  readonly value: string;
  readonly recognise: string;
}

/**
 * The table of all parts; a ground point is a place on the instrument, in no bag, and not to be ticked off.
 *
 * @param narrow whether value and marks stand below the name, where columns would have no room for words
 */
export function partsTable(
  kit: Kit,
  say: Say,
  pictureOf: (part: Part) => Picture,
  cuts: Cuts,
  narrow = false,
): Block {
  const bag = kit.parts.filter((part) => !is(part, 'ground-point'));
  const rows: readonly Row[] = [
    ...alike(bag, say, kit.language).map((parts): Row => {
      const [first] = parts;
      return {
        tick: TICK,
        quantity: String(parts.length),
        picture: { is: 'picture', picture: pictureOf(first) },
        name: named(parts, say),
        value: [valueWords(first, kit.language), first.code].filter((word) => word !== undefined).join('\n'),
        recognise: recogniseBy(first, say, kit.language),
      };
    }),
    ...cuts.stock().map(({ name, amount }) => ({ ...EMPTY, tick: TICK, name, value: amount })),
    ...kit.parts
      .filter((part) => is(part, 'ground-point'))
      .map((part) => ({
        ...EMPTY,
        name: named([part], say),
        value: say('leaflet.not-in-kit'),
        recognise: say('leaflet.ground-point'),
      })),
  ];
  const first = [
    { head: say('leaflet.done') },
    { head: say('leaflet.quantity'), align: 'right' },
    { head: say('leaflet.picture') },
  ] as const;
  const part = { head: say('leaflet.part'), share: 3.4 };
  if (narrow)
    return {
      is: 'table',
      columns: [...first, part],
      rows: rows.map(({ tick, quantity, picture, name, value, recognise }) => [
        ...[tick, text(quantity), picture],
        { is: 'said', name, text: [value, recognise].filter((words) => words !== '').join('\n') },
      ]),
    };
  return {
    is: 'table',
    columns: [
      ...first,
      part,
      { head: say('leaflet.value'), share: 2.6 },
      { head: say('leaflet.recognise'), share: 4 },
    ],
    rows: rows.map(({ tick, quantity, picture, name, value, recognise }) => [
      ...[tick, text(quantity), picture, strong(name)],
      ...[text(value), text(recognise)],
    ]),
  };
}

const EMPTY = {
  tick: text(''),
  quantity: '',
  picture: text(''),
  name: '',
  value: '',
  recognise: '',
} as const;

/** `Volume, Tone: pot`, of parts of one kind. */
const named = (parts: readonly [Part, ...Part[]], say: Say): string =>
  say('named.list', {
    name: parts.map(({ label }) => label).join(', '),
    words: kindIn(parts[0], say),
  });

/** Parts that nobody can tell apart in the hand together, in the order of the first of each. */
function alike(
  parts: readonly Part[],
  say: Say,
  language: Language,
): readonly (readonly [Part, ...Part[]])[] {
  const groups = new Map<string, [Part, ...Part[]]>();
  for (const part of parts) {
    // Two pickups of one resistance are for two places.
    const key = isPickup(part)
      ? part.name
      : JSON.stringify([
          kindIn(part, say),
          valueWords(part, language),
          part.code,
          recogniseBy(part, say, language),
        ]);
    const known = groups.get(key);
    if (known) known.push(part);
    else groups.set(key, [part]);
  }
  return [...groups.values()];
}

/** A resistor by its bands in words, a capacitor by its code, a pickup by a meter, anything else by its lugs. */
function recogniseBy(part: Part, say: Say, language: Language): string {
  const component = componentOf(part);
  if (component?.bands) {
    const bands = say('leaflet.bands', {
      bands: component.bands.map((code) => colourName(language, code)).join(', '),
    });
    const body = resistorOf(part);
    return body ? `${bands}. ${measureWords(body, say, language)}` : bands;
  }
  if (component?.print !== undefined) return say('leaflet.printed', { code: component.print });
  if (isPickup(part)) return pickupWords(part, say, language);
  const listed = (lugs: readonly string[]): string => lugs.map((lug) => lugWords(language, lug)).join(', ');
  // A case is metal to solder to, and none of the lugs that somebody counts.
  const cases = lugsWith(part, 'case');
  const lugs = lugsOf(part).flatMap(({ name }) => (cases.includes(name) ? [] : [name]));
  const words = say('leaflet.lugs', {
    count: lugs.length,
    names: listed(lugs),
    cased: cases.length > 0 ? 'yes' : 'no',
    case: listed(cases),
  });
  const outputs = lugsWith(part, 'output').length;
  if (is(part, 'jack') && outputs > 0)
    return `${words}. ${say('leaflet.jack-lugs', { ring: outputs > 1 ? 'yes' : 'no' })}`;
  // Of a switch it is the metal that holds it in its place, which often has a lug of its own.
  return is(part, 'switch') && cases.length > 0 && !is(part, 'pot')
    ? `${words}. ${say('leaflet.frame-lug', { frame: listed(cases) })}`
    : words;
}

/** What a meter shows of a pickup before it is soldered: across its leads, or of each coil that has leads of its own. */
function pickupWords(part: Pickup, say: Say, language: Language): string {
  const { quantity } = figuresIn(language);
  const assumed = part.resistance.from === 'default';
  const coils = separateCoils(part).map(({ lugs: [from, to], resistance }) =>
    say('leaflet.coil-measures', {
      from: lugWords(language, from),
      to: lugWords(language, to),
      value: quantity(resistance.value, 'ohm'),
    }),
  );
  if (coils.length > 0)
    return say('leaflet.measures-coils', {
      coils: apartIn(language, coils),
      assumed: assumed ? 'yes' : 'no',
    });
  return say(assumed ? 'leaflet.measures-assumed' : 'leaflet.measures', {
    value: quantity(part.resistance.value, 'ohm'),
  });
}

/** What a meter shows of a resistor before it is soldered: its value within the tolerance. */
function measureWords(
  { ohms, tolerance }: NonNullable<ReturnType<typeof resistorOf>>,
  say: Say,
  language: Language,
): string {
  return say('leaflet.measure-first', {
    low: ohmsAtLeast(language, ohms.value * (1 - tolerance.value)),
    high: ohmsAtMost(language, ohms.value * (1 + tolerance.value)),
  });
}

/** Labels of the parts with a case that joints are soldered to, in the order written. */
function casesOf(circuit: Circuit): readonly string[] {
  const names = new Set(
    circuit.joints.flatMap(({ from, to }) =>
      [from, to].filter((end) => isSurface(circuit, lugIdOf(end))).map(({ part }) => part),
    ),
  );
  return circuit.kit.parts.flatMap((part) =>
    names.has(part.name) && lugsWith(part, 'case').length > 0 ? [part.label] : [],
  );
}

/**
 * How a pot's case is made ready before the first joint on it; nothing where none is soldered to. The handbook says no more than “quick
 * and hot”: the rest is common practice, no source.
 */
export function caseWords(circuit: Circuit, say: Say): readonly string[] {
  const cases = casesOf(circuit);
  return cases.length === 0 ? [] : [say('leaflet.case-say', { cases: cases.join(', ') })];
}

/**
 * How pots and switches are held while wires are cut and joints made; nothing where there is no more than one. Components whose legs go
 * to two of them are named. Common practice, no source.
 */
export function holdWords({ kit }: Circuit, say: Say): readonly string[] {
  const held = kit.parts.filter((part) => is(part, 'pot') || is(part, 'switch')).map(({ name }) => name);
  if (held.length < 2) return [];
  const bridging = kit.parts.filter((part) => {
    if (!is(part, 'component')) return false;
    const ends = kit.joints.flatMap(({ kind, from, to }) =>
      kind === 'leg' && (from.part === part.name || to.part === part.name)
        ? [from.part === part.name ? to.part : from.part]
        : [],
    );
    return new Set(ends.filter((end) => held.includes(end))).size > 1;
  });
  return [
    say('leaflet.hold-say', {
      bridging: bridging.length === 0 ? 'none' : bridging.map(({ label }) => label).join(', '),
    }),
  ];
}

/** What is needed on the bench: strippers only where there is wire, what a case needs only where joints are soldered to one. */
export function tools(circuit: Circuit, say: Say): readonly string[] {
  const { joints } = circuit.kit;
  return [
    say('tool.goggles'),
    say('tool.iron'),
    ...(casesOf(circuit).length > 0 ? [say('tool.case')] : []),
    say('tool.solder'),
    say('tool.cutters'),
    ...(joints.some(({ kind }) => kind === 'wire') ? [say('tool.strippers')] : []),
    say('tool.pliers'),
    say('tool.clamp'),
    say('tool.stick'),
    say('tool.desolder'),
    say('tool.meter'),
  ];
}

/**
 * The handbook's cautions, every one of them on every leaflet.
 *
 * @param rules the last of them, which says what it stands on
 */
export const cautions = (say: Say, rules = say('caution.rules')): readonly string[] => [
  say('caution.hot'),
  say('caution.eyes'),
  say('caution.fumes'),
  say('caution.lead'),
  say('caution.passive'),
  say('caution.earth'),
  say('caution.children'),
  rules,
];
