/** The drawings of a leaflet, each as large as the room it is given, with what it shows in words. */
import type { Plot } from '../annotate/plot.ts';
import type { Step } from '../annotate/steps.ts';
import { endAt, type LugId, lugIdOf } from '../circuit/circuit.ts';
import { nth } from '../common/must.ts';
import type { Prepared } from '../draw/compose.ts';
import { type CaseJoint, caseFigure } from '../draw/leaflet/case-figure.ts';
import { coverFigure } from '../draw/leaflet/cover-figure.ts';
import type { Box, PrintTheme } from '../draw/leaflet/figure.ts';
import { partPicture } from '../draw/leaflet/part-picture.ts';
import { probeFigures } from '../draw/leaflet/probes.ts';
import { responseFigure } from '../draw/leaflet/response-figure.ts';
import { stepFigures } from '../draw/leaflet/step-figure.ts';
import { wiringFigure } from '../draw/leaflet/wiring-figure.ts';
import type { Say } from '../messages/say.ts';
import type { Part } from '../parts/index.ts';
import { render } from '../pipeline.ts';
import { unsolderedEnds } from '../soldering/ends.ts';
import { planOf, solderedIn } from '../soldering/plan.ts';
import type { Picture } from './document.ts';
import { kindIn } from './words.ts';

/** Millimetres of a CSS pixel, 96 to an inch. */
const PIXEL = 25.4 / 96;
/** Of a test's picture: the share of the page's width, and millimetres at most; in less width than the last, its words stand below it. */
const PROBES = { share: 0.44, widest: 90, highest: 64, lone: 100 } as const;
/** Of a page's height the share that a step's drawing may take: below it stand its joints and its test. */
const ABOVE = 0.45;
/** And where it is crowded, so that its joints may stand on the next page. */
const TALLEST = 0.62;
/**
 * Of the size that it has with all of the width, a step's drawing has so much at least, where steps then fill pages better: millimetres of width that any drawing has, and
 * the least share.
 */
const SMALLER = { width: 110, share: 0.75 } as const;
/** On a page that lies on its side the joints stand beside the drawing: of its width and height the shares of that. */
const BESIDE = { width: 0.55, height: 0.62 } as const;
/** A sample of a mark: the share of the page's width, and millimetres at most. */
const SAMPLE = { share: 0.36, width: 46, height: 20 } as const;
/** Millimetres of width from which on a step's table has room for lengths and words on one line. */
const ROOMY = 150;
/** A part's picture, millimetres. */
const PART: Box = { width: 20, height: 14 };

/** A test whose probes are to be shown. */
interface Asked {
  /** Of the picture, unique in the leaflet. */
  readonly name: string;
  /** After which it is made. */
  readonly step: number;
  readonly from: LugId;
  readonly to: LugId;
  readonly alt: string;
}

/** A kit's leaflet is often made in several formats, or for several senders: of one paper all have the same pictures. */
const made = new WeakMap<Prepared, Map<string, Pictures>>();

/** The pictures of a kit for pages with so much inside their margins. */
export function picturesOf(prepared: Prepared, theme: PrintTheme, say: Say, inner: Box): Pictures {
  const ofKit = made.get(prepared) ?? new Map<string, Pictures>();
  made.set(prepared, ofKit);
  const key = JSON.stringify([theme, inner.width, inner.height]);
  const pictures = ofKit.get(key) ?? new Pictures(prepared, theme, say, inner);
  ofKit.set(key, pictures);
  return pictures;
}

export type { Pictures };

class Pictures {
  readonly #drawn = new Map<string, unknown>();
  readonly #prepared: Prepared;
  readonly #theme: PrintTheme;
  readonly #say: Say;
  /** What a page has inside its margins. */
  readonly #inner: Box;
  constructor(prepared: Prepared, theme: PrintTheme, say: Say, inner: Box) {
    this.#inner = inner;
    this.#prepared = prepared;
    this.#theme = theme;
    this.#say = say;
  }

  /** What is drawn for these arguments, which are plain data, drawn once. */
  #once<T>(what: string, given: readonly unknown[], draw: () => T): T {
    const key = JSON.stringify([what, ...given]);
    if (!this.#drawn.has(key)) this.#drawn.set(key, draw());
    return this.#drawn.get(key) as T;
  }

  /** The wiring for the title page, for the whole page as its room: it is printed smaller there. */
  cover(title: string): Picture {
    return this.#once('cover', [title], () =>
      coverFigure(this.#prepared, this.#inner, { alt: title, theme: this.#theme }),
    );
  }

  /** The wiring by itself. */
  wiring(room: Box, steps: readonly Step[]): Picture {
    const lines = steps.flatMap(({ lines }) => lines).join('. ');
    const alt = `${this.#say('leaflet.drawing')}: ${lines}.`;
    return this.#once('wiring', [room, alt], () =>
      wiringFigure(this.#prepared, room, { alt, theme: this.#theme }),
    );
  }

  /** A drawing a step, all at the same place and scale, and samples of their marks. */
  steps(steps: readonly Step[]): ReturnType<typeof stepFigures> {
    const { width, height } = this.#inner;
    const wide = width > height;
    const room = wide
      ? { width: width * BESIDE.width, height: height * BESIDE.height }
      : { width: width * this.#smaller, height: height * ABOVE * this.#smaller };
    const words = {
      lines: 'leaflet.rings-say',
      aside: 'rings.number',
      soldered: 'rings.black',
      hooked: 'rings.white',
      gathered: 'rings.gathered',
    } as const;
    return this.#once('steps', [steps.map(({ lines }) => lines)], () =>
      stepFigures(this.#prepared, steps, room, {
        theme: this.#theme,
        tallest: height * TALLEST * (wide ? 1 : this.#smaller),
        altOf: ({ number, title, lines }) =>
          `${this.#say('leaflet.step', { number, title })}. ${lines.join('. ')}.`,
        sample: {
          box: { width: Math.min(SAMPLE.width, width * this.sampleShare), height: SAMPLE.height },
          alt: (name) => this.#say(words[name]),
        },
      }),
    );
  }

  /** Of the size that a step's drawing has with all of the width, the least that it is printed at. */
  get #smaller(): number {
    return Math.min(1, Math.max(SMALLER.share, SMALLER.width / this.#inner.width));
  }

  /** How many times larger than they are drawn the drawings of steps may be printed: up to the width of the page, where they are drawn as large as they may be. */
  stepsLarger(steps: readonly Step[]): number {
    const { width, height } = this.#inner;
    const [first] = this.steps(steps).figures;
    if (!first || width > height) return 1;
    const bound =
      first.width > width * this.#smaller - 1 || first.height > height * ABOVE * this.#smaller - 1;
    return bound
      ? Math.max(1, Math.min(width / first.width, (height * TALLEST) / first.height, 1 / this.#smaller))
      : 1;
  }

  /** Of the page's width what a sample of a mark takes, as a fraction. */
  get sampleShare(): number {
    return Math.min(SAMPLE.share, SAMPLE.width / this.#inner.width);
  }

  /** Of the page's width what a step's drawing takes where its joints stand beside it, as a fraction. */
  get stepShare(): number | undefined {
    return this.#inner.width > this.#inner.height ? BESIDE.width : undefined;
  }

  /** Whether a column of a step's table has room for a length and what is done with its ends on one line. */
  get roomy(): boolean {
    return this.#inner.width >= ROOMY && this.stepShare === undefined;
  }

  /** Of the page's width what a picture of probes takes, as a fraction. */
  get probeShare(): number {
    return this.#inner.width < PROBES.lone ? 1 : Math.min(PROBES.share, PROBES.widest / this.#inner.width);
  }

  /** Where the probes of a multimeter are held in each test, by the names of the tests: all at one scale. */
  probes(tests: readonly Asked[]): ReadonlyMap<string, Picture> {
    const { circuit } = this.#prepared;
    const plan = planOf(circuit);
    const probings = tests.map(({ name, step, from, to, alt }) => ({
      id: name,
      alt,
      joints: plan.placed.flatMap((when, i) => (when <= step ? [i] : [])),
      hooked: (i: number, end: 'from' | 'to'): boolean => {
        const joint = nth(circuit.joints, i);
        return (
          unsolderedEnds(circuit.kit, joint)[end] === undefined &&
          solderedIn(plan, i, lugIdOf(joint[end])) > step
        );
      },
      spots: [
        { ...endAt(from), words: this.#say('leaflet.probe-red') },
        { ...endAt(to), words: this.#say('leaflet.probe-black') },
      ] as const,
    }));
    const room = { width: this.#inner.width * this.probeShare, height: PROBES.highest };
    const figures = this.#once('probes', [tests], () =>
      probeFigures(this.#prepared, probings, room, { theme: this.#theme }),
    );
    return new Map(tests.map(({ name }, i) => [name, nth(figures, i)]));
  }

  /** A part's case with the places of its joints. */
  caseOf(part: Part, joints: readonly CaseJoint[]): Picture {
    const alt = `${part.label}: ${joints.map(({ name }) => name).join(', ')}`;
    return this.#once('case', [part.name, joints], () =>
      caseFigure(this.#prepared, part, joints, { alt, theme: this.#theme }),
    );
  }

  part(part: Part): Picture {
    const alt = `${part.label}: ${kindIn(part, this.#say)}`;
    return this.#once('part', [part.name, alt], () =>
      partPicture(this.#prepared, part, PART, { alt, theme: this.#theme }),
    );
  }

  /** What lines and signs mean, composed for a column so wide, so that its type is as large on any paper. */
  key({ width }: Pick<Box, 'width'>): Picture {
    const pixels = Math.floor(width / PIXEL);
    return this.#once('key', [pixels], () =>
      atScale(render(this.#prepared, { theme: this.#theme, only: ['key'], width: pixels }).svg, PIXEL),
    );
  }

  /** The response of all positions together. */
  response(plot: Plot, room: Box): Picture {
    return responseFigure(plot, room, { alt: plot.description, theme: this.#theme });
  }
}

/** Width and height in the drawing's units. */
function sizeOf(svg: string): Box {
  const [, width = 0, height = 0] = (/ viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).map(Number);
  return { width, height };
}

/** @param scale millimetres of a drawing unit */
function atScale(svg: string, scale: number): Picture {
  const { width, height } = sizeOf(svg);
  return { svg, width: width * scale, height: height * scale, alt: altOf(svg) };
}

/** What the drawing itself says for those who cannot see it. */
const altOf = (svg: string): string =>
  [/<title[^>]*>([^<]*)</, /<desc[^>]*>([^<]*)</]
    .map((pattern) => (pattern.exec(svg)?.[1] ?? '').trim())
    .filter((words) => words !== '')
    .join('. ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');
