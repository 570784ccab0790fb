/** Warnings: what the solved circuit does that a workshop hardly means, and labels that cannot be told apart. */
import { hiddenPickups, type StateLoads, seriesTracks } from '../analyse/index.ts';
import { type Circuit, type State, soundingCoils } from '../circuit/circuit.ts';
import { isAt, isMeantOutOfPhase, silencersAt } from '../circuit/intended.ts';
import { whereText } from '../circuit/position.ts';
import { type Problem, problem } from '../common/problem.ts';
import type { Kit } from '../describe/kit.ts';
import { contactsOf, elementsLike, isPickup, lugsWith, type Part } from '../parts/index.ts';
import { exchangedAmong } from './joining.ts';

export const soundWarnings = (circuit: Circuit, loads: readonly StateLoads[]): readonly Problem[] => [
  ...silentWarnings(circuit),
  ...phaseWarnings(circuit, loads),
  ...coilWarnings(circuit, loads),
  ...meantWarnings(circuit, loads),
  ...firstWarnings(circuit),
  ...nameWarnings(circuit),
  ...labelWarnings(circuit.kit),
];

/** Pickups that are never heard, or not with a pot at full. */
function silentWarnings(circuit: Circuit): readonly Problem[] {
  const hidden = hiddenPickups(circuit);
  const never = circuit.kit.parts.filter(
    (part) =>
      isPickup(part) &&
      !circuit.states.some(({ sounding }) => sounding.includes(part.name)) &&
      !hidden.some(({ pickup }) => pickup === part.name),
  );
  const inSeries = seriesTracks(circuit).filter((one) => !hidden.some(({ pickup }) => pickup === one.pickup));
  return [
    ...never.map(({ name }) => problem('never-selected', ['parts', name], { part: name }, 'key')),
    ...idleCoils(circuit),
    ...hidden.map(({ pickup, pot, states }) =>
      problem(
        'hidden-by-pot',
        ['parts', pickup],
        { part: pickup, pot, where: whereText(circuit, states) },
        'key',
      ),
    ),
    // What is hidden at full has had its word.
    ...inSeries.map(({ pickup, pot, fall, states }) =>
      problem(
        'pot-in-series',
        ['parts', pickup],
        {
          part: pickup,
          pot,
          fall: `${fall.toFixed(1)} dB`,
          where: whereText(circuit, states),
          ...(circuit.fullAt?.get(pot) === 'middle' ? { blend: true } : {}),
        },
        'key',
      ),
    ),
  ];
}

/** Coils that are never heard of pickups that are: both ends at ground, or no link from one coil to the other. */
const idleCoils = ({ kit, states }: Circuit): readonly Problem[] =>
  kit.parts.filter(isPickup).flatMap((part) => {
    const heard = states.flatMap((state) => soundingCoils(state, part)).map(({ id }) => id);
    return heard.length === 0
      ? []
      : elementsLike(part, 'coil')
          .filter(({ id }) => !heard.includes(id))
          .map(({ id, called = id }) =>
            problem(
              'coil-never-selected',
              ['parts', part.name],
              { part: part.name, coil: called, link: lugsWith(part, 'link') },
              'key',
            ),
          );
  });

/** One warning a pickup whose leads look exchanged, with all the states it is out of phase in. */
function phaseWarnings(circuit: Circuit, loads: readonly StateLoads[]): readonly Problem[] {
  const found = new Map<string, { states: State[]; others: Set<string>; silent: State[] }>();
  for (const { state, pickups: entries, silentTogether } of loads) {
    if (isMeantOutOfPhase(circuit.kit, state)) continue;
    for (const name of exchangedAmong(entries)) {
      const one = found.get(name) ?? { states: [], others: new Set<string>(), silent: [] };
      one.states.push(state);
      if (silentTogether) one.silent.push(state);
      for (const other of entries.find(({ pickup }) => pickup === name)?.outOfPhase ?? [])
        one.others.add(other);
      found.set(name, one);
    }
  }
  // Where the jack does not show which of two it is, each would be named for the other: once is enough.
  const named = new Set<string>();
  return [...found].flatMap(([part, { states, others, silent }]) => {
    if ([...others].every((other) => named.has(other))) return [];
    named.add(part);
    return [
      problem(
        'out-of-phase',
        ['parts', part],
        {
          part,
          others: [...others],
          where: whereText(circuit, states, together(circuit, part, others)),
          // Where it is not so in all of these positions, it is said in which.
          ...(silent.length === 0
            ? {}
            : { silent: silent.length === states.length ? '' : whereText(circuit, silent, states) }),
        },
        'key',
      ),
    ];
  });
}

/** One warning a pickup whose own two coils work against each other, with all the states they do so in. */
function coilWarnings({ kit, states }: Circuit, loads: readonly StateLoads[]): readonly Problem[] {
  return kit.parts.flatMap((part): readonly Problem[] => {
    const found = loads.filter(
      ({ state, pickups }) =>
        !isMeantOutOfPhase(kit, state) &&
        pickups.some(({ pickup, coils }) => pickup === part.name && coils?.outOfPhase),
    );
    if (found.length === 0) return [];
    const where = whereText(
      { states },
      found.map(({ state }) => state),
      states.filter(({ sounding }) => sounding.includes(part.name)),
    );
    return [
      problem(
        'coils-out-of-phase',
        ['parts', part.name],
        { part: part.name, where, link: lugsWith(part, 'link'), ...(isMadeSo(part) ? { made: true } : {}) },
        'key',
      ),
    ];
  });
}

/** Whether two coils are described as made so that they cancel in series with the leads soldered as usual. */
const isMadeSo = (part: Part): boolean => elementsLike(part, 'coil').some(({ signal = 1 }) => signal < 0);

/** Entries of `intended`, and kill buttons, that do not do what they say. */
function meantWarnings(circuit: Circuit, loads: readonly StateLoads[]): readonly Problem[] {
  const { kit, states } = circuit;
  const sounding = states.filter((state) => state.sounding.length > 0);
  const silent = (kit.intended?.silent ?? []).flatMap((place) => {
    const untrue = sounding.filter((state) => isAt(kit, place, state));
    return untrue.length === 0
      ? []
      : [problem('not-silent', place.path, { where: whereText(circuit, untrue) })];
  });
  const buttons = kit.parts.flatMap(({ name }) => {
    const untrue = sounding.filter((state) => silencersAt(kit, state).includes(name));
    const detail = { where: whereText(circuit, untrue), of: name };
    return untrue.length === 0 ? [] : [problem('not-silent', ['parts', name], detail, 'key')];
  });
  const against = loads.filter(({ pickups }) =>
    pickups.some(({ outOfPhase, coils }) => outOfPhase.length > 0 || coils?.outOfPhase),
  );
  const phase = (kit.intended?.outOfPhase ?? []).flatMap((place) =>
    against.some(({ state }) => isAt(kit, place, state))
      ? []
      : [
          problem('not-out-of-phase', place.path, {
            where: whereText(
              circuit,
              states.filter((state) => isAt(kit, place, state)),
            ),
          }),
        ],
  );
  return [...silent, ...buttons, ...phase];
}

/** States in which a pickup sounds with another of those named. */
const together = ({ states }: Circuit, pickup: string, others: ReadonlySet<string>): readonly State[] =>
  states.filter(({ sounding }) => sounding.includes(pickup) && sounding.some((other) => others.has(other)));

/**
 * Switches whose position 1 does not sound the bridge pickup, though another position does in place of one that sounds in
 * position 1: one that only adds the bridge pickup selects nothing. By convention position 1 is nearest the bridge, where
 * positions are counted; a position with a name of its own, as of a toggle, is under no such convention. Common practice, no
 * source.
 */
function firstWarnings({ kit, states }: Circuit): readonly Problem[] {
  const bridge = bridgePickup(kit);
  if (!bridge) return [];
  return kit.parts.flatMap((part): readonly Problem[] => {
    const contacts = contactsOf(part);
    if (contacts.length === 0 || contacts.some(({ called }) => called !== undefined)) return [];
    const at = (first: boolean) => states.filter(({ positions }) => (positions[part.name] === 1) === first);
    const sounds = ({ sounding }: State): boolean => sounding.includes(bridge.name);
    const found = new Set(
      at(false)
        .filter(sounds)
        .map(({ positions }) => `${positions[part.name]}`),
    );
    const [first] = at(true);
    const selects = at(true).some(({ positions, sounding }) => {
      const others = at(false).filter((one) => sounds(one) && sameBut(part.name, one.positions, positions));
      return others.some((one) => !sounding.every((pickup) => one.sounding.includes(pickup)));
    });
    if (at(true).some(sounds) || !selects || !first || first.sounding.length === 0) return [];
    const detail = { part: part.name, bridge: bridge.name, sounding: first.sounding, found: [...found] };
    return [problem('first-not-bridge', ['parts', part.name], detail, 'key')];
  });
}

/**
 * Positions that are called after the neck or the bridge pickup and sound others alone. One that is called after both is left alone:
 * what it means is not known.
 */
function nameWarnings({ kit, states }: Circuit): readonly Problem[] {
  const pickups = kit.parts.filter(isPickup);
  const ofWord = (word: string): Part | undefined => {
    const [only, ...more] = pickups.filter((part) => wordsOf(part).includes(word));
    return more.length === 0 ? only : undefined;
  };
  return kit.parts.flatMap((part) =>
    contactsOf(part).flatMap(({ position, called = '' }): readonly Problem[] => {
      const words = called.toLowerCase().split(/[^a-z]+/);
      const named = ['neck', 'bridge'].filter((word) => words.includes(word)).map(ofWord);
      const [pickup, ...more] = named;
      if (!pickup || more.length > 0) return [];
      const there = states.filter(
        ({ positions, sounding }) => positions[part.name] === position && sounding.length > 0,
      );
      const [first] = there;
      if (!first || there.some(({ sounding }) => sounding.includes(pickup.name))) return [];
      const detail = { part: part.name, position: called, named: pickup.name, sounding: first.sounding };
      return [problem('position-name', ['parts', part.name, 'called', position - 1], detail)];
    }),
  );
}

const wordsOf = ({ name, label }: Part): readonly string[] =>
  `${name} ${label}`.toLowerCase().split(/[^a-z]+/);

/**
 * The pickup that is called the bridge's; where no name says where a pickup is, the last one, as a kit names them from neck to bridge.
 */
function bridgePickup({ parts }: Kit): Part | undefined {
  const pickups = parts.filter(isPickup);
  const called = (word: RegExp) =>
    pickups.filter((part) => word.test(`${part.name.replaceAll('-', ' ')} ${part.label}`));
  const [bridge, ...more] = called(/\bbridge\b/i);
  if (bridge) return more.length > 0 ? undefined : bridge;
  return pickups.length > 1 && called(/\b(neck|middle)\b/i).length === 0 ? pickups.at(-1) : undefined;
}

/** Whether all switches but one are in the same positions. */
const sameBut = (part: string, one: State['positions'], other: State['positions']): boolean =>
  Object.keys(one).every((name) => name === part || one[name] === other[name]);

/** Parts whose labels look the same: letters' case and blanks aside. */
function labelWarnings({ parts }: Kit): readonly Problem[] {
  const seen = new Map<string, string>();
  return parts.flatMap(({ name, label }): readonly Problem[] => {
    const key = label.trim().replace(/\s+/g, ' ').toLowerCase();
    const other = seen.get(key);
    seen.set(key, other ?? name);
    return other === undefined
      ? []
      : [problem('same-label', ['parts', name, 'label'], { label, other }, 'key')];
  });
}
