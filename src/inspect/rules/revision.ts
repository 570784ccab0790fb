/** The revision mark that is printed is the one that programs read. */
import { centreOf } from '../../common/geometry.ts';
import { isMark, parseRevision, type Revision } from '../../draw/mark.ts';
import type { Drawing } from '../drawing.ts';
import { type Finding, finding } from '../finding.ts';
import type { TextMark } from '../paint.ts';

const textsOf = ({ texts, id }: Drawing): readonly TextMark[] =>
  texts.filter(({ groups }) => groups.includes(`${id}-revision`));

/** What a drawing has printed for its revision; absent where it has none, or none that can be read. */
export const revisionIn = (drawing: Drawing): Revision | undefined =>
  textsOf(drawing).flatMap(({ words }) => parseRevision(words) ?? [])[0];

/** A drawing without any is not of this version of the program; of that speaks whoever draws it again. */
export function revisionFindings(drawing: Drawing): readonly Finding[] {
  const written = drawing.root.attributes.get('data-revision');
  const texts = textsOf(drawing);
  const [text, ...more] = texts;
  if (written === undefined && !text) return [];
  const say = (what: string): readonly Finding[] => [
    finding('revision', text && centreOf(text.box), { what }),
  ];
  if (written === undefined) return say('is printed, but not written in the file for programs to read');
  if (!isMark(written)) return say(`in the file is ${written.slice(0, 40)}, which is not a revision mark`);
  if (!text) return say(`${written} is in the file, but not printed`);
  if (more.length > 0) return say('is printed more than once');
  const printed = parseRevision(text.words);
  if (!printed) return say(`is printed as “${text.words.slice(0, 40)}”, which cannot be read`);
  return printed.mark === written ? [] : say(`is printed as ${printed.mark}, and is ${written} in the file`);
}
