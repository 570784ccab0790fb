/**
 * Reads the XML that drawings are written in: elements, attributes, text. What else XML allows (a document type, CDATA, processing
 * instructions, another encoding) is refused, so that nothing is ever half understood.
 */
import { SaxesParser } from 'saxes';

export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** The characters directly inside, in one. */
  readonly text: string;
}

type Parsed = { readonly root: XmlElement } | { readonly error: string };

interface Open {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: XmlElement[];
  text: string;
}

/** Deeper than any drawing; what follows may therefore walk the tree by recursion. */
const DEEPEST = 32;

/** Control characters and what a decoder puts in place of bytes that are not text. */
const NO_TEXT = /[\p{Cc}\uFFFD\uFFFE\uFFFF]/u;

export function parseXml(source: string): Parsed {
  const text = source.replace(/^\uFEFF/, '');
  if (text.trim() === '') return { error: 'it is empty' };
  if (NO_TEXT.test(text.replace(/[\t\n\r]/g, ''))) return { error: 'it is not text' };
  const parser = new SaxesParser();
  const open: Open[] = [];
  let root: Open | undefined;
  // The first error counts: what follows one may be misread.
  let error: string | undefined;
  const refuse = (what: string): void => {
    error ??= `${what}, at line ${parser.line}, column ${parser.column}`;
  };
  parser.on('error', ({ message }) =>
    refuse(`it is not well-formed XML: ${message.replace(/^[\d:\s]+/, '')}`),
  );
  parser.on('xmldecl', ({ encoding }) => {
    // The text was read as UTF-8; a viewer must do the same.
    if (encoding !== undefined && !/^utf-8$/i.test(encoding))
      refuse(`its encoding is ${encoding.slice(0, 20)}`);
  });
  parser.on('doctype', () => refuse('it has a document type'));
  parser.on('cdata', () => refuse('it has CDATA'));
  parser.on('processinginstruction', () => refuse('it has a processing instruction'));
  parser.on('opentag', ({ name, attributes }) => {
    if (open.length >= DEEPEST) return refuse('elements nest too deep for a drawing');
    const made: Open = { name, attributes: new Map(Object.entries(attributes)), children: [], text: '' };
    open.at(-1)?.children.push(made);
    root ??= made;
    open.push(made);
  });
  parser.on('closetag', () => void open.pop());
  parser.on('text', (characters) => {
    const inside = open.at(-1);
    if (inside) inside.text += characters;
  });
  parser.write(text).close();
  if (error !== undefined) return { error };
  return root ? { root } : { error: 'there is no element in it' };
}
