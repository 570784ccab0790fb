import { resistorBands } from '../../annotate/marking.ts';
import { around } from '../../common/geometry.ts';
import { type Face, labels } from './face.ts';
import { hero, legs } from './two-leg.ts';

/** Colours of the IEC 60062 bands as ink; the codes are those of IEC 60757. */
const BAND: Readonly<Record<string, string>> = {
  BK: '#1a1a1a',
  BN: '#7a4a21',
  RD: '#c8322b',
  OG: '#e8801a',
  YE: '#f2c60f',
  GN: '#2f8f46',
  BU: '#2a5db0',
  VT: '#7c3f98',
  GY: '#8a8f94',
  WH: '#ffffff',
  GD: '#b8963e',
  SR: '#c4c9cd',
  PK: '#f4a6b8',
};

/** A resistor with its colour bands. */
export const resistorFace: Face = (pen, placed, look) => {
  if (placed.part.kind !== 'resistor') return;
  const { theme } = look;
  const { body } = placed.outline;
  hero(pen, placed, look);
  legs(pen, placed, theme);
  pen.rect(body, { class: 'sl-body', rx: 9, fill: '#f3e7cf', stroke: theme.outline, 'stroke-width': 1.5 });
  const bands = resistorBands(placed.part.value.value, placed.part.tolerance.value);
  const y = body.y + body.height / 2;
  bands.forEach((code, i) => {
    const last = i === bands.length - 1;
    const x = body.x + (last ? body.width - 10 : 11 + i * (bands.length > 4 ? 7.5 : 9.5));
    pen.rect(around(x, y, 5, body.height - 2), {
      fill: BAND[code] ?? theme.ink,
      stroke: theme.ink,
      'stroke-width': 0.4,
    });
  });
  labels(pen, placed, theme, theme.accent);
};
