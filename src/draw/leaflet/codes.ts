/** Colour codes of wires in a size that can be read where the drawing is printed small: each on its own wire, where it hides the least. */
import { around, inside, overlaps, type Point, type Rect } from '../../common/geometry.ts';
import { nth } from '../../common/must.ts';
import { is } from '../../parts/index.ts';
import { rectToSheet } from '../../place/frame.ts';
import { chipWidth } from '../chips.ts';
import { lengthOf, pointAt, runsOf } from './beads.ts';
import type { Harness } from './harness.ts';
import type { Spot } from './spots.ts';

interface Code {
  readonly code: string;
  readonly rect: Rect;
}

/** What it costs to hide a word or another code, a part's face, another wire; a unit away from the middle of its own costs less. */
const PRICE = { word: 1000, face: 200, line: 60, away: 0.2 } as const;
const STEP = 4;

export function codesOf({ sheet, parts, paths, words, type }: Harness): readonly Code[] {
  const faces = parts.map(({ part, frame, outline }) => ({
    rect: rectToSheet(frame, outline.body),
    price: is(part, 'component') ? PRICE.word : PRICE.face,
  }));
  const runs = paths.map((path) => runsOf(path, 8));
  const placed: Rect[] = [];
  return sheet.placement.wires.flatMap(({ joint: { colour: code } }, i): Code | [] => {
    if (code === undefined) return [];
    const path = nth(paths, i);
    const others = runs.flatMap((other, k) => (k === i ? [] : other));
    const length = lengthOf(path);
    let best = around(0, 0, chipWidth(code, type), type * 1.3);
    let least = Number.POSITIVE_INFINITY;
    for (let along = 0; along <= length; along += STEP) {
      if (PRICE.away * Math.abs(along - length / 2) >= least) continue;
      const { x, y } = pointAt(path, along);
      const rect = around(Math.round(x), Math.round(y), best.width, best.height);
      const cost =
        PRICE.away * Math.abs(along - length / 2) +
        PRICE.word * [...words, ...placed].filter((word) => overlaps(word, rect)).length +
        faces.reduce((sum, face) => sum + (overlaps(face.rect, rect) ? face.price : 0), 0) +
        PRICE.line * others.filter((other) => overlaps(other, rect)).length;
      if (cost < least) [best, least] = [rect, cost];
    }
    placed.push(best);
    return { code, rect: best };
  });
}

/** Of a code beside its line: what the leader costs, and each unit of its length; of one on a corner of its line. */
const ASIDE = { leader: 70, reach: 2, corner: 40 } as const;
/** Around a code. */
const AIR = 2;
const WAYS = 16;
const RINGS = [6, 12, 20, 30, 42, 56, 72, 90, 110, 132] as const;
/** Where along its line a leader may begin, as shares of its length. */
const STARTS = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8] as const;

/** A code of that size, as it lies about its middle. */
export const codeRect = ({ x, y }: Point, code: string, type: number): Rect =>
  around(x, y, chipWidth(code, type), type * 1.3);

const roomOf = (rect: Rect): Rect => ({
  x: rect.x - AIR,
  y: rect.y - AIR,
  width: rect.width + 2 * AIR,
  height: rect.height + 2 * AIR,
});

/** Spots for a code on its own line. */
export function* codeOnLine(path: readonly Point[], code: string, type: number): Generator<Spot> {
  const length = lengthOf(path);
  for (let along = STEP; along < length; along += STEP) {
    const { x, y } = pointAt(path, along);
    const centre = { x: Math.round(x), y: Math.round(y) };
    const room = roomOf(codeRect(centre, code, type));
    const cornered = path.slice(1, -1).some((corner) => inside({ ...corner, width: 0, height: 0 }, room));
    yield {
      centre,
      room,
      price: PRICE.away * Math.abs(along - length / 2) + (cornered ? ASIDE.corner : 0),
    };
  }
}

/** Spots for a code beside its own line, with a leader from a point of it that is free. */
export function* codeAside(
  path: readonly Point[],
  code: string,
  type: number,
  free: (start: Point) => boolean,
): Generator<Spot> {
  const length = lengthOf(path);
  const all = STARTS.map((share) => pointAt(path, share * length));
  const clear = all.filter(free);
  for (const start of clear.length > 0 ? clear : all) {
    for (const ring of RINGS)
      for (let way = 0; way < WAYS; way++) {
        const angle = (2 * Math.PI * (way + 0.5)) / WAYS;
        const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
        const { width, height } = codeRect(start, code, type);
        const edge = Math.min(width / 2 / Math.abs(ux), height / 2 / Math.abs(uy));
        const centre = {
          x: Math.round(start.x + (edge + ring) * ux),
          y: Math.round(start.y + (edge + ring) * uy),
        };
        yield {
          centre,
          room: roomOf(codeRect(centre, code, type)),
          leader: [start, { x: start.x + ring * ux, y: start.y + ring * uy }],
          price: ASIDE.leader + ASIDE.reach * ring,
        };
      }
  }
}
