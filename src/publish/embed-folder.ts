/** A shop's folder as a whole: which kits lie in it, the page that lists them, and the manifest of its files. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { ID } from '../common/names.ts';
import { isBytes, LARGEST_DRAWING, readBytes, whyNot } from '../files/read-file.ts';
import { indexPage } from '../shop/index-page.ts';
import { type KitData, kitDataSchema } from '../shop/kit-data.ts';
import { type ShopFile, shopManifest } from '../shop/manifest.ts';
import { dataPath, embedPaths } from './embed-kit.ts';
import { integrityOf, type ShopContent, sha256Of, sharedFiles, versionOf } from './embed-shared.ts';

/** The manifest's name. */
export const MANIFEST = 'manifest.json';

/** Kits of a folder, and files that look like a kit's data and cannot be read as such, with the reason. */
interface Found {
  readonly kits: readonly KitData[];
  readonly wrong: readonly { readonly file: string; readonly reason: string }[];
}

/** Folders of a folder that may be a kit's, in the order of their names. */
function foldersIn(dir: string): readonly string[] {
  try {
    return readdirSync(dir, { withFileTypes: true })
      .flatMap((one) => (one.isDirectory() && ID.test(one.name) ? [one.name] : []))
      .sort((a, b) => (a < b ? -1 : 1));
  } catch {
    // One that is not there has none; one that cannot be read cannot be written to, which is told there.
    return [];
  }
}

/** The kits whose data lies in a folder, in the order of their ids: what earlier runs wrote, read with care. */
export function kitsIn(dir: string): Found {
  const kits: KitData[] = [];
  const wrong: Found['wrong'][number][] = [];
  for (const id of foldersIn(dir)) {
    const file = join(dir, dataPath(id));
    const read = dataIn(file, id);
    if (typeof read === 'string') wrong.push({ file, reason: read });
    else if (read) kits.push(read);
  }
  return { kits, wrong };
}

/** A kit's data; nothing where the file is not there or somebody else's; else why it is not data, in words. */
export function dataIn(file: string, id: string): KitData | string | undefined {
  const bytes = readBytes(file, LARGEST_DRAWING);
  if (!isBytes(bytes)) return /not found/.test(whyNot(bytes)) ? undefined : whyNot(bytes);
  const text = Buffer.from(bytes).toString('utf8');
  if (!/^\{\s*"form":/.test(text)) return undefined;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return 'it is not JSON';
  }
  const { data } = kitDataSchema.safeParse(value);
  if (!data) return 'it is not in the form that this version writes';
  return data.id === id ? data : `it is of the kit ${data.id}`;
}

/** All files that kits share, for the kits that there are. */
export function commonFiles(kits: readonly KitData[]): readonly ShopContent[] {
  const { files } = sharedFiles();
  const version = (path: string): string =>
    files.flatMap((one) => (one.path === path ? [versionOf(one.content)] : [])).join('');
  const page = indexPage(kits, { style: version('index.css'), script: version('index.js') });
  return [{ path: 'index.html', content: page }, ...files];
}

const shopFileOf = (path: string, content: string | Uint8Array): ShopFile => ({
  path,
  bytes: Buffer.byteLength(content),
  sha256: sha256Of(content),
  integrity: integrityOf(content),
});

/**
 * The manifest of a folder as its text: the files that kits share as they are now, and those of each kit as they lie there.
 *
 * @param known files whose hashes are known already, by path
 */
export function manifestOf(
  dir: string,
  kits: readonly Pick<KitData, 'id'>[],
  common: readonly ShopContent[],
  known: (path: string) => ShopFile | undefined = () => undefined,
): string {
  const own = kits.flatMap(({ id }) =>
    embedPaths(id).flatMap((path): ShopFile[] => {
      const before = known(path);
      if (before) return [before];
      const bytes = readBytes(join(dir, path), LARGEST_DRAWING);
      return isBytes(bytes) ? [shopFileOf(path, bytes)] : [];
    }),
  );
  return shopManifest([...common.map(({ path, content }) => shopFileOf(path, content)), ...own]);
}
