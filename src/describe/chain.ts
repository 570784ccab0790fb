/** A kit and the kits it extends, each with its own text and places. Pure: a reader of bases is passed in. */
import { closestName } from '../common/nearest.ts';
import { type Problem, problem } from '../common/problem.ts';
import { problemsOf, typeName } from './issues.ts';
import { extensionSchema } from './schema.ts';
import { parseText, type Source, valueSource } from './source.ts';

/** What was found for a base: its text, or its value where a script made it; or why there is none. */
export type Base =
  | {
      /** As problems name it; a base's own `extends` is relative to it, and it tells a loop. */
      readonly file: string;
      readonly text: string;
      /** It is a circuit that ships with the program. */
      readonly ships?: true;
    }
  | { readonly file: string; readonly value: unknown }
  | {
      /** Why it cannot be read, in words that follow its name. */
      readonly reason: string;
      /** The name that was probably meant. */
      readonly nearest?: string;
      /** Names there are, where that is a short list. */
      readonly allowed?: readonly string[];
    };

/**
 * Finds a base.
 *
 * @param name what `extends` says: a path, or `circuit/NAME`
 * @param from the file that says it
 */
export type BaseReader = (name: string, from: string) => Base | undefined;

export type Written = Readonly<Record<string, unknown>>;

/** One description of the chain as it is written. */
export interface Layer {
  readonly source: Source;
  readonly value: Written;
  readonly remove: Removal;
}

/** What a kit takes out of its base. */
interface Removal {
  readonly parts: readonly string[];
  /** Joints as they may be written in `joints`. */
  readonly joints: readonly unknown[];
  /** `page`, `volume.label`. */
  readonly keys: readonly string[];
}

/** A problem, and the text of the chain that it is in. */
export interface Placed {
  readonly problem: Problem;
  readonly source: Source;
}

interface Chain {
  /** The kit itself is the last. */
  readonly layers: readonly Layer[];
  readonly problems: readonly Placed[];
  /** Whether every base could be read; without one of them nothing is known of the kit. */
  readonly complete: boolean;
}

/** Far more than anybody can follow; links in a folder can lead on for ever. */
const MOST_BASES = 100;

/** What makes a description a kit, however much else is wrong with it. */
const MARKS = ['kit', 'parts', 'joints'];

export const isMap = (value: unknown): value is Written =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether a value has a key of a kit's, or one that was meant to be. */
export const isKitLike = (value: unknown): boolean =>
  isMap(value) && Object.keys(value).some((key) => closestName(key, MARKS) !== undefined);

/** What keeps a value from being read as a kit at all. */
export function kitProblem(value: unknown): Problem | undefined {
  if (!isMap(value)) {
    const expected = 'a kit: its keys kit, title, parts and joints';
    return problem('wrong-type', [], { expected, got: typeName(value) });
  }
  return isKitLike(value) ? undefined : problem('not-a-kit', [], {});
}

/** Reads bases until there are no more. */
export function chainOf(value: Written, source: Source, readBase: BaseReader): Chain {
  const layers: Layer[] = [];
  const problems: Placed[] = [];
  let at = { value, source };
  while (true) {
    const { source: own } = at;
    const add = (...found: readonly Problem[]): number =>
      problems.push(...found.map((one) => ({ problem: one, source: own })));
    const { extended, remove, problems: wrong } = extensionOf(at.value);
    add(...wrong);
    layers.unshift({ ...at, remove });
    if (extended === undefined) return { layers, problems, complete: !Object.hasOwn(at.value, 'extends') };
    const base = readBase(extended, own.file) ?? { reason: 'no base of this name is given' };
    if ('reason' in base) {
      const { reason, nearest, allowed } = base;
      const more = { ...(nearest === undefined ? {} : { nearest }), ...(allowed ? { allowed } : {}) };
      add(problem('base-unreadable', ['extends'], { got: extended, reason, ...more }));
      return { layers, problems, complete: false };
    }
    const files = layers.map((layer) => layer.source.file);
    if (files.includes(base.file) || files.length > MOST_BASES) {
      const loop = files.slice(0, files.indexOf(base.file) + 1).reverse();
      const most = files.includes(base.file) ? {} : { most: MOST_BASES };
      add(problem('extends-itself', ['extends'], { files: [...loop, base.file], ...most }));
      return { layers, problems, complete: false };
    }
    const read =
      'text' in base
        ? parseText(base.text, base.file)
        : { value: base.value, problems: [], source: valueSource(base.file) };
    const source = 'ships' in base && base.ships ? { ...read.source, ships: true as const } : read.source;
    problems.push(...read.problems.map((one) => ({ problem: one, source })));
    const unfit =
      'text' in base && read.value === null ? problem('file-empty', [], {}) : kitProblem(read.value);
    // A text that cannot be parsed has no value worth a further word.
    if (unfit && !('text' in base && read.value === undefined)) problems.push({ problem: unfit, source });
    if (!isMap(read.value) || unfit) return { layers, problems, complete: false };
    at = { value: read.value, source };
  }
}

const NOTHING: Removal = { parts: [], joints: [], keys: [] };

/** What a description says of its base. */
function extensionOf(value: Written) {
  const read = extensionSchema.safeParse(value);
  const problems = read.success
    ? []
    : problemsOf(read.error.issues, { schema: extensionSchema, value, path: [], what: 'the kit' });
  const extended = extensionSchema.shape.extends.safeParse(value.extends).data;
  const removed = extensionSchema.shape.remove.safeParse(value.remove).data;
  // Where there is no base, that none of this is in it need not be said.
  if (Object.hasOwn(value, 'remove') && !Object.hasOwn(value, 'extends')) {
    const alone = problem('remove-without-extends', ['remove'], {}, 'key');
    return { extended, remove: NOTHING, problems: [...problems, alone] };
  }
  const remove: Removal = {
    parts: removed?.parts ?? NOTHING.parts,
    joints: removed?.joints ?? NOTHING.joints,
    keys: removed?.keys ?? NOTHING.keys,
  };
  return { extended, remove, problems };
}
