/** The words about a file that cannot be read as a description at all: see `wording.ts`. */
import { clip, type Message, quote } from './quoting.ts';

export interface FileDetails {
  'file-unreadable': { reason: string };
  'file-too-large': { most: number };
  'output-taken': { output: string; file: string };
  'file-empty': Record<never, never>;
  'not-a-kit': Record<never, never>;
  'not-text': Record<never, never>;
  /** `comment`: a key that stands in a comment above the line, and may be what the line belongs under. */
  'bad-syntax': { reason: string; comment?: string };
  'duplicate-key': { key: string };
  'too-many-aliases': Record<never, never>;
  'too-deep': Record<never, never>;
  'too-long': { most: number };
  'script-failed': { reason: string };
}

type Wording = { readonly [C in keyof FileDetails]: (detail: FileDetails[C]) => Message };

const error = (message: string, remedy: string): Message => ({ severity: 'error', message, remedy });

export const fileWording: Wording = {
  'file-unreadable': (d) =>
    error(`the file cannot be read: ${d.reason}`, 'Check the path and the permissions.'),
  'file-too-large': (d) =>
    error(
      `the file is larger than ${d.most / 1e6} million bytes`,
      'Name another file; a kit usually has a few thousand bytes.',
    ),
  'output-taken': (d) =>
    error(
      `${clip(d.output)} is also the name of the drawing of ${d.file}`,
      'Give one of the two kits another id, or draw them into separate folders with --out.',
    ),
  'file-empty': () =>
    error('the file is empty', 'Write at least kit, title, parts and joints; see the README for an example.'),
  'not-a-kit': () =>
    error(
      'not a kit: it has neither kit nor parts nor joints',
      'Name another file; see the README for an example.',
    ),
  'not-text': () => error('the file is not text in UTF-8', 'Save the description as plain text in UTF-8.'),
  'bad-syntax': (d) =>
    error(
      d.reason,
      d.comment === undefined
        ? 'Correct the text at the marked position; indent with spaces, and close every quote and bracket.'
        : `Is the line that it belongs under, ${quote(d.comment)}, still a comment? Remove the # before it too.`,
    ),
  'duplicate-key': (d) =>
    error(`${quote(d.key)} is given twice`, 'Remove one of the two; if they are two parts, rename one.'),
  'too-many-aliases': () =>
    error('the aliases in this file expand without limit', 'Write the parts out instead of using aliases.'),
  'script-failed': (d) =>
    error(
      `the file could not be run: ${d.reason}`,
      'It must have one kit as its default export: export default defineKit({ … }).',
    ),
  'too-deep': () =>
    error(
      'brackets or indentation are nested too deeply for a kit',
      'Close the brackets; a kit needs at most four levels.',
    ),
  'too-long': (d) =>
    error(
      `the file is longer than ${d.most / 1000} thousand characters`,
      'Write one kit in a file; a kit usually has a few thousand characters.',
    ),
};
