/**
 * Descriptions spoilt at random, the same for the same seed: tokens of the text dropped, doubled, exchanged or taken from another
 * kit, and, so that many of them get past the reader, kinds, values, lugs and joints of the parsed description changed likewise.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import { seeded } from '../../src/common/random.ts';
import { kinds } from '../../src/parts/index.ts';

/** Kits without an error, and samples that have one or more already. */
const GOOD = ['samples', 'samples/circuits', 'samples/broken/warnings', 'tests/bench/kits'];
const BROKEN = ['samples/broken'];

/** Longer ones take longer to draw, and those made against the reader’s limits are tested where these are. */
const LONGEST = 3500;

const textsIn = (folders: readonly string[]): readonly string[] =>
  folders
    .flatMap((folder) =>
      readdirSync(folder)
        .filter((name) => name.endsWith('.yaml'))
        .sort()
        .map((name) => readFileSync(`${folder}/${name}`, 'utf8')),
    )
    .filter((text) => text.length < LONGEST);
const good = textsIn(GOOD);
const texts = [...good, ...textsIn(BROKEN)];

interface Description {
  parts: Record<string, Record<string, unknown>>;
  joints: unknown[];
  [key: string]: unknown;
}

const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The kits among them, as values. */
const kits: readonly Description[] = good.flatMap((text) => {
  try {
    const value: unknown = parse(text);
    return isMap(value) &&
      isMap(value.parts) &&
      Object.values(value.parts).every(isMap) &&
      Array.isArray(value.joints)
      ? [value as Description]
      : [];
  } catch {
    return [];
  }
});

const TOKEN = /[\w.]+|\s+|./gu;
const words: readonly string[] = [
  ...new Set(texts.flatMap((text) => text.match(TOKEN) ?? []).filter((word) => word.trim() !== '')),
];
/** What people and programs write in a field, and what nobody should. */
const ODD: readonly unknown[] = [
  0,
  -1,
  1,
  2,
  1e308,
  '1e9',
  '0',
  '470k',
  '22n',
  '1M',
  '0.1',
  '1G',
  '2.4H',
  '',
  ' ',
  null,
  true,
  [],
  {},
  [[]],
  'both',
  'log',
  '5%',
  '99.9%',
  'always',
  '🎸',
  'a'.repeat(31),
  '__proto__',
  'constructor',
  'kit',
  '1.5',
  '12',
  24,
  25,
];

interface Chance {
  readonly pick: <T>(list: readonly T[]) => T;
  readonly below: (count: number) => number;
}

function chanceOf(seed: number): Chance {
  const random = seeded(seed);
  const below = (count: number): number => Math.floor(random() * count);
  return {
    below,
    pick: (list) => {
      const one = list[below(list.length)];
      if (list.length === 0) throw new Error('nothing to pick from');
      return one as (typeof list)[number];
    },
  };
}

/** A description of a seed: one of the texts or values, changed once to five times. */
export function mutant(seed: number): string {
  const chance = chanceOf(seed);
  const times = 1 + chance.below(1 + chance.below(5));
  if (chance.below(3) === 0) {
    let text = chance.pick(texts);
    for (let i = 0; i < times; i++) text = spoiltText(text, chance);
    return text;
  }
  const description = structuredClone(chance.pick(kits));
  for (let i = 0; i < times; i++) (chance.below(2) === 0 ? spoil : vary)(description, chance);
  return stringify(description);
}

function spoiltText(text: string, { pick, below }: Chance): string {
  const tokens = text.match(TOKEN) ?? [''];
  const at = below(tokens.length);
  const other = below(tokens.length);
  const own = tokens[at] ?? '';
  switch (below(5)) {
    case 0:
      tokens.splice(at, 1 + below(3));
      break;
    case 1:
      tokens.splice(at, 0, own);
      break;
    case 2:
      tokens[at] = tokens[other] ?? '';
      tokens[other] = own;
      break;
    case 3:
      tokens[at] = pick(words);
      break;
    default: {
      const lines = text.split('\n');
      const line = below(lines.length);
      const moved = lines.splice(line, 1);
      if (below(2) === 0)
        lines.splice(below(lines.length + 1), 0, ...moved, ...(below(2) === 0 ? moved : []));
      return lines.join('\n');
    }
  }
  return tokens.join('');
}

/** Changes a description in place to one that may well be drawn: what is written otherwise, or is another value of its kind. */
function vary(kit: Description, { pick, below }: Chance): void {
  const parts = Object.values(kit.parts);
  const valued = parts.filter(({ value }) => value !== undefined);
  switch (below(6)) {
    case 0: {
      if (valued.length === 0) return;
      const [one, other] = [pick(valued), pick(valued)];
      if (one.kind === other.kind) [one.value, other.value] = [other.value, one.value];
      else one.value = pick(PLAUSIBLE);
      return;
    }
    case 1:
      kit.parts = Object.fromEntries(Object.entries(kit.parts).reverse());
      return;
    case 2: {
      const [at, to] = [below(kit.joints.length || 1), below(kit.joints.length || 1)];
      [kit.joints[at], kit.joints[to]] = [kit.joints[to], kit.joints[at]];
      return;
    }
    case 3:
      if (parts.length > 0) pick(parts).label = pick(LABELS);
      return;
    case 4:
      Object.assign(
        kit,
        pick([
          { hand: 'left' },
          { view: 'component-side' },
          { arrangement: 'free-flow' },
          { arrangement: 'plate-row' },
          { page: 'a4' },
          { page: 'a5-landscape' },
        ]),
      );
      return;
    default:
      kit.joints = kit.joints.map((joint) =>
        typeof joint === 'string' ? joint.split('>').reverse().join(' > ') : joint,
      );
  }
}

const PLAUSIBLE = ['250k', '500k', '1M', '470k', '22n', '680p', '100n', '1k', 0.1, '1e9'];
const LABELS = [
  'A',
  'Volume',
  'a label of thirty characters!!',
  '  x  ',
  '1',
  'Ω µ ±',
  'wordwithoutanyblankinitatallxx',
];

/** Changes a description in place. */
function spoil(kit: Description, chance: Chance): void {
  const { pick, below } = chance;
  const names = Object.keys(kit.parts);
  const name = names.length === 0 ? 'neck' : pick(names);
  const part = kit.parts[name] ?? {};
  const other = pick(kits);
  switch (below(9)) {
    case 0:
      kit.parts[name] = { ...part, kind: pick(Object.keys(kinds)) };
      break;
    case 1: {
      const keys = Object.keys(part);
      part[pick(['value', 'label', 'taper', 'positions', 'lugs', 'resistance', 'inductance', ...keys])] =
        pick(ODD);
      break;
    }
    case 2: {
      // A part of another kit, under a name of this one or a new one.
      const from = Object.values(other.parts);
      if (from.length > 0) kit.parts[pick([name, 'extra'])] = structuredClone(pick(from));
      break;
    }
    case 3:
      delete kit.parts[name];
      break;
    case 4:
      kit.joints.splice(below(kit.joints.length + 1), 1);
      break;
    case 5:
      if (kit.joints.length > 0) kit.joints.push(structuredClone(pick(kit.joints)));
      break;
    case 6:
      rejoin(kit, chance);
      break;
    case 7: {
      const key = pick([
        'intended',
        'stock',
        'output-load',
        'hand',
        'view',
        'arrangement',
        'page',
        'title',
        'kit',
      ]);
      const given = other[key];
      kit[key] = below(2) === 0 && given !== undefined ? given : pick(ODD);
      break;
    }
    default:
      kit.intended = {
        silent: [{ [name]: pick([1, 2, 'pressed', 'pulled out', [1, 9]]) }],
        'out-of-phase': pick<unknown>(['always', [{ [name]: 2 }], ODD]),
      };
  }
}

const ENDS = /([\w-]+)\s*\.\s*([\w-]+)/g;

/** Moves one end of a joint to an end of another, or exchanges its lug for another that the kit names. */
function rejoin({ joints }: Description, { pick, below }: Chance): void {
  if (joints.length === 0) return;
  const ends = joints.flatMap((joint) => textOf(joint).match(ENDS) ?? []);
  if (ends.length === 0) return;
  const at = below(joints.length);
  const joint = joints[at];
  const which = below(2);
  let nth = 0;
  const changed = (text: string): string =>
    text.replace(ENDS, (end) => {
      if (nth++ !== which) return end;
      if (below(2) === 0) return pick(ends);
      const [part] = end.split('.');
      return `${part}.${pick(ends).split('.')[1] ?? '1'}`;
    });
  if (typeof joint === 'string') joints[at] = changed(joint);
  else if (isMap(joint)) {
    const [kind, ...rest] = Object.entries(joint);
    if (kind)
      joints[at] = Object.fromEntries([
        [
          below(4) === 0 ? pick(['wire', 'leg', 'jumper', 'bend', 'braid']) : kind[0],
          changed(String(kind[1])),
        ],
        ...rest,
      ]);
  }
}

const textOf = (joint: unknown): string =>
  typeof joint === 'string' ? joint : isMap(joint) ? String(Object.values(joint)[0]) : '';
