/** Pieces of step drawings that explain its marks show those marks, in the size of the steps: read back from the pictures alone. */
import { expect, it } from 'vitest';
import { stepsOf } from '../../../src/annotate/steps.ts';
import { must } from '../../../src/common/must.ts';
import { stepFigures } from '../../../src/draw/leaflet/step-figure.ts';
import { read } from '../../truth/reader.ts';
import { placed } from './kits.ts';

const scaleOf = ({ svg, width }: { svg: string; width: number }): number =>
  width / Number(/viewBox="\S+ \S+ (\S+)/.exec(svg)?.[1]);

it.each(['kestrel-hss', 'osprey-hsh', 'wren-hs'])(
  '%s: each mark is seen whole in its sample',
  async (name) => {
    const { circuit, ...rest } = await placed(name);
    const { figures, samples } = stepFigures(
      { circuit, ...rest },
      stepsOf(circuit),
      { width: 124, height: 83.7 },
      { altOf: () => 'a step', sample: { box: { width: 44, height: 24 }, alt: (of) => of } },
    );
    expect(Object.keys(samples)).toEqual(['lines', 'aside', 'soldered', 'hooked', 'gathered']);
    for (const [of, sample] of Object.entries(samples)) {
      expect(scaleOf(sample) / scaleOf(must(figures[0], 'step'))).toBeCloseTo(1, 2);
      const [x = 0, y = 0, w = 0, h = 0] = (/viewBox="([^"]*)"/.exec(sample.svg)?.[1] ?? '')
        .split(' ')
        .map(Number);
      const { circles, paths, rects } = read(sample.svg);
      const inView = (left: number, top: number, right: number, bottom: number): boolean =>
        left >= x && top >= y && right <= x + w && bottom <= y + h;
      if (of === 'lines') {
        const codes = rects.filter(({ group }) => /-colour-\d+$/.test(group));
        expect(codes.some((code) => inView(code.x, code.y, code.x + code.w, code.y + code.h))).toBe(true);
        continue;
      }
      if (of === 'gathered') {
        // The same ring as one that is only hooked, with a dot of ink in it.
        const dots = circles.filter(({ group, fill, x: cx, y: cy, r }) => {
          const joint = /-made-(\d+)$/.exec(group)?.[1];
          const ring = joint !== undefined && new RegExp(`-hook-${joint}-(from|to)"`).test(sample.svg);
          return ring && fill === '#1d2b36' && inView(cx - r, cy - r, cx + r, cy + r);
        });
        expect(dots.length).toBeGreaterThan(0);
        continue;
      }
      // The largest circle of an end is its number's disc.
      const ends = [...new Set(circles.map(({ group }) => group))].filter((group) => /-end-\d+-/.test(group));
      const shown = ends.filter((group) => {
        const disc = must(circles.filter((one) => one.group === group).sort((a, b) => b.r - a.r)[0], 'disc');
        const leader = paths.some((path) => path.group === group);
        const [, joint, end] = /-end-(\d+)-(\w+)$/.exec(group) ?? [];
        const hooked = sample.svg.includes(`-hook-${joint}-${end}"`);
        const wanted = of === 'hooked' ? hooked : !hooked && leader === (of === 'aside');
        return wanted && inView(disc.x - disc.r, disc.y - disc.r, disc.x + disc.r, disc.y + disc.r);
      });
      expect([of, shown.length]).toEqual([of, expect.toSatisfy((n: number) => n > 0)]);
    }
  },
);
