/** Figures as a language writes them: decimal comma or point, and the unit kept on the figure's line. */
import { formatDecibels, formatHertz, formatSigned, plainHertz } from '../common/figures.ts';
import { formatFigure, formatQuantity, type Unit } from '../common/units.ts';
import { DEFAULT_LANGUAGE, type Language } from './language.ts';
import { sayIn } from './say.ts';

/** Each as its namesake in `common/`, in one language. */
interface Figures {
  /** A value as it is written on parts: `4,7 kΩ`; SI in. */
  readonly quantity: (value: number, unit: Unit) => string;
  /** A figure that was solved, with three significant figures: `242 kΩ`; of infinity the word for open. */
  readonly figure: (value: number, unit: Unit) => string;
  /** Hertz with three significant figures. */
  readonly hertz: (hertz: number) => string;
  /** A frequency as somebody chose it. */
  readonly plainHertz: (hertz: number) => string;
  /** With its sign, one decimal. */
  readonly decibels: (decibels: number) => string;
  /** Whole per cent with its sign; zero has the sign that is given. */
  readonly percent: (percent: number, zero?: string) => string;
  /** What was printed in English, such as `5.0 dB`. */
  readonly of: (english: string) => string;
}

const NO_BREAK = '\u00a0';
const known = new Map<Language, Figures>();

export function figuresIn(language: Language): Figures {
  const found = known.get(language);
  if (found) return found;
  const of = language === DEFAULT_LANGUAGE ? (english: string) => english : localised(language);
  const say = sayIn(language);
  const orOpen = (value: number, words: string): string =>
    Number.isFinite(value) ? of(words) : say('figure.open');
  const figures: Figures = {
    quantity: (value, unit) => orOpen(value, formatQuantity(value, unit)),
    figure: (value, unit) => orOpen(value, formatFigure(value, unit)),
    hertz: (hertz) => of(formatHertz(hertz)),
    plainHertz: (hertz) => of(plainHertz(hertz)),
    decibels: (decibels) => of(formatDecibels(decibels)),
    percent: (percent, zero = '') => {
      const signed = formatSigned(percent, 0);
      return of(`${signed === '0' ? zero : ''}${signed} %`);
    },
    of,
  };
  known.set(language, figures);
  return figures;
}

/** Figures are printed in one place, so that they are rounded alike in every language; only their signs differ. */
function localised(language: Language): (english: string) => string {
  const parts = new Intl.NumberFormat(language).formatToParts(0.5);
  const decimal = parts.find(({ type }) => type === 'decimal')?.value ?? '.';
  return (english) =>
    english.replace(/(\d)\.(?=\d)/g, `$1${decimal}`).replace(/(\d) (?=\D*$)/, `$1${NO_BREAK}`);
}
