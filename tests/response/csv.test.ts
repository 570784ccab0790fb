/** Values with commas and quotes in their heads, by RFC 4180, section 2: quoted, a quote doubled. */
import { expect, it } from 'vitest';
import { solveResponse } from '../../src/analyse/index.ts';
import { responseCsv } from '../../src/report/response-table.ts';
import { makeCircuit } from '../analyse/kits.ts';

/** A line of fields as RFC 4180 has them, read back. */
function fieldsOf(line: string): readonly string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/g)].map(([, quoted, plain]) =>
    quoted === undefined ? (plain ?? '') : quoted.replaceAll('""', '"'),
  );
}

it('reads back as it was written', () => {
  const circuit = makeCircuit({
    parts: {
      neck: { kind: 'single-coil', label: 'Neck, "hot"' },
      out: { kind: 'jack' },
    },
    joints: ['neck.hot > out.tip', 'neck.ground > out.sleeve'],
  });
  const [head = '', ...rows] = responseCsv(circuit, solveResponse(circuit, { points: 3 }))
    .trimEnd()
    .split('\n');
  expect(fieldsOf(head)).toEqual([
    'frequency in Hz',
    'always: Neck, "hot", dB',
    'reference: Neck, "hot", dB',
  ]);
  for (const row of rows) expect(fieldsOf(row)).toHaveLength(3);
});
