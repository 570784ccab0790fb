/**
 * The harness as far as it is made: joints made before thin and grey, new ones with an outline about them, parts that are
 * not concerned pale. New and old differ by form, so that they do on a black and white copy too.
 */
import { lugId, lugIdOf } from '../../circuit/circuit.ts';
import { inside, type Point, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { is } from '../../parts/index.ts';
import type { LabelSlot } from '../../parts/outline.ts';
import { rectToSheet } from '../../place/frame.ts';
import type { PlacedPart, PlacedWire } from '../../place/placement.ts';
import type { Sheet } from '../sheet.ts';
import type { Theme } from '../theme.ts';
import { lengthOf, pointAt, runsOf, shorter } from './beads.ts';
import { bodiesOf, grownAbout, inkOf } from './faces.ts';
import { type EndLook, type EndName, freeEnds, type Made } from './joint-ends.ts';
import { keptClear } from './kept-clear.ts';
import { ledRound } from './led-round.ts';
import { type Tag, tagsOf } from './lug-tags.ts';
import { type Words, wordsIn } from './names.ts';
import { outside, roomOf } from './tags.ts';

interface Scene {
  readonly sheet: Sheet;
  readonly theme: Theme;
  /** By joint, as the circuit has them. */
  readonly made: readonly Made[];
  /** Names of the parts that are drawn in full. */
  readonly concerned: ReadonlySet<string>;
  /** Size of names, drawing units. */
  readonly type: number;
  /** With the values of all parts, or of these components; none where left out. */
  readonly values?: 'all' | ReadonlySet<string>;
  /** Where names and values stand, which is found anew where it is left out. */
  readonly told?: ReadonlyMap<string, Words>;
  /** The parts whose names and values are found then; all where left out. */
  readonly named?: ReadonlySet<string>;
  /** Where names that find no good place then are looked for more closely; nowhere where left out. */
  readonly within?: Rect;
  /** How an end of a joint that was made before is drawn; soldered where left out. */
  readonly before?: (joint: number, end: EndName) => EndLook;
}

/** Where everything of a scene comes to lie. */
export interface Harness extends Scene {
  readonly parts: readonly PlacedPart[];
  /** By `part.lug`. */
  readonly tags: ReadonlyMap<string, Tag>;
  /** By joint: its points from edge to edge of the tags. */
  readonly paths: readonly (readonly Point[])[];
  readonly told: ReadonlyMap<string, Words>;
  /** What words and tags take. */
  readonly words: readonly Rect[];
}

/** What is written at a part. */
export function slotsOf(
  { told, values }: Pick<Harness, 'told' | 'values'>,
  { part }: PlacedPart,
): readonly LabelSlot[] {
  const words = told.get(part.name);
  if (!words) return [];
  return values === 'all' || values?.has(part.name) ? [...words.name, ...words.value] : words.name;
}

/** What a part's name and its tags take. */
export const wordsOf = (
  harness: Pick<Harness, 'tags' | 'told' | 'values'>,
  placed: PlacedPart,
): readonly Rect[] => [
  ...slotsOf(harness, placed).map(roomOf),
  ...placed.outline.lugs.flatMap(({ lug }) => harness.tags.get(lugId(placed.part.name, lug))?.rect ?? []),
];

/** How far before its lug a wire ends that stays free on the bench, drawing units. */
const FREE = 12;

export function harnessOf(scene: Scene): Harness {
  const { sheet, made, concerned, type } = scene;
  const { wires } = sheet.placement;
  const soldered = new Set(
    wires.flatMap(({ joint }, i) => (made[i] === 'absent' ? [] : [joint.from.part, joint.to.part])),
  );
  // A component is not there before its first leg is soldered.
  const parts = sheet.placement.parts.filter(({ part }) => !is(part, 'component') || soldered.has(part.name));
  const tags = new Map(
    parts
      .flatMap((placed) => tagsOf(placed, type, concerned.has(placed.part.name), sheet))
      .map((tag) => [tag.id, tag] as const),
  );
  const cut = wires.map(({ joint: { from, to }, points }) =>
    outside(points, tags.get(lugIdOf(from))?.rect, tags.get(lugIdOf(to))?.rect),
  );
  const round = wires.map(({ joint: { from, to } }, i) => {
    const points = nth(cut, i);
    const [one, other] = [tags.get(lugIdOf(from)), tags.get(lugIdOf(to))];
    if (!one || !other) return points;
    const others = [...tags.values()].filter(({ id }) => id !== one.id && id !== other.id);
    return ledRound(points, [one.rect, other.rect], {
      tags: others.map(({ rect }) => rect),
      lines: cut.filter((_, k) => k !== i && made[k] !== 'absent'),
      faces: parts.flatMap(bodiesOf),
    });
  });
  const clear = keptClear(round, wires, made, tags);
  const paths = wires.map((wire, i) => {
    const points = nth(clear, i);
    if (made[i] === 'plain') return points;
    const { from, to } = wire.joint;
    const open = freeEnds(sheet.placement, i).reduce((path, end) => shorter(path, end, FREE), points);
    return [...bodyEnd(parts, wire, from, open[0]), ...open, ...bodyEnd(parts, wire, to, open.at(-1))];
  });
  const told = scene.told ?? toldIn(scene, parts, tags, paths);
  const grown = parts.map((placed) =>
    grownAbout(placed, slotsOf({ ...scene, told }, placed).map(roomOf), type),
  );
  const harness = { ...scene, parts: grown, tags, paths, told };
  return { ...harness, words: parts.flatMap((placed) => wordsOf(harness, placed)) };
}

/** Width of a line, and with its outline and some air. */
const WIDE = { line: 5, airy: 13 } as const;

/** The words of the parts, clear of the joints that there are. */
function toldIn(
  { sheet, made, type, values, named, within }: Scene,
  parts: readonly PlacedPart[],
  tags: ReadonlyMap<string, Tag>,
  paths: readonly (readonly Point[])[],
): ReadonlyMap<string, Words> {
  const wires = sheet.placement.wires.flatMap(({ joint: { from, to }, points }, i) => {
    if (made[i] === 'absent') return [];
    const runs = runsOf(nth(paths, i), WIDE.line);
    // Where its tags have not grown a line lies as it was placed.
    const placed = runsOf(points, WIDE.line).filter((run) => !runs.some((one) => inside(run, one)));
    return {
      ends: [from.part, to.part],
      runs: [...runs, ...placed],
      beside: runsOf(nth(paths, i), WIDE.airy),
    };
  });
  return wordsIn(
    named ? parts.filter(({ part }) => named.has(part.name)) : parts,
    parts,
    type,
    { wires, tags: [...tags.values()].map(({ rect }) => rect), ink: inkOf(sheet) },
    values === 'all' ? 'all' : 'components',
    within,
  );
}

/** Where a component leg leaves its body: its line is drawn from there, so that all of the leg stands out. */
function bodyEnd(
  parts: readonly PlacedPart[],
  { joint, own }: PlacedWire,
  end: PlacedWire['joint']['from'],
  tip: Point | undefined,
): readonly Point[] {
  const placed = parts.find(({ part }) => part.name === end.part);
  if (joint.kind !== 'leg' || !own.includes(end.part) || !placed || !tip) return [];
  const { x, y, width, height } = rectToSheet(placed.frame, placed.outline.body);
  const edge = {
    x: Math.min(Math.max(tip.x, x), x + width),
    y: Math.min(Math.max(tip.y, y), y + height),
  };
  // A leg begins in line with its body.
  return edge.x === tip.x || edge.y === tip.y ? [edge] : [];
}

/** What a harness takes up, all parts and joints of the kit counted, whether they are there yet or not. */
export function extentOf(harness: Harness): readonly Rect[] {
  const { sheet, parts, words, paths } = harness;
  const bodies = [...sheet.placement.parts, ...parts].flatMap(roomsOf);
  const lines = paths.flat().map(({ x, y }): Rect => ({ x: x - 8, y: y - 8, width: 16, height: 16 }));
  return [...bodies, ...words, ...lines];
}

/** What a part's bodies and its tags take up on the sheet. */
export const roomsOf = (placed: PlacedPart): readonly Rect[] => [
  ...bodiesOf(placed),
  ...placed.outline.lugs.map(({ tag }) => rectToSheet(placed.frame, tag)),
];

/** Radius of the dot at the end of a new joint, and at one that was made before; on a short line dots are smaller, so that two are told apart. */
const DOT = { new: 4.4, soldered: 2.4, hooked: 4.4, gathered: 5.2 } as const;
/** Between the dots of a line, with what is drawn about them. */
const BETWEEN_DOTS = 5;

/** How much farther along its line than its radius an end's dot stands before a tag, so that it touches the tag and hides nothing of the lug's name. */
const BEFORE_TAG = 0.1;

interface Dot extends Point {
  readonly radius: number;
}

/** Where the solder of a joint's end is drawn: before the lug's tag, or on the surface that it is soldered to. */
export function dotAt({ sheet, tags, paths, made, before: look }: Harness, joint: number, end: EndName): Dot {
  const path = nth(paths, joint);
  const spare = lengthOf(path) - BETWEEN_DOTS;
  const size = made[joint] === 'before' ? DOT[look?.(joint, end) ?? 'soldered'] : DOT.new;
  const radius = Math.min(size, spare / 2);
  const before = Math.min(radius + BEFORE_TAG, spare / 2 - radius);
  const lug = lugIdOf(nth(sheet.placement.wires, joint).joint[end]);
  return { ...pointAt(end === 'from' ? path : [...path].reverse(), tags.has(lug) ? before : 0), radius };
}
