/** A slow second way to what sounds in a net of coils alone: paths are traced where the program solves. */

export interface CoilEdge {
  readonly pickup: string;
  readonly a: string;
  readonly b: string;
}

/**
 * The pickups that have a coil on some simple path from tip to sleeve, where a path may run through any number of
 * coils: coils side by side sound together, coils end to end sound in series, and a coil whose ends are joined
 * or that hangs by one end is silent.
 */
export function signalPaths(coils: readonly CoilEdge[], tip: string, sleeve: string): ReadonlySet<string> {
  const heard = new Set<string>();
  if (tip === sleeve) return heard;
  const visit = (node: string, seen: readonly string[], path: readonly CoilEdge[]): void => {
    if (node === sleeve) {
      for (const coil of path) heard.add(coil.pickup);
      return;
    }
    for (const coil of coils) {
      const next = coil.a === node ? coil.b : coil.b === node ? coil.a : undefined;
      if (next !== undefined && !seen.includes(next)) visit(next, [...seen, next], [...path, coil]);
    }
  };
  visit(tip, [tip], []);
  return heard;
}
