/** The files of a workshop to start from, each with comments that teach. */
import { formatKitJsonSchema, formatListJsonSchema } from '../../describe/json-schema.ts';
import { circuitFile, extendedAs } from '../../files/circuits.ts';
import { loadKit } from '../../files/load.ts';
import { CATALOGUE } from '../../files/parts-list.ts';
import { formatCatalogueJsonSchema } from '../json-schema.ts';
import { newKitText } from './kit-text.ts';

interface NewFile {
  /** From the workshop's folder, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** The kits to start from, by their ids, and the circuits that they extend. */
const KITS = [
  ['hss', 'hss-lever-5-1v2t-pads'],
  ['hs', 'hs-lever-3-1v1t-pad'],
  ['hh', 'hh-toggle-3-1v1t'],
] as const;

/** The parts list that a new workshop has. */
export const LIST = 'parts.yaml';

/** @throws where a circuit that ships is not what it should be */
export async function newWorkshop(): Promise<readonly NewFile[]> {
  const kits: NewFile[] = [];
  for (const [id, circuit] of KITS) {
    const { kit, layers } = await loadKit(circuitFile(circuit));
    if (!kit) throw new Error(`the circuit ${circuit} cannot be read: install the program again`);
    const extended = extendedAs(circuit);
    const text = newKitText({ id, extended, kit, layers, schema: '../schemas/kit.schema.json' });
    kits.push({ path: `kits/${id}.yaml`, text });
  }
  return [
    { path: CATALOGUE, text: CATALOGUE_TEXT },
    { path: LIST, text: PARTS_TEXT },
    ...kits,
    { path: 'schemas/catalogue.schema.json', text: formatCatalogueJsonSchema() },
    { path: 'schemas/kit.schema.json', text: formatKitJsonSchema() },
    { path: 'schemas/parts.schema.json', text: formatListJsonSchema() },
  ];
}

const CATALOGUE_TEXT = `# yaml-language-server: $schema=./schemas/catalogue.schema.json
# Your catalogue: which kits there are, and what is made of each. A line that begins with # is a comment.

# Everything that is made goes to this folder. Put nothing of your own there.
out: out

# What is made of each kit: drawing is its sheet as SVG, png the same as pixels. The others are positions (a drawing for each
# switch position), steps (one for each soldering step), inline (for a shop page), response (a plot) and loads (a table as JSON).
outputs: [drawing]

# The page that sheets are fitted to: a4, a5 or letter. Without this line each sheet is as large as it has to be.
page: a4

# The language of everything made for customers: en, de, fr or es; English where nothing is said. Remove the # to try it.
#language: de

# Who leaflets are from: remove the # in front of these lines, and write your own. logo: logo.svg adds a drawing of shapes alone.
#workshop:
#  name: Your workshop
#  address: |
#    1 Your Street
#    Your Town
#  colour: "#0b5e80"
#  closing: Thank you for building it yourself.

# The kits: files, folders, or patterns such as kits/hss-*.yaml. A later entry says what is different for some of them; remove the # to
# try the second one.
kits:
  - kits
#  - { files: kits/hh.yaml, page: a5, outputs: [drawing, png] }

# A family is many kits made from one. Each value of an axis says what it changes in the base; every combination is a kit.
families:
  - kit: hss-{pickups}-{cap} # hss-bright-22n, hss-bright-33n and so on
    title: HSS, five-way lever, {pickups} pickups, {cap}F
    extends: ./kits/hss.yaml
    matrix:
      pickups:
        bright: { parts: { neck: { resistance: 5.4k }, middle: { resistance: 5.5k } } }
        warm: { parts: { neck: { resistance: 6.3k }, middle: { resistance: 6.4k } } }
      cap:
        22n: # nothing is changed: the base has 22 nF
        33n: { parts: { tone-cap: { value: 33n } } }
        47n: { parts: { tone-cap: { value: 47n } } }
    # Combinations that you do not sell:
    except:
      - { pickups: bright, cap: 22n }
`;

const PARTS_TEXT = `# yaml-language-server: $schema=./schemas/parts.schema.json
# What you buy for your kits. All codes, prices and numbers are invented: write your own over them.
# A kit may name a code, as in tone-cap: { code: C-33N }; a value without a code is looked for here.
# The same as a table from a spreadsheet, parts.csv, may take this file's place.
currency: EUR

stock:
  # in-stock is yes, no, or the number of pieces. What is not in stock gives way to the item named by replaced-by.
  - { code: R-470K, kind: resistor, value: 470k, tolerance: 5%, price: 0.04, in-stock: 400, replaced-by: R-510K }
  - { code: R-510K, kind: resistor, value: 510k, tolerance: 5%, price: 0.05, in-stock: 200 }

  - { code: C-22N, kind: capacitor, value: 22n, tolerance: 10%, price: 0.35, in-stock: 150 }
  - { code: C-33N, kind: capacitor, value: 33n, tolerance: 10%, price: 0.38, in-stock: 40 }
  - { code: C-47N, kind: capacitor, value: 47n, tolerance: 10%, price: 0.40, in-stock: 160 }

  - { code: P-250-LOG, kind: pot, value: 250k, taper: log, price: 3.20, in-stock: 75 }
  - { code: P-500-LOG, kind: pot, value: 500k, taper: log, price: 3.20, in-stock: 110 }

  - { code: S-LEVER-3, kind: lever-3, price: 9.50, in-stock: 22 }
  - { code: S-LEVER-5, kind: lever-5, price: 11.80, in-stock: 31 }
  - { code: S-TOGGLE, kind: toggle-3, price: 7.40, in-stock: 14 }
  - { code: J-MONO, kind: jack, price: 1.90, in-stock: 85 }
`;
