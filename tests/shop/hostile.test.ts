/** What people write stays text: whatever a title, a label or an address holds, pages have the elements and attributes of our own templates alone. */
import { type DefaultTreeAdapterTypes, parse, parseFragment } from 'parse5';
import { expect, it } from 'vitest';
import { figureHtml } from '../../src/shop/figure.ts';
import { figureFragment, imageFragment, inlineFragment } from '../../src/shop/fragments.ts';
import { indexPage } from '../../src/shop/index-page.ts';
import { type KitData, kitDataOf } from '../../src/shop/kit-data.ts';
import { kitIn, kitOf, quickly } from './kits.ts';

type Node = DefaultTreeAdapterTypes.Node;

/** Every element with the names of its attributes, depth first; text is left out. */
function skeletonOf(node: Node): readonly string[] {
  const own = 'attrs' in node ? [`${node.tagName} ${node.attrs.map(({ name }) => name).join(' ')}`] : [];
  return [...own, ...('childNodes' in node ? node.childNodes.flatMap(skeletonOf) : [])];
}

const HOSTILE = [
  '</script><script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "' onload='alert(1)",
  '--><svg onload=alert(1)>',
  ']]><b>&lt;i&gt;',
  'javascript:alert(1)',
  '<!-- <script>',
  '\u202Eעברית مرحبا',
  '🎸 </title></style></textarea>',
  '&quot;&#34; onfocus=alert(1) autofocus',
];

/** The data with every word that a person writes replaced. */
const spoilt = (data: KitData, words: string): KitData => ({
  ...data,
  title: words,
  about: words,
  workshop: { name: words, website: 'https://www.example.com/' },
  switches: data.switches.map((one) => ({ ...one, label: words, positions: one.positions.map(() => words) })),
  parts: data.parts.map((part) => ({ ...part, label: words, value: words })),
  joints: data.joints.map((joint) => ({
    ...joint,
    from: { ...joint.from, words },
    to: { ...joint.to, words },
  })),
  states: data.states.map((state) => ({
    ...state,
    words,
    sounds: words,
    pickups: state.pickups.map((one) => ({ ...one, label: words, words })),
    notes: state.notes.map(() => words),
  })),
});

const SHARED = { base: '', theme: '01234567', script: '89abcdef', integrity: 'sha384-x' };
const SVG = '<svg xmlns="http://www.w3.org/2000/svg"></svg>';

const pagesOf = (data: KitData): readonly Node[] => [
  parseFragment(imageFragment(data, SHARED)),
  parseFragment(inlineFragment(data, SVG, SHARED)),
  parseFragment(
    figureFragment(data, figureHtml({ data, drawing: SVG, key: SVG, styles: 'theme.css' }), SHARED),
  ),
  parse(indexPage([data], { style: '0', script: '1' })),
];

const data = kitDataOf(await quickly(kitIn('samples/heron-ss.yaml')), {
  pictures: ['', '-drawing', '-360-drawing'].map((end) => ({
    file: `heron-ss${end}.svg`,
    width: 100,
    height: 50,
  })),
});

it.each(HOSTILE)('%j', (words) => {
  expect(pagesOf(spoilt(data, words)).map(skeletonOf)).toEqual(
    pagesOf(spoilt(data, 'plain')).map(skeletonOf),
  );
});

it('is told as it was written, in data for search engines too', () => {
  const told = imageFragment(spoilt(data, HOSTILE[0] ?? ''), SHARED);
  const [, json = ''] = /<script type="application\/ld\+json">(.*)<\/script>/.exec(told) ?? [];
  expect(json).not.toContain('<');
  expect(JSON.parse(json)).toMatchObject({ '@type': 'ImageObject', name: HOSTILE[0] });
});

it('would notice an element or an attribute that the template does not have', () => {
  const of = (html: string) => skeletonOf(parseFragment(html));
  expect(of('<p>a<b>b</b></p>')).not.toEqual(of('<p>a</p>'));
  expect(of('<p onclick="x">a</p>')).not.toEqual(of('<p>a</p>'));
});

it('a kit that is drawn with markup for its words has no script and no handler in its drawings', async () => {
  const words = '"<img src=x onerror=alert(1)>"';
  const { renderInline, render } = await import('../../src/pipeline.ts');
  const prepared = await quickly(
    kitOf(`kit: odd
title: "</script><script>alert(1)</script>"
parts:
  neck: { kind: single-coil, label: ${words} }
  output: { kind: jack, label: "<svg onload=x>" }
joints: [neck.hot > output.tip, neck.ground > output.sleeve]
`),
  );
  for (const svg of [render(prepared).svg, renderInline(prepared)]) {
    const skeleton = skeletonOf(parseFragment(svg));
    expect(skeleton.length).toBeGreaterThan(30);
    expect(
      skeleton.filter((one) =>
        /^(script|img|a|style|foreignobject|iframe|image) | on\w+| style| href/i.test(one),
      ),
    ).toEqual([]);
  }
});
