/**
 * A logo is a stranger's file that comes to stand in a document and on a page, so only what is known to be harmless passes: shapes and their
 * paints. What acts (scripts, event attributes, animation), what is fetched (links, images, fonts, style sheets) and what looks different from machine to machine
 * (text) is refused, each with its place. What passes is written anew from what was read, without comments and titles: what XML takes for one of those a
 * page might read as elements.
 */
import { SaxesParser, type SaxesTagPlain } from 'saxes';
import { type Problem, problem } from '../common/problem.ts';
import { lineFinder } from './lines.ts';
import type { Source } from './source.ts';
import type { Logo } from './workshop.ts';

interface LogoReading {
  /** Absent where there are problems. */
  readonly logo?: Logo;
  readonly problems: readonly Problem[];
  readonly source: Source;
}

/** What a logo may be drawn with. */
const ELEMENTS: ReadonlySet<string> = new Set([
  ...['svg', 'g', 'defs', 'symbol', 'use', 'title', 'desc'],
  ...['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon'],
  ...['linearGradient', 'radialGradient', 'stop', 'clipPath'],
]);

/** What is in words, and not drawn. */
const SAID: ReadonlySet<string> = new Set(['title', 'desc']);

/** Why an element is refused that people often have in a logo, and what to do. */
const REFUSED: Readonly<Record<string, string>> = {
  script: 'Remove it: a logo must not act.',
  foreignObject: 'Remove it: a logo has shapes alone.',
  image: 'Draw it as shapes, or have the drawing program trace it: pixels are not allowed.',
  text: 'Convert the text to paths: which font it is set in depends on the machine.',
  tspan: 'Convert the text to paths: which font it is set in depends on the machine.',
  style: 'Save it with presentation attributes in place of a style sheet.',
  metadata: 'Save it as plain SVG, without what the drawing program keeps for itself.',
  a: 'Remove the link; keep what is inside.',
};

const SVG = 'http://www.w3.org/2000/svg';
const XLINK = 'http://www.w3.org/1999/xlink';

/** Elements nest no deeper, and there are no more. */
const DEEPEST = 32;
const MOST_ELEMENTS = 2000;
/** Of one file more helps nobody. */
const MOST_PROBLEMS = 20;

/** Reads a logo's text. */
export function readLogo(text: string, file: string): LogoReading {
  const places = new Map<Problem, number>();
  const problems: Problem[] = [];
  const find = lineFinder(text);
  const source: Source = {
    file,
    exact: true,
    placeOf: (found) => ({ file, ...find(places.get(found) ?? 0) }),
  };
  const refuse = (offset: number, what: string, remedy: string): void => {
    if (problems.length >= MOST_PROBLEMS) return;
    const found = problem('bad-logo', [], { what, remedy });
    problems.push(found);
    places.set(found, Math.max(0, offset));
  };

  const parser = new SaxesParser();
  /** Where the tag that is being read begins. */
  let begin = 0;
  let [depth, count] = [0, 0];
  const written: string[] = [];
  /** How deep in a title or a description. */
  let said = 0;
  let box: { readonly width: number; readonly height: number } | undefined;
  parser.on('error', ({ message }) => {
    // After the first such mistake the rest may be misread.
    if (!problems.some((one) => 'what' in one.detail && String(one.detail.what).startsWith(NOT_XML)))
      refuse(parser.position - 1, `${NOT_XML}: ${message.replace(/^[\d:\s]+/, '')}`, 'Save it again as SVG.');
  });
  parser.on('doctype', () =>
    refuse(text.indexOf('<!DOCTYPE'), 'a document type', 'Remove it: it may name entities and other files.'),
  );
  parser.on('processinginstruction', ({ target }) =>
    refuse(text.indexOf(`<?${target}`), `the processing instruction ${target}`, 'Remove it.'),
  );
  parser.on('opentagstart', () => {
    begin = text.lastIndexOf('<', parser.position - 1);
  });
  parser.on('opentag', (tag: SaxesTagPlain) => {
    count++;
    if (++depth > DEEPEST && depth === DEEPEST + 1)
      refuse(begin, 'elements nest too deep', 'Save a simpler drawing.');
    if (count === MOST_ELEMENTS + 1)
      refuse(begin, `more than ${MOST_ELEMENTS} elements`, 'Save a simpler drawing.');
    if (depth === 1) box = rootOf(tag, begin, refuse);
    if (!ELEMENTS.has(tag.name))
      refuse(
        begin,
        `the element ${tag.name}`,
        REFUSED[tag.name] ??
          (tag.name.includes(':')
            ? 'Save it as plain SVG, without what the drawing program keeps for itself.'
            : 'Remove it: a logo has shapes and their paints alone.'),
      );
    const end = parser.position;
    if (said > 0 || SAID.has(tag.name)) said++;
    else written.push(tagText(tag));
    for (const [name, value] of Object.entries(tag.attributes)) {
      const wrong = attributeMistake(name, value);
      if (wrong) refuse(attributeAt(text, begin, end, name), ...wrong);
    }
  });
  parser.on('closetag', ({ name }) => {
    depth--;
    if (said > 0) said--;
    else written.push(`</${name}>`);
  });
  parser.write(text).close();
  if (problems.length === 0 && !box) refuse(0, 'no drawing in it', 'Name an SVG file.');
  return problems.length === 0 && box
    ? { logo: { svg: written.join(''), ...box }, problems, source }
    : { problems, source };
}

function tagText({ name, attributes }: SaxesTagPlain): string {
  const escaped = (value: string): string =>
    value.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
  const all = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(value)}"`);
  return `<${name}${all.join('')}>`;
}

const NOT_XML = 'it is not well-formed';

/** Where an attribute's name stands in its tag. */
function attributeAt(text: string, begin: number, end: number, name: string): number {
  const found = new RegExp(`\\s${name.replace(/[.:*+?^$()|[\]\\]/g, '\\$&')}\\s*=`).exec(
    text.slice(begin, end),
  );
  return found ? begin + found.index + 1 : begin;
}

/** The size that the root's view box gives it, or else its own. */
function rootOf(
  { name, attributes }: SaxesTagPlain,
  begin: number,
  refuse: (offset: number, what: string, remedy: string) => void,
) {
  if (name !== 'svg' || attributes.xmlns !== SVG) {
    refuse(begin, 'no drawing', `The first element must be <svg xmlns="${SVG}">.`);
    return undefined;
  }
  const [, , across, down] = (attributes.viewBox ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [width, height] =
    attributes.viewBox === undefined ? [own(attributes.width), own(attributes.height)] : [across, down];
  if (
    width !== undefined &&
    height !== undefined &&
    width > 0 &&
    height > 0 &&
    Number.isFinite(width / height)
  )
    return { width, height };
  refuse(begin, 'no size', 'Give its first element a viewBox, such as viewBox="0 0 120 40".');
  return undefined;
}

/** A length without a unit, or in pixels. */
const own = (length = ''): number | undefined => {
  const [, digits] = /^\s*(\d+(?:\.\d+)?)\s*(?:px)?\s*$/.exec(length) ?? [];
  return digits === undefined ? undefined : Number(digits);
};

/** What is wrong with an attribute, and what to do. */
function attributeMistake(name: string, value: string): readonly [string, string] | undefined {
  if (/^on/i.test(name)) return [`the attribute ${name}`, 'Remove it: a logo must not act.'];
  if (/^(?:xlink:)?href$/i.test(name))
    return /^\s*#[\w.-]+\s*$/.test(value)
      ? undefined
      : [
          `a reference to outside: ${shortly(value)}`,
          'Only references to an id of the same file are allowed, such as #shape.',
        ];
  if (name === 'xmlns' || name.startsWith('xmlns:'))
    return value === SVG || value === XLINK
      ? undefined
      : [
          `the namespace ${shortly(value)}`,
          'Save it as plain SVG, without what the drawing program keeps for itself.',
        ];
  if (name.includes(':') && name !== 'xml:space' && name !== 'xml:lang')
    return [
      `the attribute ${name}`,
      'Save it as plain SVG, without what the drawing program keeps for itself.',
    ];
  if (name === 'style' && /[@\\]|expression|behavior|\/\*|var\(|attr\(|image|font|cursor|src/i.test(value))
    return [`the style ${shortly(value)}`, 'Save it with presentation attributes in place of styles.'];
  // Of CSS functions only colours and transforms, and url() of an id of this file; an escape could spell anything.
  if (/\\/.test(value)) return [`a backslash in ${name}`, 'Remove it.'];
  for (const [, inside = ''] of value.matchAll(/url\s*\(([^)]*)\)?/gi))
    if (!/^\s*(["']?)#[\w.-]+\1\s*$/.test(inside))
      return [
        `a reference to outside: ${shortly(value)}`,
        'Only references to an id of the same file are allowed, such as url(#shade).',
      ];
  if (/(?:javascript|vbscript|data)\s*:/i.test(value.replace(/[\s\p{Cc}]/gu, '')))
    return [`the value ${shortly(value)}`, 'Remove it.'];
  return undefined;
}

const shortly = (value: string): string => {
  const plain = value.replace(/\s+/g, ' ').trim();
  return `“${plain.length > 40 ? `${plain.slice(0, 40)}…` : plain}”`;
};
