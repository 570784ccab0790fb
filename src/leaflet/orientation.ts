/** Which lug is which on the part in the hand, how a switch's positions are counted, and where a control is on 10. */
import type { Circuit } from '../circuit/circuit.ts';
import { placeText } from '../circuit/position.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Language } from '../messages/language.ts';
import type { Say } from '../messages/say.ts';
import { apartIn, coilWords, lugWords } from '../messages/words.ts';
import { separateCoils } from '../parts/coils.ts';
import { contactsOf, controlsOf, is, isPickup, lugsWith, movesOf, type Part } from '../parts/index.ts';
import type { Contact } from '../parts/kind.ts';
import type { Block } from './document.ts';
import { controlName } from './words.ts';

/** Nothing for a kit with neither pots nor switches nor pickups with leads for each coil. */
export function orientationSection({ circuit }: Pick<Prepared, 'circuit'>, say: Say): readonly Block[] {
  const { parts, view, language } = circuit.kit;
  const switches = parts.filter((part) => is(part, 'switch'));
  const pots = parts.filter((part) => is(part, 'pot'));
  const side = view === 'component-side' ? 'component' : 'solder';
  const held = switches.length > 0 || pots.length > 0;
  const items = [
    ...(held ? [say('orient.hold', { side })] : []),
    ...(pots.length === 0 ? [] : [say('orient.pot', { side })]),
    ...fullItems(circuit, say),
    ...switches.map((part) => switchItem(part, say, language)),
    ...coilItems(circuit, say),
  ];
  if (items.length === 0) return [];
  return [
    { is: 'heading', level: 2, text: say('leaflet.orientation') },
    { is: 'list', items },
  ];
}

/** The end that each control is on 10 at, as solved: one that is wired for the other hand has it at the other end. */
function fullItems({ kit, fullAt }: Circuit, say: Say): readonly string[] {
  const ids = kit.parts.flatMap(controlsOf).map(({ id }) => id);
  return (['clockwise', 'anticlockwise'] as const).flatMap((end) => {
    const own = ids.filter((id) => fullAt?.get(id) === end);
    if (own.length === 0) return [];
    const controls = [...new Set(own.map((id) => controlName(kit, id, say)))].join(', ');
    return [say('orient.full', { controls, end })];
  });
}

/**
 * The leads of pickups that have some for each coil: what their names mean, and how a meter tells the coils apart. Makers have colours of their
 * own, so that none is named. Common practice, no source.
 */
function coilItems({ kit }: Circuit, say: Say): readonly string[] {
  const { language } = kit;
  const pickups = kit.parts.filter(isPickup).filter((part) => separateCoils(part).length > 0);
  const [first] = pickups;
  if (!first) return [];
  const coils = separateCoils(first).map(({ called, lugs: [from, to] }) =>
    say('named.list', {
      name: coilWords(language, called),
      words: say('test.lugs', { from: lugWords(language, from), to: lugWords(language, to) }),
    }),
  );
  return [
    say('orient.coils', {
      pickups: pickups.map(({ label }) => label).join(', '),
      coils: apartIn(language, coils),
      braid: lugsWith(first, 'shield')
        .map((lug) => lugWords(language, lug))
        .join(', '),
      fault: say('fault.coils'),
    }),
  ];
}

/** How its positions are counted, and by which lugs a meter tells the first and the last of them. */
function switchItem(part: Part, say: Say, language: Language): string {
  const contacts = contactsOf(part).filter(({ joins }) => joins.some((lugs) => lugs.length > 1));
  const commons = lugsWith(part, 'common');
  const [first, last] = [contacts[0], contacts.at(-1)];
  const told = (first === last ? [first] : [first, last]).flatMap((contact) =>
    contact ? [contactWords(contact, say, language)] : [],
  );
  return [
    movesWords(part, say, language),
    ...(commons.length === 0
      ? []
      : [
          say('orient.commons', {
            switch: part.label,
            // One that is called just that needs no name beside the word.
            named: commons.join() === 'common' ? 'no' : 'yes',
            lugs: commons.map((lug) => lugWords(language, lug)).join(', '),
          }),
        ]),
    say('orient.check', { switch: part.label, contacts: apartIn(language, told) }),
    ...(movesOf(part) === 'lever' ? [say('orient.turn')] : []),
  ]
    .filter((words) => words !== '')
    .join(' ');
}

/** Empty where the names of the positions say enough. */
function movesWords(part: Part, say: Say, language: Language): string {
  const positions = contactsOf(part);
  const [upper = '', ...others] = lugsWith(part, 'throw');
  // Of a switch with several poles the throws of the first.
  const lower = others[0] ?? '';
  switch (movesOf(part)) {
    case 'lever':
      return say('orient.lever', { switch: part.label, last: positions.length });
    case 'shaft':
      return say('orient.shaft', { switch: part.label });
    case 'toggle':
    case 'slider':
      return say('orient.toggle', {
        switch: part.label,
        moves: movesOf(part) ?? '',
        upper: lugWords(language, upper),
        lower: lugWords(language, lower),
      });
    case undefined:
      return '';
  }
}

/** `in position 1, below 1 Ω between A0 and A1, B0 and B1`: lugs that touch then, two of each pole. */
function contactWords({ position, called, joins }: Contact, say: Say, language: Language): string {
  const pairs = joins.flatMap(([from, to]) =>
    from === undefined || to === undefined
      ? []
      : [say('test.lugs', { from: lugWords(language, from), to: lugWords(language, to) })],
  );
  return say('orient.contact', {
    position: placeText(position, called, language),
    pairs: pairs.join(', '),
  });
}
