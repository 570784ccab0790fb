/** Families by matrix: members, exceptions, contradictions, and where a member's problems are. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { formatCatalogueJsonSchema } from '../../src/catalogue/json-schema.ts';
import { partNamed } from '../../src/describe/kit.ts';
import { kitText, listed, loaded } from './folder.ts';

const HEAD = `families:
  - kit: s-{set}-{pots}
    title: S, {set}, {pots}
    extends: ./base.yaml
`;
const MATRIX = `    matrix:
      set:
        bright: { parts: { neck: { resistance: 5k } } }
        warm: { parts: { neck: { resistance: 7k } } }
      pots:
        250k:
        500k: { parts: { volume: { value: 500k }, tone: { value: 500k } } }
`;
const family = (text: string, base = kitText('base')) => ({ 'base.yaml': base, 'solderleaf.yaml': text });

describe('members', () => {
  it('are every combination, the last axis changing fastest, and extend the base', async () => {
    const files = family(HEAD + MATRIX);
    expect(await listed(files)).toMatchObject({
      said: [],
      ids: ['s-bright-250k', 's-bright-500k', 's-warm-250k', 's-warm-500k'],
    });
    const all = await loaded(files);
    const values = [...all].map(([id, { kit, said }]) => {
      if (!kit) throw new Error(said.join());
      const ohms = (name: string): unknown => {
        const part = partNamed(kit, name);
        return 'resistance' in part ? part.resistance.value : 'value' in part ? part.value.value : undefined;
      };
      return [id, kit.title, ohms('neck'), ohms('volume'), ohms('tone'), kit.joints.length];
    });
    expect(values).toEqual([
      ['s-bright-250k', 'S, bright, 250k', 5e3, 250e3, 250e3, 9],
      ['s-bright-500k', 'S, bright, 500k', 5e3, 500e3, 500e3, 9],
      ['s-warm-250k', 'S, warm, 250k', 7e3, 250e3, 250e3, 9],
      ['s-warm-500k', 'S, warm, 500k', 7e3, 500e3, 500e3, 9],
    ]);
  });

  it.each([
    ['{ set: bright, pots: 250k }', ['s-bright-500k', 's-warm-250k', 's-warm-500k']],
    ['{ set: bright }', ['s-warm-250k', 's-warm-500k']],
    ['{ set: bright, pots: [250k, 500k] }', ['s-warm-250k', 's-warm-500k']],
    ['{ set: bright, pots: 250k }, { set: warm, pots: 500k }', ['s-bright-500k', 's-warm-250k']],
  ])('less those excepted: %s', async (except, ids) => {
    expect(await listed(family(`${HEAD}${MATRIX}    except: [${except}]\n`))).toMatchObject({
      said: [],
      ids,
    });
  });

  it('have any key that their pieces give, joints, and what is removed', async () => {
    const all = await loaded(
      family(`families:
  - kit: s-{tone}-{jack}
    extends: ./base.yaml
    page: a5
    matrix:
      tone:
        none: { title: S without a tone control, remove: { parts: [tone, tone-cap] }, joints: [] }
        usual: {}
      jack:
        far: { hand: left, joints: [ { wire: volume.2 > output.tip, colour: WH, length: 300mm } ] }
        near:
`),
    );
    const of = (id: string) => all.get(id)?.kit;
    expect([...all].filter(([, { kit }]) => !kit)).toEqual([]);
    expect(of('s-none-far')?.title).toBe('S without a tone control');
    expect(of('s-none-far')?.parts.map(({ name }) => name)).toEqual(['neck', 'volume', 'output']);
    expect(of('s-none-far')?.hand).toBe('left');
    expect(of('s-none-near')?.hand).toBe('right');
    const tip = (id: string) => of(id)?.joints.find(({ to }) => to.lug === 'tip')?.length;
    expect([tip('s-none-far'), tip('s-usual-far'), tip('s-usual-near')]).toEqual([0.3, 0.3, 0.14]);
    expect(of('s-usual-near')?.joints).toHaveLength(9);
  });

  it('may have another base by an axis, and a circuit that ships', async () => {
    const all = await loaded(
      family(`families:
  - kit: k-{what}
    extends: ./base.yaml
    matrix: { what: { own: , ships: { extends: circuit/s-volume } } }
`),
    );
    expect(all.get('k-own')?.kit?.parts.some(({ name }) => name === 'tone')).toBe(true);
    expect(all.get('k-ships')?.kit?.parts.some(({ name }) => name === 'tone')).toBe(false);
  });

  it('thousands are listed, and none of their bases is read for that', async () => {
    const axis = (name: string, n: number): string =>
      `      ${name}: { ${Array.from({ length: n }, (_, i) => `${name}${i}: { title: t }`).join(', ')} }\n`;
    const { ids, said } = await listed({
      'solderleaf.yaml': `families:
  - kit: x-{a}-{b}-{c}
    extends: ./not-there.yaml
    matrix:
${axis('a', 20)}${axis('b', 20)}${axis('c', 20)}`,
    });
    expect(said).toEqual([]);
    expect(ids).toHaveLength(8000);
    expect(ids?.slice(19, 21)).toEqual(['x-a0-b0-c19', 'x-a0-b1-c0']);
  });
});

describe('a problem of a member is at the line where the value is written', () => {
  it('in the catalogue, of the piece that says it', async () => {
    const all = await loaded(
      family(
        HEAD +
          MATRIX.replace('resistance: 7k', 'resistance: 7q').replace('volume: { value', 'volume: { valeu'),
      ),
    );
    const warm = /^solderleaf\.yaml:8:46 bad-quantity: “7q”/;
    const pots = /^solderleaf\.yaml:11:36 unknown-key: .*“valeu”/;
    expect(all.get('s-bright-250k')).toMatchObject({ said: [] });
    expect(all.get('s-bright-500k')?.said).toEqual([expect.stringMatching(pots)]);
    expect(all.get('s-warm-250k')?.said).toEqual([expect.stringMatching(warm)]);
    expect(all.get('s-warm-500k')?.said).toEqual([expect.stringMatching(warm), expect.stringMatching(pots)]);
  });

  it('of a joint, of what is removed, of a part that the base has not', async () => {
    const all = await loaded(
      family(`families:
  - kit: s-{x}
    extends: ./base.yaml
    matrix:
      x:
        joint: { joints: [volume.2 > output.tip, neck.hot > volume.9] }
        gone: { remove: { parts: [tone-cap, tnoe] } }
        part: { parts: { tonne: { value: 1k } } }
`),
    );
    expect(all.get('s-joint')?.said[0]).toMatch(/^solderleaf\.yaml:6:68 unknown-lug: .*“9”/);
    expect(all.get('s-gone')?.said[0]).toMatch(/^solderleaf\.yaml:7:45 not-in-base: .*“tnoe” .*tone/);
    expect(all.get('s-part')?.said[0]).toMatch(/^solderleaf\.yaml:8:26 not-in-base: .*“tonne”/);
  });

  it('in the base where that is to blame, with the member that it is a base of', async () => {
    const all = await loaded(family(HEAD + MATRIX, kitText('base').replace('22n', '22q')));
    for (const [id, { said }] of all)
      expect(said).toEqual([
        expect.stringMatching(new RegExp(`^base\\.yaml:7:39 bad-quantity: .*“22q”.* base of ${id}`)),
      ]);
    expect(all.size).toBe(4);
  });

  it('at extends where there is no base', async () => {
    const all = await loaded({ 'solderleaf.yaml': HEAD + MATRIX });
    expect(all.get('s-warm-250k')?.said).toEqual([
      expect.stringMatching(/^solderleaf\.yaml:4:14 base-unreadable: .*“\.\/base\.yaml”.*file not found/),
    ]);
  });
});

describe('what is wrong with a family is told of the catalogue', () => {
  const X = 'families:\n  - kit: s-{x}\n    extends: ./base.yaml\n    matrix: { x: { a: , b: } }\n';
  it.each([
    ['kit: s-{x}', 'kit: s', /:2:10 axis-not-in-id: .*“x” apart/],
    ['kit: s-{x}', 'kit: s-{y}', /:2:10 unknown-axis: .*“y” .*x/],
    ['{ x: { a: , b: } }', '{ x: { a: , b: }, y: { c: , d: } }', /:2:10 axis-not-in-id: .*“y”/],
    ['a: ,', 'A: ,', /:2:10 bad-member-id: “s-A”/],
    ['a: ,', `${'a'.repeat(40)}: ,`, /:2:10 bad-member-id: .*at most 40/],
    ['    extends: ./base.yaml\n', '', /:2:5 missing-key: item 1 of “families” has no “extends”/],
    ['extends:', 'extend:', /:3:5 unknown-key: “?.*extend.*Did you mean extends/],
    ['{ x: { a: , b: } }', '{}', /:4:13 wrong-type: expected axes with their values/],
    ['{ x: { a: , b: } }', '{ x: {} }', /:2:5 family-empty/],
    ['{ a: , b: }', '[a, b]', /:4:18 wrong-type: expected keys and values/],
    ['a: ,', 'a: 470k,', /:4:23 wrong-type: expected what this value changes in the kit, found text/],
    ['a: ,', 'a: { prats: {} },', /:4:25 unknown-key: .*“prats” .*Did you mean parts/],
    ['a: ,', 'a: { kit: other },', /:4:25 unknown-key: .*“kit”/],
    ['a: ,', 'a: { hand: lift },', /:4:31 bad-choice: “lift” .*left/],
    ['a: ,', 'a: { parts: [volume] },', /:4:32 wrong-type: .*found a list/],
    ['a: ,', 'a: { joints: { a: b } },', /:4:33 wrong-type: expected a list/],
    ['    matrix', '    except: [{ z: a }]\n    matrix', /:4:16 unknown-axis: .*“z”/],
    [
      '    matrix',
      '    except: [{ x: bb }]\n    matrix',
      /:4:19 unknown-axis-value: .*“x” has no value “bb”/,
    ],
    ['    matrix', '    except: [{ x: [a, c] }]\n    matrix', /:4:23 unknown-axis-value: .*“c”/],
    ['    matrix', '    except: [{ x: [a, b] }]\n    matrix', /:2:5 family-empty/],
    ['    matrix', '    page: a44\n    matrix', /:4:11 unknown-page/],
    ['    matrix', '    title: "{z}"\n    matrix', /:4:12 unknown-axis: .*“z”/],
  ])('%s → %s', async (piece, by, message) => {
    expect(X).toContain(piece);
    expect((await listed(family(X))).said).toEqual([]);
    const { said, catalogue } = await listed(family(X.replace(piece, by)));
    expect(said).toEqual([expect.stringMatching(message)]);
    expect(catalogue).toBeUndefined();
  });

  it('ids that are taken: by a file, by another family, within one', async () => {
    const two = `${X}${X.slice('families:\n'.length)}kits: [base.yaml]\n`;
    const { said } = await listed(family(two, kitText('s-b')));
    expect(said).toEqual([
      expect.stringMatching(/:2:10 id-taken: .*“s-b” is also that of base\.yaml/),
      expect.stringMatching(/:5:10 id-taken: .*“s-a” is also that of the family s-\{x\}/),
    ]);
    const within = await listed(
      family(
        'families:\n  - { kit: "s-{x}{y}", extends: a, matrix: { x: { a: , ab: }, y: { bc: , c: } } }\n',
      ),
    );
    expect(within.said).toEqual([expect.stringMatching(/:2:12 id-taken: .*“s-abc” .*another member/)]);
  });

  it('too many members are not even counted out', async () => {
    const values = Array.from({ length: 30 }, (_, i) => `v${i}:`).join(', ');
    const { said } = await listed(
      family(`families:
  - kit: s-{a}-{b}-{c}-{d}-{e}-{f}-{g}
    extends: ./base.yaml
    matrix: { ${['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((axis) => `${axis}: { ${values} }`).join(', ')} }
`),
    );
    expect(said).toEqual([expect.stringMatching(/:4:5 too-many-kits: .*21870000000 kits .*at most 10000/)]);
  });
});

describe('two axes that contradict each other', () => {
  const two = (a: string, b: string, except = ''): string => `families:
  - kit: s-{one}-{two}
    extends: ./base.yaml
    matrix:
      one:
        a: ${a}
      two:
        b: ${b}
        c: {}
${except}`;
  it.each([
    [
      '{ parts: { volume: { value: 250k } } }',
      '{ parts: { volume: { value: 500k } } }',
      /:8:40 axes-contradict: “one: a” and “two: b” .*volume\.value: 250k and 500k/,
    ],
    ['{ hand: left }', '{ hand: right }', /:8:20 axes-contradict: .*hand: left and right/],
    [
      '{ output-load: { cable: 1n } }',
      '{ output-load: { cable: 2n } }',
      /:8:36 axes-contradict: .*output-load\.cable/,
    ],
    [
      '{ joints: [{ wire: neck.hot > volume.3, colour: BU }] }',
      '{ joints: [{ wire: volume.3 > neck.hot, colour: RD }] }',
      /:8:23 axes-contradict: .*neck\.hot > volume\.3/,
    ],
    [
      '{ joints: [volume.2 > output.tip] }',
      '{ remove: { joints: [output.tip > volume.2] } }',
      /:8:33 axes-contradict: .*removed/,
    ],
    [
      '{ remove: { parts: [tone] } }',
      '{ parts: { tone: { value: 1M } } }',
      /:8:38 axes-contradict: .*tone\.value: removed and 1M/,
    ],
    [
      '{ parts: { tone: { value: 1M } } }',
      '{ remove: { parts: [tone] } }',
      /:8:32 axes-contradict: .*tone: 1M and removed/,
    ],
    [
      '{ parts: { tone: { label: T } } }',
      '{ remove: { keys: [tone.label] } }',
      /:8:31 axes-contradict: .*tone\.label: T and removed/,
    ],
    ['{ extends: a.yaml }', '{ extends: b.yaml }', /:8:23 axes-contradict: .*extends/],
  ])('%s and %s', async (a, b, message) => {
    expect((await listed(family(two(a, b)))).said).toEqual([expect.stringMatching(message)]);
    // Not where no member has both.
    const except = '    except: [{ one: a, two: b }]\n';
    expect(await listed(family(two(a, b, except)))).toMatchObject({ said: [], ids: ['s-a-c'] });
  });

  it.each([
    ['{ parts: { volume: { value: 250k } } }', '{ parts: { volume: { taper: linear } } }'],
    ['{ parts: { volume: { value: 250k } } }', '{ parts: { volume: { value: 250k } } }'],
    ['{ remove: { parts: [tone-cap] } }', '{ remove: { parts: [tone-cap] } }'],
    ['{ joints: [neck.hot > volume.3] }', '{ joints: [neck.hot > volume.3] }'],
    ['{ hand: left }', '{ hand: left }'],
  ])('do not where they say the same, or something of something else: %s and %s', async (a, b) => {
    expect(await listed(family(two(a, b)))).toMatchObject({ said: [], ids: ['s-a-b', 's-a-c'] });
  });

  it('what both say is there once', async () => {
    const all = await loaded(
      family(
        two(
          '{ remove: { parts: [tone, tone-cap] }, joints: [neck.hot > volume.3] }',
          '{ remove: { parts: [tone-cap] }, joints: [neck.hot > volume.3] }',
        ),
      ),
    );
    expect(all.get('s-a-b')).toMatchObject({ said: [], kit: { joints: { length: 5 } } });
  });
});

it('the JSON Schema accepts the samples’ catalogue, and refuses a misspelt key within a piece', () => {
  const editor = z.fromJSONSchema(JSON.parse(formatCatalogueJsonSchema()));
  const text = readFileSync('samples/workshop/solderleaf.yaml', 'utf8');
  expect(editor.safeParse(parse(text)).error?.issues).toBeUndefined();
  for (const [piece, by] of [
    ['parts: { tone-cap', 'prats: { tone-cap'],
    ['files:', 'file:'],
    ['matrix:', 'martix:'],
    ['page: a5', 'page: 5'],
  ] as const) {
    expect(text).toContain(piece);
    expect(editor.safeParse(parse(text.replace(piece, by))).success, by).toBe(false);
  }
});
