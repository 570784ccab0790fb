/** A page as it leaves a copier: drawn at 150 dots to an inch, and every dot black or white. What it shows is asked in drawing units. */
import { PNG } from 'pngjs';
import { svgToPng } from '../../src/publish/png.ts';

const DPI = 150;

export interface Copy {
  /** Whether a point of the drawing is black; outside of the page nothing is. */
  readonly black: (x: number, y: number) => boolean;
  /** Dots to a drawing unit. */
  readonly scale: number;
}

export async function copied(svg: string): Promise<Copy> {
  const [, x0 = 0, y0 = 0, across = 1] = (/viewBox="([-\d.]+) ([-\d.]+) ([\d.]+)/.exec(svg) ?? []).map(
    Number,
  );
  const millimetres = Number(/<svg[^>]* width="([\d.]+)mm"/.exec(svg)?.[1]);
  const png = PNG.sync.read(Buffer.from(await svgToPng(svg, Math.round((millimetres / 25.4) * DPI))));
  const scale = png.width / across;
  return {
    scale,
    black: (x, y) => {
      const [px, py] = [Math.floor((x - x0) * scale), Math.floor((y - y0) * scale)];
      const at = 4 * (py * png.width + px);
      const inside = px >= 0 && py >= 0 && px < png.width && py < png.height;
      const grey = inside
        ? ((png.data[at] ?? 255) + (png.data[at + 1] ?? 255) + (png.data[at + 2] ?? 255)) / 3
        : 255;
      return grey < 128;
    },
  };
}

/** Black stretches from one point to another: how far each begins and ends from the first. */
export function runsBetween(
  { black, scale }: Copy,
  from: { readonly x: number; readonly y: number },
  to: { readonly x: number; readonly y: number },
): readonly (readonly [number, number])[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const count = Math.ceil(length * scale * 2);
  const runs: [number, number][] = [];
  let before = false;
  for (let i = 0; i <= count; i++) {
    const share = i / count;
    const now = black(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
    const last = runs.at(-1);
    if (now && before && last) last[1] = share * length;
    else if (now) runs.push([share * length, share * length]);
    before = now;
  }
  return runs;
}
