/** An inline drawing as its page shows it in a state, and as the static drawing that it comes from. */

const SHOWN = /<g data-shown="([^"]*)"( display="none")?>((?:(?!<\/?g\b).)*)<\/g>/gs;

/** What is displayed when the groups of a state are shown, and those of no other; counted from 1. */
export const inState = (svg: string, state: number): string =>
  svg.replace(SHOWN, (_, states: string, __, inside: string) =>
    states.split(' ').includes(String(state)) ? inside : '',
  );

/** Without all that an inline drawing has besides: groups that are not displayed, hooks of scripts, classes of inks, its own ids. */
export const plainly = (svg: string): string =>
  withoutHooks(
    svg.replace(SHOWN, (_, __, hidden: string | undefined, inside: string) => (hidden ? '' : inside)),
  );

/** The same of what displays nothing but one state. */
export const withoutHooks = (svg: string): string =>
  svg
    .replace(/<path [^>]*class="sl-halo"[^>]*><\/path>/g, '')
    .replace(/<g data-chip="\d+">(.*?)<\/g>/gs, '$1')
    .replace(/ data-(?:part|lug|joint|from|to|net|live|card)="[^"]*"/g, '')
    .replace(/ ?sl-(?:fill|stroke)-[a-z\d-]+/g, '')
    .replaceAll(' class=""', '')
    .replace(/ (?:id|aria-labelledby)="[^"]*"/g, (ids) => ids.replaceAll('-inline', ''));
