/** What a page's script finds in an inline drawing, and that what it may show there is what is drawn for that state. */
import { readdirSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { lugIdOf } from '../../src/circuit/circuit.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { findArrangement } from '../../src/files/layouts.ts';
import { loadKit } from '../../src/files/load.ts';
import { kinds } from '../../src/parts/index.ts';
import { prepare, render, renderInline } from '../../src/pipeline.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { LOW } from '../random/proof.ts';
import { kits as random } from '../random/some.ts';
import { inState, withoutHooks } from '../tools/inline.ts';
import { placedOnce } from '../tools/placements.ts';
import { described, sample, samples } from '../truth/draw.ts';

const states = (kit: Kit): number => buildCircuit(kit).states.length;

/** Switches that neither samples nor circuits have, one after another on the way of a pickup. */
const others = described({
  kit: 'others',
  title: 'Others',
  parts: {
    p1: { kind: 'single-coil' },
    p2: { kind: 'single-coil' },
    slide: { kind: 'slide', poles: 1 },
    mini: { kind: 'mini-toggle', action: 'on-on-on' },
    own: {
      kind: 'switch',
      lugs: { left: ['A1', 'A0', 'frame'], right: ['B1'] },
      frame: 'frame',
      positions: [[['A0', 'A1']], [['A0', 'B1']], [['A0', 'A1', 'B1']]],
      called: ['up', 'middle', 'down'],
    },
    out: { kind: 'jack' },
  },
  joints: [
    { wire: 'p1.hot > slide.A1' },
    { wire: 'p2.hot > slide.A2' },
    { wire: 'slide.A0 > mini.A1' },
    { wire: 'mini.A1 > mini.A2' },
    { wire: 'mini.A0 > own.A1' },
    { wire: 'own.A1 > own.B1' },
    { wire: 'own.A0 > out.tip' },
    { wire: 'own.frame > out.sleeve' },
    { wire: 'p1.ground > out.sleeve' },
    { wire: 'p2.ground > out.sleeve' },
  ],
});

/** Of the circuits that ship those with a kind of part that none before them has. */
const circuits: Kit[] = [];
for (const name of readdirSync('samples/circuits').filter((one) => one.endsWith('.yaml'))) {
  const { kit } = await loadKit(`samples/circuits/${name}`);
  if (!kit) throw new Error(`${name} is not a kit`);
  const met = new Set(circuits.flatMap(({ parts }) => parts.map(({ kind }) => kind)));
  if (circuits.length === 0 || kit.parts.some(({ kind }) => !met.has(kind))) circuits.push(kit);
}
/** Of random kits some that have not so many states that they take long. */
const few = random
  .map(({ kit }) => kit)
  .filter((kit) => 1 < states(kit) && states(kit) < 16)
  .slice(0, 5);
const kits: readonly Kit[] = [...samples.map(sample), ...circuits, others, ...few];
const all = await Promise.all(
  kits.map(async (kit) => {
    const one = await prepare(kit, undefined, { effort: LOW });
    return { kit, one, svg: renderInline(one, { only: ['drawing'] }) };
  }),
);

/** The parts alone, from the first to where wires begin, whatever the drawing is called. */
const partsOf = (svg: string): string =>
  withoutHooks(/<g id="[^"]*-drawing" .*?>(.*?)<g id="[^"]*-wires">/s.exec(svg)?.[1] ?? '').replace(
    / id="[^"]*?-part-/g,
    ' id="',
  );
interface Found {
  readonly [name: string]: string | undefined;
}
/** Attributes of every element that has one. */
const having = (svg: string, attribute: string): readonly Found[] =>
  [...svg.matchAll(/<\w+((?: [\w:-]+="[^"]*")*)/g)]
    .map(([, text = '']) =>
      Object.fromEntries(
        [...text.matchAll(/ ([\w:-]+)="([^"]*)"/g)].map(([, name = '', value = '']) => [name, value]),
      ),
    )
    .filter((found) => attribute in found);
const listed = (words: string | undefined): readonly number[] =>
  (words ?? '')
    .split(' ')
    .filter((word) => word !== '')
    .map(Number);

describe('an inline drawing', () => {
  it('is looked at with every kind of switch, and a blend', () => {
    const met = new Set(kits.flatMap(({ parts }) => parts.map(({ kind }) => kind as string)));
    const wanted = Object.values(kinds)
      .filter((kind) => (kind.is as readonly string[]).includes('switch'))
      .map(({ kind }) => kind as string);
    expect([...wanted, 'blend'].filter((kind) => !met.has(kind))).toEqual([]);
  });

  it('shows, state by state, contacts, wipers and position marks as a drawing of that state does', () => {
    let compared = 0;
    for (const { kit, one, svg } of all) {
      for (const [i] of one.circuit.states.entries()) {
        const [shown, drawn] = [inState(svg, i + 1), renderInline(one, { state: i, only: ['drawing'] })];
        expect(shown, kit.id).not.toContain('data-shown');
        expect(drawn, kit.id).not.toContain('data-shown');
        expect(partsOf(shown).length).toBeGreaterThan(500);
        expect(partsOf(shown) === partsOf(drawn), `${kit.id}, state ${i + 1}`).toBe(true);
        compared++;
      }
      // As it comes, and as a page without a script shows it, it is that of the first state.
      const displayed = svg
        .replace(/<g data-shown="[^"]*" display="none">((?:(?!<\/?g\b).)*)<\/g>/gs, '')
        .replace(/<g data-shown="[^"]*">((?:(?!<\/?g\b).)*)<\/g>/gs, '$1');
      expect(partsOf(displayed)).toBe(partsOf(inState(svg, 1)));
    }
    expect(compared).toBeGreaterThan(80);
  }, 120_000);

  it('another state’s groups would be noticed', () => {
    const [{ one, svg } = { one: undefined, svg: '' }] = all.filter(({ kit }) => kit.id === 'kestrel-hss');
    expect(one && partsOf(inState(svg, 2))).not.toBe(one && partsOf(renderInline(one, { state: 2 })));
    expect(one && partsOf(inState(svg, 3))).toBe(one && partsOf(renderInline(one, { state: 2 })));
  });

  it('says of each joint the states that it is drawn live in, and of each pickup those that it sounds in', () => {
    for (const { kit, one, svg } of all) {
      const [joints, parts] = [having(svg, 'data-joint'), having(svg, 'data-part')];
      for (const [i, state] of one.circuit.states.entries()) {
        const drawn = renderInline(one, { only: ['drawing'], state: i });
        for (const joint of joints) {
          const group = new RegExp(`data-joint="${joint['data-joint']}".*?</g>`, 's').exec(drawn)?.[0] ?? '';
          expect(group, kit.id).not.toBe('');
          expect(listed(joint['data-live']).includes(i + 1), `${kit.id}, ${joint['data-joint']}`).toBe(
            !group.includes('sl-stroke-pale'),
          );
        }
        const sounding = parts
          .filter((found) => listed(found['data-live']).includes(i + 1))
          .map((found) => found['data-part'] ?? '');
        expect([...sounding].sort(), kit.id).toEqual([...state.sounding].sort());
      }
    }
  }, 240_000);

  it('names every joint, its two lugs and the net they are on; two lugs have one net where joints connect them', () => {
    for (const { kit, one, svg } of all) {
      const joints = having(svg, 'data-joint');
      expect(
        joints
          .map((found) => [Number(found['data-joint']), found['data-from'], found['data-to']])
          .sort(([a], [b]) => Number(a) - Number(b)),
      ).toEqual(one.circuit.joints.map(({ from, to }, i) => [i + 1, lugIdOf(from), lugIdOf(to)]));
      // Joined together by the drawing's own joints, without the graph that the numbers come from.
      const heads = new Map<string, string>();
      const headOf = (lug: string): string => {
        const next = heads.get(lug);
        return next === undefined || next === lug ? lug : headOf(next);
      };
      for (const found of joints) heads.set(headOf(found['data-from'] ?? ''), headOf(found['data-to'] ?? ''));
      const nets = new Map<string, string>();
      for (const found of [
        ...having(svg, 'data-lug').map((lug) => [lug['data-lug'], lug['data-net']] as const),
        ...joints.flatMap((joint) => [
          [joint['data-from'], joint['data-net']] as const,
          [joint['data-to'], joint['data-net']] as const,
        ]),
      ]) {
        const [lug = '', net = ''] = found;
        expect(net).toMatch(/^[1-9]\d*$/);
        const head = headOf(lug);
        expect(nets.get(head) ?? net, `${kit.id}, ${lug}`).toBe(net);
        nets.set(head, net);
      }
      expect(new Set(nets.values()).size, kit.id).toBe(nets.size);
      const chips = new Set(having(svg, 'data-chip').map((found) => Number(found['data-chip'])));
      expect(
        [...chips].sort((a, b) => a - b),
        kit.id,
      ).toEqual(one.circuit.joints.flatMap(({ colour }, i) => (colour === undefined ? [] : [i + 1])));
      // A static drawing, and what it is made into for other uses, has none of this.
      expect(render(one, { only: ['drawing'] }).svg).not.toMatch(/ data-(?!revision)|sl-halo|display="none"/);
    }
  }, 240_000);
});

it('of the whole HSS sheet, and of its wiring alone, an inline drawing is at most 12 kB compressed', async () => {
  const kit = sample('kestrel-hss');
  const arrangement = findArrangement(kit.arrangement);
  if (typeof arrangement === 'string') throw new Error(arrangement);
  const one = await prepare(kit, arrangement, placedOnce);
  for (const only of [[], ['drawing'] as const])
    expect(gzipSync(renderInline(one, { only }), { level: 9 }).length).toBeLessThanOrEqual(12 * 1024);
}, 120_000);
