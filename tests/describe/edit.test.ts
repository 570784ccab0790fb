/** Changes to a description's text: what is put in is read back, and nothing else is touched. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { editKit, type KitEdit, linesToAdd } from '../../src/describe/edit.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { readKit } from '../../src/describe/read.ts';
import { mixedSetText } from './fixtures/mixed-set.ts';

const mixed = mixedSetText;

const pad: KitEdit = {
  parts: [
    { name: 'pad-bridge', fields: { kind: 'resistor', label: 'Bridge pad', value: '470k', sleeving: 1 } },
  ],
  joints: [
    { kind: 'leg', ends: 'pad-bridge.1 > selector.A2' },
    { kind: 'leg', ends: 'pad-bridge.2 > volume.case' },
  ],
  values: [],
};
const newTone: KitEdit = {
  parts: [],
  joints: [],
  values: [{ part: 'tone', text: '250k', number: 250e3 }],
};

function edited(text: string, edit: KitEdit, file = 'x.yaml'): string {
  const done = editKit(text, file, edit);
  if (done === undefined) throw new Error('no place found');
  return done;
}

function kitOf(text: string, file = 'x.yaml'): Kit {
  const { kit, problems } = readKit(text, file);
  expect(problems).toEqual([]);
  if (!kit) throw new Error('no kit');
  return kit;
}

/** Holds the kit after the change against the one before it. */
function hasPad(before: Kit, after: Kit): void {
  expect(after.parts.slice(0, -1)).toEqual(before.parts);
  expect(after.parts.at(-1)).toMatchObject({
    name: 'pad-bridge',
    label: 'Bridge pad',
    value: { value: 470e3 },
    sleeved: ['1'],
  });
  expect(after.joints.slice(0, -2)).toEqual(before.joints);
  expect(after.joints.slice(-2).map(({ kind, from, to }) => [kind, from, to])).toEqual([
    ['leg', { part: 'pad-bridge', lug: '1' }, { part: 'selector', lug: 'A2' }],
    ['leg', { part: 'pad-bridge', lug: '2' }, { part: 'volume', lug: 'case' }],
  ]);
}

/** The lines of `after` that are not those of `before`, in order; fails when a line of `before` is gone or moved. */
function added(before: string, after: string): readonly string[] {
  const old = before.split('\n');
  let next = 0;
  const put = after.split('\n').filter((line) => {
    if (line !== old[next]) return true;
    next++;
    return false;
  });
  expect(next).toBe(old.length);
  return put;
}

describe('a kit in YAML', () => {
  test('gets its part after the last part and its joints after the last joint, as the others are written', () => {
    const done = edited(mixed, pad);
    expect(added(mixed, done)).toEqual([
      '  pad-bridge: { kind: resistor, label: Bridge pad, value: 470k, sleeving: 1 }',
      '  - leg: pad-bridge.1 > selector.A2',
      '  - leg: pad-bridge.2 > volume.case',
    ]);
    expect(done).toContain('# last part\n  pad-bridge: { kind');
    expect(done).toContain('# the last one\n  - leg: pad-bridge.1');
    expect(done).toContain('pad-bridge.2 > volume.case\n# End of the kit.\n');
    hasPad(kitOf(mixed), kitOf(done));
  });

  test('a short name is filled up to the column the others stand in', () => {
    const short = {
      ...pad,
      parts: [{ name: 'pad', fields: { kind: 'resistor', value: '470k' } }],
      joints: [],
    };
    expect(added(mixed, edited(mixed, short))).toEqual(['  pad:      { kind: resistor, value: 470k }']);
  });

  test('after a part written over several lines they follow its last field, before what is said below it', () => {
    const text = mixed.replace(
      'output:   { kind: jack, label: Output }   # last part\n',
      'output:\n    kind: jack # last field\n      # its own\n    # its own too\n\n    # a word below\n',
    );
    expect(edited(text, pad)).toContain(
      '# last field\n      # its own\n    # its own too\n  pad-bridge: { kind',
    );
    hasPad(kitOf(text), kitOf(edited(text, pad)));
  });

  test('a new value takes the place of the old one, in its quotes', () => {
    expect(edited(mixed, newTone)).toBe(mixed.replace('"500k"', '"250k"'));
    expect(edited(mixed, { ...newTone, values: [{ part: 'volume', text: '1M', number: 1e6 }] })).toBe(
      mixed.replace('500k', '1M'),
    );
  });

  test('a label that YAML would misread is put in quotes', () => {
    for (const label of ['a: b', 'x, y', '{z}', '# no', 'Steg “1”', "it's", '"q"', 'true', ' pad']) {
      const odd = {
        ...pad,
        parts: [{ name: 'pad-bridge', fields: { kind: 'resistor', label, value: '1k' } }],
      };
      expect(kitOf(edited(mixed, odd)).parts.at(-1)?.label).toBe(label);
    }
  });

  test('has no place for them behind an alias, or under keys that share a line', () => {
    const aliased = `${mixed.replace('joints:\n', 'spare: &j\n')}joints: *j\n`;
    expect(editKit(aliased, 'x.yaml', pad)).toBeUndefined();
    expect(editKit('just text', 'x.yaml', pad)).toBeUndefined();
    expect(
      editKit(mixed, 'x.yaml', { ...newTone, values: [{ part: 'nobody', text: '1k', number: 1e3 }] }),
    ).toBe(undefined);
  });
});

/** What may stand around and within lines without changing what they say. */
const comment = fc
  .array(fc.constantFrom('#', ' ', '-', ':', '{', ',', 'ü', 'pad.1 > x.2', '"', "'", '>', '\t'), {
    maxLength: 5,
  })
  .map((bits) => `# ${bits.join('')}`);
const above = fc.array(
  fc.oneof(
    fc.constant(''),
    fc.constant('   '),
    comment,
    comment.map((c) => `    ${c}`),
  ),
  {
    maxLength: 2,
  },
);
const behind = fc.oneof(
  fc.constant(''),
  fc.constant('  '),
  comment.map((text) => ` ${text}`),
);

/** The mixed set's parts and joints, each laid out as chance has it. */
const layout = fc.record({
  order: fc.boolean(),
  indent: fc.constantFrom(1, 2, 4),
  flush: fc.boolean(),
  decorated: fc.array(fc.tuple(above, behind, fc.constantFrom('flow', 'block', 'wide')), {
    minLength: 40,
    maxLength: 40,
  }),
  lineBreak: fc.constantFrom('\n', '\r\n'),
  last: fc.boolean(),
});

const plain = parse(mixed) as {
  parts: Record<string, Record<string, unknown>>;
  joints: (string | Record<string, string>)[];
};

function laidOut({
  order,
  indent,
  flush,
  decorated,
  lineBreak,
  last,
}: typeof layout extends fc.Arbitrary<infer T> ? T : never) {
  let n = 0;
  const pads = ' '.repeat(indent);
  const around = (indentation: string, flow: string, block: readonly string[]): readonly string[] => {
    const [lines, end, form] = decorated[n++ % decorated.length] ?? [[], '', 'flow'];
    const body = form === 'block' ? block : [form === 'wide' ? flow.replace('{ ', '{   ') : flow];
    return [...lines, ...body.map((line, i) => indentation + line + (i === body.length - 1 ? end : ''))];
  };
  const flowOf = (fields: Record<string, unknown>) =>
    `{ ${Object.entries(fields)
      .map(([k, v]) => `${k}: ${v}`)
      .join(', ')} }`;
  const parts = Object.entries(plain.parts).flatMap(([name, fields]) =>
    around(pads, `${name}: ${flowOf(fields)}`, [
      `${name}:`,
      ...Object.entries(fields).map(([k, v]) => `  ${k}: ${v}`),
    ]),
  );
  const joints = plain.joints.flatMap((joint) =>
    typeof joint === 'string'
      ? around(flush ? '' : pads, `- ${joint}`, [`- "${joint}"`])
      : around(
          flush ? '' : pads,
          `- ${flowOf(joint)}`,
          Object.entries(joint).map(([k, v], i) => `${i === 0 ? '-' : ' '} ${k}: ${v}`),
        ),
  );
  const halves = [
    ['parts:', ...parts],
    ['joints:', ...joints],
  ];
  const lines = ['kit: laid-out', 'title: Any', ...(order ? halves : [...halves].reverse()).flat()];
  return lines.join(lineBreak) + (last ? lineBreak : '');
}

test('however a kit is laid out, comments and lines stay and only the new ones differ', {
  timeout: 120_000,
}, () => {
  fc.assert(
    fc.property(layout, (how) => {
      const text = laidOut(how);
      const done = edited(text, pad);
      hasPad(kitOf(text), kitOf(done));
      // A text without a last line break gets one before what is put in; the line itself stays.
      const put = added(text.replaceAll('\r\n', '\n'), done.replaceAll('\r\n', '\n'));
      expect(put).toHaveLength(3);
      expect(put.every((line) => line.includes('pad-bridge'))).toBe(true);
      expect(done.replaceAll('\r\n', '').includes('\n')).toBe(how.lineBreak === '\n');
      expect(done.endsWith('\n')).toBe(how.last);
      const other = edited(text, newTone);
      expect(other.replace('value: 250k', 'value: 500k').length).toBe(text.length);
      expect(kitOf(other).parts.find((part) => part.name === 'tone')).toMatchObject({
        value: { value: 250e3 },
      });
    }),
    { seed: 60_063, numRuns: 80 },
  );
});

describe('a kit in braces', () => {
  const { parts, joints } = plain;
  const base = { kit: 'a', title: 'b', parts, joints };

  test.each([0, 2, 4, '\t'])('in JSON, indented by %j, stays JSON and keeps its form', (indent) => {
    const text = JSON.stringify(base, null, indent);
    const done = edited(text, { ...pad, values: newTone.values }, 'x.json');
    expect(kitOf(done, 'x.json').parts.find((part) => part.name === 'tone')).toMatchObject({
      value: { value: 250e3 },
    });
    hasPad(kitOf(text, 'x.json'), kitOf(edited(text, pad, 'x.json'), 'x.json'));
    if (indent === 0) return;
    // Besides the new lines only the commas before them, and the one value.
    const [old, now] = [text.split('\n'), done.split('\n')];
    expect(now).toHaveLength(old.length + 3);
    const gone = old.filter((line) => !now.includes(line));
    expect(gone.filter((line) => !now.includes(`${line},`)).map((line) => line.trim())).toEqual([]);
    const fresh = now.filter((line) => line.includes('pad-bridge'));
    expect(new Set(fresh.map((line) => /^\s*/.exec(line)?.[0]))).toEqual(
      new Set([typeof indent === 'string' ? indent.repeat(2) : ' '.repeat(indent * 2)]),
    );
  });

  test('a number stays a number', () => {
    const text = JSON.stringify({ ...base, parts: { ...parts, tone: { kind: 'pot', value: 500000 } } });
    expect(edited(text, newTone, 'x.json')).toBe(text.replace('"value":500000', '"value":250000'));
  });

  test('in YAML, with a comma before the end and comments between', () => {
    const flow = (last: string) =>
      `{ kit: a, title: b, parts: {\n  x: { kind: jack },  # one\n  y: { kind: jack }${last} # two, three\n }, joints: [ x.tip > y.tip${last} ] }\n`;
    for (const last of ['', ',']) {
      const read = readKit(edited(flow(last), pad), 'x.yaml');
      expect(read.problems).toEqual([]);
      expect(read.kit?.parts.map((part) => part.name)).toEqual(['x', 'y', 'pad-bridge']);
      expect(read.kit?.joints).toHaveLength(3);
      expect(edited(flow(last), pad)).toContain('# two, three\n  pad-bridge');
    }
  });
});

test('lines for a hand to add, in YAML and in TypeScript', () => {
  const edit = { ...pad, values: newTone.values };
  expect(linesToAdd(edit, false)).toEqual([
    'in parts, tone:  value: 250k',
    'in parts:   pad-bridge: { kind: resistor, label: Bridge pad, value: 470k, sleeving: 1 }',
    'in joints:  - leg: pad-bridge.1 > selector.A2',
    'in joints:  - leg: pad-bridge.2 > volume.case',
  ]);
  expect(linesToAdd(edit, true)).toEqual([
    "in parts, tone:  value: '250k',",
    "in parts:   'pad-bridge': { kind: 'resistor', label: 'Bridge pad', value: '470k', sleeving: 1 },",
    "in joints:  { leg: 'pad-bridge.1 > selector.A2' },",
    "in joints:  { leg: 'pad-bridge.2 > volume.case' },",
  ]);
});
