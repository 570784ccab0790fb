/** What the finished harness does: switch positions, and what each pickup works into. */
import { hasTone, readOutputs, type StateLoads, tonesByPickup } from '../analyse/index.ts';
import { type Card, cardsOf } from '../annotate/cards.ts';
import type { PlotMark } from '../annotate/plot.ts';
import { positionedIn } from '../annotate/positioned.ts';
import type { Circuit } from '../circuit/circuit.ts';
import { labelOf } from '../describe/kit.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Box } from '../draw/leaflet/figure.ts';
import { figuresIn } from '../messages/figures.ts';
import type { Say } from '../messages/say.ts';
import { apartIn } from '../messages/words.ts';
import { composeResponse } from '../pipeline.ts';
import { type Block, type Cell, strong, type Table, text } from './document.ts';
import type { Pictures } from './pictures.ts';
import { controlName } from './words.ts';

/** What is solved of a kit, wherever its parts stand. */
type Solved = Pick<Prepared, 'circuit' | 'loads'>;

/** The switches and blends of the kit as heads of columns; one column that says “always” where there is none. */
function positionHeads({ circuit }: Solved, say: Say): readonly string[] {
  const heads = positionedIn(circuit).map(({ label }) => label);
  return heads.length === 0 ? [say('leaflet.position')] : heads;
}

/** By switch where it stands, for each card a row; several combinations below one another. */
function positionCells({ combinations }: Card, heads: readonly string[], say: Say): readonly Cell[] {
  return heads.map((_, i) => {
    const words = combinations.map((combination) => combination[i]).filter((word) => word !== undefined);
    return strong(words.length === 0 ? say('leaflet.always') : [...new Set(words)].join(', '));
  });
}

const cards = ({ circuit, loads }: Solved): readonly Card[] => cardsOf(circuit, loads, readOutputs(circuit));

/**
 * The tone controls that act in a card's positions: by their names alone where each acts on all that sounds, else each with its pickups.
 * Positions that are alike in all that a card says are told apart here where they are not alike in this.
 */
function toneCell(circuit: Circuit, { states }: Card, say: Say): Cell {
  const { kit } = circuit;
  const words = states.map((index) => {
    const found = [...tonesByPickup(circuit, index)];
    // A silent position has no tone to tell of.
    if (found.length === 0) return '';
    const ids = [...new Set(found.flatMap(([, tones]) => tones))];
    const clauses = ids.map((id) => {
      const own = found.filter(([, tones]) => tones.includes(id)).map(([pickup]) => labelOf(kit, pickup));
      const name = controlName(kit, id, say);
      return own.length === found.length ? name : say('named.list', { name, words: own.join(' + ') });
    });
    return clauses.length === 0 ? say('leaflet.no-tone') : apartIn(kit.language, clauses);
  });
  return text([...new Set(words)].join('\n'));
}

/** What sounds in each position, how several are joined, and which tone controls act. */
export function positionsTable(prepared: Solved, say: Say): Table {
  const heads = positionHeads(prepared, say);
  const toned = hasTone(prepared.circuit);
  return {
    is: 'table',
    columns: [
      ...heads.map((head) => ({ head, share: 1 })),
      { head: say('leaflet.sounds'), share: 2 },
      { head: say('leaflet.joined'), share: 3 },
      ...(toned ? [{ head: say('leaflet.tone'), share: 2 }] : []),
    ],
    rows: cards(prepared).map((card) => [
      ...positionCells(card, heads, say),
      text(card.title),
      text(card.joined ?? ''),
      ...(toned ? [toneCell(prepared.circuit, card, say)] : []),
    ]),
  };
}

/** What each pickup works into in each position, beside its reference. */
export function loadsSection(prepared: Solved, say: Say): readonly Block[] {
  const heads = positionHeads(prepared, say);
  const { language, outputLoad } = prepared.circuit.kit;
  const shown = cards(prepared);
  const section: readonly Block[] = [
    { is: 'heading', level: 1, text: say('leaflet.loads') },
    {
      is: 'table',
      columns: [
        ...heads.map((head) => ({ head, share: 1 })),
        { head: say('leaflet.pickup'), share: 2 },
        { head: say('leaflet.dc-load'), align: 'right', share: 1.5 },
        { head: say('leaflet.signal-load'), align: 'right', share: 1.5 },
        { head: say('leaflet.compared'), share: 3 },
      ],
      rows: shown.flatMap((card) =>
        card.rows.map((row, i) => [
          ...positionCells(card, heads, say).map((cell) => (i === 0 ? cell : text(''))),
          text(row.label),
          text(row.dcLoad),
          text(row.signalLoad),
          text(row.level === undefined ? row.verdict : `${row.verdict}; ${row.level}`),
        ]),
      ),
    },
    {
      is: 'paragraph',
      text: say('leaflet.loads-say', {
        frequency: figuresIn(language).plainHertz(outputLoad.frequency.value),
        toned: hasTone(prepared.circuit) ? 'yes' : 'no',
      }),
      small: true,
    },
    {
      is: 'paragraph',
      text: say('leaflet.designed-say', { loads: designLoads(prepared, say) }),
      small: true,
    },
    ...(shown.some(({ rows: some }) => some.some(({ level }) => level !== undefined))
      ? [{ is: 'paragraph', text: say('leaflet.quieter-say'), small: true } as const]
      : []),
  ];
  // Rows of one position belong together, but a long table may run on to the next page.
  const rows = shown.reduce((sum, card) => sum + card.rows.length, 0);
  return rows > MOST_TOGETHER ? section : [{ is: 'together', blocks: section }];
}

/** Rows that any page has room for. */
const MOST_TOGETHER = 10;

/** The loads that the pickups are designed for, those of one design together: `Neck, Middle: 250 kΩ and 125 kΩ`. */
function designLoads({ circuit, loads }: Solved, say: Say): string {
  const { kit } = circuit;
  const { figure } = figuresIn(kit.language);
  const entries = loads.flatMap(({ pickups }: StateLoads) => pickups);
  const groups = new Map<string, string[]>();
  for (const { name, label } of kit.parts) {
    const reference = entries.find(({ pickup }) => pickup === name)?.reference;
    if (!reference) continue;
    const words = say('leaflet.two-loads', {
      dc: figure(reference.dcLoad, 'ohm'),
      signal: figure(reference.signalLoad, 'ohm'),
    });
    groups.set(words, [...(groups.get(words) ?? []), label]);
  }
  return apartIn(
    kit.language,
    [...groups].map(([words, labels]) => say('named.list', { name: labels.join(', '), words })),
  );
}

/** What comes out at the jack: all positions in one plot on a page of its own, and the figures of each. */
export function responseSection(
  { circuit }: Prepared,
  pictures: Pictures,
  say: Say,
  { page, bound }: { readonly page: Box; readonly bound: boolean },
): readonly Block[] {
  const plot = composeResponse(circuit.kit);
  // A page that stands is turned: the plot is wider than it is high.
  const turned = page.width < page.height;
  const [width, height] = turned ? [page.height, page.width] : [page.width, page.height];
  const room =
    turned && bound ? { width: width - RESPONSE_HEAD, height } : { width, height: height - RESPONSE_HEAD };
  const words = (mark: PlotMark | undefined): string => mark?.words.join(', ') ?? '';
  return [
    {
      is: 'sheet',
      heading: say('leaflet.response'),
      caption: plot.lines.join(' '),
      picture: pictures.response(plot, room),
      turned,
    },
    {
      is: 'table',
      columns: [
        { head: say('leaflet.position'), share: 1 },
        { head: say('leaflet.sounds'), share: 2 },
        { head: say('leaflet.resonance'), share: 2 },
        { head: say('leaflet.cutoff'), share: 2 },
        { head: say('leaflet.resonance-compared'), share: 3 },
      ],
      rows: plot.states.map(({ badge, name, trace, rows }) => [
        strong(badge === '' ? say('leaflet.always') : badge),
        text(name),
        text(words(trace?.resonance)),
        text(words(trace?.cutoff)),
        text(rows.map((row) => `${row.label}: ${row.words}`).join('\n')),
      ]),
    },
  ];
}

/** Of a page's height, what the heading of the plot and the lines beneath it take, millimetres. */
const RESPONSE_HEAD = 30;
