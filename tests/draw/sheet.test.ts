/** What a whole sheet is made of, what lies over what, and what each of a kit's drawings shows of it. */
import { beforeAll, describe, expect, it } from 'vitest';
import { liveJoints } from '../../src/annotate/live.ts';
import { stepsOf } from '../../src/annotate/steps.ts';
import type { Aspect, Prepared } from '../../src/draw/compose.ts';
import { sheetOf } from '../../src/draw/compose.ts';
import { drawingName } from '../../src/draw/drawing-name.ts';
import { sheetToSvg } from '../../src/draw/headless.ts';
import type { Sheet } from '../../src/draw/sheet.ts';
import { themes } from '../../src/draw/theme.ts';
import { contactsOf, isPickup } from '../../src/parts/index.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { toSheet } from '../../src/place/frame.ts';
import { flipped } from '../../src/place/view.ts';
import { makeKit } from '../analyse/kits.ts';
import { sample } from '../truth/draw.ts';
import { read } from '../truth/reader.ts';

let kestrel: Prepared;
let heron: Prepared;
beforeAll(async () => {
  const effort = { steps: 0, seed: 1 };
  kestrel = await prepare(sample('kestrel-hss'), undefined, { effort });
  heron = await prepare(sample('heron-ss'), undefined, { effort });
});

const groupsOf = (svg: string): readonly string[] =>
  [...svg.matchAll(/<g id="([^"]*)"/g)].map(([, id = '']) => id);
const drawn = (sheet: Sheet, theme?: (typeof themes)[keyof typeof themes]) => {
  const svg = sheetToSvg(sheet, theme);
  return { svg, groups: groupsOf(svg), ...read(svg) };
};

describe('what lies over what', () => {
  it('marks lie under parts, these under wires, and these under their colours', () => {
    for (const prepared of [kestrel, heron]) {
      const steps = stepsOf(prepared.circuit);
      const parts = prepared.circuit.kit.parts.map(({ name }) => name);
      for (const aspect of [{}, { state: 0 }, { step: 1 }, { step: steps.length }] as const) {
        const sheet = sheetOf(prepared, aspect);
        const { id } = sheet;
        const { groups } = drawn(sheet);
        const joints = groups.filter((group) => group.startsWith(`${id}-joint-`));
        const isStep = 'step' in aspect;
        expect(groups.filter((group) => !joints.includes(group))).toEqual([
          `${id}-head`,
          `${id}-key`,
          `${id}-drawing`,
          ...(isStep ? [`${id}-marks`] : []),
          ...parts.map((name) => `${id}-part-${name}`),
          `${id}-wires`,
          `${id}-colours`,
          ...(isStep ? [`${id}-work`] : prepared.circuit.states.map((_, i) => `${id}-position-${i + 1}`)),
          `${id}-revision`,
        ]);
        const there =
          sheet.emphasis?.filter((one) => one !== 'absent').length ?? prepared.circuit.joints.length;
        expect(joints).toHaveLength(there);
        expect(groups.indexOf(joints[0] ?? '')).toBe(groups.indexOf(`${id}-wires`) + 1);
      }
    }
  });

  it('an SVG has the names it needs and no other, and ends with a line’s end', () => {
    const svg = sheetToSvg(sheetOf(kestrel));
    expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www.w3.org\/2000\/svg"/);
    expect(svg).not.toMatch(/xmlns:/);
    expect(svg.endsWith('</svg>\n')).toBe(true);
    // Drawn again, in the same process or not, it is the same.
    sheetToSvg(sheetOf(heron));
    expect(sheetToSvg(sheetOf(kestrel))).toBe(svg);
  });

  it('is in the light theme where none is given', () => {
    const sheet = sheetOf(kestrel);
    expect(sheetToSvg(sheet)).toBe(sheetToSvg(sheet, themes.light));
    for (const theme of [themes.dark, themes.print])
      expect(drawn(sheet, theme).rects[0]?.fill).toBe(theme.paper);
  });
});

describe('the sheet', () => {
  it('has its cards in rows below the drawing, each in its place, and what they say below them', () => {
    const sheet = sheetOf(kestrel);
    const { rects, texts, cards } = drawn(sheet);
    const grounds = rects.filter(({ group, w, h }) => /-position-\d+$/.test(group) && w > 150 && h > 100);
    expect(grounds).toHaveLength(5);
    expect(cards.map(({ badge }) => badge)).toEqual(['1', '2', '3', '4', '5']);
    const drawing = Math.max(
      ...rects.filter(({ group }) => group.includes('-part-')).map(({ y, h }) => y + h),
    );
    grounds.forEach((a, i) => {
      expect(a.y).toBeGreaterThan(drawing);
      grounds.slice(i + 1).forEach((b) => {
        expect(b.y > a.y || (b.y === a.y && b.x >= a.x + a.w + 14)).toBe(true);
      });
      const below = grounds.find(({ x, y }) => x === a.x && y > a.y);
      // Level at their tops, the next row below the highest.
      const row = Math.max(...grounds.filter(({ y }) => y === a.y).map(({ h }) => h));
      if (below) expect(below.y - a.y - row).toBe(14);
    });
    const paper = rects[0];
    const legend = texts.filter(({ group, y }) => group === '' && y > (grounds.at(-1)?.y ?? 0));
    expect(legend.map(({ words }) => words).join(' ')).toBe(sheet.legend.join(' '));
    legend.forEach((line, i) => {
      expect(line.x).toBe(24);
      expect(line.y).toBeGreaterThan(Math.max(...grounds.map(({ y, h }) => y + h)));
      expect(line.y).toBeLessThan((paper?.h ?? 0) - 20);
      if (i > 0) expect(line.y - (legend[i - 1]?.y ?? 0)).toBeCloseTo(18, 6);
    });
  });

  it('of a position has the edge of its card in ink, and of no other', () => {
    const edges = (aspect: Aspect) =>
      drawn(sheetOf(kestrel, aspect))
        .rects.filter(({ group, w, h }) => /-position-\d+$/.test(group) && w > 150 && h > 100)
        .map(({ stroke }) => stroke === themes.light.ink);
    expect(edges({})).toEqual([false, false, false, false, false]);
    expect(edges({ state: 3 })).toEqual([false, false, false, true, false]);
    expect(edges({ state: 0 })).toEqual([true, false, false, false, false]);
  });

  it('of a step has no cards and nothing of what they say, but a line of work for each joint', () => {
    const steps = stepsOf(kestrel.circuit);
    for (const { number, lines, joints } of steps) {
      const sheet = sheetOf(kestrel, { step: number });
      const { cards, texts, marked } = drawn(sheet);
      expect(cards).toEqual([]);
      for (const sentence of sheet.legend) expect(texts.map(({ words }) => words)).not.toContain(sentence);
      const work = texts.filter(({ group }) => group.endsWith('-work')).map(({ words }) => words);
      expect(work).toEqual(lines);
      expect(marked).toHaveLength(joints.length);
    }
  });

  it('says in its key what is on it, no wire that is not there, and unused lugs where there are any', () => {
    const [whole, first] = [drawn(sheetOf(kestrel)), drawn(sheetOf(kestrel, { step: 1 }))];
    const words = ({ key }: typeof whole) => key.map((entry) => entry.words);
    expect(words(first).length).toBeLessThan(words(whole).length);
    const joined = new Set(
      kestrel.circuit.joints.flatMap(({ from, to }) => [`${from.part}.${from.lug}`, `${to.part}.${to.lug}`]),
    );
    const unused = ({ placement }: Sheet): boolean =>
      placement.parts.some(({ part, outline }) =>
        outline.lugs.some(({ lug, surface }) => !surface && !joined.has(`${part.name}.${lug}`)),
      );
    expect(unused(sheetOf(kestrel))).toBe(true);
    expect(words(whole)).toContain('unused lug');
    const codes = new Set(kestrel.circuit.joints.flatMap(({ colour }) => colour ?? []));
    expect(whole.key.flatMap(({ code }) => code ?? []).sort()).toEqual([...codes].sort());
    const early = new Set(
      stepsOf(kestrel.circuit)
        .slice(0, 1)
        .flatMap(({ joints }) => joints.flatMap((i) => kestrel.circuit.joints[i]?.colour ?? [])),
    );
    expect(first.key.flatMap(({ code }) => code ?? []).sort()).toEqual([...early].sort());
  });

  it('has no unused lug where every lug is in use, whatever of a case', async () => {
    const kit = makeKit({
      parts: { neck: { kind: 'single-coil' }, volume: { kind: 'pot', value: '250k' }, out: { kind: 'jack' } },
      joints: [
        'neck.hot > volume.3',
        'volume.2 > out.tip',
        'volume.1 > out.sleeve',
        'neck.ground > out.sleeve',
      ],
    });
    const prepared = await prepare(kit, undefined, { effort: { steps: 0, seed: 1 } });
    const { key, texts, cards } = drawn(sheetOf(prepared));
    expect(key.map(({ words }) => words)).not.toContain('unused lug');
    // Without a switch there is one state, one card, and nothing to number.
    expect(cards).toHaveLength(1);
    expect(cards[0]?.badge).toBe('');
    expect(texts.map(({ words }) => words)).not.toContain('•');
  });

  it('has legs drawn whole where several joints meet, and lugs hollow that none is joined to', () => {
    for (const prepared of [kestrel, heron]) {
      const { svg } = drawn(sheetOf(prepared));
      const ends = prepared.circuit.joints.flatMap(({ from, to }) => [
        `${from.part}.${from.lug}`,
        `${to.part}.${to.lug}`,
      ]);
      const tags = prepared.placement.parts
        .filter(({ part }) => part.kind !== 'resistor' && part.kind !== 'capacitor')
        .flatMap(({ part, outline }) =>
          outline.lugs
            .filter(({ surface }) => !surface)
            .map(({ lug }) => ends.includes(`${part.name}.${lug}`)),
        );
      // A leg ends where its own line begins, or where several joints meet at its corner.
      const legs = prepared.placement.parts
        .filter(({ part }) => part.kind === 'resistor' || part.kind === 'capacitor')
        .flatMap(({ part, outline, frame }) =>
          outline.lugs.map(({ lug, tag, ports }) => {
            const several = ends.filter((end) => end === `${part.name}.${lug}`).length > 1;
            const corner = several ? ports[0]?.via : undefined;
            return toSheet(frame, corner ?? { x: tag.x + tag.width / 2, y: tag.y + tag.height / 2 });
          }),
        );
      const drawnLegs = [...svg.matchAll(/<circle cx="([-\d.]+)" cy="([-\d.]+)"[^>]*class="sl-leg-end"/g)];
      expect(drawnLegs.map(([, x, y]) => ({ x: Number(x), y: Number(y) }))).toEqual(legs);
      const drawnTags = [...svg.matchAll(/class="sl-tag"[^>]*>/g)].map(([tag]) => !tag.includes('dasharray'));
      expect(drawnTags).toEqual(tags);
    }
  });
});

describe('each of a kit’s drawings', () => {
  it('has a name that says what it is other than the usual', () => {
    const { circuit, hand } = kestrel;
    const other = hand === 'left' ? 'right' : 'left';
    const { view } = circuit.kit;
    const behind = view === 'solder-side' ? 'component-side' : 'solder-side';
    const named = (aspect: Aspect, by = hand) => drawingName(circuit, by, aspect);
    expect(named({})).toBe('kestrel-hss');
    expect(named({ view, theme: 'light' })).toBe('kestrel-hss');
    expect(named({ view: behind })).toBe(`kestrel-hss-${behind}`);
    expect(named({}, other)).toBe(`kestrel-hss-${other}-handed`);
    expect(named({ state: 0 })).toBe('kestrel-hss-position-1');
    expect(named({ step: 2 })).toBe('kestrel-hss-step-2');
    expect(named({ theme: 'print' })).toBe('kestrel-hss-print');
    expect(named({ view: behind, state: 4, theme: 'dark' }, other)).toBe(
      `kestrel-hss-${behind}-${other}-handed-position-5-dark`,
    );
    expect(sheetOf(kestrel, { state: 1 }).id).toBe('kestrel-hss-position-2');
  });

  it('is seen from the side that is asked for, else from the kit’s', () => {
    const { placement, circuit } = kestrel;
    const mirrored = flipped(placement);
    expect(sheetOf(kestrel, { view: 'solder-side' }).placement).toEqual(placement);
    expect(sheetOf(kestrel, { view: 'component-side' }).placement).toEqual(mirrored);
    for (const view of ['solder-side', 'component-side'] as const) {
      const kit = { ...circuit.kit, view };
      const sheet = sheetOf({ ...kestrel, circuit: { ...circuit, kit } });
      expect(sheet.placement).toEqual(view === 'solder-side' ? placement : mirrored);
    }
  });

  it('of a position: its contacts closed, what carries its signal plain, the rest pale', () => {
    for (const prepared of [kestrel, heron]) {
      const { circuit } = prepared;
      circuit.states.forEach((state, i) => {
        const sheet = sheetOf(prepared, { state: i });
        const live = liveJoints(circuit, state);
        expect(sheet.emphasis).toEqual(circuit.joints.map((_, k) => (live.has(k) ? 'plain' : 'pale')));
        expect(live.size).toBeGreaterThan(0);
        expect(sheet.shownState).toBe(i);
        expect(sheet.checklist).toBeUndefined();
        for (const part of circuit.kit.parts) {
          const joins = contactsOf(part).find(
            ({ position }) => position === state.positions[part.name],
          )?.joins;
          expect(sheet.closed.get(part.name)).toEqual(joins);
        }
        expect(sheet.headLines.some((line) => line.includes('selected'))).toBe(true);
      });
      // The whole shows the first position.
      expect(sheetOf(prepared).closed).toEqual(sheetOf(prepared, { state: 0 }).closed);
    }
  });

  it('of a position says in its title, for those who cannot see it, which one', () => {
    expect(sheetOf(kestrel, { state: 1 }).setting).toBe('Selector in position 2');
    expect('setting' in sheetOf(kestrel)).toBe(false);
    const { svg } = render(kestrel, { state: 1 });
    expect(svg).toContain(`${kestrel.circuit.kit.title}; Selector in position 2</title>`);
    // The heading that is seen has its line below.
    expect(svg).toContain(`>${kestrel.circuit.kit.title}</text>`);
  });

  it('of a position or a step that the kit has not is the whole', () => {
    for (const aspect of [{ state: 99 }, { step: 99 }]) {
      const { id: _, ...none } = sheetOf(kestrel, aspect);
      const { id: __, ...whole } = sheetOf(kestrel);
      expect(none).toEqual(whole);
    }
  });

  it('of a step: its joints new, those before plain, those after not there', () => {
    const { circuit } = kestrel;
    const steps = stepsOf(circuit);
    steps.forEach(({ number, joints, title }) => {
      const sheet = sheetOf(kestrel, { step: number });
      circuit.joints.forEach((_, i) => {
        const when = steps.find((one) => one.joints.includes(i))?.number ?? 0;
        const wanted = when > number ? 'absent' : joints.includes(i) ? 'new' : 'plain';
        expect(sheet.emphasis?.[i]).toBe(wanted);
      });
      expect(sheet.shownState).toBeUndefined();
      expect(sheet.headLines.join(' ')).toContain(
        `Step ${number} of ${steps.length}: ${title.toLowerCase()}`,
      );
      expect(sheet.headLines).toHaveLength(2);
    });
  });

  it('of the whole: nothing stands out, no page, a tint for each pickup', () => {
    const sheet = sheetOf(kestrel);
    for (const key of ['emphasis', 'shown', 'work', 'page']) expect(key in sheet).toBe(false);
    expect(sheet.headLines).toHaveLength(2);
    const page = { width: 210, height: 297, margin: 10 };
    expect(sheetOf(kestrel, { page }).page).toEqual(page);
    const pickups = kestrel.circuit.kit.parts.filter(isPickup).map(({ name }) => name);
    expect([...sheet.tints.keys()]).toEqual(pickups);
    expect([...sheet.pickups.values()].every((words) => words.endsWith(', hot'))).toBe(true);
    expect(sheet.pickups.size).toBe(pickups.length);
    // A print has no colours for its line to speak of.
    expect(sheetOf(kestrel, { theme: 'print' }).headLines).not.toEqual(sheet.headLines);
    expect(sheetOf(kestrel, { theme: 'dark' }).headLines).toEqual(sheet.headLines);
  });
});
