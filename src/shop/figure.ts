/**
 * The figure of a kit for a shop page: drawing, key, a card for each state, tables of states and joints, cautions. It says everything without a
 * script; `element/` makes it answer to its controls, whose words are in this markup too. Built as a tree, so that no word of a kit
 * can become markup.
 */
import type { Element } from 'hast';
import { h, type Properties, s } from 'hastscript';
import { cautions } from '../leaflet/parts.ts';
import { type Say, sayIn } from '../messages/say.ts';
import { unbrokenText } from '../messages/unbroken.ts';
import { listIn } from '../messages/words.ts';
import { FIGURE_TAG } from './element/tag.ts';
import { jointsTable, statesTable } from './figure-tables.ts';
import { drawn, htmlText } from './html.ts';
import type { KitData } from './kit-data.ts';

interface FigureOptions {
  readonly data: KitData;
  /** The wiring by itself, as inline SVG. */
  readonly drawing: string;
  /** The same for a column that is narrower than 640 px; without it the other is scaled down there. */
  readonly narrow?: string;
  /** The key, for a column of 360 px. */
  readonly key: string;
  /** Address of the stylesheet, as the page writes it. */
  readonly styles: string;
  /** `auto` follows the visitor's system. */
  readonly scheme?: 'auto' | 'light' | 'dark';
}

/** As many switches stay in view while a phone scrolls along the drawing: more would take up too much of it. */
const MOST_HELD = 2;

/** The element with the figure in it. The page links the stylesheet and the script; it needs neither to be complete. */
export const figureHtml = (options: FigureOptions): string => htmlText(figureElement(options));

function figureElement({ data, drawing, narrow, key, styles, scheme = 'auto' }: FigureOptions): Element {
  const say = sayIn(data.language);
  const drawings =
    narrow === undefined
      ? [{ svg: drawing, className: 'slf-any' }]
      : [
          { svg: drawing, className: 'slf-wide' },
          { svg: narrow, className: 'slf-narrow' },
        ];
  const classes = ['solderleaf-figure', ...(scheme === 'light' ? [] : [`solderleaf-${scheme}`])];
  return h(
    FIGURE_TAG,
    { className: classes, dataStyles: styles },
    h(
      'figure',
      { className: 'slf', lang: data.language },
      h(
        'figcaption',
        { className: 'slf-head' },
        h('span', { className: 'slf-title' }, data.title),
        h('span', { className: 'slf-quiet' }, say('leaflet.revision', { mark: data.revision })),
      ),
      h(
        'div',
        { className: 'slf-main' },
        controls(data, say),
        h(
          'div',
          { className: 'slf-loads' },
          h(
            'div',
            { className: 'slf-cards', role: 'group', tabIndex: 0, ariaLabel: say('leaflet.positions') },
            ...data.states.map((state) => card(state, data, say)),
          ),
        ),
        h(
          'div',
          { className: 'slf-stage' },
          ...drawings.map(({ svg, className }) =>
            h(
              'div',
              {
                className: ['slf-view', className],
                role: 'group',
                tabIndex: 0,
                ariaLabel: say('leaflet.drawing'),
              },
              [drawn(svg)],
            ),
          ),
          h('p', {
            className: ['slf-name', 'slf-quiet'],
            hidden: true,
            dataHint: say('shop.hint'),
            dataTouchHint: say('shop.hint-touch'),
          }),
        ),
        h(
          'div',
          { className: 'slf-key' },
          ...(data.states.some(({ pickups }) => pickups.length > 0)
            ? [h('p', { className: ['slf-legend', 'slf-quiet'] }, say('cards.bar'))]
            : []),
          drawn(key),
        ),
      ),
      h('p', { className: 'slf-status', role: 'status', hidden: true }),
      h(
        'div',
        { className: 'slf-text' },
        h('div', {}, statesTable(data, say), cautionsOf(say)),
        h('div', {}, jointsTable(data, say)),
      ),
      lugWords(data, say),
    ),
  );
}

/** Hidden until a script makes them work, with the room that they will take kept free. */
function controls({ id, switches, states }: KitData, say: Say): Element {
  const first = states[0]?.positions ?? {};
  const groups = switches.map(({ name, label, positions }) =>
    h(
      'div',
      { className: 'slf-switch', role: 'radiogroup', ariaLabel: label, dataSwitch: name },
      h('span', { className: 'slf-quiet', ariaHidden: 'true' }, label),
      h(
        'div',
        { className: 'slf-options' },
        ...positions.map((words, i) =>
          h(
            'label',
            {},
            h('input', {
              type: 'radio',
              name: `${id}-figure-${name}`,
              value: String(i + 1),
              checked: first[name] === i + 1,
            }),
            h('span', {}, words),
          ),
        ),
      ),
    ),
  );
  const button = (act: string, words: string, sign?: string, more: Properties = {}): Element =>
    h(
      'button',
      {
        type: 'button',
        dataAct: act,
        ...(sign === undefined ? {} : { ariaLabel: words, title: words, className: 'slf-sign' }),
        ...more,
      },
      sign ?? words,
    );
  return h(
    'div',
    { className: 'slf-bar', hidden: true },
    ...(groups.length === 0
      ? []
      : [
          h(
            'div',
            { className: ['slf-switches', ...(groups.length <= MOST_HELD ? ['slf-held'] : [])] },
            ...groups,
            now(states),
          ),
        ]),
    h(
      'div',
      { className: 'slf-tools', role: 'group', ariaLabel: say('leaflet.drawing') },
      button('path', say('shop.path'), undefined, { ariaPressed: 'true' }),
      button('out', say('shop.zoom-out'), '−'),
      button('in', say('shop.zoom-in'), '+'),
      button('reset', say('shop.reset')),
      button('print', say('shop.print')),
    ),
  );
}

/** In short what the card says, to stand below the switches while the card is out of sight; a screen reader is told by the status. */
const now = (states: KitData['states']): Element =>
  h(
    'div',
    { className: ['slf-now', 'slf-quiet'], ariaHidden: 'true' },
    ...states.map(({ number, sounds, pickups }) =>
      h(
        'p',
        { dataNow: String(number) },
        ...(pickups.length === 0
          ? [h('b', {}, sounds)]
          : pickups.map(({ label, dcLoadWords, signalLoadWords }) =>
              h('span', {}, h('b', {}, label), ` ${dcLoadWords} / ${signalLoadWords}`),
            )),
      ),
    ),
  );

function card(state: KitData['states'][number], { switches }: KitData, say: Say): Element {
  const at = switches.map(({ name }) => `${name}=${state.positions[name] ?? 1}`).join(' ');
  return h(
    'section',
    { className: 'slf-card', ariaLabel: state.words, dataState: String(state.number), dataAt: at },
    h('p', { className: ['slf-where', 'slf-quiet'] }, state.words),
    h('p', { className: 'slf-sounds' }, state.sounds),
    ...(state.pickups.length === 0
      ? []
      : [
          h(
            'dl',
            {},
            ...state.pickups.map((pickup) =>
              h(
                'div',
                { className: 'slf-pickup', dataPickup: pickup.name },
                h('dt', {}, pickup.label),
                h('dd', {}, h('b', {}, pickup.dcLoadWords), ' ', h('span', {}, say('load.dc'))),
                h('dd', {}, h('b', {}, pickup.signalLoadWords), ' ', h('span', {}, say('load.signal'))),
                h('dd', { className: 'slf-quiet' }, bar(pickup), pickup.verdict),
              ),
            ),
          ),
        ]),
    ...state.notes.map((note) => h('p', { className: ['slf-note', 'slf-quiet'] }, unbrokenText(note))),
  );
}

/** As on the drawing's cards: the middle is what the pickup was made for. The verdict says the same in words. */
const bar = ({ ofReference, tint }: KitData['states'][number]['pickups'][number]): Element =>
  s(
    'svg',
    { className: ['slf-load'], viewBox: '0 0 200 12', preserveAspectRatio: 'none', ariaHidden: 'true' },
    s('rect', { className: ['sl-fill-inside'], y: 3, width: 200, height: 6 }),
    s('rect', {
      className: [`sl-fill-line-${tint}`],
      y: 3,
      width: Math.round(100 * Math.min(2, Math.max(0.03, ofReference ?? 2))),
      height: 6,
    }),
    s('rect', { className: ['sl-fill-ink'], x: 99, width: 2, height: 12 }),
  );

const cautionsOf = (say: Say): Element =>
  h(
    'section',
    { className: 'slf-cautions', ariaLabel: say('leaflet.cautions') },
    h('p', { className: 'slf-heading' }, say('leaflet.cautions')),
    h('ul', {}, ...cautions(say, say('shop.rules')).map((words) => h('li', {}, words))),
  );

/** What each lug is joined to, for the script to show. */
function lugWords({ parts, joints, language }: KitData, say: Say): Element {
  const items = parts.flatMap(({ label, lugs }) =>
    lugs.map(({ id, words }) => {
      const own = joints.filter(({ from, to }) => from.lug === id || to.lug === id);
      const name = own.flatMap(({ from, to }) => [from, to]).find((end) => end.lug === id)?.words;
      const ends = own.map(({ from, to }) => (from.lug === id ? to : from).words);
      return h(
        'li',
        { dataLugWords: id, dataJoints: own.map(({ number }) => number).join(' ') },
        say('shop.lug', {
          lug: name ?? say('shop.lug-name', { part: label, lug: words }),
          joined: ends.length === 0 ? 'no' : 'yes',
          ends: listIn(language, ends),
        }),
      );
    }),
  );
  return h('ul', { hidden: true }, ...items);
}
