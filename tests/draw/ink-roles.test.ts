/** Inks by their roles: an inline drawing is the static one with classes, and each class names the very ink that it stands beside. */
import { describe, expect, it } from 'vitest';
import { inkRoles, inkStyles, isRoleClass, roledTheme } from '../../src/draw/ink-roles.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';
import { prepare, render, renderInline } from '../../src/pipeline.ts';
import { plainly } from '../tools/inline.ts';
import { sample } from '../truth/draw.ts';

const names = Object.keys(themes) as ThemeName[];
const prepared = await Promise.all(
  ['kestrel-hss', 'osprey-hsh', 'heron-ss'].map((name) =>
    prepare(sample(name), undefined, { effort: { steps: 0, seed: 1 } }),
  ),
);

interface Inked {
  readonly attributes: ReadonlyMap<string, string>;
  readonly classes: readonly string[];
}
const elementsOf = (svg: string): readonly Inked[] =>
  [...svg.matchAll(/<\w+((?: [\w:-]+="[^"]*")*)/g)].map(([, text = '']) => {
    const attributes = new Map(
      [...text.matchAll(/ ([\w:-]+)="([^"]*)"/g)].map(([, name = '', value = '']) => [name, value]),
    );
    return { attributes, classes: (attributes.get('class') ?? '').split(' ').filter(isRoleClass) };
  });
describe.each(names)('%s', (name) => {
  const theme = themes[name];
  const roles = inkRoles(theme);

  it('an inline drawing is the static one with classes and hooks, in every view, state and step', () => {
    for (const one of prepared)
      for (const aspect of [
        {},
        { state: 1 },
        { step: 2 },
        { lines: 'signal' },
        { view: 'component-side' },
      ] as const) {
        const [svg, inline] = [
          render(one, { ...aspect, theme: name }).svg,
          renderInline(one, { ...aspect, theme: name }),
        ];
        expect(plainly(inline)).toBe(svg);
        expect(inline).not.toMatch(/<style| style=/);
      }
  });

  it('every ink has a class, and each class stands beside the ink of its role', () => {
    const met = new Set<string>();
    for (const one of prepared)
      for (const aspect of [{}, { lines: 'signal' }, { state: 0 }, { step: 3 }] as const)
        for (const { attributes, classes } of elementsOf(renderInline(one, { ...aspect, theme: name })))
          for (const property of ['fill', 'stroke']) {
            const ink = attributes.get(property);
            const own = classes.filter((text) => text.startsWith(`sl-${property}-`));
            expect(own, ink).toHaveLength(ink === undefined || ink === 'none' ? 0 : 1);
            const role = own[0]?.slice(`sl-${property}-`.length);
            if (role === undefined) continue;
            expect(roles.get(role), role).toBe(ink);
            met.add(role);
          }
    for (const role of [
      'paper',
      'ink',
      'quiet',
      'plate',
      'outline',
      'lug',
      'solder',
      'jumper',
      'leg',
      'resistor',
    ])
      expect([...met]).toContain(role);
    for (const role of ['line-tone', 'line-pickup-1', 'wire-bk', 'core-bk', 'band-ye'])
      expect(met.has(role), role).toBe(name !== 'print');
  });

  it('a theme with roles is the theme: each ink with its role behind it, a line in ink as ink', () => {
    for (const [role, ink] of inkRoles(roledTheme(theme)))
      expect([`${roles.get(role)} ${role}`, `${theme.ink} ink`], role).toContain(ink);
  });
});

it('the stylesheet sets every role, by a property that falls back to the light theme’s ink, and has the dark ones', () => {
  const css = inkStyles(themes.light, themes.dark);
  for (const [role, ink] of inkRoles(themes.light)) {
    expect(css).toContain(`.sl-fill-${role} { fill: var(--solderleaf-${role}, ${ink}); }`);
    expect(css).toContain(`.sl-stroke-${role} { stroke: var(--solderleaf-${role}, ${ink}); }`);
  }
  for (const [role, ink] of inkRoles(themes.dark))
    expect(css.split(`--solderleaf-${role}: ${ink};`)).toHaveLength(3);
  expect(css).not.toMatch(/url\(|@import/);
});
