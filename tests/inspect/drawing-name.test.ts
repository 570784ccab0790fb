/** A drawing's name and its ids say which of its kit's drawings it is, and its ids are read back as they were meant. */
import { expect, it } from 'vitest';
import { hands, views } from '../../src/describe/kit.ts';
import { drawingId, drawingName, parseDrawingId, type Variant } from '../../src/draw/drawing-name.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';

const kit = { id: 'wren-step-2', view: 'solder-side', hand: 'right', language: 'en' } as const;
/** A switch with four positions and one with three. */
const states = [1, 2, 3, 4].flatMap((selector) =>
  [1, 2, 3].map((phase) => ({ positions: { selector, phase } })),
);
const circuit = { kit, states };

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
  { mode: 'inline' },
  { mode: 'standalone', step: 3, only: ['drawing'], width: 360 },
];

it('every id is read back, and no two are the same', () => {
  const names = new Set<string>();
  for (const view of views)
    for (const hand of hands)
      for (const theme of Object.keys(themes) as ThemeName[])
        for (const more of MORE) {
          const name = drawingId(circuit, hand, { view, theme, ...more });
          names.add(name);
          const { theme: read = 'light', ...rest } = parseDrawingId(name, circuit) ?? {};
          expect({ ...rest, theme: read }, name).toEqual({ view, hand, theme, ...more });
        }
  expect(names.size).toBe(views.length * hands.length * Object.keys(themes).length * MORE.length);
  expect(drawingName(circuit, 'right', {})).toBe('wren-step-2');
  expect(drawingName(circuit, 'left', { view: 'component-side', state: 1, theme: 'dark' })).toBe(
    'wren-step-2-component-side-left-handed-position-1-2-dark',
  );
});

it('no other id is read', () => {
  for (const name of [
    'wren',
    'wren-step-2',
    'wren--step-2-static',
    'wren--step-2-dark-inline',
    'wren--step-2-',
    'wren--step-2-position-0',
    'wren--step-2-position-2',
    'wren--step-2-position-5-1',
    'wren--step-2-position-1-2-3',
    'wren--step-2-dark-position-1',
    'wren--step-2-b',
    'wren--step-2-key-drawing',
    'wren--step-2-sheet-1',
    'wren--step-2-sheet-0',
    'wren--step-2-0px',
    'wren--step-2-360px-key',
  ])
    expect(parseDrawingId(name, circuit), name).toBeUndefined();
});

it('a position is named by the positions of all switches, as its card is', () => {
  expect(drawingName(circuit, 'right', { state: 10 })).toBe('wren-step-2-position-4-2');
  expect(parseDrawingId('wren--step-2-position-4-2-360px', circuit)).toMatchObject({
    state: 10,
    width: 360,
  });
  const [one] = [{ kit, states: [{ positions: {} }] }];
  expect(drawingName(one, 'right', { state: 0 })).toBe('wren-step-2-position-1');
});
