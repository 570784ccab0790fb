/** What is drawn again to be compared is what its text would be read as, in every mode, theme and aspect. */
import { expect, it } from 'vitest';
import { nth } from '../../src/common/must.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { type Aspect, sheetOf } from '../../src/draw/compose.ts';
import { drawInlineSheet, sheetToInlineSvg, sheetToSvg } from '../../src/draw/headless.ts';
import { drawSheet } from '../../src/draw/sheet.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';
import { findArrangement, findPage } from '../../src/files/layouts.ts';
import { treeOf } from '../../src/inspect/tree.ts';
import { parseXml, type XmlElement } from '../../src/inspect/xml.ts';
import { prepare } from '../../src/pipeline.ts';
import { circuitKit } from '../circuits/circuits.ts';

const page = findPage('a4');
const ASPECTS: readonly Aspect[] = [
  {},
  { view: 'component-side', state: 1 },
  { step: 3 },
  { width: 400 },
  { only: ['key'] },
  ...(page ? [{ page, date: '2026-12-01' }] : []),
];

const plain = ({ name, attributes, text, children }: XmlElement): unknown => [
  name,
  [...attributes],
  text,
  children.map(plain),
];
const written = (root: XmlElement): string => JSON.stringify(plain(root));
function read(svg: string): string {
  const parsed = parseXml(svg);
  if ('error' in parsed) throw new Error(parsed.error);
  return written(parsed.root);
}

it.each(['hss-lever-5-1v2t-pads', 'hh-toggle-3-1v1t-split', 'bass-ss-2v2t-stereo'])('%s', async (name) => {
  const kit = await circuitKit(name);
  const arrangement = findArrangement('free-flow');
  if (typeof arrangement === 'string') throw new Error(arrangement);
  const hostile: Kit = { ...kit, title: 'A & B <"C"> \u00a0 it’s' };
  const prepared = await prepare(hostile, arrangement, { effort: { steps: 0, seed: 1 } });
  const all = Object.keys(themes) as ThemeName[];
  for (const [i, aspect] of ASPECTS.entries()) {
    // Each theme with some of the aspects, by turns.
    const theme = themes[nth(all, i % all.length)];
    const sheet = sheetOf(prepared, aspect);
    expect(written(treeOf((root) => drawSheet(root, sheet, theme)))).toBe(read(sheetToSvg(sheet, theme)));
    const inline = sheetOf(prepared, { ...aspect, mode: 'inline' });
    expect(written(treeOf((root) => drawInlineSheet(root, inline, theme)))).toBe(
      read(sheetToInlineSvg(inline, theme)),
    );
  }
});
