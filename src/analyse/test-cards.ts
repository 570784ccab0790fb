/** What a meter across the jack shows in every position: before the pickups are soldered, and when everything is. */
import { type Circuit, type LugId, lugId } from '../circuit/circuit.ts';
import { lugsWith } from '../parts/index.ts';
import { type ExpectedReading, expectedAt, networkAt } from './probing.ts';
import { beforePickups, hookedBeforePickups } from './soldered.ts';

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
  /** All controls on 10, where what is only hooked by then touches its lug and that makes a difference. */
  readonly hooked?: ExpectedReading;
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
  const rows = (harness: Circuit, hooked?: Circuit): readonly TestRow[] =>
    circuit.states.flatMap((_, state) =>
      outputs.map((probes): TestRow => {
        const at = (volume: 10 | 0, made = harness) =>
          expectedAt(circuit, networkAt(circuit, made, { state, volume }), probes);
        const volumeFull = at(10);
        const other = hooked && at(10, hooked);
        return {
          state,
          ...probes,
          volumeFull,
          volumeZero: at(0),
          ...(other && differ(other, volumeFull) ? { hooked: other } : {}),
        };
      }),
    );
  return { before: rows(beforePickups(circuit), hookedBeforePickups(circuit)), finished: rows(circuit) };
}

/** A thousandth is less than any meter tells apart. */
const differ = (a: ExpectedReading, b: ExpectedReading): boolean =>
  a.kind !== b.kind || Math.abs(a.nominal - b.nominal) > 1e-3 * b.nominal;
