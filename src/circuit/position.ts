/** Switch positions in words: the one place where they are worded. */
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';
import { apartIn, eitherIn, listIn, positionWords } from '../messages/words.ts';
import { contactAt, type Part } from '../parts/index.ts';
import type { Contact } from '../parts/kind.ts';
import type { Circuit, Setting, State } from './circuit.ts';

type Placed = Pick<Setting, 'positions' | 'positionNames'>;

/** `in position 2`, or what the position is called. */
export const placeText = (
  position: number,
  called: string | undefined,
  language: Language = DEFAULT_LANGUAGE,
): string =>
  called === undefined ? sayIn(language)('switch.position', { position }) : positionWords(language, called);

/** `selector in position 2`, `boost pulled out`; several switches with a comma between; empty for a kit without a switch. */
export const positionText = ({ positions, positionNames }: Placed): string =>
  Object.entries(positions)
    .map(([name, position]) => `${name} ${placeText(position, positionNames[name])}`)
    .join(', ');

/** For a table: `selector 2`, `boost pulled out`; `always` for a kit without a switch. */
export const positionCell = ({ positions, positionNames }: Placed): string =>
  Object.entries(positions)
    .map(([name, position]) => `${name} ${positionNames[name] ?? position}`)
    .join(', ') || 'always';

/** For a file's name, the numbers as a card's badge has them: `4-2-1`; `1` for a kit without a switch. */
export const settingName = ({ positions }: Pick<Setting, 'positions'>): string =>
  Object.values(positions).join('-') || '1';

/** All that a switch's position may be written as: its number, what it is called, and the word on the switch's face. */
export const writtenAs = ({ position, called, mark }: Contact): readonly string[] => [
  ...new Set([String(position), called, mark].filter((word) => word !== undefined)),
];

/** The positions of a switch or of a blend, by its name in the settings, each with all that it may be written as. */
export function positionsOf(
  { kit, states }: Circuit,
  id: string,
): readonly { readonly position: number; readonly words: readonly string[] }[] {
  const part: Part | undefined = kit.parts.find(({ name }) => name === id);
  const found = new Map(
    states.map(({ positions, positionNames }) => [positions[id] ?? 0, positionNames[id]] as const),
  );
  return [...found]
    .sort(([a], [b]) => a - b)
    .map(([position, called]) => {
      const contact = part && contactAt(part, position);
      return {
        position,
        words: contact ? writtenAs(contact) : [String(position), ...(called === undefined ? [] : [called])],
      };
    });
}

/** Behind a clause: ` in position 2`, ` with boost pulled out`, ` with selector in position 2, boost pulled out`; or empty. */
export const atPosition = (placed: Placed): string => behind(positionText(placed), placed);

/** What a switch, or a blend's control, is called in words. */
type Called = (id: string) => string;
const ownName: Called = (id) => id;

/** Where there is only one switch to be in a position, it need not be named. */
function behind(
  words: string,
  { positions }: Placed,
  called: Called = ownName,
  language: Language = DEFAULT_LANGUAGE,
): string {
  const say = sayIn(language);
  const [only, ...more] = Object.keys(positions).map(called);
  if (words === '') return '';
  // Up to their numbers, which stand last in every language.
  const numbered = [say('switch.position', { position: '' }), say('switch.positions', { positions: '' })];
  return only !== undefined &&
    more.length === 0 &&
    numbered.some((beginning) => words.startsWith(`${only} ${beginning}`))
    ? words.slice(only.length)
    : ` ${say('switch.with', { settings: words })}`;
}

/**
 * Where something holds, to be put behind a clause: ` in every position`, ` in positions 2 and 4`, ` with boost pulled out`;
 * empty for a kit without a switch. A switch that makes no difference is not named: of the states of many switches, those that are told
 * together differ in nothing else.
 *
 * @param among states in which it could hold at all, if not in every one; what goes without saying is then not said
 * @param called what a switch is called; its name in the kit where it is left out
 * @param language that it is said in; English, as reports are, where it is left out
 */
export function whereText(
  { states }: Pick<Circuit, 'states'>,
  some: readonly State[],
  among: readonly State[] = states,
  called: Called = ownName,
  language: Language = DEFAULT_LANGUAGE,
): string {
  const say = sayIn(language);
  const [first] = some;
  if (!first || Object.keys(first.positions).length === 0) return '';
  if (new Set(some).size === states.length) return ` ${say('switch.everywhere')}`;
  const boxes = boxesOf(new Set(some), among);
  const words = boxes.map((box) => boxWords(box, positionsIn(among), among, called, language));
  return words.includes('')
    ? ` ${say('switch.together')}`
    : behind(apartIn(language, words), first, called, language);
}

/** Positions by switch, each with each. */
type Box = ReadonlyMap<string, ReadonlySet<number>>;

function positionsIn(states: readonly State[]): Box {
  const box = new Map<string, Set<number>>();
  for (const { positions } of states)
    for (const [name, position] of Object.entries(positions)) {
      const positions = box.get(name) ?? new Set();
      box.set(name, positions.add(position));
    }
  return box;
}

/** Boxes that hold the wanted states and no others of those in question, each as large as it can be. */
function boxesOf(wanted: ReadonlySet<State>, among: readonly State[]): readonly Box[] {
  const whole = positionsIn(among);
  const within = (box: Box): readonly State[] =>
    among.filter(({ positions }) =>
      Object.entries(positions).every(([name, position]) => box.get(name)?.has(position) === true),
    );
  const boxes: Box[] = [];
  const told = new Set<State>();
  for (const state of wanted) {
    if (told.has(state)) continue;
    let box = positionsIn([state]);
    const tryLarger = (name: string, positions: Iterable<number>): void => {
      const larger = new Map(box).set(
        name,
        new Set([...(box.get(name) ?? []), ...positions].sort((a, b) => a - b)),
      );
      if (within(larger).every((one) => wanted.has(one))) box = larger;
    };
    // A switch that does not matter first: what it leaves may then be short.
    for (const [name, positions] of whole) tryLarger(name, positions);
    for (const [name, positions] of whole) for (const position of positions) tryLarger(name, [position]);
    for (const one of within(box)) told.add(one);
    boxes.push(box);
  }
  return boxes;
}

/** Of the switches that matter; empty if none does. */
const boxWords = (
  box: Box,
  whole: Box,
  among: readonly State[],
  nameOf: Called,
  language: Language,
): string =>
  [...box]
    .filter(([name, positions]) => positions.size < (whole.get(name)?.size ?? 0))
    .map(([name, positions]) => {
      const say = sayIn(language);
      const called = [...positions].flatMap(
        (position) => among.find(({ positions }) => positions[name] === position)?.positionNames[name] ?? [],
      );
      const numbers = listIn(language, [...positions].map(String));
      const words =
        called.length === positions.size
          ? eitherIn(
              language,
              called.map((one) => positionWords(language, one)),
            )
          : positions.size === 1
            ? say('switch.position', { position: numbers })
            : say('switch.positions', { positions: numbers });
      return `${nameOf(name)} ${words}`;
    })
    .join(', ');
