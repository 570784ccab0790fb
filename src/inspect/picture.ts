/** Two pictures element by element: the one that is checked, and the one that its kit gives in the same places. */

import type { Circuit } from '../circuit/circuit.ts';
import type { Point } from '../common/geometry.ts';
import type { Kit } from '../describe/kit.ts';
import { CLASS } from '../draw/classes.ts';
import { parseDrawingId } from '../draw/drawing-name.ts';
import type { Drawing } from './drawing.ts';
import { type Finding, finding } from './finding.ts';
import type { XmlElement } from './xml.ts';

interface PictureFinding {
  readonly finding: Finding;
  /** The part it concerns, where it concerns one. */
  readonly part?: string;
}

/** One thing painted: what it is, with everything that decides how it looks. */
interface Leaf {
  readonly words: string;
  readonly group: string;
  readonly where: Point;
  readonly element: XmlElement;
}

/** Where the paper lies and how large it is: the rules of the page look at that. */
const PLACE: ReadonlySet<string> = new Set(['x', 'y', 'width', 'height']);
/** The size of a sheet, of which a page may be made. */
const SIZE: ReadonlySet<string> = new Set(['viewBox', 'width', 'height']);

export function pictureFindings(
  drawing: Drawing,
  expected: XmlElement,
  circuit: Circuit,
): readonly PictureFinding[] {
  const [{ leaves: drawn, order }, { leaves: wanted, order: given }] = [
    leavesOf(drawing.root, drawing, circuit),
    leavesOf(expected, drawing, circuit),
  ];
  const whole = wholeFindings(drawing, expected, circuit);
  const groups = [...new Set([...drawn.keys(), ...wanted.keys()])];
  const found = groups.flatMap((group) =>
    differences(drawn.get(group) ?? [], wanted.get(group) ?? []).map((one): PictureFinding => {
      const part = partIn(group, drawing, circuit.kit);
      return { finding: inWords(group, one, drawing), ...(part === undefined ? {} : { part }) };
    }),
  );
  if (found.length > 0 || order === given) return [...whole, ...found];
  return [...whole, { finding: otherwise('the order of painting', 'changed', 'as given') }];
}

const otherwise = (what: string, drawn: string, described: string): Finding =>
  finding('differs-from-kit', undefined, { what, drawn, described });

/** What holds for everything on the sheet: its size, its inks and type by default, what a screen reader makes of it. */
function wholeFindings(drawing: Drawing, expected: XmlElement, circuit: Circuit): readonly PictureFinding[] {
  const { root, id } = drawing;
  const drawingIn = ({ children }: XmlElement): XmlElement | undefined =>
    children.find(({ attributes }) => attributes.get('id') === `${id}-drawing`);
  const said = (element: XmlElement | undefined, skip: ReadonlySet<string>): string =>
    element ? attributesOf(element, skip) : 'nothing';
  const { page, millimetres } = drawing;
  const size = ['width', 'height'].map((key) => root.attributes.get(key) ?? 'nothing').join(' by ');
  // In a column a sheet has another size than the units it is drawn in.
  const inColumn = parseDrawingId(id, circuit)?.width !== undefined;
  const given = ({ attributes }: XmlElement): string =>
    [...SIZE].map((key) => attributes.get(key) ?? 'nothing').join(', ');
  const own = `${page.width} by ${page.height}`;
  const pairs = [
    ['the whole sheet', said(root, SIZE), said(expected, SIZE)],
    ...(inColumn ? [['the size of the sheet', given(root), given(expected)] as const] : []),
    [
      'the whole drawing',
      said(drawingIn(root), new Set(['transform'])),
      said(drawingIn(expected), new Set(['transform'])),
    ],
  ] as const;
  return [
    ...pairs.flatMap(([what, drawn, wanted]) => (drawn === wanted ? [] : [otherwise(what, drawn, wanted)])),
    ...(millimetres || inColumn || size === own ? [] : [otherwise('the size of the sheet', size, own)]),
  ].map((one): PictureFinding => ({ finding: one }));
}

const partIn = (group: string, { id }: Drawing, { parts }: Kit): string | undefined =>
  parts.find(({ name }) => group === `${id}-part-${name}`)?.name;

interface Leaves {
  /** By the innermost named group, in the order of painting. */
  readonly leaves: ReadonlyMap<string, readonly Leaf[]>;
  /** The groups in the order of painting, each as often as it comes again after another. */
  readonly order: string;
}

function leavesOf(root: XmlElement, { id }: Drawing, circuit: Circuit): Leaves {
  const leaves = new Map<string, Leaf[]>();
  const order: string[] = [];
  // In a drawing of a step the codes stand as they do in the whole, which is not to be told from it.
  const skipped = parseDrawingId(id, circuit)?.step !== undefined ? `${id}-colours` : undefined;
  const put = (group: string, leaf: Leaf): void => {
    // What is only spoken is painted nowhere.
    if (group !== order.at(-1) && !/^(title|desc)$/.test(leaf.element.name)) order.push(group);
    const known = leaves.get(group);
    if (known) known.push(leaf);
    else leaves.set(group, [leaf]);
  };
  const visit = (element: XmlElement, group: string, { at: offset, scale }: Place, given: string): void => {
    const name = element.attributes.get('id');
    if (name !== undefined && name === skipped) return;
    const [, dx = '0', dy = '0'] =
      /^translate\(\s*(-?[\d.]+)[\s,]+(-?[\d.]+)\s*\)$/.exec(element.attributes.get('transform') ?? '') ?? [];
    const [, larger = '1'] = /^scale\(([\d.]+)\)$/.exec(element.attributes.get('transform') ?? '') ?? [];
    const here: Place = {
      at: { x: offset.x + scale * Number(dx), y: offset.y + scale * Number(dy) },
      scale: scale * Number(larger),
    };
    if (element.name === 'style') return;
    if (element !== root && element.name !== 'g') {
      put(group, { words: `${given} ${wordsOf(element)}`, group, where: placeOf(element, here), element });
      return;
    }
    const own = element === root ? group : (name ?? group);
    // What a group hands down is part of how everything in it looks; where the drawing as a whole lies is not.
    const free = element === root || name === `${id}-drawing`;
    const down = free ? given : `${given} ${attributesOf(element)}`;
    for (const child of element.children) visit(child, own, here, down);
  };
  visit(root, '', { at: { x: 0, y: 0 }, scale: 1 }, '');
  return { leaves, order: order.join(' ') };
}

/** The paper alone may be of another size. */
function wordsOf(element: XmlElement): string {
  const paper = element.attributes.get('class')?.split(' ').includes(CLASS.paper);
  const skip = paper ? PLACE : undefined;
  return `<${element.name} ${attributesOf(element, skip)}>${element.text.trim()}${element.children.map(wordsOf).join('')}`;
}

const attributesOf = ({ attributes }: XmlElement, skip?: ReadonlySet<string>): string =>
  [...attributes]
    .filter(([key]) => !skip?.has(key))
    .map(([key, value]) => `${key}="${value.trim().toLowerCase()}"`)
    .sort()
    .join(' ');

/** Where a group's own coordinates begin, and how large they are. */
interface Place {
  readonly at: Point;
  readonly scale: number;
}

function placeOf({ attributes }: XmlElement, { at: { x, y }, scale }: Place): Point {
  const number = (key: string): number => Number(attributes.get(key) ?? 0);
  const [, px = '0', py = '0'] = /^M(-?[\d.]+) (-?[\d.]+)/.exec(attributes.get('d') ?? '') ?? [];
  return {
    x: x + scale * (number('x') + number('cx') + Number(px)),
    y: y + scale * (number('y') + number('cy') + Number(py)),
  };
}

interface Difference {
  readonly drawn?: Leaf;
  readonly wanted?: Leaf;
}

/** What stands on one side only, from the first that differs to the last. */
function differences(drawn: readonly Leaf[], wanted: readonly Leaf[]): readonly Difference[] {
  const same = (i: number, j: number): boolean => drawn[i]?.words === wanted[j]?.words;
  let head = 0;
  while (head < Math.min(drawn.length, wanted.length) && same(head, head)) head++;
  let tail = 0;
  while (
    tail < Math.min(drawn.length, wanted.length) - head &&
    same(drawn.length - 1 - tail, wanted.length - 1 - tail)
  )
    tail++;
  const [a, b] = [drawn.slice(head, drawn.length - tail), wanted.slice(head, wanted.length - tail)];
  return Array.from({ length: Math.max(a.length, b.length) }, (_, i) => ({
    ...(a[i] ? { drawn: a[i] } : {}),
    ...(b[i] ? { wanted: b[i] } : {}),
  }));
}

function inWords(group: string, { drawn, wanted }: Difference, { id }: Drawing): Finding {
  const what = group === '' ? 'the sheet' : group.replace(`${id}-`, '');
  return finding('differs-from-kit', (drawn ?? wanted)?.where, {
    what,
    drawn: drawn ? leafWords(drawn, wanted) : 'nothing',
    described: wanted ? leafWords(wanted, drawn) : 'nothing',
  });
}

/** A text by its words; anything else by what of it differs from the other. */
function leafWords({ element }: Leaf, other: Leaf | undefined): string {
  if (element.text.trim() !== '' && element.text !== other?.element.text) return `“${element.text.trim()}”`;
  const differing = [...element.attributes].filter(
    ([key, value]) => other?.element.attributes.get(key) !== value,
  );
  const [first] = other && other.element.name === element.name ? differing : [];
  return first ? `${element.name} with ${first[0]} ${first[1]}` : `a ${element.name}`;
}
