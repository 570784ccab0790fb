/** Placements that are kept: when one is taken again, and that it is the one that placing would find. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readKit } from '../../src/checked.ts';
import { must } from '../../src/common/must.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { readBaseFile } from '../../src/files/bases.ts';
import { prepare } from '../../src/pipeline.ts';
import { arrangementSchema, freeFlow } from '../../src/place/arrangement.ts';
import type { PlaceOptions } from '../../src/place/place.ts';
import type { PlacementStore } from '../../src/place/stored.ts';
import { anewBeside } from '../tools/placements.ts';

const file = 'samples/wren-hs.yaml';
const text = readFileSync(file, 'utf8');
const kitOf = (written: string): Kit => must(readKit(written, file, readBaseFile).kit, 'a kit');
const effort = { steps: 20, seed: 1 };

/** Keeps in memory, through text as a disk does; `asked` is how often it was asked, `placed` how often placing was needed. */
function memory() {
  const kept = new Map<string, string>();
  const count = { asked: 0, placed: 0 };
  const store: PlacementStore = {
    find: (asked) => {
      count.asked++;
      const found = kept.get(asked);
      return found === undefined ? undefined : JSON.parse(found);
    },
    keep: (asked, placement) => {
      count.placed++;
      kept.set(asked, JSON.stringify(placement));
    },
  };
  return { store, kept, count };
}

const place = async (kit: Kit, options: PlaceOptions = {}, arrangement = freeFlow) =>
  (await prepare(kit, arrangement, { effort, ...options })).placement;

// Every value of the kit another one, of as many letters: all that a change of stock can change.
const otherValues = text
  .replace(/value: 500k/g, 'value: 510k')
  .replace(/value: 470k/g, 'value: 430k')
  .replace(/value: 22n/g, 'value: 47n')
  .replace(/taper: log/g, 'taper: linear')
  .replace(/resistance: 8/g, 'resistance: 9')
  .replace(/colour: BK/g, 'colour: WH')
  .replace(/length: 60mm/g, 'length: 90mm');

describe('a placement that is kept', () => {
  it('is taken for other values, and is the one that placing finds for them', async () => {
    const { store, count } = memory();
    const first = await place(kitOf(text), { store });
    const again = await place(kitOf(text), { store });
    expect(again).toEqual(first);
    expect(count).toEqual({ asked: 2, placed: 1 });
    expect(otherValues).not.toBe(text);
    const other = kitOf(otherValues);
    const taken = await place(other, { store });
    expect(count).toEqual({ asked: 3, placed: 1 });
    expect(taken).toEqual(await place(other));
    // The parts and joints are those of the kit that is drawn.
    for (const { part } of taken.parts) expect(other.parts).toContain(part);
    for (const { joint } of taken.wires) expect(other.joints).toContain(joint);
  });
  it('is not taken for another hand, effort, arrangement, joint, or a label that needs more room', async () => {
    const { store, count } = memory();
    const kit = kitOf(text);
    const [first] = kit.joints;
    await place(kit, { store });
    const seats = arrangementSchema.shape.seats.parse([{ seat: 'jack', at: [0, 0] }]);
    await place(kit, { store, hand: 'left' });
    await place(kit, { store, effort: { steps: 0, seed: 1 } });
    await place(kit, { store }, { ...freeFlow, seats });
    await place({ ...kit, joints: kit.joints.filter((joint) => joint !== first) }, { store });
    await place(kitOf(text.replace(/label: Volume/, 'label: Volume of both pickups')), { store });
    expect(count).toEqual({ asked: 6, placed: 6 });
  });
  it('is not taken where it is not a placement of the kit', async () => {
    const { store, kept, count } = memory();
    const kit = kitOf(text);
    const first = await place(kit, { store });
    const [asked = '', sound = ''] = [...kept][0] ?? [];
    type Kept = { width: number; parts: { name: string }[]; wires: { joint: number; points: object[] }[] };
    const spoilt: readonly ((placement: Kept) => void)[] = [
      (one) => void one.parts.pop(),
      (one) => void one.wires.pop(),
      (one) => void one.parts.push(must(one.parts[0], 'a part')),
      (one) => {
        must(one.parts[0], 'a part').name = 'nobody';
      },
      (one) => {
        must(one.wires[0], 'a wire').joint = must(one.wires[1], 'a wire').joint;
      },
      (one) => {
        must(one.wires[0], 'a wire').joint = 900;
      },
      (one) => {
        must(one.wires[0], 'a wire').points = [{ x: 1 }];
      },
      (one) => {
        one.width = -1;
      },
    ];
    for (const [i, spoil] of spoilt.entries()) {
      const placement = JSON.parse(sound) as Kept;
      spoil(placement);
      kept.set(asked, JSON.stringify(placement));
      expect(await place(kit, { store, effort }), `${i}`).toEqual(first);
      expect(count.placed, `${i}`).toBe(i + 2);
    }
  });
});

describe('what the tests share of one run', () => {
  it('a test that places anew takes nothing, and is told of another placement of the same kit', async () => {
    const { store, kept } = memory();
    const anew = { store: anewBeside(store) };
    const kit = kitOf(text);
    const first = await place(kit, anew);
    expect(await place(kit, { store })).toEqual(first);
    expect(await place(kit, anew)).toEqual(first);
    const [[asked, sound] = ['', '']] = kept;
    kept.set(asked, sound.replace(/"x":\d+/, '"x":1'));
    await expect(place(kit, anew)).rejects.toThrow('placed otherwise than before');
  });
});
