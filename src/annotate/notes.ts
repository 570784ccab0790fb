/** Warnings and notes on a kit that can be drawn, and texts the drawing's font cannot set. */
import { capacitorsAcross, type StateLoads } from '../analyse/index.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { type Problem, problem } from '../common/problem.ts';
import { missingGlyphs } from '../common/text.ts';
import type { Kit } from '../describe/kit.ts';
import { contactsOf } from '../parts/index.ts';
import {
  acrossNotes,
  caseNotes,
  earlyBendNotes,
  idleNotes,
  idlePartNotes,
  shuntNotes,
  switchLegNotes,
} from './circuit-notes.ts';
import { controlNotes } from './control-notes.ts';
import { loadNotes, toneNotes } from './load-notes.ts';
import { stockNotes } from './stock-notes.ts';
import { valueNotes } from './value-notes.ts';
import { soundWarnings } from './warnings.ts';

/** Every warning and note on a kit without an error. */
export function notesOf(circuit: Circuit, loads: readonly StateLoads[]): readonly Problem[] {
  const across = capacitorsAcross(circuit);
  const lost = across.flatMap((one) => one.lost);
  return [
    ...valueNotes(circuit.kit),
    ...stockNotes(circuit.kit),
    ...acrossNotes(circuit, across),
    ...caseNotes(circuit),
    ...switchLegNotes(circuit),
    ...earlyBendNotes(circuit),
    ...idleNotes(circuit),
    ...shuntNotes(circuit),
    ...controlNotes(circuit),
    ...idlePartNotes(circuit, loads),
    ...soundWarnings(circuit, loads),
    ...loadNotes(circuit, loads, lost),
    ...toneNotes(circuit, loads),
  ];
}

/** Texts with a character the font lacks: a machine's own font would be put in its place. */
export function glyphErrors(kit: Kit): readonly Problem[] {
  const texts = [
    { text: kit.title, path: ['title'] },
    ...kit.parts.map((part) => ({ text: part.label, path: ['parts', part.name, 'label'] })),
    ...kit.parts.flatMap((part) =>
      contactsOf(part).flatMap(({ position, mark }) =>
        mark === undefined ? [] : [{ text: mark, path: ['parts', part.name, 'called', position - 1] }],
      ),
    ),
  ];
  return texts.flatMap(({ text, path }) => {
    const glyphs = missingGlyphs(text);
    return glyphs.length === 0 ? [] : [problem('missing-glyph', path, { text, glyphs })];
  });
}
