/** What the pots with two gangs share: lugs, tracks, the long case and its face. */
import { type Gang, gangLugs, lugNames, trackOf, usualGang } from './gang.ts';
import type { CircuitElement, ControlRole, LugSpec, Seen, UsualValue } from './kind.ts';
import type { Outline } from './outline.ts';
import { gangFace } from './pot-face.ts';
import { pairOutline, potOutline, sizesSeen } from './pot-outline.ts';
import type { Shape } from './shape.ts';

const [A, B] = [gangLugs('a'), gangLugs('b')];
const CASE = { name: 'case', role: 'case', room: 11 } as const;
export const twoGangLugs = [...A, ...B, CASE] as const satisfies readonly LugSpec[];
const NAMES = [lugNames(A), lugNames(B)] as const;

interface Gangs {
  readonly a: Gang;
  readonly b: Gang;
}

interface Turned {
  readonly shaft?: string;
  readonly role?: ControlRole;
}

export const twoTracks = ({ a, b }: Gangs, [of, other]: readonly [Turned, Turned]): CircuitElement[] => [
  trackOf('a', NAMES[0], a, of),
  trackOf('b', NAMES[1], b, other),
];

/** @param paths the fields that the values are written in */
export const usualGangs = (
  { a, b }: Gangs,
  ...paths: readonly [readonly string[], readonly string[]]
): readonly UsualValue[] => [usualGang(a, paths[0].join('.')), usualGang(b, paths[1].join('.'))];

/**
 * @param words name and value of each gang
 * @param narrow whether it is to lie on its side
 */
export const twoGangOutline = (
  words: readonly (readonly [string, string])[],
  narrow: boolean | undefined,
): Outline =>
  potOutline(
    words.flatMap(([name, value], i) => {
      const lugs = NAMES[i];
      return lugs ? [{ lugs, name, value }] : [];
    }),
    CASE.name,
    narrow,
  );

/** The same with words that are of both gangs between them. */
export const twoGangOutlineBetween = (name: string, value: string, narrow: boolean | undefined): Outline =>
  pairOutline(NAMES, { name, value }, CASE.name, narrow);

/** @param free whether no words stand inside the tracks */
export function twoGangFace({ a, b }: Gangs, { outline, turned }: Seen, free = false): readonly Shape[] {
  const [left, right] = sizesSeen(outline, 2);
  if (!left || !right) return [];
  return [
    { shape: 'rect', role: 'case', rect: outline.body, radius: left.radius },
    ...gangFace(left, outline, NAMES[0], a, turned?.a, free),
    ...gangFace(right, outline, NAMES[1], b, turned?.b, free),
  ];
}
