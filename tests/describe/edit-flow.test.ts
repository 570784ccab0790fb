/** Kits written in braces and brackets, with line breaks, commas and comments wherever they may stand: changes are put in and read back. */
import { describe, expect, it } from 'vitest';
import { seeded } from '../../src/common/random.ts';
import { editKit, type KitEdit } from '../../src/describe/edit.ts';
import { readKit } from '../../src/describe/read.ts';

const random = seeded(31);
const chance = (share: number): boolean => random() < share;
const pick = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T;

const PARTS = [
  'volume: { kind: pot, value: 250k }',
  'tone: { kind: pot, value: "500k" }',
  'output: { kind: jack }',
  'cap: { kind: capacitor, value: 22n }',
];
const JOINTS = [
  'volume.2 > output.tip',
  '{ bend: volume.1 > volume.case }',
  '{ leg: cap.1 > tone.2 }',
  '"output.sleeve > volume.case"',
];
const EDIT: KitEdit = {
  parts: [
    { name: 'pad-one', fields: { kind: 'resistor', value: '470k' } },
    { name: 'pad-two', fields: { kind: 'resistor', value: '1M', sleeving: 2 } },
  ],
  joints: [
    { kind: 'leg', ends: 'pad-one.1 > volume.3' },
    { kind: 'wire', ends: 'pad-two.1 > volume.3' },
  ],
  values: [{ part: 'tone', text: '220k', number: 220e3 }],
};

/** What may stand between: nothing, blanks, a line's end, a comment with what could be taken for something else. */
const between = (lineBreak: string): string =>
  pick([
    '',
    ' ',
    '  ',
    `${lineBreak}  `,
    ` # a, b ]${lineBreak}    `,
    `${lineBreak}${lineBreak}  `,
    ` # }${lineBreak} # two${lineBreak}  `,
  ]);
const listed = (items: readonly string[], lineBreak: string): string =>
  `${between(lineBreak)}${items.join(`${pick(['', ' '])},${pick([' ', `${lineBreak}   `, ` # so, it is${lineBreak}  `])}`)}${pick(['', ' '])}${chance(0.4) ? ',' : ''}${between(lineBreak)}`;

const kitOf = (text: string) => {
  const { kit, problems } = readKit(text, 'x.yaml');
  expect(problems, text).toEqual([]);
  if (!kit) throw new Error('no kit');
  return kit;
};

it('in YAML, however it is laid out', () => {
  for (let i = 0; i < 100; i++) {
    const lineBreak = pick(['\n', '\r\n']);
    const parts = PARTS.slice(0, 2 + Math.floor(random() * 3));
    const joints = JOINTS.slice(0, 1 + Math.floor(random() * 4));
    const halves = [`parts: {${listed(parts, lineBreak)}}`, `joints: [${listed(joints, lineBreak)}]`];
    const all = ['kit: a', 'title: b', ...(chance(0.5) ? halves : [...halves].reverse())];
    const text = chance(0.5)
      ? `{ ${all.join(`,${lineBreak} `)} }${lineBreak}`
      : `${all.join(lineBreak)}${pick([lineBreak, '', ` # end${lineBreak}`])}`;
    const before = kitOf(text);
    const done = editKit(text, 'x.yaml', EDIT);
    if (done === undefined) throw new Error(`no place in ${text}`);
    const after = kitOf(done);
    expect(
      after.parts.map(({ name }) => name),
      done,
    ).toEqual([...before.parts.map(({ name }) => name), 'pad-one', 'pad-two']);
    expect(after.parts.find(({ name }) => name === 'tone')).toMatchObject({ value: { value: 220e3 } });
    expect(after.joints.slice(0, -2)).toEqual(before.joints);
    expect(after.joints.slice(-2).map(({ kind, from }) => `${kind} ${from.part}`)).toEqual([
      'leg pad-one',
      'wire pad-two',
    ]);
    // Nothing that was there is gone: without what was put in, and the one value, the text is the old one.
    const rest = [...done.replace('"220k"', '"500k"')];
    for (const character of text) {
      const at = rest.indexOf(character);
      expect(at, done).toBeGreaterThanOrEqual(0);
      rest.splice(at, 1);
    }
    // Line breaks are all of one sort.
    expect(done.replaceAll('\r\n', '').includes('\n')).toBe(lineBreak === '\n' && text.includes('\n'));
    for (const comment of text.match(/#[^\r\n]*/g) ?? []) expect(done).toContain(comment);
  }
});

const short: KitEdit = {
  parts: [{ name: 'r', fields: { kind: 'resistor', value: '1k' } }],
  joints: [{ kind: 'leg', ends: 'r.1 > x.tip' }],
  values: [],
};

describe('where they are put', () => {
  const head = 'kit: a\ntitle: b\n';
  const put = (body: string, file = 'x.yaml', edit = short): string | undefined =>
    editKit(head + body, file, edit)?.slice(head.length);
  it.each([
    [
      'parts: { x: { kind: jack } }\njoints: [ x.tip > x.sleeve ]\n',
      'parts: { x: { kind: jack }, r: { kind: resistor, value: 1k } }\njoints: [ x.tip > x.sleeve, { leg: r.1 > x.tip } ]\n',
    ],
    [
      'parts: { x: { kind: jack }, }\njoints: [x.tip > x.sleeve,]\n',
      'parts: { x: { kind: jack }, r: { kind: resistor, value: 1k } }\njoints: [x.tip > x.sleeve, { leg: r.1 > x.tip }]\n',
    ],
    [
      'parts: {\n  x: { kind: jack }\n}\njoints: [\n  x.tip > x.sleeve\n]\n',
      'parts: {\n  x: { kind: jack },\n  r: { kind: resistor, value: 1k }\n}\njoints: [\n  x.tip > x.sleeve,\n  { leg: r.1 > x.tip }\n]\n',
    ],
    [
      'parts: {\n  x: { kind: jack }, # so\n}\njoints: [\n  x.tip > x.sleeve, ]\n',
      'parts: {\n  x: { kind: jack }, # so\n  r: { kind: resistor, value: 1k },\n}\njoints: [\n  x.tip > x.sleeve,\n  { leg: r.1 > x.tip }, ]\n',
    ],
    [
      'parts:\n  x: { kind: jack }\njoints:\n  - x.tip > x.sleeve',
      'parts:\n  x: { kind: jack }\n  r: { kind: resistor, value: 1k }\njoints:\n  - x.tip > x.sleeve\n  - leg: r.1 > x.tip',
    ],
    [
      'parts:\n  x: { kind: jack }\njoints:\n- x.tip > x.sleeve\n',
      'parts:\n  x: { kind: jack }\n  r: { kind: resistor, value: 1k }\njoints:\n- x.tip > x.sleeve\n- leg: r.1 > x.tip\n',
    ],
    [
      'parts:\n  x: { kind: jack }\n    # of x\n  # of all\njoints:\n  - x.tip > x.sleeve\n  # the end\n',
      'parts:\n  x: { kind: jack }\n    # of x\n  r: { kind: resistor, value: 1k }\n  # of all\njoints:\n  - x.tip > x.sleeve\n  - leg: r.1 > x.tip\n  # the end\n',
    ],
    [
      'parts:\n  xx: { kind: jack }\n  yyyy: { kind: jack }\njoints: [x.tip > x.sleeve]\n',
      'parts:\n  xx: { kind: jack }\n  yyyy: { kind: jack }\n  r: { kind: resistor, value: 1k }\njoints: [x.tip > x.sleeve, { leg: r.1 > x.tip }]\n',
    ],
    [
      'parts:\n  xx:   { kind: jack }\n  yyyy: { kind: jack }\njoints: [x.tip > x.sleeve]\n',
      'parts:\n  xx:   { kind: jack }\n  yyyy: { kind: jack }\n  r:    { kind: resistor, value: 1k }\njoints: [x.tip > x.sleeve, { leg: r.1 > x.tip }]\n',
    ],
    [
      'parts:\n  xx:   { kind: jack }\n  yyyy:\n    kind: jack\njoints: [x.tip > x.sleeve]\n',
      'parts:\n  xx:   { kind: jack }\n  yyyy:\n    kind: jack\n  r: { kind: resistor, value: 1k }\njoints: [x.tip > x.sleeve, { leg: r.1 > x.tip }]\n',
    ],
    // Parts that stand on lines of their own are in no column.
    [
      'parts:\n  xx:\n    kind: jack\n  yy:\n    kind: jack\njoints: [x.tip > x.sleeve]\n',
      'parts:\n  xx:\n    kind: jack\n  yy:\n    kind: jack\n  r: { kind: resistor, value: 1k }\njoints: [x.tip > x.sleeve, { leg: r.1 > x.tip }]\n',
    ],
  ])('%j', (before, after) => expect(put(before)).toBe(after));
  it('in JSON everything is in quotes, and numbers are numbers', () => {
    const json =
      '{"kit":"a","title":"b","parts":{"x":{"kind":"jack","value":500}},"joints":["x.tip > x.sleeve"]}';
    const edit = { ...short, values: [{ part: 'x', text: '2k', number: 2000 }] };
    expect(editKit(json, 'X.JSON', edit)).toBe(
      '{"kit":"a","title":"b","parts":{"x":{"kind":"jack","value":2000}, "r": { "kind": "resistor", "value": "1k" }},"joints":["x.tip > x.sleeve", { "leg": "r.1 > x.tip" }]}',
    );
    expect(editKit(json.replace('500', '"500"'), 'x.json', { ...edit, parts: [], joints: [] })).toContain(
      '"value":"2k"',
    );
    // A file that only looks like JSON is YAML, where a value may stand as a person writes it.
    expect(editKit(json, 'x.yaml', { ...edit, parts: [], joints: [] })).toContain('"value":2k');
  });
  it('only what is asked for is put in', () => {
    const body = 'parts: { x: { kind: jack } }\njoints: [ x.tip > x.sleeve ]\n';
    expect(put(body, 'x.yaml', { parts: [], joints: [], values: [] })).toBe(body);
    expect(put(body, 'x.yaml', { ...short, joints: [] })).toBe(
      'parts: { x: { kind: jack }, r: { kind: resistor, value: 1k } }\njoints: [ x.tip > x.sleeve ]\n',
    );
    expect(put(body, 'x.yaml', { ...short, parts: [] })).toBe(
      'parts: { x: { kind: jack } }\njoints: [ x.tip > x.sleeve, { leg: r.1 > x.tip } ]\n',
    );
  });
  it.each([
    ['nothing to put them after', 'parts: {}\njoints: [x.tip > x.sleeve]\n'],
    ['no joint to put one after', 'parts: { x: { kind: jack } }\njoints: []\n'],
    ['no joints', 'parts: { x: { kind: jack } }\n'],
    ['no parts', 'joints: [x.tip > x.sleeve]\n'],
    ['joints that are no list', 'parts: { x: { kind: jack } }\njoints: { a: b }\n'],
    ['parts that are a list', 'parts: [x]\njoints: [x.tip > x.sleeve]\n'],
    ['joints behind an alias', 'parts: &p\n  x: { kind: jack }\njoints: *p\n'],
  ])('there is no place where there is %s', (_, body) => expect(put(body)).toBeUndefined());
  it.each([
    ['a part that is not there', 'parts: { x: { kind: jack } }\n'],
    ['one without a value', 'parts: { tone: { kind: jack } }\n'],
    ['one that is no map', 'parts: { tone: 3 }\n'],
    ['one whose value is a list', 'parts: { tone: { value: [1] } }\n'],
    ['no parts', 'joints: []\n'],
  ])('there is no value to change of %s', (_, body) =>
    expect(put(body, 'x.yaml', { parts: [], joints: [], values: EDIT.values })).toBeUndefined(),
  );
  it('a value keeps its quotes, of either sort', () => {
    const value = (written: string): string | undefined =>
      put(`parts: { tone: { value: ${written} } }\n`, 'x.yaml', {
        parts: [],
        joints: [],
        values: EDIT.values,
      });
    expect(value('500k')).toBe('parts: { tone: { value: 220k } }\n');
    expect(value('"500k"')).toBe('parts: { tone: { value: "220k" } }\n');
    expect(value("'500k'")).toBe("parts: { tone: { value: '220k' } }\n");
    expect(value('500000')).toBe('parts: { tone: { value: 220k } }\n');
  });
});
