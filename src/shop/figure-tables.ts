/** Tables of a figure: what each state does, and every joint, for whoever reads rather than looks. */
import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Say } from '../messages/say.ts';
import { unbrokenText } from '../messages/unbroken.ts';
import type { KitData } from './kit-data.ts';

/** What the box is called that a table scrolls in: the table's own caption. */
function table(caption: string, heads: readonly string[], rows: readonly Element[]): Element {
  return h(
    'div',
    { className: 'slf-scroll', role: 'group', tabIndex: 0, ariaLabel: caption },
    h(
      'table',
      {},
      h('caption', {}, caption),
      h('thead', {}, h('tr', {}, ...heads.map((head) => h('th', { scope: 'col' }, head)))),
      h('tbody', {}, ...rows),
    ),
  );
}

/** A row a state: where the switches are, what sounds and how, and what each pickup works into. */
export const statesTable = ({ states }: KitData, say: Say): Element =>
  table(
    say('leaflet.positions'),
    [say('leaflet.position'), say('leaflet.sounds'), say('leaflet.loads'), say('shop.details')],
    states.map(({ words, sounds, pickups, notes }) =>
      h(
        'tr',
        {},
        h('th', { scope: 'row' }, words),
        h('td', {}, sounds),
        h('td', {}, ...pickups.map((pickup) => h('p', {}, unbrokenText(pickup.words)))),
        h('td', {}, ...notes.map((note) => h('p', {}, unbrokenText(note)))),
      ),
    ),
  );

/** A row a joint; each has its words as one sentence too, for the script to show. */
export function jointsTable({ joints }: KitData, say: Say): Element {
  const sleeved = joints.some((joint) => joint.sleeved);
  return table(
    say('shop.joints'),
    [
      say('leaflet.number'),
      say('leaflet.joint'),
      say('shop.from'),
      say('shop.to'),
      say('shop.colour'),
      ...(sleeved ? [say('leaflet.sleeving-of')] : []),
    ],
    joints.map((joint) =>
      h(
        'tr',
        {
          dataRow: String(joint.number),
          dataWords: say('shop.joint', {
            number: joint.number,
            what: joint.what,
            from: joint.from.words,
            to: joint.to.words,
            coloured: joint.colour ? 'yes' : 'no',
            colour: joint.colour?.words ?? '',
            sleeved: joint.sleeved ? 'yes' : 'no',
          }),
        },
        h('th', { scope: 'row' }, String(joint.number)),
        h('td', {}, joint.what),
        h('td', {}, joint.from.words),
        h('td', {}, joint.to.words),
        h('td', {}, joint.colour?.words ?? (joint.kind === 'wire' ? say('leaflet.no-colour') : '–')),
        ...(sleeved ? [h('td', {}, say(joint.sleeved ? 'shop.yes' : 'shop.no'))] : []),
      ),
    ),
  );
}
