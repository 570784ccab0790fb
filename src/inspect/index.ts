/**
 * Checks a drawing as it is written: reads the SVG's text alone, so that what a customer sees is what is checked, and
 * not what the program meant to draw.
 */
import type { Kit } from '../describe/kit.ts';
import { type Drawing, readDrawing } from './drawing.ts';
import type { Finding } from './finding.ts';
import { chipFindings } from './rules/chips.ts';
import { contrastFindings } from './rules/contrast.ts';
import { drawnFindings } from './rules/drawn.ts';
import { jointFindings } from './rules/joints.ts';
import { pageFindings } from './rules/page.ts';
import { textFindings } from './rules/texts.ts';
import { wireFindings } from './rules/wires.ts';

export { type Finding, printFinding } from './finding.ts';

/** Every rule, in the order the findings come in. */
const RULES: readonly ((drawing: Drawing) => readonly Finding[])[] = [
  drawnFindings,
  wireFindings,
  textFindings,
  chipFindings,
  contrastFindings,
  pageFindings,
];

/** What a drawing is of, and everything found in it; compared with the description too where one is given. */
export interface Inspection {
  /** The kit's id, when it is a drawing at all. */
  readonly id?: string;
  readonly findings: readonly Finding[];
}

/** @param kitOf the description of the kit with this id, if there is one to compare with */
export function inspectWith(svg: string, kitOf: (id: string) => Kit | undefined): Inspection {
  const drawing = readDrawing(svg);
  if ('rule' in drawing) return { findings: [drawing] };
  const kit = kitOf(drawing.id);
  return {
    id: drawing.id,
    findings: [
      ...drawing.findings,
      ...(kit ? jointFindings(drawing, kit) : []),
      ...RULES.flatMap((rule) => rule(drawing)),
    ],
  };
}

/** Everything found in a drawing. */
export const inspect = (svg: string, kit?: Kit): readonly Finding[] => inspectWith(svg, () => kit).findings;
