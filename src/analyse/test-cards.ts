/** What a meter across the jack shows in every position: before the pickups are soldered, and when everything is. */
import { type Circuit, type LugId, lugId } from '../circuit/circuit.ts';
import { lugsWith } from '../parts/index.ts';
import { type ExpectedReading, expectedAt, networkAt } from './probing.ts';
import { beforePickups, hookedBeforePickups, partlyHooked } from './soldered.ts';

/**
 * The reading where all that is only hooked touches its lug. Fewer of them may touch: since more joints never make the resistance larger (Rayleigh), all
 * readings lie between this one and that without any of them.
 */
interface HookedReading extends ExpectedReading {
  /** Whether there are readings between the two, as where one of two legs touches. */
  readonly between: boolean;
}

interface TestRow {
  /** Index of the circuit's state. */
  readonly state: number;
  /** The output, such as the tip, and the sleeve. */
  readonly from: LugId;
  readonly to: LugId;
  /** All controls on 10. */
  readonly volumeFull: ExpectedReading;
  /** Volume controls on 0, the rest on 10. */
  readonly volumeZero: ExpectedReading;
  /** All controls on 10, where all that is only hooked by then touches its lug; absent where that makes no difference. */
  readonly hooked?: HookedReading;
}

interface TestCards {
  readonly before: readonly TestRow[];
  readonly finished: readonly TestRow[];
}

/** A row for every state and output; none for a kit without a jack. */
export function testCards(circuit: Circuit): TestCards {
  const outputs = circuit.kit.parts.flatMap((part) =>
    lugsWith(part, 'sleeve').flatMap((sleeve) =>
      lugsWith(part, 'output').map((output) => ({
        from: lugId(part.name, output),
        to: lugId(part.name, sleeve),
      })),
    ),
  );
  const rows = (harness: Circuit, hooked?: Circuit, some: readonly Circuit[] = []): readonly TestRow[] =>
    circuit.states.flatMap((_, state) =>
      outputs.map((probes): TestRow => {
        const at = (volume: 10 | 0, made = harness) =>
          expectedAt(circuit, networkAt(circuit, made, { state, volume }), probes);
        const volumeFull = at(10);
        const other = hooked && at(10, hooked);
        const between = (): boolean =>
          other !== undefined &&
          some.map((made) => at(10, made)).some((one) => differ(one, other) && differ(one, volumeFull));
        return {
          state,
          ...probes,
          volumeFull,
          volumeZero: at(0),
          ...(other && differ(other, volumeFull) ? { hooked: { ...other, between: between() } } : {}),
        };
      }),
    );
  return {
    before: rows(beforePickups(circuit), hookedBeforePickups(circuit), partlyHooked(circuit)),
    finished: rows(circuit),
  };
}

/** A thousandth is less than any meter tells apart. */
const differ = (a: ExpectedReading, b: ExpectedReading): boolean =>
  a.kind !== b.kind || Math.abs(a.nominal - b.nominal) > 1e-3 * b.nominal;
