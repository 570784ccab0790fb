/** The markup of a figure: what it says to whoever reads it without a script, and that no word of a kit becomes markup. */

import { type DefaultTreeAdapterTypes, parseFragment } from 'parse5';
import { expect, it } from 'vitest';
import { kitFromValue } from '../../src/describe/read.ts';
import { languages } from '../../src/messages/language.ts';
import { unbrokenText } from '../../src/messages/unbroken.ts';
import { kitDataOf } from '../../src/shop/kit-data.ts';
import { figureOf, kitIn, placed } from './figures.ts';

const textOf = (html: string): string =>
  html
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&#x3C;', '<')
    .replaceAll('&#x26;', '&')
    .replace(/[ \n]+/g, ' ');
const rowsOf = (html: string, attribute: string): readonly string[] =>
  [...html.matchAll(/<tr(.*?)<\/tr>/gs)].flatMap(([, row = '']) => (row.includes(attribute) ? [row] : []));

it.each(languages)(
  '%s: every joint and every state in a table with heads, every caution',
  async (language) => {
    const prepared = await placed(await kitIn('samples/kestrel-hss.yaml', language));
    const html = figureOf(prepared);
    const data = kitDataOf(prepared);
    const joints = rowsOf(html, 'data-row');
    expect(joints).toHaveLength(prepared.circuit.joints.length);
    for (const joint of data.joints) {
      const row = textOf(`<tr${joints[joint.number - 1]}`);
      for (const words of [joint.from.words, joint.to.words, joint.colour?.words ?? '', String(joint.number)])
        expect(row).toContain(words);
    }
    expect(html.match(/<caption>/g)).toHaveLength(2);
    expect(html.match(/<thead>/g)).toHaveLength(2);
    expect(html.match(/<th scope="row">/g)).toHaveLength(data.joints.length + data.states.length);
    for (const { pickups } of data.states)
      for (const { words } of pickups) expect(textOf(html)).toContain(unbrokenText(words));
    expect(html.match(/<ul><li>.*?<\/ul>/gs)?.[0]?.match(/<li>/g)).toHaveLength(8);
    expect(html).toContain(`lang="${language}"`);
  },
);

it('words of a kit stay words', async () => {
  const hostile = '</figcaption><script>alert(1)</script><b onclick="x">&amp;';
  const { kit } = kitFromValue(
    {
      kit: 'hostile',
      title: hostile,
      parts: {
        neck: { kind: 'single-coil', label: '"><img src=x onerror=alert(1)>' },
        out: { kind: 'jack' },
      },
      joints: ['neck.hot > out.tip', 'neck.ground > out.sleeve'],
    },
    'hostile.ts',
  );
  if (!kit) throw new Error('not a kit');
  const html = figureOf(await placed(kit), '"><script>alert(2)</script>');
  const elements: string[] = [];
  const walk = (node: DefaultTreeAdapterTypes.Node): void => {
    if ('attrs' in node) elements.push(node.nodeName, ...node.attrs.map(({ name }) => name));
    if ('childNodes' in node) node.childNodes.forEach(walk);
  };
  walk(parseFragment(html));
  expect(elements).toContain('figcaption');
  expect(elements.filter((name) => /^(script|img|on.*)$/.test(name))).toEqual([]);
  expect(html).toContain('&#x3C;script>alert(1)');
  expect(html.match(/<solderleaf-figure-1/g)).toHaveLength(1);
});
