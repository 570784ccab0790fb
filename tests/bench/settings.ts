/**
 * A kit of which only the number of its settings is chosen: two pickups, a volume and a tone, two five-way levers in the signal's way,
 * and a rotary switch of so many throws, and the signal passes in all of them.
 *
 * @param throws of the rotary, 2 to 12; there are 25 settings for each
 */
export function manySettings(throws: number): { readonly kit: string; readonly [key: string]: unknown } {
  const lever = (name: string) => ({
    parts: { [name]: { kind: 'lever-5' }, [`${name}-resistor`]: { kind: 'resistor', value: '1k' } },
    joints: [
      { wire: `${name}.A1 > ${name}.A2` },
      { wire: `${name}.A2 > ${name}.A3` },
      { wire: `${name}.A3 > ${name}-resistor.1` },
      { wire: `${name}-resistor.2 > ${name}.A1` },
    ],
  });
  const [one, other] = [lever('one'), lever('other')];
  return {
    kit: 'settings',
    title: 'Many settings',
    parts: {
      neck: { kind: 'single-coil' },
      bridge: { kind: 'humbucker' },
      ...one.parts,
      ...other.parts,
      rotary: { kind: 'rotary', throws },
      volume: { kind: 'pot', value: '500k' },
      tone: { kind: 'pot', value: '500k' },
      cap: { kind: 'capacitor', value: '22n' },
      jack: { kind: 'jack' },
    },
    joints: [
      ...one.joints,
      ...other.joints,
      { wire: 'neck.hot > one.A0' },
      { wire: 'one.A1 > rotary.A0' },
      { wire: 'bridge.hot > other.A0' },
      { wire: 'other.A1 > rotary.A1' },
      ...Array.from({ length: throws - 1 }, (_, i) => ({ wire: `rotary.A${i + 1} > rotary.A${i + 2}` })),
      { wire: 'other.A2 > volume.3' },
      { wire: 'volume.2 > jack.tip' },
      { wire: 'volume.1 > jack.sleeve' },
      { wire: 'volume.3 > tone.1' },
      { wire: 'tone.2 > cap.1' },
      { wire: 'cap.2 > jack.sleeve' },
      { wire: 'neck.ground > jack.sleeve' },
      { wire: 'bridge.ground > volume.1' },
    ],
  };
}
