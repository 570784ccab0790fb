/** The languages that customers are spoken to in, by ISO 639-1. */
export const languages = ['en', 'de', 'fr', 'es'] as const;
export type Language = (typeof languages)[number];

/** What a kit, a catalogue and a command speak where nothing is said of it. */
export const DEFAULT_LANGUAGE: Language = 'en';
