/** What a drawing is drawn onto: elements of an SVG document, or a record of what was drawn, which needs no document. */
import type { Container } from '@svgdotjs/svg.js';

export type Attributes = Readonly<Record<string, string | number>>;

export interface Canvas {
  /** Gives the element that is drawn into more attributes. */
  readonly set: (attributes: Attributes) => void;
  /** A new element inside, after those that are there. */
  readonly element: (name: string, attributes: Attributes, words?: string) => void;
  /** A new group inside, to draw into. */
  readonly group: (attributes: Attributes) => Canvas;
}

/** Draws into an element of a document. */
export const canvasIn = (into: Container): Canvas => ({
  set: (attributes) => void into.attr(attributes),
  group: (attributes) => canvasIn(into.group().attr(attributes)),
  element: (name, attributes, words) => {
    const element = into.element(name);
    // Straight onto the node: svg.js's shapes would parse each as a colour, a number or a path first, which costs more than
    // all the rest of drawing.
    const { node } = element;
    for (const key in attributes) {
      const attribute = node.ownerDocument.createAttributeNS(null, key);
      attribute.value = String(attributes[key]);
      node.setAttributeNode(attribute);
    }
    if (words !== undefined) element.words(words);
  },
});

/** What was drawn as text, the same in a page as in Node: it is not SVG, and only ever compared. */
export function recordOf(drawing: (canvas: Canvas) => void): string {
  const said: string[] = [];
  const say = (name: string, attributes: Attributes, words = ''): void =>
    void said.push(JSON.stringify([name, ...Object.entries(attributes).flat().map(String), words]));
  const canvas: Canvas = {
    set: (attributes) => say('root', attributes),
    element: say,
    group: (attributes) => {
      say('g', attributes);
      return canvas;
    },
  };
  drawing(canvas);
  return said.join('\n');
}
