/** A sheet for a column is just so wide, its pieces one below the other, and only the drawing's type may be small. */
import { expect, it } from 'vitest';
import { linesIn } from '../../src/common/flow.ts';
import { readDrawing } from '../../src/inspect/drawing.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { sample } from '../truth/draw.ts';

it.each(['kestrel-hss', 'heron-ss'])('%s at several widths', async (name) => {
  const prepared = await prepare(sample(name), undefined, { effort: { steps: 0, seed: 1 } });
  for (const width of [320, 360, 414, 800, 1600]) {
    const { svg, name: id } = render(prepared, { width });
    const drawing = readDrawing(svg);
    if ('rule' in drawing) throw new Error(drawing.message);
    expect(svg).toContain(` width="${width}" `);
    const unit = width / drawing.page.width;
    expect(Number(/ height="(\d+)"/.exec(svg)?.[1]) / drawing.page.height).toBeCloseTo(unit, 4);
    const isDrawn = (groups: readonly string[]): boolean => groups.includes(`${id}-drawing`);
    const beside = drawing.texts.filter(({ groups }) => !isDrawn(groups));
    expect(Math.min(...beside.map(({ size }) => size * unit))).toBeGreaterThanOrEqual(11 - 0.01);
    // Head, drawing, key, cards: each below the one before it.
    const spans = ['head', 'drawing', 'key', 'position-1'].map((piece) => {
      const own = drawing.texts.filter(({ groups }) => groups.includes(`${id}-${piece}`));
      return [
        Math.min(...own.map(({ box }) => box.y)),
        Math.max(...own.map(({ box }) => box.y + box.height)),
      ];
    });
    for (const [i, [top = 0]] of spans.entries())
      if (i > 0) expect(top, `${width}`).toBeGreaterThan(spans[i - 1]?.[1] ?? 0);
    const cards = new Set(
      drawing.shapes.filter(({ is }) => is.includes('sl-card')).map(({ area }) => area.x),
    );
    if (width < 500) expect(cards.size).toBe(1);
    else expect(cards.size).toBeGreaterThan(1);
  }
});

it('words are broken between them, and one wider than a line anywhere; none is lost', () => {
  for (const text of ['Seen from the solder side; right-handed build.', 'Unbroken'.repeat(12), 'a', ''])
    for (const width of [1, 30, 80, 200, 5000]) {
      const lines = linesIn(text, 12, width);
      expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
      if (width === 5000) expect(lines).toEqual([text]);
    }
  expect(linesIn('one two three', 12, 60)).toEqual(['one two', 'three']);
});
