/** What the drawing of a step needs to know of it. */
/** Whether an end of a joint is soldered in its step, is only hooked until a later one, or needs no solder, as where a component leg leaves its body. */
export type Soldered = 'now' | 'none' | { readonly later: number };

/** What a figure needs to know of a step. */
export interface FigureStep {
  /** Counted from 1. */
  readonly number: number;
  /** Its joints in the order of the checklist's lines; `index` into the circuit's joints. */
  readonly details: readonly {
    readonly index: number;
    readonly from: { readonly soldered: Soldered };
    readonly to: { readonly soldered: Soldered };
  }[];
}
