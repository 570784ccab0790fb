/** Rules on wires, read from a drawing's geometry. Each finding is a sentence. */
import type { Drawn, Stretch } from './read-svg.ts';

/** Nearest that two wires may run side by side, drawing units. */
const GAP = 10;

const level = (s: Stretch): boolean => s.y1 === s.y2;
const lo = (s: Stretch): number => (level(s) ? Math.min(s.x1, s.x2) : Math.min(s.y1, s.y2));
const hi = (s: Stretch): number => (level(s) ? Math.max(s.x1, s.x2) : Math.max(s.y1, s.y2));
const line = (s: Stretch): number => (level(s) ? s.y1 : s.x1);

export function lintWires({ stretches, bodies }: Drawn): readonly string[] {
  const found: string[] = [];
  for (const s of stretches) if (s.x1 !== s.x2 && s.y1 !== s.y2) found.push(`wire ${s.wire} runs askew`);
  stretches.forEach((s, i) => {
    for (const t of stretches.slice(i + 1)) {
      if (s.wire === t.wire || level(s) !== level(t)) continue;
      const shared = Math.min(hi(s), hi(t)) - Math.max(lo(s), lo(t));
      const apart = Math.abs(line(s) - line(t));
      if (shared > 0.5 && apart < 0.5) found.push(`wires ${s.wire} and ${t.wire} share a stretch`);
      else if (shared > 0.5 && apart < GAP) found.push(`wires ${s.wire} and ${t.wire} run ${apart} apart`);
    }
    for (const body of bodies) {
      const depth = 12;
      const [x0, x1] = [Math.min(s.x1, s.x2), Math.max(s.x1, s.x2)];
      const [y0, y1] = [Math.min(s.y1, s.y2), Math.max(s.y1, s.y2)];
      if (body.round) {
        // A wire soldered to a case ends just inside its edge; anything nearer the middle runs under it.
        const [cx, cy] = [body.x + body.width / 2, body.y + body.height / 2];
        const near = Math.hypot(Math.max(x0 - cx, 0, cx - x1), Math.max(y0 - cy, 0, cy - y1));
        if (near < body.width / 2 - depth) found.push(`wire ${s.wire} runs under ${body.part}`);
      } else if (
        x0 < body.x + body.width - 1 &&
        x1 > body.x + 1 &&
        y0 < body.y + body.height - 1 &&
        y1 > body.y + 1
      )
        found.push(`wire ${s.wire} runs under ${body.part}`);
    }
  });
  return found;
}
