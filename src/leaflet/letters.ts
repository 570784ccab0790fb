/** Letters that a leaflet prints and the font lacks; those of titles and labels are told whenever a kit is read. */
import { type KeyPath, type Problem, problem } from '../common/problem.ts';
import { missingGlyphs } from '../common/text.ts';
import type { Kit } from '../describe/kit.ts';
import { contactsOf, lugsOf } from '../parts/index.ts';

/** An empty box would be printed in their place. */
export function lettersMissing({ about, parts }: Kit): readonly Problem[] {
  const texts: readonly (readonly [text: string | undefined, path: KeyPath])[] = [
    [about, ['about']],
    ...parts.flatMap((part) => [
      [part.code, ['parts', part.name, 'code']] as const,
      [
        lugsOf(part)
          .map(({ name }) => name)
          .join(' '),
        ['parts', part.name, 'lugs'],
      ] as const,
      [
        contactsOf(part)
          .map(({ called }) => called ?? '')
          .join(' '),
        ['parts', part.name, 'called'],
      ] as const,
    ]),
  ];
  return texts.flatMap(([text = '', path]) => {
    const glyphs = missingGlyphs(text.replace(/[\n\r\t]/g, ' '));
    return glyphs.length === 0 ? [] : [problem('missing-glyph', path, { text, glyphs })];
  });
}
