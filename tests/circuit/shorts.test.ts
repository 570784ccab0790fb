/** A shorted output is reported at the joint that makes it. Common practice, no source. */
import { expect, it } from 'vitest';
import { kitFromValue } from '../../src/checked.ts';

const short = (joints: readonly string[], more: object = {}) => {
  const { diagnostics } = kitFromValue(
    {
      kit: 'short',
      title: 'Short',
      parts: {
        neck: { kind: 'single-coil' },
        bridge: { kind: 'single-coil' },
        selector: { kind: 'lever-3' },
        volume: { kind: 'pot', value: '250k' },
        tone: { kind: 'pot', value: '250k' },
        output: { kind: 'jack' },
        ...more,
      },
      joints: [
        'volume.1 > volume.case',
        'volume.case > tone.case',
        'output.sleeve > volume.case',
        'neck.ground > volume.case',
        'bridge.ground > volume.case',
        'bridge.hot > selector.A1',
        'neck.hot > selector.A3',
        'selector.A1 > selector.A2',
        'selector.A0 > volume.3',
        'volume.2 > output.tip',
        ...joints,
      ],
    },
    'x.ts',
  );
  return diagnostics.map(({ code, message, remedy }) => [code, message.split(':')[0], remedy]);
};

it('is told at the one joint that makes it, in the position it makes it in', () =>
  expect(short(['selector.A3 > tone.case'])).toEqual([
    [
      'output-shorted',
      'joints[10]',
      '“selector.A3 > tone.case” connects the signal to ground: move one end to the correct lug. If there is no output here on purpose, list the position under “intended: silent”.',
    ],
  ]));

it('names two that may both be wrong', () => {
  const [[code, at, remedy] = []] = short(['output.tip > tone.case']);
  expect([code, at]).toEqual(['output-shorted', 'joints[10]']);
  expect(remedy).toContain('output.tip > tone.case');
});

it('where no single joint makes it, is told at the switch', () => {
  const [[code, at, remedy] = []] = short(['output.tip > tone.case', 'selector.A0 > volume.case']);
  expect([code, at]).toEqual(['output-shorted', 'parts.selector']);
  expect(remedy).toBe('Find the joint that connects the signal to ground and move it.');
});
