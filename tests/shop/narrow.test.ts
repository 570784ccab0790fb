/** Kits for a phone: no type under 11 pixels, true to the kit, and no wider than the phone, whatever parts they have. */
import { describe, expect, it } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import { formatFinding, inspect, proofread } from '../../src/inspect/index.ts';
import { narrowOf } from '../../src/shop/narrow.ts';
import { circuitKit, circuitNames } from '../circuits/circuits.ts';
import { expectPicture } from '../golden/picture.ts';
import { placedOnce } from '../tools/placements.ts';
import { described, sample, samples } from '../truth/draw.ts';
import { jointErrors, read } from '../truth/reader.ts';
import { leastType } from './least-type.ts';

/** CSS pixels. Common practice for text on a phone, no source. */
const LEAST = 11;
/** A short search: what must hold, must hold wherever it stops. */
const SHORT = { steps: 150, seed: 3 };
const PHONE = 360;

/** What is wrong with the pieces of a kit, and how wide each is. */
async function checked(kit: Kit, options: Parameters<typeof narrowOf>[1] = { effort: SHORT, ...placedOnce }) {
  const narrow = await narrowOf(kit, options);
  const { prepared, drawing, key, cards } = narrow;
  const pieces = [drawing, key, cards];
  for (const { name, svg, width, height } of pieces) {
    expect(proofread(svg, prepared).map(formatFinding), name).toEqual([]);
    expect(leastType(svg), name).toBeGreaterThanOrEqual(LEAST - 0.005);
    expect(svg, name).toContain(` width="${width}" height="${height}"`);
  }
  expect(Math.min(...pieces.map(({ svg }) => leastType(svg)))).toBeCloseTo(narrow.leastType, 2);
  expect(jointErrors(read(drawing.svg), kit)).toEqual([]);
  return narrow;
}

/** Circuits with more wires past their widest parts than a phone has lanes, were it not for the narrow forms of those parts. */
const WIDE = [
  'bass-ss-blend-1v1t',
  'bass-ss-stacked-2v2t',
  'hh-toggle-3-1v1t-series-parallel',
  'hh-toggle-3-1v1t-split',
  'hsh-lever-5-1v1t-auto-split',
  'hss-lever-5-4p-1v1t-auto-split',
  'ss-lever-3-1v1t-phase',
];

describe('every sample, and circuits that ship', { timeout: 120_000 }, () => {
  const all = [
    ...samples.map((name) => [name, async () => sample(name)] as const),
    // Of the other circuits a few, so that all tests stay within their time.
    ...circuitNames
      .filter((name, i) => WIDE.includes(name) || i % 8 === 0)
      .map((name) => [name, () => circuitKit(name)] as const),
  ];
  it.each(all)('%s: readable, true to the kit, and no wider than a phone', async (_, kit) => {
    const { drawing } = await checked(await kit());
    expect(drawing.width).toBe(PHONE);
  });
  it('the circuits that need narrow forms are among them', () => {
    expect(WIDE.filter((name) => !circuitNames.includes(name))).toEqual([]);
  });
});

it('the check reads the pieces back and draws them again', { timeout: 60_000 }, async () => {
  const kit = sample('heron-ss');
  const { drawing, key, cards } = await checked(kit);
  for (const { svg, inline } of [drawing, key, cards])
    for (const text of [svg, inline]) expect(inspect(text, kit).map(formatFinding)).toEqual([]);
});

it('a wide column takes the same kit less high', { timeout: 60_000 }, async () => {
  const kit = sample('heron-ss');
  const [phone, tablet] = [await checked(kit), await checked(kit, { effort: SHORT, width: 600 })];
  expect(tablet.drawing.width).toBe(600);
  expect(tablet.prepared.placement.height).toBeLessThan(phone.prepared.placement.height);
});

/** Names of thirty letters, with blanks and without. */
const LONG = ['Neck pickup of the older guitar', 'Bridgepickupwithoutanyblanks30'];

it('names of thirty letters', { timeout: 60_000 }, async () => {
  const kit = sample('heron-ss');
  const parts = kit.parts.map((part, i) => ({ ...part, label: LONG[i % LONG.length] ?? part.label }));
  const { drawing } = await checked({ ...kit, parts });
  // One word as wide as a plate may be, and a lane on either side of it.
  expect(drawing.width).toBeLessThanOrEqual(460);
});

it('four pickups, all soldered to one volume', { timeout: 60_000 }, async () => {
  const names = ['one', 'two', 'three', 'four'];
  const kit = described({
    kit: 'four-pickups',
    title: 'Four pickups',
    parts: {
      ...Object.fromEntries(
        names.map((name) => [name, { kind: 'single-coil', label: name, resistance: '6k' }]),
      ),
      volume: { kind: 'pot', label: 'Volume', value: '250k', taper: 'log' },
      output: { kind: 'jack', label: 'Output' },
      strings: { kind: 'ground-point', label: 'String ground' },
    },
    joints: [
      { bend: 'volume.1 > volume.case' },
      { wire: 'strings.1 > volume.case', colour: 'BK' },
      { wire: 'output.sleeve > volume.case', colour: 'BK' },
      { wire: 'volume.2 > output.tip', colour: 'WH' },
      { wire: 'one.hot > volume.3', colour: 'RD' },
      ...names.slice(1).map((name, i) => ({ wire: `${name}.hot > ${names[i]}.hot`, colour: 'BU' })),
      ...names.map((name) => ({ wire: `${name}.ground > volume.case`, colour: 'BK' })),
    ],
  });
  const { drawing } = await checked(kit);
  expect(drawing.width).toBeLessThanOrEqual(PHONE);
});

it('without a search it is as readable, though perhaps wider', { timeout: 60_000 }, async () => {
  await checked(sample('kestrel-hss'), { effort: { steps: 0, seed: 1 } });
});

describe('fits a phone, and looks as it did when it was looked at', { timeout: 120_000 }, () => {
  it.each(['heron-ss', 'kestrel-hss'])('%s', async (name) => {
    const { drawing } = await checked(sample(name), placedOnce);
    expect(drawing.width).toBe(PHONE);
    await expectPicture(`narrow-${name}`, drawing.svg, 2 * PHONE);
  });
});
