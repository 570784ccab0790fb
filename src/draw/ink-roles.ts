/**
 * Inks by what they are for, so that a page's stylesheet may set them: the paper, and not whatever is white. A theme for an inline
 * drawing has the role of each ink written behind it; where it is drawn the role becomes a class, and the ink is as ever.
 */
import type { Attributes, Canvas } from './canvas.ts';
import type { Theme } from './theme.ts';

/** Roles of single inks, by the name they have in a theme. */
const SINGLE = [
  'paper',
  'ink',
  'quiet',
  'plate',
  'inside',
  'outline',
  'lug',
  'lugInk',
  'solder',
  'jumper',
  'accent',
  'accentFill',
  'mark',
  'pale',
  'leg',
  'sleeving',
  'resistor',
  'capacitor',
  'capacitorInk',
] as const satisfies readonly (keyof Theme)[];

/** Inks of which a theme has one by name or colour, and what their roles begin with. */
const SEVERAL = { tints: 'line', bands: 'band', insulation: 'wire', cores: 'core' } as const;

/** `accentFill` is `accent-fill`, the tint `tone` is `line-tone`, red insulation `wire-rd`. */
const hyphened = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
const roleIn = (several: keyof typeof SEVERAL, name: string): string =>
  `${SEVERAL[several]}-${name.toLowerCase()}`;
const kinds = Object.keys(SEVERAL) as (keyof typeof SEVERAL)[];

/** Every role of a theme with its ink. */
export const inkRoles = (theme: Theme): ReadonlyMap<string, string> =>
  new Map([
    ...SINGLE.map((name) => [hyphened(name), theme[name]] as const),
    ...kinds.flatMap((kind) =>
      Object.entries(theme[kind]).map(([name, ink]) => [roleIn(kind, name), ink] as const),
    ),
  ]);

/** An ink with its role: `#1d2b36 ink`. */
const roled = (ink: string, role: string): string => `${ink} ${role}`;
const ROLED = /^(#[\da-f]{6}) ([a-z\d-]+)$/;

/** The theme with the role of each ink behind it. A tint in the theme's own ink stays so: it is drawn as such a line is. */
export function roledTheme(theme: Theme): Theme {
  const single = Object.fromEntries(SINGLE.map((name) => [name, roled(theme[name], hyphened(name))]));
  const inks: Theme = { ...theme, ...single };
  const several = Object.fromEntries(
    kinds.map((kind) => [
      kind,
      Object.fromEntries(
        Object.entries(theme[kind]).map(([name, ink]) => [
          name,
          kind === 'tints' && ink === theme.ink ? inks.ink : roled(ink, roleIn(kind, name)),
        ]),
      ),
    ]),
  );
  return { ...inks, ...several, coil: theme.coil === theme.inside ? inks.inside : inks.paper };
}

/** A canvas that draws in such a theme: each ink as it is, and its role as a class: `sl-fill-paper`, `sl-stroke-ink`. */
export const roledCanvas = (canvas: Canvas): Canvas => ({
  set: canvas.set,
  element: (name, attributes, words) => canvas.element(name, withClasses(attributes), words),
  group: (attributes) => roledCanvas(canvas.group(withClasses(attributes))),
});

function withClasses(attributes: Attributes): Attributes {
  const classes: string[] = [];
  const inked = Object.entries(attributes).map(([key, value]) => {
    const [, ink, role] = ROLED.exec(String(value)) ?? [];
    if (ink === undefined || (key !== 'fill' && key !== 'stroke')) return [key, value] as const;
    classes.push(`sl-${key}-${role}`);
    return [key, ink] as const;
  });
  if (classes.length === 0) return attributes;
  const { class: own, ...rest } = Object.fromEntries(inked);
  const list = [...(own === undefined ? [] : [own]), ...classes].join(' ');
  return own === undefined ? { class: list, ...rest } : { ...Object.fromEntries(inked), class: list };
}

/** Whether a class is one of those. */
export const isRoleClass = (name: string): boolean => /^sl-(fill|stroke)-/.test(name);

/**
 * The stylesheet of a page that sets the inks of drawings in it: each by a custom property, `--solderleaf-ink` and so on, which
 * falls back to the light theme's; and a class with all of the dark theme's.
 */
export function inkStyles(light: Theme, dark: Theme): string {
  const rules = [...inkRoles(light)].flatMap(([role, ink]) =>
    (['fill', 'stroke'] as const).map(
      (property) => `.sl-${property}-${role} { ${property}: var(--solderleaf-${role}, ${ink}); }`,
    ),
  );
  const inks = [...inkRoles(dark)].map(([role, ink]) => `--solderleaf-${role}: ${ink};`).join(' ');
  return [
    '/* Inks of Solderleaf drawings that stand in a page (draw --mode inline). Set --solderleaf-paper and so on to change them. */',
    ...rules,
    `.solderleaf-dark { ${inks} }`,
    `@media (prefers-color-scheme: dark) { .solderleaf-auto { ${inks} } }`,
    '',
  ].join('\n');
}
