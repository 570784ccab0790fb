/** Small changes to the source, each of which some assertion must notice. */
import { readdirSync, readFileSync } from 'node:fs';
import { parseAst } from 'rolldown/parseAst';
import { seeded } from '../../src/common/random.ts';

export interface Mutant {
  readonly file: string;
  readonly line: number;
  /** What is changed, in words. */
  readonly what: string;
  readonly from: string;
  readonly to: string;
  /** Offset of `from` in the file. */
  readonly at: number;
  /** Nothing the program does can show it; see `mutantsIn`. */
  readonly moot?: true;
}

/** Changes that would do harm at the bench, by name; each must be found in the source, else the list is out of date. */
const NAMED: readonly (readonly [what: string, file: string, from: string, to: string])[] = [
  [
    'pot lugs 1 and 3 exchanged',
    'parts/pot.ts',
    '[CLOCKWISE.name, 1],\n  [WIPER.name, 4],\n  [ANTICLOCKWISE.name, 7],',
    '[ANTICLOCKWISE.name, 1],\n  [WIPER.name, 4],\n  [CLOCKWISE.name, 7],',
  ],
  ['lever rows exchanged', 'parts/lever.ts', '{ 1: 3, 2: 6, 3: 9, 0: 12 }', '{ 1: 9, 2: 6, 3: 3, 0: 12 }'],
  ['lever poles exchanged', 'parts/lever.ts', '{ A: 1, B: 9 }', '{ A: 9, B: 1 }'],
  [
    'the wiper at the wrong end',
    'parts/pot.ts',
    'onTrack(180 + OPENING + 4, TRACK - 4)',
    'onTrack(180 - OPENING - 4, TRACK - 4)',
  ],
  [
    'bands ten times the value',
    'common/marking.ts',
    'Number(exponent) - digits.length + 1;',
    'Number(exponent) - digits.length + 2;',
  ],
  [
    'the band of 1 % red',
    'common/marking.ts',
    "[0.01, 'BN'],\n  [0.02, 'RD'],",
    "[0.01, 'RD'],\n  [0.02, 'RD'],",
  ],
  ['bars doubled', 'draw/cards.ts', 'row.ratio / 2', 'row.ratio'],
  [
    'key colours exchanged',
    'draw/key.ts',
    "['output', 'to the output jack'],\n    ['tone', 'tone control'],",
    "['tone', 'to the output jack'],\n    ['output', 'tone control'],",
  ],
  ['ground over signal', 'draw/wires.ts', "=== 'ground' ? 0 : 1e6", "=== 'ground' ? 1e6 : 0"],
  [
    'DC and signal exchanged in the accessible text',
    'annotate/words.ts',
    'row.dcLoad}, signal',
    'row.signalLoad}, signal',
  ],
  [
    'DC and signal exchanged on a card',
    'draw/cards.ts',
    'pen.text(row.dcLoad, at(right - 74',
    'pen.text(row.signalLoad, at(right - 74',
  ],
  ['a step without its own joints', 'draw/compose.ts', 'number > now.number', 'number >= now.number'],
  ['a contrast limit of 3', 'inspect/rules/contrast.ts', 'const LEAST = 4.5;', 'const LEAST = 3;'],
  ['a lug clearance of 5.2', 'place/wiring.ts', 'const LUG_CLEARANCE = 6;', 'const LUG_CLEARANCE = 5.2;'],
  [
    'a lug clearance of 5.2 in the check',
    'inspect/rules/wires.ts',
    'const CLEARANCE = 6;',
    'const CLEARANCE = 5.2;',
  ],
  ['exit 0 with nothing compared', 'inspect/index.ts', 'kit || kits.length === 0', 'true'],
  [
    'exit 0 with no kit found',
    'commands/console.ts',
    'is a .yaml, .json or .ts file`);\n    fail();',
    'is a .yaml, .json or .ts file`);',
  ],
  [
    'quotes in CSV',
    'report/response-table.ts',
    'csvFormatRows([heads, ...rows])',
    "[heads, ...rows].map((row) => row.join(',')).join('\\n')",
  ],
  ['tip and sleeve exchanged', 'parts/jack.ts', 'const y = 1 + 3 * i;', 'const y = 4 - 3 * i;'],
  [
    'the component side not mirrored',
    'draw/compose.ts',
    "view === 'component-side' ? flipped(placement) : placement",
    'placement',
  ],
];

/** Files whose every line is a matter of looks, of words or of tables made by a script. */
const SKIPPED =
  /font-metrics|theme\.ts$|wording\.ts$|(^|\/)index\.ts$|json-schema\.ts$|placement\.ts$|quoting\.ts$/;
/** Where things stand and how large they are is for the pictures to tell, which are left out of account here. */
const LOOKS = /^(place|draw)\/|^parts\/(outline|fit|shape|two-leg|lever)\.ts/;
/** In the file of a part kind, where its outline and its face begin. */
const OUTLINE = /^ {2}outline: |^const SYMBOL/m;

const SWAPS: Readonly<Record<string, string>> = {
  '<': '<=',
  '<=': '<',
  '>': '>=',
  '>=': '>',
  '===': '!==',
  '!==': '===',
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '&&': '||',
  '||': '&&',
};
const METHODS: Readonly<Record<string, string>> = {
  some: 'every',
  every: 'some',
  max: 'min',
  min: 'max',
  filter: 'slice',
  startsWith: 'endsWith',
};

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}
const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value && 'start' in value;

/** `!x`, `x === undefined`, and several of them with `||`. */
const ABSENT = /^(?:!\w+|\w+ === undefined)(?: \|\| (?:!\w+|\w+ === undefined))*$/;
const GIVES_UP = /^(?:continue|return(?: undefined)?);$/;
/** Whole numbers are compared with these; between measured quantities the limit itself is never met. */
const WHOLE = /^\d+$|\.length$|\.size$/;

/** A node and all that is in it. */
function within(node: Node, into: Set<Node>): void {
  into.add(node);
  for (const value of Object.values(node))
    for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) within(child, into);
}

/**
 * Every change that the kinds of node allow. Moot are those that can show nowhere: the number behind `??` where the type
 * checker asks what if an element is not there; a guard of the same kind, which gives up when something it knows to be
 * there is absent; and the limit itself left out of, or let into, a comparison of measured quantities.
 */
function mutantsIn(file: string, text: string): readonly Mutant[] {
  const found: Mutant[] = [];
  const outline = file.startsWith('parts/') ? text.search(OUTLINE) : -1;
  const isLooks = (node: Node): boolean => LOOKS.test(file) || (outline >= 0 && node.start > outline);
  const moot = new Set<Node>();
  const put = (
    node: { readonly start: number; readonly end: number },
    to: string,
    what: string,
    isMoot = false,
  ): void => {
    const from = text.slice(node.start, node.end);
    if (from === to) return;
    const line = text.slice(0, node.start).split('\n').length;
    found.push({ file, line, what, from, to, at: node.start, ...(isMoot ? { moot: true } : {}) });
  };
  const source = (node: unknown): string => (isNode(node) ? text.slice(node.start, node.end) : '');
  const visit = (node: Node, inType: boolean): void => {
    const type = inType || node.type.startsWith('TS');
    const { left, right, operator } = node;
    if (operator === '??' && isNode(right)) within(right, moot);
    // So are the defaults of a list whose length is known.
    if (node.type === 'ArrayPattern')
      for (const one of Array.isArray(node.elements) ? node.elements : [])
        if (isNode(one) && one.type === 'AssignmentPattern' && isNode(one.right)) within(one.right, moot);
    if (node.type === 'LogicalExpression' && moot.has(node))
      for (const side of [left, right]) if (isNode(side)) moot.add(side);
    if (
      (node.type === 'BinaryExpression' || node.type === 'LogicalExpression') &&
      isNode(left) &&
      isNode(right)
    ) {
      const by = SWAPS[String(operator)];
      const gap = text.slice(left.end, right.start);
      // Joining texts is not adding.
      const words = /['"`]/.test(source(left) + source(right)) && operator === '+';
      // Sizes and places are left to the pictures.
      const size = isLooks(node) && /^[+\-*/]$/.test(String(operator));
      if (by !== undefined && !words && !size && gap.includes(String(operator)))
        put(
          { start: left.end, end: right.start },
          gap.replace(String(operator), by),
          `${operator} for ${by}`,
          moot.has(node) || (/[<>]/.test(by) && !WHOLE.test(source(right))),
        );
    }
    if (node.type === 'Literal' && typeof node.value === 'number' && !type && !isLooks(node))
      put(node, String(node.value === 0 ? 1 : node.value * 2), 'another number', moot.has(node));
    if (node.type === 'Literal' && typeof node.value === 'boolean' && !type)
      put(node, String(!node.value), 'the other truth');
    if (node.type === 'ConditionalExpression') {
      const { test, consequent, alternate } = node;
      put(node, `${source(test)} ? ${source(alternate)} : ${source(consequent)}`, 'branches exchanged');
    }
    if (node.type === 'UnaryExpression' && node.operator === '!')
      put(node, source(node.argument), 'not left out');
    if (node.type === 'IfStatement' && node.alternate === null) {
      const guard = ABSENT.test(source(node.test)) && GIVES_UP.test(source(node.consequent));
      if (guard && isNode(node.test)) moot.add(node.test);
      put(node, ';', 'a condition’s statement left out', guard);
    }
    if (
      node.type === 'ExpressionStatement' &&
      isNode(node.expression) &&
      /Call|Assignment/.test(node.expression.type)
    )
      put(node, ';', 'a statement left out');
    if (node.type === 'MemberExpression' && isNode(node.property) && node.computed !== true) {
      const name = source(node.property);
      const by = Object.hasOwn(METHODS, name) ? METHODS[name] : undefined;
      if (by !== undefined) put(node.property, by, `${source(node.property)} for ${by}`);
    }
    for (const value of Object.values(node))
      for (const child of Array.isArray(value) ? value : [value])
        if (isNode(child) && !/^(Import|ExportAll)/.test(child.type)) visit(child, type);
  };
  visit(parseAst(text, { lang: 'ts' }) as unknown as Node, false);
  return found;
}

/** The named changes, and so many more by chance, spread over the files by their size; of the files that `wanted` matches. */
export function chooseMutants(count: number, seed: number, wanted = /(?:)/): readonly Mutant[] {
  const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter(
    (name) => name.endsWith('.ts') && !SKIPPED.test(name) && wanted.test(name),
  );
  const named = NAMED.filter(([, file]) => wanted.test(file)).map(([what, file, from, to]): Mutant => {
    const text = readFileSync(`src/${file}`, 'utf8');
    const at = text.indexOf(from);
    if (at < 0) throw new Error(`${what}: src/${file} has no such text any more`);
    return { file, line: text.slice(0, at).split('\n').length, what, from, to, at };
  });
  const all = files.sort().flatMap((file) => mutantsIn(file, readFileSync(`src/${file}`, 'utf8')));
  const random = seeded(seed);
  for (let i = 0; i < 8; i++) random();
  const drawn = all
    .map((mutant) => ({ mutant, key: random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ mutant }) => mutant)
    .filter((mutant) => mutant.moot === undefined);
  return [...named, ...drawn.slice(0, Math.max(0, count - named.length))];
}
