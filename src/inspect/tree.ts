/** A drawing as the elements that its text would be read as, without writing and reading it: this takes a third of the time. */
import type { Canvas } from '../draw/canvas.ts';
import { textOf } from '../draw/headless.ts';
import { parseXml, type XmlElement } from './xml.ts';

interface Growing extends XmlElement {
  readonly attributes: Map<string, string>;
  readonly children: Growing[];
}

/** What a document says of itself before anything is drawn into it. */
let bare: ReadonlyMap<string, string> | undefined;
function bareRoot(): ReadonlyMap<string, string> {
  if (bare) return bare;
  const parsed = parseXml(textOf(() => undefined));
  if ('error' in parsed) throw new Error(parsed.error);
  bare = parsed.root.attributes;
  return bare;
}

/** The root of what is drawn. */
export function treeOf(drawing: (root: Canvas) => void): XmlElement {
  const root: Growing = { name: 'svg', attributes: new Map(bareRoot()), children: [], text: '' };
  drawing(canvasOn(root));
  return root;
}

function canvasOn({ attributes: own, children }: Growing): Canvas {
  const add = (name: string, attributes: Parameters<Canvas['set']>[0], text = ''): Growing => {
    const made: Growing = { name, attributes: new Map(), children: [], text };
    for (const key in attributes) made.attributes.set(key, String(attributes[key]));
    children.push(made);
    return made;
  };
  return {
    set: (attributes) => {
      for (const key in attributes) own.set(key, String(attributes[key]));
    },
    element: (name, attributes, words) => void add(name, attributes, words),
    group: (attributes) => canvasOn(add('g', attributes)),
  };
}
