import { capacitorCode } from '../../annotate/marking.ts';
import { type Face, labels } from './face.ts';
import { highlight, legs } from './two-leg.ts';

/** A capacitor with its three-digit code. */
export const capacitorFace: Face = (pen, placed, look) => {
  if (placed.part.kind !== 'capacitor') return;
  const { theme } = look;
  // A little lower than the room it has, so that a name above it with a p or a g keeps clear.
  const room = placed.outline.body;
  const body = { ...room, y: room.y + 1, height: room.height - 2 };
  highlight(pen, placed, look);
  legs(pen, placed, look);
  pen.rect(body, {
    class: 'sl-body',
    rx: 8,
    fill: theme.capacitor,
    stroke: theme.outline,
    'stroke-width': 1.5,
  });
  pen.text(
    capacitorCode(placed.part.value.value),
    { x: body.x + body.width / 2, y: body.y + body.height / 2 },
    {
      size: 13,
      weight: 'bold',
      fill: theme.capacitorInk,
    },
  );
  labels(pen, placed, theme, theme.accent);
};
