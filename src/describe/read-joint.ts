/** One joint of the description: its kind, its two ends, and what is said of the wire. */
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import { problemsOf, typeName } from './issues.ts';
import { type End, type Joint, type JointKind, jointKinds } from './kit.ts';
import { jointExtras, jointShapes } from './schema.ts';
import { meantBy } from './synonyms.ts';
import { JOINT } from './words.ts';

/** Arrows that people write for the one that is meant. */
const ARROW = /[-=–—]+>|→|⇒/;

interface ReadJoint {
  /** Absent when its kind or its ends cannot be made out. */
  readonly joint?: Joint;
  readonly problems: readonly Problem[];
}

const isJointKind = (key: string): key is JointKind => (jointKinds as readonly string[]).includes(key);

export function readJoint(index: number, value: unknown, path: KeyPath = ['joints', index]): ReadJoint {
  if (typeof value === 'string') return readEnds(value, 'wire', index, path);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    const expected = 'a joint, such as neck.hot > selector.A1';
    return { problems: [problem('wrong-type', path, { expected, got: typeName(value) })] };
  }
  const found = Object.keys(value).filter(isJointKind);
  const [kind, another] = found;
  if (kind === undefined || another !== undefined) return { problems: unclear(value, found, path) };
  return readKind(value as Readonly<Record<string, unknown>>, kind, index, path);
}

/** A joint of no kind or of several: a misspelt key explains the first better than the missing one would. */
function unclear(value: object, found: readonly JointKind[], path: KeyPath): readonly Problem[] {
  const allowed = [...jointKinds, ...Object.keys(jointExtras)];
  const unknown = Object.keys(value).filter((key) => !allowed.includes(key));
  if (found.length > 0 || unknown.length === 0)
    return [problem('joint-kind', path, { found, allowed: jointKinds }, 'key')];
  return unknown.map((key) => {
    const meant = meantBy(key, allowed);
    const detail = { key, allowed, ...(meant === undefined ? {} : { nearest: meant }) };
    return problem('unknown-key', [...path, key], detail, 'key');
  });
}

function readKind(
  value: Readonly<Record<string, unknown>>,
  kind: JointKind,
  index: number,
  path: KeyPath,
): ReadJoint {
  const schema = jointShapes[kind];
  const read = schema.safeParse(value);
  const issues = (read.error?.issues ?? []).filter((issue) => issue.path[0] !== kind);
  const problems = problemsOf(issues, { schema, value, path, what: 'this joint' });
  const written = value[kind];
  if (typeof written !== 'string') {
    const expected = 'PART.LUG > PART.LUG';
    return {
      problems: [...problems, problem('wrong-type', [...path, kind], { expected, got: typeName(written) })],
    };
  }
  const ends = readEnds(written, kind, index, [...path, kind]);
  if (!ends.joint) return { problems: [...problems, ...ends.problems] };
  const { colour, length, step } = { ...read.data } as {
    colour?: string | undefined;
    length?: number | undefined;
    step?: number | undefined;
  };
  const extras = {
    ...(colour === undefined ? {} : { colour }),
    ...(length === undefined ? {} : { length }),
    ...(step === undefined ? {} : { step }),
  };
  return { joint: { ...ends.joint, ...extras }, problems };
}

function readEnds(text: string, kind: JointKind, index: number, path: KeyPath): ReadJoint {
  const arrow = ARROW.exec(text)?.[0];
  if (arrow !== undefined) return { problems: [problem('bad-joint', path, { got: text, arrow })] };
  const found = JOINT.exec(text);
  if (!found) return { problems: [problem('bad-joint', path, { got: text })] };
  const [, part = '', lug = '', otherPart = '', otherLug = ''] = found;
  const [from, to]: [End, End] = [
    { part, lug },
    { part: otherPart, lug: otherLug },
  ];
  return { joint: { kind, from, to, index }, problems: [] };
}
