/** The flat network that the solver works on: numbered nodes with branches between them, and nothing of parts. */

interface Ends {
  /** The element it came from, such as `volume.track`, so that tolerances can scale it. */
  readonly of: string;
  /** The pickup it belongs to, for the branches that a coil is made of. */
  readonly pickup?: string;
  /** The winding it belongs to, for the same. */
  readonly coil?: string;
  readonly a: number;
  readonly b: number;
}

/** One two-terminal branch. */
export type Branch =
  | (Ends & { readonly kind: 'resistor'; readonly ohms: number })
  | (Ends & { readonly kind: 'capacitor'; readonly farads: number })
  /** Resistance and inductance in series with a source whose positive side faces `a`. */
  | (Ends & {
      readonly kind: 'winding';
      readonly ohms: number;
      readonly henries: number;
      /** Volts of its source per volt of the whole pickup, and per volt of hum in a coil; 1 where it does not say. */
      readonly signal?: number;
      readonly hum?: number;
      readonly mutual?: Mutual;
    });

/** The other winding that a winding is coupled to, and how closely: M = `factor` √(La Lb), with the sign for currents from `a` to `b`. */
interface Mutual {
  readonly other: string;
  readonly factor: number;
}

/** What a factor on a winding's inductance, and on its capacitance, is named; its own name stands for its resistance. */
export const inductanceOf = (winding: string): string => `${winding}.inductance`;
export const capacitanceOf = (winding: string): string => `${winding}.capacitance`;
/** A winding's name: its part's, and the element's. */
export const coilName = (part: string, element: string): string => `${part}.${element}`;
/** The cable's and the amplifier's names among the elements. */
export const CABLE = 'cable';
export const AMPLIFIER = 'amplifier';

export type Winding = Extract<Branch, { kind: 'winding' }>;

/** Two nodes that something is measured between; a current enters at `from` and leaves at `to`. */
export interface Port {
  readonly from: number;
  readonly to: number;
}

/** The branches as they lie when two nodes are made one; what then has both ends on one node is gone. */
export const joinNodes = (branches: readonly Branch[], kept: number, gone: number): readonly Branch[] =>
  branches.flatMap((branch) => {
    const a = branch.a === gone ? kept : branch.a;
    const b = branch.b === gone ? kept : branch.b;
    return a === b ? [] : [{ ...branch, a, b }];
  });

export const resistor = (a: number, b: number, ohms: number, of = 'r'): Branch => ({
  kind: 'resistor',
  of,
  a,
  b,
  ohms,
});
export const capacitor = (a: number, b: number, farads: number, of = 'c'): Branch => ({
  kind: 'capacitor',
  of,
  a,
  b,
  farads,
});
export const winding = (a: number, b: number, ohms: number, henries: number, of = 'l'): Winding => ({
  kind: 'winding',
  of,
  a,
  b,
  ohms,
  henries,
});

/** The network without the coupling of windings: each has its own inductance only. */
export const withoutCoupling = (branches: readonly Branch[]): readonly Branch[] =>
  branches.flatMap((branch): readonly Branch[] => {
    if (branch.kind !== 'winding' || !branch.mutual) return [branch];
    const { mutual: _, ...alone } = branch;
    return alone.a === alone.b ? [] : [alone];
  });

/** The network without some windings, their capacitance and core loss included. */
export const withoutCoils = (
  branches: readonly Branch[],
  gone: (coil: string) => boolean,
): readonly Branch[] => branches.filter((branch) => branch.coil === undefined || !gone(branch.coil));

/** The network without the windings of some pickups, their capacitance and core loss included; but for coils that are kept. */
export const withoutPickups = (
  branches: readonly Branch[],
  gone: (pickup: string) => boolean,
  kept: readonly string[] = [],
): readonly Branch[] =>
  branches.filter(
    ({ pickup, coil }) =>
      pickup === undefined || !gone(pickup) || (coil !== undefined && kept.includes(coil)),
  );

/** The name that the branches of a part's element have. */
export const elementName = (part: string, { id }: { readonly id: string }): string => `${part}.${id}`;

/** The part that a branch is of; a name no part has for what is behind the jack. */
export const partOf = ({ of }: Pick<Branch, 'of'>): string => of.split('.')[0] ?? of;
