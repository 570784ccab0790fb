/** Shapes of a part's face on paper: what each role looks like in a theme. */

import type { CircleRole, PathRole, RectRole, Shape } from '../parts/shape.ts';
import type { Attributes } from './canvas.ts';
import { CLASS } from './classes.ts';
import type { Pen } from './pen.ts';
import { kept, LINE, type Theme } from './theme.ts';

type Ink = (theme: Theme) => Attributes;

const outlined =
  (fill: (theme: Theme) => string, width: number): Ink =>
  (theme) => ({ fill: fill(theme), stroke: theme.outline, 'stroke-width': kept(theme, width) });

/** `class` tells whoever reads the drawing what a shape is. */
const RECTS: Readonly<Record<RectRole, { readonly class?: string; readonly ink: Ink }>> = {
  plate: { class: CLASS.plate, ink: outlined(({ plate }) => plate, LINE.outline) },
  case: { class: CLASS.case, ink: outlined(({ plate }) => plate, LINE.outline) },
  coil: { ink: outlined(({ coil }) => coil, 1) },
  turn: { ink: outlined(() => 'none', 1) },
  bush: { ink: outlined(({ inside }) => inside, 1.5) },
  'resistor-sample': { ink: outlined(({ resistor }) => resistor, 1) },
  'resistor-body': { class: CLASS.body, ink: outlined(({ resistor }) => resistor, 1.5) },
  'capacitor-body': { class: CLASS.body, ink: outlined(({ capacitor }) => capacitor, 1.5) },
};

const CIRCLES: Readonly<Record<CircleRole, { readonly class?: string; readonly ink: Ink }>> = {
  case: { class: CLASS.case, ink: outlined(({ plate }) => plate, LINE.outline) },
  contact: { ink: outlined(({ plate }) => plate, 1.5) },
  dot: { ink: ({ outline }) => ({ fill: outline }) },
};

const PATHS: Readonly<Record<PathRole, (theme: Theme, width: number) => Attributes>> = {
  // Without grey its length is hatched.
  track: ({ monochrome, ink, inside }, width) =>
    monochrome
      ? { stroke: ink, 'stroke-width': width, 'stroke-dasharray': '1.6 2.4' }
      : { stroke: inside, 'stroke-width': width, 'stroke-linecap': 'round' },
  conductor: (theme, width) => ({
    stroke: theme.outline,
    'stroke-width': kept(theme, width),
    'stroke-linecap': 'round',
    'stroke-linejoin': 'round',
  }),
  clearance: ({ plate }, width) => ({ stroke: plate, 'stroke-width': width }),
  bridge: ({ ink }, width) => ({ stroke: ink, 'stroke-width': width, 'stroke-linecap': 'round' }),
};

/** Edge of a band without colour: the room between two bands must stay open. */
const COPIED_BAND = 1.3;

const classed = (name: string | undefined): Attributes => (name === undefined ? {} : { class: name });

function rectInk(shape: Extract<Shape, { readonly shape: 'rect' }>, theme: Theme): Attributes {
  if (shape.role === 'band')
    return {
      fill: theme.bands[shape.code] ?? 'none',
      stroke: theme.ink,
      'stroke-width': theme.monochrome ? COPIED_BAND : 0.4,
    };
  const { class: name, ink } = RECTS[shape.role];
  return { ...classed(name), rx: shape.radius, ...ink(theme) };
}

export function paintShape(pen: Pen, shape: Shape, theme: Theme): void {
  switch (shape.shape) {
    case 'rect':
      pen.rect(shape.rect, rectInk(shape, theme));
      break;
    case 'circle': {
      const { class: name, ink } = CIRCLES[shape.role];
      pen.circle(shape.centre, shape.radius, { ...classed(name), ...ink(theme) });
      break;
    }
    case 'path':
      pen.path(shape.runs, PATHS[shape.role](theme, shape.width));
      break;
    case 'text':
      pen.text(shape.text, shape.centre, {
        size: shape.size,
        weight: 'bold',
        fill: theme.capacitorInk,
      });
  }
}
