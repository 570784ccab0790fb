/** From a placed kit to its leaflet: everything that goes into the bag with the parts. */
import { positionedIn } from '../annotate/positioned.ts';
import { type Step, stepsOf } from '../annotate/steps.ts';
import { viewLine } from '../annotate/words.ts';
import type { Workshop } from '../describe/workshop.ts';
import { markOf, type Prepared } from '../draw/compose.ts';
import type { Box, PrintTheme } from '../draw/leaflet/figure.ts';
import { type Say, sayIn } from '../messages/say.ts';
import { is } from '../parts/index.ts';
import { casePlans } from './case-plan.ts';
import { Cuts } from './cuts.ts';
import { type Block, isNarrow, type Leaflet, type Paper, type Picture, type Sender } from './document.ts';
import { faultsTable } from './faults.ts';
import { fittingSection } from './fitting.ts';
import { orientationSection } from './orientation.ts';
import { caseWords, cautions, holdWords, partsTable, tools } from './parts.ts';
import { type Pictures, picturesOf } from './pictures.ts';
import { loadsSection, positionsTable, responseSection } from './sound.ts';
import { marksWords, stepsSection } from './steps.ts';
import { measuringSection } from './tests.ts';
import { unbroken } from './unbroken.ts';

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

/** Of a page's height, what a heading and a line beneath it take, and air above a key, millimetres. */
const SHEET = { head: 22, air: 6 } as const;
/** A key shares the drawing's page where it leaves the drawing so much of its size. */
const WITH_KEY = 0.9;

export function leafletOf(prepared: Prepared, options: LeafletOptions): Leaflet {
  const { paper, theme = 'light', date, workshop } = options;
  const { kit } = prepared.circuit;
  const { language } = kit;
  const say = sayIn(language);
  const pictures = picturesOf(prepared, theme, say, innerOf(paper));
  const steps = stepsOf(prepared.circuit, language);
  const cuts = new Cuts(prepared, steps, say, language);
  const mark = markOf(prepared);
  const revision = `${say('leaflet.revision', { mark })}${date === undefined ? '' : `, ${date}`}`;
  return {
    paper,
    narrow: isNarrow(paper),
    bound: options.bound ?? false,
    generator: `Solderleaf leaflet ${kit.id}`,
    language,
    title: say('leaflet.title', { title: kit.title }),
    kind: say('leaflet.kind'),
    heading: kit.title,
    lines: [
      ...(kit.about === undefined ? [] : [kit.about]),
      `${say('leaflet.kit', { id: kit.id })} · ${revision}`,
      say('leaflet.extent', {
        parts: kit.parts.filter((part) => !is(part, 'ground-point')).length,
        joints: kit.joints.length,
        steps: steps.length,
      }),
    ],
    cover: pictures.cover(kit.title),
    running: kit.title,
    revision,
    ...(workshop ? { sender: senderOf(workshop) } : {}),
    blocks: unbroken([
      ...beginning(prepared, pictures, say, steps, cuts, options),
      ...stepsSection({ prepared, steps, pictures, cuts, say, language }),
      ...ending(prepared, pictures, say, options),
    ]),
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

/** A drawing with or without its key below, on a page that is upright or turned. */
interface Way {
  readonly picture: Picture;
  readonly key: Picture;
  readonly turned: boolean;
}

/**
 * The wiring by itself, the page turned round where it is larger then, and the key that belongs to it: on the same page, or on the next where it would take too much
 * of the drawing's size.
 */
function drawingOf(
  pictures: Pictures,
  steps: readonly Step[],
  { paper, bound = false }: LeafletOptions,
  { heading, caption, keyHeading }: Readonly<Record<'heading' | 'caption' | 'keyHeading', string>>,
): readonly Block[] {
  const { width, height } = innerOf(paper);
  const upright = { width, height: height - SHEET.head };
  // A bound page stays upright with its heading, and only what is below is turned.
  const aside = bound
    ? { width: height - SHEET.head, height: width }
    : { width: height, height: width - SHEET.head };
  const ways = (withKey: boolean): Way => {
    const [one, other] = [upright, aside].map((room): Way => {
      const key = pictures.key(room);
      const taken = withKey ? key.height + SHEET.air : 0;
      const picture = pictures.wiring({ ...room, height: room.height - taken }, steps);
      return { picture, key, turned: room === aside };
    }) as [Way, Way];
    return other.picture.width > one.picture.width ? other : one;
  };
  const [alone, both] = [ways(false), ways(true)];
  const sheet = { is: 'sheet', heading } as const;
  if (both.picture.width >= WITH_KEY * alone.picture.width) return [{ ...sheet, ...both }];
  const { picture, turned } = alone;
  return [
    { ...sheet, caption, picture, turned },
    { is: 'heading', level: 2, text: keyHeading },
    { is: 'figure', picture: pictures.key({ width }) },
  ];
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
    ...drawingOf(pictures, steps, options, {
      heading: say('leaflet.drawing'),
      caption: viewLine(kit.view, hand, kit.language),
      keyHeading: say('leaflet.key'),
    }),
    { is: 'heading', level: 1, text: say('leaflet.parts') },
    { is: 'paragraph', text: say('leaflet.parts-say') },
    ...cuts.spare(),
    partsTable(kit, say, (part) => pictures.part(part), cuts, isNarrow(options.paper)),
    ...orientationSection(prepared, say),
    { is: 'heading', level: 1, text: say('leaflet.tools') },
    { is: 'list', items: tools(circuit, say), tick: true },
    ...cuts.list(),
    { is: 'heading', level: 1, text: say('leaflet.steps') },
    { is: 'paragraph', text: say('leaflet.steps-say') },
    { is: 'paragraph', text: say('leaflet.how-say') },
    ...caseWords(circuit, say).map((text) => ({ is: 'paragraph', text }) as const),
    ...casePlans(prepared, steps, pictures, say),
    ...holdWords(circuit, say).map((text) => ({ is: 'paragraph', text }) as const),
    ...marksWords(steps, pictures, say),
    ...measuringSection(prepared, say),
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
          {
            is: 'together',
            blocks: [
              { is: 'heading', level: 1, text: say('leaflet.positions') },
              positionsTable(prepared, say),
            ],
          },
        ] as const)
      : []),
    ...loadsSection(prepared, say),
    ...(plot ? responseSection(prepared, pictures, say, { page: innerOf(paper), bound }) : []),
    { is: 'heading', level: 1, text: say('leaflet.faults') },
    faultsTable(prepared, say),
    { is: 'heading', level: 1, text: say('leaflet.notes') },
    { is: 'lines', ...(workshop?.closing === undefined ? {} : { closing: workshop.closing }) },
  ];
}
