/** A stereo jack on a fresh drawing: its three lugs stand where they are named, and each wire ends on the one it is joined to. */
import { describe, expect, it } from 'vitest';
import { hands, views } from '../../src/describe/kit.ts';
import { inspect } from '../../src/inspect/index.ts';
import { described, drawn } from './draw.ts';
import { jointErrors } from './reader.ts';

const kit = described({
  kit: 'ss-stereo',
  title: 'SS, two volumes, stereo jack',
  parts: {
    neck: { kind: 'single-coil', label: 'Neck' },
    bridge: { kind: 'single-coil', label: 'Bridge' },
    low: { kind: 'pot', value: '250k', label: 'Neck volume' },
    high: { kind: 'pot', value: '250k', label: 'Bridge volume' },
    output: { kind: 'stereo-jack', label: 'Output' },
  },
  joints: [
    'low.case > high.case',
    'output.sleeve > high.case',
    'neck.ground > low.case',
    'bridge.ground > high.case',
    { bend: 'low.1 > low.case' },
    { bend: 'high.1 > high.case' },
    'neck.hot > low.3',
    'bridge.hot > high.3',
    'high.2 > output.tip',
    'low.2 > output.ring',
  ],
});

describe.each(views)('seen from the %s', (view) => {
  it.each(hands)('for the %s hand', async (hand) => {
    const drawing = await drawn(kit, { view, hand });
    expect(jointErrors(drawing, kit)).toEqual([]);
    expect(inspect(drawing.svg, kit)).toEqual([]);
    const jack = drawing.parts.find(({ name }) => name === 'output');
    expect(jack?.texts.map(({ words }) => words).sort()).toEqual([
      'Output',
      'ring',
      'sleeve',
      'stereo jack',
      'tip',
    ]);
  });
});

it('the card says which pickup is at which output, and what a meter reads at each', async () => {
  const { svg } = await drawn(kit);
  expect(svg).toContain('tip: Bridge; ring: Neck');
  expect(svg).toContain('multimeter, to sleeve');
  expect(svg).toMatch(/tip 5\.86 kΩ, ring 5\.86 kΩ, assumed/);
});
