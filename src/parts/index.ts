/** All part kinds by name, and what the rest of the program asks of any part whatever its kind. */
import { type Capacitor, capacitor } from './capacitor.ts';
import { type GroundPoint, groundPoint } from './ground-point.ts';
import { type Humbucker, humbucker } from './humbucker.ts';
import { type Jack, jack } from './jack.ts';
import type { Contact, Element, LugSpec, Terminal } from './kind.ts';
import { type Lever3, lever3 } from './lever-3.ts';
import { type Lever5, lever5 } from './lever-5.ts';
import { type Pot, pot } from './pot.ts';
import { type Resistor, resistor } from './resistor.ts';
import { type SingleCoil, singleCoil } from './single-coil.ts';

export type Part = SingleCoil | Humbucker | Pot | Lever3 | Lever5 | Resistor | Capacitor | Jack | GroundPoint;
export type Kind = Part['kind'];
export type PartOf<K extends Kind> = Extract<Part, { kind: K }>;
export type Pickup = SingleCoil | Humbucker;

/** Every kind, in the order messages list them. */
export const kinds = {
  'single-coil': singleCoil,
  humbucker,
  pot,
  'lever-3': lever3,
  'lever-5': lever5,
  resistor,
  capacitor,
  jack,
  'ground-point': groundPoint,
} as const;

/** What a kind answers about a part of its own; the table above guarantees that kind and part belong together. */
interface Answers {
  readonly what: string;
  readonly lugs: (part: Part) => readonly LugSpec[];
  readonly elements: (part: Part) => readonly Element[];
  readonly contacts?: (part: Part) => readonly Contact[];
}
const answers = (part: Part): Answers => kinds[part.kind] as unknown as Answers;

export const lugsOf = (part: Part): readonly LugSpec[] => answers(part).lugs(part);
export const elementsOf = (part: Part): readonly Element[] => answers(part).elements(part);
/** Empty for a part that is not a switch. */
export const contactsOf = (part: Part): readonly Contact[] => answers(part).contacts?.(part) ?? [];
export const whatIs = (part: Part): string => answers(part).what;

export const isPickup = (part: Part): part is Pickup =>
  part.kind === 'single-coil' || part.kind === 'humbucker';

/** Every terminal of an element. */
export function terminalsOf(element: Element): readonly Terminal[] {
  switch (element.kind) {
    case 'coil':
      return [element.hot, element.return];
    case 'track':
      return [element.anticlockwise, element.wiper, element.clockwise];
    case 'resistance':
    case 'capacitance':
      return [element.a, element.b];
  }
}
