/** A kit as data: true to the form that is printed, and in its figures to what `loads --json` says. */
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { toJson } from '../../src/analyse/index.ts';
import { liveJoints } from '../../src/annotate/live.ts';
import { languages } from '../../src/messages/language.ts';
import { figuresOf } from '../../src/report/figures.ts';
import { loadsData } from '../../src/report/loads-data.ts';
import { formatShopJsonSchema, kitDataOf, kitDataSchema } from '../../src/shop/kit-data.ts';
import { kitIn, quickly, shippedFiles } from './kits.ts';

// Another implementation of JSON Schema than the one that made the schema.
const isData = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(
  JSON.parse(formatShopJsonSchema()),
);

interface Told {
  readonly positions: readonly {
    readonly switches: Readonly<Record<string, number>>;
    readonly pickups: Readonly<Record<string, { readonly dcLoad: unknown; readonly signalLoad: unknown }>>;
  }[];
}

describe.each(shippedFiles)('%s', (file) => {
  it('is in its form, with the loads that are told of every state, and joints, nets and states that agree', async () => {
    const kit = kitIn(file);
    const prepared = await quickly(kit);
    const data = kitDataOf(prepared);
    // As it is read from its file again.
    const read: unknown = JSON.parse(JSON.stringify(data));
    expect(isData(read), JSON.stringify(isData.errors)).toBe(true);
    expect(kitDataSchema.parse(read)).toEqual(data);

    const told = JSON.parse(toJson(loadsData(figuresOf(kit)))) as Told;
    const open = (value: number | null): unknown => value ?? 'open';
    expect(
      data.states.map(({ positions, pickups }) => ({
        switches: positions,
        pickups: pickups.map(({ name, dcLoad, signalLoad }) => [name, open(dcLoad), open(signalLoad)]),
      })),
    ).toEqual(
      told.positions.map(({ switches, pickups }) => ({
        switches,
        pickups: Object.entries(pickups).map(([name, one]) => [name, one.dcLoad, one.signalLoad]),
      })),
    );

    const lugs = data.parts.flatMap((part) => part.lugs.map(({ id }) => id));
    expect(data.nets.flatMap((net) => net.lugs).sort()).toEqual([...lugs].sort());
    data.nets.forEach(({ number }, i) => {
      expect(number).toBe(i + 1);
    });
    data.joints.forEach(({ number, from, to, net }, i) => {
      expect(number).toBe(i + 1);
      const own = data.nets[net - 1]?.lugs ?? [];
      expect(own).toContain(from.lug);
      expect(own).toContain(to.lug);
    });
    data.states.forEach(({ number, positions, joints }, i) => {
      const state = prepared.circuit.states[i];
      expect(number).toBe(i + 1);
      expect(Object.keys(positions)).toEqual(data.switches.map(({ name }) => name));
      for (const { name, positions: words } of data.switches)
        expect(words[(positions[name] ?? 0) - 1]).toBeTruthy();
      expect(joints).toEqual(
        [...(state ? liveJoints(prepared.circuit, state) : [])].map((j) => j + 1).sort((a, b) => a - b),
      );
    });
    // Nothing to choose is one state; else every combination is one.
    const all = data.switches.reduce((count, { positions }) => count * positions.length, 1);
    expect(data.states).toHaveLength(all);
  });
});

it.each(languages)(
  'says nothing twice in one word and figures as its language writes them: %s',
  async (language) => {
    const prepared = await quickly(kitIn('samples/kestrel-hss.yaml', language));
    const data = kitDataOf(prepared);
    expect(data.language).toBe(language);
    const words = data.states.flatMap(({ pickups }) => pickups.map((one) => one.words)).join('\n');
    // Decimal commas are what German, French and Spanish write (ISO 80000-1 allows both).
    expect(/\d,\d/.test(words)).toBe(language !== 'en');
    expect(new Set(data.states.map((state) => state.words)).size).toBe(data.states.length);
  },
);

it('refuses what is not in its form', async () => {
  const data = kitDataOf(await quickly(kitIn('samples/heron-ss.yaml')));
  for (const wrong of [
    { form: 2 },
    { id: '../up' },
    { states: [] },
    { title: undefined },
    { more: 1 },
    { workshop: { name: 'A', website: 'javascript:alert(1)' } },
  ]) {
    const changed: unknown = JSON.parse(JSON.stringify({ ...data, ...wrong }));
    expect(isData(changed), JSON.stringify(wrong)).toBe(false);
    expect(kitDataSchema.safeParse(changed).success).toBe(false);
  }
});
