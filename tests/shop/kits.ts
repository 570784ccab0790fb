/** Kits for tests of shop pages: those that ship, placed without a search, as places are no matter here. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readKit } from '../../src/checked.ts';
import { inLanguage, type Kit } from '../../src/describe/kit.ts';
import type { Prepared } from '../../src/draw/compose.ts';
import { readBaseFile } from '../../src/files/bases.ts';
import type { Language } from '../../src/messages/language.ts';
import { freeFlow } from '../../src/place/arrangement.ts';
import { DEFAULT_EFFORT } from '../../src/place/improve.ts';
import { prepare } from '../../src/prepare.ts';

const yamlIn = (folder: string): readonly string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => join(folder, name));

/** All samples and all circuits that ship. */
export const shippedFiles: readonly string[] = [...yamlIn('samples'), ...yamlIn('samples/circuits')];

export function kitOf(text: string, language?: Language, file = 'a.yaml'): Kit {
  const { kit, diagnostics } = readKit(text, file, readBaseFile);
  if (!kit) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  return inLanguage(kit, language);
}

export const kitIn = (file: string, language?: Language): Kit =>
  kitOf(readFileSync(file, 'utf8'), language, file);

export const quickly = (kit: Kit): Promise<Prepared> =>
  prepare(kit, freeFlow, { effort: { ...DEFAULT_EFFORT, steps: 0 } });
