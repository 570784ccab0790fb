/** Two pictures element by element: the one that is checked, and the one that its kit gives in the same places. */
import type { Point } from '../common/geometry.ts';
import type { Kit } from '../describe/kit.ts';
import type { Drawing } from './drawing.ts';
import { type Finding, finding } from './finding.ts';
import type { Element } from './xml.ts';

export interface PictureFinding {
  readonly finding: Finding;
  /** The part it concerns, where it concerns one. */
  readonly part?: string;
}

/** One thing painted: what it is, with everything that decides how it looks. */
interface Leaf {
  readonly words: string;
  readonly group: string;
  readonly where: Point;
  readonly element: Element;
}

/** What may differ: where the whole is put, and for what page. */
const FREE: ReadonlySet<string> = new Set(['viewBox', 'width', 'height', 'version', 'xmlns']);

export function pictureFindings(drawing: Drawing, expected: Element, kit: Kit): readonly PictureFinding[] {
  const [drawn, wanted] = [leavesOf(drawing.root, drawing), leavesOf(expected, drawing)];
  const groups = [...new Set([...drawn.keys(), ...wanted.keys()])];
  const found = groups.flatMap((group) =>
    differences(drawn.get(group) ?? [], wanted.get(group) ?? []).map((one): PictureFinding => {
      const part = partIn(group, drawing, kit);
      return { finding: inWords(group, one, drawing), ...(part === undefined ? {} : { part }) };
    }),
  );
  const order = (leaves: typeof drawn): string => [...leaves.keys()].join(' ');
  return found.length === 0 && order(drawn) !== order(wanted)
    ? [
        {
          finding: finding('drawn-otherwise', undefined, {
            what: 'the order of painting',
            drawn: 'changed',
            described: 'as given',
          }),
        },
      ]
    : found;
}

const partIn = (group: string, { id }: Drawing, { parts }: Kit): string | undefined =>
  parts.find(({ name }) => group === `${id}-part-${name}`)?.name;

/** Leaves by the innermost named group, in the order of painting. */
function leavesOf(root: Element, { id }: Drawing): ReadonlyMap<string, readonly Leaf[]> {
  const leaves = new Map<string, Leaf[]>();
  // In a drawing of a step the codes stand as they do in the whole, which is not to be told from it.
  const skipped = /-step-\d+/.test(id) ? `${id}-colours` : undefined;
  const put = (group: string, leaf: Leaf): void => {
    const known = leaves.get(group);
    if (known) known.push(leaf);
    else leaves.set(group, [leaf]);
  };
  const visit = (element: Element, group: string, offset: Point, given: string): void => {
    const name = element.attributes.get('id');
    if (name !== undefined && name === skipped) return;
    const [, dx = '0', dy = '0'] =
      /^translate\(\s*(-?[\d.]+)[\s,]+(-?[\d.]+)\s*\)$/.exec(element.attributes.get('transform') ?? '') ?? [];
    const here = { x: offset.x + Number(dx), y: offset.y + Number(dy) };
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
  visit(root, '', { x: 0, y: 0 }, '');
  return leaves;
}

/** The paper alone may be of another size. */
function wordsOf(element: Element): string {
  const paper = element.attributes.get('class') === 'sl-paper';
  const skip = paper ? new Set(['x', 'y', ...FREE]) : undefined;
  return `<${element.name} ${attributesOf(element, skip)}>${element.text.trim()}${element.children.map(wordsOf).join('')}`;
}

const attributesOf = ({ attributes }: Element, skip?: ReadonlySet<string>): string =>
  [...attributes]
    .filter(([key]) => !skip?.has(key))
    .map(([key, value]) => `${key}="${value.trim().toLowerCase()}"`)
    .sort()
    .join(' ');

function placeOf({ attributes }: Element, { x, y }: Point): Point {
  const number = (key: string): number => Number(attributes.get(key) ?? 0);
  const [, px = '0', py = '0'] = /^M(-?[\d.]+) (-?[\d.]+)/.exec(attributes.get('d') ?? '') ?? [];
  return {
    x: x + number('x') + number('cx') + Number(px),
    y: y + number('y') + number('cy') + Number(py),
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
  return finding('drawn-otherwise', (drawn ?? wanted)?.where, {
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
