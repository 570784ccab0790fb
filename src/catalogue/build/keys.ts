/** What the outputs of a job depend on, as hashes: by the texts it is read from, and by the kit that they come to. */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isMap } from '../../describe/chain.ts';
import type { Kit } from '../../describe/kit.ts';
import { parseText } from '../../describe/source.ts';
import type { Workshop } from '../../describe/workshop.ts';
import { readBaseFile } from '../../files/bases.ts';
import { isScript } from '../../files/kit-path.ts';
import { arrangementFile, findPage, packageRoot } from '../../files/layouts.ts';
import { partsListFor } from '../../files/parts-list.ts';
import { isBytes, LARGEST_DRAWING, LARGEST_KIT, readBytes } from '../../files/read-file.ts';
import type { Job } from '../catalogue.ts';
import { hashOf } from './cache.ts';

/** Packages outside of the program's own files that have a part in what is drawn. */
const DRAWING = [
  '@resvg/resvg-js',
  '@expo-google-fonts/inter',
  '@myriaddreamin/typst-ts-node-compiler',
  'subset-font',
];

/** The program: its version, its own files, and the packages it draws with. Another program may draw otherwise. */
export function programKey(): string {
  const root = packageRoot();
  // `dist`, or `src` where it runs from its source.
  const here =
    fileURLToPath(import.meta.url)
      .slice(root.length)
      .split(sep)
      .find(Boolean) ?? '';
  const folder = join(root, here);
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => (here === 'dist' ? /^[^/\\]*\.js$/ : /\.ts$/).test(name))
    .sort((a, b) => (a < b ? -1 : 1));
  const require = createRequire(import.meta.url);
  return hashOf(
    readFileSync(join(root, 'package.json')),
    ...DRAWING.map((name) => (require(`${name}/package.json`) as { readonly version: string }).version),
    ...files.flatMap((name) => [name, readFileSync(join(folder, name))]),
  );
}

/** What is not there has words of its own, which no file holds. */
const MISSING = '\0missing';

/** What counts of a description before it is read as a kit. */
interface Said {
  readonly hash: string;
  readonly extended?: string;
  readonly arrangement?: string;
}

/** Reads each file once, for as long as one build takes. */
export class Texts {
  readonly #known = new Map<string, Said>();
  readonly #bases = new Map<string, Said & { readonly file: string }>();
  readonly #hashes = new Map<string, string>();
  readonly #lists = new Map<string, string>();
  readonly #program: string;

  constructor(program: string) {
    this.#program = program;
  }

  /**
   * A hash of all that a job's kit is read from: the same texts make the same kit. Absent for a kit that only running it can
   * tell, or that extends a file which cannot be read.
   */
  keyOf(job: Job): string | undefined {
    const { id, description, arrangement, page, language, date, outputs } = job;
    const said = JSON.stringify([id, description, page, language, date, outputs, senderOf(job), baseOf(job)]);
    const parts = [this.#program, this.#listFor(job.file), said];
    const arrangements = [arrangement];
    let extended: string | undefined;
    let from = job.file;
    if (description === undefined) {
      if (isScript(job.file) || job.clash) return undefined;
      const own = this.#own(job.file);
      if (!own) return undefined;
      parts.push(own.hash);
      arrangements.push(own.arrangement);
      extended = own.extended;
    } else {
      extended = nameIn(description, 'extends');
      arrangements.push(nameIn(description, 'arrangement'));
    }
    const seen = new Set<string>();
    while (extended !== undefined) {
      const base = this.#base(extended, from);
      if (!base || seen.has(base.file)) return undefined;
      seen.add(base.file);
      parts.push(extended, base.hash);
      arrangements.push(base.arrangement);
      extended = base.extended;
      from = base.file;
    }
    for (const name of new Set(arrangements.filter((one) => one !== undefined))) {
      const file = arrangementFile(name);
      parts.push(file === undefined ? name : this.#hashOf(file));
    }
    return hashOf(...parts);
  }

  /** The parts list that holds for a kit, which is the same for all kits of a folder; where its items are written does not count. */
  #listFor(file: string): string {
    const folder = dirname(file);
    const before = this.#lists.get(folder);
    if (before !== undefined) return before;
    const list = partsListFor(file);
    const items = list?.items.map(({ place: _, places: _p, part: _o, ...item }) => item);
    const hash = list
      ? hashOf(
          JSON.stringify([
            list.currency,
            items,
            list.diagnostics.map(({ code, message }) => [code, message]),
          ]),
        )
      : MISSING;
    this.#lists.set(folder, hash);
    return hash;
  }

  #own(file: string): Said | undefined {
    const bytes = readBytes(file, LARGEST_KIT);
    return isBytes(bytes) ? this.#said(file, Buffer.from(bytes).toString('utf8')) : undefined;
  }

  /** A base by its name, which means the same from anywhere in one folder. */
  #base(name: string, from: string) {
    const named = `${dirname(from)}\0${name}`;
    const before = this.#bases.get(named);
    if (before) return before;
    const base = readBaseFile(name, from);
    if (!('text' in base)) return undefined;
    const found = { file: base.file, ...this.#said(base.file, base.text) };
    this.#bases.set(named, found);
    return found;
  }
  #said(file: string, text: string): Said {
    const before = this.#known.get(file);
    if (before) return before;
    // Most kits name neither, and then need not be parsed; a key may be written with escapes, though nobody does.
    const value = /\b(extends|arrangement)\b|\\/.test(text) ? parseText(text, file).value : undefined;
    const [extended, arrangement] = [nameIn(value, 'extends'), nameIn(value, 'arrangement')];
    const said = {
      hash: hashOf(text),
      ...(extended === undefined ? {} : { extended }),
      ...(arrangement === undefined ? {} : { arrangement }),
    };
    this.#known.set(file, said);
    return said;
  }

  #hashOf(file: string): string {
    const before = this.#hashes.get(file);
    if (before !== undefined) return before;
    const bytes = readBytes(file, LARGEST_DRAWING);
    const hash = isBytes(bytes) ? hashOf(bytes) : MISSING;
    this.#hashes.set(file, hash);
    return hash;
  }
}

const nameIn = (value: unknown, key: string): string | undefined =>
  isMap(value) && typeof value[key] === 'string' ? value[key] : undefined;

/** Outputs that say who they are from. */
const SIGNED: ReadonlySet<string> = new Set(['leaflet', 'booklet']);

/** The workshop where an output names it: of the others none is made again for a new address. */
function senderOf({ outputs, workshop }: Pick<Job, 'outputs' | 'workshop'>): Partial<Workshop> | undefined {
  if (outputs.some((output) => SIGNED.has(output))) return workshop;
  // A shop page has no more of it.
  return outputs.includes('shop') && workshop
    ? { name: workshop.name, ...(workshop.website === undefined ? {} : { website: workshop.website }) }
    : undefined;
}

/** Where shop pages will be, which is in their fragments alone. */
const baseOf = ({ outputs, base }: Pick<Job, 'outputs' | 'base'>): string | undefined =>
  outputs.includes('shop') ? base : undefined;

/**
 * A hash of all that the outputs of a kit show: the kit as it was read, its arrangement and page, and what is made. The parts list counts by
 * what the kit has of it, its values and substitutions: prices are on no drawing, nor is what other kits use.
 */
export function madeKey(
  program: string,
  kit: Kit,
  job: Pick<Job, 'outputs' | 'date' | 'workshop' | 'base'>,
): string {
  const { outputs, date } = job;
  const file = arrangementFile(kit.arrangement);
  const bytes = file === undefined ? undefined : readBytes(file, LARGEST_KIT);
  return hashOf(
    program,
    // An arrangement counts by what it says: its path is another in another checkout.
    JSON.stringify({ ...kit, arrangement: undefined, list: undefined }, plain),
    bytes && isBytes(bytes) ? bytes : MISSING,
    JSON.stringify((kit.page === undefined ? undefined : findPage(kit.page)) ?? null),
    JSON.stringify([date, ...[...new Set(outputs)].sort()]),
    JSON.stringify([senderOf(job), baseOf(job)]),
  );
}

/** JSON knows no infinite numbers; those of a kit must differ all the same. */
const plain = (_: string, value: unknown): unknown =>
  typeof value === 'number' && !Number.isFinite(value) ? String(value) : value;
