/** Arrangements: parts sit where the file says, in the order the kit names them; what a file may say has limits. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { PITCH } from '../../src/common/geometry.ts';
import { arrangementNames } from '../../src/files/layouts.ts';
import { is, outlineOf } from '../../src/parts/index.ts';
import type { Trait } from '../../src/parts/kind.ts';
import { draw, prepare } from '../../src/pipeline.ts';
import { arrangementSchema, freeFlow } from '../../src/place/arrangement.ts';
import type { GridPart } from '../../src/place/placement.ts';
import { bounds } from '../../src/place/wiring.ts';
import { makeKit, sampleCircuit } from '../analyse/kits.ts';

interface Seat {
  readonly seat: Trait;
  readonly at: readonly [number, number];
  readonly step?: readonly [number, number];
  readonly wrap?: { readonly after: number; readonly step: readonly [number, number] };
  readonly turn?: number;
}
const written = (name: string): { readonly seats: readonly Seat[] } =>
  parse(readFileSync(`layouts/${name}.yaml`, 'utf8'));

describe.each(arrangementNames().filter((name) => written(name).seats.length > 0))('%s', (name) => {
  it.each(['kestrel-hss', 'osprey-hsh'])('seats the parts of %s by its columns and rows', async (id) => {
    const { kit } = sampleCircuit(id);
    const { placement } = await prepare(kit, arrangementSchema.parse(written(name)), {
      effort: { steps: 0, seed: 1 },
    });
    const wanted = written(name).seats.flatMap(({ seat, at, step = [0, 0], wrap, turn = 0 }) =>
      kit.parts
        .filter((part) => is(part, seat))
        .map((part, i) => {
          const [row, nth] = wrap ? [Math.floor(i / wrap.after), i % wrap.after] : [0, i];
          return {
            part: part.name,
            column: at[0] + nth * step[0] + row * (wrap?.step[0] ?? 0),
            row: at[1] + nth * step[1] + row * (wrap?.step[1] ?? 0),
            turn,
          };
        }),
    );
    expect(wanted.length).toBeGreaterThan(3);
    // Where on the sheet the first one is depends on the rest; the others are so far from it.
    const framed = wanted.map((one) => ({
      ...one,
      frame: placement.parts.find(({ part }) => part.name === one.part)?.frame,
    }));
    const [first] = framed;
    for (const { part, column, row, turn, frame } of framed)
      expect({ part, x: frame?.x, y: frame?.y, turn: frame?.turn }).toEqual({
        part,
        x: (first?.frame?.x ?? 0) + (column - (first?.column ?? 0)) * PITCH,
        y: (first?.frame?.y ?? 0) + (row - (first?.row ?? 0)) * PITCH,
        turn,
      });
  });
});

describe('what an arrangement may say', () => {
  const seat = { seat: 'pot', at: [0, 0] };
  const fits = (more: object): boolean =>
    arrangementSchema.safeParse({ arrangement: 'a', about: 'b', seats: [{ ...seat, ...more }] }).success;
  it.each([
    [{}, true],
    [{ at: [400, -400] }, true],
    [{ at: [401, 0] }, false],
    [{ at: [0, -401] }, false],
    [{ at: [0.5, 0] }, false],
    [{ wrap: { after: 1, step: [0, 1] } }, true],
    [{ wrap: { after: 400, step: [0, 1] } }, true],
    [{ wrap: { after: 0, step: [0, 1] } }, false],
    [{ wrap: { after: 401, step: [0, 1] } }, false],
    [{ turn: 3 }, true],
    [{ seat: 'switch', turn: 2 }, true],
    [{ seat: 'switch', turn: 1 }, false],
    [{ seat: 'pickup', turn: 3 }, false],
    [{ seat: 'component', turn: 3 }, true],
    [{ seat: 'ground-point', turn: 1 }, true],
    [{ seat: 'jack', turn: 1 }, false],
    [{ turn: 4 }, false],
    [{ seat: 'lever-5' }, false],
    [{ kinds: ['pot'] }, false],
    [{ seat: 1 }, false],
  ])('%j: %s', (more, may) => expect(fits(more)).toBe(may));
});

it('the extent of parts reaches from the first edge to the last, whatever their order', () => {
  const kit = makeKit({ parts: { a: { kind: 'pot', value: '250k' }, b: { kind: 'jack' } }, joints: [] });
  const [a, b] = kit.parts.map((part) => outlineOf(part, undefined));
  if (!a || !b) throw new Error('no outline');
  const gridPart = (outline: typeof a, column: number, row: number) =>
    ({
      part: kit.parts[0],
      outline,
      column,
      row,
      turn: 0,
      mirror: false,
      fixed: false,
      turnable: true,
    }) as GridPart;
  const far = [gridPart(a, -4, 50), gridPart(b, 30, -7)];
  for (const gridParts of [far, [...far].reverse()])
    expect(bounds(gridParts)).toEqual({
      x: -4,
      y: -7,
      width: 30 + b.width / PITCH + 4,
      height: 50 + a.height / PITCH + 7,
    });
});

it('a kit is drawn in free flow where no arrangement is given, as layouts/ has it', async () => {
  expect(freeFlow).toEqual(arrangementSchema.parse(written('free-flow')));
  const { kit } = sampleCircuit('wren-sh');
  const effort = { steps: 0, seed: 1 };
  expect(await draw(kit, undefined, { effort })).toBe(await draw(kit, freeFlow, { effort }));
});
