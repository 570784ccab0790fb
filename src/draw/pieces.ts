/** What a sheet is composed of, and may be had alone: the wiring, the key with its sentences, the load cards, a step's checklist. */
export const pieces = ['drawing', 'key', 'cards', 'checklist'] as const;
export type Piece = (typeof pieces)[number];

/** What each is called in a title. */
const CALLED: Readonly<Record<Piece, string>> = {
  drawing: 'wiring',
  key: 'key',
  cards: 'loads in each switch position',
  checklist: 'checklist',
};

/** In the order they are named in, each once. */
export const inOrder = (named: readonly Piece[]): readonly Piece[] =>
  pieces.filter((piece) => named.includes(piece));

/** `HSS, five-way lever: wiring and key`. */
export const titleOf = (title: string, only: readonly Piece[]): string =>
  `${title}: ${inOrder(only)
    .map((piece) => CALLED[piece])
    .join(', ')}`;

/** In words what of these pieces there is not; nothing where all can be had. */
export function missingPiece(only: readonly Piece[], ofStep: boolean): string | undefined {
  if (ofStep && only.includes('cards'))
    return 'a step has no cards; allowed with --step: drawing, key, checklist';
  if (!ofStep && only.includes('checklist'))
    return 'only a step has a checklist; add --step, or name drawing, key or cards';
  return undefined;
}
