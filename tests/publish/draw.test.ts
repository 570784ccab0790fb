/** Which drawings come of which options, under which names. */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Kit } from '../../src/describe/kit.ts';
import { pageNames } from '../../src/files/layouts.ts';
import { prepare, render, renderInline, sheetsOf } from '../../src/pipeline.ts';
import type { Arrangement } from '../../src/place/arrangement.ts';
import { NoRouteError } from '../../src/place/place.ts';
import { type DrawOptions, drawKits } from '../../src/publish/draw-kits.ts';
import type { Outcome } from '../../src/publish/draw-plan.ts';
import { withLetters } from '../../src/publish/modes.ts';
import { plainly } from '../tools/inline.ts';

const file = 'samples/wren-sh.yaml';
/** No search: names and contents do not hang on it. */
const drawer = {
  prepare: (kit: Kit, arrangement: Arrangement, options: object) =>
    prepare(kit, arrangement, { ...options, effort: { steps: 0, seed: 1 } }),
  render,
  sheetsOf,
  renderInline,
};

async function outcomesOf(files: readonly string[], options: DrawOptions): Promise<readonly Outcome[]> {
  const outcomes: Outcome[] = [];
  for await (const outcome of drawKits(files, options, drawer)) outcomes.push(outcome);
  return outcomes;
}

async function drawn(options: Partial<DrawOptions>) {
  const out = mkdtempSync(join(tmpdir(), 'solderleaf-'));
  const all = { out, formats: ['svg'], mode: 'static', check: false, ...options } as const;
  const [outcome] = await outcomesOf([file], all);
  if (!outcome) throw new Error('nothing came of it');
  const texts = new Map(readdirSync(out).map((name) => [name, readFileSync(join(out, name), 'utf8')]));
  return { ...outcome, texts };
}

it('a note says which bare leg to sleeve where two cross, as these do without a search, and else there is none', async () => {
  const out = mkdtempSync(join(tmpdir(), 'solderleaf-'));
  const all = { out, formats: ['svg'], mode: 'static', check: false } as const;
  const kit = 'tests/bench/kits/h-push-pull-bleed.yaml';
  const notes = async (arrangement: string) =>
    (await outcomesOf([kit], { ...all, arrangement }))[0]?.diagnostics.filter(
      ({ code }) => code === 'bare-legs-cross',
    );
  const [note, ...more] = (await notes('cavity-2x2')) ?? [];
  expect(more).toEqual([]);
  expect(note?.severity).toBe('note');
  expect(note?.place.excerpt).toContain('leg:');
  expect(note?.message).toMatch(/a bare leg of “.+” crosses its other leg/);
  expect(readdirSync(out).map((name) => readFileSync(join(out, name), 'utf8'))[0]).toMatch(
    /Sleeve the leg of .+: it crosses its other leg\./,
  );
  expect(await notes('free-flow')).toEqual([]);
});

describe('draw', () => {
  it.each([
    [{}, ['wren-sh.svg']],
    [{ view: 'component-side' }, ['wren-sh-component-side.svg']],
    [{ hand: 'left', theme: 'dark' }, ['wren-sh-left-handed-dark.svg']],
    [{ position: 'selector=2' }, ['wren-sh-position-2.svg']],
    [{ position: 'all' }, ['wren-sh-position-1.svg', 'wren-sh-position-2.svg', 'wren-sh-position-3.svg']],
    [{ step: '1', theme: 'print' }, ['wren-sh-step-1-print.svg']],
  ] as const)('%j', async (options, names) => {
    const { failed, texts } = await drawn(options);
    expect(failed).toBe(false);
    expect([...texts.keys()].sort()).toEqual(names);
    for (const [name, svg] of texts) expect(svg).toContain(`id="${name.replace('.svg', '')}-title"`);
  });

  it.each([
    [{ page: 'a4' }, 'wren-sh-a4.svg'],
    [{ only: ['drawing'], theme: 'dark' }, 'wren-sh-drawing-dark.svg'],
    [{ only: ['key', 'cards'], page: 'a5' }, 'wren-sh-key-cards-a5.svg'],
    [{ width: 360 }, 'wren-sh-360px.svg'],
    [{ step: '2', only: ['checklist'], width: 300 }, 'wren-sh-step-2-checklist-300px.svg'],
    [{ mode: 'inline', theme: 'dark' }, 'wren-sh-dark-inline.svg'],
    [{ arrangement: 'layouts/free-flow.yaml', page: 'letter' }, 'wren-sh-free-flow-letter.svg'],
    [{ arrangement: 'plate-row' }, 'wren-sh.svg'],
  ] as const)('%j has a file of its own beside the usual one', async (options, name) => {
    expect([...(await drawn(options)).texts.keys()]).toEqual([name]);
  });

  describe('a drawing that would mislead', () => {
    /** Wires of so many joints left out of the drawing. */
    const without = (count: number) => ({
      ...drawer,
      render: (...args: Parameters<typeof render>) => {
        const { name, svg } = render(...args);
        let left = count;
        return {
          name,
          svg: svg.replace(/<g id="[^"]*-joint-\d+".*?<\/g>/gs, (group) => (left-- > 0 ? '' : group)),
        };
      },
    });
    const outcomeWithout = async (count: number) => {
      const out = mkdtempSync(join(tmpdir(), 'solderleaf-'));
      const options = { out, formats: ['svg'], mode: 'static', check: false } as const;
      for await (const outcome of drawKits([file], options, without(count)))
        return { ...outcome, written: readdirSync(out) };
      throw new Error('nothing came of it');
    };
    it.each([1, 5])('is not written, and what is wrong is said, %i wires left out', async (count) => {
      const { failed, diagnostics, written } = await outcomeWithout(count);
      expect(failed).toBe(true);
      expect(written).toEqual([]);
      const [told] = diagnostics.filter(({ severity }) => severity === 'error');
      expect(told).toMatchObject({ code: 'drawing-misleads', place: { line: 3 } });
      // Three are told of in full.
      const [first = '', ...others] = (told?.message ?? '').split('; ');
      expect(first).toContain('wren-sh could be misread and was not written: ');
      if (count === 1) expect(others.filter((one) => one.startsWith('and '))).toEqual([]);
      else
        expect(others).toEqual([
          expect.any(String),
          expect.any(String),
          expect.stringMatching(/^and [1-9]\d* more$/),
        ]);
    });
  });

  it('a kit whose wires find no way is an error of its own, and the others are drawn', async () => {
    const out = mkdtempSync(join(tmpdir(), 'solderleaf-'));
    const stuck = {
      ...drawer,
      prepare: (...args: Parameters<typeof drawer.prepare>) =>
        args[0].id === 'wren-sh' ? Promise.reject(new NoRouteError('none')) : drawer.prepare(...args),
    };
    const options = { out, formats: ['svg'], mode: 'static', check: false } as const;
    const outcomes: Outcome[] = [];
    for await (const one of drawKits([file, 'samples/heron-ss.yaml'], options, stuck)) outcomes.push(one);
    // A drawing may have notes, by where its parts stand.
    const errors = outcomes.map(({ diagnostics }) =>
      diagnostics.flatMap(({ severity, code }) => (severity === 'note' ? [] : [code])),
    );
    expect(outcomes.map(({ failed }, i) => [failed, errors[i]])).toEqual([
      [true, ['no-route']],
      [false, []],
    ]);
    expect(readdirSync(out)).toEqual(['heron-ss.svg']);
  });

  it('replaces a drawing of its own, and nothing else', async () => {
    const out = mkdtempSync(join(tmpdir(), 'solderleaf-'));
    const target = join(out, 'wren-sh.svg');
    const draw = async (options: Partial<DrawOptions> = {}) => {
      const all = { out, formats: ['svg'], mode: 'static', check: false, ...options } as const;
      const [outcome] = await outcomesOf([file], all);
      return { failed: outcome?.failed, errorLines: outcome?.errorLines.join() ?? '' };
    };
    expect(await draw()).toEqual({ failed: false, errorLines: '' });
    const own = readFileSync(target, 'utf8');
    writeFileSync(target, own.replace('Volume', 'Older'));
    expect((await draw()).failed).toBe(false);
    expect(readFileSync(target, 'utf8')).toBe(own);
    for (const other of ['precious', own.replaceAll('wren-sh', 'wren-sh-print')]) {
      writeFileSync(target, other);
      const { failed, errorLines } = await draw();
      expect(failed).toBe(true);
      expect(errorLines).toContain(
        `not written ${target}: it already exists and is not a drawing of this kit`,
      );
      expect(readFileSync(target, 'utf8')).toBe(other);
    }
  });

  it('draws neither of two kits with one id', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
    const copy = join(folder, 'copy.yaml');
    writeFileSync(copy, readFileSync(file, 'utf8'));
    const all = { out: folder, formats: ['svg'], mode: 'static', check: false } as const;
    for (const { failed, diagnostics } of await outcomesOf([copy, file], all)) {
      expect(failed).toBe(true);
      expect(diagnostics.map(({ code }) => code)).toContain('kit-id-taken');
    }
    expect(readdirSync(folder)).toEqual(['copy.yaml']);
  });

  it('draws neither of two kits whose drawings would have one name, and goes on with a third', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'solderleaf-'));
    const text = readFileSync(file, 'utf8');
    const files = ['a', 'a-pickguard', 'b'].map((id) => {
      const copy = join(folder, `${id}.yaml`);
      writeFileSync(
        copy,
        text
          .replace(/^kit: .*/m, `kit: ${id}`)
          .replace(/^arrangement: .*/m, `arrangement: ${id === 'a' ? 'plate-row' : 'pickguard'}`),
      );
      return copy;
    });
    const out = join(folder, 'out');
    const all = { out, formats: ['svg'], mode: 'static', check: false, arrangement: 'pickguard' } as const;
    const outcomes = await outcomesOf(files, all);
    expect(outcomes.map(({ failed }) => failed)).toEqual([true, true, false]);
    expect(outcomes[0]?.diagnostics.map(({ code }) => code)).toContain('output-taken');
    expect(readdirSync(out)).toEqual(['b.svg']);
  });

  it('says what there is when a state, a step or a page is not', async () => {
    expect((await drawn({ position: 'selector=4' })).lines.join()).toContain(
      'selector has no position “4”; allowed: 1, 2, 3',
    );
    expect((await drawn({ position: 'toggle=1' })).failed).toBe(true);
    expect((await drawn({ step: '7' })).lines.join()).toContain('allowed: 1 to 6');
    const { diagnostics, failed, texts } = await drawn({ page: 'a44' });
    expect(failed).toBe(true);
    expect(diagnostics.map(({ code }) => code)).toEqual(['unknown-page']);
    expect(texts.size).toBe(0);
  });

  it('says which side and which hand on the sheet', async () => {
    const [svg = ''] = (await drawn({ view: 'component-side', hand: 'left' })).texts.values();
    expect(svg).toContain('>Seen from the component side, as if through the plate; left-handed build.<');
  });

  it.each(pageNames())('%s: the whole sheet lies between the margins, at one scale', async (page) => {
    const [svg = ''] = (await drawn({ page })).texts.values();
    const [, x, y, across, down] = (/viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(svg) ?? []).map(Number);
    const [, wide, high] = (/ width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg) ?? []).map(Number);
    if (x === undefined || y === undefined || !across || !down || !wide || !high) throw new Error('no page');
    expect(across / wide).toBeCloseTo(down / high, 3);
    const margin = 8 * (across / wide);
    expect(-x).toBeGreaterThanOrEqual(margin - 1);
    expect(-y).toBeCloseTo(margin, 1);
  });

  it('on a page too small for the whole has the cards on a second sheet, whose name is kept free', async () => {
    const { texts, lines } = await drawn({ page: 'a5' });
    expect([...texts.keys()].sort()).toEqual(['wren-sh-a5.svg', 'wren-sh-sheet-2-a5.svg']);
    expect(lines.join('\n')).not.toContain('mm high');
    const [first = '', second = ''] = texts.values();
    expect([first, second].map((svg) => svg.includes('class="sl-card"'))).toEqual([false, true]);
    expect(first).toContain('>Loads in each switch position: sheet 2.<');
    expect(second).toContain('>Loads in each switch position: sheet 2 of 2.<');
  });

  it('says how large the type of a drawing is in a narrow column', async () => {
    // Placed anew for the column, unless an arrangement is asked for.
    const { lines, texts } = await drawn({ width: 360 });
    expect(lines.join('\n')).not.toContain('px high');
    // Where its parts stand then is no matter to its mark.
    const markOf = (of: ReadonlyMap<string, string>) =>
      / data-revision="(.*?)"/.exec([...of.values()].join());
    expect(markOf(texts)?.[1]).toMatch(/^\w{4}-\w{4}$/);
    expect(markOf(texts)?.[1]).toBe(markOf((await drawn({})).texts)?.[1]);
    expect((await drawn({ width: 360, arrangement: 'plate-row' })).lines.join('\n')).toMatch(
      /^note {6}wren-sh-360px: type in the drawing is \d\.\d px high at this width; at least 11 px/m,
    );
    expect((await drawn({ width: 360, only: ['key', 'cards'] })).lines.join('\n')).not.toContain('px high');
    expect((await drawn({ width: 1200 })).lines.join('\n')).not.toContain('px high');
  });

  it('refuses a column too narrow for the cards, and pieces that there are not', async () => {
    const narrow = await drawn({ width: 250 });
    expect(narrow.failed).toBe(true);
    expect(narrow.texts.size).toBe(0);
    const [, least = ''] =
      /--width 250 is too narrow for the load cards of this kit; at least (\d+)/.exec(narrow.lines.join()) ??
      [];
    expect((await drawn({ width: Number(least) - 1 })).failed).toBe(true);
    expect((await drawn({ width: Number(least) })).failed).toBe(false);
    expect((await drawn({ width: 250, only: ['drawing', 'key'] })).failed).toBe(false);
    expect((await drawn({ only: ['checklist'] })).lines.join()).toContain('only a step has a checklist');
    expect((await drawn({ only: ['cards'], step: '1' })).lines.join()).toContain('a step has no cards');
  });
});

describe('modes', () => {
  it('static: as it is drawn; inline: with a class for each ink, and without a style', async () => {
    const [svg = ''] = (await drawn({})).texts.values();
    const [inline = ''] = (await drawn({ mode: 'inline' })).texts.values();
    expect(inline).toContain('class="sl-paper sl-fill-paper"');
    expect(plainly(inline)).toBe(svg);
    expect(inline).not.toMatch(/<style| style=/);
  });

  it('standalone: brings the letters it needs, the same bytes each time', async () => {
    const [svg = ''] = (await drawn({})).texts.values();
    const alone = await withLetters(svg);
    expect(alone.match(/@font-face/g)).toHaveLength(2);
    expect(alone.length - svg.length).toBeLessThan(80_000);
    expect(await withLetters(svg)).toBe(alone);
    expect(alone).not.toMatch(/(?:href|src)="|url\((?!data:)/);
  });
});
