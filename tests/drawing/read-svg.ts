/**
 * Reads a drawing back from its geometry alone: where lugs are, where wires begin and end. Ids only tell which part a
 * lug stands in and which element is a wire; what is joined to what is read from coordinates.
 */
import { LIGHT } from '../../src/draw/theme.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
export interface DrawnLug extends Box {
  readonly name: string;
  readonly round: boolean;
}
export interface Stretch {
  /** Number of the wire's group. */
  readonly wire: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}
export type Spot = readonly [number, number];
export interface DrawnWire {
  readonly wire: number;
  readonly points: readonly Spot[];
  /** Lugs that the first and the last point lie on; `?` for none. */
  readonly ends: readonly [string, string];
  /** Middles of the openings. */
  readonly openings: readonly Spot[];
}
export interface Drawn {
  readonly lugs: readonly DrawnLug[];
  /** Plates, cases and component bodies, by part. */
  readonly bodies: readonly (Box & { readonly part: string; readonly round: boolean })[];
  readonly stretches: readonly Stretch[];
  readonly wires: readonly DrawnWire[];
  /** `a.b > c.d` with its ends in alphabetical order; `?` for an end that is on no lug. */
  readonly joints: readonly string[];
  /** What is drawn in a way that this reading would misread. Each a sentence. */
  readonly faults: readonly string[];
}

/** Widest opening that still reads as one wire passing below another, drawing units. */
const WIDEST_OPENING = 14;

const attribute = (tag: string, name: string): string =>
  new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1] ?? '';
const value = (tag: string, name: string): number => Number(attribute(tag, name));

/** The text of the group with this id, its nested groups included. */
function group(svg: string, id: string): string {
  const start = svg.indexOf(`<g id="${id}"`);
  if (start < 0) return '';
  let depth = 0;
  const tags = /<g[\s>]|<\/g>/g;
  tags.lastIndex = start;
  for (let tag = tags.exec(svg); tag; tag = tags.exec(svg)) {
    depth += tag[0] === '</g>' ? -1 : 1;
    if (depth === 0) return svg.slice(start, tag.index);
  }
  return svg.slice(start);
}

export function readSvg(svg: string, kit: string): Drawn {
  const lugs: DrawnLug[] = [];
  const bodies: (Box & { part: string; round: boolean })[] = [];
  const faults: string[] = [];
  // Every coordinate is compared with every other, so nothing inside the drawing may be moved on its own.
  if (/transform=/.test(group(svg, `${kit}-drawing`).replace(/^<g[^>]*>/, '')))
    faults.push('something inside the drawing is moved by a transform of its own');
  for (const [, part = ''] of svg.matchAll(new RegExp(`<g id="${kit}-part-([^"]*)"`, 'g')))
    readPart(group(svg, `${kit}-part-${part}`), part, lugs, bodies);
  const wires = group(svg, `${kit}-wires`)
    .split(/(?=<g id="[^"]*-joint-\d+")/)
    .slice(1)
    .map((text): DrawnWire => {
      const wire = Number(/-joint-(\d+)"/.exec(text)?.[1]);
      const strokes = [...text.matchAll(/<path d="([^"]*)"/g)].map(([, d = '']) => d);
      if (new Set(strokes).size !== 1) faults.push(`wire ${wire} is not one line`);
      const { points, openings, broken } = corners(strokes[0] ?? '');
      if (broken) faults.push(`wire ${wire} is broken by more than an opening`);
      const ends = [lugAt(lugs, points[0]), lugAt(lugs, points[points.length - 1])] as const;
      return { wire, points, openings, ends };
    });
  const stretches = wires.flatMap(({ wire, points }) =>
    points.slice(1).map((b, i): Stretch => {
      const a = points[i] ?? b;
      return { wire, x1: a[0], y1: a[1], x2: b[0], y2: b[1] };
    }),
  );
  const joints = wires.map(({ ends }) => [...ends].sort().join(' > '));
  return { lugs, bodies, stretches, wires, joints, faults };
}

/** Collects tags, plates and cases of a part, and of a two-leg part its legs' ends and the body between them. */
function readPart(
  inside: string,
  part: string,
  lugs: DrawnLug[],
  bodies: (Box & { part: string; round: boolean })[],
): void {
  const texts = [...inside.matchAll(/(<text[^>]*>)([^<]*)<\/text>/g)].map(([, tag = '', words = '']) => ({
    words,
    x: value(tag, 'x'),
    y: value(tag, 'y'),
  }));
  const dots: Spot[] = [];
  const others: Box[] = [];
  for (const [tag] of inside.matchAll(/<(?:rect|circle)\s[^>]*>/g)) {
    const fill = attribute(tag, 'fill');
    if (tag.startsWith('<circle')) {
      const [x, y, r] = [value(tag, 'cx'), value(tag, 'cy'), value(tag, 'r')];
      if (r > 30) {
        const box = { x: x - r, y: y - r, width: 2 * r, height: 2 * r, round: true };
        lugs.push({ ...box, name: `${part}.case` });
        bodies.push({ ...box, part });
      } else if (fill === LIGHT.solder) dots.push([x, y]);
      continue;
    }
    const [width, height] = [value(tag, 'width'), value(tag, 'height')];
    const box = { x: value(tag, 'x'), y: value(tag, 'y'), width, height };
    if (fill === LIGHT.lug) {
      const words = texts.filter((t) => within(box, t.x, t.y, 0));
      const name = words.length === 1 ? words[0]?.words : undefined;
      lugs.push({ ...box, name: `${part}.${name ?? '?'}`, round: false });
    } else if (fill === LIGHT.plate) bodies.push({ ...box, part, round: false });
    else if (fill !== LIGHT.accentFill) others.push(box);
  }
  const [one, two] = dots;
  if (!one || !two || dots.length !== 2) return;
  // The two legs carry no name in the drawing, as they carry none in the hand: leg 1 is the one drawn first.
  dots.forEach(([x, y], i) => {
    lugs.push({ x: x - 4, y: y - 4, width: 8, height: 8, name: `${part}.${i + 1}`, round: false });
  });
  const between = others.filter(
    (box) =>
      Math.abs(box.x + box.width / 2 - (one[0] + two[0]) / 2) < 1 &&
      Math.abs(box.y + box.height / 2 - (one[1] + two[1]) / 2) < 1,
  );
  const body = between.sort((a, b) => b.width * b.height - a.width * a.height)[0];
  if (body) bodies.push({ ...body, part, round: false });
}

export const within = (box: Box, x: number, y: number, slack: number): boolean =>
  x >= box.x - slack &&
  x <= box.x + box.width + slack &&
  y >= box.y - slack &&
  y <= box.y + box.height + slack;

function lugAt(lugs: readonly DrawnLug[], p: Spot | undefined): string {
  if (!p) return '?';
  const hit = lugs.filter((lug) =>
    lug.round
      ? Math.hypot(p[0] - lug.x - lug.width / 2, p[1] - lug.y - lug.height / 2) <= lug.width / 2
      : within(lug, p[0], p[1], 0.01),
  );
  // A lug may stand close below a case: the tag is the nearer thing to solder to. Two tags at once are no answer.
  const tags = hit.filter((lug) => !lug.round);
  const best = tags.length > 0 ? tags : hit;
  return best.length === 1 ? (best[0]?.name ?? '?') : '?';
}

/** The corners of a wire: a rounded bend's control point is its corner; straight openings of fair width are bridged. */
export function corners(d: string): {
  readonly points: readonly Spot[];
  readonly openings: readonly Spot[];
  readonly broken: boolean;
} {
  const points: Spot[] = [];
  const openings: Spot[] = [];
  // Anything but these steps would be misread, so it counts as broken.
  let broken = !/^(?:[MLQ][-\d.\s,]+)+$/.test(d);
  for (const [, kind, numbers = ''] of d.matchAll(/([MLQ])([^MLQ]*)/g)) {
    const n = numbers
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    const end: Spot = [n[n.length - 2] ?? 0, n[n.length - 1] ?? 0];
    const last = points[points.length - 1];
    if (kind === 'M' && last) {
      const [dx, dy] = [Math.abs(end[0] - last[0]), Math.abs(end[1] - last[1])];
      if ((dx > 0.01 && dy > 0.01) || dx + dy > WIDEST_OPENING) broken = true;
      openings.push([(end[0] + last[0]) / 2, (end[1] + last[1]) / 2]);
    }
    if (kind === 'Q') points.push([n[0] ?? 0, n[1] ?? 0]);
    points.push(end);
  }
  const kept = points.filter((p, i) => {
    const [a, b] = [points[i - 1], points[i + 1]];
    return !a || !b || !((a[0] === p[0] && p[0] === b[0]) || (a[1] === p[1] && p[1] === b[1]));
  });
  return { points: kept, openings, broken };
}
