/** From a placed kit to its leaflet: everything that goes into the bag with the parts. */
import { viewLine } from '../annotate/words.ts';
import { markOf, type Prepared } from '../draw/compose.ts';
import type { ThemeName } from '../draw/theme.ts';
import { DEFAULT_LANGUAGE, type Language } from '../messages/language.ts';
import { type Say, sayIn } from '../messages/say.ts';
import type { Block, Leaflet, Paper, Sender } from './document.ts';
import { faultsTable } from './faults.ts';
import { cautions, partsTable, tools } from './parts.ts';
import { Pictures, type Room } from './pictures.ts';
import { loadsSection, positionsTable } from './sound.ts';
import { stepsSection } from './steps.ts';

interface LeafletOptions {
  readonly paper: Paper;
  readonly language?: Language;
  readonly theme?: ThemeName;
  /** Printed beside the revision mark: `2026-11-30`. */
  readonly date?: string;
  /** With the plot of the frequency response. */
  readonly plot?: boolean;
  /** Its pages are bound, so that all must have the same size and a large drawing is turned on its page. */
  readonly bound?: boolean;
  readonly sender?: Sender;
  /** Last words, of the workshop's own. */
  readonly closing?: string;
}

/** Of a page's height, what a heading and a line beneath it take, millimetres. */
const SHEET_HEAD = 22;

export function leafletOf(prepared: Prepared, options: LeafletOptions): Leaflet {
  const { paper, language = DEFAULT_LANGUAGE, theme = 'light', date, sender } = options;
  const { kit } = prepared.circuit;
  const say = sayIn(language);
  const pictures = new Pictures(prepared, theme);
  const mark = markOf(prepared);
  const revision = `${say('leaflet.revision', { mark })}${date === undefined ? '' : `, ${date}`}`;
  return {
    paper,
    bound: options.bound ?? false,
    generator: `Solderleaf leaflet ${kit.id}`,
    language,
    title: say('leaflet.title', { title: kit.title }),
    kind: say('leaflet.kind'),
    heading: kit.title,
    lines: [
      ...(kit.about === undefined ? [] : [kit.about]),
      `${say('leaflet.kit', { id: kit.id })} · ${revision}`,
    ],
    running: `${kit.title} · ${revision}`,
    ...(sender ? { sender } : {}),
    blocks: [
      ...beginning(prepared, pictures, say, options),
      ...stepsSection(prepared, pictures, say, innerOf(paper)),
      ...ending(prepared, pictures, say, options),
    ],
  };
}

/** What a page has inside its margins, millimetres. */
const innerOf = ({ width, height, margin }: Paper): Room => ({
  width: width - 2 * margin,
  height: height - 2 * margin,
});

/** The wiring by itself, the page turned round where it is larger then. */
function sheetOf(pictures: Pictures, { paper, bound = false }: LeafletOptions) {
  const { width, height } = innerOf(paper);
  const upright = pictures.wiring({ width, height: height - SHEET_HEAD });
  const turned = pictures.wiring(
    bound ? { width: height - SHEET_HEAD, height: width } : { width: height, height: width - SHEET_HEAD },
  );
  return turned.width > upright.width
    ? { picture: turned, turned: true }
    : { picture: upright, turned: false };
}

function beginning(
  prepared: Prepared,
  pictures: Pictures,
  say: Say,
  options: LeafletOptions,
): readonly Block[] {
  const { circuit, hand } = prepared;
  const { kit } = circuit;
  const inner = innerOf(options.paper);
  return [
    {
      is: 'box',
      role: 'caution',
      blocks: [
        { is: 'heading', level: 1, text: say('leaflet.cautions') },
        { is: 'list', items: cautions(say) },
      ],
    },
    { is: 'contents', heading: say('leaflet.contents') },
    {
      is: 'sheet',
      heading: say('leaflet.drawing'),
      caption: viewLine(kit.view, hand),
      ...sheetOf(pictures, options),
    },
    { is: 'heading', level: 1, text: say('leaflet.parts'), page: true },
    { is: 'paragraph', text: say('leaflet.parts-say') },
    partsTable(kit, say),
    {
      is: 'together',
      blocks: [
        { is: 'heading', level: 1, text: say('leaflet.tools') },
        { is: 'list', items: tools(kit, say), tick: true },
      ],
    },
    {
      is: 'together',
      blocks: [
        { is: 'heading', level: 1, text: say('leaflet.key') },
        { is: 'figure', picture: pictures.key({ width: inner.width, height: inner.height / 3 }) },
      ],
    },
  ];
}

function ending(
  prepared: Prepared,
  pictures: Pictures,
  say: Say,
  { paper, plot = false, closing }: LeafletOptions,
): readonly Block[] {
  const inner = innerOf(paper);
  return [
    { is: 'heading', level: 1, text: say('leaflet.positions'), page: true },
    positionsTable(prepared, say),
    { is: 'heading', level: 1, text: say('leaflet.loads') },
    ...loadsSection(prepared, say),
    ...(plot
      ? ([
          { is: 'heading', level: 1, text: say('leaflet.response'), page: true },
          {
            is: 'figure',
            picture: pictures.response({ width: inner.width, height: inner.height - SHEET_HEAD }),
          },
        ] as const)
      : []),
    { is: 'heading', level: 1, text: say('leaflet.faults') },
    faultsTable(prepared, say),
    { is: 'heading', level: 1, text: say('leaflet.notes'), page: true },
    { is: 'lines' },
    ...(closing === undefined ? [] : [{ is: 'paragraph', text: closing } as const]),
    { is: 'paragraph', text: say('caution.rules'), small: true },
  ];
}
