import { definePart, type PartBase } from './kind.ts';

export type GroundPoint = PartBase<'ground-point'>;

/** A place outside the harness that is grounded: strings, bridge, cavity shield, tag. */
export const groundPoint = definePart({
  kind: 'ground-point',
  what: 'ground point',
  fields: {},
  build: (base): GroundPoint => base,
  lugs: () => [{ name: '1', role: 'point' }],
  elements: () => [],
});
