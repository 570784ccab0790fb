/** Warnings and notes on a kit that can be drawn, and texts the drawing's font cannot set. */
import { capacitorsAcross, type Lost, type StateLoads } from '../analyse/index.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { type Problem, problem } from '../common/problem.ts';
import { missingGlyphs } from '../common/text.ts';
import { printQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';
import { acrossNotes, caseNotes, idleNotes, idlePartNotes, shuntNotes } from './circuit-notes.ts';
import { stateWords } from './state-words.ts';
import { valueNotes } from './value-notes.ts';
import { soundWarnings } from './warnings.ts';

/** A load further off its reference than this is worth a note (common practice, no source). */
const OFF = 0.2;

/** Every warning and note on a kit without a fault. */
export function notesOf(circuit: Circuit, loads: readonly StateLoads[]): readonly Problem[] {
  const across = capacitorsAcross(circuit);
  const lost = across.flatMap((one) => one.lost);
  return [
    ...valueNotes(circuit.kit),
    ...acrossNotes(circuit, across),
    ...caseNotes(circuit),
    ...idleNotes(circuit),
    ...shuntNotes(circuit),
    ...idlePartNotes(circuit, loads),
    ...soundWarnings(circuit, loads),
    ...loadNotes(loads, lost),
  ];
}

/**
 * One note for each pickup and state whose signal load is more than 20 % off its reference. Where its treble is `lost`
 * the load says nothing of how it sounds, and the note on that stands alone.
 */
export const loadNotes = (
  loads: readonly StateLoads[],
  lost: readonly Pick<Lost, 'state' | 'pickup'>[] = [],
): readonly Problem[] =>
  loads.flatMap(({ state, loads: entries }) =>
    entries.flatMap((entry): readonly Problem[] => {
      const share = entry.signalLoad / entry.reference.signalLoad - 1;
      if (!(Math.abs(share) > OFF) || !Number.isFinite(share)) return [];
      if (lost.some((one) => one.state === state && one.pickup === entry.pickup)) return [];
      return [
        problem(
          'load-off-reference',
          ['parts', entry.pickup],
          {
            part: entry.pickup,
            state: stateWords(state.settings),
            load: printQuantity(entry.signalLoad, 'ohm'),
            reference: printQuantity(entry.reference.signalLoad, 'ohm'),
            percent: Math.round(share * 100),
            limit: OFF * 100,
          },
          'key',
        ),
      ];
    }),
  );

/** Texts with a character the font lacks: a machine's own font would be put in its place. */
export function glyphFaults(kit: Kit): readonly Problem[] {
  const texts = [
    { text: kit.title, path: ['title'] },
    ...kit.parts.map((part) => ({ text: part.label, path: ['parts', part.name, 'label'] })),
  ];
  return texts.flatMap(({ text, path }) => {
    const glyphs = missingGlyphs(text);
    return glyphs.length === 0 ? [] : [problem('missing-glyph', path, { text, glyphs })];
  });
}
