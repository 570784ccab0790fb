/** No line ends between a number and its unit. */

/** The units that a customer reads; a letter behind one makes it another word. */
const UNIT = /(\d) (?=(?:[kM]?Ω|[pnµ]F|mm|V|W|k?Hz|dB|°C|%)(?!\p{L}))/gu;

/** The same words with a space that does not break before each unit. */
export const unbrokenText = (text: string): string => text.replace(UNIT, '$1\u00a0');
