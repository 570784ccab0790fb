/** Kits written in TypeScript: the same description, with the editor completing kinds, fields, parts and lugs. */
import type { LugName } from '../parts/index.ts';
import type { JointKind } from './kit.ts';
import type { KitInput, PartInput } from './schema.ts';

type Parts = Readonly<Record<string, PartInput>>;
type EndOf<P extends Parts> = { [N in keyof P & string]: `${N}.${LugName<P[N]['kind']>}` }[keyof P & string];
type JointText<P extends Parts> = `${EndOf<P>} > ${EndOf<P>}`;

type JointMap = Exclude<KitInput['joints'][number], string>;
type JointOf<K extends JointKind, P extends Parts> = { readonly [N in K]: JointText<P> } & Pick<
  JointMap,
  'colour' | 'length' | 'step'
>;

export interface KitDescription<P extends Parts> extends Omit<KitInput, 'parts' | 'joints'> {
  readonly parts: P;
  /** Part and lug of both ends are checked against `parts`. A kit of more than some 300 lugs is too large for that. */
  readonly joints: readonly (JointText<P> | { [K in JointKind]: JointOf<K, P> }[JointKind])[];
}

/** Returns the description as it is; what it adds are the types. */
export const defineKit = <const P extends Parts>(description: KitDescription<P>): KitDescription<P> =>
  description;
