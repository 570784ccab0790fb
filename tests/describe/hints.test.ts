/** What a message proposes for the mistakes that beginners make. Trade words and abbreviations: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { readKit } from '../../src/describe/read.ts';
import { meantColour } from '../../src/describe/words.ts';
import { ohms } from '../../src/parts/fields.ts';
import { findErrors } from '../../src/solve/errors.ts';

const TEXT = `kit: robin
title: S, one volume
parts:
  neck: { kind: single-coil, resistance: 5.7k }
  selector: { kind: lever-3 }
  volume: { kind: pot, value: 250k, taper: log }
  cap: { kind: capacitor, value: 22n }
  output: { kind: jack }
joints:
  - bend: volume.1 > volume.case
  - neck.ground > volume.case
  - output.sleeve > volume.case
  - { wire: neck.hot > selector.A1, colour: BU }
  - jumper: selector.A1 > selector.A2
  - jumper: selector.A2 > selector.A3
  - selector.A0 > volume.3
  - leg: cap.1 > volume.3
  - leg: cap.2 > volume.case
  - volume.2 > output.tip
`;

/** The reports on the text with one piece exchanged, as `line code remedy`. */
function told(piece: string, by: string): readonly string[] {
  if (!TEXT.includes(piece)) throw new Error(`there is no ${piece}`);
  const { draft, problems, source } = readKit(TEXT.replace(piece, by), 'x.yaml');
  return toDiagnostics([...problems, ...(draft ? findErrors(draft) : [])], source).map(
    ({ place, code, message, remedy }) => `${place.line}:${place.column} ${code} ${message} / ${remedy}`,
  );
}

it('the text itself is sound', () => expect(told('robin', 'robin')).toEqual([]));

describe('one mistake, one message that fixes it', () => {
  it.each([
    ['colour: BU', 'colour: blue', '13:45 bad-colour', 'Did you mean BU?'],
    ['colour: BU', 'colour: bk', '13:45 bad-colour', 'Did you mean BK?'],
    ['taper: log', 'taper: audio', '6:44 bad-choice', 'Did you mean log?'],
    ['taper: log', 'taper: lin', '6:44 bad-choice', 'Did you mean linear?'],
    ['kind: pot', 'kind: potentiometer', '6:19 bad-choice', 'Did you mean pot?'],
    [
      'kind: lever-3',
      'kind: key switch',
      '5:21 unsupported-kind',
      'unknown kind “key switch” / Describe it as kind: switch, with its lugs and positions',
    ],
    ['kind: lever-3', 'kind: toggle', '5:21 bad-choice', 'Did you mean toggle-3?'],
    ['kind: lever-3', 'kind: kill switch', '5:21 bad-choice', 'Did you mean kill-button?'],
    ['kind: lever-3', 'kind: mini-togle', '5:21 bad-choice', 'Did you mean mini-toggle?'],
    ['value: 22n }', 'value: 22n, sleeving: three }', '7:49 bad-choice', 'Allowed: 1, 2, both'],
    [
      'kit: robin',
      'stock: 470k\nkit: robin',
      '1:8 wrong-type',
      'Write a list of resistances, such as [220k, 270k, 470k].',
    ],
    ['kind: pot', 'knd: pot', '6:13 unknown-key', 'Did you mean kind?'],
    ['kind: pot', 'kind: preamp', '6:19 unsupported-kind', 'Supported kinds: blend'],
    ['kind: pot', 'kind: stereo pot', '6:19 bad-choice', 'Did you mean dual-pot?'],
    ['kind: pot', 'kind: concentric', '6:19 bad-choice', 'Did you mean stacked-pot?'],
    ['value: 22n', 'value: 0,047u', '7:36 decimal-comma', 'write 0.047u.'],
    ['resistance: 5.7k', 'resistance: 5,7k', '4:44 decimal-comma', 'write 5.7k.'],
    // A key of digits alone loses its place among the others.
    ['value: 250k', 'value: 2,5', '6:33 decimal-comma', 'write 2.5.'],
    ['neck.ground > volume', 'neck.ground -> volume', '11:5 bad-joint', 'Write > in place of ->'],
    ['neck.ground > volume', 'neck.ground->volume', '11:5 bad-joint', 'Write > in place of ->'],
    ['neck.ground > volume', 'neck.ground → volume', '11:5 bad-joint', 'Write > in place of →'],
    ['value: 250k', 'value: 1m', '6:31 bad-quantity', 'did you mean 1M?'],
  ])('%s written %s', (piece, by, head, hint) => {
    const [first = '', ...more] = told(piece, by);
    expect(more).toEqual([]);
    expect(first).toContain(head);
    expect(first).toContain(hint);
  });
});

it('a comma in a block of its own keeps its own message', () => {
  const [first = ''] = told('{ kind: capacitor, value: 22n }', '\n    kind: capacitor\n    value: 0,047u');
  expect(first).toContain('the decimal sign is a point');
});

describe('a lug that is not there', () => {
  it('is not taken for another of its pole, least of all for the common', () => {
    const [first = ''] = told('selector.A0 > volume.3', 'selector.A5 > volume.3');
    expect(first).toContain('unknown-lug');
    expect(first).not.toContain('Did you mean');
    expect(first).toContain('Its lugs: A0, A1');
  });
  it('is, where letters are left out, added, or change places', () => {
    expect(told('selector.A0 > volume.3', 'selector.A00 > volume.3')[0]).toContain('Did you mean A0?');
    expect(told('selector.A0 > volume.3', 'selector.0A > volume.3')[0]).toContain('Did you mean A0?');
  });
});

describe('colours', () => {
  // IEC 60757 codes; IEC 60445 for green-and-yellow.
  it.each([
    ['red', 'RD'],
    ['Black', 'BK'],
    ['grey', 'GY'],
    ['gray', 'GY'],
    ['purple', 'VT'],
    ['BLK', 'BK'],
    ['rd', 'RD'],
    ['BURD', 'RDBU'],
    ['black/red', 'BKRD'],
    ['white and black', 'BKWH'],
    ['green-yellow', 'GNYE'],
  ])('%s is %s', (written, code) => expect(meantColour(written)).toBe(code));
  it.each(['', 'tan', 'green/white', 'red blue black', 'XX'])('“%s” is nobody’s guess', (written) =>
    expect(meantColour(written)).toBeUndefined(),
  );
});

it('m is asked about with resistances only where it is out of range', () => {
  const words = (written: unknown) => ohms('').safeParse(written).error?.issues[0]?.message ?? '';
  expect(words('1mΩ')).toContain('did you mean 1M?');
  expect(words('2.2m')).toContain('did you mean 2.2M?');
  expect(words('0.01')).not.toContain('did you mean');
  expect(words('470m')).toBe('');
});

it('says what an infinite or undefined number is', () => {
  expect(told('resistance: 5.7k', 'resistance: .inf')[0]).toContain('found a number that is too large');
  expect(told('resistance: 5.7k', 'resistance: .nan')[0]).toContain('found a value that is not a number');
});

it('a character that the font lacks is named by its number, and shown where it can be seen', async () => {
  const { glyphErrors } = await import('../../src/annotate/notes.ts');
  const glyphs = (label: string): readonly string[] => {
    const { kit, source } = readKit(
      TEXT.replace('kind: lever-3 }', `kind: lever-3, label: "${label}" }`),
      'x.yaml',
    );
    return toDiagnostics(kit ? glyphErrors(kit) : [], source).map(
      ({ message }) => message.split(': ').at(-1) ?? '',
    );
  };
  expect(glyphs('Neck 漢')).toEqual(['漢 (U+6F22)']);
  expect(glyphs('\\u202eNeck')).toEqual(['U+202E']);
  const { kit: named } = readKit(
    TEXT.replace(
      'kind: lever-3 }',
      'kind: switch, lugs: { left: [A1, B3], right: [A0, B0] }, positions: [[[A0, A1]]], called: [ꬰ] }',
    ),
    'x.yaml',
  );
  expect(named && glyphErrors(named)).toMatchObject([{ path: ['parts', 'selector', 'called', 0] }]);
  // All of them at once, each once.
  expect(glyphs('漢字 漢')).toEqual(['漢 (U+6F22), 字 (U+5B57)']);
});
