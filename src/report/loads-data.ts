/**
 * All figures of a kit as plain data: ohms, hertz, decibels, unrounded. An open circuit is `"open"` once printed; a curve
 * without a peak has no `resonance`, one that stays within 3 dB up to 20 kHz no `cutoff`.
 */
import type {
  HarnessReadings,
  Limits,
  PickupCurve,
  PickupLimits,
  PickupLoads,
  StateLoads,
  StateReadings,
  StateResponse,
} from '../analyse/index.ts';
import { type Circuit, outputOf } from '../circuit/circuit.ts';
import { elementsLike, isPickup, type Pickup } from '../parts/index.ts';
import { substitutionData } from './stock-data.ts';
import { defaultedOf } from './table.ts';

export interface Figures {
  readonly circuit: Circuit;
  readonly loads: readonly StateLoads[];
  readonly response: readonly StateResponse[];
  readonly readings: readonly StateReadings[];
  readonly limits?: Limits;
}

export function loadsData({ circuit, loads, response, readings, limits }: Figures): object {
  const { kit } = circuit;
  return {
    kit: kit.id,
    frequency: kit.outputLoad.frequency.value,
    coupling: 'none',
    ...substitutionData(kit),
    pickups: Object.fromEntries(kit.parts.filter(isPickup).map((part) => [part.name, pickupData(part)])),
    positions: loads.map(({ index, state, pickups: entries, output, silentTogether, humCancelling }) => {
      const curves = response.filter((one) => one.index === index);
      const wide = limits?.states[index];
      const meter = readings[index];
      return {
        switches: state.positions,
        sounding: state.sounding,
        output,
        silentTogether,
        ...(humCancelling === undefined ? {} : { humCancelling }),
        pickups: Object.fromEntries(
          entries.map((entry) => [
            entry.pickup,
            {
              ...(state.coils?.[entry.pickup]
                ? { coils: state.coils[entry.pickup]?.map(({ id }) => id) }
                : {}),
              ...loadData(entry),
              ...curveData(curves.flatMap((one) => one.pickups).find((one) => one.pickup === entry.pickup)),
              ...limitData(wide?.pickups.find((one) => one.pickup === entry.pickup)),
            },
          ]),
        ),
        ...(state.outputs
          ? { outputs: Object.fromEntries(state.outputs.map(({ name, sounding }) => [name, sounding])) }
          : {}),
        ...togetherData(curves),
        ...(meter ? { meter: meterData(meter) } : {}),
        ...(wide
          ? {
              limits: {
                ...(wide.jack ? { jack: wide.jack } : {}),
                lugs: wide.lugs,
                ...(wide.resonance ? { resonance: wide.resonance } : {}),
              },
            }
          : {}),
      };
    }),
    ...(limits
      ? { limits: { seed: limits.seed, samples: limits.samples, temperatures: limits.temperatures } }
      : {}),
  };
}

const pickupData = (pickup: Pickup): object => ({
  kind: pickup.kind,
  resistance: pickup.resistance.value,
  inductance: pickup.inductance.value,
  capacitance: pickup.capacitance.value,
  ...(pickup.coreLoss ? { coreLoss: pickup.coreLoss.value } : {}),
  ...couplingOf(pickup),
  ...(pickup.wind === undefined ? {} : { wind: pickup.wind }),
  ...(pickup.polarity === undefined ? {} : { polarity: pickup.polarity }),
  defaulted: [
    ...defaultedOf(pickup),
    ...elementsLike(pickup, 'coupling').flatMap(({ factor }) =>
      factor.from === 'default' ? ['coupling'] : [],
    ),
  ],
});

/** Of a pickup whose two coils are apart. */
function couplingOf(pickup: Pickup): object {
  const [coupling] = elementsLike(pickup, 'coupling');
  return coupling ? { coupling: Math.abs(coupling.factor.value) } : {};
}

const loadData = (entry: PickupLoads): object => ({
  dcLoad: entry.dcLoad,
  signalLoad: entry.signalLoad,
  totalLoad: entry.total.signalLoad,
  level: entry.level,
  reversed: entry.reversed,
  series: entry.series,
  parallel: entry.parallel,
  outOfPhase: entry.outOfPhase,
  ...(entry.coils ? { coilsJoined: entry.coils.joined, coilsOutOfPhase: entry.coils.outOfPhase } : {}),
  reference: entry.reference,
  difference: entry.difference,
});

const curveData = (curve: PickupCurve | undefined): object =>
  curve
    ? { response: { ...curve.shape, reference: curve.reference.shape, difference: curve.difference } }
    : {};

function limitData(wide: PickupLimits | undefined): object {
  if (!wide) return {};
  const { pickup: _, ...figures } = wide;
  return { limits: figures };
}

/** One shape; of a jack with several outputs one for each that sounds. */
function togetherData(curves: readonly StateResponse[]): object {
  const found = curves.flatMap(({ state, together }) =>
    together ? [{ name: outputOf(state), shape: together.shape }] : [],
  );
  const [first] = found;
  if (!first) return {};
  return {
    together:
      first.name === undefined
        ? first.shape
        : Object.fromEntries(found.map(({ name, shape }) => [name, shape])),
  };
}

const meterData = ({ volumeFull, volumeZero }: StateReadings): object => ({
  volumeOn10: harnessData(volumeFull),
  volumeOn0: harnessData(volumeZero),
});

/** `probe` is the lug the tables name. */
const harnessData = ({ jack, lugs }: HarnessReadings): object => ({
  jack,
  lugs: lugs.map(({ probe, lugs: joined, disconnected, connected }) => ({
    probe,
    lugs: joined,
    disconnected,
    connected,
  })),
});
