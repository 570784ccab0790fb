/**
 * Pots that do nothing, volume controls that hardly do anything, and tone controls that silence. A pot is idle when no coil
 * in any state comes out differently at the jack with it at 10, 5 and 0. A volume is a pot that all of a coil's direct current to the tip goes
 * through: without its track there is silence. It is weak when at 0 it takes less than 20 dB off at 1 kHz.
 */

import { type Circuit, lugId, lugIdOf } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import { type Control, controlsOf } from '../parts/index.ts';
import { elementName } from '../solve/network.ts';
import { type Gains, gains, gainsAtFull, gainsAtZero, PROBES } from './controls.ts';
import { decibels } from './peak.ts';

interface IdleControl {
  readonly pot: string;
  readonly part: string;
  /** Decibels that turning it down takes off at 1 kHz; absent when turning it changes nothing at all. */
  readonly fall?: number;
  /** Lugs of its track that no joint reaches. */
  readonly free: readonly string[];
}

/** A change smaller than this nobody hears. Decibels. */
const HEARD = 0.5;
/** A volume that takes off less turns nothing down. Common practice, no source. */
const LEAST_FALL = 20;
/** What the direct voltage must lose for a track to lead to ground; a capacitor in its way leaves all of it. Decibels. */
const DIRECT_FALL = 3;
/** A coil further down than this is not heard. Decibels. */
const LEAST_LEVEL = 40;
/** Ohms that let nothing through, and yet leave no node afloat. */
const NO_TRACK = 1e12;
/** 1 kHz, after the direct voltage in a row of gains. */
const AT = 1 + PROBES.indexOf(1000);

export function idleControls(circuit: Circuit): readonly IdleControl[] {
  const full = gainsAtFull(circuit).flat();
  const joined = joinedLugs(circuit);
  return circuit.kit.parts.flatMap(controlsOf).flatMap((control): IdleControl[] => {
    const { id: pot, part, tracks } = control;
    const ends = tracks.flatMap((track) => [track.anticlockwise, track.wiper, track.clockwise]);
    const free = ends.filter((lug) => !joined.has(lugId(part, lug)));
    const zero = gainsAtZero(circuit, pot).flat();
    if (alike(full, zero) && alike(full, gains(circuit, { [pot]: 0.5 }))) return [{ pot, part, free }];
    const fall = fallOf(full, zero);
    return fall < LEAST_FALL && carries(circuit, control, full) ? [{ pot, part, fall, free }] : [];
  });
}

/**
 * Pots with one end of the track free, or on the wiper, that silence all that sounds in some state: the track itself leads to ground, as
 * that of a tone whose capacitor was forgotten.
 */
export function shuntControls(circuit: Circuit): readonly {
  readonly pot: string;
  readonly part: string;
  readonly free: string;
  readonly wiper?: string;
}[] {
  const joined = joinedLugs(circuit);
  const areJoined = (part: string, a: string, b: string): boolean =>
    circuit.nets.some(({ lugs }) => lugs.includes(lugId(part, a)) && lugs.includes(lugId(part, b)));
  return circuit.kit.parts.flatMap(controlsOf).flatMap(({ id, part, tracks }) => {
    const free = tracks
      .flatMap((track) => [track.anticlockwise, track.clockwise])
      .find((lug) => !joined.has(lugId(part, lug)));
    const bridged = tracks.flatMap(({ anticlockwise, wiper, clockwise }) =>
      [anticlockwise, clockwise].flatMap((end) =>
        areJoined(part, wiper, end) ? [{ free: end, wiper }] : [],
      ),
    )[0];
    // A gang of its own with all three lugs is a volume control that is meant to silence.
    const isWhole = tracks.some(
      ({ anticlockwise, wiper, clockwise }) =>
        [anticlockwise, wiper, clockwise].every((lug) => joined.has(lugId(part, lug))) &&
        !areJoined(part, wiper, anticlockwise) &&
        !areJoined(part, wiper, clockwise),
    );
    const found = free === undefined ? bridged : { free };
    return isWhole || found === undefined || !silences(circuit, id) ? [] : [{ pot: id, part, ...found }];
  });
}

/**
 * Whether turning a pot down silences every coil that is heard in some state, its direct voltage too where that reaches the jack: a
 * large capacitor and a large winding may take as much at 1 kHz by themselves.
 */
function silences(circuit: Circuit, pot: string): boolean {
  const zero = gainsAtZero(circuit, pot);
  return gainsAtFull(circuit).some((rows, index) => {
    const falls = rows.flatMap((row, i) =>
      [0, AT].flatMap((k) => {
        const level = decibels(nth(row, k));
        const fall = level - decibels(zero[index]?.[i]?.[k] ?? 0);
        return level > -LEAST_LEVEL ? [{ enough: fall >= (k === 0 ? DIRECT_FALL : LEAST_FALL) }] : [];
      }),
    );
    return falls.length > 0 && falls.every(({ enough }) => enough);
  });
}

const joinedLugs = (circuit: Circuit): ReadonlySet<string> =>
  new Set(circuit.joints.flatMap(({ from, to }) => [lugIdOf(from), lugIdOf(to)]));

const alike = (a: Gains, b: Gains): boolean =>
  a.every((row, i) => row.every((gain, k) => Math.abs(decibels(gain) - decibels(b[i]?.[k] ?? 0)) < HEARD));

/** The most that any coil falls at 1 kHz. */
const fallOf = (full: Gains, zero: Gains): number =>
  Math.max(...full.map((row, i) => decibels(nth(row, AT)) - decibels(zero[i]?.[AT] ?? 0)));

/** Whether some coil is heard through this pot's track and in no other way, as past it through a capacitor. */
function carries(circuit: Circuit, { id, part, tracks }: Control, full: Gains): boolean {
  const own = new Set(tracks.map((track) => elementName(part, track)));
  const cut = gains(circuit, { [id]: 0 }, (branch) =>
    branch.kind === 'resistor' && own.has(branch.of) ? { ...branch, ohms: NO_TRACK } : branch,
  );
  return full.some((row, i) => [0, AT].every((k) => nth(row, k) > 0.1 && (cut[i]?.[k] ?? 0) < 1e-3));
}
