/**
 * Inks by what they are for, so that a page's stylesheet may set them: the paper, and not whatever is white. A theme for an inline
 * drawing has the role of each ink written behind it; where it is drawn the role becomes a class, and the ink is as ever.
 */
import { contrast } from '../common/contrast.ts';
import type { Attributes, Canvas } from './canvas.ts';
import { LINE, type Theme, themes } from './theme.ts';
import { paled } from './wires.ts';

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

/** The custom property of a role. */
const property = (role: string): string => `--solderleaf-${role}`;

/** What a role is where the page does not set it: of a core the paper or the ink that it is, else an ink. */
function inkOf(role: string, ink: string, theme: Theme): string {
  if (!role.startsWith('core-')) return ink;
  const own = ink === theme.paper ? 'paper' : 'ink';
  return `var(${property(own)}, ${theme[own]})`;
}

const cssInk = (role: string, theme: Theme): string =>
  `var(${property(role)}, ${inkOf(role, inkRoles(theme).get(role) ?? theme.ink, theme)})`;

/** All inks of a theme that differ from those that hold without it. */
const inksOf = (theme: Theme, usual: Theme): string => {
  const known = inkRoles(usual);
  return [...inkRoles(theme)]
    .filter(([role, ink]) => inkOf(role, ink, theme) !== inkOf(role, known.get(role) ?? '', usual))
    .map(([role, ink]) => `${property(role)}: ${inkOf(role, ink, theme)};`)
    .join(' ');
};

/** CSS Color 4, 6.2: each that stands on another is meant to be read on it. */
const SYSTEM: Readonly<Record<string, string>> = {
  paper: 'Canvas',
  ink: 'CanvasText',
  quiet: 'CanvasText',
  plate: 'Canvas',
  inside: 'GrayText',
  outline: 'CanvasText',
  lug: 'ButtonFace',
  'lug-ink': 'ButtonText',
  solder: 'Canvas',
  jumper: 'GrayText',
  accent: 'CanvasText',
  'accent-fill': 'Canvas',
  mark: 'Highlight',
  pale: 'GrayText',
  leg: 'CanvasText',
  sleeving: 'Canvas',
  resistor: 'Canvas',
  capacitor: 'Canvas',
  'capacitor-ink': 'CanvasText',
};

/**
 * Where the system forces its colours, bands and insulation stay true, since they are what is looked for, and have edges in the
 * system's; between rails of insulation lies black or white, as the system's paper may be either.
 */
function forcedInk(role: string, theme: Theme): string | undefined {
  if (role.startsWith('line-')) return 'LinkText';
  if (!role.startsWith('core-')) return SYSTEM[role];
  const rail = inkRoles(theme).get(role.replace('core-', 'wire-')) ?? theme.ink;
  const [black, white] = ['#000000', '#ffffff'];
  return contrast(black, rail) > contrast(white, rail) ? black : white;
}

const INKED = '[class*="sl-fill-"], [class*="sl-stroke-"], .sl-halo';

/** By role the role whose ink it has where it does not count, as in a drawing of one state. */
function paleRoles(theme: Theme): ReadonlyMap<string, string> {
  const pale = inkRoles(paled(roledTheme(theme)));
  return new Map(
    [...inkRoles(theme).keys()].flatMap((role) => {
      const as = pale.get(role)?.split(' ')[1] ?? (role.startsWith('core-') ? 'paper' : 'pale');
      return as === role || role.startsWith('band-') ? [] : [[role, as] as const];
    }),
  );
}

/**
 * The stylesheet. Each ink is a custom property, `--solderleaf-ink` and so on, and the light theme's where the page does not set it.
 * On a screen drawings are dark in an element of class `solderleaf-dark`, and in one of class `solderleaf-auto` where the visitor's system is.
 * A joint or a part of class `sl-off` is pale, one of class `sl-named` stands out.
 */
export function inkStyles(light: Theme = themes.light, dark: Theme = themes.dark): string {
  const roles = [...inkRoles(light).keys()];
  const rule = (kind: 'fill' | 'stroke', role: string): string =>
    `.sl-${kind}-${role} { ${kind}: ${cssInk(role, light)}; }`;
  const inks = inksOf(dark, light);
  const forced = roles.flatMap((role) => {
    const ink = forcedInk(role, light);
    return ink === undefined ? [] : [`${property(role)}: ${ink};`];
  });
  // The mark alone does not stand out enough from paper.
  const rim = ['1px 0', '-1px 0', '0 1px', '0 -1px']
    .map((by) => `drop-shadow(${by} 0 ${cssInk('ink', light)})`)
    .join(' ');
  const pale = [...paleRoles(light)].map(([role, as]) => `${property(role)}: ${cssInk(as, light)};`);
  return [
    '/* Inks of Solderleaf drawings that stand in a page (draw --mode inline). Set --solderleaf-paper and so on to change them. */',
    ...roles.flatMap((role) => [
      ...(isOnlyDrawn(role) ? [] : [rule('fill', role)]),
      ...(role.startsWith('band-') ? [] : [rule('stroke', role)]),
    ]),
    '/* The dark scheme; a page is printed in the light one. */',
    `@media screen { .solderleaf-dark { ${inks} } }`,
    `@media screen and (prefers-color-scheme: dark) { .solderleaf-auto { ${inks} } }`,
    '/* Joints and parts that are not live in the state that is shown. Words stay readable. */',
    `.sl-off :is(path, rect, circle) { ${pale.join(' ')} }`,
    '/* A joint whose ends are named, and the lugs that it joins; a wire is pointed at by what lies under it. */',
    '.sl-halo { pointer-events: stroke; }',
    `.sl-named > .sl-halo { stroke: ${cssInk('mark', light)}; filter: ${rim}; }`,
    `.sl-tag.sl-named { stroke: ${cssInk('ink', light)}; stroke-width: ${2 * LINE.outline}; stroke-dasharray: none; }`,
    '/* Colours that the visitor’s system forces. Bands and insulation are true. */',
    '@media (forced-colors: active) {',
    `  ${INKED} { forced-color-adjust: none; ${forced.join(' ')} }`,
    // There is no pale ink: what is not live is thin and broken, as on a copy.
    `  [data-joint].sl-off > path:not(.sl-halo) { stroke: GrayText; stroke-width: ${LINE.hairline}; stroke-dasharray: ${LINE.broken}; }`,
    '}',
    '',
  ].join('\n');
}

/** Wires and their cores are lines, and nothing is filled with them. */
const isOnlyDrawn = (role: string): boolean => /^(wire|core)-/.test(role);
