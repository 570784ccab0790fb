/** What a workshop says of itself: each mistake at its place, and no logo that acts, fetches, or looks different elsewhere. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contrast } from '../../src/common/contrast.ts';
import { circuitFile } from '../../src/files/circuits.ts';
import { workshopFor } from '../../src/files/workshop.ts';
import { kitText, listed, told, workshop } from '../catalogue/folder.ts';

const LOGO = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 40">
  <path d="M0 0h120v40z" fill="#123456"/>
</svg>
`;
const catalogue = (said: string, files: Readonly<Record<string, string>> = {}) =>
  listed({ 'a.yaml': kitText('a'), ...files, 'solderleaf.yaml': `${said}\nkits: [a.yaml]\n` });

describe('the key workshop', () => {
  it('is each job’s, with the logo’s text', async () => {
    const { catalogue: read, said } = await catalogue(
      'workshop: { name: A & B, address: "1 Nowhere\\nNonesuch", colour: "#0B5E80", logo: l.svg, closing: Bye. }',
      { 'l.svg': LOGO },
    );
    expect(said).toEqual([]);
    expect(read?.jobs[0]?.workshop).toEqual({
      name: 'A & B',
      address: '1 Nowhere\nNonesuch',
      colour: '#0b5e80',
      logo: {
        svg: LOGO.replace(/\n */g, '').replace('/>', '></path>'),
        width: 120,
        height: 40,
      },
      closing: 'Bye.',
    });
  });
  it('may be left out', async () => {
    const { catalogue: read } = await catalogue('out: out');
    expect(read?.jobs[0]).not.toHaveProperty('workshop');
  });
  it('takes quotes, angle brackets and 300 characters as they are', async () => {
    const name = `"<b>'&#$*[${'x'.repeat(290)}`;
    const { catalogue: read } = await catalogue(`workshop: { name: '${name.replaceAll("'", "''")}' }`);
    expect(read?.jobs[0]?.workshop?.name).toBe(name);
  });
  it.each([
    ['workshop: Bramble', /^solderleaf\.yaml:1:11 wrong-type: .*a map/],
    ['workshop: { name: A, adress: x }', /^solderleaf\.yaml:1:22 unknown-key: .*adress.*address/],
    ['workshop: { address: x }', /^solderleaf\.yaml:1:1 missing-key: .*name/],
    ['workshop: { name: "" }', /^solderleaf\.yaml:1:19 bad-value: .*empty/],
    [`workshop: { name: ${'x'.repeat(301)} }`, /^solderleaf\.yaml:1:19 bad-value: .*longer than 300/],
    ['workshop: { name: 12 }', /^solderleaf\.yaml:1:19 wrong-type: .*text/],
    ['workshop: { name: A, colour: blue }', /^solderleaf\.yaml:1:30 bad-value: .*not a colour .*#0b5e80/],
    [
      'workshop: { name: A, colour: "#77aadd" }',
      /^solderleaf\.yaml:1:30 bad-value: .*too pale.*2\.4 : 1 .*darker/,
    ],
    ['workshop: { name: A, logo: gone.svg }', /^solderleaf\.yaml:1:28 file-unreadable: .*file not found/],
    ['workshop: { name: "A \\U0001F426" }', /^solderleaf\.yaml:1:19 missing-glyph: /],
    ['workshop: { name: A, closing: שלום }', /^solderleaf\.yaml:1:31 missing-glyph: /],
    [
      'workshop: { name: A, address: "1\\n2\\n3\\n4\\n5\\n6\\n7\\n8\\n9" }',
      /^solderleaf\.yaml:1:31 .*8 lines/,
    ],
  ])('%s', async (written, message) => {
    const { catalogue: read, said } = await catalogue(written);
    expect(said).toEqual([expect.stringMatching(message)]);
    expect(read).toBeUndefined();
  });
  it('tells all mistakes at once', async () => {
    const { said } = await catalogue('workshop: { colour: red, logos: x.svg }\npage: a9');
    expect(said).toHaveLength(4);
  });
  it('a darker colour that is offered passes', async () => {
    for (const pale of ['#77aadd', '#ffff00', '#fefefe', '#ff0000']) {
      const { said } = await catalogue(`workshop: { name: A, colour: "${pale}" }`);
      const [, offered = ''] = /such as "(#[0-9a-f]{6})"/.exec(said[0] ?? '') ?? [];
      expect(contrast(offered, '#ffffff'), pale).toBeGreaterThanOrEqual(4.5);
    }
  });
});

/** A logo with one more line, on line 2, that begins in column 3. */
const withLine = (line: string): string => LOGO.replace('\n', `\n  ${line}\n`);

describe('a logo', () => {
  const refused: readonly (readonly [string, string, RegExp])[] = [
    ['a script', withLine('<script>alert(1)</script>'), /^l\.svg:2:3 bad-logo: .*element script/],
    [
      'an event',
      withLine('<rect onload="x()" width="1" height="1"/>'),
      /^l\.svg:2:9 bad-logo: .*attribute onload/,
    ],
    ['an event in capitals', withLine('<rect ONCLICK="x()"/>'), /^l\.svg:2:9 bad-logo: .*attribute ONCLICK/],
    ['foreign content', withLine('<foreignObject/>'), /^l\.svg:2:3 bad-logo: .*foreignObject/],
    [
      'a link',
      withLine('<a href="https://example.invalid"><path d="M0 0"/></a>'),
      /^l\.svg:2:3 bad-logo: .*element a /,
    ],
    [
      'an image',
      withLine('<image href="data:image/png;base64,AA"/>'),
      /^l\.svg:2:3 bad-logo: .*element image.*pixels/,
    ],
    ['another file', withLine('<use href="other.svg#x"/>'), /^l\.svg:2:8 bad-logo: .*outside.*other\.svg/],
    [
      'another file, the old way',
      withLine('<use xlink:href="//example.invalid/x#y"/>'),
      /^l\.svg:2:8 bad-logo: .*outside/,
    ],
    [
      'a paint from outside',
      withLine('<rect fill="url(https://example.invalid/#a)"/>'),
      /^l\.svg:2:9 bad-logo: .*outside/,
    ],
    [
      'a paint from outside, unclosed',
      withLine('<rect fill="url( //example.invalid/x"/>'),
      /^l\.svg:2:9 bad-logo: .*outside/,
    ],
    [
      'a style sheet',
      withLine('<style>@import url(x.css);</style>'),
      /^l\.svg:2:3 bad-logo: .*element style.*presentation/,
    ],
    [
      'a style that imports',
      withLine('<rect style="fill:red;@import \'x\'"/>'),
      /^l\.svg:2:9 bad-logo: .*style/,
    ],
    [
      'a style that fetches',
      withLine('<rect style="fill:url(x.svg#a)"/>'),
      /^l\.svg:2:9 bad-logo: .*outside/,
    ],
    [
      'a style that fetches, with an escape',
      withLine('<rect style="fill:u\\72l(x.svg#a)"/>'),
      /^l\.svg:2:9 bad-logo: .*style/,
    ],
    [
      'a reference with an entity',
      withLine('<use href="java&#115;cript:x()"/>'),
      /^l\.svg:2:8 bad-logo: .*outside/,
    ],
    ['an animation', withLine('<animate attributeName="href" to="x"/>'), /^l\.svg:2:3 bad-logo: .*animate/],
    ['a setting', withLine('<set attributeName="onload" to="x()"/>'), /^l\.svg:2:3 bad-logo: .*element set/],
    ['text', withLine('<text>Bramble</text>'), /^l\.svg:2:3 bad-logo: .*element text.*paths/],
    [
      'an editor’s own',
      withLine('<editor:view xmlns:editor="https://example.invalid/e"/>'),
      /^l\.svg:2:3 bad-logo: .*editor:view.*plain SVG/,
    ],
    ['a document type', `<!DOCTYPE svg [<!ENTITY x "y">]>\n${LOGO}`, /^l\.svg:1:1 bad-logo: .*document type/],
    [
      'a style sheet’s instruction',
      `<?xml-stylesheet href="x.css"?>\n${LOGO}`,
      /^l\.svg:1:1 bad-logo: .*xml-stylesheet/,
    ],
    ['no size', LOGO.replace(' viewBox="0 0 120 40"', ''), /^l\.svg:1:1 bad-logo: .*no size.*viewBox/],
    ['an empty view box', LOGO.replace('120 40', '0 40'), /^l\.svg:1:1 bad-logo: .*no size/],
    ['a page', '<html><body/></html>', /^l\.svg:1:1 bad-logo: .*no drawing/],
    ['no namespace', LOGO.replace(/ xmlns="[^"]*"/, ''), /^l\.svg:1:1 bad-logo: .*no drawing/],
    ['a tag that is not closed', LOGO.replace('</svg>', ''), /^l\.svg:\d+:\d+ bad-logo: .*not well-formed/],
    ['pixels', '\u0000\u0001PNG', /^l\.svg:1:1 not-text/],
    ['nothing', '', /^l\.svg:1:1 bad-logo: /],
    [
      'too much',
      `${LOGO}<!--${'x'.repeat(200_000)}-->`,
      /^solderleaf\.yaml:1:28 file-too-large|^solderleaf\.yaml:1:28 file-unreadable: .*too large/,
    ],
    ['too many elements', withLine('<g/>'.repeat(2001)), /^l\.svg:2:\d+ bad-logo: .*2000 elements/],
    [
      'elements too deep',
      withLine(`${'<g>'.repeat(40)}${'</g>'.repeat(40)}`),
      /^l\.svg:2:\d+ bad-logo: .*too deep/,
    ],
  ];
  it.each(refused)('%s is refused at its place', async (_, svg, message) => {
    const { catalogue: read, said } = await catalogue('workshop: { name: A, logo: l.svg }', { 'l.svg': svg });
    expect(said[0]).toMatch(message);
    expect(read).toBeUndefined();
  });
  it('several mistakes are told at once', async () => {
    const svg = withLine('<script/><rect onload="x()" href="y"/>');
    const { said } = await catalogue('workshop: { name: A, logo: l.svg }', { 'l.svg': svg });
    expect(said).toHaveLength(3);
  });
  it('is written anew, so that nothing is left that a page would read otherwise than XML does', async () => {
    const svg = withLine(
      '<title><![CDATA[<img src=x onerror=x()>]]></title><!--><script>x()</script>--><desc>&lt;b&gt;</desc><path d="M0 0" fill="&quot;&gt;"/>',
    );
    const { catalogue: read } = await catalogue('workshop: { name: A, logo: l.svg }', { 'l.svg': svg });
    expect(read?.jobs[0]?.workshop?.logo?.svg).toBe(
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 40"><path d="M0 0" fill="&quot;&gt;"></path><path d="M0 0h120v40z" fill="#123456"></path></svg>',
    );
  });
  it.each([
    [
      'gradients and clips of its own',
      withLine(
        '<linearGradient id="g"><stop offset="0" stop-color="#fff"/></linearGradient><clipPath id="c"><circle r="2"/></clipPath><rect fill="url(#g)" clip-path="url( \'#c\' )"/><use href="#g"/>',
      ),
    ],
    ['a plain style', withLine('<rect style="fill:#123456;stroke:url(#g)"/>')],
    ['a size in pixels', LOGO.replace('viewBox="0 0 120 40"', 'width="120px" height="40"')],
    ['a declaration and a byte order mark', `\uFEFF<?xml version="1.0" encoding="UTF-8"?>\n${LOGO}`],
    ['a comment', withLine('<!-- drawn by hand -->')],
  ])('%s: taken', async (_, svg) => {
    const { catalogue: read, said } = await catalogue('workshop: { name: A, logo: l.svg }', { 'l.svg': svg });
    expect(said).toEqual([]);
    expect(read?.jobs[0]?.workshop?.logo).toMatchObject({ width: 120, height: 40 });
  });
});

describe('the workshop of one kit', () => {
  const files = {
    'solderleaf.yaml': 'workshop: { name: Upper }\nkits: [kits]\n',
    'kits/deep/a.yaml': kitText('a'),
    'kits/b.yaml': kitText('b'),
  };
  it('is that of the nearest catalogue above it', () => {
    const folder = workshop(files);
    expect(workshopFor(join(folder, 'kits/deep/a.yaml')).workshop?.name).toBe('Upper');
    mkdirSync(join(folder, 'kits/deep'), { recursive: true });
    writeFileSync(join(folder, 'kits/deep/solderleaf.yaml'), 'workshop: { name: Inner }\n');
    expect(workshopFor(join(folder, 'kits/deep/a.yaml')).workshop?.name).toBe('Inner');
    expect(workshopFor(join(folder, 'kits/b.yaml')).workshop?.name).toBe('Upper');
  });
  it('is nobody’s where there is no catalogue, or it says nothing, or the circuit ships', () => {
    const folder = workshop({ 'a.yaml': kitText('a') });
    expect(workshopFor(join(folder, 'a.yaml'))).toEqual({ diagnostics: [] });
    writeFileSync(join(folder, 'solderleaf.yaml'), 'kits: [a.yaml]\n');
    expect(workshopFor(join(folder, 'a.yaml'))).toEqual({ diagnostics: [] });
    expect(workshopFor(circuitFile('s-volume'))).toEqual({ diagnostics: [] });
  });
  it('with a mistake is told at its place in the catalogue', () => {
    const folder = workshop({ ...files, 'solderleaf.yaml': 'kits: [kits]\nworkshop: { nam: A }\n' });
    const { workshop: found, diagnostics } = workshopFor(join(folder, 'kits/b.yaml'));
    expect(found).toBeUndefined();
    expect(told(diagnostics, folder)).toEqual([expect.stringMatching(/^solderleaf\.yaml:2:13 unknown-key/)]);
    writeFileSync(join(folder, 'solderleaf.yaml'), 'workshop: [\n');
    expect(workshopFor(join(folder, 'kits/b.yaml')).diagnostics).not.toEqual([]);
  });
  it('of the samples has a logo, a colour that can be read, and an address in a domain that nobody can have (RFC 2606)', () => {
    const { workshop: found, diagnostics } = workshopFor('samples/workshop/kits/hs-dark.yaml');
    expect(diagnostics).toEqual([]);
    expect(found?.logo?.svg.match(/<path/g)).toHaveLength(
      readFileSync('samples/workshop/logo.svg', 'utf8').match(/<path/g)?.length ?? 0,
    );
    expect(found?.address).toMatch(/\.invalid$/);
  });
});
