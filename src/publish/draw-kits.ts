/** `draw` for many kits: each is drawn for itself, so that one bad kit does not stop the others. */
import { join } from 'node:path';
import { nearest } from '../common/nearest.ts';
import { problem, type Report } from '../common/problem.ts';
import type { Kit } from '../describe/kit.ts';
import { report } from '../describe/report.ts';
import type { Arrangement } from '../place/arrangement.ts';
import { arrangementNames, findArrangement, UNKNOWN } from './layouts.ts';
import { type Loaded, loadKit } from './load.ts';
import { svgToPng } from './png.ts';
import { holds, writeWhole } from './write.ts';

export type Format = 'svg' | 'png';
/** The pipeline, from the kit to the text of its SVG. */
export type Drawer = (kit: Kit, arrangement: Arrangement) => Promise<string>;

export interface DrawOptions {
  readonly out: string;
  readonly formats: readonly Format[];
  /** In place of the one the kit names. */
  readonly arrangement?: string;
  /** Write nothing; only compare. */
  readonly check: boolean;
}

/** What became of one kit: its reports, and what is to be said of each file. */
export interface Outcome {
  readonly file: string;
  readonly reports: readonly Report[];
  readonly lines: readonly string[];
  readonly failed: boolean;
}

/** Draws one file's kit. `taken` holds the kit ids drawn so far and by which file; it grows. */
export async function drawFile(
  file: string,
  options: DrawOptions,
  drawer: Drawer,
  taken: Map<string, string>,
): Promise<Outcome> {
  const loaded = await loadKit(file);
  const { kit } = loaded;
  if (!kit) return { file, reports: loaded.reports, lines: [], failed: true };
  const arrangement = findArrangement(options.arrangement ?? kit.arrangement);
  const fault =
    typeof arrangement === 'string'
      ? arrangementFault(loaded, options.arrangement ?? kit.arrangement, arrangement)
      : takenFault(loaded, kit, taken);
  if (fault || typeof arrangement === 'string')
    return { file, reports: [...loaded.reports, ...(fault ?? [])], lines: [], failed: true };
  taken.set(kit.id, file);
  const svg = await drawer(kit, arrangement);
  const lines: string[] = [];
  let failed = false;
  for (const format of options.formats) {
    const target = join(options.out, `${kit.id}.${format}`);
    const content = format === 'svg' ? svg : await svgToPng(svg);
    if (options.check) {
      const same = holds(target, content);
      failed ||= !same;
      lines.push(same ? `as drawn  ${target}` : `differs   ${target}`);
    } else lines.push(writeWhole(target, content) ? `written   ${target}` : `as drawn  ${target}`);
  }
  return { file, reports: loaded.reports, lines, failed };
}

function arrangementFault({ source }: Loaded, got: string, reason: string): readonly Report[] {
  if (reason !== UNKNOWN) return report([problem('bad-arrangement', ['arrangement'], { reason })], source);
  const allowed = arrangementNames();
  const near = nearest(got, allowed);
  return report(
    [problem('unknown-arrangement', ['arrangement'], { got, allowed, ...(near ? { nearest: near } : {}) })],
    source,
  );
}

function takenFault(
  { source }: Loaded,
  kit: Kit,
  taken: ReadonlyMap<string, string>,
): readonly Report[] | undefined {
  const other = taken.get(kit.id);
  return other === undefined
    ? undefined
    : report([problem('kit-id-taken', ['kit'], { id: kit.id, file: other })], source);
}
