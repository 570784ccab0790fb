/** Inks by their roles: an inline drawing is the static one with classes, and each class names the very ink that it stands beside. */
import { describe, expect, it } from 'vitest';
import { contrast } from '../../src/common/contrast.ts';
import { inkRoles, inkStyles, isRoleClass, roledTheme } from '../../src/draw/ink-roles.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';
import { strokes } from '../../src/draw/wires.ts';
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

describe('the stylesheet', () => {
  const css = inkStyles();
  const light = inkRoles(themes.light);
  const dark = inkRoles(themes.dark);
  /** What the first rule that begins so declares, after it by property. */
  const declared = (rule: string): ReadonlyMap<string, string> => {
    const [, inside = ''] =
      new RegExp(`${rule.replace(/[.*()[\]"^$:+]/g, '\\$&')} \\{ ([^{}]*) \\}`).exec(css) ?? [];
    return new Map(
      [...inside.matchAll(/([\w-]+): ([^;]*);/g)].map(([, name = '', value = '']) => [name, value]),
    );
  };

  it('has a rule for every class that drawings have, by a property that falls back to the light theme’s ink', () => {
    const met = new Set<string>();
    for (const one of prepared)
      for (const aspect of [{}, { lines: 'signal' }, { step: 3 }, { state: 0 }] as const)
        for (const { classes } of elementsOf(renderInline(one, aspect)))
          for (const name of classes) met.add(name);
    expect(met.size).toBeGreaterThan(40);
    for (const name of met) {
      const [, kind = '', role = ''] = /^sl-(fill|stroke)-(.*)$/.exec(name) ?? [];
      const value = declared(`.${name}`).get(kind) ?? '';
      expect(value, name).toMatch(new RegExp(`^var\\(--solderleaf-${role}, `));
      expect(value.replaceAll(')', '').endsWith(light.get(role) ?? 'none'), `${name} ${value}`).toBe(true);
    }
  });

  it('has the dark theme’s inks twice, on a screen alone; bands and insulation stay true', () => {
    for (const of of [
      '@media screen { .solderleaf-dark',
      '@media screen and (prefers-color-scheme: dark) { .solderleaf-auto',
    ]) {
      const inks = declared(of);
      for (const [role, ink] of dark) {
        const value = inks.get(`--solderleaf-${role}`) ?? light.get(role) ?? '';
        expect(value.replaceAll(')', '').endsWith(ink), role).toBe(true);
      }
      expect([...inks.keys()].filter((name) => /-(wire|band)-/.test(name))).toEqual([]);
    }
    expect(css).not.toMatch(/url\(|@import|!important/);
  });

  it('has a colour of the system for every ink where one is forced, but for bands and insulation, which have edges in it', () => {
    const forced = declared('[class*="sl-fill-"], [class*="sl-stroke-"], .sl-halo');
    expect(forced.get('forced-color-adjust')).toBe('none');
    for (const role of light.keys()) {
      const value = forced.get(`--solderleaf-${role}`);
      if (/^(wire|band)-/.test(role)) expect(value, role).toBeUndefined();
      else if (role.startsWith('core-')) {
        // Between rails that stay true: black or white, whichever stands out from them more.
        expect(contrast(value ?? '', light.get(role.replace('core', 'wire')) ?? ''), role).toBeGreaterThan(
          4.5,
        );
      } else
        expect(value, role).toMatch(
          /^(Canvas|CanvasText|ButtonFace|ButtonText|GrayText|LinkText|Highlight)$/,
        );
    }
    // A word and what it stands on are a pair of the system's.
    for (const [word, ground] of [
      ['ink', 'paper'],
      ['quiet', 'paper'],
      ['ink', 'plate'],
      ['accent', 'accent-fill'],
      ['capacitor-ink', 'capacitor'],
    ])
      expect([forced.get(`--solderleaf-${word}`), forced.get(`--solderleaf-${ground}`)]).toEqual([
        'CanvasText',
        'Canvas',
      ]);
    expect([forced.get('--solderleaf-lug-ink'), forced.get('--solderleaf-lug')]).toEqual([
      'ButtonText',
      'ButtonFace',
    ]);
  });

  it('pales what is not live as a drawing of one state does', () => {
    const pale = declared('.sl-off :is(path, rect, circle)');
    const [one] = prepared;
    if (!one) throw new Error('no kit');
    /** Classes of the strokes of a joint, without the unseen one. */
    const inksOf = (svg: string, joint: number): ReadonlySet<string> => {
      const [group = ''] = new RegExp(`data-joint="${joint}".*?</g>`, 's').exec(svg) ?? [];
      return new Set(
        elementsOf(group).flatMap(({ classes }) =>
          classes.map((name) => name.replace(/^sl-(fill|stroke)-/, '')),
        ),
      );
    };
    const [all, state] = [renderInline(one), renderInline(one, { state: 0 })];
    let compared = 0;
    for (const i of one.circuit.joints.keys()) {
      const drawn = inksOf(state, i + 1);
      if (!drawn.has('pale')) continue;
      const shown = new Set(
        [...inksOf(all, i + 1)].map(
          (role) => /--solderleaf-([\w-]+)/.exec(pale.get(`--solderleaf-${role}`) ?? '')?.[1] ?? role,
        ),
      );
      expect(
        [...drawn].filter((role) => !shown.has(role)),
        `joint ${i + 1}`,
      ).toEqual([]);
      expect(
        [...shown].filter((role) => role !== 'pale' && role !== 'paper'),
        `joint ${i + 1}`,
      ).toEqual([]);
      compared++;
    }
    expect(compared).toBeGreaterThan(5);
  });
});

describe.each(['light', 'dark'] as const)('of the inks of the %s scheme', (name) => {
  const theme = themes[name];

  it('words stand out 4.5 to 1, lines 3 to 1 from what they lie on (WCAG 2.2, 1.4.3 and 1.4.11, from memory)', () => {
    for (const [word, ground] of [
      [theme.ink, theme.paper],
      [theme.ink, theme.plate],
      [theme.quiet, theme.paper],
      [theme.quiet, theme.plate],
      [theme.lugInk, theme.lug],
      [theme.capacitorInk, theme.capacitor],
      [theme.accent, theme.paper],
      [theme.accent, theme.accentFill],
      [theme.paper, theme.ink],
      // The tag of a lug on a part that is not live.
      [theme.lugInk, theme.paper],
    ] as const)
      expect(contrast(word, ground), `${word} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    for (const [line, ground] of [
      [theme.ink, theme.paper],
      [theme.outline, theme.paper],
      [theme.outline, theme.plate],
      [theme.leg, theme.paper],
      [theme.accent, theme.paper],
      // About a mark, which is paler.
      [theme.ink, theme.mark],
    ] as const)
      expect(contrast(line, ground), `${line} on ${ground}`).toBeGreaterThanOrEqual(3);
  });

  it('every wire has an edge that stands out from paper 3 to 1, and a ground wire a core that does from its rails', () => {
    for (const code of Object.keys(theme.insulation)) {
      const [edge] = strokes({ look: 'signal', tint: 'ground', colour: code }, theme);
      expect(contrast(edge?.stroke ?? 'none', theme.paper), code).toBeGreaterThanOrEqual(3);
      const rail = theme.insulation[code] ?? '';
      const other = [theme.paper, theme.ink].map((ink) => contrast(ink, rail));
      expect(contrast(theme.cores[code] ?? 'none', rail), code).toBe(Math.max(...other));
      expect(Math.max(...other), code).toBeGreaterThanOrEqual(2.9);
    }
    for (const tint of Object.keys(theme.tints)) {
      const [edge] = strokes({ look: 'signal', tint: tint as 'tone' }, theme);
      expect(contrast(edge?.stroke ?? 'none', theme.paper), tint).toBeGreaterThanOrEqual(3);
    }
  });
});
