/** Each kind of joint in its step, and as the line that a person solders by. The order is common practice, no source. */
import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/annotate/steps.ts';
import type { Joint } from '../../src/describe/kit.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { type Compact, makeKit } from '../analyse/kits.ts';

const parts: Compact['parts'] = {
  neck: { kind: 'single-coil', label: 'Neck' },
  coil: { kind: 'single-coil', label: 'Coil' },
  volume: { kind: 'pot', value: '250k', label: 'Volume' },
  tone: { kind: 'pot', value: '250k', label: 'Tone' },
  lever: { kind: 'lever-3', label: 'Lever' },
  cap: { kind: 'capacitor', value: '22n', label: 'Cap', sleeving: 2 },
  pad: { kind: 'resistor', value: '470k', tolerance: '5%', label: 'Pad', sleeving: 1 },
  out: { kind: 'jack', label: 'Out' },
  strings: { kind: 'ground-point', label: 'Strings' },
};

type Written = Pick<Joint, 'kind'> & Partial<Pick<Joint, 'colour' | 'length' | 'step'>>;
/** Title and line of the step a joint is in, the kit having the jack's sleeve on the volume's case besides. */
function step(joint: string, written: Written): readonly string[] {
  const kit = makeKit({ parts, joints: ['out.sleeve > volume.case', joint] });
  const joints = kit.joints.map((one, i) => (i === 1 ? { ...one, ...written } : one));
  const found = stepsOf(buildCircuit({ ...kit, joints })).find((one) => one.joints.includes(1));
  return [found?.title ?? '', found?.lines.at(-1) ?? ''];
}

it.each([
  ['neck.hot > lever.A1', { kind: 'wire' }, 'Pickups', 'Lead from Neck hot to Lever A1'],
  ['lever.A1 > neck.hot', { kind: 'wire', colour: 'RD' }, 'Pickups', 'Lead (red) from Neck hot to Lever A1'],
  ['volume.case > neck.ground', { kind: 'braid' }, 'Pickups', 'Braid from Neck ground to Volume case'],
  ['lever.A0 > lever.B0', { kind: 'jumper' }, 'Jumpers', 'Bare jumper from Lever A0 to Lever B0'],
  [
    'volume.1 > volume.case',
    { kind: 'bend' },
    'Ground',
    'Bend Volume lug 1 back and solder it to Volume case',
  ],
  [
    'strings.1 > volume.case',
    { kind: 'wire' },
    'Ground',
    'Wire from Strings to Volume case; leave the end for Strings free',
  ],
  ['volume.case > tone.case', { kind: 'wire' }, 'Ground', 'Wire from Volume case to Tone case'],
  ['lever.A0 > volume.3', { kind: 'wire' }, 'Switch and pots', 'Wire from Lever A0 to Volume lug 3'],
  ['volume.2 > out.tip', { kind: 'wire' }, 'Output', 'Wire from Volume lug 2 to Out tip'],
  [
    'lever.A0 > volume.3',
    { kind: 'wire', colour: 'BKRD', length: 0.1234 },
    'Switch and pots',
    'Wire (black and red, 123 mm) from Lever A0 to Volume lug 3',
  ],
  [
    'lever.A0 > volume.3',
    { kind: 'braid', length: 0.08 },
    'Switch and pots',
    'Braid (80 mm) from Lever A0 to Volume lug 3',
  ],
  ['volume.2 > out.tip', { kind: 'wire', step: 8 }, 'Further joints', 'Wire from Volume lug 2 to Out tip'],
  ['volume.2 > out.tip', { kind: 'wire', step: 3 }, 'Components', 'Wire from Volume lug 2 to Out tip'],
  ['cap.1 > tone.1', { kind: 'leg' }, 'Components', 'Cap (22 nF, marked 223): one leg to Tone lug 1'],
  [
    'tone.case > cap.2',
    { kind: 'leg' },
    'Components',
    'Cap (22 nF, marked 223, sleeved): one leg to Tone case',
  ],
  [
    'pad.1 > lever.A1',
    { kind: 'leg' },
    'Components',
    'Pad (470 kΩ, yellow violet yellow gold, sleeved): one leg to Lever A1',
  ],
  [
    'pad.2 > volume.case',
    { kind: 'leg' },
    'Components',
    'Pad (470 kΩ, yellow violet yellow gold): one leg to Volume case',
  ],
  [
    'cap.1 > pad.2',
    { kind: 'leg' },
    'Components',
    'Cap (22 nF, marked 223, 470 kΩ, yellow violet yellow gold): one leg to Pad',
  ],
  ['pad.1 > lever.A1', { kind: 'wire' }, 'Switch and pots', 'Wire from Pad to Lever A1'],
] as const)('%s, %j: %s', (joint, written, title, line) =>
  expect(step(joint, written)).toEqual([title, line]),
);

describe('the steps of a kit', () => {
  const kit = makeKit({
    parts,
    joints: [
      'neck.hot > lever.A1',
      'volume.2 > out.tip',
      'out.sleeve > volume.case',
      'lever.A0 > volume.3',
      'tone.case > volume.case',
      'tone.2 > volume.3',
    ],
  });
  it('come in order, numbered from 1 without gaps, the joints of each as written', () => {
    expect(stepsOf(buildCircuit(kit)).map(({ number, title, joints }) => [number, title, joints])).toEqual([
      [1, 'Ground', [2, 4]],
      [2, 'Switch and pots', [3, 5]],
      [3, 'Output', [1]],
      [4, 'Pickups', [0]],
    ]);
  });
});

/** An end that is fixed in the pickup, or whose place is on the instrument, cannot be soldered on the bench. Common practice, no source. */
describe('ends without solder', () => {
  const notesAndEnds = (joints: readonly string[]) => {
    const steps = stepsOf(buildCircuit(makeKit({ parts, joints })));
    const ends = new Map(
      steps.flatMap(({ details }) =>
        details.flatMap(({ from, to }) => [from, to].map(({ lug, soldered }) => [lug, soldered] as const)),
      ),
    );
    return { ends, notes: steps.flatMap(({ notes }) => notes) };
  };

  it('of a pickup’s leads, and of a wire to a ground point', () => {
    const { ends, notes } = notesAndEnds([
      'strings.1 > out.sleeve',
      'out.tip > neck.hot',
      'neck.ground > out.sleeve',
    ]);
    expect([ends.get('strings.1'), ends.get('neck.hot'), ends.get('neck.ground')]).toEqual([
      'none',
      'none',
      'none',
    ]);
    expect(notes.some((note) => note.startsWith('Strings: not in the kit'))).toBe(true);
    expect(notes.some((note) => note.startsWith('The leads of a pickup are attached'))).toBe(true);
  });

  it('but where several joints come together there, all are soldered', () => {
    const { ends, notes } = notesAndEnds([
      'strings.1 > out.sleeve',
      'strings.1 > volume.case',
      'neck.hot > out.tip',
      'neck.hot > volume.3',
      'neck.ground > out.sleeve',
    ]);
    expect([ends.get('strings.1'), ends.get('neck.hot'), ends.get('neck.ground')]).toEqual([
      'now',
      'now',
      'none',
    ]);
    expect(notes.some((note) => note.endsWith('sleeve them: Neck hot.'))).toBe(true);
    expect(notes.some((note) => note.startsWith('Strings: not in the kit'))).toBe(false);
  });

  it('nor of the second of two leads that are joined', () => {
    const { ends } = notesAndEnds([
      'coil.hot > out.tip',
      'coil.ground > neck.hot',
      'neck.ground > out.sleeve',
    ]);
    expect([ends.get('coil.ground'), ends.get('neck.hot')]).toEqual(['none', 'now']);
  });
});
