/** Kits written in TypeScript: the same description, with the editor completing kinds, fields, parts and lugs. */
import type { LugName } from '../parts/index.ts';
import type { JointKind } from './kit.ts';
import type { KitInput, PartInput } from './schema.ts';

/** A part that is told by its stock code, in place of its values. */
type CodedPart = PartInput extends infer P
  ? P extends { readonly kind: infer K }
    ? Partial<Omit<P, 'kind' | 'code'>> & { readonly kind: K; readonly code: string }
    : never
  : never;
type Parts = Readonly<Record<string, PartInput | CodedPart>>;
type EndOf<P extends Parts> = { [N in keyof P & string]: `${N}.${LugName<P[N]['kind']>}` }[keyof P & string];
type JointText<P extends Parts> = `${EndOf<P>} > ${EndOf<P>}`;

type JointMap = Exclude<KitInput['joints'][number], string>;
type JointOf<K extends JointKind, T extends string> = { readonly [N in K]: T } & Pick<
  JointMap,
  'colour' | 'length' | 'step'
>;
type AnyJoint<T extends string> = T | { [K in JointKind]: JointOf<K, T> }[JointKind];

export interface KitDescription<P extends Parts> extends Omit<KitInput, 'parts' | 'joints'> {
  /** A kit that says which kit it extends is a `KitChanges`. */
  readonly extends?: undefined;
  readonly parts: P;
  /** Part and lug of both ends are checked against `parts`. A kit of more than some 300 lugs is too large for that. */
  readonly joints: readonly AnyJoint<JointText<P>>[];
}

/** What of a part may be written over that of the base; which kind it is, only the base knows. */
type PartChanges = PartInput extends infer P ? (P extends unknown ? Partial<Omit<P, 'kind'>> : never) : never;
/** The compiler does not see the base's parts. */
type AnyText = `${string}.${string} > ${string}.${string}`;

/** A kit made from another. */
export interface KitChanges extends Partial<Omit<KitInput, 'kit' | 'parts' | 'joints'>> {
  /** The base: a path from this file, or `circuit/NAME` for a circuit that ships. */
  readonly extends: string;
  readonly kit: string;
  /** Taken out of the base before anything is added. */
  readonly remove?: {
    /** Parts, with their joints. */
    readonly parts?: readonly string[];
    readonly joints?: readonly AnyJoint<AnyText>[];
    /** `page`, `volume.label`: the default holds then. */
    readonly keys?: readonly string[];
  };
  /** New parts, parts of another kind, and changes of the base's parts. */
  readonly parts?: Readonly<Record<string, PartInput | CodedPart | PartChanges>>;
  /** New joints; one between the same lugs as a joint of the base replaces it. */
  readonly joints?: readonly AnyJoint<AnyText>[];
}

/** Returns the description as it is; what it adds are the types. */
export const defineKit = <const P extends Parts>(
  description: KitDescription<P> | KitChanges,
): KitDescription<P> | KitChanges => description;
