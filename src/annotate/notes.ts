/** Notes on a kit that is right but worth a second look, and texts the drawing's font cannot set. */
import type { StateLoads } from '../analyse/index.ts';
import { type Problem, problem } from '../common/problem.ts';
import { missingGlyph } from '../common/text.ts';
import { printQuantity } from '../common/units.ts';
import type { Kit } from '../describe/kit.ts';

/** A load further off its reference than this is worth a note (common practice, no source). */
const OFF = 0.2;

/** One note for each pickup and state whose signal load is more than 20 % off its reference. */
export const loadNotes = (loads: readonly StateLoads[]): readonly Problem[] =>
  loads.flatMap(({ state, loads: entries }) =>
    entries.flatMap((entry): readonly Problem[] => {
      const share = entry.signalLoad / entry.reference.signalLoad - 1;
      if (!(Math.abs(share) > OFF) || !Number.isFinite(share)) return [];
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
          },
          'key',
        ),
      ];
    }),
  );

/** `selector at 2`; `everything at full` for a kit without a switch. */
export const stateWords = (settings: Readonly<Record<string, number>>): string =>
  Object.entries(settings)
    .map(([name, position]) => `${name} at ${position}`)
    .join(', ') || 'the controls at full';

/** Texts with a character the font lacks: a machine's own font would be put in its place. */
export function glyphFaults(kit: Kit): readonly Problem[] {
  const texts = [
    { text: kit.title, path: ['title'] },
    ...kit.parts.map((part) => ({ text: part.label, path: ['parts', part.name, 'label'] })),
  ];
  return texts.flatMap(({ text, path }) => {
    const glyph = missingGlyph(text);
    return glyph === undefined ? [] : [problem('missing-glyph', path, { text, glyph })];
  });
}
