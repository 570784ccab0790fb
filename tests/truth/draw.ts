/** Drawings made fresh from source, with the shortest of searches: what must be true is true wherever the search stops. */
import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { Kit } from '../../src/describe/kit.ts';
import { kitFromValue, readKit } from '../../src/describe/read.ts';
import { type Aspect, type Prepared, sheetsOf } from '../../src/draw/compose.ts';
import { prepare, render } from '../../src/pipeline.ts';
import { arrangementSchema } from '../../src/place/arrangement.ts';
import { type Drawing, read } from './reader.ts';

export const arrangements = readdirSync('layouts')
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.slice(0, -5));
export const samples = readdirSync('samples')
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.slice(0, -5));

export function sample(name: string): Kit {
  const { kit } = readKit(readFileSync(`samples/${name}.yaml`, 'utf8'), name);
  if (!kit) throw new Error(`${name} is not a kit`);
  return kit;
}

export function described(value: unknown): Kit {
  const { kit, problems } = kitFromValue(value, 'truth.ts');
  if (!kit) throw new Error(JSON.stringify(problems));
  return kit;
}

const made = new Map<string, Promise<Prepared>>();

function placed(kit: Kit, arrangement: string, hand: Kit['hand']): Promise<Prepared> {
  const key = `${kit.id} ${arrangement} ${hand}`;
  const before = made.get(key);
  if (before) return before;
  const seats = arrangementSchema.parse(parse(readFileSync(`layouts/${arrangement}.yaml`, 'utf8')));
  const now = prepare(kit, seats, { effort: { steps: 0, seed: 1 }, hand });
  made.set(key, now);
  return now;
}

export interface Wanted extends Aspect {
  readonly arrangement?: string;
  readonly hand?: Kit['hand'];
}

/** One drawing of a kit, as text and read. Kits are told apart by their ids. */
export async function drawn(
  kit: Kit,
  { arrangement = 'free-flow', hand = kit.hand, ...aspect }: Wanted = {},
): Promise<Drawing & { readonly svg: string }> {
  const { svg } = render(await placed(kit, arrangement, hand), aspect);
  return { ...read(svg), svg };
}

/** Every sheet that a page takes. */
export async function drawnSheets(
  kit: Kit,
  aspect: Aspect,
): Promise<readonly (Drawing & { readonly svg: string })[]> {
  const prepared = await placed(kit, 'free-flow', kit.hand);
  return sheetsOf(prepared, aspect).map((one) => {
    const { svg } = render(prepared, one);
    return { ...read(svg), svg };
  });
}
