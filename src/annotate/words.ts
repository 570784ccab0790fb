/** Sentences of the sheet: the line that says the view, and the description for those who cannot see the picture. */
import type { Circuit } from '../circuit/circuit.ts';
import type { Kit } from '../describe/kit.ts';
import { contactsOf } from '../parts/index.ts';
import type { Card } from './cards.ts';

export function viewLine(kit: Kit): string {
  const switches = kit.parts.filter((part) => contactsOf(part).length > 0).map((part) => part.label);
  const drawn = switches.length === 0 ? '' : ` ${switches.join(' and ')} drawn in position 1.`;
  return `Seen from the solder side.${drawn} Controls at full.`;
}

/** What sounds and what each pickup sees, state by state, then the joints one by one. */
export function describeSheet(circuit: Circuit, cards: readonly Card[]): string {
  const states = cards.map((card) => {
    const rows = card.rows.map(
      (row) => `${row.label} sees ${row.dcLoad} at DC and ${row.signalLoad} at signal frequency`,
    );
    return `Position ${card.badge}: ${card.title}. ${rows.join('; ')}.`;
  });
  const label = new Map(circuit.kit.parts.map((part) => [part.name, part.label]));
  const end = ({ part, lug }: { part: string; lug: string }): string => `${label.get(part) ?? part} ${lug}`;
  const joints = circuit.joints.map((joint) => `${joint.kind} from ${end(joint.from)} to ${end(joint.to)}`);
  return `${viewLine(circuit.kit)} ${states.join(' ')} Joints: ${joints.join('; ')}.`;
}

/** Names of the IEC 60757 codes. */
const COLOURS: Readonly<Record<string, string>> = {
  BK: 'black',
  BN: 'brown',
  RD: 'red',
  OG: 'orange',
  YE: 'yellow',
  GN: 'green',
  BU: 'blue',
  VT: 'violet',
  GY: 'grey',
  WH: 'white',
  PK: 'pink',
  GD: 'gold',
  TQ: 'turquoise',
  SR: 'silver',
};

/** A wire's colour in words: `BKRD` is black and red. */
export const colourName = (code: string): string =>
  (code.match(/../g) ?? []).map((letters) => COLOURS[letters] ?? letters).join(' and ');
