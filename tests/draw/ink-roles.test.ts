/** Inks by their roles: an inline drawing is the static one with classes, and each class names the very ink that it stands beside. */
import { describe, expect, it } from 'vitest';
import { inkRoles, inkStyles, isRoleClass, markedTheme } from '../../src/draw/ink-roles.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';
import { prepare, render, renderInline } from '../../src/pipeline.ts';
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
/** Without the classes of roles. */
const plain = (svg: string): string =>
  svg.replace(/ class="([^"]*)"/g, (_, list: string) => {
    const left = list.split(' ').filter((one) => !isRoleClass(one));
    return left.length === 0 ? '' : ` class="${left.join(' ')}"`;
  });

describe.each(names)('%s', (name) => {
  const theme = themes[name];
  const roles = inkRoles(theme);

  it('an inline drawing is the static one with classes, in every view, state and step', () => {
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
        expect(plain(inline)).toBe(svg);
        expect(inline).not.toMatch(/<style| style=/);
      }
  });

  it('each class stands beside the ink of its role; what has none is a true colour', () => {
    const trueColours = new Set([...Object.values(theme.bands), ...Object.values(theme.insulation)]);
    const met = new Set<string>();
    for (const one of prepared)
      for (const aspect of [{}, { lines: 'signal' }] as const)
        for (const { attributes, classes } of elementsOf(renderInline(one, { ...aspect, theme: name })))
          for (const property of ['fill', 'stroke']) {
            const ink = attributes.get(property);
            const own = classes.filter((text) => text.startsWith(`sl-${property}-`));
            if (ink === undefined || ink === 'none') {
              expect(own).toEqual([]);
              continue;
            }
            const role = own[0]?.slice(`sl-${property}-`.length);
            if (role === undefined) expect([...trueColours]).toContain(ink);
            else expect(roles.get(role)).toBe(ink);
            expect(own.length).toBeLessThan(2);
            met.add(role ?? 'true');
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
    expect(met.has('true')).toBe(name !== 'print');
    expect(met.has('line-tone')).toBe(name !== 'print');
  });

  it('a theme marked for it differs from it by hardly anything, and has no ink twice but where a line is in ink', () => {
    const { theme: marked, roleOf } = markedTheme(theme);
    const far = (a: string, b: string): number =>
      Math.abs(Number.parseInt(a.slice(1), 16) - Number.parseInt(b.slice(1), 16));
    for (const [role, ink] of inkRoles(marked)) {
      expect(far(ink, roles.get(role) ?? '#000000'), role).toBeLessThan(64);
      expect(roleOf.get(ink) === role || roles.get(role) === theme.ink, role).toBe(true);
    }
    for (const ink of [...Object.values(theme.bands), ...Object.values(theme.insulation)])
      expect(roleOf.has(ink)).toBe(false);
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
