/**
 * A second reader of drawings, written apart from everything that makes or checks them: it knows SVG, and of the trade what
 * the handbook says. What belongs to which part or wire it takes from ids; what a thing is and where it ends, from the
 * picture.
 */
import { DOMParser, type Element as Node } from '@xmldom/xmldom';

export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface Box extends Point {
  readonly w: number;
  readonly h: number;
}

export interface Mark {
  readonly order: number;
  readonly group: string;
  readonly fill: string;
  readonly stroke: string;
  readonly width: number;
  readonly dash: string;
  /** What one of its units is in the sheet's; places and sizes are in its own. */
  readonly scale: number;
}
export interface Rect extends Mark, Box {
  /** Radius of its corners. */
  readonly corner: number;
}
export interface Circle extends Mark, Point {
  readonly r: number;
}
export interface Path extends Mark {
  /** Corners, one list for each unbroken piece; a curve by its corner and its end, an arc by its end. */
  readonly pieces: readonly (readonly Point[])[];
  readonly curved: boolean;
  readonly d: string;
}
export interface Text extends Mark, Point {
  readonly words: string;
  readonly size: number;
  /** Middle of the line, and how wide it is set. */
  readonly middle: number;
  readonly wide: number;
}

export interface Marks {
  readonly rects: readonly Rect[];
  readonly circles: readonly Circle[];
  readonly paths: readonly Path[];
  readonly texts: readonly Text[];
}

export interface Part extends Marks {
  readonly name: string;
  /** Named places to solder to. */
  readonly tags: readonly { readonly name: string; readonly box: Box }[];
  readonly pot?: Circle;
  /** The case of a pot with two gangs. */
  readonly longCase?: Rect;
  /** Ends of a two-legged part's legs, left and right. */
  readonly legs: readonly Point[];
}

export interface Wire {
  readonly strokes: readonly { readonly stroke: string; readonly width: number; readonly dash: string }[];
  readonly pieces: readonly (readonly Point[])[];
  readonly ends: readonly [string, string];
  readonly order: number;
  /** Number of its joint in the kit, from 1, by its id. */
  readonly joint: number;
}

export interface Drawing extends Marks {
  readonly title: string;
  readonly description: string;
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
  readonly head: readonly string[];
  readonly key: readonly {
    readonly words: string;
    readonly strokes: Wire['strokes'];
    readonly code?: string;
  }[];
  readonly cards: readonly Card[];
  /** Broad lines under what is new. */
  readonly marked: readonly Path[];
}

export interface CardRow {
  readonly label: string;
  readonly dc: string;
  readonly signal: string;
  /** Of its whole length. */
  readonly bar: number;
  readonly tick: number;
  readonly tint: string;
}
export interface Card {
  readonly badge: string;
  readonly texts: readonly Text[];
  readonly rows: readonly CardRow[];
}

const number = (node: Node, name: string): number => Number(node.getAttribute(name) ?? 0);

export function read(svg: string): Drawing {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (!root) throw new Error('no drawing');
  const rects: Rect[] = [];
  const circles: Circle[] = [];
  const paths: Path[] = [];
  const texts: Text[] = [];
  let order = 0;
  let title = '';
  let description = '';
  const visit = (
    node: Node,
    dx: number,
    dy: number,
    group: string,
    given: ReadonlyMap<string, string>,
    above = 1,
  ): void => {
    const inherited = new Map(given);
    for (const name of ['fill', 'stroke', 'stroke-width', 'text-anchor', 'font-size'])
      if (node.hasAttribute(name)) inherited.set(name, node.getAttribute(name) ?? '');
    const [, tx = '0', ty = '0'] =
      /translate\(\s*([-\d.]+)[\s,]+([-\d.]+)/.exec(node.getAttribute('transform') ?? '') ?? [];
    const [x0, y0] = [dx + Number(tx), dy + Number(ty)];
    const scale = above * Number(/scale\(([\d.]+)\)/.exec(node.getAttribute('transform') ?? '')?.[1] ?? 1);
    // Moved in the one measure and scaled in another, a place would be neither's.
    if (scale !== 1 && (x0 !== 0 || y0 !== 0)) throw new Error('moved and scaled');
    const mark: Mark = {
      order: order++,
      group,
      fill: inherited.get('fill') ?? '#000000',
      stroke: inherited.get('stroke') ?? 'none',
      width: Number(inherited.get('stroke-width') ?? 1),
      dash: node.getAttribute('stroke-dasharray') ?? '',
      scale,
    };
    const [x, y] = [number(node, 'x') + x0, number(node, 'y') + y0];
    switch (node.tagName) {
      case 'title':
        title ||= node.textContent ?? '';
        return;
      case 'desc':
        description ||= node.textContent ?? '';
        return;
      case 'rect':
        rects.push({
          ...mark,
          x,
          y,
          w: number(node, 'width'),
          h: number(node, 'height'),
          corner: number(node, 'rx'),
        });
        return;
      case 'circle':
        circles.push({
          ...mark,
          x: number(node, 'cx') + x0,
          y: number(node, 'cy') + y0,
          r: number(node, 'r'),
        });
        return;
      case 'path': {
        const d = node.getAttribute('d') ?? '';
        paths.push({ ...mark, d, pieces: piecesOf(d, x0, y0), curved: /A/.test(d) });
        return;
      }
      case 'text': {
        const wide = number(node, 'textLength');
        const anchor = inherited.get('text-anchor');
        const middle = anchor === 'start' ? x + wide / 2 : anchor === 'end' ? x - wide / 2 : x;
        const size = Number(inherited.get('font-size'));
        texts.push({ ...mark, x, y, words: node.textContent ?? '', size, middle, wide });
        return;
      }
    }
    const id = node.getAttribute('id') ?? '';
    for (const child of Array.from(node.childNodes))
      if (child.nodeType === 1) visit(child as Node, x0, y0, id === '' ? group : id, inherited, scale);
  };
  visit(root, 0, 0, '', new Map());

  const all: Marks = { rects, circles, paths, texts };
  const groups = [...groupsOf(root)];
  // A sheet of cards alone has no drawing to take it from.
  const id = /^(.*)-(?:drawing|position-\d+)$/m.exec(groups.join('\n'))?.[1] ?? '';
  const within = ofGroups(all);
  const parts = groups
    .filter((group) => group.startsWith(`${id}-part-`))
    .map((group) => partOf(group.slice(`${id}-part-`.length), within(group)));
  return {
    ...all,
    title,
    description,
    parts,
    wires: wiresOf(all, id, parts),
    head: within(`${id}-head`).texts.map(({ words }) => words),
    key: keyOf(within(`${id}-key`)),
    cards: groups
      .filter((group) => new RegExp(`^${id}-position-\\d+$`).test(group))
      .map((group) => cardOf(within(group))),
    marked: within(`${id}-marks`).paths,
  };
}

function groupsOf(root: Node): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (node: Node): void => {
    if (node.tagName === 'g') found.add(node.getAttribute('id') ?? '');
    for (const child of Array.from(node.childNodes)) if (child.nodeType === 1) visit(child as Node);
  };
  visit(root);
  return found;
}

/** The marks of each group. */
function ofGroups({ rects, circles, paths, texts }: Marks): (group: string) => Marks {
  const sorted = <T extends Mark>(marks: readonly T[]): ReadonlyMap<string, readonly T[]> => {
    const groups = new Map<string, T[]>();
    for (const mark of marks) {
      const group = groups.get(mark.group);
      if (group) group.push(mark);
      else groups.set(mark.group, [mark]);
    }
    return groups;
  };
  const [r, c, p, t] = [sorted(rects), sorted(circles), sorted(paths), sorted(texts)];
  return (group) => ({
    rects: r.get(group) ?? [],
    circles: c.get(group) ?? [],
    paths: p.get(group) ?? [],
    texts: t.get(group) ?? [],
  });
}

function piecesOf(d: string, dx: number, dy: number): readonly (readonly Point[])[] {
  const pieces: Point[][] = [];
  for (const [, command = '', rest = ''] of d.matchAll(/([MLQA])([^MLQAZ]*)/g)) {
    const n = (rest.match(/-?[\d.]+/g) ?? []).map(Number);
    const point = (i: number): Point => ({ x: (n[i] ?? 0) + dx, y: (n[i + 1] ?? 0) + dy });
    if (command === 'M') pieces.push([point(0)]);
    else if (command === 'Q') pieces.at(-1)?.push(point(0), point(2));
    else pieces.at(-1)?.push(point(command === 'A' ? 5 : 0));
  }
  return pieces;
}

export const inBox = (box: Box, p: Point, slack = 0): boolean =>
  p.x >= box.x - slack &&
  p.x <= box.x + box.w + slack &&
  p.y >= box.y - slack &&
  p.y <= box.y + box.h + slack;

/** Whether a point is inside a box with two round ends, lying or upright. */
function inRoundEnds({ x, y, w, h }: Box, p: Point): boolean {
  const radius = Math.min(w, h) / 2;
  const within = (at: number, from: number, long: number): number =>
    Math.min(Math.max(at, from + radius), from + long - radius);
  return Math.hypot(p.x - within(p.x, x, w), p.y - within(p.y, y, h)) <= radius;
}

/** A tag is a small box that holds one text of the part, or where names are larger one with a tag's corners; a pot's case the largest circle, or a long box with two round ends; legs the ends of a level line. */
function partOf(name: string, marks: Marks): Part {
  const tags = marks.rects.flatMap((box) => {
    const inside = marks.texts.filter((text) => inBox(box, { x: text.middle, y: text.y - 4 }));
    const small = (box.w <= 90 && box.h <= 22) || (box.corner === 5 && box.w <= 130 && box.h <= 40);
    return small && inside.length === 1 ? [{ name: inside[0]?.words ?? '', box }] : [];
  });
  const pot = marks.circles.find(({ r }) => r > 40);
  const longCase = marks.rects.find(({ w, h, corner }) => {
    const across = Math.min(w, h);
    return across > 80 && corner * 2 === across;
  });
  const lead = marks.paths.find(({ d }) => /^M[-\d.]+ [-\d.]+L[-\d.]+ [-\d.]+$/.test(d));
  const legs =
    tags.length === 0 && !pot && !longCase ? [...(lead?.pieces[0] ?? [])].sort((a, b) => a.x - b.x) : [];
  return { name, ...marks, tags, ...(pot ? { pot } : {}), ...(longCase ? { longCase } : {}), legs };
}

function wiresOf(all: Marks, id: string, parts: readonly Part[]): readonly Wire[] {
  const groups = new Map<string, Path[]>();
  for (const path of all.paths)
    if (path.group.startsWith(`${id}-joint-`))
      groups.set(path.group, [...(groups.get(path.group) ?? []), path]);
  return [...groups.values()].map((paths): Wire => {
    const pieces = paths[0]?.pieces ?? [];
    const [first, last] = [pieces[0]?.[0], pieces.at(-1)?.at(-1)];
    return {
      strokes: paths.map(({ stroke, width, dash }) => ({ stroke, width, dash })),
      pieces,
      ends: [lugAt(parts, first), lugAt(parts, last)],
      order: paths[0]?.order ?? 0,
      joint: Number(/-joint-(\d+)$/.exec(paths[0]?.group ?? '')?.[1]),
    };
  });
}

/** `part.lug` at a point; a leg is `part.left` or `part.right`. */
function lugAt(parts: readonly Part[], p: Point | undefined): string {
  if (!p) return 'nowhere';
  const found = parts.flatMap(({ name, tags, legs }) => [
    ...tags.filter(({ box }) => inBox(box, p, 0.02)).map((tag) => `${name}.${tag.name}`),
    ...legs.flatMap((leg, i) =>
      Math.hypot(leg.x - p.x, leg.y - p.y) < 1 ? [`${name}.${i === 0 ? 'left' : 'right'}`] : [],
    ),
  ]);
  if (found.length > 1) return `several: ${found.join(', ')}`;
  const cases = parts.filter(
    ({ pot, longCase }) =>
      (pot && Math.hypot(pot.x - p.x, pot.y - p.y) <= pot.r) || (longCase && inRoundEnds(longCase, p)),
  );
  return found[0] ?? (cases.length === 1 ? `${cases[0]?.name}.case` : 'nowhere');
}

/** Samples in the key, each with the words to the right of it. */
function keyOf({ paths, texts, rects }: Marks): Drawing['key'] {
  const words = texts.filter((text) => !rects.some((box) => inBox(box, { x: text.middle, y: text.y - 4 })));
  return words.map((text) => {
    const left = (x: number): boolean => x < text.x && x > text.x - 90;
    const row = (y: number): boolean => Math.abs(y - (text.y - 4)) < 6;
    const strokes = paths
      .filter(({ pieces }) => left(pieces[0]?.[0]?.x ?? 0) && row(pieces[0]?.[0]?.y ?? 0))
      .map(({ stroke, width, dash }) => ({ stroke, width, dash }));
    const code = texts.find(
      (one) => one !== text && left(one.middle) && row(one.y - 4) && !words.includes(one),
    );
    return { words: text.words, strokes, ...(code ? { code: code.words } : {}) };
  });
}

function cardOf({ texts, rects, paths }: Marks): Card {
  const badge = texts.find((text) =>
    rects.some((box) => box.h === 26 && inBox(box, { x: text.middle, y: text.y - 4 })),
  );
  const bars = rects.filter(({ h }) => h === 7);
  const rows = bars
    .filter((bar, i) => bars.findIndex((one) => one.y === bar.y) === i)
    .map((ground): CardRow => {
      const bar = bars.find((one) => one !== ground && one.y === ground.y);
      const above = (text: Text): boolean => text.y < ground.y && text.y > ground.y - 40;
      const captions = texts.filter(above);
      // A figure stands over the word that says what it is.
      const figure = (what: string): string => {
        const caption = captions.find(({ words }) => words === what);
        return (
          captions.find(
            (text) => text !== caption && caption && Math.abs(text.x - caption.x) < 1 && text.y < caption.y,
          )?.words ?? ''
        );
      };
      const label = captions.filter(({ x }) => Math.abs(x - ground.x) < 1).sort((a, b) => a.y - b.y)[0];
      const tick = paths.find(({ pieces }) => {
        const p = pieces[0]?.[0];
        return (
          p !== undefined && Math.abs(p.y - (ground.y - 4)) < 1 && p.x > ground.x && p.x < ground.x + ground.w
        );
      });
      return {
        label: label?.words ?? '',
        dc: figure('DC load'),
        signal: figure('signal load'),
        bar: (bar?.w ?? 0) / ground.w,
        tick: ((tick?.pieces[0]?.[0]?.x ?? ground.x) - ground.x) / ground.w,
        tint: bar?.fill ?? '',
      };
    });
  return { badge: badge?.words ?? '', texts, rows };
}

/** Whether two of a wire's straight pieces cross, apart from those that follow each other. */
function crossesItself({ pieces }: Wire): boolean {
  const lines = pieces.flatMap((points) => points.slice(1).map((b, i) => [points[i] ?? b, b] as const));
  const side = (a: Point, b: Point, p: Point): number =>
    Math.sign((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x));
  return lines.some(([a, b], i) =>
    lines
      .slice(i + 2)
      .some(([c, d]) => side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0),
  );
}

interface End {
  readonly part: string;
  readonly lug: string;
}
interface Described {
  readonly parts: readonly { readonly name: string }[];
  readonly joints: readonly { readonly from: End; readonly to: End }[];
}

/**
 * What is in the drawing but not in the kit, and the other way round. Legs have no names: those of a part may be taken either way,
 * and are the same when what is soldered to the one and to the other is. A wire that runs over itself is in no kit either.
 */
export function jointErrors(drawing: Drawing, kit: Described): readonly string[] {
  const legged = new Set(drawing.parts.filter(({ legs }) => legs.length === 2).map(({ name }) => name));
  const bare = (end: string): string => {
    const part = end.slice(0, end.lastIndexOf('.'));
    return legged.has(part) ? `${part}.leg` : end;
  };
  const key = (a: string, b: string): string => [bare(a), bare(b)].sort().join(' > ');
  const drawn = drawing.wires.map(({ ends: [a, b] }) => key(a, b)).sort();
  const wanted = kit.joints
    .map(({ from, to }) => key(`${from.part}.${from.lug}`, `${to.part}.${to.lug}`))
    .sort();
  const errors = drawing.wires.filter(crossesItself).map(({ ends }) => `${ends.join(' > ')} crosses itself`);
  for (const one of new Set([...drawn, ...wanted])) {
    const [d, w] = [drawn, wanted].map((list) => list.filter((other) => other === one).length);
    if (d !== w) errors.push(`${one}: drawn ${d} times, described ${w}`);
  }
  for (const part of legged) {
    const sides = (pairs: readonly (readonly [string, string])[], names: readonly string[]): string =>
      names
        .map((name) =>
          pairs
            .flatMap(([a, b]) => [
              ...(a === `${part}.${name}` ? [bare(b)] : []),
              ...(b === `${part}.${name}` ? [bare(a)] : []),
            ])
            .sort()
            .join(', '),
        )
        .sort()
        .join(' | ');
    const picture = sides(
      drawing.wires.map(({ ends }) => ends),
      ['left', 'right'],
    );
    const text = sides(
      kit.joints.map(({ from, to }) => [`${from.part}.${from.lug}`, `${to.part}.${to.lug}`] as const),
      ['1', '2'],
    );
    if (picture !== text) errors.push(`${part}: its legs go to ${picture}; described ${text}`);
  }
  const names = kit.parts
    .map(({ name }) => name)
    .sort()
    .join();
  if (
    names !==
    drawing.parts
      .map(({ name }) => name)
      .sort()
      .join()
  )
    errors.push(`parts: ${names}`);
  return errors;
}
