/** Small kits with each kind of pot. */
import type { Compact } from '../analyse/kits.ts';

const coils = { neck: { kind: 'single-coil' }, bridge: { kind: 'single-coil' } } as const;

/** Bass, SS: a blend whose wipers have the pickups, a stacked volume and no-load tone control. */
export const bassKit = (blend: object = {}): Compact => ({
  kit: 'bass-ss-blend',
  parts: {
    ...coils,
    blend: { kind: 'blend', value: '250k', ...blend },
    controls: {
      kind: 'stacked-pot',
      a: { value: '250k' },
      b: { value: '500k', taper: 'reverse-log', 'no-load': true },
    },
    'tone-cap': { kind: 'capacitor', value: '47n' },
    output: { kind: 'jack' },
  },
  joints: [
    'neck.hot > blend.a2',
    'bridge.hot > blend.b2',
    'blend.a1 > blend.case',
    'blend.b3 > blend.case',
    'blend.a3 > controls.a3',
    'blend.b1 > blend.a3',
    'controls.a1 > controls.case',
    'controls.a3 > controls.b2',
    'tone-cap.1 > controls.b1',
    'tone-cap.2 > controls.case',
    'controls.a2 > output.tip',
    'neck.ground > blend.case',
    'bridge.ground > blend.case',
    'blend.case > controls.case',
    'controls.case > output.sleeve',
  ],
});

/** A dual-gang pot of two values that fades one pickup with each gang, as a resistance in series. */
export const dualBlendKit: Compact = {
  kit: 'ss-dual-blend',
  parts: {
    ...coils,
    blend: { kind: 'dual-pot', value: '500k', taper: 'linear', b: { value: '1M' } },
    output: { kind: 'jack' },
  },
  joints: [
    'neck.hot > blend.a3',
    'blend.a2 > output.tip',
    'bridge.hot > blend.b1',
    'blend.b2 > output.tip',
    'neck.ground > blend.case',
    'bridge.ground > blend.case',
    'blend.case > output.sleeve',
  ],
};

/** One pickup, volume and tone. */
export const controlsKit = (tone: object = {}): Compact => ({
  kit: 's-volume-tone',
  parts: {
    neck: { kind: 'single-coil' },
    volume: { kind: 'pot', value: '250k' },
    tone: { kind: 'pot', value: '250k', ...tone },
    cap: { kind: 'capacitor', value: '22n' },
    output: { kind: 'jack' },
  },
  joints: [
    'neck.hot > volume.3',
    'volume.1 > volume.case',
    'volume.2 > output.tip',
    'volume.3 > tone.2',
    'tone.1 > cap.1',
    'cap.2 > tone.case',
    'tone.case > volume.case',
    'neck.ground > volume.case',
    'volume.case > output.sleeve',
  ],
});

/** Two pickups at the ends of one plain pot, the output at its wiper. */
export const plainBlendKit: Compact = {
  kit: 'ss-plain-blend',
  parts: { ...coils, blend: { kind: 'pot', value: '250k', taper: 'linear' }, output: { kind: 'jack' } },
  joints: [
    'neck.hot > blend.1',
    'bridge.hot > blend.3',
    'blend.2 > output.tip',
    'neck.ground > blend.case',
    'bridge.ground > blend.case',
    'blend.case > output.sleeve',
  ],
};
