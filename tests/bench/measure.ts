/** Crossings, bends and length of wires, for the bench's table. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Measured {
  readonly crossings: number;
  readonly bends: number;
  readonly length: number;
}

/** Counts over lines whose stretches are level or upright. Meeting ends are not crossings. */
export function measure(lines: readonly (readonly Spot[])[]): Measured {
  const stretches = lines.flatMap((points, line) =>
    points.slice(1).map((b, i) => ({ line, a: points[i] ?? b, b })),
  );
  const near = (p: number, q: number): boolean => Math.abs(p - q) < 0.01;
  const level = stretches.filter(({ a, b }) => near(a.y, b.y));
  const upright = stretches.filter(({ a, b }) => near(a.x, b.x) && !near(a.y, b.y));
  let crossings = 0;
  for (const h of level)
    for (const v of upright)
      if (h.line !== v.line && (v.a.x - h.a.x) * (v.a.x - h.b.x) < 0 && (h.a.y - v.a.y) * (h.a.y - v.b.y) < 0)
        crossings++;
  return {
    crossings,
    bends: lines.reduce((sum, points) => sum + Math.max(0, points.length - 2), 0),
    length: Math.round(
      stretches.reduce((sum, { a, b }) => sum + Math.abs(a.x - b.x) + Math.abs(a.y - b.y), 0),
    ),
  };
}
