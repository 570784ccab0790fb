/** What a kit says is intended: no error, no warning of it, and a warning where it does not prove true. */
import { describe, expect, it } from 'vitest';
import { solveLoads } from '../../src/analyse/index.ts';
import { cardsOf } from '../../src/annotate/cards.ts';
import { notesOf } from '../../src/annotate/notes.ts';
import { describeCards } from '../../src/annotate/words.ts';
import { kitFromValue, readKit } from '../../src/checked.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { buildCircuit } from '../../src/solve/build.ts';

/**
 * Two single coils on a three-way lever; a switch across the output that mutes in position 2; a push-pull that reverses the
 * neck when it is pulled out.
 */
const kit = (intended: string): string => `
kit: mute
title: SS, three-way lever, phase push-pull, mute switch
parts:
  neck:     { kind: single-coil }
  bridge:   { kind: single-coil }
  selector: { kind: lever-3 }
  mute:     { kind: switch, lugs: { left: [A, B] }, positions: [[], [[A, B]]] }
  phase:    { kind: push-pull, value: 250k }
  output:   { kind: jack }
${intended}
joints:
  - bend: phase.1 > phase.case
  - bridge.ground > phase.case
  - output.sleeve > phase.case
  - neck.hot > phase.A1
  - neck.hot > phase.B2
  - neck.ground > phase.A2
  - neck.ground > phase.B1
  - phase.A0 > selector.B3
  - phase.B0 > phase.case
  - jumper: selector.B3 > selector.B2
  - bridge.hot > selector.A1
  - jumper: selector.A1 > selector.A2
  - jumper: selector.A0 > selector.B0
  - selector.B0 > phase.3
  - phase.2 > output.tip
  - mute.A > output.tip
  - mute.B > output.sleeve
`;
const told = (intended: string): readonly string[] => {
  const { kit: read, diagnostics, source } = readKit(kit(intended), 'mute.yaml');
  const circuit = read && buildCircuit(read);
  const notes = circuit ? toDiagnostics(notesOf(circuit, solveLoads(circuit)), source) : [];
  return [...diagnostics, ...notes]
    .filter(({ code }) => code !== 'values-assumed')
    .map(({ severity, code, message }) => `${severity} ${code}: ${message}`);
};
const SILENT = 'silent: [{ mute: 2 }]';
const PHASE = 'out-of-phase: [{ phase: pulled out }]';

describe('intended', () => {
  it('a silent position is an error until it is intended, whatever the other switches do', () => {
    expect(told('')).toEqual([
      'error output-shorted: the output is shorted: the tip is connected to ground with mute in position 2',
    ]);
    expect(told(`intended: { ${SILENT}, ${PHASE} }`)).toEqual([]);
  });
  it('only the position it names: another silent one is an error still', () => {
    expect(told('intended: { silent: [{ mute: 2, selector: [1, 3] }] }')).toEqual([
      'error output-shorted: the output is shorted: the tip is connected to ground with selector in position 2, mute in position 2',
    ]);
  });
  it('out of phase is a warning until it is intended; a position by number, name or word on the face', () => {
    const warning =
      'warning out-of-phase: “neck” is out of phase with “bridge” with phase pulled out: together they have no output';
    expect(told(`intended: { ${SILENT} }`)).toEqual([warning]);
    for (const position of ['2', 'pulled out', 'out'])
      expect(told(`intended: { ${SILENT}, out-of-phase: [{ phase: ${position} }] }`)).toEqual([]);
    expect(told(`intended: { ${SILENT}, out-of-phase: always }`)).toEqual([]);
    expect(told(`intended: { ${SILENT}, out-of-phase: [{ selector: 1 }] }`)[0]).toBe(warning);
  });
  it('what does not prove true is a warning', () => {
    expect(told(`intended: { silent: [{ mute: [1, 2] }], ${PHASE} }`)).toEqual([
      'warning not-silent: there is output with mute in position 1, where silence is intended',
    ]);
    expect(told(`intended: { ${SILENT}, out-of-phase: [{ phase: 2 }, { phase: in }] }`)).toEqual([
      'warning not-out-of-phase: no pickups are out of phase with phase pushed in, where this is intended',
    ]);
  });
  it('the card of a silent position says so', () => {
    const { kit: read } = readKit(kit(`intended: { ${SILENT}, ${PHASE} }`), 'mute.yaml');
    if (!read) throw new Error('no kit');
    const circuit = buildCircuit(read);
    const cards = cardsOf(
      circuit,
      solveLoads(circuit),
      circuit.states.map(() => 0),
    );
    const silent = cards.filter(({ title }) => title === 'No output');
    expect(silent.map(({ states }) => states.length)).toEqual([6]);
    expect(describeCards(silent)).toBe('Position 1/2/3·2·1/2: No output.');
  });
});

describe('a kill button', () => {
  /** Across the output, or in its way where it is normally closed. */
  const button = (contact: string, joints: readonly string[]): readonly string[] => {
    const {
      kit: read,
      diagnostics,
      source,
    } = kitFromValue(
      {
        kit: 'kill',
        title: 'S, volume, kill button',
        parts: {
          neck: { kind: 'single-coil' },
          volume: { kind: 'pot', value: '250k' },
          kill: { kind: 'kill-button', contact },
          output: { kind: 'jack' },
        },
        joints: [
          { bend: 'volume.1 > volume.case' },
          'neck.ground > volume.case',
          'output.sleeve > volume.case',
          'neck.hot > volume.3',
          ...joints,
        ],
      },
      'kill.ts',
    );
    const circuit = read && buildCircuit(read);
    const notes = circuit ? toDiagnostics(notesOf(circuit, solveLoads(circuit)), source) : [];
    return [...diagnostics, ...notes]
      .filter(({ severity }) => severity !== 'note')
      .map(({ severity, code }) => `${severity} ${code}`);
  };
  const across = ['volume.2 > output.tip', 'kill.1 > output.tip', 'kill.2 > output.sleeve'];
  const between = ['volume.2 > kill.1', 'kill.2 > output.tip'];
  it('is silent on purpose while it is pressed, without a word in the kit', () => {
    expect(button('normally-open', across)).toEqual([]);
    expect(button('normally-closed', between)).toEqual([]);
  });
  it('at rest there must be output, and pressed there must be none', () => {
    for (const found of [button('normally-closed', across), button('normally-open', between)]) {
      expect(found.filter((one) => one.startsWith('error'))).toHaveLength(1);
      expect(found[0]).toMatch(/error (output-shorted|no-output)/);
    }
    expect(
      button('normally-open', ['volume.2 > output.tip', 'kill.1 > volume.3', 'kill.2 > volume.2']),
    ).toEqual(['warning not-silent']);
  });
});
