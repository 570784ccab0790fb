/**
 * The page of all kits of a shop’s folder. It is whole without script, all kits shown; `index-script.ts` then lets them be searched
 * and filtered. What can be chosen is made from the kits’ data.
 */
import type { Element } from 'hast';
import { h } from 'hastscript';
import { must } from '../common/must.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { keyOf, type Say, sayIn } from '../messages/say.ts';
import { htmlText, SHOP, signature } from './html.ts';
import { altOf } from './image-object.ts';
import type { KitData } from './kit-data.ts';

type PartData = KitData['parts'][number];

/** A choice of a filter: the value it goes by, and its words. */
interface Choice {
  readonly value: string;
  readonly words: string;
}

interface Speaking {
  readonly language: Language;
  readonly say: Say;
}

/** The language of the page: that of its kits, or English where they have several. */
function languageOf(kits: readonly KitData[]): Language {
  const [only, ...more] = new Set(kits.map(({ language }) => language));
  return only !== undefined && more.length === 0 ? only : DEFAULT_LANGUAGE;
}

/**
 * The page, complete.
 *
 * @param kits in the order in which they are shown
 * @param version beginnings of the hashes of its stylesheet and its script
 */
export function indexPage(
  kits: readonly KitData[],
  version: { readonly style: string; readonly script: string },
): string {
  const language = languageOf(kits);
  const say = sayIn(language);
  const speaking = { language, say };
  const title = say('shop.index-title');
  return htmlText(
    { type: 'doctype' },
    signature('index'),
    h('html', { lang: language }, [
      h('head', [
        h('meta', { charSet: 'utf-8' }),
        h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
        h('meta', { name: 'color-scheme', content: 'light dark' }),
        h('title', title),
        h('link', { rel: 'stylesheet', href: `index.css?v=${version.style}` }),
        h('script', { src: `index.js?v=${version.script}`, defer: true }),
      ]),
      h('body', [
        h('header', [...senderOf(kits), h('h1', title)]),
        h('main', [
          filterForm(kits, say),
          countLine(kits.length, say),
          h(
            'ul',
            { className: ['kits'] },
            kits.map((kit) => cardOf(kit, speaking)),
          ),
        ]),
      ]),
    ]),
  );
}

/** The workshop, where all kits are from the same. */
function senderOf(kits: readonly KitData[]): readonly Element[] {
  const [only, ...more] = new Set(kits.map(({ workshop }) => JSON.stringify(workshop)));
  const workshop = kits[0]?.workshop;
  if (only === undefined || more.length > 0 || !workshop) return [];
  const { name, website } = workshop;
  return [
    h('p', { className: ['workshop'], dir: 'auto' }, [
      website === null ? name : h('a', { href: website }, name),
    ]),
  ];
}

const inGroup = ({ parts }: KitData, ...groups: readonly PartData['group'][]): readonly PartData[] =>
  parts.filter(({ group }) => groups.includes(group));

/** A kind of part in the page’s language; the kit’s own words for a kind that the page does not know. */
function kindWords({ kind, what }: PartData, say: Say): string {
  const key = keyOf('kind', kind);
  return key === undefined ? what : say(key);
}

/** Kinds with how many there are of each, in the order of their names: `1 × humbucker pickup + 2 × single coil pickup`. */
function counted(parts: readonly PartData[], say: Say): Choice {
  const kinds = [...new Set(parts.map(({ kind }) => kind))].sort();
  const some = kinds.map((kind) => {
    const own = parts.filter((part) => part.kind === kind);
    const what = kindWords(must(own[0], kind), say);
    return { count: own.length, kind, words: say('shop.index-counted', { count: own.length, what }) };
  });
  return {
    value: some.map(({ count, kind }) => `${count}-${kind}`).join('_'),
    words: some.map(({ words }) => words).join(' + '),
  };
}

/** Kinds of parts, each once. */
const kindsOf = (parts: readonly PartData[], say: Say): readonly Choice[] =>
  distinct(parts.map((part) => ({ value: part.kind, words: kindWords(part, say) })));

/** Each choice once, in the order of their words’ letters, which no machine’s locale has a say in. */
function distinct(choices: readonly Choice[]): readonly Choice[] {
  const byValue = new Map(choices.map((choice) => [choice.value, choice]));
  return [...byValue.values()].sort((a, b) => (a.words < b.words ? -1 : a.words > b.words ? 1 : 0));
}

const switchesIn = (kit: KitData) => inGroup(kit, 'switch');
const othersIn = (kit: KitData) => inGroup(kit, 'control', 'component', 'other');

/** Where no scripts run the stylesheet hides it, as it would do nothing; elsewhere it is there from the first, so that nothing moves. */
function filterForm(kits: readonly KitData[], say: Say): Element {
  // What every kit has tells none from another.
  const parts = kindsOf(kits.flatMap(othersIn), say).filter(
    ({ value }) => !kits.every((kit) => othersIn(kit).some(({ kind }) => kind === value)),
  );
  return h('form', { className: ['filter'], role: 'search', ariaLabel: say('shop.index-filter') }, [
    labelled(say('shop.index-search'), h('input', { type: 'search', name: 'words', autoComplete: 'off' })),
    choiceOf(
      'pickups',
      say('shop.index-pickups'),
      distinct(kits.map((kit) => counted(inGroup(kit, 'pickup'), say))),
      say,
    ),
    choiceOf('switch', say('shop.index-switch'), kindsOf(kits.flatMap(switchesIn), say), say),
    ...(parts.length === 0 ? [] : [partsOf(parts, say)]),
    h('button', { type: 'reset' }, say('shop.index-reset')),
  ]);
}

const partsOf = (parts: readonly Choice[], say: Say): Element =>
  h('fieldset', [
    h('legend', say('shop.index-parts')),
    ...parts.map(({ value, words }) =>
      h('label', [h('input', { type: 'checkbox', name: 'parts', value }), ' ', words]),
    ),
  ]);

const labelled = (words: string, control: Element): Element => h('label', [h('span', words), control]);

const choiceOf = (name: string, words: string, choices: readonly Choice[], say: Say): Element =>
  labelled(
    words,
    h('select', { name }, [
      h('option', { value: '' }, say('shop.index-any')),
      ...choices.map((choice) => h('option', { value: choice.value }, choice.words)),
    ]),
  );

/** Two kits stand for any other number: their words with the number taken out. */
const OTHER = 2;

/** How many kits are shown; the script says it again with what it finds, in these words. */
function countLine(count: number, say: Say): Element {
  const words = (some: number): string => say('shop.index-count', { count: some });
  return h(
    'p',
    {
      className: ['count'],
      role: 'status',
      dataNone: words(0),
      dataOne: words(1),
      dataOther: words(OTHER).replace(String(OTHER), '#'),
    },
    words(count),
  );
}

function cardOf(kit: KitData, speaking: Speaking): Element {
  const { id, title, about, language, pictures } = kit;
  const { say } = speaking;
  const file = `${id}-drawing.svg`;
  const picture = must(
    pictures.find((one) => one.file === file),
    file,
  );
  const pickups = counted(inGroup(kit, 'pickup'), say);
  const switches = kindsOf(switchesIn(kit), say);
  const others = kindsOf(othersIn(kit), say);
  const lang = language === speaking.language ? {} : { lang: language };
  const values = kit.parts.flatMap(({ label, value }) => [label, value ?? '']);
  return h(
    'li',
    {
      className: ['kit'],
      dataWords: [
        id,
        title,
        about ?? '',
        ...[pickups, ...switches, ...others].map(({ words }) => words),
        ...values,
      ]
        .filter((text) => text !== '')
        .join(' '),
      dataPickups: pickups.value,
      dataSwitch: switches.map(({ value }) => value).join(' '),
      dataParts: others.map(({ value }) => value).join(' '),
    },
    [
      h('a', { href: `${id}/${id}.svg`, ...lang }, [
        h('img', {
          src: `${id}/${file}`,
          width: picture.width,
          height: picture.height,
          alt: altOf(kit),
          loading: 'lazy',
          decoding: 'async',
        }),
      ]),
      h('h2', { dir: 'auto', ...lang }, title),
      ...(about === null ? [] : [h('p', { dir: 'auto', ...lang }, about)]),
      h('dl', [
        ...term(say('shop.index-pickups'), pickups.words),
        ...term(
          say('shop.index-switch'),
          switches.length === 0 ? say('shop.index-none') : switches.map(({ words }) => words).join(', '),
        ),
      ]),
    ],
  );
}

const term = (name: string, words: string): readonly Element[] => [h('dt', name), h('dd', words)];

export const indexStyle = `/* ${SHOP} index */
:root { color-scheme: light dark; --ground: #f6f5f2; --card: #fff; --ink: #1d2b36; --quiet: #52606b; --rule: #c3cad0; --accent: #0b5e80; }
@media (prefers-color-scheme: dark) { :root { --ground: #14181c; --card: #1e252b; --ink: #e8ebee; --quiet: #a9b4bd; --rule: #46525c; --accent: #7cc4e4; } }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 76rem; padding: 1.5rem 1rem 4rem; font-family: Inter, system-ui, sans-serif; line-height: 1.5; color: var(--ink); background: var(--ground); }
[hidden] { display: none !important; }
h1 { margin: 0 0 1.5rem; font-size: 1.75rem; line-height: 1.2; }
.workshop { margin: 0; color: var(--quiet); }
a { color: var(--accent); }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
.filter { display: flex; flex-wrap: wrap; gap: 1rem; align-items: end; padding: 1rem; border: 1px solid var(--rule); border-radius: 0.5rem; background: var(--card); }
.filter > label { display: grid; flex: 1 1 14rem; gap: 0.25rem; min-width: 0; }
.filter > label > span, legend, dt { color: var(--quiet); font-size: 0.875rem; }
input[type='search'], select, button { width: 100%; min-height: 2.75rem; padding: 0.4rem 0.6rem; font: inherit; color: inherit; background: var(--ground); border: 1px solid var(--quiet); border-radius: 0.375rem; }
button { width: auto; padding-inline: 1rem; cursor: pointer; }
fieldset { display: flex; flex: 1 1 100%; flex-wrap: wrap; gap: 0 1.25rem; margin: 0; padding: 0; border: 0; min-width: 0; }
legend { padding: 0; }
fieldset label { display: inline-flex; align-items: center; gap: 0.25rem; min-height: 2rem; }
input[type='checkbox'] { margin: 0; width: 1.1rem; height: 1.1rem; accent-color: var(--accent); }
.count { margin: 1rem 0; color: var(--quiet); }
.kits { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(20rem, 100%), 1fr)); gap: 1.25rem; margin: 0; padding: 0; list-style: none; }
.kit { padding: 1rem; border: 1px solid var(--rule); border-radius: 0.5rem; background: var(--card); }
.kit a { display: block; }
.kit img { display: block; width: 100%; height: auto; aspect-ratio: 3 / 2; object-fit: contain; background: #fff; border: 1px solid var(--rule); border-radius: 0.25rem; }
.kit h2 { margin: 0.75rem 0 0.25rem; font-size: 1.125rem; line-height: 1.3; overflow-wrap: anywhere; }
.kit p { margin: 0.25rem 0; overflow-wrap: anywhere; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: 0.15rem 0.75rem; margin: 0.5rem 0 0; }
dd { margin: 0; }
@media (scripting: none) { .filter { display: none; } }
@media print { body { max-width: none; background: #fff; } .filter, .count { display: none; } .kit { break-inside: avoid; } }
`;
