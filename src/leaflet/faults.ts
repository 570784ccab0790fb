/**
 * What can be wrong with this very kit, what is then the likely cause, and what to do. A row stands here only where the kit has
 * what it is about. Common practice, no source.
 */
import { rolesOf } from '../analyse/index.ts';
import { padsOf } from '../annotate/pads.ts';
import { endName } from '../annotate/step-words.ts';
import { type Circuit, endAt, lugId, lugsJoinedTo } from '../circuit/circuit.ts';
import { labelOf } from '../describe/kit.ts';
import type { Prepared } from '../draw/compose.ts';
import type { MessageKey } from '../messages/en.ts';
import type { MessageValues, Say } from '../messages/say.ts';
import { apartIn } from '../messages/words.ts';
import { separateCoils } from '../parts/coils.ts';
import { contactsOf, elementsLike, is, isPickup, lugsWith, type Part } from '../parts/index.ts';
import { strong, type Table, text } from './document.ts';
import { controlName } from './words.ts';

type Row = readonly [seen: string, cause: string, remedy: string];

export function faultsTable(prepared: Prepared, say: Say): Table {
  const rows = [
    ...outputRows(prepared, say),
    ...pickupRows(prepared, say),
    ...controlRows(prepared, say),
    row(say, ['fault.loose', 'fault.loose-cause', 'fault.loose-remedy'], {}),
  ];
  return {
    is: 'table',
    columns: [
      { head: say('leaflet.fault-seen'), share: 3 },
      { head: say('leaflet.fault-cause'), share: 4 },
      { head: say('leaflet.fault-remedy'), share: 5 },
    ],
    rows: rows.map(([seen, cause, remedy]) => [strong(seen), text(cause), text(remedy)]),
  };
}

const row = (say: Say, keys: readonly [MessageKey, MessageKey, MessageKey], values: MessageValues): Row => [
  say(keys[0], values),
  say(keys[1], values),
  say(keys[2], values),
];

function outputRows({ circuit }: Prepared, say: Say): readonly Row[] {
  const { kit } = circuit;
  const jack = kit.parts.find((part) => is(part, 'jack'));
  if (!jack) return [];
  const before = lugsWith(jack, 'output').flatMap((tip) => joinedParts(circuit, jack, tip))[0];
  const points = kit.parts.filter((part) => is(part, 'ground-point'));
  return [
    ...(before
      ? [
          row(say, ['fault.silent', 'fault.silent-cause', 'fault.silent-remedy'], {
            volume: before.label,
            jack: jack.label,
          }),
        ]
      : []),
    row(say, ['fault.buzz', 'fault.buzz-cause', 'fault.buzz-remedy'], { jack: jack.label }),
    ...points.map(({ label: point }) =>
      row(say, ['fault.hum', 'fault.hum-cause', 'fault.hum-remedy'], { point }),
    ),
  ];
}

function pickupRows({ circuit, loads }: Prepared, say: Say): readonly Row[] {
  const { kit, states } = circuit;
  const pickups = kit.parts.filter(isPickup);
  const places = pickups.flatMap((part) =>
    lugsWith(part, 'hot').flatMap((hot) =>
      lugsJoinedTo(circuit.joints, lugId(part.name, hot)).map((id) =>
        say('named.list', { name: part.label, words: endName(circuit, kit.language, endAt(id)) }),
      ),
    ),
  );
  // Every set of pickups that sound together, however many positions select it.
  const together = new Set(
    loads.flatMap(({ state, pickups: some }) =>
      some.some(({ parallel }) => parallel.length > 0)
        ? [state.sounding.map((name) => labelOf(kit, name)).join(' + ')]
        : [],
    ),
  );
  // A lead in a screen has its ground outside: its two must not be exchanged.
  const exchangeable = !circuit.joints.some(({ kind }) => kind === 'braid');
  const selector = kit.parts.find((part) => is(part, 'switch') && contactsOf(part).length > 2);
  const coiled = pickups.filter((part) => separateCoils(part).length > 0).map(({ label }) => label);
  const split = pickups.filter(({ name }) => states.some(({ coils }) => coils?.[name] !== undefined));
  const several = new Set(states.flatMap(({ sounding }) => sounding)).size > 1;
  return [
    ...(pickups.length > 1 && places.length > 0
      ? [
          row(say, ['fault.one', 'fault.one-cause', 'fault.one-remedy'], {
            places: apartIn(kit.language, places),
            leads: coiled.length > 0 ? 'all' : 'both',
          }),
        ]
      : []),
    ...(together.size > 0 && exchangeable
      ? [
          row(say, ['fault.thin', 'fault.thin-cause', 'fault.thin-remedy'], {
            pickups: [...together].join(', '),
          }),
        ]
      : []),
    ...(coiled.length > 0
      ? [row(say, ['fault.coils', 'fault.coils-cause', 'fault.coils-remedy'], { pickups: coiled.join(', ') })]
      : []),
    ...(split.length > 0
      ? [
          row(say, ['fault.split', 'fault.split-cause', 'fault.split-remedy'], {
            pickups: split.map(({ label }) => label).join(', '),
          }),
        ]
      : []),
    ...(selector && several
      ? [row(say, ['fault.order', 'fault.order-cause', 'fault.order-remedy'], { selector: selector.label })]
      : []),
    ...padsOf(circuit, loads).map(({ part, pickup }) =>
      row(say, ['fault.bright', 'fault.bright-cause', 'fault.bright-remedy'], {
        pickup: labelOf(kit, pickup),
        pad: labelOf(kit, part),
      }),
    ),
  ];
}

function controlRows({ circuit }: Prepared, say: Say): readonly Row[] {
  const { kit } = circuit;
  const roles = [...rolesOf(circuit)];
  const labelled = (role: string): string =>
    [...new Set(roles.flatMap(([id, own]) => (own === role ? [controlName(kit, id, say)] : [])))].join(', ');
  const [volumes, tones] = [labelled('volume'), labelled('tone')];
  const capacitors = kit.parts
    .filter((part) => is(part, 'component') && elementsLike(part, 'capacitance').length > 0)
    .map(({ label }) => label);
  return [
    ...(volumes === ''
      ? []
      : [row(say, ['fault.volume', 'fault.volume-cause', 'fault.volume-remedy'], { controls: volumes })]),
    ...(tones === '' || capacitors.length === 0
      ? []
      : [
          row(say, ['fault.tone', 'fault.tone-cause', 'fault.tone-remedy'], {
            controls: tones,
            components: capacitors.join(', '),
          }),
        ]),
    ...(roles.length === 0
      ? []
      : [row(say, ['fault.crackle', 'fault.crackle-cause', 'fault.crackle-remedy'], {})]),
  ];
}

/** The parts that joints lead to from a lug. */
const joinedParts = (circuit: Circuit, part: Part, lug: string): readonly Part[] =>
  lugsJoinedTo(circuit.joints, lugId(part.name, lug)).flatMap((id) => {
    const { part: name } = endAt(id);
    return circuit.kit.parts.filter((one) => one.name === name);
  });
