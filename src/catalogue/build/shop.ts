/**
 * The files that the kits of a catalogue share on shop pages: index, stylesheets, scripts and manifest. They are made once all kits are, and
 * only when one of the kits' files is another, by the build of the whole: a share does not know the kits of the others.
 */
import { join, relative, sep } from 'node:path';
import { isBytes, readBytes } from '../../files/read-file.ts';
import { commonFiles, dataIn, MANIFEST, manifestOf } from '../../publish/embed-folder.ts';
import { dataPath } from '../../publish/embed-kit.ts';
import type { KitData } from '../../shop/kit-data.ts';
import { type ShopFile, shopManifestSchema } from '../../shop/manifest.ts';
import { type Catalogue, SHOP_FOLDER } from '../catalogue.ts';
import { hashOf } from './cache.ts';
import type { Earlier } from './earlier.ts';
import { ALL_KITS, type Entry } from './manifest.ts';
import type { BuildOptions, Listener } from './options.ts';
import type { FileHashes, Outputs } from './write-out.ts';

/** What the shared files of a build are made from and with. */
interface Building extends Pick<BuildOptions, 'program' | 'check'> {
  readonly catalogue: Catalogue;
  readonly earlier: Earlier;
  readonly hashes: FileHashes;
  readonly outputs: Outputs;
}

/**
 * Makes the shared files where they are out of date, and records them.
 *
 * @param now what is recorded of all kits; the shared files are added
 * @param waits some kits are not up to date: in a check, nothing is said of what they share
 */
export function buildShop(
  now: Map<string, Entry>,
  waits: boolean,
  tell: Listener,
  { catalogue, program, check, earlier, hashes, outputs }: Building,
): { readonly stale: boolean; readonly failed: number } {
  const { out } = catalogue;
  const own = [...now]
    .filter(([file]) => file.startsWith(`${SHOP_FOLDER}/`))
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const key = hashOf(program, JSON.stringify(own.map(([file, { sha256 }]) => [file, sha256])));
  const fresh = earlier.keyOf(ALL_KITS, hashes) === key;
  if (fresh || (check && (waits || own.length > 0))) {
    for (const file of earlier.wantedOf(ALL_KITS)) {
      const entry = earlier.entries.get(file);
      if (entry) now.set(file, entry);
    }
    if (fresh || waits) return { stale: false, failed: 0 };
    tell.line(`stale     ${join(out, SHOP_FOLDER)}: index and manifest of its kits`);
    return { stale: true, failed: 0 };
  }
  if (own.length === 0) return { stale: false, failed: 0 };
  const source = relative(catalogue.folder, catalogue.file).split(sep).join('/');
  let failed = 0;
  const folder = join(out, SHOP_FOLDER);
  const kits = [...new Set(own.map(([, { kit }]) => kit))].flatMap((id): readonly KitData[] => {
    const data = dataIn(join(folder, dataPath(id)), id);
    if (typeof data === 'object') return [data];
    failed++;
    const reason = data ?? 'it is not there, or not a kit’s data';
    tell.errorLine(
      `${join(folder, dataPath(id))}: left out of the index: ${reason}; delete it, and build again`,
    );
    return [];
  });
  const common = commonFiles(kits);
  const hashed = new Map(own.map(([file, { sha256 }]) => [file.slice(SHOP_FOLDER.length + 1), sha256]));
  const before = manifestIn(folder);
  const manifest = manifestOf(folder, kits, common, (path) => {
    const known = before.get(path);
    return known?.sha256 === hashed.get(path) ? known : undefined;
  });
  for (const { path, content } of [...common, { path: MANIFEST, content: manifest }]) {
    const name = `${SHOP_FOLDER}/${path}`;
    const bytes = Buffer.from(content);
    const sha256 = hashOf(bytes);
    const written = outputs.put({ name, sha256, content: bytes });
    if (typeof written === 'object') {
      failed++;
      tell.errorLine(written.failed);
      continue;
    }
    if (written === 'written') tell.line(`written   ${join(out, name)}`);
    now.set(name, { kit: ALL_KITS, source, sha256, key, mark: null });
  }
  return { stale: false, failed };
}

/** Hashes that the last manifest tells, so that no file is read again that is as it was; none where it cannot be read. */
function manifestIn(folder: string): ReadonlyMap<string, ShopFile> {
  const bytes = readBytes(join(folder, MANIFEST), LARGEST);
  if (!isBytes(bytes)) return new Map();
  try {
    const { data } = shopManifestSchema.safeParse(JSON.parse(Buffer.from(bytes).toString('utf8')));
    return new Map((data?.files ?? []).map((file) => [file.path, file]));
  } catch {
    return new Map();
  }
}

/** Bytes of a manifest of ten thousand kits. */
const LARGEST = 100e6;
