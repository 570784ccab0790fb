/** A kind made of two others: a pot with a switch behind it. Each brings its lugs, elements, contacts and looks. */

import type { z } from 'zod';
import { at, PITCH, type Point, type Rect } from '../common/geometry.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { definePart, type LugSpec, type PartBase, type PartKind } from './kind.ts';
import { g, type Outline } from './outline.ts';
import type { Shape } from './shape.ts';

export interface Composed<K extends string, A extends PartBase, B extends PartBase> extends PartBase<K> {
  readonly first: A;
  readonly second: B;
}

/**
 * The two side by side, in a narrow column the second below the first; the first has the label, its fields and its values. Seated as
 * the first is.
 *
 * @param second has no fields of its own; of its lugs none is named as one of the first's
 */
export const compose = <
  K extends string,
  S extends z.ZodRawShape,
  A extends PartBase,
  const N extends string,
  B extends PartBase,
  const M extends string,
>(
  kind: K,
  what: string,
  first: PartKind<A['kind'], S, A, N>,
  second: PartKind<B['kind'], Record<never, never>, B, M>,
): PartKind<K, S, Composed<K, A, B>, N | M> => {
  const { withOhms, usual } = first;
  const outlines = (
    part: Composed<K, A, B>,
    caption: string | undefined,
    language: Language,
    narrow: boolean,
  ): readonly [Outline, Outline] => [
    first.outline(part.first, caption, language, narrow),
    second.outline(part.second, undefined, language, narrow),
  ];
  return definePart({
    kind,
    what,
    is: [...first.is, ...second.is],
    mirrors: first.mirrors && second.mirrors,
    fields: first.fields,
    build: (base, written): Composed<K, A, B> => ({
      ...base,
      first: first.build({ ...base, kind: first.kind }, written),
      // It stands apart on the drawing, and so has the name as well.
      second: second.build({ ...base, kind: second.kind }, {}),
    }),
    lugs: [...first.lugs, ...second.lugs] as readonly LugSpec<N | M>[],
    elements: (part) => [...first.elements(part.first), ...second.elements(part.second)],
    contacts: (part) => [...(first.contacts?.(part.first) ?? []), ...(second.contacts?.(part.second) ?? [])],
    ...(usual ? { usual: (part: Composed<K, A, B>) => usual(part.first) } : {}),
    ...(withOhms
      ? {
          withOhms: (part: Composed<K, A, B>, ohms: number) => ({
            ...part,
            first: withOhms(part.first, ohms),
          }),
        }
      : {}),
    outline: (part, caption, language, narrow = false) => {
      const both = together(...outlines(part, caption, language, narrow), narrow);
      return narrow ? { narrow, ...both } : both;
    },
    face: (part, { outline: { narrow = false }, closed, language = DEFAULT_LANGUAGE, turned = {} }) => {
      const [one, other] = outlines(part, undefined, language, narrow);
      const [by, otherBy] = offsetsOf(one, other, narrow);
      return [
        ...first.face(part.first, { outline: one, closed, turned }).map((shape) => shifted(shape, by)),
        ...second
          .face(part.second, { outline: other, closed, turned })
          .map((shape) => shifted(shape, otherBy)),
      ];
    },
  });
};

/** Room between the two, grid units: for a wire to each of the lugs that face each other, and one between. */
const GAP = 2;

/** How far each of the two stands from the top left corner; one below the other about a common middle. */
function offsetsOf(one: Outline, other: Outline, narrow: boolean): readonly [Point, Point] {
  if (!narrow) return [at(0, 0), at(one.width + g(GAP), 0)];
  const aside = PITCH * Math.round((one.width - other.width) / 2 / PITCH);
  return [at(Math.max(0, -aside), 0), at(Math.max(0, aside), one.height + g(GAP))];
}

function together(one: Outline, other: Outline, narrow: boolean): Outline {
  const [by, otherBy] = offsetsOf(one, other, narrow);
  const [a, b] = [outlineMoved(one, by), outlineMoved(other, otherBy)];
  return {
    width: Math.max(by.x + one.width, otherBy.x + other.width),
    height: Math.max(one.height, otherBy.y + other.height),
    body: a.body,
    blocked: [...a.blocked, ...b.blocked],
    lugs: [...a.lugs, ...b.lugs],
    labels: [...a.labels, ...b.labels],
    marks: [...(a.marks ?? []), ...(b.marks ?? [])],
  };
}

function outlineMoved(
  { body, blocked, lugs, labels, marks = [] }: Outline,
  by: Point,
): Pick<Outline, 'body' | 'blocked' | 'lugs' | 'labels' | 'marks'> {
  const rect = (r: Rect): Rect => ({ ...r, x: r.x + by.x, y: r.y + by.y });
  return {
    body: rect(body),
    blocked: blocked.map(rect),
    lugs: lugs.map((lug) => ({
      ...lug,
      tag: rect(lug.tag),
      ports: lug.ports.map((port) => ({
        ...port,
        node: moved(port.node, by),
        spot: moved(port.spot, by),
        ...(port.via ? { via: moved(port.via, by) } : {}),
      })),
      ...(lug.strap
        ? { strap: { ...lug.strap, from: moved(lug.strap.from, by), end: moved(lug.strap.end, by) } }
        : {}),
    })),
    labels: labels.map((label) => ({ ...label, centre: moved(label.centre, by) })),
    marks: marks.map((mark) => ({ ...mark, centre: moved(mark.centre, by) })),
  };
}

const moved = (p: Point, by: Point): Point => at(p.x + by.x, p.y + by.y);

function shifted(shape: Shape, by: Point): Shape {
  switch (shape.shape) {
    case 'rect':
      return { ...shape, rect: { ...shape.rect, x: shape.rect.x + by.x, y: shape.rect.y + by.y } };
    case 'circle':
    case 'text':
      return { ...shape, centre: moved(shape.centre, by) };
    case 'path':
      return {
        ...shape,
        runs: shape.runs.map((run) => run.map((step) => ({ ...step, to: moved(step.to, by) }))),
      };
  }
}
