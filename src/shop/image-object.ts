/** What a search engine is told of a kit’s drawing: an ImageObject of schema.org, and its words. */
import type { Element } from 'hast';
import { sayIn } from '../messages/say.ts';
import { apartIn } from '../messages/words.ts';
import { dataBlock } from './html.ts';
import type { KitData } from './kit-data.ts';

/** States that one sentence can name; the table of the figure has all of them. */
const MOST_STATES = 8;

/** The drawing in one sentence, for those who cannot see it: `Wiring diagram: HSS, five-way lever`. */
export const altOf = ({ title, language }: KitData): string => sayIn(language)('gallery.alt', { title });

/** What the circuit is for; where the kit does not say, what sounds in each position. */
function descriptionOf(data: KitData): string {
  const { about, states, language } = data;
  if (about !== null) return about;
  if (states.length > MOST_STATES) return altOf(data);
  const sounds = states.map(({ words, sounds }) =>
    sayIn(language)('named.list', { name: words, words: sounds }),
  );
  return `${altOf(data)}. ${apartIn(language, sounds)}.`;
}

/**
 * The data block of a drawing.
 *
 * @param base address of the folder that the kit’s folder is in, ending in a slash; empty where it is not known
 */
export function imageObject(data: KitData, picture: KitData['pictures'][number], base: string): Element {
  const { id, title, language, workshop } = data;
  return dataBlock('application/ld+json', {
    '@context': 'https://schema.org',
    '@type': 'ImageObject',
    name: title,
    description: descriptionOf(data),
    inLanguage: language,
    contentUrl: `${base}${id}/${picture.file}`,
    encodingFormat: 'image/svg+xml',
    width: picture.width,
    height: picture.height,
    ...(workshop
      ? {
          creator: {
            '@type': 'Organization',
            name: workshop.name,
            ...(workshop.website === null ? {} : { url: workshop.website }),
          },
        }
      : {}),
  });
}
