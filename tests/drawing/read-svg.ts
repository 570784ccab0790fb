/**
 * Reads a drawing back from its geometry alone: where lugs are, where wires begin and end. Ids only tell which part a
 * lug stands in and which element is a wire; what is joined to what is read from coordinates.
 */
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
  readonly wire: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}
export interface Drawn {
  readonly lugs: readonly DrawnLug[];
  /** Plates, cases and component bodies, by part. */
  readonly bodies: readonly (Box & { readonly part: string; readonly round: boolean })[];
  readonly stretches: readonly Stretch[];
  /** `a.b > c.d` with its ends in alphabetical order; `?` for an end that is on no lug. */
  readonly joints: readonly string[];
}

const LUG_FILL = '#e8d9a8';
const PLATE_FILL = '#f6f3ea';

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
  for (const [, part = ''] of svg.matchAll(new RegExp(`<g id="${kit}-part-([^"]*)"`, 'g'))) {
    const inside = group(svg, `${kit}-part-${part}`);
    const legs = readShapes(inside, part, lugs, bodies);
    if (legs.length === 2) nameLegs(inside, legs, part, lugs);
  }
  const stretches: Stretch[] = [];
  const joints: string[] = [];
  const wires = group(svg, `${kit}-wires`);
  [...wires.matchAll(/<g id="[^"]*-joint-\d+"[^>]*>\s*<path d="([^"]*)"/g)].forEach(([, d = ''], wire) => {
    const points = corners(d);
    points.slice(1).forEach((b, i) => {
      const a = points[i] ?? b;
      stretches.push({ wire, x1: a[0], y1: a[1], x2: b[0], y2: b[1] });
    });
    const ends = [points[0], points[points.length - 1]].map((p) => lugAt(lugs, p)).sort();
    joints.push(ends.join(' > '));
  });
  return { lugs, bodies, stretches, joints };
}

/** Collects tags, plates and cases; answers the solder dots of a two-leg part. */
function readShapes(
  inside: string,
  part: string,
  lugs: DrawnLug[],
  bodies: (Box & { part: string; round: boolean })[],
): readonly (readonly [number, number])[] {
  const texts = [...inside.matchAll(/(<text[^>]*>)([^<]*)<\/text>/g)].map(([, tag = '', words = '']) => ({
    words,
    x: value(tag, 'x'),
    y: value(tag, 'y'),
  }));
  const dots: [number, number][] = [];
  for (const [tag] of inside.matchAll(/<(?:rect|circle)\s[^>]*>/g)) {
    const fill = attribute(tag, 'fill');
    if (tag.startsWith('<circle')) {
      const [x, y, r] = [value(tag, 'cx'), value(tag, 'cy'), value(tag, 'r')];
      if (r > 30) {
        const box = { x: x - r, y: y - r, width: 2 * r, height: 2 * r, round: true };
        lugs.push({ ...box, name: `${part}.case` });
        bodies.push({ ...box, part });
      } else if (r === 3.5) dots.push([x, y]);
      continue;
    }
    const box = {
      x: value(tag, 'x'),
      y: value(tag, 'y'),
      width: value(tag, 'width'),
      height: value(tag, 'height'),
    };
    if (fill === LUG_FILL) {
      const word = texts.find((t) => within(box, t.x, t.y, 0));
      lugs.push({ ...box, name: `${part}.${word?.words ?? '?'}`, round: false });
    } else if (fill === PLATE_FILL || fill === '#f3e7cf' || fill === '#d9e6ea')
      bodies.push({ ...box, part, round: false });
  }
  return dots;
}

/** Leg 1 of a part that lies unturned is the first dot drawn. */
function nameLegs(
  _inside: string,
  dots: readonly (readonly [number, number])[],
  part: string,
  lugs: DrawnLug[],
): void {
  dots.forEach(([x, y], i) => {
    lugs.push({ x: x - 4, y: y - 4, width: 8, height: 8, name: `${part}.${i + 1}`, round: false });
  });
}

export const within = (box: Box, x: number, y: number, slack: number): boolean =>
  x >= box.x - slack &&
  x <= box.x + box.width + slack &&
  y >= box.y - slack &&
  y <= box.y + box.height + slack;

function lugAt(lugs: readonly DrawnLug[], p: readonly [number, number] | undefined): string {
  if (!p) return '?';
  const hit = lugs.filter((lug) =>
    lug.round
      ? Math.hypot(p[0] - lug.x - lug.width / 2, p[1] - lug.y - lug.height / 2) <= lug.width / 2
      : within(lug, p[0], p[1], 0.01),
  );
  // A lug may stand close below a case: the tag is the nearer thing to solder to.
  return hit.length === 1
    ? (hit[0]?.name ?? '?')
    : hit.length === 0
      ? '?'
      : (hit.find((lug) => !lug.round)?.name ?? '?');
}

/** The corners of a wire: a rounded bend's control point is its corner, and openings are bridged. */
export function corners(d: string): readonly (readonly [number, number])[] {
  const points: (readonly [number, number])[] = [];
  for (const [, kind, numbers = ''] of d.matchAll(/([MLQ])([^MLQ]*)/g)) {
    const n = numbers
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    if (kind === 'Q') points.push([n[0] ?? 0, n[1] ?? 0]);
    points.push([n[n.length - 2] ?? 0, n[n.length - 1] ?? 0]);
  }
  return points.filter((p, i) => {
    const [a, b] = [points[i - 1], points[i + 1]];
    return !a || !b || !((a[0] === p[0] && p[0] === b[0]) || (a[1] === p[1] && p[1] === b[1]));
  });
}
