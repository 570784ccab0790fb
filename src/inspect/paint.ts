/**
 * From elements to what is painted: shapes and texts in the order they are painted, their places in the units of the
 * view box, with their own or inherited inks. Whatever could change the picture and is not read here is a finding, so
 * that no drawing passes because part of it was overlooked.
 */
import type { Point, Rect } from '../common/geometry.ts';
import { type Finding, finding } from './finding.ts';
import { runsOf } from './path.ts';
import { type Area, boundsOf, boxOf, grownArea, type Segment, segmentsOf } from './space.ts';
import { inkOf } from './text-ink.ts';
import type { XmlElement } from './xml.ts';

interface Painted {
  /** Place in the order of painting. */
  readonly order: number;
  /** Ids of the groups about it, outermost first. */
  readonly groups: readonly string[];
  /** The element's classes: what it is. */
  readonly is: readonly string[];
  /** `#rrggbb`, or `none`. */
  readonly fill: string;
  readonly stroke: string;
  /** Half of the stroke's width; 0 without a stroke. */
  readonly half: number;
}

export interface AreaMark extends Painted {
  readonly kind: 'area';
  /** Without its stroke. */
  readonly area: Area;
  /** With its stroke. */
  readonly outer: Area;
}

export interface LineMark extends Painted {
  readonly kind: 'line';
  readonly d: string;
  /** How far its group is moved, and by how much it is larger. */
  readonly offset: Point;
  readonly scale: number;
  /** Curves as short chords. */
  readonly stretches: readonly Segment[];
  /** How far the stroke reaches beyond its ends. */
  readonly cap: number;
  /** With its stroke. */
  readonly box: Rect;
}

export interface TextMark extends Painted {
  readonly kind: 'text';
  readonly words: string;
  readonly size: number;
  /** A box for each character. */
  readonly ink: readonly Rect[];
  readonly box: Rect;
}

export type Mark = AreaMark | LineMark | TextMark;

/** Attributes that change neither place nor ink, or are read elsewhere. */
const HARMLESS =
  /^(xmlns|version|role|aria-[a-z]+|lang|xml:lang|data-[a-z-]+|font-family|lengthAdjust|stroke-linejoin|stroke-dasharray)$/;
/** Handed down to what is inside. */
const INHERITED: ReadonlySet<string> = new Set([
  'fill',
  'stroke',
  'stroke-width',
  'stroke-linecap',
  'font-size',
  'font-weight',
  'text-anchor',
]);
const READ = new Set([
  ...[
    'id',
    'class',
    'transform',
    'viewBox',
    'width',
    'height',
    'x',
    'y',
    'rx',
    'cx',
    'cy',
    'r',
    'd',
    'textLength',
  ],
  ...INHERITED,
]);

/** Styles that change nothing by themselves: the font embedded, and inks a page may set, each with its own for default. */
const KEEPS_INKS =
  /^(?:@font-face\{[^{}]*\}|@supports \(color:var\(--a\)\)\{(?:\[aria-labelledby\^="[^"]*"\] \[(fill|stroke)="(#[\da-f]{6})"\]\{\1:var\(--solderleaf-[a-z-]+,\2\)\})*\})*$/;

interface Context {
  readonly offset: Point;
  readonly scale: number;
  readonly groups: readonly string[];
  readonly inherited: ReadonlyMap<string, string>;
}

interface Painting {
  readonly marks: readonly Mark[];
  readonly findings: readonly Finding[];
}

export function paint(root: XmlElement): Painting {
  const marks: Mark[] = [];
  const findings: Finding[] = [];
  const unread = (what: string, where?: Point): void =>
    void findings.push(finding('not-read', where, { what }));
  const visit = (element: XmlElement, context: Context): void => {
    const here = enter(element, context, unread);
    if (element.name === 'title' || element.name === 'desc') return;
    if (element.name === 'style' && KEEPS_INKS.test(element.text)) return;
    if (element.name !== 'text' && element.text.trim() !== '') unread('text outside a text element');
    if (element.name === 'g' || element === root) {
      const before = marks.length;
      for (const child of element.children) visit(child, here);
      // How a part looks in another state: what is not displayed is not painted, but must be such as could be.
      if (element.name === 'g' && element.attributes.get('display') === 'none') marks.length = before;
      return;
    }
    for (const child of element.children)
      if (!/^(title|desc)$/.test(child.name)) unread(`<${child.name}>`, here.offset);
    const mark = markOf(element, here, marks.length, unread);
    if (mark) marks.push(mark);
  };
  visit(root, { offset: { x: 0, y: 0 }, scale: 1, groups: [], inherited: new Map() });
  return { marks, findings };
}

/** The context inside an element: moved, named and inked as its attributes say. */
function enter(
  { name, attributes }: XmlElement,
  context: Context,
  unread: (what: string, where?: Point) => void,
): Context {
  let { inherited, offset, scale } = context;
  for (const [key, value] of attributes) {
    const hides = key === 'display' && value === 'none' && name === 'g';
    if (!READ.has(key) && !HARMLESS.test(key) && !hides)
      unread(`the attribute ${key} of <${name}>`, context.offset);
    if (INHERITED.has(key)) inherited = new Map(inherited).set(key, value);
  }
  const transform = attributes.get('transform');
  if (transform !== undefined) {
    const moved = /^translate\(\s*(-?[\d.]+)(?:[\s,]+(-?[\d.]+))?\s*\)$/.exec(transform);
    const larger = Number(/^scale\(([\d.]+)\)$/.exec(transform)?.[1]);
    if (moved)
      offset = { x: offset.x + scale * Number(moved[1]), y: offset.y + scale * Number(moved[2] ?? 0) };
    else if (larger > 0) scale *= larger;
    else unread(`the transform “${transform.slice(0, 40)}”`, offset);
  }
  const id = attributes.get('id');
  const groups = name === 'g' && id !== undefined ? [...context.groups, id] : context.groups;
  return { offset, scale, groups, inherited };
}

function markOf(
  element: XmlElement,
  { offset, scale, groups, inherited }: Context,
  order: number,
  unread: (what: string, where?: Point) => void,
): Mark | undefined {
  const { name, attributes } = element;
  const number = (key: string, otherwise = 0): number => {
    const written = attributes.get(key);
    const value = written === undefined ? otherwise : Number(written);
    if (!Number.isFinite(value) || written === '') unread(`${key}="${written?.slice(0, 20)}"`, offset);
    return Number.isFinite(value) ? value : 0;
  };
  const long = (key: string): number => scale * number(key);
  const across = (key: string): number => long(key) + offset.x;
  const down = (key: string): number => long(key) + offset.y;
  const ink = (key: string, otherwise: string): string => {
    const written = inherited.get(key) ?? otherwise;
    if (written === 'none' || /^#[\da-f]{6}$/i.test(written)) return written.toLowerCase();
    unread(`the colour ${key}="${written.slice(0, 40)}"`, offset);
    return otherwise;
  };
  const stroke = ink('stroke', 'none');
  const width = Number(inherited.get('stroke-width') ?? 1);
  if (!Number.isFinite(width)) unread(`stroke-width="${inherited.get('stroke-width')}"`, offset);
  const half = stroke === 'none' || !Number.isFinite(width) ? 0 : (scale * width) / 2;
  const is = (attributes.get('class') ?? '').split(/\s+/).filter((word) => word !== '');
  const common = { order, groups, is, fill: ink('fill', '#000000'), stroke, half };
  switch (name) {
    case 'rect': {
      const [x, y] = [across('x'), down('y')];
      const area = { x, y, width: long('width'), height: long('height'), radius: long('rx') };
      return { kind: 'area', ...common, area, outer: grownArea(area, half) };
    }
    case 'circle': {
      const [x, y, radius] = [across('cx'), down('cy'), long('r')];
      const area = { x: x - radius, y: y - radius, width: 2 * radius, height: 2 * radius, radius };
      return { kind: 'area', ...common, area, outer: grownArea(area, half) };
    }
    case 'path': {
      const d = attributes.get('d') ?? '';
      const runs = runsOf(d)?.map((run) =>
        run.map((p) => ({ x: scale * p.x + offset.x, y: scale * p.y + offset.y })),
      );
      if (!runs) return void unread(`the path “${d.slice(0, 40)}”`, offset);
      return {
        kind: 'line',
        ...common,
        d,
        offset,
        scale,
        stretches: runs.flatMap(segmentsOf),
        cap: /^(round|square)$/.test(inherited.get('stroke-linecap') ?? '') ? half : 0,
        box: grownArea({ ...boxOf(runs.flat()), radius: 0 }, half),
      };
    }
    case 'text': {
      const weight = inherited.get('font-weight') ?? '400';
      if (!/^(400|700|normal|bold)$/.test(weight)) unread(`font-weight="${weight.slice(0, 20)}"`, offset);
      const size = scale * Number(inherited.get('font-size'));
      if (!(size > 0)) return void unread('a text without a type size', offset);
      const length = attributes.has('textLength') ? { length: long('textLength') } : {};
      const boxes = inkOf({
        words: element.text,
        x: across('x'),
        y: down('y'),
        size,
        weight: weight === '700' || weight === 'bold' ? 'bold' : 'regular',
        anchor: inherited.get('text-anchor') ?? 'start',
        ...length,
      });
      if (boxes.length === 0) return undefined;
      return { kind: 'text', ...common, words: element.text, size, ink: boxes, box: boundsOf(boxes) };
    }
    default:
      return void unread(`<${name.slice(0, 40)}>`, offset);
  }
}
