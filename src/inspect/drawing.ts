/**
 * A drawing read back from what is painted. Ids tell which part a lug stands in and which line is a wire, classes what
 * an element is; where lugs are and what is joined to what comes from coordinates alone.
 */

import { centreOf, type Point, type Rect } from '../common/geometry.ts';
import { CLASS } from '../draw/classes.ts';
import { DEFAULT_LANGUAGE, type Language, languages } from '../messages/language.ts';
import { lugNamed } from '../messages/words.ts';
import { type Finding, finding } from './finding.ts';
import { type AreaMark, type LineMark, type Mark, paint, type TextMark } from './paint.ts';
import { courseOf } from './path.ts';
import { type Area, inArea, type Segment, segmentsOf } from './space.ts';
import { parseXml, type XmlElement } from './xml.ts';

export interface DrawnLug {
  readonly part: string;
  /** A leg is the end of a component's own wire; a surface is a case, soldered to anywhere. */
  readonly is: 'tag' | 'leg' | 'surface';
  /** What its tag says; only a tag has a name, as in reality. */
  readonly name?: string;
  readonly area: Area;
}

export interface DrawnPart {
  readonly name: string;
  readonly lugs: readonly DrawnLug[];
  /** Plates, cases and component bodies. */
  readonly bodies: readonly AreaMark[];
  readonly texts: readonly TextMark[];
}

export interface DrawnWire {
  readonly id: string;
  readonly points: readonly Point[];
  readonly stretches: readonly Segment[];
  readonly openings: readonly Point[];
  readonly ends: readonly [DrawnLug | undefined, DrawnLug | undefined];
  /** Half of its widest stroke. */
  readonly half: number;
}

export interface Chip {
  readonly shape: AreaMark;
  readonly code: string;
  /** The point that must lie on its wire: its middle, or the far end of the leader to a chip beside its wire. */
  readonly at: Point;
}

export interface Drawing {
  /** That it says it is worded in; English where it does not say. */
  readonly language: Language;
  /** The kit's id, which every id begins with. */
  readonly id: string;
  readonly page: Rect;
  /** Millimetres to a unit, where the page has a size in millimetres. */
  readonly scale?: number;
  /** That size. */
  readonly millimetres?: { readonly width: number; readonly height: number };
  /** How far the drawn area is moved on the sheet. */
  readonly offset: Point;
  /** Its size, where it is written since what is drawn does not tell it. */
  readonly drawn?: { readonly width: number; readonly height: number };
  readonly root: XmlElement;
  readonly marks: readonly Mark[];
  readonly shapes: readonly AreaMark[];
  readonly lines: readonly LineMark[];
  readonly texts: readonly TextMark[];
  readonly parts: readonly DrawnPart[];
  readonly wires: readonly DrawnWire[];
  readonly chips: readonly Chip[];
  /** What could not be read, or would be misread. */
  readonly findings: readonly Finding[];
}

/** Reads a drawing, or says why it is none. */
export function readDrawing(svg: string): Drawing | Finding {
  const parsed = parseXml(svg);
  const no = (reason: string): Finding => finding('unreadable', undefined, { reason });
  if ('error' in parsed) return no(parsed.error);
  const { root } = parsed;
  if (root.name !== 'svg' || root.attributes.get('xmlns') !== 'http://www.w3.org/2000/svg')
    return no(`its root is <${root.name.slice(0, 40)}>, not an SVG drawing`);
  const id = drawingId(root);
  if (id === undefined) return no('it was not drawn by Solderleaf');
  const page = pageOf(root);
  if (!page) return no('its viewBox is not four numbers');
  const language = languageOf(root);
  const { marks, findings } = paint(root);
  const shapes = marks.filter((mark) => mark.kind === 'area');
  const lines = marks.filter((mark) => mark.kind === 'line');
  const texts = marks.filter((mark) => mark.kind === 'text');
  const parts = partsOf(id, marks, language);
  const { wires, broken } = wiresOf(id, lines, parts);
  return {
    id,
    language,
    page,
    ...scaleOf(root, page),
    ...wiringOf(root, id),
    root,
    marks,
    shapes,
    lines,
    texts,
    parts,
    wires,
    chips: chipsOf(id, shapes, lines, texts),
    findings: [...findings, ...broken],
  };
}

/** From the group of the wiring; a piece without it goes by its title, and by one of the other groups that a sheet may have. */
function drawingId({ children }: XmlElement): string | undefined {
  const ids = children.map(({ attributes }) => attributes.get('id') ?? '');
  const wiring = ids.flatMap((id) => /^(.+)-drawing$/.exec(id)?.[1] ?? [])[0];
  if (wiring !== undefined) return wiring;
  const own = /^(.+)-title$/.exec(ids[0] ?? '')?.[1];
  // A response plot has a head and one group a position too, and one of all.
  return own !== undefined &&
    ids.some((id) => id === `${own}-key` || id === `${own}-work` || id === `${own}-position-1`) &&
    !ids.includes(`${own}-all`)
    ? own
    : undefined;
}

function pageOf({ attributes }: XmlElement): Rect | undefined {
  const [x, y, width, height] = (attributes.get('viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  if (x === undefined || y === undefined || !width || !height) return undefined;
  return [x, y, width, height].every(Number.isFinite) && width > 0 && height > 0
    ? { x, y, width, height }
    : undefined;
}

/** A page with its size in millimetres is a printed one; the smaller scale holds, as the picture is fitted in whole. */
function scaleOf({ attributes }: XmlElement, page: Rect): Pick<Drawing, 'scale' | 'millimetres'> {
  const mm = (key: string): number => Number(/^([\d.]+)mm$/.exec(attributes.get(key) ?? '')?.[1]);
  const [width, height] = [mm('width'), mm('height')];
  const scales = [width / page.width, height / page.height].filter((scale) => scale > 0);
  return scales.length === 0 ? {} : { scale: Math.min(...scales), millimetres: { width, height } };
}

function wiringOf(root: XmlElement, id: string): Pick<Drawing, 'offset' | 'drawn'> {
  const attributes = root.children.find(
    (child) => child.attributes.get('id') === `${id}-drawing`,
  )?.attributes;
  const [, x = '0', y = '0'] =
    /^translate\(\s*(-?[\d.]+)[\s,]+(-?[\d.]+)\s*\)$/.exec(attributes?.get('transform') ?? '') ?? [];
  const [, width, height] = /^([\d.]+) ([\d.]+)$/.exec(attributes?.get('data-size') ?? '') ?? [];
  return {
    offset: { x: Number(x), y: Number(y) },
    ...(width === undefined ? {} : { drawn: { width: Number(width), height: Number(height) } }),
  };
}

const wordsIn = (area: Area, texts: readonly TextMark[]): string =>
  texts
    .filter(({ box }) => inArea(area, centreOf(box)))
    .map(({ words }) => words)
    .join(' ');

/** The colour codes on the drawing; the key explains each with a chip of its own. */
function chipsOf(
  id: string,
  shapes: readonly AreaMark[],
  lines: readonly LineMark[],
  texts: readonly TextMark[],
): readonly Chip[] {
  const here = ({ groups }: Mark): boolean => groups.includes(`${id}-colours`);
  const leaders = lines.filter(here).flatMap((line) => line.stretches);
  return shapes
    .filter((shape) => shape.is.includes(CLASS.chip) && here(shape))
    .map((shape) => {
      const middle = centreOf(shape.area);
      const leader = leaders.find(({ b }) => Math.hypot(b.x - middle.x, b.y - middle.y) < 1);
      return { shape, code: wordsIn(shape.area, texts), at: leader?.a ?? middle };
    });
}

/** That a drawing says it is worded in. */
function languageOf({ attributes }: XmlElement): Language {
  const written = attributes.get('lang');
  return languages.find((language) => language === written) ?? DEFAULT_LANGUAGE;
}

/** Lugs by the names that descriptions have for them, whatever the drawing's language. */
function partsOf(id: string, marks: readonly Mark[], language: Language): readonly DrawnPart[] {
  const prefix = `${id}-part-`;
  const ofPart = new Map<string, Mark[]>();
  for (const mark of marks) {
    const name = mark.groups.find((group) => group.startsWith(prefix))?.slice(prefix.length);
    if (name === undefined) continue;
    const own = ofPart.get(name);
    if (own) own.push(mark);
    else ofPart.set(name, [mark]);
  }
  return [...ofPart].map(([name, own]) => {
    const shapes = own.filter((mark) => mark.kind === 'area');
    const texts = own.filter((mark) => mark.kind === 'text');
    const lugs = shapes.flatMap(({ is, area }): DrawnLug[] => {
      if (is.includes(CLASS.tag))
        return [{ part: name, is: 'tag', name: lugNamed(language, wordsIn(area, texts)), area }];
      if (is.includes(CLASS.case)) return [{ part: name, is: 'surface', area }];
      return is.includes(CLASS.legEnd) ? [{ part: name, is: 'leg', area }] : [];
    });
    const bodies = shapes.filter(({ is }) =>
      [CLASS.plate, CLASS.case, CLASS.body].some((one) => is.includes(one)),
    );
    return { name, lugs, bodies, texts };
  });
}

function wiresOf(
  id: string,
  lines: readonly LineMark[],
  parts: readonly DrawnPart[],
): { readonly wires: readonly DrawnWire[]; readonly broken: readonly Finding[] } {
  const lugs = parts.flatMap((part) => part.lugs);
  const groups = new Map<string, LineMark[]>();
  for (const line of lines) {
    const wire = line.groups.find((group) => group.startsWith(`${id}-joint-`));
    if (wire !== undefined) groups.set(wire, [...(groups.get(wire) ?? []), line]);
  }
  const broken: Finding[] = [];
  const wires = [...groups].map(([wire, strokes]): DrawnWire => {
    const [first] = strokes;
    const offset = first?.offset ?? { x: 0, y: 0 };
    const moved = (p: Point): Point => ({ x: p.x + offset.x, y: p.y + offset.y });
    const course = courseOf(first?.d ?? '');
    const points = course.points.map(moved);
    const one = strokes.every(
      (stroke) =>
        stroke.d === first?.d &&
        stroke.scale === 1 &&
        stroke.offset.x === offset.x &&
        stroke.offset.y === offset.y,
    );
    const ends = [lugAt(lugs, points[0]), lugAt(lugs, points[points.length - 1])] as const;
    const read = {
      id: wire,
      points,
      stretches: segmentsOf(points),
      openings: course.openings.map(moved),
      ends,
      half: Math.max(...strokes.map((stroke) => stroke.half)),
    };
    if (course.broken || !one) broken.push(finding('broken', points[0], { wire: wireText(read) }));
    return read;
  });
  return { wires, broken };
}

/** The lug a wire's end lies on. A tag may stand close below a case: it is the nearer thing; two tags are ambiguous. */
function lugAt(lugs: readonly DrawnLug[], p: Point | undefined): DrawnLug | undefined {
  if (!p) return undefined;
  const hit = lugs.filter(({ area }) => inArea(area, p, 0.01));
  const tags = hit.filter((lug) => lug.is !== 'surface');
  const best = tags.length > 0 ? tags : hit;
  return best.length === 1 ? best[0] : undefined;
}

export const lugText = (lug: DrawnLug | undefined): string =>
  lug ? `${lug.part}.${lug.name ?? (lug.is === 'leg' ? 'leg' : 'case')}` : 'nowhere';

export const wireText = ({ ends }: Pick<DrawnWire, 'ends'>): string =>
  `the wire from ${lugText(ends[0])} to ${lugText(ends[1])}`;
