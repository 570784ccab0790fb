/** What lies on what in a step's figure, asked of the picture alone: circles, rectangles, straight lines and texts as they are drawn. */
import { type Box, type Drawing, type Point, read, type Text } from '../../truth/reader.ts';

type Segment = readonly [Point, Point];

/** A number's disc or a colour's code, with the leader that it may have. */
interface Written {
  readonly what: string;
  readonly joint: number;
  readonly box: Box;
  /** Distance of a point within which the mark covers it, taken from `box` where absent. */
  readonly disc?: Point & { readonly r: number };
  readonly leader?: Segment;
}

const boxOf = ({ middle, wide, y, size }: Text): Box => ({
  x: middle - wide / 2,
  y: y - 0.73 * size,
  w: wide,
  h: 0.73 * size,
});
const meet = (a: Box, b: Box): boolean =>
  a.x < b.x + b.w - 0.01 && b.x < a.x + a.w - 0.01 && a.y < b.y + b.h - 0.01 && b.y < a.y + a.h - 0.01;

/** Points along a line, a fifth of a unit apart. */
const along = ([a, b]: Segment): readonly Point[] => {
  const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) * 5));
  return Array.from({ length: count + 1 }, (_, i) => ({
    x: a.x + ((b.x - a.x) * i) / count,
    y: a.y + ((b.y - a.y) * i) / count,
  }));
};
const holds = ({ x, y, w, h }: Box, p: Point, slack = 0): boolean =>
  p.x > x - slack && p.x < x + w + slack && p.y > y - slack && p.y < y + h + slack;
const covers = ({ box, disc }: Written, p: Point, slack = 0): boolean =>
  disc ? Math.hypot(disc.x - p.x, disc.y - p.y) < disc.r + slack : holds(box, p, slack);

/** Only level or upright pieces: the curves at corners are short, and within reach of those. */
const piecesOf = (pieces: readonly (readonly Point[])[]): readonly Segment[] =>
  pieces.flatMap((points) => points.slice(1).map((b, i) => [points[i] ?? b, b] as const));

/** Points of those pieces that may be so near to a box; of a line far away none. */
const near = (pieces: readonly Segment[], { x, y, w, h }: Box, reach: number): readonly Point[] =>
  pieces
    .filter(
      ([a, b]) =>
        Math.max(a.x, b.x) > x - reach &&
        Math.min(a.x, b.x) < x + w + reach &&
        Math.max(a.y, b.y) > y - reach &&
        Math.min(a.y, b.y) < y + h + reach,
    )
    .flatMap(along);

/** Where a line turns. */
const turns = (points: readonly Point[]): readonly Point[] =>
  points.filter((p, i) => {
    const [a, b] = [points[i - 1], points[i + 1]];
    return a && b && Math.abs((p.x - a.x) * (b.y - p.y) - (p.y - a.y) * (b.x - p.x)) > 0.01;
  });

function writtenIn({ circles, texts, paths, rects }: Drawing): readonly Written[] {
  const groups = [...new Set(circles.map(({ group }) => group))].filter((group) => /-end-\d+-/.test(group));
  const numbers = groups.map((group): Written => {
    const [disc] = circles.filter((one) => one.group === group).sort((a, b) => b.r - a.r);
    if (!disc) throw new Error(group);
    const words = texts.find((one) => one.group === group)?.words;
    const leader = paths.find((one) => one.group === group)?.pieces[0];
    const { x, y, r } = disc;
    return {
      what: `number ${words} of ${group.slice(group.lastIndexOf('-end-') + 5)}`,
      joint: Number(/-end-(\d+)-/.exec(group)?.[1]),
      box: { x: x - r, y: y - r, w: 2 * r, h: 2 * r },
      disc: { x, y, r },
      ...(leader?.[0] && leader[1] ? { leader: [leader[0], leader[1]] } : {}),
    };
  });
  const codes = rects.flatMap((box): Written | [] => {
    const joint = /-colour-(\d+)$/.exec(box.group)?.[1];
    if (joint === undefined) return [];
    const leader = paths.find((one) => one.group === box.group)?.pieces[0];
    const words = texts.find((one) => one.group === box.group)?.words;
    return {
      what: `code ${words} of ${joint}`,
      joint: Number(joint),
      box,
      ...(leader?.[0] && leader[1] ? { leader: [leader[0], leader[1]] } : {}),
    };
  });
  return [...numbers, ...codes];
}

/** Everything that a mark of the figure lies on, or its leader crosses, and must not. */
export function overlapsIn(svg: string): readonly string[] {
  const drawing = read(svg);
  const marks = writtenIn(drawing);
  const names = drawing.texts.filter(({ group }) => /-part-/.test(group));
  // Tags with and without a name have the same round corners.
  const tags = drawing.rects.filter(({ group, corner, h }) => /-part-/.test(group) && corner === 5 && h < 60);
  const dots = drawing.circles.filter(({ group }) => /-(joint-\d+|end-\d+-(from|to))$/.test(group));
  const solder = dots.filter(({ r }) => r < 5);
  const lines = drawing.wires.map(({ joint, pieces, strokes }) => ({
    joint,
    half: Math.max(...strokes.map(({ width }) => width)) / 2,
    segments: piecesOf(pieces),
    // Of its own line a mark hides neither a corner nor an opening.
    corners: pieces.flatMap(turns),
  }));
  const errors: string[] = [];
  for (const [i, one] of marks.entries()) {
    const { what, joint, box, leader } = one;
    const way = leader ? along(leader) : [];
    for (const other of marks.slice(i + 1))
      if (
        one.disc && other.disc
          ? covers({ ...one, disc: { ...one.disc, r: one.disc.r + other.disc.r } }, other.disc)
          : meet(box, other.box)
      )
        errors.push(`${what} on ${other.what}`);
    for (const other of marks)
      if (other !== one && way.some((p) => covers(other, p)))
        errors.push(`leader of ${what} across ${other.what}`);
    for (const name of names) {
      if (meet(box, boxOf(name))) errors.push(`${what} on the name ${name.words}`);
      if (way.some((p) => holds(boxOf(name), p)))
        errors.push(`leader of ${what} across the name ${name.words}`);
    }
    for (const tag of tags) {
      const words = names.find(({ middle, y }) =>
        holds({ x: tag.x, y: tag.y, w: tag.w, h: tag.h }, { x: middle, y: y - 4 }),
      )?.words;
      if (meet(box, tag)) errors.push(`${what} on the lug ${words}`);
      if (way.some((p) => holds(tag, p, -0.6))) errors.push(`leader of ${what} across the lug ${words}`);
    }
    for (const dot of solder)
      if (covers(one, dot, dot.r))
        errors.push(`${what} on a solder joint of ${dot.group.replace(/.*-(joint|end)-/, '')}`);
    for (const wire of lines) {
      if (wire.joint !== joint && near(wire.segments, box, wire.half).some((p) => covers(one, p, wire.half)))
        errors.push(`${what} on the wire ${wire.joint}`);
      if (wire.joint === joint && one.disc && wire.corners.some((p) => covers(one, p)))
        errors.push(`${what} on a corner of its wire`);
    }
  }
  return errors;
}

/** Names and values of parts that lie on one another, on a lug, on a component or on a wire. */
export function crowdedNamesIn(svg: string): readonly string[] {
  const { texts, rects, parts, wires } = read(svg);
  const tags = rects.filter(({ group, corner, h }) => /-part-/.test(group) && corner === 5 && h < 60);
  const inTag = (text: Text): boolean => tags.some((tag) => holds(tag, { x: text.middle, y: text.y - 4 }));
  // What is printed on a part is smaller than its name, or as large as its body has room for.
  const names = texts.filter(
    (text) => /-part-/.test(text.group) && !inTag(text) && !/^\d{2,4}$/.test(text.words),
  );
  const lines = wires.map(({ joint, pieces }) => ({ joint, segments: piecesOf(pieces) }));
  const errors: string[] = [];
  for (const [i, name] of names.entries()) {
    const box = boxOf(name);
    for (const other of names.slice(i + 1))
      if (meet(box, boxOf(other))) errors.push(`${name.words} on ${other.words}`);
    for (const tag of tags) if (meet(box, tag)) errors.push(`${name.words} on a lug of ${tag.group}`);
    const own = parts.find(({ name: part }) => name.group.endsWith(`-part-${part}`));
    if (own?.legs.length !== 2) continue;
    for (const { joint, segments } of lines)
      if (near(segments, box, 0).some((p) => holds(box, p)))
        errors.push(`${name.words} on the wire ${joint}`);
  }
  return errors;
}

/** Numbers that stand nearer to another joint's new end than to their own, and ends whose paper lies on another's solder. */
export function strayedNumbersIn(svg: string): readonly string[] {
  const { circles } = read(svg);
  const groups = [...new Set(circles.map(({ group }) => group))].flatMap((group) => {
    const joint = /-end-(\d+)-(?:from|to)$/.exec(group)?.[1];
    if (joint === undefined) return [];
    const mine = circles.filter((one) => one.group === group).sort((a, b) => a.r - b.r);
    // A dot in ink with paper about it, or paper alone with a hook on it; and the number's disc.
    const [least, next] = mine;
    const [tip, disc] = [mine.length > 2 ? next : least, mine.at(-1)];
    if (!least || !tip || !disc) throw new Error(group);
    return { group: group.slice(group.lastIndexOf('-end-') + 5), joint, tip, disc, dot: least };
  });
  const errors: string[] = [];
  for (const { group, joint, tip, disc } of groups) {
    const own = Math.hypot(tip.x - disc.x, tip.y - disc.y);
    for (const other of groups) {
      if (other.group === group) continue;
      if (other.joint !== joint && Math.hypot(other.tip.x - disc.x, other.tip.y - disc.y) < own)
        errors.push(`number of ${group} is nearer to the end ${other.group}`);
      if (Math.hypot(other.dot.x - tip.x, other.dot.y - tip.y) < tip.r + other.dot.r)
        errors.push(`paper of ${group} on the solder of ${other.group}`);
    }
  }
  return errors;
}

/** What hides a face, or stands out of it: a number on a coil, a name on the end of a pot's wiper, the name of a ground point beyond its box. */
export function onFacesIn(svg: string): readonly string[] {
  const drawing = read(svg);
  const numbers = writtenIn(drawing).filter(({ disc }) => disc);
  return drawing.parts.flatMap(({ name, rects, circles, texts, pot, longCase }) => {
    const tags = rects.filter(({ corner, h }) => corner === 5 && h < 60);
    const words = texts.filter((text) => !tags.some((tag) => holds(tag, { x: text.middle, y: text.y - 4 })));
    const coils =
      pot || longCase
        ? []
        : rects.filter(({ w, h, corner }) => corner > 3 && 2 * corner === Math.min(w, h) && w !== h);
    const wipers = pot ? circles.filter(({ r }) => r < 8) : [];
    const [lug] = tags;
    const boxes = rects.filter((rect) => rect !== lug);
    return [
      ...numbers.flatMap(({ what, box }) =>
        coils.some((coil) => meet(box, coil)) ? [`${what} on a coil of ${name}`] : [],
      ),
      ...words.flatMap((text) =>
        wipers.some(({ x, y, r }) => meet(boxOf(text), { x: x - r, y: y - r, w: 2 * r, h: 2 * r }))
          ? [`${text.words} on the wiper of ${name}`]
          : [],
      ),
      ...(lug && tags.length === 1 && !pot
        ? words.flatMap((text) => {
            const { x, y, w, h } = boxOf(text);
            const whole = boxes.every(
              (box) => box.x <= x && box.y <= y && box.x + box.w >= x + w && box.y + box.h >= y + h,
            );
            return whole ? [] : [`${text.words} beyond the box of ${name}`];
          })
        : []),
    ];
  });
}

/** Parts that are drawn without their name or its beginning. */
export function unnamedIn(svg: string, labels: ReadonlyMap<string, string>): readonly string[] {
  const plain = (text: string): string => text.replace(/\s/g, '');
  return read(svg).parts.flatMap(({ name, texts }) => {
    const written = plain(texts.map(({ words }) => words).join(''));
    const label = plain(labels.get(name) ?? '');
    const shown = [...label].some((_, i) => written.includes(`${label.slice(0, i + 1)}…`));
    return shown || written.includes(label) ? [] : [name];
  });
}
