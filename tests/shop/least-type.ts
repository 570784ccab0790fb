/** How small the type of a drawing is, read from its text alone. */

/** The smallest type of an SVG in CSS pixels, from its text: every `font-size` by the scales around it. */
export function leastType(svg: string): number {
  const unit = Number(/ width="([\d.]+)"/.exec(svg)?.[1]) / Number(/viewBox="\S+ \S+ (\S+)/.exec(svg)?.[1]);
  const scales = [1];
  let least = Number.POSITIVE_INFINITY;
  for (const [tag, closes, name] of svg.matchAll(/<(\/?)([a-z]+)[^>]*>/g)) {
    if (closes) scales.pop();
    else {
      const scale = (scales.at(-1) ?? 1) * Number(/ transform="[^"]*scale\(([\d.]+)/.exec(tag)?.[1] ?? 1);
      const size = / font-size="([\d.]+)"/.exec(tag)?.[1];
      if (name === 'text' && size !== undefined) least = Math.min(least, Number(size) * scale * unit);
      if (!tag.endsWith('/>')) scales.push(scale);
    }
  }
  return least;
}
