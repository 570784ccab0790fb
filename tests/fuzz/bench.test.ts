/**
 * One mistake at the bench in every sample: the check, what sounds, the loads or the meter notice nearly all of them, and those that
 * they do not notice are the same circuit.
 */
import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import { loadKit } from '../../src/files/load.ts';
import { electrically, mistakes, notices, tell } from './kits.ts';

const files = ['samples', 'samples/circuits'].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => `${folder}/${name}`),
);
/** Of mistakes that make another circuit. */
const LEAST = 0.95;

const counts = { all: 0, same: 0, sameAt10: 0, noticed: 0 };

it.each(files)(
  '%s: what is not noticed is the same circuit, or the same with all controls on 10',
  async (file) => {
    const { kit } = await loadKit(file);
    if (!kit) throw new Error(`${file} is not a kit`);
    const right = tell(kit);
    const [circuit, at10] = [electrically(kit), electrically(kit, true)];
    const unexplained: string[] = [];
    for (const { what, kit: mistake } of mistakes(kit)) {
      counts.all++;
      if (notices(mistake, right)) counts.noticed++;
      else if (electrically(mistake) === circuit) counts.same++;
      // As a capacitor on lug 3 of a tone pot in place of lug 2: only what the turned knob does is another.
      else if (electrically(mistake, true) === at10) counts.sameAt10++;
      else unexplained.push(what);
    }
    expect(unexplained).toEqual([]);
  },
  120_000,
);

it('at least 95 % of the mistakes that make another circuit are noticed', () => {
  expect(counts.all).toBeGreaterThan(1500);
  expect(counts.noticed / (counts.all - counts.same), JSON.stringify(counts)).toBeGreaterThan(LEAST);
});

it('a mistake that makes no other circuit is not noticed by the words for it', async () => {
  const { kit } = await loadKit('samples/heron-ss.yaml');
  if (!kit) throw new Error('no kit');
  const of = (what: string) => mistakes(kit).find((one) => one.what === what)?.kit ?? kit;
  // The jumper joins the two throws; the next lug of the pot is the other end of its track.
  expect(electrically(of('bridge.hot > selector.A1 as bridge.hot > selector.A2'))).toBe(electrically(kit));
  expect(electrically(of('volume.2 > output.tip as volume.1 > output.tip'))).not.toBe(electrically(kit));
});
