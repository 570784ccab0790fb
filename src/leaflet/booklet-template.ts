/**
 * A booklet's sheets in Typst: two pages of a leaflet beside each other on each side, in the order in which they follow one another
 * once the sheets are printed on both sides, laid on top of each other and folded in the middle.
 */
export const BOOKLET_TEMPLATE = `
#let booklet = json(bytes(sys.inputs.booklet))
#set document(title: booklet.title, keywords: (booklet.generator,), date: none)
#set text(font: "Inter", fallback: false, lang: booklet.language)
#set page(width: booklet.width * 2mm, height: booklet.height * 1mm, margin: 0mm)
#for side in booklet.sides {
  grid(
    columns: (booklet.width * 1mm, booklet.width * 1mm),
    rows: booklet.height * 1mm,
    ..side.map(number => if number == none { [] } else {
      image("leaflet.pdf", page: number, width: 100%, alt: booklet.alt + " " + str(number))
    }),
  )
}
`;

/** Page numbers by side of a sheet, left and right; absent where the page stays blank. */
type Side = readonly [left: number | null, right: number | null];

/**
 * The order of pages for folded sheets: each sheet has four, so that up to three stay blank at the end.
 *
 * @param pages how many pages there are, from 1
 */
export function sidesOf(pages: number): readonly Side[] {
  const all = Math.ceil(pages / 4) * 4;
  const at = (number: number): number | null => (number > pages ? null : number);
  return Array.from({ length: all / 4 }, (_, i): readonly Side[] => [
    [at(all - 2 * i), at(2 * i + 1)],
    [at(2 * i + 2), at(all - 2 * i - 1)],
  ]).flat();
}
