/** Kits of shapes that crowd a step's drawing: long names, many joints on one case, coils in series, a rotary, and random ones. */
import type { Kit } from '../../../src/describe/kit.ts';
import { kitOfSeed } from '../../random/proof.ts';
import { described, sample } from '../../truth/draw.ts';

const relabelled = (kit: Kit, label: (name: string) => string): Kit => ({
  ...kit,
  parts: kit.parts.map((part) => ({ ...part, label: label(part.name) })),
});

/** Ten joints on one case, all in one step. */
const crowdedCase = described({
  kit: 'crowded-case',
  title: 'Ten joints on one case',
  parts: {
    neck: { kind: 'single-coil' },
    middle: { kind: 'single-coil' },
    bridge: { kind: 'humbucker' },
    selector: { kind: 'lever-5' },
    volume: { kind: 'pot', value: '250k' },
    tone: { kind: 'pot', value: '250k' },
    second: { kind: 'pot', value: '250k' },
    cap: { kind: 'capacitor', value: '22n' },
    other: { kind: 'capacitor', value: '47n' },
    output: { kind: 'jack' },
    strings: { kind: 'ground-point' },
  },
  joints: [
    { bend: 'volume.1 > volume.case' },
    { wire: 'tone.case > volume.case', colour: 'BK' },
    { wire: 'second.case > volume.case', colour: 'BK' },
    { wire: 'strings.1 > volume.case', colour: 'GNYE' },
    { wire: 'output.sleeve > volume.case', colour: 'BKWH' },
    { leg: 'cap.1 > tone.2' },
    { leg: 'cap.2 > volume.case' },
    { leg: 'other.1 > second.2' },
    { leg: 'other.2 > volume.case' },
    { wire: 'neck.ground > volume.case', colour: 'BK' },
    { wire: 'middle.ground > volume.case', colour: 'BK' },
    { braid: 'bridge.ground > volume.case' },
    { wire: 'selector.A1 > tone.1', colour: 'OG' },
    { wire: 'selector.A2 > second.1', colour: 'OG' },
    { wire: 'selector.A0 > volume.3', colour: 'TQ' },
    { wire: 'volume.2 > output.tip', colour: 'WH' },
    { wire: 'neck.hot > selector.B1', colour: 'WH' },
    { jumper: 'selector.B1 > selector.B2' },
    { wire: 'middle.hot > selector.A2', colour: 'YE' },
    { wire: 'bridge.hot > selector.A1', colour: 'RD' },
    { wire: 'selector.B0 > volume.3', colour: 'TQ' },
  ],
});

const random = Object.fromEntries(
  [11, 12, 13, 14, 15, 16].flatMap((seed): readonly (readonly [string, Kit])[] => {
    const kit = kitOfSeed(seed);
    return 'parts' in kit ? [[`random kit ${seed}`, kit]] : [];
  }),
);

export const oddKits: Readonly<Record<string, Kit>> = {
  'names of thirty wide letters': relabelled(sample('kestrel-hss'), () => 'W'.repeat(30)),
  'names of thirty letters in words': relabelled(sample('osprey-hsh'), (name) =>
    `${name} mit Wickelkoerper MWM`.padEnd(30, 'W').slice(0, 30),
  ),
  'names of one letter': relabelled(sample('plover-sss'), () => 'i'),
  'names with hyphens': relabelled(sample('wren-hs'), (name) =>
    `${name}-WMW-mmm-WWWW-Wickel-MM`.slice(0, 30),
  ),
  'ten joints on one case': crowdedCase,
  ...random,
};
