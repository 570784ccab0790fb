/** What an element of a drawing is, for whoever reads one; `sl-` keeps the classes apart from those of a page it is put into. */
export const CLASS = {
  paper: 'sl-paper',
  plate: 'sl-plate',
  case: 'sl-case',
  body: 'sl-body',
  highlight: 'sl-highlight',
  tag: 'sl-tag',
  legEnd: 'sl-leg-end',
  chip: 'sl-chip',
  card: 'sl-card',
  mark: 'sl-mark',
  /** Unseen under a wire of an inline drawing, for a page's stylesheet to show; as wide as a finger can point at. */
  halo: 'sl-halo',
} as const;
