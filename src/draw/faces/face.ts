/** What every face shares: plates, lug tags, stems. A face shows what a part is outside and what it does inside. */
import type { Rect } from '../../common/geometry.ts';
import { type LabelSlot, TYPE } from '../../place/outlines/outline.ts';
import type { PlacedPart } from '../../place/placement.ts';
import type { Pen } from '../pen.ts';
import { LINE, type Theme } from '../theme.ts';

/** What a face is told beyond its part: the theme, and the position each switch is drawn in. */
export interface Look {
  readonly theme: Theme;
  /** Lugs joined by the contacts drawn closed, by part name. */
  readonly closed: ReadonlyMap<string, readonly (readonly string[])[]>;
  /** `part.lug` of every lug that something is joined to. */
  readonly joined: ReadonlySet<string>;
  /** `part.lug` of every lug that several joints of the kit meet at. */
  readonly meeting: ReadonlySet<string>;
  /** Parts drawn with the accent: padding resistors. */
  readonly highlighted: ReadonlySet<string>;
}

export type Face = (pen: Pen, placed: PlacedPart, look: Look) => void;

export const plate = (pen: Pen, rect: Rect, radius: number, theme: Theme): void =>
  pen.rect(rect, {
    class: 'sl-plate',
    rx: radius,
    fill: theme.plate,
    stroke: theme.outline,
    'stroke-width': LINE.outline,
  });

/** The tags to solder to, with their names. Names longer than the tag has room for are not made: outlines size them. */
export function tags(pen: Pen, { part, outline }: PlacedPart, { theme, joined }: Look): void {
  for (const { lug, tag } of outline.lugs) {
    if (lug === 'case') continue;
    const used = joined.has(`${part.name}.${lug}`);
    pen.rect(tag, { class: 'sl-tag', ...tagLook(theme, used) });
    pen.text(
      lug,
      { x: tag.x + tag.width / 2, y: tag.y + tag.height / 2 },
      {
        size: TYPE.lug,
        fill: used ? theme.lugInk : theme.quiet,
        weight: 'bold',
        // A tail would touch a wire's solder joint at the tag's lower edge.
        lift: /[gjpqy]/.test(lug) ? 1 : 0,
      },
    );
  }
}

/** A lug's tag; one that nothing is joined to is hollow, so that it is not taken for forgotten. */
export const tagLook = (theme: Theme, used: boolean) => ({
  rx: 5,
  fill: used ? theme.lug : theme.paper,
  stroke: theme.outline,
  'stroke-width': 1,
  ...(used ? {} : { 'stroke-dasharray': '3 2' }),
});

/** The part's own lines of text: name, value and the like. */
export function labels(
  pen: Pen,
  { outline }: PlacedPart,
  theme: Theme,
  colour?: string,
  slots: readonly LabelSlot[] = outline.labels,
): void {
  slots.forEach((label, i) => {
    pen.text(label.text, label.centre, {
      size: label.size,
      weight: label.weight,
      fill: i === 0 ? theme.ink : label.weight === 'bold' ? (colour ?? theme.ink) : theme.quiet,
    });
  });
}

/** Thin lines inside a part. */
export const inner = (theme: Theme, width = 1.5) => ({
  stroke: theme.outline,
  'stroke-width': width,
  'stroke-linecap': 'round',
  'stroke-linejoin': 'round',
});
