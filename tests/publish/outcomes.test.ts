/** What `draw` hands to the pipeline and what it makes of the drawings it gets back, with a pipeline that only pretends. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readKit } from '../../src/checked.ts';
import type { Prepared } from '../../src/draw/compose.ts';
import { prepare, render, renderInline, sheetsOf } from '../../src/pipeline.ts';
import { NoRouteError, type PlaceOptions } from '../../src/place/place.ts';
import { type DrawOptions, drawKits } from '../../src/publish/draw-kits.ts';
import type { Outcome } from '../../src/publish/draw-plan.ts';
import { pixelsAcross, svgToPng } from '../../src/publish/png.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-outcomes-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const text = (more = '', joints = '', head = ''): string =>
  `kit: robin\ntitle: S\n${head}parts:\n  neck: { kind: single-coil, resistance: 5.7k, inductance: 2.4 }\n  output: { kind: jack }\n${more}joints:\n  - neck.hot > output.tip\n  - neck.ground > output.sleeve\n${joints}`;
const put = (name: string, content: string): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};
const robin = put('robin.yaml', text());

let prepared: Prepared;
let svg = '';
beforeAll(async () => {
  const { kit } = readKit(text(), 'robin.yaml');
  if (!kit) throw new Error('not read');
  prepared = await prepare(kit, undefined, { effort: { steps: 0, seed: 1 } });
  svg = render(prepared).svg;
}, 120_000);

let count = 0;
async function outcomes(
  files: readonly string[],
  options: Partial<DrawOptions>,
  drawing: (name: string) => string,
) {
  const asked: PlaceOptions[] = [];
  const arrangements: string[] = [];
  const all: Outcome[] = [];
  const out = join(folder, `out-${count++}`);
  const drawer = {
    prepare: async (_: unknown, { arrangement }: { readonly arrangement: string }, given: PlaceOptions) => {
      asked.push(given);
      arrangements.push(arrangement);
      return prepared;
    },
    sheetsOf,
    render: (...args: Parameters<typeof render>) => {
      const { name } = render(...args);
      return { name, svg: drawing(name) };
    },
    renderInline,
  };
  for await (const one of drawKits(
    files,
    { out, formats: ['svg'], mode: 'static', check: false, ...options },
    drawer,
  ))
    all.push(one);
  const [first] = all;
  if (!first) throw new Error('nothing came of it');
  return { ...first, all, asked, arrangements, out };
}

describe('what is asked of the pipeline', () => {
  it('is what the options say, and where they say nothing, nothing', async () => {
    const plain = await outcomes([robin], {}, () => svg);
    expect(plain.asked).toEqual([{}]);
    expect(plain.arrangements).toEqual(['free-flow']);
    const given = await outcomes([robin], { hand: 'left', effort: 7, arrangement: 'plate-row' }, () => svg);
    expect(given.asked).toMatchObject([{ hand: 'left', effort: { steps: 7 } }]);
    expect(given.arrangements).toEqual(['plate-row']);
    expect((await outcomes([robin], { effort: 0 }, () => svg)).asked).toMatchObject([
      { effort: { steps: 0 } },
    ]);
  });
  it('a kit of eighty parts says how far it is, one of fewer does not', async () => {
    // Resistors in a row from the tip to the sleeve.
    const large = (parts: number): string => {
      const names = Array.from({ length: parts - 2 }, (_, k) => `r-${k}`);
      const ends = ['output.tip', ...names.flatMap((name) => [`${name}.1`, `${name}.2`]), 'output.sleeve'];
      const joints = [0, ...names.map((_, k) => k + 1)].map(
        (k) => `  - leg: ${ends[2 * k + 1]} > ${ends[2 * k]}\n`,
      );
      joints.splice(-1, 1, `  - leg: ${ends.at(-2)} > ${ends.at(-1)}\n`);
      return put(
        `large-${parts}.yaml`,
        text(names.map((name) => `  ${name}: { kind: resistor, value: 1k }\n`).join(''), joints.join('')),
      );
    };
    const told: string[] = [];
    const progress = (line: string): void => void told.push(line);
    for (const [parts, says] of [
      [79, false],
      [80, true],
    ] as const) {
      const { asked, file, diagnostics } = await outcomes([large(parts)], { progress }, () => svg);
      expect(diagnostics.map(({ code, message }) => code + message)).toEqual([]);
      expect(
        asked.map((one) => one.progress !== undefined),
        `${parts}`,
      ).toEqual([says]);
      asked[0]?.progress?.('placing');
      expect(told).toEqual(says ? [`${file}: 80 parts, placing`] : []);
    }
  });
});

describe('what comes of the drawings', () => {
  it('each is written under its name, in each format asked for, and is then unchanged', async () => {
    const { lines, errorLines, failed, diagnostics, out } = await outcomes(
      [robin],
      { formats: ['png', 'svg'] },
      () => svg,
    );
    expect([lines, errorLines, failed, diagnostics]).toEqual([
      [`written   ${join(out, 'robin.png')}`, `written   ${join(out, 'robin.svg')}`],
      [],
      false,
      [],
    ]);
    expect(readFileSync(join(out, 'robin.svg'), 'utf8')).toBe(svg);
    expect([...readFileSync(join(out, 'robin.png')).subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47]);
    const again = await outcomes([robin], { out }, () => svg);
    expect([again.lines, again.failed]).toEqual([[`unchanged ${join(out, 'robin.svg')}`], false]);
    const compared = await outcomes([robin], { out, check: true }, () => svg.replace('>S<', '>T<'));
    expect([compared.lines, compared.failed]).toEqual([[`differs   ${join(out, 'robin.svg')}`], true]);
    const missing = await outcomes([robin], { out, check: true, theme: 'dark' }, () => svg);
    expect([missing.lines, missing.failed]).toEqual([[`missing   ${join(out, 'robin-dark.svg')}`], true]);
    expect(readFileSync(join(out, 'robin.svg'), 'utf8')).toBe(svg);
  });
  it('one that is not neat is written with a warning; one that misleads is not', async () => {
    const faint = await outcomes([robin], {}, () =>
      svg.replace(/(<text[^>]* fill=")#[\da-f]{6}("[^>]*>Output<)/, '$1#e0e0e0$2'),
    );
    expect(faint.diagnostics.map(({ code, severity }) => [code, severity])).toEqual([
      ['drawing-untidy', 'warning'],
    ]);
    expect([faint.failed, readdirSync(faint.out)]).toEqual([false, ['robin.svg']]);
    const wrong = await outcomes([robin], {}, () => svg.replace(/<g id="[^"]*-joint-1".*?<\/g>/s, ''));
    expect(wrong.diagnostics.map(({ code, severity }) => [code, severity])).toEqual([
      ['drawing-misleads', 'error'],
    ]);
    expect([wrong.failed, wrong.lines, wrong.errorLines]).toEqual([true, [], []]);
  });
  it('of the findings three are told, and of the others how many there are', async () => {
    const faint = (many: number): string => {
      let left = many;
      return svg.replace(/(<text[^>]* fill=")#[\da-f]{6}(")/g, (all, a: string, b: string) =>
        left-- > 0 ? `${a}#e8e8e8${b}` : all,
      );
    };
    const message = async (many: number): Promise<string> =>
      (await outcomes([robin], {}, () => faint(many))).diagnostics[0]?.message ?? '';
    expect(await message(3)).not.toMatch(/and \d+ more/);
    expect((await message(3)).match(/a contrast of/g)).toHaveLength(3);
    expect(await message(4)).toMatch(/and 1 more/);
    expect((await message(5)).match(/a contrast of/g)).toHaveLength(3);
    expect(await message(5)).toMatch(/and 2 more/);
  });
  it('what stands in the way is left alone and complained of; so is a folder that cannot be', async () => {
    const { out } = await outcomes([robin], {}, () => svg);
    writeFileSync(join(out, 'robin.svg'), 'mine');
    const mine = await outcomes([robin], { out }, () => svg);
    expect([mine.lines, mine.failed]).toEqual([[], true]);
    expect(mine.errorLines.join()).toContain('is not a drawing of this kit');
    const nowhere = await outcomes([robin], { out: join(robin, 'x') }, () => svg);
    expect([nowhere.lines, nowhere.failed]).toEqual([[], true]);
    expect(nowhere.errorLines).toEqual([
      `cannot write to ${join(robin, 'x')}: there is a file where the folder should be (${join(robin, 'x', 'robin.svg')}); choose another with --out`,
    ]);
  });
  it('a warning of the kit is passed on, a note is not', async () => {
    const noted = put('noted.yaml', text().replace(', inductance: 2.4', ''));
    expect((await outcomes([noted], {}, () => svg)).diagnostics).toEqual([]);
  });
  it('a page too small for the type is noted with what the type would be, one at the limit is not', async () => {
    const [, wide, high] = (/viewBox="\S+ \S+ (\S+) (\S+)"/.exec(svg) ?? []).map(Number);
    const sized = (millimetres: number): string => {
      const tall = (millimetres * (high ?? 0)) / (wide ?? 1);
      return svg.replace(/ width="\d+" height="\d+"/, ` width="${millimetres}mm" height="${tall}mm"`);
    };
    const smallest = Math.min(...[...svg.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size)));
    const across = Number(/viewBox="\S+ \S+ (\S+) /.exec(svg)?.[1]);
    const at = async (type: number, page: string | undefined = 'a4') =>
      (
        await outcomes([robin], page === undefined ? {} : { page }, () => sized((type * across) / smallest))
      ).lines.filter((line) => line.startsWith('note'));
    expect(await at(2.01)).toEqual([]);
    expect((await at(1.96)).join()).toMatch(
      /^note {6}robin: type on a4 is only 1\.9 mm high; at least 2 mm is readable\. Use a larger page, or --step\.$/,
    );
    expect((await at(0.57)).join()).toContain('only 0.5 mm high');
    expect(await at(0.5, '')).toEqual(expect.any(Array));
  });
});

describe('names', () => {
  it.each([
    [{}, '', 'robin.svg'],
    [{ page: 'a4' }, '', 'robin-a4.svg'],
    [{ page: 'a4' }, 'page: a4\n', 'robin.svg'],
    [{ page: 'a5' }, 'page: a4\n', 'robin-a5.svg'],
    [{ arrangement: 'plate-row' }, '', 'robin-plate-row.svg'],
    [{ arrangement: 'free-flow' }, '', 'robin.svg'],
    [{ mode: 'inline' }, '', 'robin-inline.svg'],
    [
      { arrangement: 'plate-row', page: 'a4', mode: 'inline', theme: 'dark', view: 'component-side' },
      '',
      'robin-component-side-dark-plate-row-a4-inline.svg',
    ],
  ] as const)('%j of a kit with %j: %s', async (options, head, name) => {
    const file = put('named.yaml', text('', '', head));
    const { out } = await outcomes([file], options, () => svg);
    expect(readdirSync(out)).toEqual([name]);
  });
  it('two kits whose drawings would have one name are refused, each naming the other, and so is one named twice', async () => {
    const [a, b] = [put('a.yaml', text()), put('b.yaml', text())];
    const both = await outcomes([a, b], {}, () => svg);
    expect(
      both.all.map(({ failed, diagnostics }) => [
        failed,
        diagnostics.map(({ code, message }) => [code, message.includes(a), message.includes(b)]),
      ]),
    ).toEqual([
      [true, [['kit-id-taken', false, true]]],
      [true, [['kit-id-taken', true, false]]],
    ]);
    const other = put('other.yaml', text().replace('robin', 'wren'));
    expect((await outcomes([a, other], {}, () => svg)).all.map(({ failed }) => failed)).toEqual([
      false,
      false,
    ]);
  });
  it('wires without a way are an error of the kit, any other error is the program’s', async () => {
    const failing = (thrown: Error) => async () => {
      for await (const one of drawKits(
        [robin],
        { out: folder, formats: ['svg'], mode: 'static', check: false },
        { prepare: () => Promise.reject(thrown), sheetsOf, render, renderInline },
      ))
        return one;
      return undefined;
    };
    expect(await failing(new NoRouteError('none'))()).toMatchObject({
      failed: true,
      diagnostics: [{ code: 'no-route' }],
    });
    await expect(failing(new Error('ours'))()).rejects.toThrow('ours');
  });
});

describe('modes and pictures', () => {
  it('a picture of a page has 300 dots to an inch, any other is 1600 pixels wide, unless a resolution is asked for', () => {
    const [page, free] = [
      '<svg viewBox="0 0 9 9" width="297mm" height="210mm">',
      '<svg viewBox="0 0 9 9" width="960">',
    ];
    // A4 is 297 mm long: 3508 dots at 300, ISO 216 and 25.4 mm to an inch.
    expect([pixelsAcross(page), pixelsAcross(page, 150), pixelsAcross(page, 1200)]).toEqual([
      3508, 1754, 14031,
    ]);
    expect([pixelsAcross(free), pixelsAcross(free, 96), pixelsAcross(free, 300)]).toEqual([1600, 960, 3000]);
  });
  it('draw makes it so wide', async () => {
    const [, across = ''] = /^<svg[^>]* width="([\d.]+)"/.exec(svg) ?? [];
    for (const [options, wide] of [
      [{}, 1600],
      [{ dpi: 48 }, Math.round(Number(across) / 2)],
    ] as const) {
      const { out, all } = await outcomes([robin], { ...options, formats: ['png'] }, () => svg);
      expect(all.map(({ failed }) => failed)).toEqual([false]);
      const [name = ''] = readdirSync(out);
      expect(readFileSync(join(out, name)).readUInt32BE(16)).toBe(wide);
    }
  });
  it('a picture is 1600 pixels wide unless told otherwise', async () => {
    const wide = async (...width: [number?]): Promise<number> =>
      Buffer.from(
        await svgToPng('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 10"></svg>', ...width),
      ).readUInt32BE(16);
    expect(await wide()).toBe(1600);
    expect(await wide(80)).toBe(80);
  });
});
