/**
 * Inks by what they are for, so that a page's stylesheet may set them: the paper, and not whatever is white. A drawing is made
 * twice, once in its own inks and once with another for each role; where the second has a role's, the first gets its class.
 */
import type { Theme } from './theme.ts';

/** Roles of single inks, by the name they have in a theme; tints have theirs besides. Bands and insulation keep their true colours. */
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

/** `accentFill` is `accent-fill`, the tint `tone` is `line-tone`. */
const hyphened = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** Every role of a theme with its ink. */
export const inkRoles = (theme: Theme): ReadonlyMap<string, string> =>
  new Map([
    ...SINGLE.map((name) => [hyphened(name), theme[name]] as const),
    ...Object.entries(theme.tints).map(([tint, ink]) => [`line-${tint}`, ink] as const),
  ]);

interface Marked {
  /** The theme with an ink of its own for every role, hardly other than the true one. */
  readonly theme: Theme;
  readonly roleOf: ReadonlyMap<string, string>;
}

/** A tint in the theme's own ink stays so: it is drawn as such a line is. */
export function markedTheme(theme: Theme): Marked {
  const taken = new Set([...Object.values(theme.bands), ...Object.values(theme.insulation)]);
  const roleOf = new Map<string, string>();
  const own = (role: string, ink: string): string => {
    let value = Number.parseInt(ink.slice(1), 16);
    // Towards the middle, so that none leaves the range.
    const by = (value & 0xff) < 0x80 ? 1 : -1;
    const text = (): string => `#${value.toString(16).padStart(6, '0')}`;
    while (taken.has(text())) value += by;
    taken.add(text());
    roleOf.set(text(), role);
    return text();
  };
  const single = Object.fromEntries(SINGLE.map((name) => [name, own(hyphened(name), theme[name])]));
  const inks = { ...theme, ...single };
  return {
    theme: {
      ...inks,
      coil: theme.coil === theme.inside ? inks.inside : theme.coil,
      tints: Object.fromEntries(
        Object.entries(theme.tints).map(([tint, ink]) => [
          tint,
          ink === theme.ink ? inks.ink : own(`line-${tint}`, ink),
        ]),
      ),
    },
    roleOf,
  };
}

const INKED = /<(\w+)((?: [\w:-]+="[^"]*")*)/g;
const INK = / (fill|stroke)="(#[\da-f]{6})"/g;

/** A drawing with a class for each ink that has a role: `sl-fill-paper`, `sl-stroke-ink`. */
export function withRoles(svg: string, marked: string, roleOf: ReadonlyMap<string, string>): string {
  const tags = [...marked.matchAll(INKED)];
  let n = 0;
  return svg.replace(INKED, (whole, name: string, attributes: string) => {
    const [, , inked = ''] = tags[n++] ?? [];
    const classes = [...inked.matchAll(INK)].flatMap(([, property, ink = '']) => {
      const role = roleOf.get(ink);
      return role === undefined ? [] : [`sl-${property}-${role}`];
    });
    if (classes.length === 0) return whole;
    const list = classes.join(' ');
    return / class="/.test(attributes)
      ? `<${name}${attributes.replace(/ class="([^"]*)"/, ` class="$1 ${list}"`)}`
      : `<${name} class="${list}"${attributes}`;
  });
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
