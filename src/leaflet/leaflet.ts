/** From a placed kit to its leaflet: everything that goes into the bag with the parts. */
import { positionedIn } from '../annotate/positioned.ts';
import { type Step, stepsOf } from '../annotate/steps.ts';
import { viewLine } from '../annotate/words.ts';
import type { Workshop } from '../describe/workshop.ts';
import { markOf, type Prepared } from '../draw/compose.ts';
import type { Box, PrintTheme } from '../draw/leaflet/figure.ts';
import { type Say, sayIn } from '../messages/say.ts';
import { Cuts } from './cuts.ts';
import type { Block, Leaflet, Paper, Picture, Sender } from './document.ts';
import { faultsTable } from './faults.ts';
import { fittingSection } from './fitting.ts';
import { orientationSection } from './orientation.ts';
import { caseWords, cautions, partsTable, tools } from './parts.ts';
import { Pictures } from './pictures.ts';
import { loadsSection, positionsTable, responseSection } from './sound.ts';
import { stepsSection } from './steps.ts';

interface LeafletOptions {
  readonly paper: Paper;
  readonly theme?: PrintTheme;
  /** Printed beside the revision mark: `2026-11-30`. */
  readonly date?: string;
  /** With the plot of the frequency response. */
  readonly plot?: boolean;
  /** Its pages are bound, so that all must have the same size and a large drawing is turned on its page. */
  readonly bound?: boolean;
  /** Who it is from. */
  readonly workshop?: Workshop;
}

/** Of a page's height, what a heading and a line beneath it take, millimetres. */
const SHEET_HEAD = 22;

export function leafletOf(prepared: Prepared, options: LeafletOptions): Leaflet {
  const { paper, theme = 'light', date, workshop } = options;
  const { kit } = prepared.circuit;
  const { language } = kit;
  const say = sayIn(language);
  const pictures = new Pictures(prepared, theme, say, innerOf(paper));
  const steps = stepsOf(prepared.circuit, language);
  const cuts = new Cuts(prepared, steps, say, language);
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
    running: kit.title,
    revision,
    ...(workshop ? { sender: senderOf(workshop) } : {}),
    blocks: [
      ...beginning(prepared, pictures, say, steps, cuts, options),
      ...stepsSection({ prepared, steps, pictures, cuts, say, language }, innerOf(paper)),
      ...ending(prepared, pictures, say, options),
    ],
  };
}

/** Room for a logo, millimetres. */
const LOGO: Box = { width: 50, height: 16 };

function senderOf({ name, address, colour, logo }: Workshop): Sender {
  const scale = logo ? Math.min(LOGO.width / logo.width, LOGO.height / logo.height) : 0;
  return {
    name,
    ...(address === undefined ? {} : { address }),
    ...(colour === undefined ? {} : { colour }),
    ...(logo
      ? { logo: { svg: logo.svg, width: logo.width * scale, height: logo.height * scale, alt: name } }
      : {}),
  };
}

/** What a page has inside its margins, millimetres. */
const innerOf = ({ width, height, margin }: Paper): Box => ({
  width: width - 2 * margin,
  height: height - 2 * margin,
});

/** The wiring by itself, the page turned round where it is larger then. */
function sheetOf(pictures: Pictures, steps: readonly Step[], { paper, bound = false }: LeafletOptions) {
  const { width, height } = innerOf(paper);
  const picture = pictures.wiring({ width, height: height - SHEET_HEAD }, steps);
  // Turned on a bound page, which stays upright, it fits as it is.
  if (!picture.turned || bound) return { picture, turned: picture.turned };
  const room = { width: height, height: width - SHEET_HEAD };
  const aside = pictures.wiring(room, steps);
  return { picture: aside.turned ? shrunk(picture, room) : aside, turned: true };
}

/** Printed smaller, where it is as wide as it is high and the heading leaves it less room on either page. */
function shrunk(picture: Picture, { width, height }: Box): Picture {
  const scale = Math.min(1, width / picture.width, height / picture.height);
  return { ...picture, width: picture.width * scale, height: picture.height * scale };
}

function beginning(
  prepared: Prepared,
  pictures: Pictures,
  say: Say,
  steps: readonly Step[],
  cuts: Cuts,
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
      caption: viewLine(kit.view, hand, kit.language),
      ...sheetOf(pictures, steps, options),
    },
    { is: 'heading', level: 1, text: say('leaflet.parts'), page: true },
    { is: 'paragraph', text: say('leaflet.parts-say') },
    partsTable(kit, say, (part) => pictures.part(part), cuts),
    ...orientationSection(prepared, say),
    {
      is: 'together',
      blocks: [
        { is: 'heading', level: 1, text: say('leaflet.tools') },
        { is: 'list', items: tools(circuit, say), tick: true },
      ],
    },
    {
      is: 'together',
      blocks: [
        { is: 'heading', level: 1, text: say('leaflet.steps') },
        { is: 'paragraph', text: say('leaflet.steps-say') },
        ...caseWords(circuit, say).map((text) => ({ is: 'paragraph', text }) as const),
        { is: 'paragraph', text: say('leaflet.rings-say') },
        { is: 'figure', picture: pictures.key(inner) },
      ],
    },
    ...cuts.list(),
  ];
}

function ending(
  prepared: Prepared,
  pictures: Pictures,
  say: Say,
  { paper, plot = false, bound = false, workshop }: LeafletOptions,
): readonly Block[] {
  // A kit without a switch has no position to tell of.
  const chosen = positionedIn(prepared.circuit).length > 0;
  return [
    ...fittingSection(prepared, say),
    ...(chosen
      ? ([
          { is: 'heading', level: 1, text: say('leaflet.positions') },
          positionsTable(prepared, say),
        ] as const)
      : []),
    { is: 'heading', level: 1, text: say('leaflet.loads') },
    ...loadsSection(prepared, say),
    ...(plot ? responseSection(prepared, pictures, say, { page: innerOf(paper), bound }) : []),
    { is: 'heading', level: 1, text: say('leaflet.faults') },
    faultsTable(prepared, say),
    { is: 'heading', level: 1, text: say('leaflet.notes'), page: true },
    { is: 'lines' },
    ...(workshop?.closing === undefined ? [] : [{ is: 'paragraph', text: workshop.closing } as const]),
    { is: 'paragraph', text: say('caution.rules'), small: true },
  ];
}
