/**
 * Everything visible accounted for: where parts and wires lie is read from a drawing, the kit is drawn again in those very
 * places, and the two pictures must be one. So whatever was added, taken away, moved or inked otherwise since, wherever
 * on the sheet, is found; that places themselves are right is what the other rules are for.
 */

import { padCaptions } from '../annotate/pads.ts';
import { stepsOf } from '../annotate/steps.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { centreOf, PITCH, type Point, round2 } from '../common/geometry.ts';
import type { Kit } from '../describe/kit.ts';
import { type Prepared, sheetOf } from '../draw/compose.ts';
import { parseDrawingId, showsWiring } from '../draw/drawing-name.ts';
import type { Page } from '../draw/head.ts';
import { drawInlineSheet } from '../draw/headless.ts';
import { missingPiece } from '../draw/pieces.ts';
import { drawSheet } from '../draw/sheet.ts';
import { themes } from '../draw/theme.ts';
import { is, outlineOf } from '../parts/index.ts';
import { type Outline, outlineTurned } from '../parts/outline.ts';
import { extent, type Frame, rectToSheet, type Turn } from '../place/frame.ts';
import type { PlacedPart, PlacedWire, Placement } from '../place/placement.ts';
import { flipped } from '../place/view.ts';
import type { Drawing, DrawnPart } from './drawing.ts';
import { type Finding, finding } from './finding.ts';
import { pictureFindings } from './picture.ts';
import { revisionIn } from './rules/revision.ts';
import type { Solved } from './solved.ts';
import { treeOf } from './tree.ts';
import type { XmlElement } from './xml.ts';

type Shown = NonNullable<ReturnType<typeof parseDrawingId>>;

/** Findings where a drawing is not what its kit gives in the same places. */
export function redrawFindings(drawing: Drawing, { circuit, loads }: Solved): readonly Finding[] {
  const { kit } = circuit;
  const shown = parseDrawingId(drawing.id, circuit);
  if (!shown || !isThere(shown, circuit)) return [finding('unknown-aspect', undefined, { id: drawing.id })];
  const captions = padCaptions(circuit, loads);
  if (!showsWiring(shown)) {
    // Where nothing has a place, only the parts themselves count: the key names what they have.
    const still = { x: 0, y: 0, turn: 0, mirror: false } as const;
    const parts = kit.parts.map((part): PlacedPart => {
      const outline = outlineOf(part, captions.get(part.name), kit.language);
      return { part, outline, frame: { ...still, width: outline.width, height: outline.height } };
    });
    const drawn = drawAgain(drawing, { circuit, loads, hand: shown.hand }, shown, parts);
    return pictureFindings(drawing, drawn, circuit).map((one) => one.finding);
  }
  const stands = new Map(
    kit.parts.map((part) => [
      part.name,
      // In a column parts may have their narrow form.
      [false, true].flatMap((narrow) => {
        const outline = outlineOf(part, captions.get(part.name), kit.language, narrow);
        return narrow && !outline.narrow ? [] : standsIn(drawing, part.name, outline);
      }),
    ]),
  );
  /** Each part in the first way that fits, or where it is named in the one of that number. */
  const placed = (ways: ReadonlyMap<string, number>): readonly PlacedPart[] =>
    kit.parts.flatMap((part) => {
      const all = stands.get(part.name) ?? [];
      const one = all[ways.get(part.name) ?? 0] ?? all[0];
      return one ? [{ part, ...one }] : [];
    });
  const again = (parts: readonly PlacedPart[], asMarked = false): ReturnType<typeof pictureFindings> => {
    const drawn = drawAgain(drawing, { circuit, loads, hand: shown.hand }, shown, parts, asMarked);
    return pictureFindings(drawing, drawn, circuit);
  };
  const first = placed(new Map());
  // What is drawn again without a part is another picture; of one that is not drawn at all the joints' rules speak.
  if (first.length < kit.parts.length)
    return drawing.parts
      .filter(
        ({ name }) =>
          kit.parts.some((part) => part.name === name) && !first.some(({ part }) => part.name === name),
      )
      .map(({ name, lugs }) =>
        finding('part', lugs[0] && centreOf(lugs[0].area), {
          part: name,
          what: 'has its lugs or its body out of place',
        }),
      );
  let found = again(first);
  const ways = new Map<string, number>();
  // Which way round a resistor lies cannot be told from its legs, nor how a ground point from its lug; those that differ are
  // tried the other ways.
  for (let way = 1; way < WAYS; way++) {
    const wrong = new Set(
      found.flatMap(({ part }) =>
        part !== undefined && (stands.get(part)?.length ?? 0) > way ? [part] : [],
      ),
    );
    if (wrong.size === 0) break;
    const next = again(placed(new Map([...ways, ...[...wrong].map((part) => [part, way] as const)])));
    const right = [...wrong].filter((part) => !next.some((one) => one.part === part));
    if (right.length === 0) continue;
    for (const part of right) ways.set(part, way);
    found = right.length === wrong.size ? next : again(placed(ways));
  }
  // Where it is not known how a part lay before it was changed, neither is the mark that the drawing then had.
  const unsure = found.some(({ part }) => part !== undefined && (stands.get(part)?.length ?? 0) > 1);
  return (unsure ? again(placed(ways), true) : found).map((one) => one.finding);
}

/** Ways in which a part may stand whose lugs lie alike either way round. */
const WAYS = 4;

/** Whether the circuit has the step and the pieces that a name speaks of. */
const isThere = ({ step, only = [] }: Shown, circuit: Circuit): boolean =>
  missingPiece(only, step !== undefined) === undefined &&
  (step === undefined || stepsOf(circuit).some(({ number }) => number === step));

function drawAgain(
  drawing: Drawing,
  prepared: Omit<Prepared, 'placement'>,
  shown: Shown,
  parts: readonly PlacedPart[],
  /** With the mark that it bears, whether that is right or not. */
  asMarked = false,
): XmlElement {
  const { circuit } = prepared;
  const wires = circuit.joints.map((joint, i): PlacedWire => {
    const wire = drawing.wires.find(({ id }) => id === `${drawing.id}-joint-${i + 1}`);
    return {
      joint,
      own: ownOf(circuit.kit, joint),
      points: (wire?.points ?? []).map((p) => moved(p, drawing.offset)),
    };
  });
  const placement = sized(drawing, parts, wires);
  const { view } = shown;
  const { hand: _, ...aspect } = shown;
  const page = pageOf(drawing);
  const revision = revisionIn(drawing);
  const { date } = revision ?? {};
  // What does not show every wire does not tell which mark it should bear, nor does what may have been placed anew for a column.
  const isTold = showsWiring(shown) && shown.step === undefined && shown.width === undefined;
  const mark = isTold && !asMarked ? undefined : revision?.mark;
  const sheet = sheetOf(
    { ...prepared, placement: view === 'component-side' ? flipped(placement) : placement },
    { ...aspect, ...(page ? { page } : {}), ...(date === undefined ? {} : { date }) },
    mark,
  );
  const theme = themes[shown.theme ?? 'light'];
  return treeOf((root) => (shown.mode === 'inline' ? drawInlineSheet : drawSheet)(root, sheet, theme));
}

const moved = (p: Point, by: Point): Point => ({ x: round2(p.x - by.x), y: round2(p.y - by.y) });

const ownOf = ({ parts }: Kit, { from, to }: Circuit['joints'][number]): readonly string[] =>
  parts.flatMap((part) =>
    is(part, 'component') && (part.name === from.part || part.name === to.part) ? [part.name] : [],
  );

/** The size of the drawn area: as it is written, else what is drawn and a margin about it. */
function sized({ drawn }: Drawing, parts: readonly PlacedPart[], wires: readonly PlacedWire[]): Placement {
  if (drawn) return { ...drawn, parts, wires };
  const points = wires.flatMap((wire) => wire.points);
  const right = Math.max(
    ...parts.map(({ frame }) => frame.x + extent(frame).width),
    ...points.map(({ x }) => x),
  );
  const bottom = Math.max(
    ...parts.map(({ frame }) => frame.y + extent(frame).height),
    ...points.map(({ y }) => y),
  );
  return { width: round2(right + PITCH), height: round2(bottom + PITCH), parts, wires };
}

/** The printed page that a drawing is fitted to, from its size in millimetres and its view box. */
function pageOf({ page, scale, millimetres }: Drawing): Page | undefined {
  if (scale === undefined || !millimetres) return undefined;
  return { ...millimetres, margin: round2(-page.y * (millimetres.width / page.width)) };
}

const TURNS: readonly Turn[] = [0, 1, 2, 3];

/** Every way to stand in which a part's lugs and body lie where the drawing has them. */
function standsIn(
  { parts, offset }: Drawing,
  name: string,
  unturned: Outline,
): readonly Omit<PlacedPart, 'part'>[] {
  const drawn = parts.find((part) => part.name === name);
  if (!drawn) return [];
  return TURNS.flatMap((turn) =>
    [false, true].flatMap((mirror) => {
      const outline = outlineTurned(unturned, turn);
      const { width, height } = outline;
      const frame: Frame = { x: 0, y: 0, width, height, turn, mirror };
      const at = fitOf(frame, outline, drawn);
      return at
        ? [
            {
              outline,
              frame: { ...frame, x: Math.round(at.x - offset.x), y: Math.round(at.y - offset.y) },
            },
          ]
        : [];
    }),
  );
}

/** How far a frame must be moved for its lugs and its body to lie where they are drawn; absent where the moves differ. */
function fitOf(frame: Frame, outline: Outline, drawn: DrawnPart): Point | undefined {
  const body = drawn.bodies[0]?.area;
  if (!body) return undefined;
  const [want, have] = [centreOf(rectToSheet(frame, outline.body)), centreOf(body)];
  const by = { x: have.x - want.x, y: have.y - want.y };
  const fits = outline.lugs.every(({ lug, tag, surface }) => {
    const p = centreOf(rectToSheet(frame, tag));
    // A leg's end may be drawn further out, where several joints meet on it.
    const near = drawn.lugs.some((one) => {
      const q = centreOf(one.area);
      const off = Math.abs(p.x + by.x - q.x) + Math.abs(p.y + by.y - q.y);
      if (one.is === 'leg') return off <= 10.5;
      return off <= 1 && (one.is === 'surface' ? surface === true : one.name === lug);
    });
    return near;
  });
  return fits ? by : undefined;
}
