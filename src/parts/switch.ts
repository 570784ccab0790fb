import { z } from 'zod';
import { sayIn } from '../messages/say.ts';
import { blockFace, blockOutline, type Columns } from './block.ts';
import { type Contact, definePart, type FieldIssue, type LugSpec, type PartBase } from './kind.ts';

interface OwnSwitch extends PartBase<'switch'> {
  readonly columns: Columns;
  readonly contacts: readonly Contact[];
}

const MOST = 24;

const lugName = z
  .union([z.string(), z.number()], { error: 'expected the name of a lug, such as A1' })
  .transform(String)
  .refine((name) => /^[A-Za-z0-9]{1,6}$/.test(name), {
    params: { remedy: 'Use one to six letters and digits, such as A1 or common.' },
    message: 'this is not a valid lug name',
  });
const column = z.array(lugName).max(MOST);

/** A word on the switch's face, beside its contacts. */
const calledLongest = 15;
const positionName = z
  .string({ error: 'expected what a position is called, such as up' })
  .refine(
    (word) =>
      new RegExp(`^\\p{Script=Latin}[\\p{Script=Latin}\\d -]{0,${calledLongest - 1}}$`, 'u').test(word),
    {
      params: {
        remedy: `Use up to ${calledLongest} letters, digits, blanks and hyphens, with a letter first, such as up or in the middle.`,
      },
      message: 'this is not a valid name of a position',
    },
  );

const fields = {
  lugs: z
    .strictObject({
      left: column.describe('At the left edge, from the top down'),
      right: column.optional().describe('At the right edge, from the top down'),
    })
    .describe('Lugs as they are seen from the solder side: { left: [A1, A0], right: [B1, B0] }'),
  positions: z
    .array(z.array(z.array(lugName).min(2)))
    .min(1)
    .max(MOST)
    .describe('For each position, the groups of lugs connected together: [[A0, A1], [B0, B1]]; [] if none'),
  called: z
    .array(positionName)
    .max(MOST)
    .optional()
    .describe('What the positions are called, in their order: [up, middle, down]; numbers by default'),
  frame: lugName
    .optional()
    .describe(
      'Which of the lugs is the switch’s frame: a point to solder ground to, which no contact touches',
    ),
};

/** A pole's letter and the throw's number, 0 the common, where a name says so; else a lug like any other. */
function lugSpec(name: string, frame: string | undefined): LugSpec {
  if (name === frame) return { name, role: 'case' };
  const [, pole, number] = /^([A-Z])(\d+)$/.exec(name) ?? [];
  if (pole === undefined) return { name, role: 'throw' };
  return { name, role: Number(number) === 0 ? 'common' : 'throw', pole };
}

const lugsIn = ({ left, right }: Columns): readonly string[] => [...left, ...right];

/** A switch that the kit itself describes: its lugs, where they sit, and which of them touch in each position. */
export const ownSwitch = definePart({
  kind: 'switch',
  what: 'user-defined switch',
  is: ['switch'],
  mirrors: false,
  fields,
  build: (base, { lugs, positions, called, frame }): OwnSwitch => ({
    ...base,
    columns: { left: lugs.left, right: lugs.right ?? [], ...(frame === undefined ? {} : { frame }) },
    contacts: positions.map((joins, i) => {
      const name = called?.[i];
      return { position: i + 1, ...(name === undefined ? {} : { called: name, mark: name }), joins };
    }),
  }),
  validate: ({ lugs, positions, called, frame }) => {
    const all = [...lugs.left, ...(lugs.right ?? [])];
    const twice = all.find((name, i) => all.indexOf(name) !== i);
    return [
      ...(all.length < 2
        ? [
            {
              path: ['lugs'],
              why: 'a switch needs at least two lugs',
              remedy: 'Name them from the top down.',
            },
          ]
        : []),
      ...(twice === undefined
        ? []
        : [{ path: ['lugs'], why: `“${twice}” is named twice`, remedy: 'Give each lug a name of its own.' }]),
      ...positions.flatMap((groups, i) => positionIssues(groups, all, i)),
      ...(called === undefined ? [] : calledIssues(called, positions.length)),
      ...(frame === undefined ? [] : frameIssues(frame, all, positions)),
    ];
  },
  lugs: [] as readonly LugSpec[],
  lugsOf: ({ columns }) => lugsIn(columns).map((name) => lugSpec(name, columns.frame)),
  elements: () => [],
  contacts: ({ contacts }) => contacts,
  outline: ({ label, columns, contacts }, _, language, narrow) =>
    blockOutline(label, sayIn(language)('face.switch'), columns, contacts, language, narrow),
  face: ({ columns }, seen) => blockFace(columns, seen),
});

/** Each position has a name, and each another one. */
function calledIssues(called: readonly string[], count: number): readonly FieldIssue[] {
  const path = ['called'];
  const twice = called.find((name, i) => called.indexOf(name) !== i);
  return [
    ...(called.length === count
      ? []
      : [
          {
            path,
            why: `${called.length} ${called.length === 1 ? 'name' : 'names'} for ${count} ${count === 1 ? 'position' : 'positions'}`,
            remedy: 'Name every position, in the order of “positions”, or leave “called” out.',
          },
        ]),
    ...(twice === undefined
      ? []
      : [
          {
            path,
            why: `two positions are called “${twice}”`,
            remedy: 'Give each position a name of its own.',
          },
        ]),
  ];
}

function frameIssues(
  frame: string,
  lugs: readonly string[],
  positions: readonly (readonly (readonly string[])[])[],
): readonly FieldIssue[] {
  if (!lugs.includes(frame))
    return [
      {
        path: ['frame'],
        why: `“${frame}” is not a lug of this switch`,
        remedy: `Name one of its lugs: ${lugs.join(', ')}; or add “${frame}” to “lugs”.`,
      },
    ];
  return positions.flat(2).includes(frame)
    ? [
        {
          path: ['frame'],
          why: `“${frame}” is the frame, and also a lug that a position connects`,
          remedy: 'Take it out of “positions”: no contact touches the frame.',
        },
      ]
    : [];
}

/** Lugs that do not exist, and lugs in two groups at once: those two would be one. */
function positionIssues(
  groups: readonly (readonly string[])[],
  lugs: readonly string[],
  index: number,
): readonly FieldIssue[] {
  const named = groups.flat();
  const path = ['positions', index];
  const unknown = named.find((name) => !lugs.includes(name));
  const twice = named.find((name, i) => named.indexOf(name) !== i);
  return [
    ...(unknown === undefined
      ? []
      : [{ path, why: `“${unknown}” is not a lug of this switch`, remedy: `Its lugs: ${lugs.join(', ')}.` }]),
    ...(twice === undefined
      ? []
      : [
          {
            path,
            why: `“${twice}” is named twice in one position`,
            remedy: 'Put lugs that are connected in this position into one group.',
          },
        ]),
  ];
}
