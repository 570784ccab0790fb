/** The padding choice as it is printed and written. Values are common practice, no source; loads by the parallel law. */
import {
  chmodSync,
  lstatSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { choosePads, type Match, type PadOptions } from '../../src/analyse/index.ts';
import { choiceOf, stockList } from '../../src/commands/pad.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { readKit } from '../../src/describe/read.ts';
import { loadKit } from '../../src/files/load.ts';
import { writePads } from '../../src/files/pad-write.ts';
import { padData } from '../../src/report/pad-data.ts';
import { padReport } from '../../src/report/pad-report.ts';
import { buildCircuit } from '../../src/solve/build.ts';
import { mixedSetText } from '../describe/fixtures/mixed-set.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-pad-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const put = (name: string, text: string): string => {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
};
const textOf = (file: string): string => readFileSync(file, 'utf8');

function kitOf(text: string, file = 'x.yaml'): Kit {
  const { kit } = readKit(text, file);
  if (!kit) throw new Error('no kit');
  return kit;
}

function report(text: string, options: PadOptions = {}, all = true): string {
  const circuit = buildCircuit(kitOf(text));
  const other: Match = options.match === 'signal' ? 'dc' : 'signal';
  return padReport(
    circuit,
    choosePads(circuit, options),
    choosePads(circuit, { ...options, match: other }),
    all,
  );
}

async function write(file: string, options: PadOptions = {}) {
  const { kit } = await loadKit(file);
  if (!kit) throw new Error(`${file} is not a kit`);
  return writePads(file, choosePads(buildCircuit(kit), options));
}

const par = (...ohms: number[]): number => 1 / ohms.reduce((sum, r) => sum + 1 / r, 0);
const kilo = (ohms: number): string => `${Number((ohms / 1e3).toPrecision(4))} kΩ`;

describe('the report', () => {
  const dc = report(mixedSetText);

  it('says in one line what to do, and gives bands, ideal value and both loads', () => {
    const load = kilo(par(500e3, 470e3));
    expect(dc).toContain(
      `bridge  fit 470 kΩ from selector.A1 to volume.case: 500 kΩ (+100.0 %) → ${load} (−3.1 %)`,
    );
    // IEC 60062: yellow 4, violet 7, yellow ×10⁴, gold 5 %.
    expect(dc).toContain('470 kΩ, bands YE VT YE GD for ±5 %');
    expect(dc).toMatch(/ideal value\s+500 kΩ/);
    expect(dc).toMatch(
      new RegExp(
        `both loads\\s+DC ${load}, reference 250 kΩ \\(−3\\.1 %\\); signal 163\\.\\d kΩ, reference 125\\.\\d kΩ`,
      ),
    );
    expect(dc).toMatch(/signal load\s+to match it instead \(--match signal\), 270 kΩ: DC/);
    expect(dc).toContain('neck    OK: DC load 500 kΩ in position 3');
  });

  it('gives the bands of a pad that is there by its own tolerance', () => {
    const wren = textOf('samples/wren-hs.yaml').replace(
      'value: 470k, tolerance: 5%',
      'value: 100k, tolerance: 1%',
    );
    // IEC 60062: five bands for E96 and 1 %, brown at the end.
    expect(report(wren)).toMatch(/bands [A-Z ]+ BN for ±1 %/);
  });

  it('shows what is left when all is done, where anything is to be done', () => {
    expect(dc).toContain('With all these resistors fitted');
    expect(report(mixedSetText.replaceAll('500k', '250k'))).not.toContain('With all these');
  });

  it('shows both neighbours with their loads', () => {
    for (const [value, which] of [
      [390e3, 'next below'],
      [470e3, 'chosen'],
      [560e3, 'next above'],
    ] as const)
      expect(dc).toMatch(new RegExp(`${kilo(value)}\\s+${which}\\s+${kilo(par(500e3, value))}`));
  });

  it('shows what it does elsewhere, the shared position first', () => {
    const table = dc.slice(dc.indexOf('in the other positions'), dc.indexOf('With all these'));
    expect(table.indexOf('selector 2  neck')).toBeGreaterThan(0);
    expect(table.indexOf('selector 2  neck')).toBeLessThan(table.indexOf('selector 3'));
    expect(table).toContain(`500 kΩ → ${kilo(par(500e3, 470e3))}`);
    expect(table).not.toContain('selector 1');
  });

  it('offers other ways only where they make nothing worse, and says of the chosen one what it makes worse', () => {
    expect(dc).not.toContain('Alternative');
    // In position 2 the humbucker has the resistor across it too: 500k ∥ 470k of 500k.
    expect(dc).toContain(`        worse in position 2: neck 500 kΩ → ${kilo(par(500e3, 470e3))}, −51.5 %\n`);
    const two = report(mixedSetText.replace('kind: humbucker', 'kind: single-coil'));
    expect(two).toMatch(/Alternative: 470 kΩ from \S+ to volume\.case, in circuit in every position\n/);
    expect(two).toMatch(/Alternative: other pots and no padding resistor: volume 250 kΩ\n/);
  });

  it('has each position once in its tables, with the reference of the load that is matched', () => {
    for (const [match, reference] of [
      ['dc', '250 kΩ'],
      ['signal', '125.1 kΩ'],
    ] as const) {
      const text = report(mixedSetText, { match });
      const rows = text.slice(text.indexOf('With all these')).split('\n').slice(2, 6);
      expect(rows.map((row) => row.trim().split(/ {2,}/).slice(0, 2).join(' '))).toEqual([
        'selector 2 neck',
        'selector 2 bridge',
        'selector 1 bridge',
        'selector 3 neck',
      ]);
      expect(rows[2]?.trim().split(/ {2,}/)[4]).toBe(reference);
    }
  });

  it('says whether a pickup is judged alone, and else beside whom', () => {
    expect(dc).toMatch(/matched +in position 1, on its own; reference DC load 250 kΩ/);
    const joined = mixedSetText.replace(
      '- jumper: selector.A0',
      '- jumper: selector.A1 > selector.B3\n  - jumper: selector.A0',
    );
    expect(report(joined)).toMatch(/matched +in position 1, together with neck; reference/);
  });

  it('in short takes a screenful, and says where the rest is', () => {
    const short = report(mixedSetText.replace('kind: humbucker', 'kind: single-coil'), {}, false);
    expect(short.split('\n').length).toBeLessThan(40);
    expect(short).toMatch(/\n {2}alternative +other pots and no padding resistor: volume 250 kΩ\n/);
    expect(short).toMatch(/\n {2}other values +ideal 500 kΩ; 390 kΩ gives 219\.1 kΩ, −12\.4 %; 560 kΩ gives/);
    expect(short).toMatch(/add --all\.$/);
    expect(report(textOf('samples/kestrel-hss.yaml'), {}, false)).not.toContain('--all');
  });

  it('E24 gives 510 kΩ; from a stock it names what is missing beside the chosen value', () => {
    expect(report(mixedSetText, { series: 'E24' })).toContain('fit 510 kΩ');
    const stock = report(mixedSetText, { series: { stock: [470e3] } });
    expect(stock).toContain('from the stock (470 kΩ)');
    expect(stock).toContain('no smaller and no larger value available');
  });

  it('says that a load is too heavy, and why', () => {
    const heavy = report(
      mixedSetText.replace(
        'volume:   { kind: pot, label: Volume, value: 500k',
        'volume:   { kind: pot, label: Volume, value: 250k',
      ),
    );
    expect(heavy).toContain('neck    no resistor helps, its load is already too heavy: 250 kΩ');
    expect(heavy).toContain('\n  loaded by  DC load without it\n  volume                   open\n');
    // A larger volume would suit the neck and be twice too light for the bridge.
    expect(heavy).not.toContain('Alternative');
    const humbuckers = report(
      mixedSetText
        .replace('kind: single-coil', 'kind: humbucker')
        .replace(
          'volume:   { kind: pot, label: Volume, value: 500k',
          'volume:   { kind: pot, label: Volume, value: 250k',
        ),
    );
    expect(humbuckers).toContain('other pots and no padding resistor: volume 500 kΩ');
  });

  it('says that nothing in stock helps, and what the nearest would do', () =>
    expect(report(mixedSetText, { series: { stock: [22e3] } })).toContain(
      `no available value helps: 22 kΩ would give ${kilo(par(500e3, 22e3))}`,
    ));

  it('says which pads are needless, kept and shared', () => {
    const wren = textOf('samples/wren-hs.yaml');
    expect(report(wren.replace('pad.1 > selector.A2', 'pad.1 > selector.B2'))).toMatch(
      /neck +remove pad: without it 500 kΩ, with it 242\.3 kΩ in position 3, reference 500 kΩ, −51\.5 %/,
    );
    expect(report(wren.replace('value: 470k', 'value: 1M'), { series: { stock: [1e6] } })).toMatch(
      /bridge +keep pad, 1 MΩ, the nearest available: 333\.3 kΩ, \+33\.3 %/,
    );
    // A link makes one net of both pickups’ lugs.
    const joined = mixedSetText
      .replace('  - jumper: selector.A0', '  - jumper: selector.A1 > selector.B3\n  - jumper: selector.A0')
      .replace('resistance: 7.8k', 'reference: { volume: 300k, tone: 300k }');
    expect(report(joined, { match: 'signal' })).toContain('bridge  shares pad-neck with neck');
  });

  it('keeps its lines short enough to read', () => {
    for (const line of dc.split('\n').filter((one) => /^\s+selector/.test(one)))
      expect(line.length).toBeLessThanOrEqual(110);
  });

  it('as data carries the same, unrounded', () => {
    const circuit = buildCircuit(kitOf(mixedSetText));
    const { kit, pickups } = JSON.parse(JSON.stringify(padData(circuit, choosePads(circuit))));
    expect(kit).toBe('mixed-set');
    expect(pickups.bridge).toMatchObject({
      verdict: 'pad',
      switches: { selector: 1 },
      from: 'selector.A1',
      to: 'volume.case',
      chosen: { ohms: 470e3 },
      below: { ohms: 390e3 },
    });
    expect(pickups.bridge.chosen.load).toBeCloseTo(par(500e3, 470e3), 3);
    expect(pickups.bridge.alternatives).toEqual([]);
    expect(pickups.bridge.worse).toMatchObject([{ switches: { selector: 2 }, pickup: 'neck' }]);
  });
});

describe('--write', () => {
  it('adds the part and its joints and nothing else; twice changes nothing more', async () => {
    const file = put('mixed.yaml', mixedSetText);
    expect((await write(file)).outcome).toBe('written');
    const once = textOf(file);
    const gone = mixedSetText.split('\n').filter((line) => !once.split('\n').includes(line));
    expect(gone).toEqual([]);
    expect(once.split('\n').filter((line) => line.includes('pad-bridge'))).toHaveLength(3);
    expect(once.split('\n')).toHaveLength(mixedSetText.split('\n').length + 3);
    const when = statSync(file).mtimeMs;
    expect((await write(file)).outcome).toBe('unchanged');
    expect(textOf(file)).toBe(once);
    expect(statSync(file).mtimeMs).toBe(when);
  });

  it('gives a pad that is there its new value, and that alone', async () => {
    const file = put('kestrel.yaml', textOf('samples/kestrel-hss.yaml'));
    expect((await write(file, { match: 'signal' })).outcome).toBe('written');
    const changed = (text: string) =>
      text.replace(/(pad-middle: \{ kind: resistor, label: Middle pad, value: )\d+k/, '$1');
    expect(textOf(file)).toContain('label: Middle pad, value: 270k, tolerance: 5%, sleeving: 1');
    expect(changed(textOf(file))).toBe(changed(textOf('samples/kestrel-hss.yaml')));
  });

  it('keeps line ends, byte order mark, permissions and a symbolic link', async () => {
    const text = `\uFEFF${mixedSetText.replaceAll('\n', '\r\n')}`;
    const file = put('marked.yaml', text);
    chmodSync(file, 0o640);
    const link = join(folder, 'link.yaml');
    symlinkSync(file, link);
    expect((await write(link)).outcome).toBe('written');
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(statSync(file).mode & 0o777).toBe(0o640);
    expect(textOf(file).startsWith('\uFEFF#')).toBe(true);
    expect(textOf(file).replaceAll('\r\n', '')).not.toContain('\n');
  });

  it('writes JSON as JSON', async () => {
    const source = kitText();
    const file = put('mixed.json', source);
    expect((await write(file)).outcome).toBe('written');
    expect(JSON.parse(textOf(file)).parts['pad-bridge']).toEqual({
      kind: 'resistor',
      label: 'Bridge pad',
      value: '470k',
      sleeving: 1,
    });
    expect((await write(file)).outcome).toBe('unchanged');
  });

  it('leaves a TypeScript kit alone and prints the lines to add', async () => {
    const file = put('mixed.ts', `export default ${kitText()};\n`);
    const { outcome, lines } = await write(file);
    expect(outcome).toBe('refused');
    expect(lines.join('\n')).toContain("{ leg: 'pad-bridge.1 > selector.A1' },");
    expect(textOf(file)).toBe(`export default ${kitText()};\n`);
  });

  it('refuses where a change would reach further than planned', async () => {
    // The stock's one value is the pad's own, by an alias: with the pad it would change as well.
    const text = `${textOf('samples/wren-hs.yaml').replace('Bridge pad, value: 470k', 'Bridge pad, value: &v 470k')}stock: [*v]\n`;
    const file = put('anchored.yaml', text);
    const { outcome, lines } = await write(file, { match: 'signal', series: 'E12' });
    expect(outcome).toBe('refused');
    expect(lines.join('\n')).toContain('make these changes by hand');
    expect(textOf(file)).toBe(text);
  });

  it('refuses to choose between two pads of one pickup', async () => {
    const text = mixedSetText
      .replace(
        '  # Pads will',
        '  one: { kind: resistor, value: 2M }\n  two: { kind: resistor, value: 2M }\n  # Pads will',
      )
      .replace(
        '# End of',
        '  - leg: one.1 > selector.A1\n  - leg: one.2 > volume.case\n  - leg: two.1 > selector.A2\n  - leg: two.2 > volume.case\n# End of',
      );
    const file = put('two.yaml', text);
    const { outcome, lines } = await write(file);
    expect(outcome).toBe('refused');
    expect(lines.join('\n')).toContain('bridge has one and two');
    expect(textOf(file)).toBe(text);
  });

  it('is done with every sample after the first time, whatever is matched', async () => {
    const outcomes: string[] = [];
    for (const name of readdirSync('samples').filter((one) => one.endsWith('.yaml')))
      for (const match of ['dc', 'signal'] as const)
        for (const series of ['E3', 'E24'] as const) {
          const file = put(`again-${name}`, textOf(join('samples', name)));
          const first = await write(file, { match, series });
          expect(first.outcome, `${name} ${match} ${series}`).not.toBe('refused');
          outcomes.push(first.outcome);
          const once = textOf(file);
          expect((await write(file, { match, series })).outcome, `${name} ${match} ${series}`).toBe(
            'unchanged',
          );
          expect(textOf(file)).toBe(once);
        }
    expect(new Set(outcomes)).toEqual(new Set(['written', 'unchanged']));
  });

  it('leaves no half-written file behind', () =>
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]));
});

/** The mixed set as JSON text. */
function kitText(): string {
  const { parts, joints } = kitOf(mixedSetText);
  const written = Object.fromEntries(
    parts.map((part) => [
      part.name,
      { kind: part.kind, label: part.label, ...('value' in part ? { value: part.value.value } : {}) },
    ]),
  );
  const ends = joints.map(({ kind, from, to }) => ({
    [kind]: `${from.part}.${from.lug} > ${to.part}.${to.lug}`,
  }));
  return JSON.stringify({ kit: 'mixed-set', title: 'HS', parts: written, joints: ends }, null, 2);
}

describe('what is chosen from', () => {
  const kit = kitOf(mixedSetText);
  const stocked = kitOf(mixedSetText.replace('parts:', 'stock: [220k, 1M]\nparts:'));
  it.each([
    ['E12 by default', kit, {}, 'E12'],
    ['the kit’s stock by default', stocked, {}, { stock: [220e3, 1e6] }],
    ['a series before the kit’s stock', stocked, { series: 'E24' }, 'E24'],
    ['the command’s stock before the kit’s', stocked, { stock: [1e3] }, { stock: [1e3] }],
    ['the stock by name', stocked, { series: 'stock' }, { stock: [220e3, 1e6] }],
    ['no stock where there is none', kit, { series: 'stock' }, undefined],
  ] as const)('%s', (_, from, flags, choice) => expect(choiceOf(from, flags)).toEqual(choice));
});

describe('--stock', () => {
  it('takes values as a description does', () =>
    expect(stockList('220k, 4k7,1M ,470')).toEqual([220e3, 4700, 1e6, 470]));

  it.each(['', ' ', ',', '470k,', '470k,,1k', '0', '-470k', '470k,many', '470n', '1e12', '0.01', '470k;1k'])(
    'refuses “%s” whole, saying what is allowed',
    (text) => expect(() => stockList(text)).toThrow(/allowed: resistances from 100 mΩ to 1 GΩ/),
  );
});

it('a pickup that fits says that the other load is there to be judged, for DC only', () => {
  const fitting = mixedSetText.replaceAll('500k', '250k');
  const line = (match: Match) =>
    report(fitting, { match })
      .split('\n')
      .filter((text) => /\bOK:/.test(text));
  expect(line('dc').join('\n')).toContain('--match signal judges it');
  expect(line('signal').length).toBeGreaterThan(0);
  expect(line('signal').join('\n')).not.toContain('--match');
});

it('the resistors in stock stand one below the other, figures flush right', () => {
  const text = report(mixedSetText, { series: { stock: [220e3, 470e3, 1e6] } }).split('\n');
  const head = text.findIndex((one) => /^ +available/.test(one));
  const rows = text.slice(head, head + 4).filter((one) => one.startsWith('  ') && one.trim() !== '');
  expect(rows.length).toBeGreaterThan(2);
  expect(new Set(rows.slice(0, 3).map((one) => one.length)).size).toBe(1);
  // The value begins where its heading begins.
  expect(rows[1]?.search(/\S/)).toBe(rows[0]?.search(/\S/));
});

it('the same resistor at the volume’s input is offered, where the signal meets it in every position', () => {
  const circuit = buildCircuit(kitOf(mixedSetText.replace('kind: humbucker', 'kind: single-coil')));
  const offered = choosePads(circuit).advice.flatMap((advice) =>
    advice.kind === 'pad'
      ? advice.alternatives.flatMap((one) => (one.kind === 'elsewhere' ? [one.pad.from] : []))
      : [],
  );
  const input = circuit.lugs.get('volume.3')?.net;
  expect(offered.length).toBeGreaterThan(0);
  for (const lug of offered) expect(circuit.lugs.get(lug)?.net).toBe(input);
});
