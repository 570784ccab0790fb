/**
 * Where a multimeter's probes are put: the two parts concerned in full, the joints made so far thin, and a probe on each of two lugs that hides
 * nothing. The one that is red, and the other that is black, are told apart by their flags too: P1 and P2.
 */
import { lugId } from '../../circuit/circuit.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import { themes } from '../theme.ts';
import { type Box, cropAbout, type Figure, figureOf, frameIn, type PrintTheme } from './figure.ts';
import { drawHarness, harnessOf, type Made, roomsOf, wordsOf } from './harness.ts';
import { drawProbe, probeRoom, probesOf } from './probe.ts';

interface ProbeSpot {
  readonly part: string;
  readonly lug: string;
}

const MARGIN = 10;

/**
 * @param joints those made by then, indices into the circuit's joints
 * @param spots of the first probe, which is red, and of the second, which is black
 */
export function probeFigure(
  prepared: Prepared,
  joints: readonly number[],
  spots: readonly [ProbeSpot, ProbeSpot],
  box: Box,
  {
    id: name,
    alt,
    theme: themeName = 'light',
  }: { readonly id: string; readonly alt: string; readonly theme?: PrintTheme },
): Figure {
  const sheet = sheetOf(prepared);
  const theme = themes[themeName];
  const concerned = new Set(spots.map(({ part }) => part));
  const made = sheet.lines.map((_, i): Made => (joints.includes(i) ? 'before' : 'absent'));
  const sceneAt = (type: number) => {
    const harness = harnessOf({ sheet, theme, made, concerned, type });
    return {
      harness,
      probes: probesOf(
        harness,
        spots.map(({ part, lug }) => lugId(part, lug)),
      ),
    };
  };
  const frame = frameIn(box, (type) => {
    const { harness, probes } = sceneAt(type);
    const parts = harness.parts.filter(({ part }) => concerned.has(part.name));
    return cropAbout(
      [
        ...parts.flatMap((placed) => [...roomsOf(placed), ...wordsOf(harness, placed)]),
        ...probes.flatMap((probe) => probeRoom(probe, type)),
      ],
      MARGIN,
    );
  });
  const { harness, probes } = sceneAt(frame.type);
  const id = `${sheet.id}-leaflet-${name}`;
  return figureOf({ id, title: sheet.title, language: sheet.language, alt, ...frame, theme }, (pen) => {
    const drawing = pen.group({ id: `${id}-drawing` });
    drawHarness(drawing, id, harness, frame.crop);
    probes.forEach((probe, i) => {
      drawProbe(drawing.group({ id: `${id}-probe-${i + 1}` }), probe, i, frame.type, theme);
    });
  });
}
