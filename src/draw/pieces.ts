/** What a sheet is composed of, and may be had alone: the wiring, the key with its sentences, the load cards, a step's checklist. */
import type { MessageKey } from '../messages/en.ts';
import type { Language } from '../messages/language.ts';
import { sayIn } from '../messages/say.ts';

export const pieces = ['drawing', 'key', 'cards', 'checklist'] as const;
export type Piece = (typeof pieces)[number];

/** What each is called in a title. */
const CALLED = {
  drawing: 'piece.drawing',
  key: 'piece.key',
  cards: 'piece.cards',
  checklist: 'piece.checklist',
} as const satisfies Readonly<Record<Piece, MessageKey>>;

/** In the order they are named in, each once. */
export const inOrder = (named: readonly Piece[]): readonly Piece[] =>
  pieces.filter((piece) => named.includes(piece));

/** `HSS, five-way lever: wiring and key`. */
export const titleOf = (title: string, only: readonly Piece[], language: Language): string =>
  sayIn(language)('named.list', {
    name: title,
    words: inOrder(only)
      .map((piece) => sayIn(language)(CALLED[piece]))
      .join(', '),
  });

/** In words what of these pieces there is not; nothing where all can be had. */
export function missingPiece(only: readonly Piece[], ofStep: boolean): string | undefined {
  if (ofStep && only.includes('cards'))
    return 'a step has no cards; allowed with --step: drawing, key, checklist';
  if (!ofStep && only.includes('checklist'))
    return 'only a step has a checklist; add --step, or name drawing, key or cards';
  return undefined;
}
