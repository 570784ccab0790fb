/** A part's metal case with places for its joints: apart from each other, in the order in which their wires come to the case in the drawings. */
import { centreOf, type Point, round2 } from '../../common/geometry.ts';
import { must, nth } from '../../common/must.ts';
import { textWidth } from '../../common/text.ts';
import { faceOf, lugsWith, outlineOf, type Part } from '../../parts/index.ts';
import type { Seen } from '../../parts/kind.ts';
import type { Shape } from '../../parts/shape.ts';
import { rectToSheet, toSheet } from '../../place/frame.ts';
import { CLASS } from '../classes.ts';
import type { Prepared } from '../compose.ts';
import { sheetOf } from '../compose.ts';
import { tagLook } from '../part.ts';
import { LINE, themes } from '../theme.ts';
import { cropAbout, type Figure, figureOf, LEAST, POINT, type PrintTheme, sizeOf } from './figure.ts';

type Circle = Extract<Shape, { readonly shape: 'circle' }>;

/** A joint to the case, and what its place is called. */
export interface CaseJoint {
  /** Index into the circuit's joints. */
  readonly joint: number;
  readonly name: string;
}

/** Points of type. */
const POINTS = LEAST + 0.1;
const AIR = 3;
/** Of a full turn what the places take: the rest is left free where the lugs are. */
const ROUND = 0.76;
/** By the size of type: air about a name, and between places and the edge. */
const ROOM = { name: 0.35, edge: 0.3 } as const;
/** Radius of a case at least, millimetres. */
const SMALLEST = 13;
/** Lugs so far from the middle of the case, in its radii, stand at it; others of the part are elsewhere. */
const NEAR = 2;

const roundCase = (part: Part, seen: Pick<Seen, 'outline' | 'language'>): Circle | undefined =>
  faceOf(part, { ...seen, closed: [] }).find(
    (shape): shape is Circle => shape.shape === 'circle' && shape.role === 'case',
  );

/** Whether a part has a case that `caseFigure` can show: round, and not two side by side. */
export const hasRoundCase = (part: Part): boolean =>
  roundCase(part, { outline: outlineOf(part) }) !== undefined;

/**
 * The case as the drawings have it, turned in the same way, with a numbered place for each joint: as large as these take in one row.
 */
export function caseFigure(
  prepared: Prepared,
  part: Part,
  joints: readonly CaseJoint[],
  { alt, theme: name = 'light' }: { readonly alt: string; readonly theme?: PrintTheme },
): Figure {
  const sheet = sheetOf(prepared);
  const theme = themes[name];
  const { parts, wires } = sheet.placement;
  const { frame, outline } = must(
    parts.find((placed) => placed.part.name === part.name),
    `place of ${part.name}`,
  );
  const round = must(roundCase(part, { outline, language: sheet.language }), `round case of ${part.name}`);
  const middle = toSheet(frame, round.centre);
  const angleOf = ({ x, y }: Point): number => Math.atan2(y - middle.y, x - middle.x);
  const tags = outline.lugs.flatMap(({ lug, tag, surface }) => {
    const rect = rectToSheet(frame, tag);
    const { x, y } = centreOf(rect);
    const near = Math.hypot(x - middle.x, y - middle.y) < NEAR * round.radius;
    return surface || !near ? [] : [{ lug, rect }];
  });
  const centres = tags.map(({ rect }) => centreOf(rect));
  const lugs = angleOf({
    x: centres.reduce((sum, { x }) => sum + x, 0) / centres.length,
    y: centres.reduce((sum, { y }) => sum + y, 0) / centres.length,
  });
  const surfaces = lugsWith(part, 'case');
  const comesFrom = ({ joint }: CaseJoint): number => {
    const { joint: own, points } = nth(wires, joint);
    const at = own.to.part === part.name && surfaces.includes(own.to.lug) ? points.length - 1 : 0;
    return (angleOf(nth(points, at)) - lugs + 4 * Math.PI) % (2 * Math.PI);
  };
  const ordered = [...joints].sort((a, b) => comesFrom(a) - comesFrom(b));
  const { x, y } = middle;
  const circle = {
    x: x - round.radius,
    y: y - round.radius,
    width: 2 * round.radius,
    height: 2 * round.radius,
  };
  const crop = cropAbout([circle, ...tags.map(({ rect }) => rect)], AIR);
  // In millimetres first: type has its size on paper, and the case is as large as its places take.
  const letter = POINTS * POINT;
  const space = ROOM.edge * letter;
  const disc = Math.max(...joints.map((one) => textWidth(one.name, letter, 'bold'))) / 2 + ROOM.name * letter;
  const apart = (2 * Math.PI * ROUND) / ordered.length;
  const row = (disc + space / 2) / Math.sin(Math.min(apart, Math.PI) / 2);
  const scale = Math.max(SMALLEST, row + disc + space) / round.radius;
  const type = round2(sizeOf(POINTS, scale));
  const radius = disc / scale;
  const out = round.radius - radius - space / scale;
  const placeOf = (i: number): Point => {
    const angle = lugs + Math.PI * (1 - ROUND) + apart * (i + 0.5);
    return { x: x + out * Math.cos(angle), y: y + out * Math.sin(angle) };
  };
  const id = `${sheet.id}-leaflet-case-${part.name}`;
  const { title, language } = sheet;
  return figureOf({ id, title, language, alt, crop, scale, type, theme }, (pen) => {
    const group = pen.group({ id: `${id}-drawing` });
    group.circle(middle, round.radius, {
      fill: theme.plate,
      stroke: theme.ink,
      'stroke-width': LINE.outline,
    });
    for (const { lug, rect } of tags) {
      group.rect(rect, { class: CLASS.tag, ...tagLook(theme, true) });
      group.text(lug, centreOf(rect), { size: type, weight: 'bold', fill: theme.ink });
    }
    ordered.forEach((one, i) => {
      const place = group.group({ id: `${id}-place-${one.joint + 1}` });
      place.circle(placeOf(i), radius, { fill: theme.ink });
      place.text(one.name, placeOf(i), { size: type, weight: 'bold', fill: theme.paper });
    });
  });
}
