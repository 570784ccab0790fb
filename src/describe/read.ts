/**
 * A description to a typed kit, with every problem at once. Each part and each joint is read on its own, so that
 * what is wrong with one hides nothing of the others.
 */
import type { Problem } from '../common/problem.ts';
import { problem } from '../common/problem.ts';
import { givenOr } from '../common/units.ts';
import { DEFAULT_LANGUAGE } from '../messages/language.ts';
import type { Part } from '../parts/index.ts';
import type { PartBase } from '../parts/kind.ts';
import { type BaseReader, chainOf, isMap, kitProblem, type Layer, type Written } from './chain.ts';
import { readIntended } from './intended.ts';
import { problemsOf, typeName } from './issues.ts';
import type { Draft, Hand, Joint, Kit } from './kit.ts';
import { JOINTS, merge, PARTS } from './merge.ts';
import { readJoint } from './read-joint.ts';
import { readPart } from './read-part.ts';
import { headFields, headSchema } from './schema.ts';
import { parseText, type Source, valueSource } from './source.ts';
import { isFaulty, type PartsList } from './stock.ts';
import { matchParts } from './stock-match.ts';
import { isName } from './words.ts';

export interface Reading {
  /** Only when there is no problem at all. */
  readonly kit?: Kit;
  /** What could be read in spite of problems; absent when that is nothing. The same as `kit` when that is there. */
  readonly draft?: Draft;
  readonly problems: readonly Problem[];
  readonly source: Source;
  /** The descriptions that the kit is made of, its own last; absent where one of them cannot be read. */
  readonly layers?: readonly Layer[];
  /** The parts list that it was read with. */
  readonly list?: PartsList;
}

/** Where nobody says how bases are found, there are none. */
const noBases: BaseReader = () => undefined;

/** The arrangement of a kit that names none: parts where the wires are shortest. */
const ARRANGEMENT = 'free-flow';
/** Common practice, no source: 3 m of cable at 100 pF/m into 1 MΩ; loads are compared at 1 kHz. */
const OUTPUT_LOAD = { cable: 300e-12, cableTolerance: 0.2, amplifier: 1e6, frequency: 1e3 };

/** Reads a text: JSON when the file's name ends so, else YAML. */
export function readKit(
  text: string,
  file: string,
  readBase: BaseReader = noBases,
  list?: PartsList,
): Reading {
  const { source, value, problems } = parseText(text, file);
  // A text that cannot be parsed has no value worth a further word.
  if (value === undefined) return { problems, source };
  if (value === null) return { problems: [...problems, problem('file-empty', [], {})], source };
  return readChain(value, source, problems, readBase, list);
}

/** Reads a value that is there already, such as the one a TypeScript kit exports. */
export function kitFromValue(
  value: unknown,
  file: string,
  readBase: BaseReader = noBases,
  list?: PartsList,
): Reading {
  return readChain(value, valueSource(file), [], readBase, list);
}

/** Reads a description that a catalogue makes of pieces; `source` tells where each of them is written. */
export const kitFromPieces = (
  value: Written,
  source: Source,
  readBase: BaseReader,
  list?: PartsList,
): Reading => readChain(value, source, [], readBase, list);

/** A script that could not be run: what it threw, without its stack, at the place a compiler names if one does. */
export function failedScript(message: string, file: string): Reading {
  const [, line, column, error] = /:(\d+):(\d+): ERROR: (.*)/.exec(message) ?? [];
  const reason = error ?? message.split('\n', 1)[0]?.trim();
  const problems = [problem('script-failed', [], { reason: reason || 'it threw an error without words' })];
  const place = { file, line: Number(line ?? 1), column: Number(column ?? 0) + 1, excerpt: '' };
  return { problems, source: { ...valueSource(file), placeOf: () => place } };
}

function readChain(
  value: unknown,
  source: Source,
  before: readonly Problem[],
  readBase: BaseReader,
  list: PartsList | undefined,
): Reading {
  const unfit = kitProblem(value);
  if (unfit || !isMap(value)) return { problems: [...before, ...(unfit ? [unfit] : [])], source };
  // A kit by itself is read as it is.
  if (!Object.hasOwn(value, 'extends') && !Object.hasOwn(value, 'remove')) {
    const layers = [{ value, source, remove: { parts: [], joints: [], keys: [] } }];
    return { ...readValue(value, source, before, [], list), layers };
  }
  const chain = chainOf(value, source, readBase);
  const placed = [...before.map((problem) => ({ problem, source })), ...chain.problems];
  const whole = merge(chain.layers, placed);
  if (!chain.complete) return { problems: placed.map(({ problem }) => problem), source: whole.source };
  const read = readValue(whole.value, whole.source, whole.problems, whole.opaque, list);
  return { ...read, layers: chain.layers };
}

/** @param opaque names that count as parts beside those described */
function readValue(
  value: Written,
  source: Source,
  before: readonly Problem[],
  opaque: readonly string[],
  list: PartsList | undefined,
): Reading {
  const head = readHead(value);
  const parts = readParts(value, head.kit.hand, list);
  const joints = readJoints(value);
  const problems = [...before, ...head.problems, ...parts.problems, ...joints.problems];
  const listed = list === undefined ? {} : { list };
  const { substitutions } = parts;
  const base = {
    ...head.kit,
    parts: parts.parts,
    joints: joints.joints,
    ...listed,
    ...(substitutions.length === 0 ? {} : { substitutions }),
  };
  const draft: Draft = { ...base, opaque: [...parts.opaque, ...opaque], unread: joints.unread };
  const isSound = problems.length === 0 && !(list && isFaulty(list));
  if (isSound) return { kit: base, draft, problems, source, ...listed };
  return isMap(value.parts) ? { draft, problems, source, ...listed } : { problems, source, ...listed };
}

function readHead(value: Written): { kit: Omit<Kit, 'parts' | 'joints'>; problems: readonly Problem[] } {
  const read = headSchema.safeParse(value);
  const problems = read.success
    ? []
    : problemsOf(read.error.issues, { schema: headSchema, value, path: [], what: 'the kit' });
  const written = read.success ? read.data : salvageHead(value);
  const load = written['output-load'];
  const kit = {
    id: written.kit,
    title: written.title,
    ...(written.about === undefined ? {} : { about: written.about }),
    arrangement: written.arrangement ?? ARRANGEMENT,
    view: written.view ?? 'solder-side',
    hand: written.hand ?? 'right',
    language: written.language ?? DEFAULT_LANGUAGE,
    ...(written.page === undefined ? {} : { page: written.page }),
    outputLoad: {
      cable: givenOr(load?.cable, OUTPUT_LOAD.cable),
      cableTolerance: givenOr(load?.['cable-tolerance'], OUTPUT_LOAD.cableTolerance),
      amplifier: givenOr(load?.amplifier, OUTPUT_LOAD.amplifier),
      frequency: givenOr(load?.frequency, OUTPUT_LOAD.frequency),
    },
    ...(written.stock === undefined ? {} : { stock: written.stock }),
    ...(Object.hasOwn(value, 'intended') ? { intended: readIntended(written.intended) } : {}),
  };
  return { kit, problems };
}

/** The head's fields that can be read, for a draft: a bad title must not hide a bad arrangement. */
function salvageHead(value: Written) {
  const kit = headFields.kit.safeParse(value.kit);
  const title = headFields.title.safeParse(value.title);
  const about = headFields.about.safeParse(value.about);
  const arrangement = headFields.arrangement.safeParse(value.arrangement);
  const view = headFields.view.safeParse(value.view);
  const hand = headFields.hand.safeParse(value.hand);
  const language = headFields.language.safeParse(value.language);
  const page = headFields.page.safeParse(value.page);
  const outputLoad = headFields['output-load'].safeParse(value['output-load']);
  const stock = headFields.stock.safeParse(value.stock);
  const intended = headFields.intended.safeParse(value.intended);
  return {
    kit: kit.data ?? 'unnamed',
    title: title.data ?? 'Unnamed',
    about: about.data,
    arrangement: arrangement.data,
    view: view.data,
    hand: hand.data,
    language: language.data,
    page: page.data,
    'output-load': outputLoad.data,
    stock: stock.data,
    intended: intended.data,
  };
}

function readParts(value: Written, hand: Hand, list: PartsList | undefined) {
  const common: Pick<PartBase, 'leftHanded'> = hand === 'left' ? { leftHanded: true } : {};
  const [parts, opaque, problems]: [Part[], string[], Problem[]] = [[], [], []];
  const written = value.parts;
  const matched = matchParts(isMap(written) ? written : {}, list, common);
  problems.push(...matched.problems);
  opaque.push(...matched.opaque);
  if (isMap(written)) {
    for (const name of Object.keys(written))
      if (!isName(name)) problems.push(problem('bad-name', ['parts', name], { got: name }, 'key'));
    for (const [name, described] of Object.entries(matched.parts)) {
      const read = readPart(name, described, common);
      problems.push(...read.problems);
      if (read.part) parts.push(read.part);
      else opaque.push(name);
    }
  } else if (Object.hasOwn(value, 'parts'))
    problems.push(problem('wrong-type', ['parts'], { expected: PARTS, got: typeName(written) }));
  return { parts, opaque, problems, substitutions: matched.substitutions };
}

function readJoints(value: Written) {
  const [joints, problems]: [Joint[], Problem[]] = [[], []];
  const written = value.joints;
  if (!Array.isArray(written)) {
    if (Object.hasOwn(value, 'joints'))
      problems.push(problem('wrong-type', ['joints'], { expected: JOINTS, got: typeName(written) }));
    return { joints, problems, unread: 1 };
  }
  for (const [index, described] of Array.from(written as readonly unknown[]).entries()) {
    const read = readJoint(index, described);
    problems.push(...read.problems);
    if (read.joint) joints.push(read.joint);
  }
  return { joints, problems, unread: written.length - joints.length };
}
