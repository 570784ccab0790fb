/** A workshop's folder made for a test, and what is said of its catalogue and its kits. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';
import { loadJob } from '../../src/catalogue/load-job.ts';
import { readCatalogue } from '../../src/catalogue/read-catalogue.ts';
import type { Diagnostic } from '../../src/common/problem.ts';

/** A kit that is sound by itself: one pickup, one volume control and a tone control. */
export const kitText = (id: string): string => `kit: ${id}
title: S, volume and tone
parts:
  neck: { kind: single-coil, resistance: 5.7k }
  volume: { kind: pot, value: 250k, taper: log }
  tone: { kind: pot, value: 250k, taper: log }
  tone-cap: { kind: capacitor, value: 22n }
  output: { kind: jack }
joints:
  - bend: volume.1 > volume.case
  - { wire: volume.case > tone.case, colour: BK, length: 60mm }
  - neck.ground > volume.case
  - { wire: output.sleeve > volume.case, colour: BK, length: 140mm }
  - leg: tone-cap.1 > tone.2
  - leg: tone-cap.2 > tone.case
  - { wire: volume.3 > tone.1, colour: OG }
  - { wire: neck.hot > volume.3, colour: BU, length: 120mm }
  - { wire: volume.2 > output.tip, colour: WH, length: 140mm }
`;

export function workshop(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'solderleaf-workshop-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

/** `solderleaf.yaml:3:5 unknown-key: … / …`, with paths from the folder. */
export const told = (diagnostics: readonly Diagnostic[], folder: string): readonly string[] =>
  diagnostics.map(({ place, code, message, remedy }) =>
    `${place.file}:${place.line}:${place.column} ${code}: ${message} / ${remedy}`.replaceAll(
      `${folder}/`,
      '',
    ),
  );

/** What is said of a catalogue, and the ids of its kits. */
export async function listed(files: Readonly<Record<string, string>>) {
  const folder = workshop(files);
  const { catalogue, diagnostics } = await readCatalogue(folder);
  return { folder, catalogue, ids: catalogue?.jobs.map(({ id }) => id), said: told(diagnostics, folder) };
}

/** By id the kits of a catalogue and what is said of them. */
export async function loaded(files: Readonly<Record<string, string>>) {
  const { folder, catalogue } = await listed(files);
  const all = new Map<string, { kit: Awaited<ReturnType<typeof loadJob>>['kit']; said: readonly string[] }>();
  for (const job of catalogue?.jobs ?? []) {
    const { kit, diagnostics } = await loadJob(job);
    all.set(job.id, { kit, said: told(diagnostics, folder) });
  }
  return all;
}
