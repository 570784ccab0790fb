/** Who a leaflet is from: what a workshop says of itself in `solderleaf.yaml`. */
import { z } from 'zod';
import { contrast } from '../common/contrast.ts';
import { type Problem, problem } from '../common/problem.ts';
import { missingGlyphs } from '../common/text.ts';
import { webAddress } from '../common/web-address.ts';

/** A workshop's own drawing, checked: it holds shapes and nothing that acts or is fetched. */
export interface Logo {
  /** The text of an SVG element, written anew from the file. */
  readonly svg: string;
  /** What its view box measures, in units of its own; only their ratio tells anything. */
  readonly width: number;
  readonly height: number;
}

export interface Workshop {
  readonly name: string;
  /** May have several lines. */
  readonly address?: string;
  /** Address of its page: `https://…`. */
  readonly website?: string;
  /** Of headings: `#0b5e80`, dark enough to be read on white. */
  readonly colour?: string;
  readonly logo?: Logo;
  /** Last words of a leaflet; may have several lines. */
  readonly closing?: string;
}

/** Least contrast of text with the paper (WCAG 2.2, 1.4.3, from memory). */
const CONTRAST = 4.5;
const PAPER = '#ffffff';

/** Longest texts, characters, and most lines of an address. */
const LONGEST = { name: 300, address: 600, closing: 2000 } as const;
const MOST_LINES = 8;

/** Text as people write it: lines are all that is allowed of what does not print. */
const written = (longest: number) => z.string().regex(/\S/).max(longest);

const colour = z.string().superRefine((ink, context) => {
  const issue = (message: string, remedy: string): void =>
    context.addIssue({ code: 'custom', message, params: { remedy } });
  if (!/^#[0-9a-f]{6}$/i.test(ink))
    return issue('not a colour', 'Write # and six hexadecimal digits in quotes, such as "#0b5e80".');
  const has = contrast(ink, PAPER);
  if (has < CONTRAST)
    issue(
      `too pale to be read on white: its contrast is ${Math.floor(has * 10) / 10} : 1`,
      `Use a darker colour, of ${CONTRAST} : 1 or more, such as "${darkened(ink)}".`,
    );
});

const website = z.string().superRefine((written, context) => {
  const read = webAddress(written);
  if (typeof read !== 'string')
    context.addIssue({ code: 'custom', message: read.wrong, params: { remedy: read.remedy } });
});

/** The same hue as dark as it has to be. */
function darkened(ink: string): string {
  const parts = [1, 3, 5].map((i) => Number.parseInt(ink.slice(i, i + 2), 16));
  for (let share = 0.98; ; share -= 0.02) {
    const darker = `#${parts
      .map((part) =>
        Math.floor(part * share)
          .toString(16)
          .padStart(2, '0'),
      )
      .join('')}`;
    // At the latest black.
    if (contrast(darker, PAPER) >= CONTRAST) return darker;
  }
}

export const workshopSchema = z
  .strictObject({
    name: written(LONGEST.name).describe('Name of the workshop'),
    address: written(LONGEST.address)
      .refine((text) => text.trim().split('\n').length <= MOST_LINES, {
        error: `expected at most ${MOST_LINES} lines`,
      })
      .optional()
      .describe('Address, in several lines where it has them'),
    website: website
      .optional()
      .describe('Address of its page, such as https://www.example.com/; only http and https'),
    colour: colour
      .optional()
      .describe('Colour of headings, such as "#0b5e80"; dark enough to be read on white'),
    logo: z
      .string()
      .regex(/\S/)
      .optional()
      .describe('An SVG file of shapes alone, from the workshop’s folder'),
    closing: written(LONGEST.closing).optional().describe('Last words of a leaflet'),
  })
  .describe('Who leaflets are from');

/** A workshop as it is written: its logo is a file's name yet. */
type WrittenWorkshop = z.output<typeof workshopSchema>;

/** Characters that the font lacks: another font's, or an empty box, would stand in their place. */
export function glyphProblems(workshop: WrittenWorkshop): readonly Problem[] {
  return (['name', 'address', 'closing'] as const).flatMap((key) => {
    const text = workshop[key] ?? '';
    const glyphs = missingGlyphs(text.replace(/[\n\r]/g, ''));
    return glyphs.length === 0 ? [] : [problem('missing-glyph', ['workshop', key], { text, glyphs })];
  });
}
