/**
 * How long to cut wires and sleeving. What the description gives is taken; the rest is estimated from the distance of the parts on the instrument: where the
 * arrangement says how large it is, from its seats, else from what is usual. All figures here are from memory, common practice, no source.
 */
import type { Circuit } from '../circuit/circuit.ts';
import { PITCH } from '../common/geometry.ts';
import { must, nth } from '../common/must.ts';
import { findPart, type Joint } from '../describe/kit.ts';
import { componentOf, is, isPickup, type Part } from '../parts/index.ts';
import type { Arrangement } from './arrangement.ts';
import type { PlacedPart, PlacedWire, Placement } from './placement.ts';
import { seatsOf } from './seating.ts';

/**
 * What a wire is longer for than the distance of its parts: the share for bends and ways round, metres that are stripped at either end, and the metres
 * that an estimate is rounded up to.
 */
export const CUTTING = { allowance: 0.3, strip: 0.005, rounded: 0.01 } as const;

/** A piece of wire. */
interface CutWire {
  /** Index into the circuit's joints. */
  readonly joint: number;
  /** A jumper is bare wire. */
  readonly kind: 'wire' | 'jumper';
  /** IEC 60757 code of the insulation, when given. */
  readonly colour?: string;
  /** Metres, both stripped ends included. */
  readonly length: number;
  /** Worked out here, not given. */
  readonly estimated: boolean;
}

/** A lead that belongs to a pickup: it is not cut from the wire in the bag, but trimmed to reach. */
interface PickupLead {
  readonly joint: number;
  /** Metres, where the description gives it. */
  readonly length?: number;
}

/** A piece of sleeving over a component's leg. */
interface Sleeving {
  readonly joint: number;
  /** Metres. */
  readonly length: number;
}

interface WireLengths {
  readonly wires: readonly CutWire[];
  readonly leads: readonly PickupLead[];
  readonly sleevings: readonly Sleeving[];
}

/** Metres between two parts by what they are, where the arrangement does not tell. */
const USUAL = {
  /** Between two lugs of one part, and the length of a jumper. */
  within: 0.02,
  toJack: 0.1,
  toGroundPoint: 0.18,
  betweenPots: 0.035,
  betweenControls: 0.06,
} as const;
/** Metres of a grid unit where the arrangement does not say. */
const USUAL_UNIT = 0.0018;
/** Metres of a leg that stay bare at its lug, the least and the most that sleeving is cut to, and what it is rounded to. */
const LEG = { bare: 0.003, least: 0.01, most: 0.025, rounded: 0.005 } as const;

/** Lengths of all wires, leads and sleevings of a placed circuit. */
export function wireLengths(circuit: Circuit, placement: Placement, arrangement?: Arrangement): WireLengths {
  const { kit, joints } = circuit;
  const seats = seatCentres(placement, kit.parts, arrangement);
  const partOf = (name: string): Part => must(findPart(kit, name), `the part ${name}`);
  const wires: CutWire[] = [];
  const leads: PickupLead[] = [];
  const sleevings: Sleeving[] = [];
  joints.forEach((joint, index) => {
    const { kind, from, to, colour, length } = joint;
    const ends = [partOf(from.part), partOf(to.part)] as const;
    if (kind === 'leg' && sleeved(joint, ends))
      sleevings.push({
        joint: index,
        length: sleevingOf(nth(placement.wires, index), placement, arrangement),
      });
    if (kind !== 'wire' && kind !== 'jumper' && kind !== 'braid') return;
    if (ends.some(isPickup)) leads.push({ joint: index, ...(length === undefined ? {} : { length }) });
    else if (kind !== 'braid') {
      const known = length ?? (kind === 'jumper' ? USUAL.within : cutFor(distanceOf(ends, seats)));
      wires.push({
        joint: index,
        kind,
        ...(colour === undefined ? {} : { colour }),
        length: known,
        estimated: length === undefined,
      });
    }
  });
  return { wires, leads, sleevings };
}

/** A wire's length for a distance, both in metres: with the allowance, two stripped ends, rounded up. */
const cutFor = (distance: number): number =>
  up(distance * (1 + CUTTING.allowance) + 2 * CUTTING.strip, CUTTING.rounded);

/** Rounded up to whole steps; without the rounding errors of binary fractions. */
const up = (metres: number, step: number): number =>
  Number((Math.ceil(metres / step - 1e-9) * step).toFixed(6));

interface Centre {
  readonly x: number;
  readonly y: number;
}

/** By name the middle of each part that has a seat, metres; none where the arrangement does not say how large it is. */
export function seatCentres(
  { parts }: Placement,
  all: readonly Part[],
  arrangement: Arrangement | undefined,
): ReadonlyMap<string, Centre> {
  const { millimetres } = arrangement ?? {};
  if (!arrangement || millimetres === undefined) return new Map();
  const seats = seatsOf(all, arrangement);
  return new Map(
    parts.flatMap(({ part, outline }) => {
      const seat = seats.get(part.name);
      if (!seat) return [];
      const across = seat.turn % 2 === 0 ? [outline.width, outline.height] : [outline.height, outline.width];
      const [x, y] = [seat.column + nth(across, 0) / 2 / PITCH, seat.row + nth(across, 1) / 2 / PITCH];
      return [[part.name, { x: (x * millimetres) / 1000, y: (y * millimetres) / 1000 }] as const];
    }),
  );
}

/** Metres along the sides of a rectangle between two seats, else what is usual between two such parts. A pickup's seat says nothing: it is drawn near. */
function distanceOf([a, b]: readonly [Part, Part], seats: ReadonlyMap<string, Centre>): number {
  if (a.name === b.name) return USUAL.within;
  const [p, q] = [seats.get(a.name), seats.get(b.name)];
  if (p && q) return Math.abs(p.x - q.x) + Math.abs(p.y - q.y);
  const has = (trait: Parameters<typeof is>[1]): boolean => is(a, trait) || is(b, trait);
  if (has('ground-point')) return USUAL.toGroundPoint;
  if (has('jack')) return USUAL.toJack;
  return is(a, 'pot') && is(b, 'pot') ? USUAL.betweenPots : USUAL.betweenControls;
}

const sleeved = ({ from, to }: Joint, parts: readonly Part[]): boolean =>
  [from, to].some((end) =>
    parts.some((part) => part.name === end.part && componentOf(part)?.sleeved.includes(end.lug)),
  );

/** From the body of the component to the lug as it is drawn, less what stays bare, and no more than a leg has. */
function sleevingOf(wire: PlacedWire, { parts }: Placement, arrangement: Arrangement | undefined): number {
  const unit = (arrangement?.millimetres ?? USUAL_UNIT * 1000) / 1000;
  const { points } = wire;
  const run = points
    .slice(1)
    .reduce((sum, b, i) => sum + Math.abs(b.x - nth(points, i).x) + Math.abs(b.y - nth(points, i).y), 0);
  const own = parts.find(({ part }) => wire.own.includes(part.name));
  const span = ((run + (own ? stubOf(own) : 0)) / PITCH) * unit - LEG.bare;
  return Math.min(LEG.most, Math.max(LEG.least, up(span, LEG.rounded)));
}

/** Of a component's leg what is drawn with the component. */
const stubOf = ({ outline }: PlacedPart): number => {
  const { body, lugs } = outline;
  const tag = nth(lugs, 0).tag;
  return Math.abs(body.x - (tag.x + tag.width / 2));
};

/** Pieces of one length, of one colour. */
interface CutRow {
  /** Metres. */
  readonly length: number;
  readonly joints: readonly number[];
  /** Whether any of them is estimated. */
  readonly estimated: boolean;
}

/** All pieces of one colour, or all that are bare. */
interface CutGroup {
  readonly kind: CutWire['kind'];
  /** Absent where the kit gives none, and of bare wire. */
  readonly colour?: string;
  /** The longest first. */
  readonly rows: readonly CutRow[];
  /** Metres of all of them. */
  readonly total: number;
  readonly pieces: number;
}

/** What to cut, by colour in the order the kit names them, bare wire last. */
export function cutList({ wires }: Pick<WireLengths, 'wires'>): readonly CutGroup[] {
  const keyOf = ({ kind, colour }: CutWire): string => (kind === 'jumper' ? 'bare' : (colour ?? 'wire'));
  const insulated = wires.filter(({ kind }) => kind === 'wire');
  const all = [...insulated, ...wires.filter(({ kind }) => kind === 'jumper')];
  return [...new Set(all.map(keyOf))].map((key): CutGroup => {
    const own = all.filter((wire) => keyOf(wire) === key);
    const { kind, colour } = nth(own, 0);
    const lengths = [...new Set(own.map(({ length }) => length))].sort((a, b) => b - a);
    return {
      kind,
      ...(kind === 'jumper' || colour === undefined ? {} : { colour }),
      rows: lengths.map((length) => {
        const same = own.filter((wire) => wire.length === length);
        return {
          length,
          joints: same.map(({ joint }) => joint),
          estimated: same.some(({ estimated }) => estimated),
        };
      }),
      total: Number(own.reduce((sum, { length }) => sum + length, 0).toFixed(6)),
      pieces: own.length,
    };
  });
}

/** Metres of an inch; exact by its definition of 1959. */
const INCH = 0.0254;

/** A length in inches to the nearest eighth, as a tape measure is divided: `5 1/2`. Never less than an eighth. */
export function inches(metres: number): string {
  const eighths = Math.max(1, Math.round((metres / INCH) * 8));
  const [whole, rest] = [Math.floor(eighths / 8), eighths % 8];
  const shared = rest % 4 === 0 ? 4 : rest % 2 === 0 ? 2 : 1;
  const fraction = rest === 0 ? '' : `${rest / shared}/${8 / shared}`;
  return [whole === 0 ? '' : String(whole), fraction].filter((part) => part !== '').join(' ');
}
