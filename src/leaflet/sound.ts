/** What the finished harness does: switch positions, and what each pickup works into. */
import { readOutputs } from '../analyse/index.ts';
import { type Card, cardsOf } from '../annotate/cards.ts';
import type { PlotMark } from '../annotate/plot.ts';
import { positionedIn } from '../annotate/positioned.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Box } from '../draw/leaflet/figure.ts';
import { figuresIn } from '../messages/figures.ts';
import type { Say } from '../messages/say.ts';
import { composeResponse } from '../pipeline.ts';
import { type Block, type Cell, strong, type Table, text } from './document.ts';
import type { Pictures } from './pictures.ts';

/** The switches and blends of the kit as heads of columns; one column that says “always” where there is none. */
function positionHeads({ circuit }: Prepared, say: Say): readonly string[] {
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

const cards = ({ circuit, loads }: Prepared): readonly Card[] =>
  cardsOf(circuit, loads, readOutputs(circuit));

/** What sounds in each position, and how several are joined. */
export function positionsTable(prepared: Prepared, say: Say): Table {
  const heads = positionHeads(prepared, say);
  return {
    is: 'table',
    columns: [
      ...heads.map((head) => ({ head, share: 1 })),
      { head: say('leaflet.sounds'), share: 2 },
      { head: say('leaflet.joined'), share: 3 },
    ],
    rows: cards(prepared).map((card) => [
      ...positionCells(card, heads, say),
      text(card.title),
      text(card.joined ?? ''),
    ]),
  };
}

/** What each pickup works into in each position, beside its reference. */
export function loadsSection(prepared: Prepared, say: Say): readonly Block[] {
  const heads = positionHeads(prepared, say);
  const { language, outputLoad } = prepared.circuit.kit;
  return [
    {
      is: 'table',
      columns: [
        ...heads.map((head) => ({ head, share: 1 })),
        { head: say('leaflet.pickup'), share: 2 },
        { head: say('leaflet.dc-load'), align: 'right', share: 1.5 },
        { head: say('leaflet.signal-load'), align: 'right', share: 1.5 },
        { head: say('leaflet.compared'), share: 3 },
      ],
      rows: cards(prepared).flatMap((card) =>
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
      }),
      small: true,
    },
  ];
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
