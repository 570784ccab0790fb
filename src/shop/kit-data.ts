/**
 * A kit as data for a shop page: its parts, joints and nets, and what is live and heard in each state. It is what `ID/ID.json` holds, in
 * the words of the kit's language; figures are those of `loads --json`: ohms, unrounded, `null` for an open circuit.
 */
import { z } from 'zod';
import { readOutputs, type StateLoads } from '../analyse/index.ts';
import { type Card, cardsOf } from '../annotate/cards.ts';
import { tintOfPickup } from '../annotate/lines.ts';
import { liveJoints } from '../annotate/live.ts';
import { positionedIn } from '../annotate/positioned.ts';
import { endName } from '../annotate/step-words.ts';
import { stepsOf } from '../annotate/steps.ts';
import { settingText } from '../annotate/words.ts';
import { type Circuit, endAt, type LugId, lugAt, lugId, lugIdOf, type State } from '../circuit/circuit.ts';
import { positionsOf } from '../circuit/position.ts';
import { must, nth } from '../common/must.ts';
import { ID, ID_LONGEST } from '../common/names.ts';
import { formatted, jsonSchema } from '../describe/json-schema.ts';
import { jointKinds } from '../describe/kit.ts';
import type { Workshop } from '../describe/workshop.ts';
import { markOf, type Prepared } from '../draw/compose.ts';
import { languages } from '../messages/language.ts';
import { keyOf, sayIn } from '../messages/say.ts';
import { colourName, lugWords, positionWords } from '../messages/words.ts';
import { contactAt, is, isPickup, lugsOf, type Part, whatIs } from '../parts/index.ts';
import { valueWords } from '../parts/value-words.ts';

/** What a shop may look for in a kit. */
const groups = ['pickup', 'switch', 'control', 'component', 'other'] as const;
type PartGroup = (typeof groups)[number];

const words = z.string();
const lug = z
  .string()
  .regex(/^[^.]+\..+$/)
  .describe('part.lug, such as neck.hot');
const number = z.int().min(1);
const ohms = z.number().min(0).nullable();

export const kitDataSchema = z
  .strictObject({
    form: z.literal(1).describe('Of this file; another number is another form'),
    id: z.string().regex(ID).max(ID_LONGEST).describe('Of the kit; names its folder and files'),
    title: words,
    about: words.nullable().describe('What the circuit is for'),
    language: z.enum(languages).describe('Of all words in this file'),
    revision: z.string().describe('The mark that is printed on the drawing'),
    workshop: z
      .strictObject({
        name: words,
        website: z
          .string()
          .regex(/^https?:/)
          .nullable(),
      })
      .nullable()
      .describe('Who the kit is from; null where nobody says'),
    pictures: z
      .array(
        z.strictObject({
          file: z.string().describe('In the folder of this file'),
          width: z.number().positive().describe('CSS pixels'),
          height: z.number().positive(),
        }),
      )
      .describe('Drawings beside this file, each with the size that it is shown at'),
    switches: z
      .array(
        z.strictObject({
          name: z
            .string()
            .describe('Of the switch, or of the control that is a blend, in “positions” of a state'),
          label: words.describe('What the drawing calls it'),
          positions: z.array(words).min(1).describe('In the order of their numbers, from 1'),
        }),
      )
      .describe('Switches and blends; none where the kit has nothing to choose'),
    parts: z.array(
      z.strictObject({
        name: z.string(),
        label: words.describe('What the drawing calls it'),
        kind: z.string().describe('As descriptions of kits name it'),
        what: words.describe('The kind in words'),
        group: z.enum(groups),
        value: words.nullable().describe('Such as 250 kΩ log; null for a part without one'),
        lugs: z.array(z.strictObject({ id: lug, words: words.describe('As on its tag in the drawing') })),
      }),
    ),
    joints: z.array(
      z.strictObject({
        number: number.describe('data-joint of the inline drawing'),
        kind: z.enum(jointKinds),
        what: words.describe('The kind in words'),
        from: z.strictObject({ lug, words }),
        to: z.strictObject({ lug, words }),
        colour: z
          .strictObject({ code: z.string().describe('IEC 60757'), words })
          .nullable()
          .describe('Of the insulation; null where the kit does not say'),
        sleeved: z.boolean().describe('It is a bare leg that is covered with sleeving'),
        net: number,
      }),
    ),
    nets: z
      .array(
        z.strictObject({
          number: number.describe('data-net of the inline drawing'),
          lugs: z.array(lug).min(1),
        }),
      )
      .describe('Lugs that joints hold together, whatever the switches do'),
    states: z
      .array(
        z.strictObject({
          number: number.describe('data-live and data-shown of the inline drawing'),
          words: words.describe('Where the switches are'),
          positions: z.record(z.string(), number).describe('By switch the number of its position'),
          sounds: words.describe('The pickups that are heard'),
          joints: z.array(number).describe('Numbers of the joints that carry the signal'),
          pickups: z
            .array(
              z.strictObject({
                name: z.string(),
                label: words.describe('Of a split pickup with its coil'),
                tint: z
                  .string()
                  .regex(/^pickup-\d$/)
                  .describe('The ink of its bar: --solderleaf-line- and this, in the stylesheet'),
                dcLoad: ohms.describe('Ohms; null for an open circuit'),
                signalLoad: ohms.describe(
                  'Ohms at the frequency that the drawing names; null for an open circuit',
                ),
                ofReference: z
                  .number()
                  .nonnegative()
                  .nullable()
                  .describe(
                    'The signal load as a share of that in the harness the pickup was made for; null for an open circuit',
                  ),
                dcLoadWords: words,
                signalLoadWords: words,
                verdict: words.describe(
                  'Beside the harness the pickup was made for, as on the drawing’s card',
                ),
                words: words.describe('All of it in one sentence'),
              }),
            )
            .describe('Those that are heard'),
          notes: z.array(words).describe('How the pickups are joined, and what a meter shows at the jack'),
        }),
      )
      .min(1),
  })
  .describe('A kit as data for a shop page');

export type KitData = z.output<typeof kitDataSchema>;

/** JSON Schema, draft 2020-12, of a kit's data, as the text of its file. */
export const formatShopJsonSchema = (): string => formatted(jsonSchema(kitDataSchema, 'Solderleaf kit data'));

/** What a kit’s data says of more than the kit: who it is from, and which drawings lie beside it. */
interface KitSurroundings {
  readonly workshop?: Pick<Workshop, 'name' | 'website'>;
  readonly pictures?: KitData['pictures'];
}

/** A placed kit as data; of its placement only the revision mark tells. */
export function kitDataOf(prepared: Prepared, { workshop, pictures = [] }: KitSurroundings = {}): KitData {
  const { circuit, loads } = prepared;
  const { kit } = circuit;
  const { language } = kit;
  const cards = cardsOf(circuit, loads, readOutputs(circuit));
  return {
    form: 1,
    id: kit.id,
    title: kit.title,
    about: kit.about ?? null,
    language,
    revision: markOf(prepared),
    workshop: workshop ? { name: workshop.name, website: workshop.website ?? null } : null,
    pictures: [...pictures],
    switches: switchesOf(circuit),
    parts: kit.parts.map((part) => partData(part, circuit)),
    joints: jointsOf(circuit),
    nets: circuit.nets.map(({ index, lugs }) => ({ number: index + 1, lugs: [...lugs] })),
    states: circuit.states.map((state, index) => ({
      number: index + 1,
      words: settingText(circuit, state) || sayIn(language)('leaflet.always'),
      positions: { ...state.positions },
      ...stateData(
        circuit,
        state,
        must(
          cards.find(({ states }) => states.includes(index)),
          'card',
        ),
        loads[index],
      ),
    })),
  };
}

function switchesOf(circuit: Circuit): KitData['switches'] {
  const { kit, states } = circuit;
  const labels = positionedIn(circuit);
  return Object.keys(states[0]?.positions ?? {}).map((name, i) => {
    const part = kit.parts.find((one) => one.name === name);
    return {
      name,
      label: nth(labels, i).label,
      positions: positionsOf(circuit, name).map(({ position }) => {
        const called =
          states.find(({ positions }) => positions[name] === position)?.positionNames[name] ??
          (part && contactAt(part, position)?.mark);
        return called === undefined ? String(position) : positionWords(kit.language, called);
      }),
    };
  });
}

function groupOf(part: Part): PartGroup {
  if (isPickup(part)) return 'pickup';
  if (is(part, 'switch')) return 'switch';
  if (is(part, 'pot')) return 'control';
  return is(part, 'component') ? 'component' : 'other';
}

function partData(part: Part, { kit }: Circuit): KitData['parts'][number] {
  const say = sayIn(kit.language);
  const key = keyOf('kind', part.kind);
  return {
    name: part.name,
    label: part.label,
    kind: part.kind,
    what: key === undefined ? whatIs(part) : say(key),
    group: groupOf(part),
    value: valueWords(part, kit.language) ?? null,
    lugs: lugsOf(part).map(({ name }) => ({
      id: lugId(part.name, name),
      words: lugWords(kit.language, name),
    })),
  };
}

function jointsOf(circuit: Circuit): KitData['joints'] {
  const { language } = circuit.kit;
  const say = sayIn(language);
  const sleeved = new Set(
    stepsOf(circuit).flatMap(({ details }) => details.flatMap((one) => (one.sleeved ? [one.index] : []))),
  );
  const end = (id: LugId) => ({ lug: id, words: endName(circuit, language, endAt(id)) });
  return circuit.joints.map(({ kind, from, to, colour }, i) => ({
    number: i + 1,
    kind,
    what: say(must(keyOf('joint', kind), kind)),
    from: end(lugIdOf(from)),
    to: end(lugIdOf(to)),
    colour: colour === undefined ? null : { code: colour, words: colourName(language, colour) },
    sleeved: sleeved.has(i),
    net: lugAt(circuit, lugIdOf(from)).net + 1,
  }));
}

/** JSON has no word for an infinite number. */
const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

function stateData(
  circuit: Circuit,
  state: State,
  card: Card,
  loads: StateLoads | undefined,
): Pick<KitData['states'][number], 'sounds' | 'joints' | 'pickups' | 'notes'> {
  const say = sayIn(circuit.kit.language);
  return {
    sounds: card.title,
    joints: [...liveJoints(circuit, state)].sort((a, b) => a - b).map((i) => i + 1),
    pickups: (loads?.pickups ?? []).map(({ pickup, dcLoad, signalLoad }) => {
      const row = must(
        card.rows.find((one) => one.pickup === pickup),
        `card of ${pickup}`,
      );
      const verdict = row.level === undefined ? row.verdict : `${row.verdict}; ${row.level}`;
      const both = say('desc.load', { pickup: row.label, dc: row.dcLoad, signal: row.signalLoad });
      return {
        name: pickup,
        label: row.label,
        tint: tintOfPickup(circuit, pickup),
        dcLoad: finite(dcLoad),
        signalLoad: finite(signalLoad),
        ofReference: finite(row.ratio),
        dcLoadWords: row.dcLoad,
        signalLoadWords: row.signalLoad,
        verdict,
        words: `${both}, ${verdict}`,
      };
    }),
    notes: [
      ...(card.joined === undefined ? [] : [card.joined]),
      say('named.list', { name: card.measured ?? say('meter.jack'), words: card.meter }),
    ],
  };
}
