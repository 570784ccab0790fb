/** What a kit may say is intended: positions without output, and positions in which pickups are out of phase. */
import { z } from 'zod';
import type { IntendedAt, Kit } from './kit.ts';

const POSITION = 'expected a position such as 2 or pressed, or a list of them';
const position = z.union([z.int(), z.string().min(1)], { error: POSITION });
const positions = z.union([position, z.array(position).min(1)], { error: POSITION });
/** An entry as it is to be written: the switch and position of a text such as `phase=2`, where it has them. */
function entryMeantBy(written: unknown): string {
  const [, name, at] =
    /^\s*([\w-]+)\s*[=:.> ]\s*([\w -]+?)\s*$/.exec(typeof written === 'string' ? written : '') ?? [];
  return `{ ${name ?? 'selector'}: ${at ?? 2} }`;
}

const places = z
  .array(
    z.record(z.string(), positions, {
      error: ({ input }) => `expected switches and their positions, such as ${entryMeantBy(input)}`,
    }),
    { error: 'expected a list of switch positions, such as [{ selector: 2 }]' },
  )
  .min(1);

const ALWAYS = 'always';

export const intendedField = z
  .strictObject({
    silent: places
      .optional()
      .describe(
        'Switch positions that have no output on purpose, such as [{ mute: 2 }] or [{ neck-on: off, bridge-on: off }]',
      ),
    'out-of-phase': z
      // As a pattern and not as a choice: then a wrong word is told of the list as well.
      .union([z.templateLiteral([ALWAYS]), places], {
        error: 'expected always, or a list of switch positions, such as [{ phase: 2 }]',
      })
      .optional()
      .describe(
        'Switch positions in which pickups are out of phase on purpose, such as [{ phase: pulled out }]; or always',
      ),
  })
  .describe('What is intended, and therefore neither an error nor a warning');

type Intended = NonNullable<Kit['intended']>;

/** Of a kit whose `intended` cannot be read: nothing is said of positions that it may have named. */
export const anythingIntended: Intended = {
  silent: [{ positions: {}, path: ['intended'] }],
  outOfPhase: [{ positions: {}, path: ['intended'] }],
};

/** Each entry with its place; the names in it are looked up later, as those of joints are. */
export function readIntended(written: z.output<typeof intendedField> | undefined): Intended {
  if (!written) return anythingIntended;
  const read = (key: string, list: z.output<typeof places> = []): readonly IntendedAt[] =>
    list.map((place, i) => ({
      path: ['intended', key, i],
      positions: Object.fromEntries(
        Object.entries(place).map(([name, some]) => [name, Array.isArray(some) ? some : [some]]),
      ),
    }));
  const phase = written['out-of-phase'];
  return {
    silent: read('silent', written.silent),
    outOfPhase:
      phase === ALWAYS
        ? [{ positions: {}, path: ['intended', 'out-of-phase'] }]
        : read('out-of-phase', phase),
  };
}
