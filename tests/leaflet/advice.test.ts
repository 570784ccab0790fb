/** What a leaflet tells somebody who builds for the first time: leads of pickups, sleeving, lengths, and what to do where something is wrong. */
import { beforeAll, describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/annotate/steps.ts';
import { inLanguage } from '../../src/describe/kit.ts';
import { colours } from '../../src/describe/words.ts';
import type { Prepared } from '../../src/draw/compose.ts';
import { Cuts } from '../../src/leaflet/cuts.ts';
import type { Block } from '../../src/leaflet/document.ts';
import { faultsTable } from '../../src/leaflet/faults.ts';
import { fittingSection } from '../../src/leaflet/fitting.ts';
import { leafletOf } from '../../src/leaflet/leaflet.ts';
import { orientationSection } from '../../src/leaflet/orientation.ts';
import { partsTable } from '../../src/leaflet/parts.ts';
import { languages } from '../../src/messages/language.ts';
import { sayIn } from '../../src/messages/say.ts';
import { colourName } from '../../src/messages/words.ts';
import { analyse } from '../../src/prepare.ts';
import { preparedOf } from './make.ts';

const say = sayIn('en');
const cellsOf = (blocks: readonly Block[]): readonly (readonly string[])[] =>
  blocks.flatMap((block) =>
    block.is === 'table'
      ? block.rows.map((row) => row.map((cell) => (cell.is === 'text' ? cell.text : cell.is)))
      : block.is === 'together'
        ? cellsOf(block.blocks)
        : [],
  );
const cutsOf = (prepared: Prepared) => new Cuts(prepared, stepsOf(prepared.circuit), say, 'en');
const listOf = (prepared: Prepared) =>
  cellsOf([
    partsTable(
      prepared.circuit.kit,
      say,
      () => ({ svg: '', width: 1, height: 1, alt: '' }),
      cutsOf(prepared),
    ),
  ]);

let split: Prepared;
let osprey: Prepared;
let heron: Prepared;
beforeAll(async () => {
  split = await preparedOf('samples/circuits/hh-toggle-3-1v1t-split.yaml');
  osprey = await preparedOf('samples/osprey-hsh.yaml');
  heron = await preparedOf('samples/heron-ss.yaml');
});

describe('a pickup with leads for each coil', () => {
  it('is measured coil by coil while nothing joins them', () => {
    const told = (name: string) =>
      listOf(split)
        .find((row) => row[3]?.startsWith(`${name}:`))
        ?.at(-1) ?? '';
    // As described 7.8 and 8.6 kΩ with both coils in series, which are alike: half of it each.
    expect(told('Neck')).toContain('a-start to a-finish about 3.9 kΩ; b-start to b-finish about 3.9 kΩ');
    expect(told('Bridge')).toContain('a-start to a-finish about 4.3 kΩ; b-start to b-finish about 4.3 kΩ');
    expect(told('Neck')).not.toContain('across its leads');
    const plain = listOf(osprey)
      .find((row) => row[3]?.startsWith('Neck:'))
      ?.at(-1);
    expect(plain).toContain('across its leads');
  });

  it.each(languages)('has its leads explained in %s, without a colour', (language) => {
    const words = JSON.stringify(
      orientationSection(analyse(inLanguage(split.circuit.kit, language)), sayIn(language)),
    );
    const lugs = ['a-start', 'a-finish', 'b-start', 'b-finish', 'shield'] as const;
    for (const lug of lugs) expect(words).toContain(sayIn(language)(`lug.${lug}`));
    expect(words).toContain(sayIn(language)('fault.coils'));
    for (const code of colours)
      expect(words).not.toMatch(new RegExp(`(?<!\\p{L})${colourName(language, code)}(?!\\p{L})`, 'iu'));
  });

  it('and a coil split have rows of faults, which no other kit has', () => {
    const seen = (prepared: Prepared) =>
      cellsOf([faultsTable(prepared, say)])
        .flat()
        .join('\n');
    expect(seen(split)).toContain('A four-lead pickup sounds thin and quiet');
    expect(seen(split)).toContain('Neck, Bridge: the change to one coil does nothing');
    expect(seen(split)).toContain('solder all of its leads again');
    for (const other of [osprey, heron]) {
      expect(seen(other)).not.toMatch(/four-lead|one coil/);
      expect(seen(other)).toContain('solder both of its leads again');
    }
  });

  it('says once how far its cable is stripped', () => {
    const notes = stepsOf(split.circuit).flatMap(({ notes: own }) => own);
    expect(notes.filter((note) => note.includes('jacket'))).toHaveLength(1);
    expect(JSON.stringify(stepsOf(osprey.circuit))).not.toContain('jacket');
  });
});

/** Millimetres in front of the unit. */
const millimetres = (words = ''): number => Number(/^≈? ?(\d+)\u00a0mm/.exec(words)?.[1]);

describe('sleeving', () => {
  it.each(['split', 'osprey', 'kestrel'])(
    '%s: what is cut is what is in the bag, a tenth to spare',
    async (name) => {
      const prepared =
        { split, osprey, kestrel: await preparedOf('samples/kestrel-hss.yaml') }[name] ?? split;
      const cuts = cutsOf(prepared);
      for (const what of ['Sleeving', 'Wire to extend legs']) {
        const pieces = cellsOf(cuts.list()).filter((row) => row[2] === what);
        const whole = pieces.reduce((sum, row) => sum + Number(row[1]) * millimetres(row[3]), 0);
        const bag = cuts.stock().find((row) => row.name === what);
        expect(bag === undefined ? 0 : millimetres(bag.amount)).toBe(
          Math.ceil(Math.max(0, whole * 1.1 - 1e-6) / 5) * 5,
        );
        // Every piece stands at its joint too.
        const atJoints = prepared.circuit.joints.flatMap((_, i) =>
          cuts
            .forJoint(i)
            .split('\n')
            .filter((line) => line.startsWith(`${what} `)),
        );
        expect(atJoints.length).toBe(pieces.reduce((sum, row) => sum + Number(row[1]), 0));
      }
    },
  );

  it('of a braid is listed for the step that says to sleeve it', () => {
    const steps = stepsOf(split.circuit);
    const said = steps.filter(({ notes }) => notes.some((note) => note.includes('Sleeve it')));
    const row = cellsOf(cutsOf(split).list()).find((cells) => cells[2] === 'Sleeving');
    expect(row?.[1]).toBe('2');
    expect(row?.[4]).toBe(said.map(({ number }) => String(number)).join(', '));
  });

  it('of a leg that is lengthened stands once, and its step says how', () => {
    const steps = stepsOf(osprey.circuit);
    const leg = osprey.circuit.joints.findIndex(
      ({ kind, from, to }) =>
        kind === 'leg' && [from, to].some(({ part, lug }) => part === 'selector' && lug === 'A2'),
    );
    const lines = cutsOf(osprey).forJoint(leg).split('\n');
    expect(lines.map((line) => line.replace(/\d+/, ''))).toEqual([
      'Wire to extend legs \u00a0mm',
      'Sleeving \u00a0mm',
    ]);
    const told = steps.filter((step) =>
      JSON.stringify(cutsOf(osprey).extending(step)).includes('Middle pad'),
    );
    expect(told.map(({ joints }) => joints.includes(leg))).toEqual([true]);
  });
});

describe('somebody who builds for the first time', () => {
  it('measures on the instrument before the first cut, whether lengths are given or estimated', () => {
    for (const prepared of [split, osprey, heron]) {
      const words = JSON.stringify(cutsOf(prepared).list());
      expect(words.split('Measure on your instrument before you cut')).toHaveLength(2);
    }
  });

  it('reads how parts are held once, from the side of the drawing', () => {
    const words = JSON.stringify(orientationSection(osprey, say));
    expect(words).toContain('shaft or lever away from you');
    expect(words).not.toContain('shaft towards you');
    // The check comes before what to do where it fails.
    expect(words.indexOf('Check with the meter')).toBeLessThan(words.indexOf('turn the switch round'));
  });

  it('that one hum is checked with the meter first, and tingling never waits', () => {
    const buzz =
      cellsOf([faultsTable(osprey, say)]).find(([seen]) => seen?.startsWith('Loud hum'))?.[2] ?? '';
    const order = ['Unplug at once', 'With the meter', 'swap the two wires', 'licensed electrician'];
    expect(order.map((words) => buzz.indexOf(words))).toEqual(
      order.map((words) => buzz.indexOf(words)).sort((a, b) => a - b),
    );
    expect(buzz.indexOf('Unplug')).toBe(0);
    const stop = JSON.stringify(fittingSection(osprey, say));
    expect(stop).toMatch(
      /tingle when you touch them, unplug at once and do not play: have .* electrician\. If/,
    );
  });

  it('has a word on every wrong reading, and on what each component is', () => {
    const paper = { width: 210, height: 297, margin: 16 };
    const words = JSON.stringify(leafletOf(osprey, { paper }).blocks);
    const times = (text: string) => words.split(text).length - 1;
    expect(times('If a reading is wrong, compare every connection')).toBe(2);
    for (const once of [
      'fingers on both tips',
      'a cold joint; heat it again',
      'wire on the wrong lug is the likeliest',
    ])
      expect(times(once)).toBe(1);
    expect(times('Tone cap: capacitor; Middle pad: resistor.')).toBe(1);
    expect(times('To undo a joint')).toBe(1);
    expect(times('These are design values')).toBe(1);
  });
});
