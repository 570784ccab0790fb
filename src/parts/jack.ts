import { definePart, type PartBase } from './kind.ts';

export type Jack = PartBase<'jack'>;

/** Mono output jack: tip carries the signal, sleeve is the harness's ground. */
export const jack = definePart({
  kind: 'jack',
  what: 'mono output jack',
  fields: {},
  build: (base): Jack => base,
  lugs: () => [
    { name: 'tip', role: 'tip' },
    { name: 'sleeve', role: 'sleeve' },
  ],
  elements: () => [],
});
