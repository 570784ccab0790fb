/** The picture of a case with places for its joints, read back from its text. */
import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../../src/annotate/steps.ts';
import { lugId } from '../../../src/circuit/circuit.ts';
import { inLanguage } from '../../../src/describe/kit.ts';
import { caseFigure, hasRoundCase } from '../../../src/draw/leaflet/case-figure.ts';
import { findArrangement } from '../../../src/files/layouts.ts';
import { casePlans } from '../../../src/leaflet/case-plan.ts';
import type { Block, Shown } from '../../../src/leaflet/document.ts';
import { picturesOf } from '../../../src/leaflet/pictures.ts';
import { sayIn } from '../../../src/messages/say.ts';
import { prepare } from '../../../src/pipeline.ts';
import { circuitKit } from '../../circuits/circuits.ts';
import { preparedOf } from '../../leaflet/make.ts';
import { read } from '../../truth/reader.ts';

const shownIn = (blocks: readonly Block[]): readonly Shown[] =>
  blocks.flatMap((block) => (block.is === 'pairs' ? block.items : block.is === 'beside' ? [block] : []));

async function plansOf(file: string) {
  const prepared = await preparedOf(file);
  const say = sayIn('en');
  const steps = stepsOf(prepared.circuit);
  const pictures = picturesOf(prepared, 'light', say, { width: 124, height: 186 });
  return { prepared, steps, shown: shownIn(casePlans(prepared, steps, pictures, say)) };
}

const placesIn = (svg: string) =>
  [
    ...svg.matchAll(
      /<circle cx="([\d.-]+)" cy="([\d.-]+)" r="([\d.]+)"[^>]*>(?:<\/circle>)?<text[^>]*>([\d.]+)</g,
    ),
  ].map(([, x, y, r, name]) => ({ x: Number(x), y: Number(y), r: Number(r), name }));

describe.each(['samples/kestrel-hss.yaml', 'samples/osprey-hsh.yaml', 'samples/heron-ss.yaml'])(
  '%s',
  (file) => {
    it('has every joint of each case with four or more by its number in its step, and no two places touch', async () => {
      const { prepared, steps, shown } = await plansOf(file);
      const { kit, joints } = prepared.circuit;
      // Counted from the description alone: every joint with an end at the case.
      const wanted = kit.parts.flatMap(({ name }) => {
        const own = joints.flatMap(({ from, to }, i) =>
          [from, to].some(({ part, lug }) => lugId(part, lug) === `${name}.case`) ? [i] : [],
        );
        return own.length < 4 ? [] : [own];
      });
      expect(wanted.length).toBeGreaterThan(0);
      expect(shown).toHaveLength(wanted.length);
      shown.forEach(({ picture }, k) => {
        const places = placesIn(picture.svg);
        const names = (wanted[k] ?? []).map((joint) => {
          const step = steps.find((one) => one.joints.includes(joint));
          return `${step?.number}.${(step?.details.findIndex(({ index }) => index === joint) ?? -1) + 1}`;
        });
        expect(places.map(({ name }) => name).sort()).toEqual(names.sort());
        const [, x, y, r] = (
          /<circle cx="([\d.-]+)" cy="([\d.-]+)" r="([\d.]+)"/.exec(picture.svg) ?? []
        ).map(Number);
        places.forEach((one, i) => {
          expect(Math.hypot(one.x - (x ?? 0), one.y - (y ?? 0)) + one.r).toBeLessThan(r ?? 0);
          for (const other of places.slice(i + 1))
            expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(one.r + other.r);
        });
      });
    });
  },
);

// Of a pot lug 1 and lug 3 are as far from the middle of its case: common practice, no source.
it.each([
  ['free-flow', 'en'],
  ['narrow-column', 'en'],
  ['narrow-column', 'de'],
] as const)(
  'stands about the middle of its lugs in %s, in %s, with a switch behind it too',
  async (name, language) => {
    const arrangement = findArrangement(name);
    if (typeof arrangement === 'string') throw new Error(arrangement);
    const kit = inLanguage(await circuitKit('hh-toggle-3-1v1t-split'), language);
    const prepared = await prepare(kit, arrangement, { effort: { steps: 0, seed: 1 } });
    const { joints } = prepared.circuit;
    const pots = kit.parts.filter(hasRoundCase);
    expect(pots.map(({ name }) => name).sort()).toEqual(['tone', 'volume']);
    for (const pot of pots) {
      const own = joints.flatMap(({ from, to }, joint) =>
        [from, to].some(({ part, lug }) => lugId(part, lug) === `${pot.name}.case`)
          ? [{ joint, name: `at ${joint}` }]
          : [],
      );
      expect(own.length).toBeGreaterThan(0);
      const { circles, texts } = read(caseFigure(prepared, pot, own, { alt: '' }).svg);
      const [round] = circles;
      const far = (lug: string): number => {
        const text = texts.find(({ words }) => words === lug);
        if (!round || !text) throw new Error(`no case or no lug ${lug}`);
        return Math.hypot(text.middle - round.x, text.y - round.y);
      };
      // Of letters the line that they stand on is a little below their middle.
      expect(Math.abs(far('1') - far('3'))).toBeLessThan(8);
      expect(far('2')).toBeGreaterThan(round?.r ?? 0);
      expect(far('2')).toBeLessThan(far('1'));
    }
  },
);
