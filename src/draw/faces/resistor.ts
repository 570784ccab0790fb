import { resistorBands } from '../../annotate/marking.ts';
import { around } from '../../common/geometry.ts';
import { type Face, labels } from './face.ts';
import { highlight, legs } from './two-leg.ts';

/** A resistor with its colour bands. */
export const resistorFace: Face = (pen, placed, look) => {
  if (placed.part.kind !== 'resistor') return;
  const { theme } = look;
  const { body } = placed.outline;
  highlight(pen, placed, look);
  legs(pen, placed, look);
  pen.rect(body, {
    class: 'sl-body',
    rx: 9,
    fill: theme.resistor,
    stroke: theme.outline,
    'stroke-width': 1.5,
  });
  const bands = resistorBands(placed.part.value.value, placed.part.tolerance.value);
  const y = body.y + body.height / 2;
  bands.forEach((code, i) => {
    const last = i === bands.length - 1;
    const x = body.x + (last ? body.width - 10 : 11 + i * (bands.length > 4 ? 7.5 : 9.5));
    pen.rect(around(x, y, 5, body.height - 2), {
      fill: theme.bands[code] ?? 'none',
      stroke: theme.ink,
      'stroke-width': 0.4,
    });
  });
  labels(pen, placed, theme, theme.accent);
};
