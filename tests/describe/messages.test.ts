/** One mistake after another in a kit that is sound else: each has one message, at its place, that says what was found and what to do. */
import { describe, expect, it } from 'vitest';
import { isKitLike } from '../../src/describe/chain.ts';
import { toDiagnostics } from '../../src/describe/diagnostics.ts';
import { typeName } from '../../src/describe/issues.ts';
import { failedScript, kitFromValue, readKit } from '../../src/describe/read.ts';
import { meantBy, unsupported } from '../../src/describe/synonyms.ts';
import { hertzField, lengthField, meantColour } from '../../src/describe/words.ts';
import { explainYaml } from '../../src/describe/yaml-words.ts';

const TEXT = `kit: robin
title: S, one volume
stock: [220k, 470k]
output-load: { cable: 500p, amplifier: 1M }
parts:
  neck: { kind: single-coil, resistance: 5.7k }
  volume: { kind: pot, value: 250k, taper: log }
  bleed: { kind: resistor, value: 220k, sleeving: both }
  output: { kind: jack }
joints:
  - bend: volume.1 > volume.case
  - neck.ground > volume.case
  - output.sleeve > volume.case
  - { wire: neck.hot > volume.3, colour: BU, length: 120mm, step: 6 }
  - leg: bleed.1 > volume.3
  - leg: bleed.2 > volume.2
  - volume.2 > output.tip
`;
function told(piece: string, by: string): readonly string[] {
  expect(TEXT).toContain(piece);
  const { problems, source, kit } = readKit(TEXT.replace(piece, by), 'x.yaml');
  expect(kit === undefined).toBe(problems.length > 0);
  return toDiagnostics(problems, source).map(
    ({ place, code, message, remedy }) => `${place.line}:${place.column} ${code}: ${message} / ${remedy}`,
  );
}

it('the kit itself is sound', () => expect(told('robin', 'robin')).toEqual([]));

describe('each mistake has one message', () => {
  it.each([
    // Keys.
    ['title: S', 'titel: S', /^2:1 unknown-key: .*“titel”.* \/ .*title/],
    ['title: S, one volume\n', '', /^1:1 missing-key: the kit has no “title”/],
    ['kit: robin\n', '', /^1:1 missing-key: .*“kit”/],
    ['value: 250k, ', '', /^7:3 missing-key: “volume” \(pot\) has no “value”/],
    ['kind: pot, ', '', /^7:3 missing-key: “volume” has no “kind”/],
    ['kind: pot', 'kidn: pot', /^7:13 unknown-key: .*“kidn”.*kind/],
    ['taper: log', 'tapper: log', /^7:37 unknown-key: .*“tapper”.* \/ .*taper/],
    ['cable: 500p', 'cabel: 500p', /^4:16 unknown-key: .*“cabel”.* \/ .*cable/],
    ['colour: BU', 'color: BU', /^14:34 unknown-key: .*“color”.*colour/],
    ['  - { wire: neck', '  - { wrie: neck', /^14:7 unknown-key: .*“wrie”.*wire/],
    ['  - { wire: neck.hot > volume.3, colour', '  - { colour', /^14:5 joint-kind: /],
    [
      'wire: neck.hot > volume.3,',
      'wire: neck.hot > volume.3, leg: neck.hot > volume.3,',
      /^14:5 joint-kind: /,
    ],
    // A key that is a choice of some says of which.
    [
      'output: { kind: jack }',
      'output: { kind: jack }\n  mute: { kind: mini-toggle }',
      /missing-key: “mute” .* has no “action” \/ Add the key “action”; allowed: on-on, on-off-on, on-on-on\.$/,
    ],
    ['value: 250k, ', '', /^7:3 missing-key: .* \/ Add the key “value”\.$/],
    // How a position is written, with the names that were meant.
    [
      'stock: [',
      'intended: { out-of-phase: [phase=1] }\nstock: [',
      /^3:28 wrong-type: expected switches and their positions, found text \/ .*such as \{ phase: 1 \}\.$/,
    ],
    [
      'stock: [',
      'intended: { silent: [mute] }\nstock: [',
      /^3:22 wrong-type: .*found text \/ .*such as \{ selector: 2 \}\.$/,
    ],
    [
      'stock: [',
      'intended: { out-of-phase: 3 }\nstock: [',
      /^3:27 wrong-type: .*found a number \/ Write always, or a list of switch positions/,
    ],
    // A map by its keys.
    [
      'neck: { kind: single-coil, resistance: 5.7k }',
      'neck: { kind: four-lead-humbucker, wind: clockwise }',
      /^6:44 wrong-type: .*a value for each coil.* \/ .*\{ a: clockwise, b: anticlockwise \}\.$/,
    ],
    [
      'neck: { kind: single-coil, resistance: 5.7k }',
      'neck: { kind: four-lead-humbucker, polarity: north }',
      /^6:48 wrong-type: .*a value for each coil.* \/ .*\{ a: north, b: south \}\.$/,
    ],
    [
      'output-load: { cable: 500p, amplifier: 1M }',
      'output-load: 500p',
      /^4:14 wrong-type: .* \/ .*\{ cable: …, /,
    ],
    // Types.
    ['title: S, one volume', 'title: 12', /^2:8 wrong-type: .*text.*a number/],
    ['title: S, one volume', 'title: [a]', /^2:8 wrong-type: .*text.*a list/],
    ['title: S, one volume', 'title: { a: b }', /^2:8 wrong-type: .*text.*keys and values/],
    ['title: S, one volume', 'title: true', /^2:8 wrong-type: .*text.*true \(a yes\/no value\)/],
    ['title: S, one volume', 'title:', /^2:1 wrong-type: .*text.*nothing/],
    ['kind: jack', 'kind: 3', /^9:19 wrong-type: .*a kind, found a number.*jack/],
    ['{ kind: jack }', 'jack', /^9:11 wrong-type: .*a part, found text/],
    ['{ kind: jack }', '[jack]', /^9:11 wrong-type: .*a part, found a list/],
    ['- volume.2 > output.tip', '- 3', /^17:5 wrong-type: .*a joint, found a number/],
    ['- volume.2 > output.tip', '- [a]', /^17:5 wrong-type: .*a joint, found a list/],
    ['- volume.2 > output.tip', '-', /^17:4 wrong-type: .*a joint, found nothing/],
    ['- volume.2 > output.tip', '- wire: 3', /^17:11 wrong-type: .*PART\.LUG > PART\.LUG.*a number/],
    ['[220k, 470k]', '220k', /^3:8 wrong-type: .*a list of resistances/],
    ['value: 250k', 'value: [1]', /^7:31 wrong-type: /],
    ['value: 250k', 'value: true', /^7:31 wrong-type: .*true/],
    ['{ cable: 500p, amplifier: 1M }', '3', /^4:14 wrong-type: .*keys and values.*a number/],
    ['step: 6', 'step: six', /^14:67 wrong-type: .*a number, found text/],
    // Choices.
    ['taper: log', 'taper: loog', /^7:44 bad-choice: “loog”.* \/ Did you mean log\?.*linear/],
    ['taper: log', 'taper: [log]', /^7:44 wrong-type: .*one of .*log.*a list/],
    ['sleeving: both', 'sleeving: bothe', /^8:51 bad-choice: “bothe”.*Did you mean both\?/],
    ['kind: jack', 'kind: socket', /^9:19 bad-choice: “socket”/],
    ['kind: jack', 'kind: jak', /^9:19 bad-choice: “jak”.*Did you mean jack\?/],
    ['kind: jack', 'kind: transformer', /^9:19 unsupported-kind: /],
    [
      'kit: robin',
      'kit: robin\nview: sodler-side',
      /^2:7 bad-choice: “sodler-side”.*Did you mean solder-side\?/,
    ],
    ['kit: robin', 'kit: robin\nhand: lefty', /^2:7 bad-choice: “lefty”.*left/],
    // Values.
    ['kit: robin', 'kit: Robin', /^1:6 bad-kit-id: .*“Robin”/],
    ['kit: robin', `kit: ${'a'.repeat(41)}`, /^1:6 bad-kit-id: /],
    ['title: S, one volume', 'title: ""', /^2:8 bad-value: “title” is empty/],
    [
      'title: S, one volume',
      `title: ${'a'.repeat(81)}`,
      /^2:8 bad-value: “title” is longer than 80 characters \/ Shorten it/,
    ],
    ['kit: robin', 'kit: robin\nabout: " "', /^2:8 bad-value: “about” is empty/],
    ['kit: robin', `kit: robin\nabout: ${'a'.repeat(301)}`, /^2:8 bad-value: “about” is longer than 300/],
    ['kit: robin', 'kit: robin\nabout: 3', /^2:8 wrong-type: .*text.*a number/],
    ['[220k, 470k]', '[]', /^3:8 bad-value: “stock” is empty/],
    ['value: 250k', 'value: loud', /^7:31 bad-quantity: .*“loud”/],
    ['value: 250k', 'value: "2,5k"', /^7:31 bad-quantity: .*the decimal sign is a point/],
    ['cable: 500p', 'cable: 500F', /^4:23 bad-quantity: .*0\.1 pF to 1 mF/],
    ['length: 120mm', 'length: 120', /^14:54 wrong-type: .*a length with its unit/],
    ['length: 120mm', 'length: "120"', /^14:54 bad-length: .*not a length with its unit/],
    ['length: 120mm', 'length: 0mm', /^14:54 bad-length: .*a length must be more than zero/],
    ['length: 120mm', 'length: 11m', /^14:54 bad-length: .*a length out of range/],
    ['colour: BU', 'colour: blue', /^14:42 bad-colour: “blue”.*Did you mean BU\?/],
    ['colour: BU', 'colour: XX', /^14:42 bad-colour: “XX”/],
    ['colour: BU', 'colour: 3', /^14:42 bad-choice: /],
    ['  output: {', '  Out put: {', /^9:3 bad-name: .*“Out put”/],
    ['- volume.2 > output.tip', '- volume.2 output.tip', /^17:5 bad-joint: /],
    ['- volume.2 > output.tip', '- volume.2 > output', /^17:5 bad-joint: /],
    ['- volume.2 > output.tip', '- volume.2 -> output.tip', /^17:5 bad-joint: .*Write > in place of ->/],
    [
      '- volume.2 > output.tip',
      '- { wire: volume.2 => output.tip }',
      /^17:13 bad-joint: .*Write > in place of =>/,
    ],
    // The whole.
    ['parts:', 'spares:', /unknown-key: .*“spares”/],
    ['joints:\n', 'joints: 3\nrest:\n', /wrong-type: .*joints, a line each/],
  ])('%s as %s', (piece, by, words) => {
    const all = told(piece, by);
    expect(
      all.filter((one) => words.test(one)),
      all.join('\n'),
    ).toHaveLength(1);
    if (!/^(parts|joints)/.test(piece)) expect(all, 'and no other').toHaveLength(1);
  });
  it.each([
    ['step: 6', 'step: 1'],
    ['step: 6', 'step: 99'],
    ['length: 120mm', 'length: 10m'],
    ['title: S, one volume', `title: ${'a'.repeat(80)}`],
    ['kit: robin', `kit: ${'a'.repeat(40)}`],
    ['sleeving: both', 'sleeving: 1'],
    ['{ wire: neck.hot > volume.3,', '{ wire: " neck . hot>volume .3 ",'],
  ])('%s may be %s', (piece, by) => expect(told(piece, by)).toEqual([]));
  it.each([
    ['step: 0', 'bad-value: 0 is too small / Write at least 1.'],
    ['step: 100', 'bad-value: 100 is too large / Write at most 99.'],
    ['step: 1.5', 'wrong-type: expected a whole number, found a number / Write a whole number.'],
  ])('%s: a step is a whole number from 1 to 99', (by, words) =>
    expect(told('step: 6', by)).toEqual([`14:67 ${words}`]),
  );
  it('what is wrong with one part hides nothing of the others', () => {
    const all = told('kind: pot, value: 250k', 'kind: pto, value: 250k').concat(
      told('kind: jack', 'kind: jcak'),
    );
    expect(all).toHaveLength(2);
    const { problems, draft } = readKit(
      TEXT.replace('kind: pot', 'kind: pto')
        .replace('kind: jack', 'kind: jcak')
        .replace('colour: BU', 'colour: XX'),
      'x.yaml',
    );
    expect(problems.map(({ code }) => code)).toEqual(['bad-choice', 'bad-choice', 'bad-colour']);
    expect(draft?.opaque).toEqual(['volume', 'output']);
    expect(draft?.parts.map(({ name }) => name)).toEqual(['neck', 'bleed']);
    expect(draft?.joints).toHaveLength(7);
    expect(draft?.unread).toBe(0);
  });
  it('a mistake in an optional field leaves the part, and one in the head leaves the rest of it', () => {
    const { draft } = readKit(
      TEXT.replace('taper: log', 'taper: loog')
        .replace('title: S, one volume', 'title: 3')
        .replace('kit:', 'hand: left\nview: component-side\npage: A4\narrangement: plate-row\nkit:'),
      'x.yaml',
    );
    expect(draft).toMatchObject({
      id: 'robin',
      title: 'Unnamed',
      hand: 'left',
      view: 'component-side',
      page: 'a4',
      arrangement: 'plate-row',
      opaque: [],
    });
    expect(draft?.stock).toEqual([220e3, 470e3]);
    expect(draft?.outputLoad.cable.value).toBe(500e-12);
    expect(draft?.parts.map(({ name }) => name)).toContain('volume');
    expect(readKit(TEXT.replace('kit: robin', 'kit: Robin'), 'x.yaml').draft).toMatchObject({
      id: 'unnamed',
      title: 'S, one volume',
    });
  });
  it('a joint that cannot be read is counted', () => {
    const { draft } = readKit(TEXT.replace('- volume.2 > output.tip', '- volume.2'), 'x.yaml');
    expect([draft?.joints.length, draft?.unread]).toEqual([6, 1]);
    expect(readKit(TEXT.replace(/joints:[\s\S]*/, ''), 'x.yaml').draft?.unread).toBe(1);
  });
});

describe('what a kit says and leaves out', () => {
  const read = (text: string) => {
    const { kit, problems } = readKit(text, 'x.yaml');
    expect(problems).toEqual([]);
    return kit;
  };
  it('the usual is: in free flow, from the solder side, right-handed, into 3 m of cable and 1 MΩ, at 1 kHz', () => {
    const kit = read(TEXT.replace(/stock.*\noutput-load.*\n/, ''));
    expect(kit).toMatchObject({ arrangement: 'free-flow', view: 'solder-side', hand: 'right' });
    expect(kit?.outputLoad).toMatchObject({
      cable: { value: 300e-12 },
      cableTolerance: { value: 0.2 },
      amplifier: { value: 1e6 },
      frequency: { value: 1000 },
    });
    expect(kit).not.toHaveProperty('page');
    expect(kit).not.toHaveProperty('stock');
  });
  it('what is given is taken as it is', () => {
    const kit = read(
      TEXT.replace('amplifier: 1M', 'amplifier: 500k, cable-tolerance: 10%, frequency: 440').replace(
        'kit:',
        'page: a5\nkit:',
      ),
    );
    expect(kit?.outputLoad).toMatchObject({
      cable: { value: 500e-12 },
      cableTolerance: { value: 0.1 },
      amplifier: { value: 500e3 },
      frequency: { value: 440 },
    });
    expect(kit).toMatchObject({ page: 'a5', stock: [220e3, 470e3] });
  });
  it('a joint has its kind, its ends, its place in the list, and what is said of the wire', () => {
    const kit = read(TEXT);
    expect(kit?.joints.map(({ kind, index }) => `${index} ${kind}`)).toEqual([
      '0 bend',
      '1 wire',
      '2 wire',
      '3 wire',
      '4 leg',
      '5 leg',
      '6 wire',
    ]);
    expect(kit?.joints[3]).toEqual({
      kind: 'wire',
      from: { part: 'neck', lug: 'hot' },
      to: { part: 'volume', lug: '3' },
      index: 3,
      colour: 'BU',
      length: 0.12,
      step: 6,
    });
    expect(kit?.joints[6]).toEqual({
      kind: 'wire',
      from: { part: 'volume', lug: '2' },
      to: { part: 'output', lug: 'tip' },
      index: 6,
    });
  });
  it('a part without a label is called by its name, in words', () => {
    const kit = read(
      TEXT.replaceAll('bleed', 'treble-bleed').replace('{ kind: jack }', '{ kind: jack, label: Out }'),
    );
    expect(kit?.parts.map(({ label }) => label)).toEqual(['Neck', 'Volume', 'Treble bleed', 'Out']);
  });
});

describe('a kit as a value', () => {
  it.each([
    [undefined, 'nothing'],
    [null, 'nothing'],
    [3, 'a number'],
    [3n, 'a number'],
    ['kit', 'text'],
    [[1], 'a list'],
    [true, 'true (a yes/no value)'],
    [() => 0, 'a piece of script'],
    [Number.NaN, 'a value that is not a number'],
    [Number.POSITIVE_INFINITY, 'a number that is too large'],
    [{}, 'keys and values'],
  ])('%o is %s', (value, words) => {
    expect(typeName(value)).toBe(words);
    const { problems } = kitFromValue(value, 'kit.ts');
    if (words === 'keys and values') expect(problems.map(({ code }) => code)).toEqual(['not-a-kit']);
    else
      expect(problems.map(({ code, detail }) => [code, 'got' in detail && detail.got])).toEqual([
        ['wrong-type', words],
      ]);
  });
  it('is a kit by a key of one, also a misspelt one', () => {
    for (const value of [
      { kit: 1 },
      { parts: 1 },
      { joints: 1 },
      { prats: 1 },
      { Kit: 1 },
      { a: 1, joins: 2 },
    ])
      expect(isKitLike(value), JSON.stringify(value)).toBe(true);
    for (const value of [{}, { title: 1 }, { arrangement: 1, seats: [] }, [], 'kit', null, 3, ['kit']])
      expect(isKitLike(value), JSON.stringify(value)).toBe(false);
  });
});

it('a word of the trade stands for the choice it means, where that is allowed', () => {
  const tapers = ['linear', 'log', 'reverse-log'];
  for (const [word, meant] of [
    ['audio', 'log'],
    [' Audio ', 'log'],
    ['LIN', 'linear'],
    ['anti log', 'reverse-log'],
    ['Anti-Log', 'reverse-log'],
    ['lgo', 'log'],
  ] as const)
    expect(meantBy(word, tapers), word).toBe(meant);
  expect(meantBy('audio', ['linear'])).toBeUndefined();
  expect(meantBy('constructor', tapers)).toBeUndefined();
});

it('a part that is missing here is told from a switch that a kit can describe', () => {
  for (const word of ['push-push', 'transformer', 'preamp']) expect(unsupported(word), word).toBe('missing');
  for (const word of ['toggle-3', 'Rotary', 'kill', '4-way', 'mini switch'])
    expect(unsupported(word), word).toBe('switch');
  for (const word of ['pot', 'jack', 'socket']) expect(unsupported(word), word).toBeUndefined();
});

it('lengths go from above nothing to ten metres, frequencies from 20 Hz to 20 kHz, both ends included', () => {
  const length = (text: string): unknown => lengthField.safeParse(text).data;
  expect(['10m', '1000cm', '0.1mm', '1in'].map(length)).toEqual([10, 10, 0.0001, 0.0254]);
  for (const text of ['10.001m', '0m', '-1m', '400in', '', 'mm']) expect(length(text), text).toBeUndefined();
  const hertz = (text: string | number): unknown => hertzField.safeParse(text).data;
  expect(['20', '20Hz', '20kHz', '20k', 20000, '1.5 kHz', '.5k'].map(hertz)).toEqual([
    20, 20, 20000, 20000, 20000, 1500, 500,
  ]);
  for (const text of ['19.9', '20.1k', '1M', '1e3', 'Hz']) expect(hertz(text), text).toBeUndefined();
});

it('a colour that was meant is found by its letters, its name or two of them in either order, and not by three', () => {
  for (const [written, code] of [
    ['bk', 'BK'],
    ['Bk.', 'BK'],
    ['orange', 'OG'],
    ['wht', 'WH'],
    ['WHBK', 'BKWH'],
    ['white/black', 'BKWH'],
    ['black and white', 'BKWH'],
    ['yellow green', 'GNYE'],
    ['GN-YE', 'GNYE'],
    ['silver', 'SR'],
  ] as const)
    expect(meantColour(written), written).toBe(code);
  for (const written of ['blackish', 'black white red', 'green white', 'B', '', 'and', 'black black'])
    expect(meantColour(written), written).toBeUndefined();
});

describe('what a kind finds wrong with its own', () => {
  const kit = (toggle: string) =>
    readKit(TEXT.replace('  output:', `  toggle: ${toggle}\n  output:`), 'x.yaml');
  const OWN = '{ kind: switch, lugs: { left: [A1, A0, A2] }, positions: [[[A0, A1]], []] }';
  it('is told at its place, and then the part cannot be used', () => {
    expect(kit(OWN).problems).toEqual([]);
    const twice = kit(OWN.replace('A2', 'A1'));
    expect(twice.problems.map(({ code, path }) => [code, path.join('.')])).toEqual([
      ['bad-value', 'parts.toggle.lugs'],
    ]);
    expect(twice.draft?.opaque).toEqual(['toggle']);
  });
  it('also counts beside a mistake in a field that may be left out', () => {
    const named = kit(OWN.replace('kind: switch', 'kind: switch, label: [a]'));
    expect(named.problems.map(({ code }) => code)).toEqual(['wrong-type']);
    expect(named.draft?.opaque).toEqual([]);
    expect(named.draft?.parts.map(({ name }) => name)).toContain('toggle');
    const both = kit(OWN.replace('kind: switch', 'kind: switch, label: [a]').replace('A2', 'A1'));
    expect(both.draft?.opaque).toEqual(['toggle']);
    expect(both.problems.length).toBeGreaterThan(0);
    // A key that nobody knows leaves the part as well.
    const unknown = kit(OWN.replace('kind: switch', 'kind: switch, colour: red'));
    expect([unknown.problems.map(({ code }) => code), unknown.draft?.opaque]).toEqual([['unknown-key'], []]);
  });
});

describe('a script that fails', () => {
  const told = (message: string) => {
    const { problems, source } = failedScript(message, 'kit.ts');
    return toDiagnostics(problems, source).map(({ place, message: words }) => [
      `${place.file}:${place.line}:${place.column}`,
      words,
    ]);
  };
  it('is told by what it threw, at the place that a compiler names', () => {
    expect(told('Transform failed with 1 error:\n/a/kit.ts:3:7: ERROR: Expected ";" but found "x"')).toEqual([
      ['kit.ts:3:8', expect.stringContaining('Expected ";" but found "x"')],
    ]);
    expect(told('boom\n    at kit.ts:3:7')).toEqual([['kit.ts:1:1', expect.stringMatching(/boom$/)]]);
    for (const silent of ['', ' \nmore'])
      expect(told(silent)[0]?.[1], silent).toContain('it threw an error without words');
  });
});

it('of a value without a text every problem is told by its path, from the first character of the file', () => {
  const { problems, source } = kitFromValue(
    { kit: 'a', title: 3, parts: { x: { kind: 'jak' } }, joints: [] },
    'kit.ts',
  );
  expect(
    toDiagnostics(problems, source).map(({ place, message }) => [
      `${place.line}:${place.column} ${place.excerpt}`,
      message.split(':')[0],
    ]),
  ).toEqual([
    ['1:1 ', 'title'],
    ['1:1 ', 'parts.x.kind'],
  ]);
  const whole = kitFromValue('text', 'kit.ts');
  expect(toDiagnostics(whole.problems, whole.source)[0]?.message).toMatch(/^expected a kit/);
});

it('problems are told in the order of the file, and at one place in the order they were found', () => {
  const all = told('title: S, one volume\n', '').concat(told('kit: robin\ntitle: S, one volume\n', ''));
  expect(all.map((one) => /“(\w+)”/.exec(one)?.[1])).toEqual(['title', 'kit', 'title']);
  const mixed = readKit(
    TEXT.replace('kind: jack', 'kind: jcak')
      .replace('title: S', 'titel: S')
      .replace('colour: BU', 'colour: XX'),
    'x.yaml',
  );
  expect(toDiagnostics(mixed.problems, mixed.source).map(({ place }) => place.line)).toEqual([2, 9, 14]);
});

it('without parts that can be read there is nothing to go on with', () => {
  expect(readKit(TEXT.replace('parts:', 'parts: 3\nrest:'), 'x.yaml').draft).toBeUndefined();
  expect(readKit(TEXT.replace('parts:', 'parts: [a]\nrest:'), 'x.yaml').draft).toBeUndefined();
  expect(readKit(TEXT.replace('title: S, one volume', 'title: [S]'), 'x.yaml').draft).toBeDefined();
});

it.each([['arrangement'], ['page']])('%s may not be empty, and need not be there', (key) => {
  expect(told('kit: robin', `kit: robin\n${key}: ""`)).toEqual([
    expect.stringMatching(new RegExp(`^2:\\d+ bad-value: “${key}” is empty`)),
  ]);
  expect(told('kit: robin', `kit: robin\n${key}: x`)).toEqual([]);
});

it('a YAML error in words tells a brace left open from wrong indentation', () => {
  expect(explainYaml('BAD_INDENT', 'Flow map in block collection must be sufficiently indented')).toContain(
    'not closed',
  );
  expect(explainYaml('BAD_INDENT', 'All collection items must start at the same column')).toContain(
    'indentation',
  );
  expect(explainYaml('MISSING_CHAR', 'Flow sequence')).not.toContain('opened above');
  expect(explainYaml('NOBODY_KNOWS')).toBe('the text cannot be read from here on');
});
