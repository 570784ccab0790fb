/** A kit made from another with changes: what comes out, and where each problem points. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { readKit as readChecked } from '../../src/checked.ts';
import type { BaseReader } from '../../src/describe/chain.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { kitFromValue, readKit } from '../../src/describe/read.ts';

const BASE = `kit: base
title: S, one volume
about: The plainest there is.
page: a5
output-load: { cable: 500p, amplifier: 2M }
parts:
  neck: { kind: single-coil, label: Neck, resistance: 5.7k }
  volume: { kind: pot, value: 250k, taper: linear, midpoint: 10% }
  bleed: { kind: resistor, value: 220k, sleeving: both }
  output: { kind: jack }
joints:
  - bend: volume.1 > volume.case
  - { wire: neck.ground > volume.case, colour: BK }
  - output.sleeve > volume.case
  - { wire: neck.hot > volume.3, colour: BU, length: 120mm }
  - leg: bleed.1 > volume.3
  - leg: bleed.2 > volume.2
  - volume.2 > output.tip
`;

/** Bases by the names that \`extends\` gives them. */
const among =
  (texts: Readonly<Record<string, string>>): BaseReader =>
  (name) => {
    const text = texts[name];
    return text === undefined ? undefined : { file: name, text };
  };
const read = (text: string, texts: Readonly<Record<string, string>> = { 'base.yaml': BASE }) =>
  readKit(text, 'kit.yaml', among(texts));
function told(text: string, texts?: Readonly<Record<string, string>>): readonly string[] {
  const { problems, source } = read(text, texts);
  return toDiagnostics(problems, source).map(
    ({ place, code, message }) => `${place.file}:${place.line}:${place.column} ${code}: ${message}`,
  );
}
function kitOf(changes: string) {
  const text = `extends: base.yaml\nkit: mine\n${changes}`;
  expect(told(text)).toEqual([]);
  const { kit } = read(text);
  if (!kit) throw new Error('no kit');
  return kit;
}
const joints = (kit: ReturnType<typeof kitOf>): readonly string[] =>
  kit.joints.map(({ kind, from, to }) => `${kind} ${from.part}.${from.lug} > ${to.part}.${to.lug}`);

describe('what a kit takes over', () => {
  const whole = readKit(BASE, 'base.yaml').kit;

  it('everything but the id', () => {
    expect(kitOf('')).toEqual({ ...whole, id: 'mine' });
  });

  it('is what its own keys say, and each field of the output load by itself', () => {
    const kit = kitOf('title: Mine\noutput-load: { amplifier: 500k }\n');
    expect(kit).toMatchObject({ title: 'Mine', about: 'The plainest there is.', page: 'a5' });
    expect(kit.outputLoad.amplifier).toEqual({ value: 500e3, from: 'given' });
    expect(kit.outputLoad.cable.value).toBeCloseTo(500e-12, 20);
  });

  it('changes the named fields of a part and leaves the rest, in the order of the base', () => {
    const kit = kitOf('parts:\n  volume: { value: 500k }\n');
    expect(kit.parts.map(({ name }) => name)).toEqual(['neck', 'volume', 'bleed', 'output']);
    expect(kit.parts[1]).toMatchObject({
      value: { value: 500e3 },
      taper: { value: 'linear' },
      midpoint: { value: 0.1 },
    });
    // The same kind written again is a change like any other.
    expect(kitOf('parts:\n  volume: { kind: pot, value: 500k }\n')).toEqual(kit);
  });

  it('a part of another kind keeps nothing of the old one, but its place and its joints', () => {
    const kit = kitOf('parts:\n  neck: { kind: humbucker }\n');
    expect(kit.parts[0]).toMatchObject({ kind: 'humbucker', name: 'neck', resistance: { from: 'default' } });
    expect(joints(kit)).toHaveLength(7);
  });

  it('a part removed takes its joints along', () => {
    const kit = kitOf('remove: { parts: [bleed] }\n');
    expect(kit.parts.map(({ name }) => name)).toEqual(['neck', 'volume', 'output']);
    expect(joints(kit).filter((one) => one.includes('bleed'))).toEqual([]);
    expect(joints(kit)).toHaveLength(5);
  });

  it('removed and described again it is a new part, which its base’s joints do not reach', () => {
    const kit = kitOf(
      'remove: { parts: [bleed] }\nparts:\n  bleed: { kind: capacitor, value: 1n }\njoints:\n  - leg: bleed.1 > volume.3\n  - leg: bleed.2 > volume.2\n',
    );
    expect(kit.parts.map(({ name }) => name)).toEqual(['neck', 'volume', 'output', 'bleed']);
    expect(joints(kit).slice(-2)).toEqual(['leg bleed.1 > volume.3', 'leg bleed.2 > volume.2']);
  });

  it('a key removed has its default again', () => {
    const kit = kitOf('remove: { keys: [page, volume.taper, neck.label, output-load.cable] }\n');
    expect(kit.page).toBeUndefined();
    expect(kit.parts[1]).toMatchObject({ taper: { value: 'log', from: 'default' } });
    expect(kit.parts[0]).toMatchObject({ label: 'Neck', resistance: { value: 5700 } });
    expect(kit.outputLoad).toMatchObject({ cable: { from: 'default' }, amplifier: { from: 'given' } });
  });
});

describe('joints', () => {
  it('are appended; one between the same lugs replaces the old one where it stands, whichever way round', () => {
    const kit = kitOf(
      'parts:\n  strings: { kind: ground-point }\njoints:\n  - strings.1 > volume.case\n  - { jumper: volume.3 > neck.hot, colour: RD }\n',
    );
    expect(joints(kit)).toEqual([
      'bend volume.1 > volume.case',
      'wire neck.ground > volume.case',
      'wire output.sleeve > volume.case',
      'jumper volume.3 > neck.hot',
      'leg bleed.1 > volume.3',
      'leg bleed.2 > volume.2',
      'wire volume.2 > output.tip',
      'wire strings.1 > volume.case',
    ]);
    // Whole, so that a length that is not written again is gone.
    expect(kit.joints[3]).toMatchObject({ colour: 'RD', index: 3 });
    expect(kit.joints[3]).not.toHaveProperty('length');
  });

  it.each(['neck.hot > volume.3', '{ wire: neck.hot > volume.3, colour: BU }', 'volume.3 > neck.hot'])(
    'are removed as %s',
    (written) => {
      const kit = kitOf(`remove:\n  joints:\n    - ${written}\n`);
      expect(joints(kit)).toHaveLength(6);
      expect(joints(kit).join()).not.toContain('neck.hot');
    },
  );

  it('removed and written again move to the end', () => {
    const again = 'remove: { joints: [neck.hot > volume.3] }\njoints:\n  - neck.hot > volume.3\n';
    expect(joints(kitOf(again)).at(-1)).toBe('wire neck.hot > volume.3');
  });
});

describe('chains', () => {
  const middle =
    'extends: base.yaml\nkit: middle\ntitle: Middle\nparts:\n  volume: { value: 500k }\n  tone: { kind: pot, value: 500k }\njoints:\n  - volume.3 > tone.1\n  - leg: bleed.1 > tone.2\n';

  it('reads base by base', () => {
    const top =
      'extends: middle.yaml\nkit: top\nremove: { parts: [bleed] }\nparts:\n  tone: { taper: linear }\n';
    const { kit, problems, layers } = read(top, { 'base.yaml': BASE, 'middle.yaml': middle });
    expect(problems).toEqual([]);
    expect(layers?.map(({ source }) => source.file)).toEqual(['base.yaml', 'middle.yaml', 'kit.yaml']);
    expect(kit).toMatchObject({ id: 'top', title: 'Middle', page: 'a5' });
    expect(kit?.parts.map(({ name }) => name)).toEqual(['neck', 'volume', 'output', 'tone']);
    expect(kit?.parts[1]).toMatchObject({ value: { value: 500e3 }, taper: { value: 'linear' } });
  });

  it('of any depth up to a hundred', () => {
    const deep = (levels: number) =>
      read('extends: "1"\nkit: top\n', {
        ...Object.fromEntries(
          Array.from({ length: levels }, (_, i) => [`${i + 1}`, `extends: "${i + 2}"\nkit: k${i}\n`]),
        ),
        [levels + 1]: BASE,
      });
    expect(deep(60).kit?.title).toBe('S, one volume');
    expect(deep(99).problems).toEqual([]);
    expect(deep(100).problems).toMatchObject([{ code: 'extends-itself', detail: { most: 100 } }]);
  });

  it('that come back to themselves are told with the whole loop, and once', () => {
    const loop = { 'a.yaml': 'extends: b.yaml\nkit: a\n', 'b.yaml': 'extends: a.yaml\nkit: b\n' };
    expect(told('extends: a.yaml\nkit: top\n', loop)).toEqual([
      'b.yaml:1:10 extends-itself: this kit extends itself: a.yaml extends b.yaml extends a.yaml',
    ]);
    expect(told('kit: top\nextends: kit.yaml\n', { 'kit.yaml': BASE })).toEqual([
      'kit.yaml:2:10 extends-itself: this kit extends itself: kit.yaml extends kit.yaml',
    ]);
  });
});

describe('problems point at the line that was written', () => {
  const at = (changes: string) => told(`extends: base.yaml\nkit: mine\n${changes}`);

  test.each([
    ['parts:\n  volume: { value: loud }\n', 'kit.yaml:4:20 bad-quantity'],
    ['parts:\n  volume: { tapper: log }\n', 'kit.yaml:4:13 unknown-key'],
    // What is missing is missing where the part's kind is written.
    ['parts:\n  neck: { kind: pot }\n', 'kit.yaml:4:3 missing-key'],
    ['remove: { keys: [volume.value] }\n', 'base.yaml:8:3 missing-key'],
    ['remove: { keys: [title] }\n', 'kit.yaml:1:1 missing-key'],
    [
      'parts:\n  bleed: { kind: capacitor, value: 22n }\n  output: { label: "" }\n',
      'kit.yaml:5:20 bad-value',
    ],
    ['titel: Mine\n', 'kit.yaml:3:1 unknown-key'],
    ['joints:\n  - { wire: neck.hot > volume.3, colour: blue }\n', 'kit.yaml:4:42 bad-colour'],
    ['joints:\n  - neck.hot\n', 'kit.yaml:4:5 bad-joint'],
    ['output-load: { cable: 1 }\n', 'kit.yaml:3:23 bad-quantity'],
    ['joints: none\n', 'kit.yaml:3:9 wrong-type'],
    ['parts: none\n', 'kit.yaml:3:8 wrong-type'],
    ['remove: all\n', 'kit.yaml:3:9 wrong-type'],
    ['parts: { volume: { midpoint: 2 } }\npage: 3\n', 'kit.yaml:3:30 bad-quantity|kit.yaml:4:7 wrong-type'],
  ])('%j', (changes, expected) => {
    expect(
      at(changes)
        .map((one) => one.replace(/^(\S+ \S+):.*/s, '$1'))
        .join('|'),
    ).toBe(expected);
  });

  it('in a base, and then says of which kit, and what may be done', () => {
    const { problems, source } = read('extends: b\nkit: mine\ntitle: ""\n', {
      b: BASE.replace('250k', 'loud').replace('kind: jack', 'kind: jak'),
    });
    const reports = toDiagnostics(problems, source);
    expect(reports.map(({ place }) => `${place.file}:${place.line}`)).toEqual(['kit.yaml:3', 'b:8', 'b:10']);
    expect(reports[0]?.remedy).not.toContain('is a base of');
    expect(reports[1]?.remedy).toMatch(
      /This file is a base of kit\.yaml: correct it here, or change or remove it there\.$/,
    );
    expect(reports[1]?.place.excerpt).toContain('loud');
  });

  it('of the circuit too, in the file whose joint it is', () => {
    const { diagnostics } = readChecked(
      'extends: base.yaml\nkit: mine\nparts:\n  volume: { kind: resistor, value: 1k }\n',
      'kit.yaml',
      among({ 'base.yaml': BASE }),
    );
    expect(diagnostics.length).toBeGreaterThan(3);
    const lugs = diagnostics.filter(({ code }) => code === 'unknown-lug');
    expect(lugs.map(({ place }) => `${place.file}:${place.line}`)).toEqual(
      expect.arrayContaining(['base.yaml:12', 'base.yaml:13']),
    );
  });
});

describe('bases that cannot be read', () => {
  test.each([
    [
      'kit: mine\nextends: none.yaml\n',
      /^kit\.yaml:2:10 base-unreadable: .*“none\.yaml”.*no base of this name/,
    ],
    ['kit: mine\nextends:\n', /^kit\.yaml:2:1 wrong-type/],
    ['kit: mine\nextends: [base.yaml]\n', /^kit\.yaml:2:10 wrong-type: .*text.*a list/],
    ['kit: mine\nextends: ""\n', /^kit\.yaml:2:10 bad-value: “extends” is empty/],
    ['kit: mine\nextends: list\n', /^list:1:1 wrong-type: expected a kit.*a list/],
    ['kit: mine\nextends: empty\n', /^empty:1:1 file-empty/],
    ['kit: mine\nextends: nothing\n', /^nothing:1:1 file-empty/],
    ['kit: mine\nextends: open\n', /^open:1:8 bad-syntax/],
    ['kit: mine\nextends: other\n', /^other:1:1 not-a-kit/],
  ])('%j', (text, words) => {
    const texts = { list: '[1]', empty: '', nothing: '# only\n', open: 'title: "open\n', other: 'name: x\n' };
    const all = told(text, texts);
    expect(all).toHaveLength(1);
    expect(all[0]).toMatch(words);
    expect(read(text, texts)).not.toHaveProperty('draft');
  });

  it('there are none where nobody says how to find them', () => {
    expect(readKit('extends: base.yaml\nkit: mine\n', 'kit.yaml').problems).toMatchObject([
      { code: 'base-unreadable' },
    ]);
  });

  it('a mistake that the reader goes on from is told with the rest', () => {
    const twice = BASE.replace('page: a5', 'page: a5\npage: a4');
    expect(told('extends: b\nkit: mine\npage: 4\n', { b: twice })).toEqual([
      expect.stringMatching(/^kit\.yaml:3:7 wrong-type/),
      expect.stringMatching(/^b:5:1 duplicate-key/),
    ]);
  });
});

describe('values in place of texts', () => {
  it('extend texts, and problems go by the path', () => {
    const { problems, source } = kitFromValue(
      {
        extends: 'base.yaml',
        kit: 'mine',
        joints: ['bleed.1 > bleed.2', { wire: 'neck.hot > volume.3', colour: 'blue' }],
      },
      'kit.ts',
      among({ 'base.yaml': BASE.replace('250k', 'loud') }),
    );
    expect(
      toDiagnostics(problems, source).map(({ place, message }) => `${place.file}:${place.line} ${message}`),
    ).toEqual([
      'kit.ts:1 joints[1].colour: “blue” is not an IEC 60757 colour code',
      'base.yaml:8 “loud”: not a resistance',
    ]);
  });

  it('are bases', () => {
    const base: BaseReader = () => ({
      file: 'base.ts',
      value: { kit: 'b', title: 'From a value', parts: {}, joints: [] },
    });
    expect(readKit('extends: ./base.ts\nkit: mine\n', 'kit.yaml', base).kit).toMatchObject({
      id: 'mine',
      title: 'From a value',
    });
  });

  it('a key that is a word of the language is a key like any other', () => {
    expect(told('extends: base.yaml\nkit: mine\nparts:\n  __proto__: { kind: jack }\n')).toEqual([
      expect.stringMatching(/^kit\.yaml:4:3 bad-name/),
    ]);
  });
});

describe('a leg that ends in the base already', () => {
  const said = (text: string) => {
    const { diagnostics } = readChecked(text, 'kit.yaml', among({ 'base.yaml': BASE }));
    return diagnostics.map(
      ({ place, code, message, remedy }) =>
        `${place.file}:${place.line}:${place.column} ${code}: ${message} / ${remedy}`,
    );
  };
  const MOVED = `extends: base.yaml
kit: mine
title: Mine
joints:
  - leg: output.tip > bleed.2
`;
  it('is told at the joint that the kit adds, with the place of the other and how to move it', () =>
    expect(said(MOVED)).toEqual([
      expect.stringMatching(
        /^kit\.yaml:5:10 leg-twice: leg bleed\.2 is soldered to two places: volume\.2 \(inherited from base\.yaml, line 17\) and output\.tip \/ .*list the other joint under remove: joints: \[bleed\.2 > volume\.2\]/,
      ),
    ]));
  it('is moved by what the message says', () =>
    expect(said(`${MOVED}remove: { joints: [bleed.2 > volume.2] }\n`)).toEqual([]));
  it('is told of one file by the joint alone', () => {
    const found = BASE.replace('leg: bleed.1 >', 'leg: bleed.2 >');
    const { diagnostics } = readChecked(
      found.replace('volume.2 > output.tip', 'bleed.1 > output.tip'),
      'a.yaml',
    );
    expect(diagnostics.map(({ code, message }) => `${code}: ${message}`)).toEqual(
      expect.arrayContaining(['leg-twice: leg bleed.2 is soldered to two places: volume.3 and volume.2']),
    );
  });
});

it('whatever is written, every problem has a place in one of the files, and a kit comes out only without one', () => {
  const word = fc.constantFrom(
    'neck',
    'volume',
    'output',
    'neck.hot',
    'volume.3',
    'page',
    'volume.taper',
    'kind',
  );
  const joint = fc.oneof(
    fc.tuple(word, word).map(([a, b]) => `${a} > ${b}`),
    fc
      .tuple(fc.constantFrom('wire', 'leg', 'bent'), word, word)
      .map(([kind, a, b]) => ({ [kind]: `${a} > ${b}` })),
  );
  const any = fc.oneof(word, fc.anything({ maxDepth: 2 }), joint);
  const list = fc.oneof(fc.array(any, { maxLength: 4 }), any);
  const changes = fc.record(
    {
      kit: fc.oneof(fc.constant('mine'), any),
      title: any,
      'output-load': fc.oneof(fc.dictionary(fc.constantFrom('cable', 'amplifier', 'x'), any), any),
      remove: fc.oneof(fc.record({ parts: list, joints: list, keys: list }, { requiredKeys: [] }), any),
      parts: fc.oneof(fc.dictionary(word, fc.oneof(fc.dictionary(word, any), any)), any),
      joints: fc.oneof(fc.array(joint, { maxLength: 5 }), list),
    },
    { requiredKeys: [] },
  );
  fc.assert(
    fc.property(changes, changes, (first, second) => {
      const bases: BaseReader = (name) =>
        name === 'base.yaml'
          ? { file: name, text: BASE }
          : { file: name, value: { joints: [], ...first, extends: 'base.yaml' } };
      const reading = kitFromValue({ kit: 'mine', ...second, extends: 'middle' }, 'kit.ts', bases);
      const reports = toDiagnostics(reading.problems, reading.source);
      expect(reading.kit === undefined).toBe(reports.length > 0);
      for (const { place, message } of reports) {
        expect(['kit.ts', 'middle', 'base.yaml']).toContain(place.file);
        expect(place.line).toBeGreaterThan(0);
        expect(message).not.toBe('');
      }
    }),
    { seed: 11, numRuns: 500 },
  );
});
