/**
 * Checks a drawing as it is written: reads the SVG's text alone, so that what a customer sees is what is checked, and
 * not what the program meant to draw.
 */
import { inLanguage, type Kit } from '../describe/kit.ts';
import { idOfKit, parseDrawingId, showsWiring } from '../draw/drawing-name.ts';
import { type Drawing, readDrawing } from './drawing.ts';
import { type Finding, finding } from './finding.ts';
import { redrawFindings } from './redraw.ts';
import { chipFindings } from './rules/chips.ts';
import { contrastFindings } from './rules/contrast.ts';
import { drawnFindings } from './rules/drawn.ts';
import { jointFindings } from './rules/joints.ts';
import { pageFindings } from './rules/page.ts';
import { revisionFindings } from './rules/revision.ts';
import { textFindings } from './rules/texts.ts';
import { wireFindings } from './rules/wires.ts';
import { type Solved, solve } from './solved.ts';

export { formatFinding, type Weight } from './finding.ts';
export { LEAST_TYPE } from './rules/page.ts';

/** Every rule, in the order the findings come in. */
const RULES: readonly ((drawing: Drawing) => readonly Finding[])[] = [
  drawnFindings,
  wireFindings,
  textFindings,
  chipFindings,
  contrastFindings,
  pageFindings,
  revisionFindings,
];

interface Inspection {
  readonly findings: readonly Finding[];
  /** The description the drawing was compared with: the one with its id. */
  readonly kit?: Kit;
}

/**
 * Everything found in a drawing, compared with the one of these descriptions that it is of: by what it joins and shows, and
 * by drawing the kit again in the same places.
 */
export function inspectAmong(svg: string, kits: readonly Kit[]): Inspection {
  return inspectWith(svg, kits, true);
}

/** @param redraw draw the kit again; of no use to a drawing that was only just made so */
function inspectWith(svg: string, kits: readonly Kit[], redraw: boolean, known?: Solved): Inspection {
  const drawing = readDrawing(svg);
  if ('rule' in drawing) return { findings: [drawing] };
  const kit = kitOf(drawing.id, kits);
  // In the language that it says it is in, whichever is the kit's own.
  const solved = kit && (known ?? solve(inLanguage(kit, drawing.language)));
  const described =
    kit || kits.length === 0
      ? []
      : [finding('other-kit', undefined, { drawn: drawing.id, kits: kits.map(({ id }) => id) })];
  return {
    ...(kit ? { kit } : {}),
    findings: [
      ...drawing.findings,
      ...described,
      ...(solved && isWiring(drawing.id, solved) ? jointFindings(drawing, solved) : []),
      ...(solved && redraw ? redrawFindings(drawing, solved) : []),
      ...RULES.flatMap((rule) => rule(drawing)),
    ],
  };
}

/** What is not called a piece without wiring is to show all that the kit joins. */
function isWiring(id: string, { circuit }: Solved): boolean {
  const shown = parseDrawingId(id, circuit);
  return shown === undefined || showsWiring(shown);
}

/** A drawing's id is its kit's, or that and what makes it other than the usual one: its view, state, step or theme. */
const kitOf = (id: string, kits: readonly Kit[]): Kit | undefined =>
  kits
    .filter((kit) => `${id}-`.startsWith(`${idOfKit(kit.id)}-`))
    .reduce<Kit | undefined>(
      (best, kit) => (best && best.id.length >= kit.id.length ? best : kit),
      undefined,
    );

/** Everything found in a drawing; without a description what is joined to what is not compared. */
export const inspect = (svg: string, kit?: Kit): readonly Finding[] =>
  inspectAmong(svg, kit ? [kit] : []).findings;

/** What a drawing shows read back as it is made, before it is written: everything but drawing it again. */
export const proofread = (svg: string, solved: Solved): readonly Finding[] =>
  inspectWith(svg, [solved.circuit.kit], false, solved).findings;

/** The smallest type of a drawing as it is shown: millimetres where its size is in those, else CSS pixels. */
export function smallestType(svg: string): number | undefined {
  const drawing = readDrawing(svg);
  if ('rule' in drawing || drawing.texts.length === 0) return undefined;
  const { root, page, scale, texts } = drawing;
  const unit = scale ?? Number(root.attributes.get('width')) / page.width;
  return Math.min(...texts.map(({ size }) => size)) * unit;
}
