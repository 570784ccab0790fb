/** A drawing's name says which of its kit's drawings it is, and is read back as it was meant. */
import { expect, it } from 'vitest';
import { hands, views } from '../../src/describe/kit.ts';
import { drawingName, parseDrawingName, type Variant } from '../../src/draw/drawing-name.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';

const kit = { id: 'wren-step-2', view: 'solder-side', hand: 'right' } as const;

const MORE: readonly Variant[] = [
  {},
  { state: 0 },
  { state: 11 },
  { step: 1 },
  { step: 10 },
  { only: ['drawing'] },
  { only: ['key', 'cards'] },
  { step: 2, only: ['drawing', 'checklist'] },
  { width: 360 },
  { state: 1, only: ['drawing', 'key', 'cards'], width: 1024 },
  { sheet: 2 },
  { state: 0, sheet: 12 },
];

it('every name is read back, and no two are the same', () => {
  const names = new Set<string>();
  for (const view of views)
    for (const hand of hands)
      for (const theme of Object.keys(themes) as ThemeName[])
        for (const more of MORE) {
          const name = drawingName(kit, hand, { view, theme, ...more });
          names.add(name);
          const { theme: read = 'light', ...rest } = parseDrawingName(name, kit) ?? {};
          expect({ ...rest, theme: read }, name).toEqual({ view, hand, theme, ...more });
        }
  expect(names.size).toBe(views.length * hands.length * Object.keys(themes).length * MORE.length);
  expect(drawingName(kit, 'right', {})).toBe('wren-step-2');
  expect(drawingName(kit, 'left', { view: 'component-side', state: 1, theme: 'dark' })).toBe(
    'wren-step-2-component-side-left-handed-position-2-dark',
  );
});

it('what no drawing of the kit is called is not read', () => {
  for (const name of [
    'wren',
    'wren-step-2-',
    'wren-step-2-position-0',
    'wren-step-2-dark-position-1',
    'wren-step-2-b',
    'wren-step-2-key-drawing',
    'wren-step-2-sheet-1',
    'wren-step-2-sheet-0',
    'wren-step-2-0px',
    'wren-step-2-360px-key',
  ])
    expect(parseDrawingName(name, kit), name).toBeUndefined();
});
