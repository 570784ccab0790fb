/** A drawing against its kit: parts, lugs, labels, joints and colours, each taken away, added or changed by itself. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import { readKit } from '../../src/describe/read.ts';
import type { Aspect, Prepared } from '../../src/draw/compose.ts';
import { readDrawing } from '../../src/inspect/drawing.ts';
import type { Finding } from '../../src/inspect/finding.ts';
import { formatFinding, inspect } from '../../src/inspect/index.ts';
import { jointFindings } from '../../src/inspect/rules/joints.ts';
import { solve } from '../../src/inspect/solved.ts';
import { prepare, render } from '../../src/pipeline.ts';

const TEXT = `kit: robin
title: S, one volume, one tone
parts:
  neck: { kind: single-coil, resistance: 5.7k }
  volume: { kind: pot, value: 250k, taper: log }
  tone: { kind: pot, value: 250k, taper: log }
  cap: { kind: capacitor, value: 22n }
  bleed: { kind: resistor, value: 220k }
  other: { kind: resistor, value: 470k }
  output: { kind: jack }
joints:
  - bend: volume.1 > volume.case
  - { wire: neck.ground > volume.case, colour: BK }
  - { wire: tone.case > volume.case, colour: BK }
  - { wire: output.sleeve > volume.case, colour: BK }
  - { wire: neck.hot > volume.3, colour: WH }
  - { leg: cap.1 > tone.3 }
  - { leg: cap.2 > tone.case }
  - { wire: tone.2 > volume.3, colour: YE }
  - { leg: bleed.1 > volume.3 }
  - { leg: bleed.2 > volume.2 }
  - { wire: volume.2 > output.tip, colour: RD }
  - { leg: other.1 > output.tip }
  - { leg: other.2 > output.sleeve }
`;

let kit: Kit;
let prepared: Prepared;
let svg = '';
const drawn = (aspect: Aspect = {}): string => render(prepared, aspect).svg;
beforeAll(async () => {
  const read = readKit(TEXT, 'robin.yaml');
  if (!read.kit) throw new Error(read.problems.map(({ code }) => code).join());
  kit = read.kit;
  prepared = await prepare(kit, undefined, { effort: { steps: 0, seed: 1 } });
  svg = drawn();
}, 120_000);

const print = ({ rule, message }: Finding): string => `${rule}: ${message}`;
/** What is found of parts and joints. */
function said(text: string, of = kit): readonly string[] {
  const drawing = readDrawing(text);
  return 'rule' in drawing ? [drawing.message] : jointFindings(drawing, solve(of)).map(print);
}
/** What is found in whatever way. */
const all = (text: string): readonly string[] => inspect(text, kit).map(print);
function changed(
  pattern: RegExp | string,
  by: string | ((...found: string[]) => string),
  text = svg,
): string {
  const now = typeof by === 'string' ? text.replace(pattern, by) : text.replace(pattern, by);
  expect(now, `${pattern} is in the drawing`).not.toBe(text);
  return now;
}
const groupOf = (name: string): string =>
  new RegExp(`<g id="robin-part-${name}"[^>]*>.*?</g>`, 's').exec(svg)?.[0] ?? '';
const inPart = (name: string, pattern: RegExp | string, by: string): string =>
  svg.replace(groupOf(name), changed(pattern, by, groupOf(name)));

const PAGE = { width: 297, height: 210, margin: 8 };
it.each([
  {},
  { step: 3 },
  { state: 0, theme: 'print' },
  { view: 'component-side', theme: 'dark' },
  { page: PAGE },
  { page: PAGE, step: 3 },
  { page: PAGE, step: 2, view: 'component-side', theme: 'print' },
] as const satisfies readonly Aspect[])('as drawn with %j nothing is found', (aspect) => {
  expect(inspect(drawn(aspect), kit).map(formatFinding)).toEqual([]);
});

describe('components, whose legs look alike', () => {
  /** The kit drawn with its components the other way round. */
  const turned = (): string => {
    const parts = prepared.placement.parts.map((placed) =>
      ['cap', 'bleed', 'other'].includes(placed.part.name)
        ? { ...placed, frame: { ...placed.frame, mirror: !placed.frame.mirror } }
        : placed,
    );
    return render({ ...prepared, placement: { ...prepared.placement, parts } }, {}).svg;
  };
  it('may lie either way round', () => {
    expect(turned()).not.toBe(svg);
    expect(inspect(turned(), kit).map(formatFinding)).toEqual([]);
  });
  it('of several that do, only the one that was changed is told', () => {
    for (const text of [svg, turned()])
      for (const name of ['bleed', 'other']) {
        const changed = text.replace(new RegExp(`<g id="robin-part-${name}"[^>]*>.*?</g>`, 's'), (group) =>
          group
            .replace(/(<rect[^>]*class="sl-body"[^>]*fill=")#[\da-f]{6}/, '$1#123456')
            .replace(/(<rect[^>]*fill=")#[\da-f]{6}("[^>]*class="sl-body")/, '$1#123456$2'),
        );
        expect(changed).not.toBe(text);
        const found = inspect(changed, kit).filter(({ rule }) => rule === 'differs-from-kit');
        expect([...new Set(found.map(({ message }) => message.split(':')[0]))]).toEqual([`“part-${name}”`]);
      }
  });
});

describe('parts', () => {
  it('one that is described and not drawn', () => {
    const found = said(svg.replace(groupOf('output'), ''));
    expect(found).toContain('part: “output” is described and not drawn');
    expect(found.filter((one) => one.startsWith('part:'))).toHaveLength(1);
  });
  it('one that is drawn and not described', () => {
    const found = said(
      changed('</svg>', `${groupOf('output').replace('robin-part-output', 'robin-part-stranger')}</svg>`),
    );
    expect(found).toContain('part: “stranger” is drawn and not described');
    expect(found.filter((one) => one.startsWith('part:'))).toHaveLength(1);
  });
  it('a lug of another name is one missing and one too many', () => {
    const found = said(inPart('output', '>tip</text>', '>top</text>'));
    expect(found).toContain('part: “output” shows no lug tip');
    expect(found).toContain('part: “output” shows a lug top that it has not');
    const long = said(inPart('output', '>tip</text>', `>${'x'.repeat(99)}</text>`)).join('\n');
    expect(long).toContain(`shows a lug ${'x'.repeat(40)} that it has not`);
  });
  it('a case that is not there, and one that should not be', () => {
    expect(said(inPart('tone', 'class="sl-case"', 'class="sl-body"'))).toContain(
      'part: “tone” shows no lug case',
    );
    const more = groupOf('tone').replace(/(<circle[^>]*class="sl-case"[^>]*><\/circle>)/, '$1$1');
    expect(said(svg.replace(groupOf('tone'), more))).toContain('part: “tone” shows a case that it has not');
    expect(
      said(inPart('output', /<\/g>$/, '<circle cx="1" cy="1" r="1" class="sl-case"></circle></g>')),
    ).toContain('part: “output” shows a case that it has not');
  });
  it('a leg more or less', () => {
    const leg = /<circle[^>]*class="sl-leg-end"[^>]*><\/circle>/;
    expect(said(inPart('cap', leg, ''))).toContain('part: “cap” shows 1 legs in place of 2');
    const more = groupOf('cap').replace(leg, (all) => all + all);
    expect(said(svg.replace(groupOf('cap'), more))).toContain('part: “cap” shows 3 legs in place of 2');
  });
  it('another label or value, with what is drawn and what is described, each cut when it is long', () => {
    expect(said(inPart('volume', '>Volume<', '>Loudness<'))).toContain(
      'part: “volume” has “Loudness 250 kΩ log”; described is “Volume 250 kΩ log”',
    );
    expect(said(inPart('volume', '>Volume<', `>${'x'.repeat(99)}<`)).join('\n')).toContain(
      `has “${'x'.repeat(80)}”;`,
    );
    // The same letters, in two pieces, are the same words.
    expect(said(inPart('volume', '>Volume<', '>Vol ume<'))).toEqual([]);
  });
  it('a lug that is off its place by more than a unit, with its name', () => {
    const moved = (by: number): readonly string[] =>
      all(
        svg.replace(
          groupOf('output'),
          groupOf('output').replace(
            /(<rect x=")([\d.]+)("[^>]*class="sl-tag"[^>]*><\/rect><text x=")([\d.]+)/,
            (_, a, x, b, t) => `${a}${Number(x) + by}${b}${Number(t) + by}`,
          ),
        ),
      );
    expect(moved(0)).toEqual([]);
    expect(moved(3)).toContain('part: “output” has its lugs or its body out of place');
    expect(moved(-3)).toContain('part: “output” has its lugs or its body out of place');
    expect(moved(0.9)).not.toContain('part: “output” has its lugs or its body out of place');
  });
  it('what is printed on a body, wherever among its words it is painted', () => {
    const printed = /<text[^>]*>([^<]*)<\/text>/.exec(groupOf('bleed'))?.[1] ?? '';
    expect(printed).not.toBe('');
    expect(said(inPart('bleed', `>${printed}<`, '>999<')).join('\n')).toContain('“bleed” has “');
  });
});

describe('joints', () => {
  const wire = (n: number): string =>
    new RegExp(`<g id="robin-joint-${n}"[^>]*>.*?</g>`, 's').exec(svg)?.[0] ?? '';
  it('each that is taken away is missed, and no other', () => {
    kit.joints.forEach(({ from, to }, i) => {
      const key = [`${from.part}.${from.lug}`, `${to.part}.${to.lug}`].sort().join(' > ');
      const found = said(svg.replace(wire(i + 1), '')).filter((one) => one.startsWith('joint'));
      expect(found, key).toEqual([`joint-missing: ${key} is in the kit but not in the drawing`]);
    });
  });
  it('each that is drawn twice is one too many', () => {
    kit.joints.forEach(({ from, to }, i) => {
      const key = [`${from.part}.${from.lug}`, `${to.part}.${to.lug}`].sort().join(' > ');
      const again = wire(i + 1).replace(`robin-joint-${i + 1}"`, 'robin-joint-99"');
      const found = said(svg.replace(wire(i + 1), (all) => all + again)).filter((one) =>
        one.startsWith('joint'),
      );
      expect(found, key).toEqual([`joint-extra: ${key} is in the drawing but not in the kit`]);
    });
  });
  it('up to a step those of later steps are too many, and those of earlier ones missed', async () => {
    const step = drawn({ step: 3 });
    expect(
      said(step.replaceAll('robin-step-3', 'robin-step-2')).some((one) => one.startsWith('joint-extra')),
    ).toBe(true);
    expect(
      said(step.replaceAll('robin-step-3', 'robin-step-4')).some((one) => one.startsWith('joint-missing')),
    ).toBe(true);
    expect(
      said(step.replaceAll('robin-step-3', 'robin')).some((one) => one.startsWith('joint-missing')),
    ).toBe(true);
  });
  it('a step or a position that the kit does not have is no drawing of it', async () => {
    const aspect = (name: string): readonly string[] => all(svg.replaceAll('"robin-', `"robin-${name}-`));
    expect(aspect('position-1').filter((one) => one.startsWith('unknown'))).toEqual([]);
    for (const name of ['position-0', 'position-2', 'step-0', 'step-99', 'sideways'])
      expect(
        aspect(name).filter((one) => one.startsWith('unknown')),
        name,
      ).toHaveLength(1);
  });
});

describe('colours', () => {
  const first = (): string => /robin-colours">.*?<text[^>]*>([A-Z]+)</s.exec(svg)?.[1] ?? '';
  it('a code on a wire that is described with another is told with both', () => {
    const found = said(changed(/(robin-colours">.*?<text[^>]*>)[A-Z]+</s, '$1PK<'));
    expect(found.filter((one) => one.startsWith('colour'))).toEqual([
      expect.stringMatching(new RegExp(`the wire from .* has the colour code “PK”; the kit says ${first()}`)),
    ]);
  });
  it('a code on a wire that is described without is told so', () => {
    const read = readKit(TEXT.replaceAll(/, colour: [A-Z]+/g, ''), 'robin.yaml');
    if (!read.kit) throw new Error('not read');
    const found = said(svg, read.kit).filter((one) => one.startsWith('colour'));
    // One for each code on the drawing, of which a long wire has two.
    const codes = /robin-colours">(.*?)<\/g>/s.exec(svg)?.[1]?.match(/<text/g)?.length ?? 0;
    expect(codes).toBeGreaterThanOrEqual(6);
    expect(found).toHaveLength(codes);
    for (const one of found) expect(one).toContain('; the kit says none');
  });
});
