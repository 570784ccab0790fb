/**
 * What a part looks like, as plain data: shapes in the part's own coordinates, each with a role that says what it shows. The
 * theme inks roles; a part knows no colour, no renderer and no place on the sheet.
 */
import type { Point, Rect } from '../common/geometry.ts';

/** One step of a path: to a point, by a straight line or round a circle of the given radius. */
export interface PathStep {
  readonly to: Point;
  readonly radius?: number;
  /** The long way round, and clockwise, seen in the part's own unmirrored drawing. */
  readonly large?: boolean;
  readonly clockwise?: boolean;
}

export type RectRole =
  /** What carries a part: a switch's plate, a pickup's cover. */
  | 'plate'
  /** A metal case that ground wires are soldered to, and that holds more than a round one. */
  | 'case'
  /** A winding, and the turns of wire that are drawn in it. */
  | 'coil'
  | 'turn'
  /** The threaded part of a jack that holds the plug's sleeve. */
  | 'bush'
  | 'resistor-body'
  /** A resistor small, as in a drawing's key. */
  | 'resistor-sample'
  | 'capacitor-body';

export type CircleRole =
  /** A metal case that ground wires are soldered to. */
  | 'case'
  /** A switch's contact. */
  | 'contact'
  /** The end of something that turns or touches. */
  | 'dot';

export type PathRole =
  /** Resistance material of a pot. */
  | 'track'
  /** A conductor inside a part. */
  | 'conductor'
  /** A contact that is closed. */
  | 'bridge'
  /** Room round a conductor that passes over another. */
  | 'clearance';

export type Shape =
  | { readonly shape: 'rect'; readonly role: RectRole; readonly rect: Rect; readonly radius: number }
  /** A colour band of IEC 60062, by its IEC 60757 code. */
  | { readonly shape: 'rect'; readonly role: 'band'; readonly rect: Rect; readonly code: string }
  | {
      readonly shape: 'circle';
      readonly role: CircleRole;
      readonly centre: Point;
      readonly radius: number;
    }
  | {
      readonly shape: 'path';
      readonly role: PathRole;
      /** Several runs make one path. */
      readonly runs: readonly (readonly PathStep[])[];
      readonly width: number;
    }
  /** What is printed on a component's body. */
  | {
      readonly shape: 'text';
      readonly role: 'print';
      readonly text: string;
      readonly centre: Point;
      readonly size: number;
    };

/** A conductor inside a part. */
export const conductor = (width: number, ...runs: readonly (readonly PathStep[])[]): Shape => ({
  shape: 'path',
  role: 'conductor',
  runs,
  width,
});

export const plate = (rect: Rect, radius: number): Shape => ({ shape: 'rect', role: 'plate', rect, radius });

/** A straight run through points. */
export const run = (...points: readonly Point[]): readonly PathStep[] => points.map((to) => ({ to }));
