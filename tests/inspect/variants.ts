/** Every drawing the samples give: each kit in each arrangement. Views and themes are further loops here. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Kit } from '../../src/describe/kit.ts';
import { readKit } from '../../src/describe/read.ts';
import { draw } from '../../src/pipeline.ts';
import { arrangementNames, findArrangement } from '../../src/publish/layouts.ts';

export interface Variant {
  readonly name: string;
  readonly svg: string;
  readonly kit: Kit;
}

const SAMPLES = readdirSync('samples').filter((name) => name.endsWith('.yaml'));

export const sampleKits = (): readonly Kit[] =>
  SAMPLES.map((file) => {
    const { kit } = readKit(readFileSync(`samples/${file}`, 'utf8'), file);
    if (!kit) throw new Error(`${file} does not read`);
    return kit;
  });

export async function drawnIn(kit: Kit, arrangement: string): Promise<string> {
  const found = findArrangement(arrangement);
  if (typeof found === 'string') throw new Error(`${arrangement}: ${found}`);
  return draw(kit, found);
}

export async function* variants(): AsyncGenerator<Variant> {
  for (const kit of sampleKits())
    for (const arrangement of arrangementNames())
      yield { name: `${kit.id} in ${arrangement}`, svg: await drawnIn(kit, arrangement), kit };
}
