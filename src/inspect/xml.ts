/**
 * Reads the subset of XML that drawings are written in: elements, attributes, text. Anything else (a document type,
 * CDATA, entities of one's own) is refused, so that nothing is ever half understood.
 */

export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly Element[];
  /** The characters directly inside, in one. */
  readonly text: string;
}

type Parsed = { readonly root: Element } | { readonly error: string };

interface Open {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: Element[];
  text: string;
}

/** Deeper than any drawing; what follows may therefore walk the tree by recursion. */
const DEEPEST = 32;

const NAME = '[A-Za-z_][\\w:.-]*';
const QUOTED = `"[^"<]*"|'[^'<]*'`;
const TOKEN = new RegExp(
  `<!--(?!-?>)(?:(?!--)[^])*-->|</(${NAME})\\s*>|<(${NAME})((?:\\s+${NAME}\\s*=\\s*(?:${QUOTED}))*)\\s*(/?)>|([^<]+)`,
  'y',
);
const ATTRIBUTE = new RegExp(`(${NAME})\\s*=\\s*(${QUOTED})`, 'g');
const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };
/** Control characters and what a decoder puts in place of bytes that are not text. */
const NO_TEXT = /[\p{Cc}\uFFFD\uFFFE\uFFFF]/u;

/** The declaration, which may stand at the very beginning only. The text was read as UTF-8; a viewer must do the same. */
const DECLARATION =
  /^<\?xml\s+version\s*=\s*(?:"1\.[01]"|'1\.[01]')(?:\s+encoding\s*=\s*(?:"utf-8"|'utf-8'))?(?:\s+standalone\s*=\s*(?:"(?:yes|no)"|'(?:yes|no)'))?\s*\?>/i;

export function parseXml(source: string): Parsed {
  const text = source.replace(/^\uFEFF/, '').replace(DECLARATION, '');
  if (text.trim() === '') return { error: 'it is empty' };
  if (NO_TEXT.test(text.replace(/[\t\n\r]/g, ''))) return { error: 'it is not text' };
  try {
    return { root: build(text) };
  } catch (thrown) {
    if (thrown instanceof Malformed) return { error: thrown.message };
    throw thrown;
  }
}

class Malformed extends Error {}

function build(text: string): Element {
  const open: Open[] = [];
  let root: Open | undefined;
  TOKEN.lastIndex = 0;
  for (let at = 0; at < text.length; at = TOKEN.lastIndex) {
    const found = TOKEN.exec(text);
    const fail = (what: string): never => {
      throw new Malformed(`${what} at character ${at + 1}`);
    };
    if (!found) return fail('it is not well-formed XML');
    const [, closes, opens, attributes = '', selfClosing, characters] = found;
    const inside = open[open.length - 1];
    if (opens !== undefined) {
      const made: Open = { name: opens, attributes: attributesOf(attributes, fail), children: [], text: '' };
      if (inside) inside.children.push(made);
      else if (root) fail('a second root element stands');
      root ??= made;
      if (selfClosing === '') open.push(made);
      if (open.length > DEEPEST) fail('elements nest too deep for a drawing');
    } else if (closes !== undefined) {
      if (inside?.name !== closes) fail(`</${closes.slice(0, 40)}> closes nothing`);
      open.pop();
    } else if (characters !== undefined) {
      if (inside) inside.text += unescaped(characters, fail);
      else if (characters.trim() !== '') fail('text stands outside every element');
    }
  }
  const [left] = open.slice(-1);
  if (left) throw new Malformed(`<${left.name}> is never closed`);
  if (!root) throw new Malformed('there is no element in it');
  return root;
}

function attributesOf(text: string, fail: (what: string) => never): ReadonlyMap<string, string> {
  const attributes = new Map<string, string>();
  for (const [, name = '', quoted = ''] of text.matchAll(ATTRIBUTE)) {
    if (attributes.has(name)) fail(`an element with two attributes “${name}” stands`);
    attributes.set(name, unescaped(quoted.slice(1, -1), fail));
  }
  return attributes;
}

const unescaped = (text: string, fail: (what: string) => never): string =>
  text.replace(/&(?:#(\d{1,7})|#x([\da-fA-F]{1,6})|(\w+));|&/g, (whole, decimal, hex, name) => {
    const code = decimal ? Number(decimal) : hex ? Number.parseInt(hex, 16) : undefined;
    const known =
      code === undefined ? ENTITIES[name] : code <= 0x10ffff ? String.fromCodePoint(code) : undefined;
    return known ?? fail(`“${whole.slice(0, 20)}”, which stands for nothing, stands`);
  });
