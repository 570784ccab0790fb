/** The circuits that ship, read as the program reads them. */
import { readdirSync } from 'node:fs';
import { notesOf } from '../../src/annotate/notes.ts';
import { formatDiagnostic, toDiagnostics } from '../../src/describe/diagnostics.ts';
import type { Kit } from '../../src/describe/kit.ts';
import { loadKit } from '../../src/files/load.ts';
import { analyse } from '../../src/pipeline.ts';

const FOLDER = 'samples/circuits';

export const circuitNames: readonly string[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.slice(0, -5))
  .sort();

/** A circuit that must be without an error, and its warnings in words. */
export async function circuitOf(
  name: string,
): Promise<{ readonly kit: Kit; readonly warnings: readonly string[] }> {
  const { kit, diagnostics, source } = await loadKit(`${FOLDER}/${name}.yaml`);
  if (!kit) throw new Error(`${name}: ${diagnostics.map(({ message }) => message).join('; ')}`);
  const { circuit, loads } = analyse(kit);
  const all = [...diagnostics, ...toDiagnostics(notesOf(circuit, loads), source)];
  const warnings = all.filter(({ severity }) => severity !== 'note').map(formatDiagnostic);
  return { kit, warnings };
}

export const circuitKit = async (name: string): Promise<Kit> => (await circuitOf(name)).kit;
