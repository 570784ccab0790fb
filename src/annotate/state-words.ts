/** `selector at 2`; `the controls at full` for a kit without a switch. */
export const stateWords = (settings: Readonly<Record<string, number>>): string =>
  Object.entries(settings)
    .map(([name, position]) => `${name} at ${position}`)
    .join(', ') || 'the controls at full';
