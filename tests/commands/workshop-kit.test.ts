/** Kits of a workshop as commands name them, and what `check` says of many at once. Expected words were read beside the kits below. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { addCheck } from '../../src/commands/check.ts';
import { addDraw } from '../../src/commands/draw.ts';
import { addLoads } from '../../src/commands/loads.ts';
import { addPad } from '../../src/commands/pad.ts';
import { addResponse } from '../../src/commands/response.ts';
import { kitText, workshop } from '../catalogue/folder.ts';
import { run } from './run.ts';

const FAMILY = `kits: [kits]
families:
  - kit: s-{cap}
    title: S, {cap}F
    extends: ./kits/base.yaml
    page: a5
    matrix:
      cap: { 22n: , 47n: { parts: { tone-cap: { value: 47n } } } }
`;
const shop = () =>
  workshop({
    'kits/base.yaml': kitText('base'),
    'kits/other.yaml': kitText('other'),
    'solderleaf.yaml': FAMILY,
  });

describe('one kit of a workshop', () => {
  it.each([
    ['loads', addLoads, []],
    ['response', addResponse, []],
    ['pad', addPad, []],
    ['check', addCheck, []],
    ['check', addCheck, ['--explain', 'tone-cap']],
  ] as const)(
    '%s takes it by the folder and by the catalogue, a member of a family and a file',
    async (name, add, options) => {
      const folder = shop();
      const by = (path: string) => run(add, name, path, ...options);
      const member = await by(`${folder}#s-47n`);
      expect(member).toMatchObject({ status: 0, stderr: '' });
      const named = await by(`${join(folder, 'solderleaf.yaml')}#s-47n`);
      expect(named.stdout.replaceAll('solderleaf.yaml#', '#').replaceAll('/#', '#')).toBe(member.stdout);
      expect(member.stdout).toContain(name === 'check' ? 's-47n' : 'S, 47nF');
      expect(await by(`${folder}#other`)).toMatchObject({ status: 0, stderr: '' });
      expect((await by(`${folder}#s-22n`)).stdout).not.toEqual(member.stdout);
    },
  );

  it('draw draws it on the page that the catalogue says', async () => {
    const folder = shop();
    const out = join(folder, 'drawn');
    const drawn = await run(addDraw, 'draw', `${folder}#s-47n`, '--effort', '0', '--out', out);
    expect(drawn).toMatchObject({ status: 0 });
    const [, ...sides] =
      /^<svg[^>]* width="(\d+)mm" height="(\d+)mm"/.exec(readFileSync(join(out, 's-47n.svg'), 'utf8')) ?? [];
    // ISO 216: A5 is 148 mm by 210 mm.
    expect(sides.sort()).toEqual(['148', '210']);
    expect(existsSync(join(out, 's-22n.svg'))).toBe(false);
  });

  it.each([
    [
      'loads',
      addLoads,
      '#s-74n',
      /has no kit “s-74n”: did you mean s-47n\? its kits: base, other, s-22n, s-47n/,
    ],
    ['draw', addDraw, '#', /has no kit “”/],
    ['check', addCheck, '#s-74n', /did you mean s-47n\?/],
    [
      'draw',
      addDraw,
      '',
      /is a workshop: name one of its kits, as in “solderleaf draw .*#ID”, or make all of them with “solderleaf build /,
    ],
    ['draw', addDraw, '/solderleaf.yaml', /is a workshop: .*solderleaf\.yaml#ID”/],
    [
      'response',
      addResponse,
      '',
      /is a workshop: .*“solderleaf response .*#ID”; “solderleaf check .*” lists them/,
    ],
  ] as const)('%s of another, or of none, says what there is: %s', async (name, add, end, words) => {
    const { status, stderr } = await run(add, name, `${shop()}${end}`);
    expect(status).toBe(2);
    expect(stderr).toMatch(words);
  });

  it('pad writes into none', async () =>
    expect(await run(addPad, 'pad', `${shop()}#s-47n`, '--write')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('named by its workshop'),
    }));
});

describe('what several kits have in common', () => {
  it('is said once, with the others that have it, and ends with totals', async () => {
    const folder = shop();
    const { stdout } = await run(addCheck, 'check', folder);
    const text = stdout.replaceAll(`${folder}/`, '');
    // Two files of one text, and the two members made from one of them: each has the note of values assumed.
    expect(text.match(/values-assumed$/gm)).toHaveLength(1);
    expect(text.match(/Add those that you know/g)).toHaveLength(1);
    expect(text).toMatch(/also: other \(kits\/other\.yaml:3\), s-22n \(.*\), s-47n \(.*\)\n/);
    const lines = text
      .trimEnd()
      .split('\n')
      .filter((line) => / notes?$/.test(line));
    expect(lines.slice(0, 4).map((line) => line.split(':')[0])).toEqual([
      'kits/base.yaml',
      'kits/other.yaml',
      'solderleaf.yaml, s-22n',
      'solderleaf.yaml, s-47n',
    ]);
    const notes = lines.slice(0, 4).map((line) => Number(/(\d+) notes?$/.exec(line)?.[1]));
    expect(lines[4]).toBe(
      `solderleaf.yaml: 4 kits: no errors, no warnings, ${notes.reduce((a, b) => a + b)} notes`,
    );
  });

  it('does not hide an error of another kit, nor a second one in the same', async () => {
    const wrong = (id: string) =>
      kitText(id)
        .replace('neck.hot > volume.3', 'nekc.hot > volume.3')
        .replace('neck.ground >', 'nekc.ground >');
    const folder = workshop({ 'a.yaml': wrong('a'), 'b.yaml': wrong('b'), 'solderleaf.yaml': 'kits: [.]\n' });
    const { stdout, status } = await run(addCheck, 'check', folder);
    expect(status).toBe(1);
    expect(stdout.match(/unknown-part\n/g)).toHaveLength(4);
    expect(stdout).toMatch(/2 kits: 4 errors, no warnings, no notes\n$/);
  });
});
