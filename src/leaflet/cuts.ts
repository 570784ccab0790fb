/** What to cut: wire by colour and length, sleeving, what lengthens a leg, and what is trimmed on the instrument. */
import type { Step } from '../annotate/steps.ts';
import type { Prepared } from '../draw/compose.ts';
import type { Language } from '../messages/language.ts';
import { numberIn, type Say } from '../messages/say.ts';
import { colourName } from '../messages/words.ts';
import { CUTTING, cutList, inches, wireLengths } from '../place/wire-lengths.ts';
import { type Block, type Cell, strong, TICK, text } from './document.ts';
import { type Extension, extensionsOf, type Piece, sleevingsOf, upTo5 } from './pieces.ts';

const MILLI = 1000;
/** Of wire and sleeving so much more is in the kit than it takes. Common practice, no source. */
const SPARE = 0.1;

export class Cuts {
  readonly #say: Say;
  readonly #language: Language;
  readonly #lengths: ReturnType<typeof wireLengths>;
  readonly #steps: readonly Step[];
  readonly #sleevings: readonly Piece[];
  readonly #extensions: readonly Extension[];

  constructor(prepared: Prepared, steps: readonly Step[], say: Say, language: Language) {
    const { circuit, placement, arrangement } = prepared;
    this.#say = say;
    this.#language = language;
    this.#steps = steps;
    this.#lengths = wireLengths(circuit, placement, arrangement);
    this.#extensions = extensionsOf(prepared);
    this.#sleevings = sleevingsOf(circuit, steps, this.#lengths.sleevings, this.#extensions);
  }

  /** What is cut for a joint; empty where nothing is. */
  forJoint(joint: number, between = '\n'): string {
    const of = <T extends { readonly joint: number }>(all: readonly T[]) =>
      all.find((one) => one.joint === joint);
    const { wires, leads } = this.#lengths;
    const wire = of(wires);
    const extension = of(this.#extensions);
    const words = [
      ...(wire ? [this.#length(wire.length, wire.estimated)] : []),
      ...(wire?.kind === 'wire'
        ? [this.#say('leaflet.strip', { length: this.#millimetres(CUTTING.strip) })]
        : []),
      ...(of(leads) ? [this.#say('leaflet.trim')] : []),
      ...(extension ? [`${this.#say('leaflet.extending-wire')} ${this.#millimetres(extension.length)}`] : []),
      ...this.#sleevings
        .filter((one) => one.joint === joint)
        .map(({ length }) => `${this.#say('leaflet.sleeving-of')} ${this.#millimetres(length)}`),
    ];
    return words.join(between);
  }

  /** How the legs are lengthened that a step has and that may not reach; nothing where all do. */
  extending(step: Step): readonly Block[] {
    const own = this.#extensions.filter(({ joint }) => step.joints.includes(joint));
    if (own.length === 0) return [];
    const components = own.map(({ label }) => label).join(', ');
    return [{ is: 'paragraph', text: this.#say('leaflet.extend-step', { components }), small: true }];
  }

  /** The list of all pieces of wire; nothing where there is no wire to cut. */
  list(): readonly Block[] {
    const groups = cutList(this.#lengths);
    const others = [
      ...lengthsOf(this.#extensions).map((piece) => ['leaflet.extending-wire', ...piece] as const),
      ...lengthsOf(this.#sleevings).map((piece) => ['leaflet.sleeving-of', ...piece] as const),
    ];
    if (groups.length === 0 && others.length === 0) return [];
    const estimated = groups.some(({ rows }) => rows.some((row) => row.estimated));
    return [
      { is: 'heading', level: 1, text: this.#say('leaflet.cuts') },
      {
        is: 'table',
        columns: [
          { head: this.#say('leaflet.done') },
          { head: this.#say('leaflet.quantity'), align: 'right' },
          { head: this.#say('leaflet.wire'), share: 3 },
          { head: this.#say('leaflet.length'), share: 3 },
          { head: this.#say('leaflet.for-steps'), share: 2 },
        ],
        rows: [
          ...groups.flatMap(({ kind, colour, rows }) =>
            rows.map(({ length, joints, estimated: own }): readonly Cell[] => [
              TICK,
              text(String(joints.length)),
              strong(this.#wire(kind, colour)),
              text(this.#length(length, own)),
              text(this.#stepsOf(joints)),
            ]),
          ),
          ...others.map(([what, length, joints]): readonly Cell[] => [
            TICK,
            text(String(joints.length)),
            strong(this.#say(what)),
            text(this.#length(length, false)),
            text(this.#stepsOf(joints)),
          ]),
        ],
      },
      {
        is: 'paragraph',
        text: this.#say('leaflet.strip-say', { length: this.#millimetres(CUTTING.strip) }),
        small: true,
      },
      ...(estimated
        ? [
            {
              is: 'paragraph',
              text: this.#say('leaflet.estimated-say', {
                percent: numberIn(this.#language, CUTTING.allowance * 100, { most: 0 }),
                length: this.#millimetres(CUTTING.rounded),
              }),
              small: true,
            } as const,
          ]
        : []),
      ...this.#extending(),
    ];
  }

  /** What to do where a component's legs do not reach. */
  #extending(): readonly Block[] {
    if (this.#extensions.length === 0) return [];
    const components = this.#extensions.map(({ label, length }) =>
      this.#say('leaflet.extend-for', { component: label, length: this.#millimetres(length) }),
    );
    return [
      {
        is: 'paragraph',
        text: this.#say('leaflet.extend-say', { components: components.join(', ') }),
        small: true,
      },
    ];
  }

  /** Rows of a parts list: the wire of each colour, and the sleeving, with how much of it there must be. */
  stock(): readonly { readonly name: string; readonly amount: string }[] {
    const extended = total(this.#extensions);
    const sleeving = total(this.#sleevings);
    const withSpare = (metres: number): string => this.#length(upTo5(metres * (1 + SPARE)), false);
    return [
      ...cutList(this.#lengths).map(({ kind, colour, total }) => ({
        name: this.#wire(kind, colour),
        amount: withSpare(total),
      })),
      ...(extended === 0 ? [] : [{ name: this.#say('leaflet.extending-wire'), amount: withSpare(extended) }]),
      ...(sleeving === 0 ? [] : [{ name: this.#say('leaflet.sleeving-of'), amount: withSpare(sleeving) }]),
    ];
  }

  /** How much more of wire and sleeving than is needed; nothing for a kit without either. */
  spare(): readonly Block[] {
    if (this.stock().length === 0) return [];
    const percent = numberIn(this.#language, SPARE * 100, { most: 0 });
    return [{ is: 'paragraph', text: this.#say('leaflet.spare-say', { percent }), small: true }];
  }

  #wire(kind: 'wire' | 'jumper', colour: string | undefined): string {
    if (kind === 'jumper') return this.#say('leaflet.bare-wire');
    return this.#say('leaflet.wire-of', {
      colour: colour === undefined ? this.#say('leaflet.no-colour') : colourName(this.#language, colour),
    });
  }

  #stepsOf(joints: readonly number[]): string {
    return this.#steps
      .filter((step) => step.joints.some((joint) => joints.includes(joint)))
      .map(({ number }) => String(number))
      .join(', ');
  }

  #millimetres(metres: number): string {
    return `${numberIn(this.#language, metres * MILLI, { most: 0 })}\u00a0mm`;
  }

  #length(metres: number, estimated: boolean): string {
    const both = this.#say('leaflet.both-lengths', {
      millimetres: this.#millimetres(metres),
      inches: inches(metres).replaceAll(' ', '\u00a0'),
    });
    return estimated ? `≈ ${both}` : both;
  }
}

const total = (pieces: readonly Piece[]): number => pieces.reduce((sum, { length }) => sum + length, 0);

/** Pieces by length with their joints, the longest first. */
function lengthsOf(pieces: readonly Piece[]): readonly (readonly [number, readonly number[]])[] {
  const lengths = [...new Set(pieces.map(({ length }) => length))].sort((a, b) => b - a);
  return lengths.map((length) => [
    length,
    pieces.filter((one) => one.length === length).map(({ joint }) => joint),
  ]);
}
