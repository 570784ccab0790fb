/** No id twice on a page that holds every drawing of two kits, whatever the kits are called. */
import { expect, it } from 'vitest';
import { stepsOf } from '../../src/annotate/steps.ts';
import { inLanguage, type Kit, views } from '../../src/describe/kit.ts';
import type { Aspect } from '../../src/draw/compose.ts';
import { idOfKit, modes } from '../../src/draw/drawing-name.ts';
import { type ThemeName, themes } from '../../src/draw/theme.ts';
import { type Language, languages } from '../../src/messages/language.ts';
import { drawResponse, prepare, render, renderInline } from '../../src/pipeline.ts';
import { LOW } from '../random/proof.ts';
import { described } from '../truth/draw.ts';

/** A kit with a switch, and parts of names that the id of another kit might end in. */
const kitOf = (id: string, part: string): Kit =>
  described({
    kit: id,
    title: id,
    parts: {
      [part]: { kind: 'single-coil' },
      key: { kind: 'single-coil' },
      title: { kind: 'toggle-3' },
      'part-drawing': { kind: 'jack' },
    },
    joints: [
      { wire: `${part}.hot > title.1`, colour: 'RD' },
      { wire: 'key.hot > title.2', colour: 'BU' },
      { jumper: 'title.frame > part-drawing.sleeve' },
      { wire: 'title.common > part-drawing.tip' },
      { wire: `${part}.ground > part-drawing.sleeve` },
      { wire: 'key.ground > part-drawing.sleeve' },
    ],
  });

/**
 * Every id as often as it stands in different drawings of a kit: in each mode the whole, each state and step, and pieces.
 *
 * @param inAll whether in every view and theme too
 */
async function idsOf(kit: Kit, languages: readonly Language[], inAll: boolean): Promise<readonly string[]> {
  const found = new Set<string>();
  for (const language of languages) {
    const one = await prepare(inLanguage(kit, language), undefined, { effort: LOW });
    const states = one.circuit.states.map((_, state) => ({ state }));
    const steps = stepsOf(one.circuit).map(({ number }) => ({ step: number }));
    const more = Object.keys(themes).flatMap((theme) =>
      views.flatMap((view): readonly Aspect[] => [
        { theme: theme as ThemeName, view, state: 1, lines: 'signal' },
        { theme: theme as ThemeName, view, step: 2, only: ['checklist'] },
      ]),
    );
    const aspects: readonly Aspect[] = [
      {},
      ...states,
      ...steps,
      { only: ['drawing'] },
      { only: ['key'] },
      { only: ['cards'] },
      { only: ['key', 'cards'] },
      { width: 400 },
      { width: 400, only: ['key', 'cards'] },
      ...(inAll && language === 'en' ? more : []),
    ];
    for (const aspect of aspects)
      for (const mode of modes)
        found.add(mode === 'inline' ? renderInline(one, aspect) : render(one, { ...aspect, mode }).svg);
    found.add(drawResponse(one.circuit.kit));
  }
  return [...found].flatMap((svg) => [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id = '']) => id));
}

/** In English and German; a kit that stands beside several others is drawn once. */
const known = new Map<string, Promise<readonly string[]>>();
function pairOf(id: string, part: string): Promise<readonly string[]> {
  const key = `${id} ${part}`;
  const ids = known.get(key) ?? idsOf(kitOf(id, part), ['en', 'de'], false);
  known.set(key, ids);
  return ids;
}

const twice = (ids: readonly string[]): readonly string[] => {
  const met = new Set<string>();
  return ids.filter((id) => met.size === met.add(id).size);
};

it('in no mode, state, step, piece, view, theme, width or language', async () => {
  const ids = await idsOf(kitOf('hs', 'neck'), languages, true);
  expect(ids.length).toBeGreaterThan(2000);
  expect(twice(ids)).toEqual([]);
}, 240_000);

it.each([
  ['hs', 'neck', 'hs-2', 'neck'],
  ['a-b', 'c', 'a', 'b-c'],
  ['hs', 'x-title', 'hs-part-x', 'title-2'],
  ['hs', 'neck', 'hs-drawing', 'neck'],
  ['hs', 'neck', 'hs-inline', 'neck'],
  ['hs', 'neck', 'hs-inline-drawing', 'neck'],
  ['hs', 'neck', 'hs-position-2', 'neck'],
  ['hs', 'neck', 'hs-de', 'neck'],
  ['hs', 'neck', 'hs-400px-key', 'neck'],
  ['hs', 'neck', 'hs-response', 'neck'],
  ['hs', 'part-neck', 'hs-part', 'neck'],
])(
  'nor in those of the kits %s (with a part %s) and %s (with a part %s)',
  async (...[a, own, b, other]) => {
    const [first, second] = [await pairOf(a, own), await pairOf(b, other)];
    expect(second.length).toBeGreaterThan(500);
    expect(twice([...first, ...second])).toEqual([]);
  },
  120_000,
);

it('the ids of kits that ship are as ever where nothing is to be told apart', () => {
  for (const id of ['kestrel-hss', 'ss-lever-3-1v1t-phase', 's-1v1t-tone-after', 'x-partly', 'position'])
    expect(idOfKit(id)).toBe(id);
  expect(idOfKit('hs-part-x-key')).toBe('hs--part-x--key');
});
