/** A quarter of the circuits that ship have a leaflet, in one language after another: all joints, all readings, and no word of a message left open. */
import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { jackTests, stepTests } from '../../src/annotate/step-tests.ts';
import { stepsOf } from '../../src/annotate/steps.ts';
import { languages } from '../../src/messages/language.ts';
import { squeezed, textOfPdf } from '../tools/pdf-tools.ts';
import { pdfOf, preparedOf } from './make.ts';

/** Without blanks and hyphens: a line may end at either. */
const bare = (text: string): string => squeezed(text).replace(/[ -]/g, '');

// Every fourth one: each takes more than a second.
const circuits = readdirSync('samples/circuits').filter((name, i) => name.endsWith('.yaml') && i % 4 === 0);
const told = circuits.map((name, i) => [name, languages[i % languages.length] ?? 'en'] as const);

it.each(told)('%s in %s', async (name, language) => {
  const prepared = await preparedOf(`samples/circuits/${name}`, language);
  const { circuit } = prepared;
  const text = textOfPdf(await pdfOf(prepared, { page: 'a5', plot: true }));
  const { before, finished } = jackTests(circuit);
  const wanted = [
    ...circuit.kit.parts.map(({ label }) => label),
    ...stepsOf(circuit).flatMap(({ lines, notes }) => [...lines, ...notes]),
    ...stepTests(circuit).flatMap(({ tests }) =>
      tests.flatMap(({ expected, wrong }) => [expected, ...wrong]),
    ),
    ...[...before, ...finished].flatMap(({ position, volumeFull, volumeZero }) => [
      position,
      volumeFull,
      volumeZero,
    ]),
  ];
  expect(wanted.length).toBeGreaterThan(20);
  const letters = bare(text);
  for (const words of wanted) expect(letters).toContain(bare(words));
  expect(text).not.toMatch(/undefined|NaN|\[object|\{\w+\}/);
});

it('there are circuits for every language', () => expect(circuits.length).toBeGreaterThan(languages.length));
