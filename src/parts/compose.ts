/** A kind made of two others: a pot with a switch behind it. Each brings its lugs, elements, contacts and looks. */

import type { z } from 'zod';
import { at, type Point, type Rect } from '../common/geometry.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { definePart, type LugSpec, type PartBase, type PartKind } from './kind.ts';
import { g, type Outline } from './outline.ts';
import type { Shape } from './shape.ts';

export interface Composed<K extends string, A extends PartBase, B extends PartBase> extends PartBase<K> {
  readonly first: A;
  readonly second: B;
}

/**
 * The two side by side, the first with the label, its fields and its values; seated as the first is.
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
  ): readonly [Outline, Outline] => [
    first.outline(part.first, caption, language),
    second.outline(part.second, undefined, language),
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
    outline: (part, caption, language) => beside(...outlines(part, caption, language)),
    face: (part, { closed, language = DEFAULT_LANGUAGE, turned = {} }) => {
      const [left, right] = outlines(part, undefined, language);
      const by = offsetOf(left);
      return [
        ...first.face(part.first, { outline: left, closed, turned }),
        ...second.face(part.second, { outline: right, closed, turned }).map((shape) => shifted(shape, by)),
      ];
    },
  });
};

/** Room between the two, grid units: for a wire to each of the lugs that face each other, and one between. */
const GAP = 2;

/** How far to the right of the first the second stands. */
const offsetOf = (left: Outline): number => left.width + g(GAP);

function beside(left: Outline, right: Outline): Outline {
  const by = offsetOf(left);
  const rect = (r: Rect): Rect => ({ ...r, x: r.x + by });
  return {
    width: by + right.width,
    height: Math.max(left.height, right.height),
    body: left.body,
    blocked: [...left.blocked, ...right.blocked.map(rect)],
    lugs: [
      ...left.lugs,
      ...right.lugs.map((lug) => ({
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
    ],
    labels: [...left.labels, ...right.labels.map((label) => ({ ...label, centre: moved(label.centre, by) }))],
    marks: [
      ...(left.marks ?? []),
      ...(right.marks ?? []).map((mark) => ({ ...mark, centre: moved(mark.centre, by) })),
    ],
  };
}

const moved = (p: Point, by: number): Point => at(p.x + by, p.y);

function shifted(shape: Shape, by: number): Shape {
  switch (shape.shape) {
    case 'rect':
      return { ...shape, rect: { ...shape.rect, x: shape.rect.x + by } };
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
